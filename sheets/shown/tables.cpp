// The words that functions know, with their numbers and sources, so that nobody has to guess them.
#include <span>

#include "catalog/function.h"
#include "templates/job.h"
#include "trenchbook/lines/cover_surface.h"
#include "trenchbook/pipe/fittings.h"
#include "trenchbook/pipe/size_class.h"
#include "trenchbook/pipe/stock.h"
#include "trenchbook/rules/rules.h"
#include "trenchbook/rules/standing.h"
#include "trenchbook/water/inlets.h"
#include "trenchbook/water/surfaces.h"

namespace trenchbook::sheets {
namespace {

using addin::findFunction;

// All tables share the sheet's columns: a name, two of long text, up to five numbers.
constexpr double nameWide = 62, textWide = 70, numberWide = 22;

Column words(const char* heading, double width, const char* note = "") {
    return {.heading = heading, .kind = Kind::Label, .width = width, .note = note};
}
Column number(const char* heading, int decimals, const char* note = "") {
    return {.heading = heading,
            .kind = Kind::Label,
            .format = show::number(decimals),
            .width = numberWide,
            .note = note};
}
Column quantity(const char* heading, int decimals, Measure measure, const char* note = "") {
    return {.heading = heading,
            .format = show::number(decimals),
            .measure = measure,
            .width = numberWide,
            .note = note};
}
std::string inUnits(double us, double metric, int decimals) {
    return "=IF(units=\"metric\";" + plain(metric, decimals) + ";" + plain(us, decimals) + ")";
}
std::string inches(Length length) { return inUnits(length.inches(), length.millimetres(), 4); }

// "roof|techo" -> "roof, techo"; a name with a comma of its own stands in quotes.
std::string list(const char* barred) {
    std::string all, word;
    for (const char* at = barred;; ++at) {
        if (*at != '|' && *at != '\0') {
            word += *at;
            continue;
        }
        if (!word.empty()) {
            const bool comma = word.find(',') != std::string::npos;
            all += (all.empty()                  ? ""
                    : comma || all.back() == '"' ? "; "
                                                 : ", ") +
                   (comma ? "\"" + word + "\"" : word);
        }
        word.clear();
        if (*at == '\0') return all;
    }
}

Table table(const char* name, std::vector<Column> columns) {
    Table made;
    made.name = name;
    made.columns = std::move(columns);
    return made;
}
void add(Table& table, std::vector<std::string> row) {
    table.content.push_back(std::move(row));
    table.rows = static_cast<int>(table.content.size());
}

Table pipes() {
    Table made = table(
        "Stock", {words("Pipe", nameWide, "Write it like this on Runs; spelling and blanks are forgiven."),
                  words("Source of sizes", textWide),
                  words("Source of n", textWide),
                  quantity("Bore", 3, Measure::Inches),
                  quantity("Outside", 3, Measure::Inches),
                  quantity("Wall", 3, Measure::Inches),
                  number("n", 3),
                  {.heading = "Least slope", .format = show::percent(2), .width = numberWide}});
    for (const StockPipe& row : stock())
        add(made, {row.pipe.name, row.source, row.roughnessSource, inches(row.pipe.bore),
                   row.pipe.outside ? inches(*row.pipe.outside) : "", inches(row.wall),
                   plain(row.pipe.roughness, 4), std::string("={") + leastSlopeRule(row.pipe) + "}"});
    return made;
}

Table coverOverPipes() {
    Table made =
        table("Surfaces", {words("Surface", nameWide), words("Rule", textWide), words("What it is", textWide),
                           quantity("Least cover", 1, Measure::Inches)});
    for (const CoverSurfaceInfo& row : coverSurfaces()) {
        const Rule* rule = row.rule ? findRule(row.rule) : nullptr;
        add(made, {row.name.en, rule ? rule->key : "none", rule ? rule->says.en : "no cover asked",
                   rule ? std::string("={") + rule->key + "}" : ""});
    }
    return made;
}

Table rulesWithoutNumber() {
    const auto sentences = [](const char* heading) {
        Column column = words(heading, textWide);
        column.wrapped = true;
        return column;
    };
    Table made =
        table("Standing rules", {words("Rule", nameWide), sentences("What it says"), sentences("Source")});
    for (const StandingRule& row : standingRules()) add(made, {row.key, row.says.en, row.source});
    return made;
}

// Rows with other words and a source, then their numbers.
template <class Row>
Table wordTable(const char* name, const char* heading, std::vector<Column> numbers, std::span<const Row> rows,
                std::vector<std::string> (*cells)(const Row&)) {
    std::vector<Column> columns = {words(heading, nameWide), words("Also written", textWide),
                                   words("Source", textWide)};
    columns.insert(columns.end(), numbers.begin(), numbers.end());
    Table made = table(name, std::move(columns));
    for (const Row& row : rows) {
        std::vector<std::string> line = {row.name, list(row.also), row.source};
        for (std::string& cell : cells(row)) line.push_back(std::move(cell));
        add(made, std::move(line));
    }
    return made;
}

Table coefficients() {
    return wordTable<RunoffSurface>(
        "Coefficients", "Surface", {number("Low", 2), number("Middle", 2), number("High", 2)},
        runoffSurfaces(), [](const RunoffSurface& row) -> std::vector<std::string> {
            return {plain(row.low, 3), plain((row.low + row.high) / 2, 4), plain(row.high, 3)};
        });
}

Table curveNumbers() {
    return wordTable<GroundCover>("Curve numbers", "Cover",
                                  {number("A", 0), number("B", 0), number("C", 0), number("D", 0)},
                                  groundCovers(), [](const GroundCover& row) {
                                      std::vector<std::string> cells;
                                      for (const double curve : row.curveNumbers)
                                          cells.push_back(plain(curve, 1));
                                      return cells;
                                  });
}

Table sheetFlow() {
    return wordTable<SheetSurface>(
        "Sheet flow", "Surface", {number("n", 3)}, sheetSurfaces(),
        [](const SheetSurface& row) -> std::vector<std::string> { return {plain(row.roughness, 4)}; });
}

Table shallowFlow() {
    return wordTable<ShallowSurface>(
        "Shallow flow", "Surface",
        {quantity("Velocity", 3, Measure::FeetPerSecond, "At a slope of 1; times the root of the slope.")},
        shallowSurfaces(), [](const ShallowSurface& row) -> std::vector<std::string> {
            return {inUnits(row.atUnitSlope.feetPerSecond(), row.atUnitSlope.metresPerSecond(), 4)};
        });
}

Table fittingLosses() {
    Table made = table("Fittings", {words("Fitting", nameWide), words("Source", textWide),
                                    words("Printed", textWide), number("K", 3)});
    for (const Fitting& row : fittings())
        add(made, {std::string(row.name), std::string(row.source),
                   row.least == row.greatest ? plain(row.k) : plain(row.least) + " to " + plain(row.greatest),
                   plain(row.k, 4)});
    return made;
}

Table leaders() {
    Table made = table(
        "Leaders",
        {words("Downspout", nameWide, "Write it like this as Size on Water."),
         words("Source", textWide),
         words("Counts as", textWide),
         {.heading = "Takes", .format = show::number(1), .measure = Measure::Gpm, .width = numberWide}});
    for (const char* size : {"2x3", "3x4", "2 in", "3 in", "4 in", "5 in", "6 in"})
        add(made, {size, findFunction("DOWNSPOUT.CAPACITY")->source,
                   plain(leaderDiameter(size, Length::inches(1)).inches()) + " in round",
                   std::string("=DOWNSPOUT.CAPACITY(\"") + size + "\";;units)"});
    return made;
}

}  // namespace

Sheet tablesSheet(const JobSize&) {
    Sheet sheet;
    sheet.name = "Tables";
    sheet.title = "Tables";
    sheet.purpose =
        "The words that the functions know, with their numbers and where these come from. Case, order and plurals do not matter.";
    const auto add = [&](const char* heading, const char* line, Table table) {
        Paragraphs above;
        above.heading = heading;
        above.lines = {line};
        above.span = 8;
        sheet.parts.emplace_back(std::move(above));
        sheet.parts.emplace_back(std::move(table));
    };
    add("Stock pipe", "Pipe on Runs, Outlet pipe on Water.", pipes());
    sheet.parts.emplace_back(Break{});
    add("Cover over pipes", "Surface up and Surface down on Runs. The limits are those on Rules.",
        coverOverPipes());
    add("Runoff coefficients",
        "Roof C, Paved C and Yard C on Water take these words for a number: the high end of the range counts. "
        "SURFACE.COEFFICIENT gives any of the three. For storms up to some 10 years; rarer ones run off more.",
        coefficients());
    sheet.parts.emplace_back(Break{});
    add("Curve numbers", "SURFACE.CURVE, by hydrologic soil group: A drains best, D worst.", curveNumbers());
    sheet.parts.emplace_back(Break{});
    add("Roughness of sheet flow",
        "TRAVEL.SHEET. Several times the n that a channel with the same cover has.", sheetFlow());
    add("Shallow concentrated flow", "TRAVEL.SHALLOW.", shallowFlow());
    sheet.parts.emplace_back(Break{});
    add("Fitting losses",
        "FITTING.LOSS: head lost is K V2/2g of the full pipe. Books differ by a factor of two for one elbow.",
        fittingLosses());
    add("Downspouts", "Enters by and Size on Water, DOWNSPOUT.CAPACITY.", leaders());
    sheet.parts.emplace_back(Break{});
    add("Standing rules",
        "JOB.FINDINGS names a rule with each finding: those with a number stand on Rules, those without one here.",
        rulesWithoutNumber());
    return sheet;
}

}  // namespace trenchbook::sheets
