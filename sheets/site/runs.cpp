// The heart of the job: one row a pipe segment, from its upper to its lower node.
#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

const char* blankRow = "IFERROR([From]&[To]=\"\";FALSE())";

// A value of a block on Workings for this row; blank rows stay blank.
std::string fromBlock(const std::string& block, int column) {
    return std::string("IF(") + blankRow + ";\"\";INDEX(" + block + ";[#];" + std::to_string(column) + "))";
}
// The same from table Planned, which has no row for one inserted here at the end.
std::string ofPlan(const std::string& column) {
    return std::string("IF(") + blankRow + ";\"\";IFERROR(1*INDEX([Planned." + column + "];[#]);\"\"))";
}
const std::string judgedBy =
    "[Length];[Slope %];[Pipe];[Flow];[Cover up];[Cover down];[Surface up];[Surface down];[Rules.Key:Value];;units)";
// A value of the row of Nodes that holds this end's node.
std::string ofNode(const std::string& end, const std::string& column) {
    return "INDEX([Nodes." + column + "];MATCH([" + end + "];[Nodes.Node];0))";
}
std::string groundAt(const std::string& end) {
    return "IF(ISBLANK([" + end + "]);\"\";IFERROR(" + ofNode(end, "Ground level") + ";\"\"))";
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

// What is worth a look though it keeps no rule from being met; several are told together.
std::string worthALook() {
    const std::string feet = "TAPE.FEET([Length];units)";
    const std::string unit = "IF(units=\"metric\";\" m\";\" ft\")";
    // A cable reaches less far through small pipe.
    const std::string spacing =
        "IF(PIPE.BORE([Pipe];units)>IF(units=\"metric\";114;4.5);{cleanout.spacing.6in};{cleanout.spacing.4in})";
    // Told on the run in which the limit is passed, not again on each run below it.
    const std::string reach = "IF(AND(N([Since cleanout])>" + spacing + ";N([Since cleanout])-" + feet +
                              "<=" + spacing + ");TEXT([Since cleanout];\"0\")&" + unit +
                              "&\" of pipe since \"&IF([From head]=1;\"the head of the line, "
                              "which has no cleanout\";\"the last cleanout\")&\", rule asks one every \"&" +
                              spacing + "&" + unit + ";\"\")";
    const std::string turn = "N(" + ofNode("From", "Turn") + ")";
    const std::string turned =
        "IF(AND(N([Turned])>{cleanout.turn};N([Turned])-" + turn +
        "<={cleanout.turn});\"turns \"&TEXT([Turned];\"0\")&\" degrees since the last cleanout, rule allows \"&{cleanout.turn};\"\")";
    // Between two shots the ground counts as straight: a bank or a step hides in a steep or sudden fall. Common
    // practice, no source: 4 ft within 20 ft, or 4 % over more than 25 ft.
    const std::string fall = "ABS([Ground up]-[Ground down])";
    const std::string bank = "IF(OR(AND(" + fall + ">IF(units=\"metric\";1.2;4);" + feet +
                             "<IF(units=\"metric\";6;20));AND(" + fall + ">0.04*" + feet + ";" + feet +
                             ">IF(units=\"metric\";7.5;25)));\"the ground falls \"&TEXT(" + fall +
                             ";\"0.0\")&" + unit + "&\" between two shots: shoot the break\";\"\")";
    return whenNumbers({"Ground up", "Ground down"},
                       "IFERROR(TEXTJOIN(\"; \";1;" + reach + ";" + turned + ";" + bank + ");\"\")");
}

}  // namespace

Sheet runsSheet(const JobSize& size) {
    const Validity surfaces =
        choice({"lawn", "lawn end", "bed", "walk", "drive", "street", "daylight"}, false);
    const auto level = [](const char* heading, std::string formula, const char* note) {
        return Column{.heading = heading,
                      .format = show::number(2),
                      .measure = Measure::Feet,
                      .width = 17,
                      .formula = std::move(formula),
                      .note = note};
    };
    const auto inches = [](const char* heading, std::string formula, const char* note) {
        return Column{.heading = heading,
                      .format = show::number(1),
                      .measure = Measure::Inches,
                      .width = 15,
                      .formula = std::move(formula),
                      .note = note};
    };
    const auto helper = [](const char* heading, Format format, std::string formula) {
        return Column{
            .heading = heading, .format = format, .width = 20, .formula = std::move(formula), .helper = true};
    };
    Table table;
    table.name = "Runs";
    table.rows = size.runs;
    table.columns = {
        {.heading = "Line",
         .kind = Kind::Measured,
         .width = 18,
         .note = "Name of the line this run belongs to: street, garden."},
        {.heading = "From",
         .kind = Kind::Measured,
         .width = 16,
         .validity = chosenFrom("[Nodes.Node]"),
         .note = "Upper node."},
        {.heading = "To",
         .kind = Kind::Measured,
         .width = 16,
         .validity = chosenFrom("[Nodes.Node]"),
         .note = "Lower node."},
        {.heading = "Verdict",
         .kind = Kind::Verdict,
         .width = 16,
         .formula = "IFERROR(LEFT([Check];FIND(\":\";[Check]&\":\")-1);\"\")",
         .note = "First word of Check, which stands at the end of the row.",
         .centred = true},
        {.heading = "Length",
         .kind = Kind::Measured,
         .format = show::general,
         .measure = Measure::Feet,
         .width = 16,
         .note = "Along the trench: a number, or a tape reading such as 12' 6\". Up to 300 ft."},
        {.heading = "Pipe",
         .kind = Kind::Measured,
         .width = 22,
         .validity = chosenFrom("[Stock.Pipe]"),
         .note = "Stock name: 4 SDR35, 6 SCH40. Or a bare bore."},
        {.heading = "Slope",
         .kind = Kind::Measured,
         .measure = Measure::Slope,
         .width = 18,
         .note = "As the trade says it: 1/8 in/ft, 1%, 1:96. Kept as typed."},
        {.heading = "Fixed level",
         .kind = Kind::Measured,
         .format = show::number(2),
         .measure = Measure::Feet,
         .width = 16,
         .validity = between(-1000, 15000),
         .note = "Invert at the lower end, where something holds it down. Mostly blank."},
        {.heading = "Outlet level",
         .kind = Kind::Measured,
         .format = show::number(2),
         .measure = Measure::Feet,
         .width = 16,
         .validity = between(-1000, 15000),
         .note = "On the last run of a line only: invert where the pipe ends."},
        {.heading = "Outlet highest",
         .kind = Kind::Measured,
         .format = show::number(2),
         .measure = Measure::Feet,
         .width = 16,
         .validity = between(-1000, 15000),
         .note =
             "On the last run only: highest invert that the plan may give the outlet; Outlet level is its lowest. Blank: no limit."},
        {.heading = "Outlet water",
         .kind = Kind::Measured,
         .format = show::number(2),
         .measure = Measure::Feet,
         .width = 16,
         .validity = between(-1000, 15000),
         .note =
             "On the last run only: level of the water that the pipe ends in. Blank: free fall; at a tee where it bubbles over, from Pit, or the rim and the head over it."},
        {.heading = "Pipe choice",
         .kind = Kind::Measured,
         .width = 24,
         .note =
             "Pipes that the plan may choose from, with bars between: 4 SDR35|6 SDR35. Blank: the pipe typed."},
        {.heading = "Surface up",
         .kind = Kind::Measured,
         .width = 17,
         .validity = surfaces,
         .note =
             "What lies over the upper end: sets the least cover. daylight: the pipe ends in the open, no cover asked."},
        {.heading = "Surface down",
         .kind = Kind::Measured,
         .width = 17,
         .validity = surfaces,
         .note = "What lies over the lower end."},
        {.heading = "Trench width",
         .kind = Kind::Measured,
         .format = show::number(1),
         .measure = Measure::Inches,
         .width = 16,
         .validity = between(4, 60),
         .note = "Blank: the width on Rules for this pipe size."},
        level("Ground up", groundAt("From"), "Ground at the upper node, from Nodes."),
        level("Ground down", groundAt("To"), "Ground at the lower node."),
        level("Invert up", fromBlock("invert_block", 1),
              "Inside bottom of the pipe at the upper end: from the outlet uphill at the slopes typed."),
        level("Invert down", fromBlock("invert_block", 2), "Inside bottom at the lower end."),
        {.heading = "Slope %",
         .format = show::percent(2),
         .width = 15,
         .formula = whenNumbers({"Invert up", "Invert down"},
                                "IFERROR(RUN.SLOPE([Length];[Invert up];[Invert down];units);\"\")")},
        {.heading = "Slope in/ft", .width = 19, .formula = whenNumbers({"Slope %"}, "SLOPE.TEXT([Slope %])")},
        level("Drop", whenNumbers({"Invert up", "Invert down"}, "[Invert up]-[Invert down]"),
              "Fall over the run."),
        inches("Cover up",
               whenNumbers({"Ground up", "Invert up"},
                           "IFERROR(RUN.COVER([Ground up];[Invert up];[Pipe];units);\"\")"),
               "Ground to the outside top of the pipe."),
        inches("Cover down",
               whenNumbers({"Ground down", "Invert down"},
                           "IFERROR(RUN.COVER([Ground down];[Invert down];[Pipe];units);\"\")"),
               "The same at the lower end."),
        level("Cut up",
              whenNumbers({"Ground up", "Invert up"},
                          "IFERROR(RUN.CUT([Ground up];[Invert up];[Pipe];{bedding.depth};units);\"\")"),
              "Ground to trench bottom, bedding included."),
        level("Cut down",
              whenNumbers({"Ground down", "Invert down"},
                          "IFERROR(RUN.CUT([Ground down];[Invert down];[Pipe];{bedding.depth};units);\"\")"),
              "The same at the lower end."),
        {.heading = "Flow",
         .format = show::number(1),
         .measure = Measure::Gpm,
         .width = 16,
         .formula = std::string("IF(") + blankRow +
                    ";\"\";IF(peak_used=\"yes\";INDEX(peak_block;[#];4);INDEX(flow_block;[#];1)))",
         .note =
             "All inlets upstream added up, at the rain on Job. Where Peak counts travel time, the flow from there."},
        {.heading = "Capacity",
         .format = show::number(0),
         .measure = Measure::Gpm,
         .width = 17,
         .formula = whenNumbers({"Slope %"}, "IFERROR(PIPE.CAPACITY([Pipe];[Slope %];;;units);\"\")"),
         .note = "Flowing full at its slope."},
        {.heading = "Share",
         .format = show::percent(0),
         .width = 13,
         .formula = whenNumbers({"Flow", "Capacity"}, "[Flow]/[Capacity]"),
         .note = "Flow / capacity."},
        {.heading = "Fill",
         .format = show::number(2),
         .width = 12,
         .formula = whenNumbers({"Share"}, "IFERROR(PIPE.FILL([Pipe];[Slope %];[Flow];;units);\"\")"),
         .note = "Depth of water / bore. Blank when the pipe cannot carry the flow."},
        {.heading = "Velocity",
         .format = show::number(1),
         .measure = Measure::FeetPerSecond,
         .width = 16,
         .formula = whenNumbers({"Share"}, "IFERROR(PIPE.VELOCITY([Pipe];[Slope %];[Flow];;units);\"\")")},
        {.heading = "Wall shear",
         .format = Format{Format::As::Number, 3},
         .measure = Measure::PoundsPerSquareFoot,
         .width = 17,
         .formula = whenNumbers({"Share"}, "IFERROR(PIPE.SHEAR([Pipe];[Slope %];[Flow];;units);\"\")"),
         .note = "Mean drag of the water on the wall at this flow: what moves silt along."},
        {.heading = "Self-cleaning",
         .width = 17,
         .formula = whenNumbers(
             {"Slope %"},
             "IFERROR(IF([Slope %]>=PIPE.SELFCLEAN([Pipe];{velocity.min};;units);\"yes\";\"no\");\"\")"),
         .note = "yes: flowing full it would reach velocity.min on Rules, which keeps silt moving.",
         .centred = true},
        level(
            "Spare fall",
            whenNumbers(
                {"Drop"},
                "IFERROR([Drop]-RUN.DROP([Length];INDEX([Stock.Least slope];MATCH([Pipe];[Stock.Pipe];0));0;units);\"\")"),
            "Drop beyond what the least slope on Rules asks for this size."),
        {.heading = "Place",
         .format = show::number(0),
         .width = 12,
         .formula = fromBlock("stations_block", 3),
         .note = "Place on its line, counted from the lower end."},
        {.heading = "Station",
         .format = show::number(1),
         .measure = Measure::Feet,
         .width = 15,
         .formula = fromBlock("stations_block", 2),
         .note = "Distance of the lower end from the outlet, along the pipe."},
        level("Water up", "IF([Water row];INDEX(levels_block;[#];1);\"\")",
              "Level of the water at the upper end, or of the pressure where the pipe runs full."),
        level("Water down", "IF([Water row];INDEX(levels_block;[#];2);\"\")", "The same at the lower end."),
        {.heading = "Runs full",
         .format = show::percent(0),
         .width = 13,
         .formula = "IF([Water row];INDEX(levels_block;[#];3);\"\")",
         .note = "Share of the length."},
        {.heading = "State",
         .width = 24,
         .formula = "IF([Water row];INDEX(state_block;[#];1);\"\")",
         .note = "free, part drowned, full; drops in: the water below stands under the invert."},
        {.heading = "Since cleanout",
         .format = show::number(1),
         .measure = Measure::Feet,
         .width = 17,
         .formula = "IF(" + std::string(blankRow) + ";\"\";IFERROR(1*INDEX(cleanouts_block;[#];1);\"\"))",
         .note =
             "Pipe from the last cleanout, basin or channel upstream, or from the head, down to the lower end."},
        {.heading = "Turned",
         .format = show::number(1),
         .measure = Measure::Degrees,
         .width = 15,
         .formula = "IF(" + std::string(blankRow) + ";\"\";IFERROR(1*INDEX(cleanouts_block;[#];2);\"\"))",
         .note = "Turns on that way."},
        level("Plan up", ofPlan("Invert up"), "Invert of the cheapest plan that keeps every rule; see Plan."),
        level("Plan down", ofPlan("Invert down"), "The same at the lower end."),
        {.heading = "Above plan",
         .format = show::money,
         .measure = Measure::Dollars,
         .width = 17,
         .formula = ofPlan("More"),
         .note =
             "What the levels typed cost more than the plan's; one run may be cheaper where another is dearer."},
        // Read by other columns and by Workings.
        helper("Water below", show::number(2),
               "IF(ISNUMBER([Outlet water]);[Outlet water];IFERROR(IF(" + ofNode("To", "Kind") +
                   "=\"tee\";IF(AND([To]=pit_node;ISNUMBER(pit_bubble_level));pit_bubble_level;1*" +
                   ofNode("To", "Rim") + "+{rim.head});\"\");\"\"))"),
        helper("K", show::number(2),
               "IF(" + std::string(blankRow) + ";\"\";IFERROR(1*" + ofNode("From", "K") + ";0))"),
        helper("Water row", show::general, "ISNUMBER(INDEX(levels_block;[#];1))"),
        // In the box or at the head the water stands at the energy of the pipe that leaves, and the loss into it; a
        // full pipe's level holds both already.
        helper(
            "Stands up", show::number(3),
            whenNumbers(
                {"Water up", "Invert up"},
                "[Water up]+IF(AND([K]>=1;[Water up]<[Invert up]+PIPE.BORE([Pipe];units)/IF(units=\"metric\";1000;12));"
                "[K]*N([Velocity])^2/2/IF(units=\"metric\";9.80665;32.174);0)")),
        helper("From head", show::general, "IFERROR(1*INDEX(cleanouts_block;[#];3);0)"),
        helper("Sharp turns", show::general, "IFERROR(1*INDEX(cleanouts_block;[#];4);0)"),
        helper(
            "Cover asked up", show::number(1),
            "IF(" + std::string(blankRow) + ";\"\";IFERROR(INDEX(cover_block;[#];1);\"unknown surface\"))"),
        helper(
            "Cover asked down", show::number(1),
            "IF(" + std::string(blankRow) + ";\"\";IFERROR(INDEX(cover_block;[#];2);\"unknown surface\"))"),
        helper("Plan pipe", show::text,
               "IFERROR(IF([Pipe choice]<>\"\";[Pipe choice]&\"\";[Pipe]&\"\");\"error\")"),
        helper("Next invert", show::number(3),
               "IFERROR(INDEX([Runs.Invert up];MATCH([To];[Runs.From];0));\"\")"),
        helper("Judged", show::text,
               whenNumbers({"Slope %", "Flow", "Ground up", "Ground down"}, "RUN.CHECK(" + judgedBy)),
        helper("Look", show::text, worthALook()),
        {.heading = "Check",
         .kind = Kind::Verdict,
         .width = 84,
         .formula = ownErrors(
             {"Line", "From", "To", "Length", "Pipe", "Slope", "Fixed level", "Outlet level",
              "Outlet highest", "Outlet water", "Pipe choice", "Surface up", "Surface down"},
             std::string("IF(") + blankRow +
                 ";IF(ISBLANK([Length]);\"\";\"NO: From and To are missing\");"
                 "IF(INDEX(faults_block;[#];1)<>\"\";\"NO: \"&INDEX(faults_block;[#];1);"
                 "IF([Ground up]=\"\";\"NO: no ground level for \"&[From]&\" on Nodes\";"
                 "IF([Ground down]=\"\";\"NO: no ground level for \"&[To]&\" on Nodes\";"
                 "IF(NOT(ISNUMBER([Invert up]));\"NO: no invert: \"&INDEX(why_block;[#];1);"
                 "IF(NOT(ISNUMBER([Flow]));\"NO: no flow: \"&IF(peak_used=\"yes\";IFERROR(INDEX(peak_why_block;[#];1);\"see Peak\");"
                 "\"an inlet upstream has a fault (see Water)\");"
                 "IF(AND(ISNUMBER([Next invert]);[Invert down]<N([Next invert])-0.0005);\"NO: comes in \"&TEXT(N([Next invert])-[Invert down];\"0.00\")&"
                 "IF(units=\"metric\";\" m\";\" ft\")&\" lower than the run that leaves \"&[To];"
                 "IF(ISERROR([Judged]);\"NO: \"&IF([Surface up]=\"\";\"Surface up is missing\";IF([Surface down]=\"\";\"Surface down is missing\";"
                 "TRENCHBOOK.WHY(\"RUN.CHECK\";" +
                 judgedBy +
                 "));"
                 "IF([Judged]<>\"OK\";\"NO: \"&[Judged];"
                 "IF(NOT([Water row]);\"NO: no water level: \"&INDEX(state_block;[#];1);"
                 "IF([Look]<>\"\";\"CHECK: \"&[Look];\"OK\")))))))))))")},
    };
    Sheet sheet;
    sheet.name = "Runs";
    sheet.title = "Runs";
    sheet.purpose =
        "One row a pipe segment, upper node to lower node, in any order. Type the marked cells; the rest follows from the "
        "outlet uphill.";
    sheet.parts = {table};
    sheet.freezeColumns = 4;
    sheet.pagesWide = 3;
    sheet.tab = 0x9C4F2E;
    return sheet;
}

}  // namespace trenchbook::sheets
