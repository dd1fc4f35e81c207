// Every function with a live example, made from the catalog.
#include "catalog/function.h"
#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

// The examples of functions over a whole job are longer than a cell shows: one of them stands for all, on a shorter
// job. docs/functions.md has the others.
std::string exampleOf(const addin::Function& function) {
    if (function.name == "JOB.RUNS")
        return "JOB.RUNS({\"Rain\";6}; {\"Node\";\"Kind\";\"Ground\"|\"A\";\"downspout\";100|\"Out\";\"outlet\";97}; "
               "{\"Node\";\"Roof area\";\"Roof C\"|\"A\";800;0.95}; "
               "{\"From\";\"To\";\"Length\";\"Pipe\";\"Slope\";\"Outlet level\"|"
               "\"A\";\"Out\";60;\"4 SDR35\";\"2%\";97})";
    return function.name.rfind("JOB.", 0) == 0 ? "" : function.example;
}

}  // namespace

Sheet functionsSheet(const JobSize&) {
    Table table;
    table.name = "Functions";
    table.columns = {
        {.heading = "Function", .kind = Kind::Label, .width = 46},
        {.heading = "Arguments", .kind = Kind::Label, .width = 82},
        {.heading = "Gives", .kind = Kind::Label, .width = 74},
        {.heading = "Example", .kind = Kind::Label, .width = 74},
        {.heading = "Result", .format = show::general, .width = 34},
        {.heading = "Source", .kind = Kind::Label, .width = 74},
    };
    for (const addin::Function& function : addin::catalog()) {
        std::string arguments;
        for (const addin::Argument& argument : addin::allArguments(function)) {
            std::string words = argument.name;
            const std::string& unit = addin::info(argument.measure).us.en;
            if (addin::hasUnit(argument.measure)) words += " " + unit;
            if (!argument.fallback.empty()) words += "=" + argument.fallback;
            arguments += (arguments.empty() ? "" : "; ") + (argument.optional ? "[" + words + "]" : words);
        }
        const std::string example = exampleOf(function);
        table.content.push_back({function.name, arguments, function.says.en, example,
                                 example.empty() ? "" : "=" + example, function.source});
    }
    table.rows = static_cast<int>(table.content.size());
    Sheet sheet;
    sheet.name = "Functions";
    sheet.title = "Functions";
    sheet.purpose =
        "Every function of the add-in, with a live example. TRENCHBOOK.WHY tells the reason behind an Err:502.";
    sheet.parts = {table};
    sheet.locked = true;
    sheet.freezeColumns = 1;
    return sheet;
}

}  // namespace trenchbook::sheets
