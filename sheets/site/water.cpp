// What each inlet brings to its node, and whether what it enters by can take it.
#include "site/inputs.h"
#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

std::vector<Column> typed() {
    const Format area = show::number(0), decimal = show::number(1), any = show::general;
    return inputs(InputTable::Water, {{"Inlet", 42},
                                      {"Node", 18, show::text, "[Nodes.Node]"},
                                      {"Roof area", 20, area},
                                      {"Roof C", 20, any},
                                      {"Paved area", 20, area},
                                      {"Paved C", 20, any},
                                      {"Yard area", 20, area},
                                      {"Yard C", 20, any},
                                      {"Minutes", 17, any},
                                      {"Enters by", 26},
                                      {"Size", 20},
                                      {"Open share", 18, show::number(2)},
                                      {"Ponding", 19, decimal},
                                      {"Length", 18, any},
                                      {"Floor slope", 20},
                                      {"Outlet pipe", 22, show::text, "[Stock.Pipe]"},
                                      {"Outlet head", 19, decimal}});
}

Column gpm(const char* heading, std::string formula, const char* note) {
    return {.heading = heading,
            .format = show::number(1),
            .measure = Measure::Gpm,
            .width = 18,
            .formula = std::move(formula),
            .note = note};
}

}  // namespace

Sheet waterSheet(const JobSize& size) {
    Table table;
    table.name = "Water";
    table.rows = size.water;
    table.columns =
        verdictColumns() + typed() +
        std::vector<Column>{
            gpm("Flow", answered("Flow"), "Rational method at the rain on Job: area x C x rain, added up."),
            gpm("Takes", answered("Takes"),
                "The lesser of the downspout, grate or trench drain and its outlet pipe. The pipe's own slope is judged "
                "on Runs."),
            {.heading = "% of what it takes",
             .format = show::percent(0),
             .width = 20,
             .formula = "IF(AND(COUNT([Flow];[Takes])=2;N([Takes])>0);[Flow]/[Takes];\"\")"}};
    table.handedFrom = "Inlet";
    table.handedTo = "Outlet head";
    Sheet sheet;
    sheet.name = "Water";
    sheet.title = "Water";
    sheet.purpose =
        "One row for each inlet: the areas that drain to it, the share of the rain that runs off, and what it enters by.";
    sheet.parts = {table};
    sheet.freezeColumns = 4;
    sheet.pagesWide = 2;
    return sheet;
}

}  // namespace trenchbook::sheets
