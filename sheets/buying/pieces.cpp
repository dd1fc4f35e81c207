// What every run and every node is made of, counted: the ground under Takeoff and under the crew's list of pieces.
//
// Trench mirrors Runs row by row, Pieces mirrors Nodes; Cuts strings all lengths of pipe together, Counts all pieces,
// one row each with the code of the price list. Codes say what a thing is: BEND45-4SDR35 is a 45 degree bend for
// 4 SDR35, WYE-6X4SDR35 a 6 in wye with a 4 in branch. A supplier's own code goes into table Codes.
#include "buying/money.h"

namespace trenchbook::sheets {
namespace {

constexpr int spareRows = 50;  // as the blocks on Workings: rows that may be inserted before Job says no
constexpr int pipeKinds = 8;   // different stock pipes on one job

// The cell of a mirrored table in this row's place; blank stays blank.
std::string mirrored(const std::string& column) { return "IFERROR(INDEX([" + column + "];[#])&\"\";\"\")"; }
// The value of a column in the row where another column holds `key`.
std::string found(const std::string& column, const std::string& key, const std::string& where) {
    return "INDEX([" + column + "];MATCH(" + key + ";[" + where + "];0))";
}
std::string whenGiven(const std::string& cell, const std::string& formula) {
    return "IF([" + cell + "]=\"\";\"\";" + formula + ")";
}
// "4" of 4SDR35, as a number.
std::string nominalOf(const std::string& pipe) {
    return "IFERROR(VALUE(LEFT(" + pipe + ";2));IFERROR(VALUE(LEFT(" + pipe + ";1));\"\"))";
}
// "SDR35" of 4SDR35.
std::string systemOf(const std::string& pipe) {
    return "MID(" + pipe + ";LEN(" + nominalOf(pipe) + ")+1;30)";
}
// Risers into lines over 4 in are 4 in.
std::string riserOf(const std::string& pipe) {
    return "IF(N(" + nominalOf(pipe) + ")>4;4&" + systemOf(pipe) + ";" + pipe + ")";
}
// Sockets that a pint of cement makes, by nominal size.
const std::string jointsAPint =
    "IF([Nominal]<4;{glue.joints.3in};IF([Nominal]<6;{glue.joints.4in};IF([Nominal]<8;{glue.joints.6in};{glue.joints.8in})))";
std::string cementFor(const std::string& sockets) {
    return "IF(AND(ISNUMBER([Nominal]);ISNUMBER(" + sockets +
           "));IF(ISNUMBER(SEARCH(\"CORRUGATED\";[Pipe]));0;" + sockets + "/" + jointsAPint + ");\"\")";
}
// Levels are in ft or m, pipe sizes and widths in inches or mm.
const std::string smallPerLarge = "IF(units=\"metric\";1000;12)";
// ft3 to cu yd; m3 stay.
const std::string cubicPerBulk = "IF(units=\"metric\";1;27)";

Table trench(const JobSize& size) {
    const auto of = [](const char* heading, const std::string& formula, Format format, Measure measure,
                       double width, const char* note) {
        return Column{.heading = heading,
                      .format = format,
                      .measure = measure,
                      .width = width,
                      .formula = formula,
                      .note = note};
    };
    const std::string into = found("Trench.Pipe", "[To]", "Trench.From");
    const std::string volume = "[Length]*[Width]";
    Table table;
    table.name = "Trench";
    table.rows = size.runs + spareRows;
    table.columns = {
        of("From", mirrored("Runs.From"), show::general, Measure::Plain, 20,
           "Each row is the run in the same place on Runs."),
        of("To", mirrored("Runs.To"), show::general, Measure::Plain, 20, ""),
        of("Pipe",
           whenGiven("From", "UPPER(SUBSTITUTE(SUBSTITUTE(SUBSTITUTE(SUBSTITUTE(" + mirrored("Runs.Pipe") +
                                 ";\" \";\"\");\"-\";\"\");\".\";\"\");\"SCHEDULE\";\"SCH\"))"),
           show::general, Measure::Plain, 26, "The pipe's name without blanks, as codes write it."),
        of("Nominal", whenGiven("Pipe", nominalOf("[Pipe]")), show::general, Measure::Plain, 18,
           "Nominal size."),
        of("Length", whenGiven("From", "IFERROR(TAPE.FEET(INDEX([Runs.Length];[#]);units);\"\")"),
           show::number(2), Measure::Feet, 18, ""),
        of("Next pipe", whenGiven("From", "IFERROR(" + into + ";\"\")"), show::general, Measure::Plain, 26,
           "Pipe of the run that this one flows into."),
        of("Adapter",
           "IF(OR([Pipe]=\"\";[Next pipe]=\"\";[Pipe]=[Next pipe]);\"\";"
           "IF(ISNUMBER(MATCH(" +
               found("Pieces.Kind", "[To]", "Pieces.Node") +
               ";{\"basin\";\"channel\"};0));\"\";"
               "IF(IFERROR(ROUND(PIPE.OUTSIDE([Nominal]&" +
               systemOf("[Next pipe]") +
               ");3);-1)="
               "IFERROR(ROUND(PIPE.OUTSIDE([Pipe]);3);-2);\"\";\"ADAPTER-\"&[Pipe]&\"-\"&" +
               systemOf("[Next pipe]") + ")))",
           show::general, Measure::Plain, 44,
           "Needed where the next pipe's system has another outside diameter at this size."),
        of("Bells",
           "IF(AND(ISNUMBER([Length]);[Pipe]<>\"\");IFERROR(MAX(0;ROUNDUP([Length]/" +
               found("Pipes.Stick", "[Pipe]", "Pipes.Pipe") + ";0)-1);\"\");\"\")",
           show::number(0), Measure::Plain, 16, "Joints between the sticks of the run."),
        of("Cement", cementFor("([Bells]+2*([Adapter]<>\"\"))"), show::number(2), Measure::Plain, 18,
           "Pints for the bells and the adapter."),
        of("Width",
           whenGiven(
               "From",
               "IF(N(INDEX([Runs.Trench width];[#]))>0;N(INDEX([Runs.Trench width];[#]));"
               "IF(N([Nominal])<6;{trench.width.4in};IF(N([Nominal])<8;{trench.width.6in};{trench.width.8in})))/" +
                   smallPerLarge),
           show::number(2), Measure::Feet, 18, "Trench width: of the run, or from Rules by pipe size."),
        of("Bank",
           whenGiven(
               "From",
               "IFERROR(TRENCH.VOLUME([Length];[Width];INDEX([Runs.Cut up];[#]);INDEX([Runs.Cut down];[#]);units);\"\")"),
           show::number(2), Measure::CubicYards, 18, "Soil in place that comes out."),
        of("Bedding",
           "IF(ISNUMBER([Length]);" + volume + "*{bedding.depth}/" + smallPerLarge + "/" + cubicPerBulk +
               ";\"\")",
           show::number(2), Measure::CubicYards, 18, "Sand under the pipe, at the depth on Rules."),
        of("Pipe volume",
           "IF(ISNUMBER([Length]);IFERROR(PI()/4*(PIPE.OUTSIDE([Pipe];units)/" + smallPerLarge +
               ")^2*[Length]/" + cubicPerBulk + ";\"\");\"\")",
           show::number(3), Measure::CubicYards, 20, "Room that the pipe takes."),
        of("Lawn",
           "IF(ISNUMBER([Length]);" + volume +
               "*(ISNUMBER(SEARCH(\"lawn\";INDEX([Runs.Surface up];[#])))+"
               "ISNUMBER(SEARCH(\"lawn\";INDEX([Runs.Surface down];[#]))))/2;\"\")",
           show::number(1), Measure::SquareFeet, 18,
           "Trench under lawn; half of it where only one end is lawn."),
        of("Asked", whenGiven("From", "IFERROR(INDEX(asked_block;[#];1)+INDEX(asked_block;[#];2);\"\")"),
           show::number(0), Measure::Plain, 16, "Cleanouts that the rules ask here and Nodes does not have."),
        of("Asked at",
           "IF(N([Asked])>0;TEXTJOIN(\"; \";1;IF(INDEX(asked_block;[#];1)>0;\"at \"&[From];\"\");IF(INDEX(asked_block;[#];2)>0;"
           "\"on \"&[From]&\" to \"&[To]&IF(INDEX(asked_block;[#];2)>1;\" \"&INDEX(asked_block;[#];2)&\" x\";\"\")&\", \"&TEXT(INDEX(asked_block;[#];3);\"0\")&"
           "IF(units=\"metric\";\" m\";\" ft\")&\" below \"&[From];\"\"));\"\")",
           show::general, Measure::Plain, 50, ""),
        Column{
            .heading = "Check",
            .kind = Kind::Verdict,
            .width = 66,
            .formula = firstOf(
                {{"[From]&[To]=\"\"", "\"\""},
                 {"NOT(ISNUMBER([Length]))", "\"NO: the length of this run cannot be read\""},
                 {"[Pipe]=\"\"", "\"NO: no pipe\""},
                 {"ISERROR(PIPE.OUTSIDE([Pipe]))", "\"NO: \"&TRENCHBOOK.WHY(\"PIPE.OUTSIDE\";[Pipe])"},
                 {"NOT(ISNUMBER([Bells]))", "\"NO: no stick length: Prices has no pack for PIPE-\"&[Pipe]"},
                 {"NOT(ISNUMBER([Bank]))", "\"CHECK: no cut yet; digging is not counted\""}},
                "\"OK\"")},
    };
    return table;
}

// The items that a node can ask for: heading of its quantity, and of its code.
struct Item {
    const char* heading;
    const char* code;
};
const std::vector<Item> items = {{"Wyes", "Wye code"},           {"Branch wyes", "Branch wye code"},
                                 {"Reducers", "Reducer code"},   {"22.5 bends", "22.5 code"},
                                 {"45 bends", "45 code"},        {"Riser bends", "Riser bend code"},
                                 {"Couplings", "Coupling code"}, {"Bodies", "Body code"},
                                 {"Devices", "Device code"}};

Table pieces(const JobSize& size) {
    const auto number = [](const char* heading, const std::string& formula, const char* note) {
        return Column{.heading = heading,
                      .format = show::number(0),
                      .width = 17,
                      .formula = "IF([Node]=\"\";\"\";" + formula + ")",
                      .note = note};
    };
    const auto word = [](const char* heading, const std::string& formula, double width, const char* note) {
        return Column{
            .heading = heading, .format = show::general, .width = width, .formula = formula, .note = note};
    };
    const auto code = [&](const char* heading, const char* quantity, const std::string& formula) {
        return word(heading, std::string("IF(N([") + quantity + "])>0;" + formula + ";\"\")", 40, "");
    };
    const std::string boxed = "OR([Kind]=\"basin\";[Kind]=\"channel\")";
    const std::string upright = "OR([Kind]=\"downspout\";[Kind]=\"cleanout\")";
    const std::string enters =
        "AND(" + upright + ";[Pipes in]>0)";  // its riser comes into a line that goes on
    const std::string bend = "IFERROR(INDEX([Nodes.Bend made of];[#])&\"\";\"\")";
    const std::string without22 = "SUBSTITUTE(" + bend + ";\"22.5\";\"\")";
    const std::string system = systemOf("[Pipe]");
    Table table;
    table.name = "Pieces";
    table.rows = size.nodes + spareRows;
    table.columns = {
        word("Node", mirrored("Nodes.Node"), 20, "Each row is the node in the same place on Nodes."),
        word("Kind", whenGiven("Node", mirrored("Nodes.Kind")), 20, ""),
        word("Pipe",
             whenGiven("Node", "IFERROR(" + found("Trench.Pipe", "[Node]", "Trench.From") + ";IFERROR(" +
                                   found("Trench.Pipe", "[Node]", "Trench.To") + ";\"\"))"),
             26, "Of the run that leaves; at the end of a line, of the run that arrives."),
        word("Nominal", whenGiven("Pipe", nominalOf("[Pipe]")), 18, ""),
        number("Pipes in", "COUNTIF([Trench.To];[Node])", "Runs that end here."),
        number("Same size", "SUMPRODUCT(([Trench.To]=[Node])*([Trench.Nominal]=[Nominal]))",
               "Of these, runs of this node's size."),
        {.heading = "Small",
         .format = show::general,
         .width = 16,
         .formula =
             "IF([Node]=\"\";\"\";IF([Pipes in]>[Same size];MINIFS([Trench.Nominal];[Trench.To];[Node]);MIN(4;N([Nominal]))))",
         .note = "Size of the branch: of the smallest run that ends here, or of a riser."},
        number("Wyes", "IF(" + boxed + ";0;MAX(0;[Same size]-1)+IF(AND(" + enters + ";N([Nominal])<=4);1;0))",
               "One for each run that joins another of its size, and one where a riser comes in."),
        number("Branch wyes",
               "IF(" + boxed + ";0;MAX(0;[Pipes in]-[Same size]-IF([Same size]=0;1;0))+IF(AND(" + enters +
                   ";N([Nominal])>4);1;0))",
               "Wyes with a smaller branch."),
        number("Reducers", "IF(AND([Pipes in]>0;[Same size]=0;NOT(" + boxed + "));1;0)",
               "Where the pipe grows."),
        number("22.5 bends", "IF(" + boxed + ";0;(LEN(" + bend + ")-LEN(" + without22 + "))/4)",
               "From the turn on Nodes."),
        number(
            "45 bends",
            "IF(" + boxed + ";0;(LEN(" + without22 + ")-LEN(SUBSTITUTE(" + without22 + ";\"45\";\"\")))/2)",
            "From the turn on Nodes."),
        number("Riser bends", "IF(" + upright + ";IF([Pipes in]>0;1;2);0)",
               "45 degrees: one over a wye, two at the head of a line."),
        number(
            "Couplings",
            "IF(AND([Pipes in]>0;COUNTIF([Trench.From];[Node])>0;[Wyes]+[Branch wyes]+[Reducers]+[22.5 bends]+[45 bends]+[Riser bends]=0;"
            "NOT(" +
                boxed + ");SUMPRODUCT(([Trench.To]=[Node])*([Trench.Adapter]<>\"\"))=0);1;0)",
            "Where two runs meet without a fitting."),
        number(
            "Bodies",
            "IF([Kind]=\"basin\";[Pipes in]+(COUNTIF([Trench.From];[Node])>0);IF(OR([Kind]=\"channel\";[Kind]=\"cleanout\";[Kind]=\"tee\");1;0))",
            "Pipe connections of a basin or channel, the cleanout fitting, the tee."),
        number(
            "Devices",
            "IF(OR(" + mirrored("Nodes.Device") +
                "<>\"\";ISNUMBER(MATCH([Kind];{\"downspout\";\"channel\";\"basin\";\"tee\";\"outlet\";\"cap\"};0)));1;0)",
            "The piece named on Nodes, or the usual one of its kind."),
        {.heading = "Riser",
         .format = show::number(2),
         .measure = Measure::Feet,
         .width = 17,
         .formula =
             "IF([Node]=\"\";\"\";IF(" + upright + ";IFERROR(MAX(0;INDEX([Nodes.Ground level];[#])-" +
             found("Runs.Invert up", "[Node]", "Runs.From") +
             ");\"\");IF([Kind]=\"tee\";IFERROR(MAX(0;"
             "IF(ISNUMBER(INDEX([Nodes.Opening];[#]));INDEX([Nodes.Opening];[#]);INDEX([Nodes.Ground level];[#]))-" +
             found("Runs.Invert down", "[Node]", "Runs.To") + ");\"\");0)))",
         .note = "Upright pipe: from the invert to the ground, or to the rim of the tee."},
        word("Riser pipe", "IF(" + upright + ";" + riserOf("[Pipe]") + ";IF([Kind]=\"tee\";[Pipe];\"\"))", 26,
             "Risers into lines over 4 in are 4 in."),
        code("Wye code", "Wyes", "\"WYE-\"&[Pipe]"),
        code("Branch wye code", "Branch wyes", "\"WYE-\"&[Nominal]&\"X\"&[Small]&" + system),
        code("Reducer code", "Reducers", "\"REDUCER-\"&[Nominal]&\"X\"&[Small]&" + system),
        code("22.5 code", "22.5 bends", "\"BEND22-\"&[Pipe]"),
        code("45 code", "45 bends", "\"BEND45-\"&[Pipe]"),
        code("Riser bend code", "Riser bends", "\"BEND45-\"&[Riser pipe]"),
        code("Coupling code", "Couplings", "\"COUPLING-\"&[Pipe]"),
        code(
            "Body code", "Bodies",
            "IF([Kind]=\"cleanout\";\"CLEANOUT-\"&[Riser pipe];IF([Kind]=\"tee\";\"TEE-\"&[Pipe];\"HUB-\"&[Pipe]))"),
        code(
            "Device code", "Devices",
            "IF(" + mirrored("Nodes.Device") + "<>\"\";" + mirrored("Nodes.Device") +
                ";IF([Kind]=\"downspout\";\"DOWNSPOUT-\"&[Riser pipe];IF([Kind]=\"basin\";\"BASIN-12\";"
                "IF([Kind]=\"channel\";\"CHANNEL\";IF([Kind]=\"tee\";\"TEEGRATE-\"&[Nominal];IF([Kind]=\"outlet\";\"GUARD-\"&[Nominal];"
                "\"CAP-\"&[Pipe]))))))"),
        number(
            "Sockets",
            "3*([Wyes]+[Branch wyes])+2*([Reducers]+[22.5 bends]+[45 bends]+[Riser bends]+[Couplings])+[Bodies]*IF([Kind]=\"tee\";3;1)+"
            "IF(OR([Kind]=\"downspout\";[Kind]=\"cap\";[Kind]=\"outlet\");1;0)",
            "Glued joints of the fittings: three at a wye or tee, two at a bend, coupling or reducer, one elsewhere."),
        {.heading = "Cement",
         .format = show::number(2),
         .width = 18,
         .formula = cementFor("[Sockets]"),
         .note = "Pints."},
        word(
            "In words",
            whenGiven(
                "Node",
                "TEXTJOIN(\", \";1;IF([Wyes]>0;[Wyes]&\" wye \"&[Pipe];\"\");IF([Branch wyes]>0;[Branch wyes]&\" wye \"&[Nominal]&\" x \"&[Small];\"\");"
                "IF([Reducers]>0;\"reducer \"&[Nominal]&\" x \"&[Small];\"\");IF([22.5 bends]>0;[22.5 bends]&\" x 22.5 bend\";\"\");"
                "IF([45 bends]>0;[45 bends]&\" x 45 bend\";\"\");IF([Riser bends]>0;[Riser bends]&\" x 45 bend for the riser\";\"\");IF([Couplings]>0;\"coupling\";\"\");IF([Bodies]>0;IF([Kind]=\"tee\";\"tee\";"
                "IF([Kind]=\"cleanout\";\"cleanout fitting\";[Bodies]&\" hub\"));\"\");IF([Devices]>0;[Device code];\"\");"
                "IF(N([Riser])>0;\"riser \"&TEXT([Riser];\"0.00\");\"\"))"),
            90, "For the crew."),
        Column{
            .heading = "Check",
            .kind = Kind::Verdict,
            .width = 60,
            .formula = "IFERROR(" +
                       firstOf({{"[Node]=\"\"", "\"\""},
                                {"[Pipe]=\"\"", "\"CHECK: no run starts or ends here; nothing is counted\""},
                                {"AND(ISNUMBER(INDEX([Nodes.Turn];[#]));N(INDEX([Nodes.Turn];[#]))>0;" +
                                     bend + "=\"\")",
                                 "\"NO: the turn has no bend; nothing is counted for it\""},
                                {"NOT(ISNUMBER([Riser]))", "\"NO: the riser's length is not known yet\""},
                                {"NOT(ISNUMBER([Sockets]))", "\"NO: cannot be counted\""}},
                               "\"OK\"") +
                       ";\"NO: a cell of this node holds an error\")"},
    };
    return table;
}

Table cuts(const JobSize& size) {
    const int runs = size.runs + spareRows + 2;  // the mirrored tables with their edge rows
    const int nodes = size.nodes + spareRows + 2;
    Table table;
    table.name = "Cuts";
    table.rows = runs + nodes;
    table.columns = {
        {.heading = "Piece for", .format = show::general, .width = 44},
        {.heading = "Pipe of it", .format = show::general, .width = 26},
        {.heading = "Cut length", .format = show::number(2), .measure = Measure::Feet, .width = 20},
        {.heading = "New",
         .format = show::number(0),
         .width = 14,
         .formula =
             "IF([Pipe of it]=\"\";\"\";IF(COUNTIF(INDEX([Cuts.Pipe of it];1):[^Pipe of it];[Pipe of it])=0;"
             "MAX(INDEX([Cuts.New];1):[^New])+1;\"\"))",
         .note = "Numbers the pipes in use."},
    };
    table.columns.push_back(
        {.heading = "Stick",
         .format = show::number(2),
         .measure = Measure::Feet,
         .width = 18,
         .formula = "IF([Pipe of it]=\"\";\"\";IFERROR(" +
                    found("Pipes.Stick", "[Pipe of it]", "Pipes.Pipe") + ";\"\"))",
         .note =
             "What it is cut from. Blank: Prices has no pack for this pipe, and the piece is on no cut list."});
    // One column for each pipe in use: a function of the add-in takes a column of cells, not a choice of them.
    for (int kind = 1; kind <= pipeKinds; ++kind)
        table.columns.push_back({.heading = "Pipe " + std::to_string(kind),
                                 .format = show::number(2),
                                 .measure = Measure::Feet,
                                 .width = 18,
                                 .formula = "IF([Pipe of it]=\"\";\"\";IF([Pipe of it]=INDEX([Pipes.Pipe];" +
                                            std::to_string(kind + 1) + ");[Cut length];\"\"))"});
    for (int i = 1; i <= runs; ++i) {
        const std::string at = ";" + std::to_string(i) + ")";
        table.content.push_back(
            {"=IF(INDEX([Trench.From]" + at + "=\"\";\"\";INDEX([Trench.From]" + at +
                 "&\" to \"&INDEX([Trench.To]" + at + ")",
             "=IF(ISNUMBER(INDEX([Trench.Length]" + at + ");INDEX([Trench.Pipe]" + at + ";\"\")",
             "=IF(ISNUMBER(INDEX([Trench.Length]" + at + ");INDEX([Trench.Length]" + at + ";\"\")"});
    }
    for (int i = 1; i <= nodes; ++i) {
        const std::string at = ";" + std::to_string(i) + ")";
        table.content.push_back(
            {"=IF(N(INDEX([Pieces.Riser]" + at + ")>0;\"riser at \"&INDEX([Pieces.Node]" + at + ";\"\")",
             "=IF(N(INDEX([Pieces.Riser]" + at + ")>0;INDEX([Pieces.Riser pipe]" + at + ";\"\")",
             "=IF(N(INDEX([Pieces.Riser]" + at + ")>0;INDEX([Pieces.Riser]" + at + ";\"\")"});
    }
    return table;
}

Table pipes() {
    Table table;
    table.name = "Pipes";
    table.rows = pipeKinds;
    table.columns = {
        {.heading = "Pipe",
         .format = show::general,
         .width = 26,
         .formula = "IFERROR(INDEX([Cuts.Pipe of it];MATCH([#]-1;[Cuts.New];0));\"\")"},
        {.heading = "Code",
         .format = show::general,
         .width = 36,
         .formula = "IF([Pipe]=\"\";\"\";\"PIPE-\"&[Pipe])"},
        {.heading = "Bought as",
         .format = show::general,
         .width = 36,
         .formula =
             "IF([Code]=\"\";\"\";IFERROR(" + found("Codes.Buy as", "[Code]", "Codes.Piece") + ";[Code]))"},
        {.heading = "Stick",
         .format = show::number(1),
         .measure = Measure::Feet,
         .width = 18,
         .formula = "IF([Pipe]=\"\";\"\";IFERROR(N(" + found("Prices.Pack", "[Bought as]", "Prices.Code") +
                    ")/(N(" + found("Prices.Pack", "[Bought as]", "Prices.Code") + ")>0);\"\"))",
         .note = "Stock length: the pack on Prices."},
        {.heading = "Cut",
         .format = show::number(0),
         .width = 15,
         .formula = "IF([Pipe]=\"\";\"\";COUNTIF([Cuts.Pipe of it];[Pipe]))",
         .note = "Pieces to cut."},
        {.heading = "Net",
         .format = show::number(1),
         .measure = Measure::Feet,
         .width = 18,
         .formula = "IF([Pipe]=\"\";\"\";SUMIF([Cuts.Pipe of it];[Pipe];[Cuts.Cut length]))"},
        {.heading = "Sticks",
         .format = show::number(0),
         .width = 17,
         .formula = "IF(ISNUMBER([Stick]);IFERROR(STICKS.COUNT(INDEX([Cuts.Pipe 1:Pipe " +
                    std::to_string(pipeKinds) + "];0;[#]-1);[Stick];;units);\"\");\"\")",
         .note = "Fewest sticks that give all the pieces, saw cuts included."},
        {.heading = "Asked",
         .format = show::number(0),
         .width = 15,
         .formula = "IF([Pipe]=\"\";\"\";SUMIF([Trench.Pipe];[Pipe];[Trench.Asked]))",
         .note = "Cleanouts that the rules ask on runs of this pipe and Nodes does not have."},
        {.heading = "Riser",
         .format = show::general,
         .width = 26,
         .formula = "IF([Pipe]=\"\";\"\";" + riserOf("[Pipe]") + ")",
         .note = "Pipe of its risers."},
        {.heading = "In words",
         .format = show::general,
         .width = 40,
         .formula = "IF([Pipe]=\"\";\"\";" + nominalOf("[Pipe]") + "&\" in \"&" + systemOf("[Pipe]") + ")"},
    };
    return table;
}

Table codes() {
    Table table;
    table.name = "Codes";
    table.rows = 24;
    table.columns = {
        {.heading = "Piece",
         .kind = Kind::Kept,
         .width = 44,
         .note = "A code as Pieces writes it: WYE-4SDR35."},
        {.heading = "Buy as",
         .kind = Kind::Kept,
         .width = 44,
         .validity = chosenFrom("[Prices.Code]"),
         .note = "The code on Prices to buy in its place."},
    };
    return table;
}

// Goods that are not counted in pieces: code, what they are, the amount and where it comes from.
struct Bulk {
    const char* code;
    const char* what;
    std::string amount;
    std::string where;
};
const std::vector<Bulk>& bulkGoods() {
    const std::string swell = swellOfSoil;
    const std::string pitPlan = "IF(AND(ISNUMBER(pit_length);ISNUMBER(pit_width));pit_length*pit_width;0)";
    const std::string surplus = "(SUM([Trench.Bedding])+SUM([Trench.Pipe volume])+N(pit_rock))";
    static const std::vector<Bulk> goods = {
        {"CEMENT", "cement, pints", "SUM([Pieces.Cement])+SUM([Trench.Cement])",
         "=\"Pieces and bells: \"&(SUM([Pieces.Sockets])+SUM([Trench.Bells]))&\" sockets, joints a pint on Rules\""},
        {"PRIMER", "primer, pints", "(SUM([Pieces.Cement])+SUM([Trench.Cement]))*{glue.primer}",
         "cement x share on Rules"},
        {"BEDDING", "bedding sand, tons",
         "IF(SUM([Trench.Bedding])>0;ROCK.TONS(SUM([Trench.Bedding]);{sand.density};0;units);0)",
         "=\"Runs: length x width x bedding = \"&TEXT(SUM([Trench.Bedding]);\"0.00\")&IF(units=\"metric\";\" m3\";\" cu yd\")"},
        {"ROCK", "drain rock, tons", "IF(N(pit_rock)>0;ROCK.TONS(pit_rock;{rock.density};0;units);0)",
         "=\"Pit: rock \"&TEXT(N(pit_rock);\"0.00\")&IF(units=\"metric\";\" m3\";\" cu yd\")&\" x its own density\""},
        {"FABRIC", "filter fabric", "N(pit_fabric)", "Pit: all sides, overlap on Rules"},
        {"SOD", "new sod", "sod_share*(SUM([Trench.Lawn])+" + pitPlan + ")",
         "=\"Runs and pit: \"&TEXT(sod_share;\"0%\")&\" of \"&TEXT(SUM([Trench.Lawn])+" + pitPlan +
             ";\"0\")&\" under lawn\""},
        {"HAUL", "spoil hauled off, loads",
         "IF(" + surplus + ">0;SPOIL.LOOSE(" + surplus + ";" + swell + ";units)/{truck.load};0)",
         "=\"bedding, pipe and rock take the room of \"&TEXT(" + surplus +
             ";\"0.0\")&IF(units=\"metric\";\" m3\";\" cu yd\")&\"; loose it is \"&TEXT(" + surplus + "*(1+" +
             swell + ");\"0.0\")"},
    };
    return goods;
}

Table bulk() {
    Table table;
    table.name = "Bulk";
    table.columns = {
        {.heading = "Goods", .kind = Kind::Label, .width = 44},
        {.heading = "Code",
         .kind = Kind::Kept,
         .width = 36,
         .validity = chosenFrom("[Prices.Code]"),
         .note = "Code on Prices to buy it by."},
        {.heading = "Amount", .format = show::number(2), .width = 20},
        {.heading = "Where", .kind = Kind::Label, .format = show::general, .width = 90},
    };
    for (const Bulk& goods : bulkGoods())
        table.content.push_back({goods.what, goods.code, "=IFERROR(" + goods.amount + ";\"\")", goods.where});
    table.rows = static_cast<int>(table.content.size());
    return table;
}

Table counts(const JobSize& size) {
    Table table;
    table.name = "Counts";
    const std::string before = "INDEX([Counts.Code];1):[^Code]";
    table.columns = {
        {.heading = "What", .format = show::general, .width = 44},
        {.heading = "Quantity", .format = show::number(2), .width = 20},
        {.heading = "From", .kind = Kind::Label, .width = 20},
        {.heading = "At", .format = show::general, .width = 60},
        {.heading = "Code",
         .format = show::general,
         .width = 44,
         .formula = "IF([What]=\"\";\"\";IFERROR(" + found("Codes.Buy as", "[What]", "Codes.Piece") +
                    "&\"\";[What]))",
         .note = "What is bought: the piece's own code, or the one in Codes."},
        {.heading = "Line",
         .format = show::number(0),
         .width = 16,
         .formula = "IF([Code]=\"\";\"\";IF(COUNTIF(" + before +
                    ";[Code])=0;MAX(INDEX([Counts.Line];1):[^Line])+1;\"\"))",
         .note = "Numbers the codes in use."},
        {.heading = "Told",
         .format = show::general,
         .width = 90,
         .formula = "IF([Code]=\"\";\"\";IF([Line]<>\"\";IF([From]=\"\";\"\";[From]&\": \");LOOKUP(2;1/(" +
                    before + "=[Code]);INDEX([Counts.Told];1):[^Told])&\", \")&[At])",
         .note = "All the places of a code so far."},
    };
    for (int i = 2; i <= pipeKinds + 1; ++i) {
        const std::string at = ";" + std::to_string(i) + ")";
        table.content.push_back({"=INDEX([Pipes.Code]" + at, "=INDEX([Pipes.Net]" + at, "Runs and risers",
                                 "=IF(INDEX([Pipes.Code]" + at + "=\"\";\"\";INDEX([Pipes.Cut]" + at +
                                     "&\" to cut, fewest sticks \"&INDEX([Pipes.Sticks]" + at + ")"});
    }
    // A cleanout that the rules ask is a wye in the line, a bend, and the fitting on its riser.
    for (int i = 2; i <= pipeKinds + 1; ++i) {
        const std::string at = ";" + std::to_string(i) + ")";
        const std::string pipe = "INDEX([Pipes.Pipe]" + at, riser = "INDEX([Pipes.Riser]" + at,
                          asked = "INDEX([Pipes.Asked]" + at;
        const auto bought = [&](const std::string& what) {
            return "=IF(AND(buy_asked=\"yes\";N(" + asked + ")>0);" + what + ";\"\")";
        };
        for (const std::string& code : {"\"CLEANOUT-\"&" + riser, "\"BEND45-\"&" + riser,
                                        "\"WYE-\"&IF(" + riser + "=" + pipe + ";" + pipe + ";" +
                                            nominalOf(pipe) + "&\"X\"&" + riser + ")"})
            table.content.push_back({bought(code), bought(asked), "Rules",
                                     bought(asked + "&\" asked, not on Nodes: see Trench on Pieces\"")});
    }
    for (int i = 2; i < size.runs + spareRows + 2; ++i) {
        const std::string at = ";" + std::to_string(i) + ")";
        table.content.push_back({"=INDEX([Trench.Adapter]" + at + "&\"\"",
                                 "=IF(INDEX([Trench.Adapter]" + at + "=\"\";\"\";1)", "Runs",
                                 "=INDEX([Trench.From]" + at + "&\" to \"&INDEX([Trench.To]" + at});
    }
    for (const Item& item : items) {
        for (int i = 2; i < size.nodes + spareRows + 2; ++i) {
            const std::string at = ";" + std::to_string(i) + ")";
            const std::string quantity = std::string("INDEX([Pieces.") + item.heading + "]" + at;
            table.content.push_back(
                {std::string("=INDEX([Pieces.") + item.code + "]" + at + "&\"\"", "=" + quantity, "Nodes",
                 "=INDEX([Pieces.Node]" + at + "&IF(N(" + quantity + ")>1;\" x\"&" + quantity + ";\"\")"});
        }
    }
    for (std::size_t i = 0; i < bulkGoods().size(); ++i) {
        const std::string at = ";" + std::to_string(i + 2) + ")";
        // An amount that cannot be worked out stays in the list, to be flagged on Takeoff.
        table.content.push_back({"=IF(AND(ISNUMBER(INDEX([Bulk.Amount]" + at + ");N(INDEX([Bulk.Amount]" +
                                     at + ")=0);\"\";INDEX([Bulk.Code]" + at + ")",
                                 "=INDEX([Bulk.Amount]" + at, "", "=INDEX([Bulk.Where]" + at});
    }
    table.rows = static_cast<int>(table.content.size());
    return table;
}

}  // namespace

Sheet piecesSheet(const JobSize& size) {
    Sheet sheet;
    sheet.name = "Pieces";
    sheet.title = "Pieces";
    sheet.purpose =
        "What each run and node is made of, counted for Takeoff. Only the marked cells are for typing.";
    sheet.parts = {pipes(), codes(), bulk(), pieces(size), trench(size), cuts(size), counts(size)};
    sheet.printed = false;
    return sheet;
}

}  // namespace trenchbook::sheets
