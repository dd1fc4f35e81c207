// Every point of the lines: what it is, where its ground and its opening lie, how the pipe turns there.
#include "site/inputs.h"
#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

std::vector<Column> typed() {
    const Format decimal = show::number(2);
    std::vector<Column> columns =
        inputs(InputTable::Nodes, {{"Node", 18},
                                   {"Kind", 28},
                                   {"Shot", 26, show::text, "[Levels.Point]"},
                                   {"Ground", 18, decimal},
                                   {"Ground level", 18, decimal, "", Kind::Computed},
                                   {"Rim or grate", 18, decimal},
                                   {"Turn", 14, show::number(1)},
                                   {"Device", 28, show::text, "[Prices.Code]"},
                                   {"From house", 18, show::number(1)},
                                   {"To footing", 18, show::number(1)},
                                   {"Footing depth", 18, show::number(1)},
                                   {"Engineer", 32, show::text, "", Kind::Permit},
                                   {"To tree", 16, show::number(1)},
                                   {"To septic", 16, show::number(1)},
                                   {"To well", 16, show::number(1)},
                                   {"Tie 1", 29},
                                   {"Tie 2", 29},
                                   {"Photo", 24}});
    for (Column& column : columns) {
        if (column.heading != "Ground level") continue;
        column.validity = {};
        column.formula =
            "IF(OR(ISBLANK([Node]);NOT(ISBLANK([Ground])));IF(ISNUMBER([Ground]);[Ground];\"\");"
            "IFERROR(INDEX([Levels.Level used];MATCH(IF([Shot]=\"\";[Node];[Shot]);[Levels.Point];0));\"\"))";
    }
    return columns;
}

}  // namespace

Sheet nodesSheet(const JobSize& size) {
    Table table;
    table.name = "Nodes";
    table.rows = size.nodes;
    table.columns =
        verdictColumns() + typed() +
        std::vector<Column>{
            {.heading = "Bend made of",
             .width = 22,
             .formula = "<Bend made of>",
             .note = "Elbows that make the turn."},
            {.heading = "Water level",
             .format = show::number(2),
             .measure = Measure::Feet,
             .width = 18,
             .formula = answered("Water level"),
             .note =
                 "The highest of the runs that meet here, at the rain on Job. In a basin, a channel and at the head "
                 "of a line the water stands at the energy of the pipe that leaves and the loss into it."},
            {.heading = "Freeboard",
             .format = show::number(2),
             .measure = Measure::Feet,
             .width = 20,
             .formula = answered("Freeboard"),
             .note = "Rim or grate, or ground, over the water."},
            {.heading = "Place",
             .width = 60,
             .formula = "<node_places.Place>",
             .note = "How its place on the drawing is known, or what to tape next. Blank: no drawing.",
             .wrapped = true}};
    table.handedFrom = "Node";
    table.handedTo = "Photo";
    Sheet sheet;
    sheet.name = "Nodes";
    sheet.title = "Nodes";
    sheet.purpose =
        "One row for each point where something stands, joins, turns or ends. Runs go from node to node.";
    sheet.parts = {table};
    sheet.freezeColumns = 3;
    sheet.pagesWide = 2;
    return sheet;
}

}  // namespace trenchbook::sheets
