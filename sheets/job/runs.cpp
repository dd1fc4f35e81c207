// The heart of the job: one row a pipe segment, from its upper to its lower node.
#include "job/job.h"

namespace trenchbook::sheets {
namespace {

const char* blankRow = "IFERROR([From]&[To]=\"\";FALSE())";

// A value of a block on Workings for this row; blank rows stay blank.
std::string fromBlock(const std::string& block, int column) {
    return std::string("IF(") + blankRow + ";\"\";INDEX(" + block + ";[#];" + std::to_string(column) + "))";
}
std::string groundAt(const std::string& end) {
    return "IF(ISBLANK([" + end + "]);\"\";IFERROR(INDEX([Nodes.Ground level];MATCH([" + end +
           "];[Nodes.Node];0));\"\"))";
}
// A formula that needs these cells as numbers, else blank.
std::string whenNumbers(const std::vector<std::string>& cells, const std::string& formula) {
    std::string all;
    for (const std::string& cell : cells) all += (all.empty() ? "" : ";") + ("ISNUMBER([" + cell + "])");
    return "IF(AND(" + all + ");" + formula + ";\"\")";
}
// Which input cell of the row holds an error of its own: then no function sees it.
std::string ownErrors(const std::vector<std::string>& cells, const std::string& otherwise) {
    std::string formula, closing;
    for (const std::string& cell : cells) {
        formula += "IF(ISERROR([" + cell + "]);\"NO: " + cell + " holds an error\";";
        closing += ")";
    }
    return formula + otherwise + closing;
}

}  // namespace

Sheet runsSheet(const JobSize& size) {
    const Validity surfaces = choice({"lawn", "lawn end", "bed", "walk", "drive", "street", "daylight"}, false);
    const auto level = [](const char* heading, std::string formula, const char* note) {
        return Column{.heading = heading, .format = show::number(2), .measure = Measure::Feet, .width = 17,
                      .formula = std::move(formula), .note = note};
    };
    const auto inches = [](const char* heading, std::string formula, const char* note) {
        return Column{.heading = heading, .format = show::number(1), .measure = Measure::Inches, .width = 15,
                      .formula = std::move(formula), .note = note};
    };
    Table table;
    table.name = "Runs";
    table.rows = size.runs;
    table.columns = {
        {.heading = "Line", .kind = Kind::Measured, .width = 18, .note = "Name of the line this run belongs to: street, garden."},
        {.heading = "From", .kind = Kind::Measured, .width = 16, .validity = chosenFrom("[Nodes.Node]"), .note = "Upper node."},
        {.heading = "To", .kind = Kind::Measured, .width = 16, .validity = chosenFrom("[Nodes.Node]"), .note = "Lower node."},
        {.heading = "Length", .kind = Kind::Measured, .format = show::general, .measure = Measure::Feet, .width = 16,
         .note = "Along the trench: a number, or a tape reading such as 12' 6\". Up to 300 ft."},
        {.heading = "Pipe", .kind = Kind::Measured, .width = 22, .validity = chosenFrom("[Stock.Pipe]"),
         .note = "Stock name: 4 SDR35, 6 SCH40. Or a bare bore."},
        {.heading = "Slope", .kind = Kind::Measured, .width = 18,
         .note = "As the trade says it: 1/8 in/ft, 1%, 1:96. Kept as typed."},
        {.heading = "Fixed level", .kind = Kind::Measured, .format = show::number(2), .measure = Measure::Feet, .width = 16,
         .validity = between(-1000, 15000), .note = "Invert at the lower end, where something holds it down. Mostly blank."},
        {.heading = "Outlet level", .kind = Kind::Measured, .format = show::number(2), .measure = Measure::Feet, .width = 16,
         .validity = between(-1000, 15000), .note = "On the last run of a line only: invert where the pipe ends."},
        {.heading = "Surface up", .kind = Kind::Measured, .width = 17, .validity = surfaces, .note = "What lies over the upper end: sets the least cover. daylight: the pipe ends in the open, no cover asked."},
        {.heading = "Surface down", .kind = Kind::Measured, .width = 17, .validity = surfaces, .note = "What lies over the lower end."},
        {.heading = "Trench width", .kind = Kind::Measured, .format = show::number(1), .measure = Measure::Inches, .width = 16,
         .validity = between(4, 60), .note = "Blank: the width on Rules for this pipe size."},
        level("Ground up", groundAt("From"), "Ground at the upper node, from Nodes."),
        level("Ground down", groundAt("To"), "Ground at the lower node."),
        level("Invert up", fromBlock("invert_block", 1), "Inside bottom of the pipe at the upper end: from the outlet uphill at the slopes typed."),
        level("Invert down", fromBlock("invert_block", 2), "Inside bottom at the lower end."),
        {.heading = "Slope %", .format = show::percent(2), .width = 15,
         .formula = whenNumbers({"Invert up", "Invert down"},
                                "IFERROR(RUN.SLOPE([Length];[Invert up];[Invert down];units);\"\")")},
        {.heading = "Slope in/ft", .width = 19, .formula = whenNumbers({"Slope %"}, "SLOPE.TEXT([Slope %])")},
        level("Drop", whenNumbers({"Invert up", "Invert down"}, "[Invert up]-[Invert down]"), "Fall over the run."),
        inches("Cover up", whenNumbers({"Ground up", "Invert up"}, "IFERROR(RUN.COVER([Ground up];[Invert up];[Pipe];units);\"\")"),
               "Ground to the outside top of the pipe."),
        inches("Cover down", whenNumbers({"Ground down", "Invert down"}, "IFERROR(RUN.COVER([Ground down];[Invert down];[Pipe];units);\"\")"), "The same at the lower end."),
        level("Cut up", whenNumbers({"Ground up", "Invert up"}, "IFERROR(RUN.CUT([Ground up];[Invert up];[Pipe];{bedding.depth};units);\"\")"),
              "Ground to trench bottom, bedding included."),
        level("Cut down", whenNumbers({"Ground down", "Invert down"}, "IFERROR(RUN.CUT([Ground down];[Invert down];[Pipe];{bedding.depth};units);\"\")"), "The same at the lower end."),
        {.heading = "Flow", .format = show::number(1), .measure = Measure::Gpm, .width = 16,
         .formula = fromBlock("flow_block", 1), .note = "All inlets upstream added up, at the rain on Job."},
        {.heading = "Capacity", .format = show::number(0), .measure = Measure::Gpm, .width = 17,
         .formula = whenNumbers({"Slope %"}, "IFERROR(PIPE.CAPACITY([Pipe];[Slope %];;;units);\"\")"), .note = "Flowing full at its slope."},
        {.heading = "Share", .format = show::percent(0), .width = 13,
         .formula = whenNumbers({"Flow", "Capacity"}, "[Flow]/[Capacity]"), .note = "Flow / capacity."},
        {.heading = "Fill", .format = show::number(2), .width = 12,
         .formula = whenNumbers({"Share"}, "IFERROR(PIPE.FILL([Pipe];[Slope %];[Flow];;units);\"\")"),
         .note = "Depth of water / bore. Blank when the pipe cannot carry the flow."},
        {.heading = "Velocity", .format = show::number(1), .measure = Measure::FeetPerSecond, .width = 16,
         .formula = whenNumbers({"Share"}, "IFERROR(PIPE.VELOCITY([Pipe];[Slope %];[Flow];;units);\"\")")},
        level("Spare fall", whenNumbers({"Drop"}, "IFERROR([Drop]-RUN.DROP([Length];INDEX([Stock.Least slope];MATCH([Pipe];[Stock.Pipe];0));0;units);\"\")"),
              "Drop beyond what the least slope on Rules asks for this size."),
        {.heading = "Place", .format = show::number(0), .width = 12, .formula = fromBlock("stations_block", 3),
         .note = "Place on its line, counted from the lower end."},
        {.heading = "Station", .format = show::number(1), .measure = Measure::Feet, .width = 15,
         .formula = fromBlock("stations_block", 2), .note = "Distance of the lower end from the outlet, along the pipe."},
        {.heading = "Check", .kind = Kind::Verdict, .width = 84,
         .formula = ownErrors({"Line", "From", "To", "Length", "Pipe", "Slope", "Fixed level", "Outlet level", "Surface up",
                               "Surface down"},
                              std::string("IF(") + blankRow + ";IF(ISBLANK([Length]);\"\";\"NO: From and To are missing\");"
                              "IF(INDEX(faults_block;[#];1)<>\"\";\"NO: \"&INDEX(faults_block;[#];1);"
                              "IF([Ground up]=\"\";\"NO: no ground level for \"&[From]&\" on Nodes\";"
                              "IF([Ground down]=\"\";\"NO: no ground level for \"&[To]&\" on Nodes\";"
                              "IF(NOT(ISNUMBER([Invert up]));\"NO: no invert: \"&IF(ISBLANK([Slope]);\"the slope is missing\";"
                              "IF(ISERROR(SLOPE.READ([Slope]));TRENCHBOOK.WHY(\"SLOPE.READ\";[Slope]);"
                              "\"the outlet level of this line is missing, or a row on the way down waits\"));"
                              "IF(NOT(ISNUMBER([Flow]));\"NO: no flow: an inlet upstream has a fault (see Water)\";"
                              "SUBSTITUTE(\"NO: \"&RUN.CHECK([Length];[Slope %];[Pipe];[Flow];[Cover up];[Cover down];"
                              "[Surface up];[Surface down];[Rules.Key:Value];;units);\"NO: OK\";\"OK\")))))))")},
    };
    Sheet sheet;
    sheet.name = "Runs";
    sheet.title = "Runs";
    sheet.purpose =
        "One row a pipe segment, upper node to lower node, in any order. Type the marked cells; the rest follows from the "
        "outlet uphill.";
    sheet.parts = {table};
    sheet.freezeColumns = 3;
    sheet.pagesWide = 2;
    sheet.tab = 0x9C4F2E;
    return sheet;
}

}  // namespace trenchbook::sheets
