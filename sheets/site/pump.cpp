// The pump where gravity fails: its basin, its curve, its discharge, and what is there when the power is out.
#include "site/inputs.h"
#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

std::vector<Column> typed() {
    const Format decimal = show::number(2), flow = show::number(1);
    return inputs(InputTable::Pump, {{"Basin", 20, show::text, "[Nodes.Node]"},
                                     {"Inside diameter", 20, flow},
                                     {"Floor", 18, decimal},
                                     {"Pump on", 18, decimal},
                                     {"Pump off", 18, decimal},
                                     {"Pump curve", 42},
                                     {"Discharge pipe", 24, show::text, "[Stock.Pipe]"},
                                     {"Discharge length", 22, flow},
                                     {"Elbows", 16, show::number(0)},
                                     {"Discharge level", 21, decimal},
                                     {"Check valve", 18},
                                     {"Power out", 24},
                                     {"Groundwater", 22, decimal},
                                     {"Outside diameter", 22, flow},
                                     {"Empty weight", 19, show::number(0)},
                                     {"Anchor concrete", 21, flow}});
}

Column worked(const char* heading, int decimals, Measure measure, const char* note) {
    return {.heading = heading,
            .format = show::number(decimals),
            .measure = measure,
            .width = 21,
            .formula = answered(heading),
            .note = note};
}

}  // namespace

Sheet pumpSheet(const JobSize& size) {
    Table table;
    table.name = "Pump";
    table.rows = size.pumps;
    table.columns =
        verdictColumns() + typed() +
        std::vector<Column>{
            worked("Inflow", 1, Measure::Gpm, "Of all runs that end in the basin, from Runs."),
            worked("Head at inflow", 1, Measure::Feet,
                   "Total head that the pump must give to lift the inflow: PUMP.HEAD."),
            worked("Pump gives", 1, Measure::Gpm,
                   "Where its curve meets the head of the discharge pipe: PUMP.DUTY."),
            worked("At head", 1, Measure::Feet, "Total head there."),
            worked("Speed", 1, Measure::FeetPerSecond, "Of the water in the discharge pipe."),
            worked("Between floats", 1, Measure::Gallons, "Water between Pump on and Pump off."),
            worked("Starts an hour", 1, Measure::Plain,
                   "The most, at any inflow up to this one: PUMP.CYCLES."),
            worked("Shortest run", 1, Measure::Minutes,
                   "Time in which the pump empties what is between its floats."),
            worked(
                "Power out minutes", 1, Measure::Minutes,
                "Until water stands at the lowest opening when the pump does not run, basin and pipes taken as "
                "empty before."),
            worked(
                "Held down", 2, Measure::Plain,
                "What holds the empty basin down over what lifts it; below 1 it floats. Blank: dry ground.")};
    table.handedFrom = "Basin";
    table.handedTo = "Anchor concrete";
    Sheet sheet;
    sheet.name = "Pump";
    sheet.title = "Pump";
    sheet.purpose =
        "One row for each pump basin that a line ends in, where the ground gives no fall to an outlet. The discharge's "
        "own trench, cover and crossings are not judged here.";
    sheet.parts = {table};
    sheet.freezeColumns = 3;
    sheet.pagesWide = 2;
    return sheet;
}

}  // namespace trenchbook::sheets
