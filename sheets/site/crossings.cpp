// Other buried things that a run passes: clearance, hand digging, tickets.
#include "site/inputs.h"
#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

std::vector<Column> typed() {
    return inputs(InputTable::Crossings, {{"What", 34},
                                          {"From", 16, show::text, "[Nodes.Node]"},
                                          {"To", 16, show::text, "[Nodes.Node]"},
                                          {"At", 15, show::number(1)},
                                          {"Its depth", 16, show::number(1)},
                                          {"Its diameter", 17, show::number(2)},
                                          {"Passes", 17},
                                          {"Marked", 17, show::text, "", Kind::Permit},
                                          {"Ticket", 28, show::text, "", Kind::Permit},
                                          {"Good from", 21, show::date, "", Kind::Permit},
                                          {"Good until", 21, show::date, "", Kind::Permit}});
}

Column level(const char* heading, std::string formula, const char* note = "") {
    return {.heading = heading,
            .format = show::number(2),
            .measure = Measure::Feet,
            .width = 19,
            .formula = std::move(formula),
            .note = note};
}

}  // namespace

Sheet crossingsSheet(const JobSize& size) {
    Table table;
    table.name = "Crossings";
    table.rows = size.crossings;
    table.columns =
        verdictColumns() + typed() +
        std::vector<Column>{
            level("Ground", answered("Ground"), "Ground at the crossing, straight between the nodes."),
            level("Our invert", answered("Our invert")),
            level("Our top", answered("Our top")),
            level("Our bottom", answered("Our bottom")),
            level("Its top", answered("Its top"), ""),
            level("Its bottom", answered("Its bottom"), ""),
            {.heading = "Clearance",
             .format = show::number(1),
             .measure = Measure::Inches,
             .width = 18,
             .formula = answered("Clearance")},
            {.heading = "Hand-dig",
             .format = show::number(1),
             .measure = Measure::Feet,
             .width = 17,
             .formula = answered("Hand-dig"),
             .note = "Length dug by hand: the line's width and the tolerance on both sides."},
            level(
                "Kept level", answered("Kept level"),
                "The other line's outside and the clearance: the plan keeps our pipe below it, or above it."),
            {.heading = "On line", .width = 16, .formula = "<On line>", .helper = true},
            {.heading = "Row",
             .format = show::number(0),
             .width = 12,
             .formula = answered("Row"),
             .helper = true}};
    table.handedFrom = "What";
    table.handedTo = "Good until";
    Sheet sheet;
    sheet.name = "Crossings";
    sheet.title = "Crossings";
    sheet.purpose =
        "One row for each buried line that a run passes. Call 811 first; inside the tolerance dig by hand until it is "
        "seen.";
    sheet.parts = {table};
    sheet.freezeColumns = 5;
    return sheet;
}

}  // namespace trenchbook::sheets
