// What each inlet brings to its node.
#include "job/job.h"

namespace trenchbook::sheets {
namespace {

// One area of an inlet in gpm; a blank area brings nothing.
std::string part(const std::string& area, const std::string& share) {
    return "IF(ISBLANK([" + area + "]);0;RUNOFF.FLOW([" + area + "];[" + share + "];rain_rate;units))";
}
std::string reason(const std::string& area, const std::string& share) {
    return "IF(ISBLANK([" + area + "]);\"OK\";TRENCHBOOK.WHY(\"RUNOFF.FLOW\";[" + area + "];[" + share +
           "];rain_rate;units))";
}
std::string missing(const std::string& area, const std::string& share) {
    return "IF(AND(NOT(ISBLANK([" + area + "]));ISBLANK([" + share + "]));\"NO: " + share + " is missing\";";
}

}  // namespace

Sheet waterSheet(const JobSize& size) {
    const auto area = [](const char* heading, const char* note) {
        return Column{.heading = heading, .kind = Kind::Measured, .format = show::number(0),
                      .measure = Measure::SquareFeet, .width = 20, .validity = between(1, 20000), .note = note};
    };
    const auto share = [](const char* heading, const char* note) {
        return Column{.heading = heading, .kind = Kind::Measured, .format = show::number(2), .width = 18,
                      .validity = between(0, 1), .note = note};
    };
    Table table;
    table.name = "Water";
    table.rows = size.water;
    table.columns = {
        {.heading = "Inlet", .kind = Kind::Measured, .width = 36, .note = "Name of the downspout, drain or grate."},
        {.heading = "Node", .kind = Kind::Measured, .width = 18, .validity = chosenFrom("[Nodes.Node]"),
         .note = "Node where its water enters the line."},
        area("Roof area", "Roof that drains here, in plan."),
        share("Roof C", "Share of the rain that runs off the roof, 0 to 1: about 0.95."),
        area("Paved area", "Patio, walk or drive that drains here."),
        share("Paved C", "Share that runs off paving, 0 to 1: about 0.90."),
        area("Yard area", "Lawn or beds that drain here."),
        share("Yard C", "Share that runs off the ground, 0 to 1: sandy lawn 0.10, heavy soil 0.20."),
        {.heading = "Flow", .format = show::number(1), .measure = Measure::Gpm, .width = 18,
         .formula = "IF(ISBLANK([Node]);\"\";" + part("Roof area", "Roof C") + "+" + part("Paved area", "Paved C") + "+" +
                    part("Yard area", "Yard C") + ")",
         .note = "Rational method at the rain on Job."},
        {.heading = "Check", .kind = Kind::Verdict, .width = 76,
         .formula =
             "IFERROR(IF(ISBLANK([Node]);IF(AND(ISBLANK([Inlet]);ISBLANK([Roof area]);ISBLANK([Paved area]);"
             "ISBLANK([Yard area]));\"\";\"NO: Node is missing: where does the water go?\");"
             "IF(ISBLANK(rain_rate);\"NO: the rain on Job is missing\";"
             "IF(COUNTIF([Runs.From];[Node])=0;\"NO: no run leaves node \"&[Node]&\"; its water goes nowhere\";"
             "IF(AND(ISBLANK([Roof area]);ISBLANK([Paved area]);ISBLANK([Yard area]));\"NO: no area\";" +
             missing("Roof area", "Roof C") + missing("Paved area", "Paved C") + missing("Yard area", "Yard C") +
             "IF(ISNUMBER([Flow]);\"OK\";\"NO: \"&IF(" + reason("Roof area", "Roof C") + "<>\"OK\";" +
             reason("Roof area", "Roof C") + ";IF(" + reason("Paved area", "Paved C") + "<>\"OK\";" +
             reason("Paved area", "Paved C") + ";" + reason("Yard area", "Yard C") +
             "))))))))));\"NO: a cell of this row holds an error\")"},
    };
    Sheet sheet;
    sheet.name = "Water";
    sheet.title = "Water";
    sheet.purpose = "One row for each inlet: the areas that drain to it and the share of the rain that runs off.";
    sheet.parts = {table};
    sheet.freezeColumns = 1;
    return sheet;
}

}  // namespace trenchbook::sheets
