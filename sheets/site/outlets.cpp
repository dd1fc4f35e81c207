// How each line ends: the water it ends in, the rim it bubbles over, what is around it.
#include "site/inputs.h"
#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

std::vector<Column> typed() {
    const Format decimal = show::number(2), flow = show::number(1);
    return inputs(InputTable::Outlets, {{"Outlet", 22, show::text, "[Nodes.Node]"},
                                        {"Flow line", 19, decimal},
                                        {"To lot line", 19, flow},
                                        {"To walk", 19, flow},
                                        {"To foundation", 21, flow},
                                        {"Rim across", 19, show::number(1)},
                                        {"Open share", 19, decimal},
                                        {"Weep hole", 18, decimal},
                                        {"Ground falls", 19},
                                        {"Check valve", 18},
                                        {"Apron stone", 18, flow},
                                        {"Other flow", 22, flow},
                                        {"Bottom", 19, decimal},
                                        {"Side slope", 19, flow},
                                        {"Deep", 19, decimal},
                                        {"Slope", 20},
                                        {"Roughness", 20, show::number(3)}});
}

Column feet(const char* heading, std::string formula, const char* note) {
    return {.heading = heading,
            .format = show::number(2),
            .measure = Measure::Feet,
            .width = 20,
            .formula = std::move(formula),
            .note = note};
}

}  // namespace

Sheet outletsSheet(const JobSize& size) {
    Table table;
    table.name = "Outlets";
    table.rows = size.outlets;
    table.columns =
        verdictColumns() + typed() +
        std::vector<Column>{
            {.heading = "Line's flow",
             .format = show::number(1),
             .measure = Measure::Gpm,
             .width = 22,
             .formula = answered("Line's flow")},
            {.heading = "Flow",
             .format = show::number(1),
             .measure = Measure::Gpm,
             .width = 20,
             .formula = answered("Flow"),
             .note = "The line's and what the swale brings already."},
            feet("Water depth", answered("Water depth"), "Uniform flow, Manning's formula."),
            {.heading = "Velocity",
             .format = show::number(1),
             .measure = Measure::FeetPerSecond,
             .width = 19,
             .formula = answered("Velocity")},
            feet("Critical depth", answered("Critical depth"), "Shallower water shoots and scours."),
            feet("Spare depth", answered("Spare depth"), "Depth of the swale above the water."),
            feet(
                "Ends in water", answered("Ends in water"),
                "Level of the water that the line ends in: in the swale, over the rim, or as typed on Runs."),
            feet("Over rim", answered("Over rim"),
                 "Water over the rim it bubbles over, part of its grate blocked by leaves."),
            feet("Over clean rim", answered("Over clean rim"), "The same with a clean grate."),
            {.heading = "Hours to empty",
             .format = show::number(1),
             .measure = Measure::Hours,
             .width = 20,
             .formula = answered("Hours to empty"),
             .note = "Until what stays behind the rim has wept away, or the pit under the tee is empty."}};
    table.handedFrom = "Outlet";
    table.handedTo = "Roughness";
    Sheet sheet;
    sheet.name = "Outlets";
    sheet.title = "Outlets";
    sheet.purpose =
        "One row for each way a line ends: the water that it ends in, the rim that it bubbles over, and what is "
        "around it.";
    sheet.parts = {table};
    sheet.freezeColumns = 3;
    sheet.pagesWide = 2;
    return sheet;
}

}  // namespace trenchbook::sheets
