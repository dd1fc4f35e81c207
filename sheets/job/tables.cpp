// The words that functions know, with their numbers and sources, so that nobody has to guess them.
#include "job/job.h"
#include "trenchbook/rules.h"
#include "trenchbook/run.h"
#include "trenchbook/stock.h"

namespace trenchbook::sheets {

Sheet tablesSheet(const JobSize&) {
    Table pipes;
    pipes.name = "Stock";
    const auto inches = [](const char* heading) {
        return Column{.heading = heading, .format = show::number(3), .measure = Measure::Inches, .width = 22};
    };
    pipes.columns = {
        {.heading = "Pipe", .kind = Kind::Label, .width = 34, .note = "Write it like this on Runs; spelling and blanks are forgiven."},
        inches("Bore"),
        inches("Outside"),
        inches("Wall"),
        {.heading = "n", .kind = Kind::Label, .format = show::number(3), .width = 16, .note = "Manning roughness."},
        {.heading = "Least slope", .format = show::percent(2), .width = 20, .note = "From Rules, by nominal size."},
        {.heading = "Source of sizes", .kind = Kind::Label, .width = 76},
        {.heading = "Source of n", .kind = Kind::Label, .width = 62},
    };
    for (const StockPipe& row : stock()) {
        const auto size = [](Length length) {
            return "=IF(units=\"metric\";" + plain(length.millimetres(), 2) + ";" + plain(length.inches(), 4) + ")";
        };
        pipes.content.push_back({row.pipe.name, size(row.pipe.bore), row.pipe.outside ? size(*row.pipe.outside) : "",
                                 size(row.wall), plain(row.pipe.roughness, 4),
                                 std::string("={") + leastSlopeKey(row.pipe.nominal) + "}", row.source,
                                 row.roughnessSource});
    }
    pipes.rows = static_cast<int>(pipes.content.size());

    Table covers;
    covers.name = "Surfaces";
    covers.columns = {
        {.heading = "Surface", .kind = Kind::Label, .width = 34},
        {.heading = "Least cover", .format = show::number(1), .measure = Measure::Inches, .width = 22},
        {.heading = "Rule", .kind = Kind::Label, .width = 40},
    };
    for (const SurfaceWords& row : surfaces())
        covers.content.push_back({row.name.en, row.rule ? std::string("={") + row.rule + "}" : "", row.rule ? row.rule : "no cover asked"});
    covers.rows = static_cast<int>(covers.content.size());

    Sheet sheet;
    sheet.name = "Tables";
    sheet.title = "Tables";
    sheet.purpose = "The words that the functions know, with their numbers and where these come from.";
    sheet.parts = {pipes, covers};
    return sheet;
}

}  // namespace trenchbook::sheets
