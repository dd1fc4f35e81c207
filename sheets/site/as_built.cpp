// What was measured after the work, beside what was planned: the second drawing, for the owner and the next digger.
#include "site/inputs.h"
#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

// An invert of Runs at the node: of the run that leaves it, else of the run that ends there.
std::string planned() {
    const auto at = [](const char* end, const char* invert) {
        return "INDEX([Runs." + std::string(invert) + "];MATCH([Node];[Runs." + end + "];0))";
    };
    return "IF([Node]=\"\";\"\";IFERROR(1*" + at("From", "Invert up") + ";IFERROR(1*" +
           at("To", "Invert down") + ";\"\")))";
}

Column worked(const char* heading, std::string formula, const char* note) {
    return {.heading = heading,
            .format = show::number(2),
            .measure = Measure::Feet,
            .width = 24,
            .formula = std::move(formula),
            .note = note};
}

}  // namespace

Sheet asBuiltSheet(const JobSize&) {
    Form shows;
    shows.name = "As built shown";
    shows.fields = {
        {.label = "Drawing shows",
         .name = "drawing_shows",
         .kind = Kind::Measured,
         .value = "plan",
         .validity = {.words = {"plan", "as built"}},
         .note = "as built: nodes where they were measured, with their inverts; CO is a cleanout."}};
    shows.noteSpan = 5;
    Table table;
    table.name = "As built";
    table.rows = 60;
    table.columns =
        std::vector<Column>{
            {.heading = "Check",
             .kind = Kind::Verdict,
             .format = show::general,
             .width = 60,
             .formula =
                 "IF([Node]=\"\";\"\";IF(COUNTIF([Nodes.Node];[Node])=0;\"NO: not on Nodes\";IF([Invert]=\"\";"
                 "\"NOT JUDGED: no Invert\";IF([Off]=\"\";\"NOT JUDGED: not planned\";"
                 "IF(ABS([Off])>{aslaid.tolerance}+0.000001;\"CHECK: Invert not as planned\";\"OK\")))))"}} +
        inputs(InputTable::AsBuilt, {{"Node", 18, show::text, "[Nodes.Node]"},
                                     {"Invert", 20, show::number(2)},
                                     {"Tie 1", 30},
                                     {"Tie 2", 30},
                                     {"Note", 72}}) +
        std::vector<Column>{
            worked("Planned invert", planned(),
                   "Of the run that leaves the node, else of the one that ends there."),
            worked("Off",
                   "IF(OR([Invert]=\"\";[Planned invert]=\"\");\"\";IFERROR(ROUND([Invert]-[Planned "
                   "invert];4);\"\"))",
                   "Measured less planned."),
            worked("Moved", answered("Moved"), "From where it was planned, as both drawings have it.")};
    table.handedFrom = "Node";
    table.handedTo = "Note";
    Sheet sheet;
    sheet.name = "As built";
    sheet.title = "As built";
    sheet.purpose =
        "After the work: the invert of each node and two tapes to corners, for the owner and for whoever digs next.";
    sheet.parts = {shows, table};
    sheet.freezeColumns = 2;
    return sheet;
}

}  // namespace trenchbook::sheets
