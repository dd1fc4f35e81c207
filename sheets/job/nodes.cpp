// Every point of the lines: what it is, where its ground and its opening lie, how the pipe turns there.
#include "job/job.h"

namespace trenchbook::sheets {

Sheet nodesSheet(const JobSize& size) {
    Table table;
    table.name = "Nodes";
    table.rows = size.nodes;
    table.columns = {
        {.heading = "Node", .kind = Kind::Measured, .width = 18, .note = "Short name, used once: A1, patio."},
        {.heading = "Kind", .kind = Kind::Measured, .width = 24,
         .validity = choice({"downspout", "channel", "basin", "bend", "cleanout", "wye", "crossing", "tee", "outlet", "cap"}),
         .note = "What stands here. tee: the upturned tee in the pit. cap: the capped head of a line."},
        {.heading = "Shot", .kind = Kind::Measured, .width = 26, .validity = chosenFrom("[Levels.Point]"),
         .note = "Point on Levels that gives the ground; blank when it has the node's own name."},
        {.heading = "Ground", .kind = Kind::Measured, .format = show::number(2), .measure = Measure::Feet, .width = 18,
         .validity = between(-1000, 15000), .note = "Only where no shot on Levels gives it."},
        {.heading = "Ground level", .format = show::number(2), .measure = Measure::Feet, .width = 18,
         .formula = "IF(ISBLANK([Node]);\"\";IF(ISBLANK([Ground]);"
                    "IFERROR(INDEX([Levels.Level];MATCH(IF([Shot]=\"\";[Node];[Shot]);[Levels.Point];0));\"\");"
                    "IF(ISNUMBER([Ground]);[Ground];\"\")))"},
        {.heading = "Opening", .kind = Kind::Measured, .format = show::number(2), .measure = Measure::Feet,
         .width = 18, .validity = between(-1000, 15000),
         .note = "Level where water would come out or go in: grate, cap, sill, rim of the tee. Blank: the ground."},
        {.heading = "Turn", .kind = Kind::Measured, .format = show::number(1), .measure = Measure::Degrees,
         .width = 14, .validity = between(0, 180), .note = "How far the line turns here, in degrees; straight on is 0."},
        {.heading = "Device", .kind = Kind::Measured, .width = 28, .validity = chosenFrom("[Prices.Code]"),
         .note = "Code of the piece on Prices: basin, grate, adapter, cap. Blank: by kind."},
        {.heading = "Bend made of", .width = 22,
         .formula = "IF(AND(ISNUMBER([Turn]);N([Turn])>0);IFERROR(BEND.MAKEUP([Turn]);\"\");\"\")"},
        {.heading = "Tie 1", .kind = Kind::Measured, .width = 24, .note = "Distance to a first house corner, for the as-built."},
        {.heading = "Tie 2", .kind = Kind::Measured, .width = 24, .note = "Distance to a second house corner."},
        {.heading = "Photo", .kind = Kind::Measured, .width = 24, .note = "File name of a photo."},
        {.heading = "Check", .kind = Kind::Verdict, .width = 62,
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
             "IF(AND(N([Turn])>{cleanout.bend};[Kind]=\"bend\");\"CHECK: turns more than \"&{cleanout.bend}&"
             "\" degrees; is there a cleanout near?\";\"OK\")))))))));\"NO: a cell of this row holds an error\")"},
    };
    Sheet sheet;
    sheet.name = "Nodes";
    sheet.title = "Nodes";
    sheet.purpose = "One row for each point where something stands, joins, turns or ends. Runs go from node to node.";
    sheet.parts = {table};
    sheet.freezeColumns = 1;
    return sheet;
}

}  // namespace trenchbook::sheets
