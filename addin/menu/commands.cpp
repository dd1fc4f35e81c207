#include "menu/commands.h"

#include "catalog/function.h"
#include "catalog/host.h"
#include "shell/office_name.h"

namespace trenchbook::addin {

Answer about(Call& call) {
    setHost(officeName(call.context()));
    const std::vector<Value> arguments = {std::string(call.language() == Language::Spanish ? "es" : "en")};
    return {std::get<std::string>(addin::call(*findFunction("TRENCHBOOK.SUPPORT"), arguments))};
}

Answer run(Call& call) {
    using Command = Answer (*)(Call&);
    static const std::map<std::string, Command> all = {
        {"NewJob", newJob},
        {"NewLot", newLot},
        {"Prices", bringPrices},
        {"Order", issueOrder},
        {"Option", noteOption},
        {"Learn", learnRates},
        {"Close", closeJob},
        {"Papers", writePapers},
        {"DrawingFiles", drawingFiles},
        {"CopyValues", copyValues},
        {"NextMissing", nextMissing},
        {"PrintRanges", printRanges},
        {"Explain", explainCell},
        {"Estimate", bringEstimate},
        {"Actual", bringActual},
        {"Buy", buyCheapest},
        {"Change", noteChange},
        {"Sheets", showSheets},
        {"Shots", bringShots},
        {"About", about},
    };
    const auto found = all.find(call.command());
    if (found == all.end()) throw Refused("There is no command " + call.command());
    return found->second(call);
}

}  // namespace trenchbook::addin
