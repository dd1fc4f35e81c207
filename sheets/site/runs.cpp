// The heart of the job: one row a pipe segment, from its upper to its lower node. What a pocket calculator can check
// is a formula here; levels, flows and water come from the solved job on Workings.
#include "site/inputs.h"
#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

// A formula that needs these cells as numbers, else blank; blank too where the engine refuses.
std::string whenNumbers(const std::vector<std::string>& cells, const std::string& formula) {
    std::string all;
    for (const std::string& cell : cells) all += (all.empty() ? "[" : ";[") + cell + "]";
    return "IF(COUNT(" + all + ")=" + std::to_string(cells.size()) + ";IFERROR(" + formula + ";\"\");\"\")";
}
Column level(const char* heading, std::string formula, const char* note = "") {
    return {.heading = heading,
            .format = show::number(2),
            .measure = Measure::Feet,
            .width = 17,
            .formula = std::move(formula),
            .note = note};
}
Column inches(const char* heading, std::string formula, const char* note = "") {
    return {.heading = heading,
            .format = show::number(1),
            .measure = Measure::Inches,
            .width = 15,
            .formula = std::move(formula),
            .note = note};
}
Column percent(const char* heading, double width, std::string formula, const char* note = "") {
    return {.heading = heading,
            .format = show::percent(0),
            .width = width,
            .formula = std::move(formula),
            .note = note};
}

std::vector<Column> typed() {
    const Format decimal = show::number(2);
    return inputs(InputTable::Runs, {{"Line", 18},
                                     {"From", 16, show::text, "[Nodes.Node]"},
                                     {"To", 16, show::text, "[Nodes.Node]"},
                                     {"Length", 16, show::general},
                                     {"Pipe", 22, show::text, "[Stock.Pipe]"},
                                     {"Slope", 18},
                                     {"Fixed level", 16, decimal},
                                     {"Outlet level", 16, decimal},
                                     {"Outlet highest", 16, decimal},
                                     {"Outlet water", 16, decimal},
                                     {"Pipe choice", 24},
                                     {"Surface up", 17},
                                     {"Surface down", 17},
                                     {"Trench width", 16, show::number(1)},
                                     {"Existing", 17},
                                     {"Known invert up", 18, decimal},
                                     {"Known invert down", 18, decimal},
                                     {"Approval", 40, show::text, "", Kind::Permit}});
}

std::vector<Column> trench() {
    return {
        level("Ground up", answered("Ground up")),
        level("Ground down", answered("Ground down")),
        level("Invert up", answered("Invert up"),
              "Inside bottom (flow line) at the upper end: from the outlet uphill at the slopes typed."),
        level("Invert down", answered("Invert down")),
        {.heading = "Slope %",
         .format = show::percent(2),
         .width = 15,
         .formula = whenNumbers({"Invert up", "Invert down"},
                                "RUN.SLOPE([Length];[Invert up];[Invert down];units)")},
        {.heading = "Slope as said",
         .width = 19,
         .formula =
             whenNumbers({"Slope %"}, "SLOPE.TEXT([Slope %];IF(units=\"metric\";\"1 in\";\"in/ft\"))")},
        level("Drop", whenNumbers({"Invert up", "Invert down"}, "[Invert up]-[Invert down]")),
        level("Extra fall", answered("Extra fall"),
              "Drop beyond what the least slope on Rules asks for this size."),
        inches("Cover up",
               whenNumbers({"Ground up", "Invert up"}, "RUN.COVER([Ground up];[Invert up];[Pipe];units)"),
               "Ground to the outside top of the pipe."),
        inches("Cover down", whenNumbers({"Ground down", "Invert down"},
                                         "RUN.COVER([Ground down];[Invert down];[Pipe];units)")),
        level("Cut up",
              whenNumbers({"Ground up", "Invert up"},
                          "RUN.CUT([Ground up];[Invert up];[Pipe];{bedding.depth};units)"),
              "Ground to trench bottom, bedding included."),
        level("Cut down", whenNumbers({"Ground down", "Invert down"},
                                      "RUN.CUT([Ground down];[Invert down];[Pipe];{bedding.depth};units)")),
    };
}

std::vector<Column> water() {
    return {
        {.heading = "Flow",
         .format = show::number(1),
         .measure = Measure::Gpm,
         .width = 16,
         .formula = answered("Flow"),
         .note =
             "All inlets upstream added up, at the rain on Job. Where Peak counts travel time, the flow from there."},
        {.heading = "Capacity",
         .format = show::number(0),
         .measure = Measure::Gpm,
         .width = 17,
         .formula = whenNumbers({"Slope %"}, "PIPE.CAPACITY([Pipe];[Slope %];;;units)")},
        percent("% of capacity", 17, whenNumbers({"Flow", "Capacity"}, "[Flow]/[Capacity]")),
        {.heading = "Depth/dia.",
         .format = show::number(2),
         .width = 17,
         .formula = whenNumbers({"% of capacity"}, "PIPE.FILL([Pipe];[Slope %];[Flow];;units)"),
         .note = "Depth of water / bore. Blank when the pipe cannot carry the flow."},
        {.heading = "Velocity",
         .format = show::number(1),
         .measure = Measure::FeetPerSecond,
         .width = 16,
         .formula = whenNumbers({"% of capacity"}, "PIPE.VELOCITY([Pipe];[Slope %];[Flow];;units)")},
        {.heading = "Wall shear",
         .format = show::number(3),
         .measure = Measure::PoundsPerSquareFoot,
         .width = 17,
         .formula = whenNumbers({"% of capacity"}, "PIPE.SHEAR([Pipe];[Slope %];[Flow];;units)"),
         .note = "Mean drag of the water on the wall at this flow: what moves silt along."},
        level("Water up", answered("Water up"),
              "Level of the water at the upper end, or of the pressure where the pipe runs full."),
        level("Water down", answered("Water down")),
        percent("% of length full", 17, answered("% of length full"), "Share of the length that runs full."),
        {.heading = "State",
         .width = 24,
         .formula = "<State>",
         .note = "free, part drowned, full; free drop: the water below stands under the invert."},
    };
}

std::vector<Column> place() {
    return {
        {.heading = "Run no.", .format = show::number(0), .width = 15, .formula = answered("Run no.")},
        {.heading = "Station",
         .format = show::number(1),
         .measure = Measure::Feet,
         .width = 15,
         .formula = answered("Station"),
         .note = "Distance of the lower end from the outlet, along the pipe."},
        {.heading = "Since cleanout",
         .format = show::number(1),
         .measure = Measure::Feet,
         .width = 17,
         .formula = answered("Since cleanout"),
         .note =
             "Pipe from the last cleanout, basin or channel upstream, or from the head, down to the lower end."},
        {.heading = "Bends since cleanout",
         .format = show::number(1),
         .measure = Measure::Degrees,
         .width = 18,
         .formula = answered("Bends since cleanout")},
    };
}

}  // namespace

Sheet runsSheet(const JobSize& size) {
    Table table;
    table.name = "Runs";
    table.rows = size.runs;
    table.columns = verdictColumns() + typed() + trench() + water() + place();
    table.handedFrom = "Line";
    table.handedTo = "Approval";
    Sheet sheet;
    sheet.name = "Runs";
    sheet.title = "Runs";
    sheet.purpose =
        "One row a pipe segment, upper node to lower node, in any order. Type the marked cells; the rest follows from "
        "the outlet uphill.";
    sheet.parts = {table};
    sheet.freezeColumns = 5;
    sheet.pagesWide = 3;
    return sheet;
}

}  // namespace trenchbook::sheets
