// Ground between the nodes: a shot along a run, where the ground dips or rises and nothing is set in the line.
#include "site/inputs.h"
#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

std::vector<Column> typed() {
    const Format decimal = show::number(2);
    std::vector<Column> columns =
        inputs(InputTable::Ground, {{"From", 16, show::text, "[Nodes.Node]"},
                                    {"To", 16, show::text, "[Nodes.Node]"},
                                    {"At", 15, show::number(1)},
                                    {"Shot", 26, show::text, "[Levels.Point]"},
                                    {"Ground", 18, decimal},
                                    {"Ground level", 18, decimal, "", Kind::Computed},
                                    {"Over it", 20}});
    for (Column& column : columns) {
        if (column.heading != "Ground level") continue;
        column.validity = {};
        column.formula =
            "IF(AND(ISBLANK([Shot]);ISBLANK([Ground]));\"\";IF(ISBLANK([Ground]);"
            "IFERROR(INDEX([Levels.Level used];MATCH([Shot];[Levels.Point];0));\"\");IF(ISNUMBER([Ground]);[Ground];\"\")))";
    }
    return columns;
}

}  // namespace

Sheet groundSheet(const JobSize& size) {
    Table table;
    table.name = "Ground";
    table.rows = size.ground;
    table.columns =
        verdictColumns() + typed() +
        std::vector<Column>{
            {.heading = "Counts as",
             .width = 22,
             .formula = "<Counts as>",
             .note = "The surface whose cover is asked here."},
            {.heading = "Invert",
             .format = show::number(2),
             .measure = Measure::Feet,
             .width = 18,
             .formula = answered("Invert"),
             .note = "Inside bottom (flow line) of the pipe, straight between the ends of its run."},
            {.heading = "Cover",
             .format = show::number(1),
             .measure = Measure::Inches,
             .width = 16,
             .formula = answered("Cover"),
             .note = "Ground to the outside top of the pipe."},
            {.heading = "Cover asked",
             .format = show::number(1),
             .measure = Measure::Inches,
             .width = 18,
             .formula = answered("Cover asked"),
             .note = "Least cover on Rules for what lies over it. Blank: none is asked."},
            {.heading = "Cut",
             .format = show::number(2),
             .measure = Measure::Feet,
             .width = 16,
             .formula = answered("Cut"),
             .note = "Ground to trench bottom, bedding included."}};
    table.handedFrom = "From";
    table.handedTo = "Over it";
    Sheet sheet;
    sheet.name = "Ground";
    sheet.title = "Ground";
    sheet.purpose =
        "One row for each shot between two nodes, where the ground dips or rises. No fitting is set there: cover, cut "
        "and digging follow the ground.";
    sheet.parts = {table};
    sheet.freezeColumns = 5;
    return sheet;
}

}  // namespace trenchbook::sheets
