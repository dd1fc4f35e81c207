// How deep and how fast the line's water runs where it ends: uniform flow in the swale or ditch.
#include "site/inputs.h"
#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

std::vector<Column> typed() {
    const Format decimal = show::number(2), flow = show::number(1);
    return inputs(InputTable::Swale, {{"Outlet", 22, show::text, "[Nodes.Node]"},
                                      {"Other flow", 22, flow},
                                      {"Bottom", 19, decimal},
                                      {"Side slope", 19, flow},
                                      {"Deep", 19, decimal},
                                      {"Slope", 20},
                                      {"Roughness", 20, show::number(3)},
                                      {"Flow line", 19, decimal},
                                      {"To lot line", 19, flow},
                                      {"To walk", 19, flow},
                                      {"To foundation", 21, flow}});
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

Sheet swaleSheet(const JobSize& size) {
    Table table;
    table.name = "Swale";
    table.rows = size.swales;
    table.columns =
        verdictColumns() + typed() +
        std::vector<Column>{
            {.heading = "Line's flow",
             .format = show::number(1),
             .measure = Measure::Gpm,
             .width = 22,
             .formula = answered("Line's flow"),
             .note = "All runs that end at this node, from Runs."},
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
            feet("Spare depth", answered("Spare depth"), "Depth of the swale above the water.")};
    table.handedFrom = "Outlet";
    table.handedTo = "To foundation";
    Sheet sheet;
    sheet.name = "Swale";
    sheet.title = "Swale";
    sheet.purpose =
        "One row for each outlet that empties into a swale or ditch: how deep and how fast the line's water "
        "runs there.";
    sheet.parts = {table};
    sheet.freezeColumns = 3;
    return sheet;
}

}  // namespace trenchbook::sheets
