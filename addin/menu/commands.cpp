#include "menu/commands.h"

#include "catalog/function.h"
#include "catalog/host.h"
#include "commands/next_missing.h"
#include "commands/print_ranges.h"
#include "jobbook/carry_out.h"
#include "jobbook/read_book.h"
#include "shell/office_name.h"

namespace trenchbook::addin {

Answer nextMissing(Call& call) {
    const Document document = call.job();
    const sheets::Planned planned = sheets::nextMissing(sheets::readBook(document));
    sheets::carryOut(document, planned.steps);
    // The cursor has moved to it, and the row says what is wrong.
    return {call.in(planned.says), planned.steps.empty()};
}

Answer printRanges(Call& call) {
    const Document document = call.document();
    const sheets::Planned planned = sheets::printRanges(sheets::readBook(document));
    change(call, document, planned.steps);
    return {call.in(planned.says)};
}

Answer about(Call& call) {
    setHost(officeName(call.context()));
    const std::vector<Value> arguments = {std::string(call.language() == Language::Spanish ? "es" : "en")};
    return {std::get<std::string>(addin::call(*findFunction("TRENCHBOOK.SUPPORT"), arguments))};
}

Answer run(Call& call) {
    using Command = Answer (*)(Call&);
    static const std::map<std::string, Command> all = {
        {"NextMissing", nextMissing},
        {"PrintRanges", printRanges},
        {"About", about},
    };
    const auto found = all.find(call.command());
    if (found == all.end()) throw Refused("There is no command " + call.command());
    return found->second(call);
}

}  // namespace trenchbook::addin
