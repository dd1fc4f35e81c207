// Every point of the lines: what it is, where its ground and its opening lie, how the pipe turns there.
#include "templates/job.h"

namespace trenchbook::sheets {

namespace {

const std::string unit = "IF(units=\"metric\";\" m\";\" ft\")";

// The highest of a column over the runs that have this node at one end; none where no run has a number.
std::string highest(const std::string& column, const std::string& end) {
    return "IF(COUNTIFS([Runs." + end + "];[Node];[Runs." + column + "];\">-1E9\")=0;-1E9;MAXIFS([Runs." +
           column + "];[Runs." + end + "];[Node]))";
}
std::string isOneOf(const std::vector<std::string>& kinds) {
    std::string all;
    for (const std::string& kind : kinds) all += (all.empty() ? "" : ";") + ("[Kind]=\"" + kind + "\"");
    return "OR(" + all + ")";
}

// How the line turns here, where a cable has to follow; both are told where both hold.
std::string worthALook() {
    // Turns close to each other share the first cleanout.
    const std::string far =
        "IF(AND(N([Turn])>{cleanout.bend};[Since]>{cleanout.group});\"turns more than \"&{cleanout.bend}&\" degrees, \"&"
        "TEXT([Since];\"0\")&" +
        unit + "&\" from the last cleanout\";\"\")";
    const std::string sharp =
        "IF(AND(N([Turn])>{bend.sharp};[Sharp before]>={bend.sharp.most});\"turns sharply, and \"&[Sharp before]&"
        "\" turns since the last cleanout did: make it \"&BEND.MAKEUP([Turn])&\" with pipe between, or \"&"
        "BEND.MAKEUP({bend.sharp})&\" where the line can turn \"&{bend.sharp}&\"\";\"\")";
    return "IF(N([Takes a cable])=1;\"\";IFERROR(TEXTJOIN(\"; \";1;" + far + ";" + sharp + ");\"\"))";
}

}  // namespace

Sheet nodesSheet(const JobSize& size) {
    Table table;
    table.name = "Nodes";
    table.rows = size.nodes;
    table.columns = {
        {.heading = "Node", .kind = Kind::Measured, .width = 18, .note = "Short name, used once: A1, patio."},
        {.heading = "Kind",
         .kind = Kind::Measured,
         .width = 24,
         .validity = choice({"downspout", "channel", "basin", "bend", "cleanout", "wye", "crossing", "tee",
                             "outlet", "cap"}),
         .note = "What stands here. tee: the upturned tee in the pit. cap: the capped head of a line."},
        {.heading = "Shot",
         .kind = Kind::Measured,
         .width = 26,
         .validity = chosenFrom("[Levels.Point]"),
         .note = "Point on Levels that gives the ground; blank when it has the node's own name."},
        {.heading = "Ground",
         .kind = Kind::Measured,
         .format = show::number(2),
         .measure = Measure::Feet,
         .width = 18,
         .validity = between(-1000, 15000),
         .note = "Only where no shot on Levels gives it."},
        {.heading = "Ground level",
         .format = show::number(2),
         .measure = Measure::Feet,
         .width = 18,
         .formula =
             "IF(ISBLANK([Node]);\"\";IF(ISBLANK([Ground]);"
             "IFERROR(INDEX([Levels.Level];MATCH(IF([Shot]=\"\";[Node];[Shot]);[Levels.Point];0));\"\");"
             "IF(ISNUMBER([Ground]);[Ground];\"\")))"},
        {.heading = "Opening",
         .kind = Kind::Measured,
         .format = show::number(2),
         .measure = Measure::Feet,
         .width = 18,
         .validity = between(-1000, 15000),
         .note =
             "Level where water would come out or go in: grate, cap, sill, rim of the tee. Blank: the ground."},
        {.heading = "Turn",
         .kind = Kind::Measured,
         .format = show::number(1),
         .measure = Measure::Degrees,
         .width = 14,
         .validity = between(0, 180),
         .note = "How far the line turns here, in degrees; straight on is 0."},
        {.heading = "Device",
         .kind = Kind::Measured,
         .width = 28,
         .validity = chosenFrom("[Prices.Code]"),
         .note = "Code of the piece on Prices: basin, grate, adapter, cap. Blank: by kind."},
        {.heading = "Bend made of",
         .width = 22,
         .formula = "IF(AND(ISNUMBER([Turn]);N([Turn])>0);IFERROR(BEND.MAKEUP([Turn]);\"\");\"\")"},
        {.heading = "Tie 1",
         .kind = Kind::Measured,
         .width = 29,
         .note = "Distance to a first house corner, for the as-built."},
        {.heading = "Tie 2",
         .kind = Kind::Measured,
         .width = 29,
         .note = "Distance to a second house corner."},
        {.heading = "Photo", .kind = Kind::Measured, .width = 24, .note = "File name of a photo."},
        {.heading = "Water level",
         .format = show::number(2),
         .measure = Measure::Feet,
         .width = 18,
         .formula = "IF(ISBLANK([Node]);\"\";IFERROR(IF([Highest]>-1E8;[Highest];\"\");\"\"))",
         .note =
             "The highest of the runs that meet here, at the rain on Job. In a basin, a channel and at the head of a line the water "
             "stands at the energy of the pipe that leaves and the loss into it."},
        {.heading = "Freeboard",
         .format = show::number(2),
         .measure = Measure::Feet,
         .width = 20,
         .formula = "IF(AND(ISNUMBER([Water level]);ISNUMBER([Rim]);NOT(" + isOneOf({"outlet", "tee"}) +
                    "));[Rim]-[Water level];\"\")",
         .note = "Opening, or ground, over the water."},
        {.heading = "Rim",
         .format = show::number(2),
         .width = 18,
         .formula = "IF(ISNUMBER([Opening]);[Opening];[Ground level])",
         .helper = true},
        {.heading = "Highest",
         .format = show::number(3),
         .width = 18,
         .formula = "IF(ISBLANK([Node]);\"\";MAX(" + highest("Stands up", "From") + ";" +
                    highest("Water down", "To") + "))",
         .helper = true},
        // Loss into the pipe that leaves, in velocity heads. Where water comes to rest it is sped up anew: 1 + entry.
        // Turns are counted by their 45s.
        {.heading = "K",
         .format = show::number(2),
         .width = 18,
         .formula =
             "IF(ISBLANK([Node]);\"\";IFERROR(IF(OR(" + isOneOf({"basin", "channel"}) +
             ";COUNTIF([Runs.To];[Node])=0);1+FITTING.K(\"entrance flush\");"
             "N([Turn])/45*FITTING.K(\"45 bend\")+IF([Kind]=\"wye\";FITTING.K(\"wye run\");IF([Kind]=\"cleanout\";FITTING.K(\"cleanout\");0)));0))",
         .helper = true},
        {.heading = "Since",
         .format = show::number(1),
         .width = 18,
         .formula =
             "IF(ISBLANK([Node]);\"\";IF(COUNTIFS([Runs.To];[Node];[Runs.Since cleanout];\">0\")=0;0;MAXIFS([Runs.Since cleanout];[Runs.To];[Node])))",
         .helper = true},
        {.heading = "Sharp before",
         .format = show::number(0),
         .width = 18,
         .formula =
             "IF(ISBLANK([Node]);\"\";IF(COUNTIF([Runs.To];[Node])=0;0;MAXIFS([Runs.Sharp turns];[Runs.To];[Node])))",
         .helper = true},
        {.heading = "Takes a cable",
         .format = show::number(0),
         .width = 18,
         .formula = "IF(ISBLANK([Node]);\"\";IF(" + isOneOf({"cleanout", "basin", "channel"}) + ";1;0))",
         .helper = true},
        {.heading = "Look", .width = 18, .formula = worthALook(), .helper = true},
        {.heading = "Check",
         .kind = Kind::Verdict,
         .width = 110,
         .formula =
             "IFERROR(IF(ISBLANK([Node]);IF(AND(ISBLANK([Kind]);ISBLANK([Shot]);ISBLANK([Ground]));\"\";"
             "\"NO: the node has no name\");"
             "IF(COUNTIF([Nodes.Node];[Node])>1;\"NO: this name is used more than once\";"
             "IF(ISBLANK([Kind]);\"NO: kind is missing\";"
             "IF(NOT(OR(ISBLANK([Ground]);ISNUMBER([Ground])));\"NO: Ground is not a number: \"&[Ground];"
             "IF(NOT(OR(ISBLANK([Opening]);ISNUMBER([Opening])));\"NO: Opening is not a number: \"&[Opening];"
             "IF(NOT(OR(ISBLANK([Turn]);ISNUMBER([Turn])));\"NO: Turn is not a number: \"&[Turn];"
             "IF([Ground level]=\"\";\"NO: no level: shoot \"&IF([Shot]=\"\";[Node];[Shot])&\" on Levels, or type Ground\";"
             "IF(COUNTIF([Runs.From];[Node])+COUNTIF([Runs.To];[Node])=0;\"CHECK: no run starts or ends here\";"
             // Bends and wyes are closed: only where water can come out does it matter how high it stands.
             "IF(AND(ISNUMBER([Freeboard]);" +
             isOneOf({"downspout", "channel", "basin", "cleanout", "cap"}) +
             ";N([Freeboard])<0);"
             "\"NO: water comes out here: it stands \"&TEXT(-[Freeboard];\"0.00\")&" +
             unit +
             "&\" over the opening\";"
             "IF(AND(ISNUMBER([Freeboard]);" +
             isOneOf({"downspout", "channel", "basin", "cleanout", "cap"}) +
             ";N([Freeboard])<{freeboard.min});"
             "\"CHECK: water stands only \"&TEXT([Freeboard];\"0.00\")&" +
             unit +
             "&\" under the opening, rule asks \"&{freeboard.min};"
             "IF([Look]<>\"\";\"CHECK: \"&[Look];\"OK\")))))))))));\"NO: a cell of this row holds an error\")"},
    };
    Sheet sheet;
    sheet.name = "Nodes";
    sheet.title = "Nodes";
    sheet.purpose =
        "One row for each point where something stands, joins, turns or ends. Runs go from node to node.";
    sheet.parts = {table};
    sheet.freezeColumns = 1;
    sheet.pagesWide = 2;
    return sheet;
}

}  // namespace trenchbook::sheets
