// The words that functions know, with their numbers and sources, so that nobody has to guess them.
#include <algorithm>

#include "job/job.h"
#include "trenchbook/fittings.h"
#include "trenchbook/rules.h"
#include "trenchbook/run.h"
#include "trenchbook/stock.h"
#include "trenchbook/surfaces.h"

namespace trenchbook::sheets {
namespace {

// All tables share the sheet's columns: a name, long text, up to five numbers, long text again.
constexpr double nameWide = 62, textWide = 70, numberWide = 22, restWide = 70;

Column words(const char* heading, double width, const char* note = "") {
    return {.heading = heading, .kind = Kind::Label, .width = width, .note = note};
}
Column number(const char* heading, int decimals, const char* note = "") {
    return {.heading = heading, .kind = Kind::Label, .format = show::number(decimals), .width = numberWide, .note = note};
}
Column quantity(const char* heading, int decimals, Measure measure, const char* note = "") {
    return {.heading = heading, .format = show::number(decimals), .measure = measure, .width = numberWide, .note = note};
}
// Sources run on over the blank columns beside them.
Column source() {
    Column made = words("Source", numberWide);
    made.kind = Kind::Computed;
    return made;
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
            all += (all.empty() ? "" : comma || all.back() == '"' ? "; " : ", ") + (comma ? "\"" + word + "\"" : word);
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
    Table made = table("Stock", {words("Pipe", nameWide, "Write it like this on Runs; spelling and blanks are forgiven."),
                                 words("Source of sizes", textWide), quantity("Bore", 3, Measure::Inches),
                                 quantity("Outside", 3, Measure::Inches), quantity("Wall", 3, Measure::Inches),
                                 number("n", 3, "Manning roughness."),
                                 {.heading = "Least slope", .format = show::percent(2), .width = numberWide,
                                  .note = "From Rules, by nominal size."},
                                 words("Source of n", restWide)});
    for (const StockPipe& row : stock())
        add(made, {row.pipe.name, row.source, inches(row.pipe.bore), row.pipe.outside ? inches(*row.pipe.outside) : "",
                   inches(row.wall), plain(row.pipe.roughness, 4), std::string("={") + leastSlopeKey(row.pipe.nominal) + "}",
                   row.roughnessSource});
    return made;
}

Table coverOverPipes() {
    Table made = table("Surfaces", {words("Surface", nameWide), words("Rule", textWide),
                                    quantity("Least cover", 1, Measure::Inches)});
    for (const SurfaceWords& row : surfaces())
        add(made, {row.name.en, row.rule ? row.rule : "no cover asked", row.rule ? std::string("={") + row.rule + "}" : ""});
    return made;
}

Table coefficients() {
    Table made = table("Coefficients", {words("Surface", nameWide), words("Also written", textWide), number("Low", 2),
                                        number("Middle", 2), number("High", 2), source()});
    for (const RunoffSurface& row : runoffSurfaces())
        add(made, {row.name, list(row.also), plain(row.low, 3), plain((row.low + row.high) / 2, 4), plain(row.high, 3), row.source});
    return made;
}

Table curveNumbers() {
    Table made = table("Curve numbers", {words("Cover", nameWide), words("Also written", textWide), number("A", 0),
                                         number("B", 0), number("C", 0), number("D", 0), source()});
    for (const Cover& row : covers()) {
        std::vector<std::string> cells = {row.name, list(row.also)};
        for (const double curve : row.curveNumbers) cells.push_back(plain(curve, 1));
        cells.push_back(row.source);
        add(made, std::move(cells));
    }
    return made;
}

Table sheetFlow() {
    Table made = table("Sheet flow", {words("Surface", nameWide), words("Also written", textWide), number("n", 3), source()});
    for (const SheetSurface& row : sheetSurfaces())
        add(made, {row.name, list(row.also), plain(row.roughness, 4), row.source});
    return made;
}

Table shallowFlow() {
    Table made = table("Shallow flow", {words("Surface", nameWide), words("Also written", textWide),
                                        quantity("Velocity", 3, Measure::FeetPerSecond, "At a slope of 1; times the root of the slope."),
                                        source()});
    for (const ShallowSurface& row : shallowSurfaces())
        add(made, {row.name, list(row.also), inUnits(row.atUnitSlope.feetPerSecond(), row.atUnitSlope.metresPerSecond(), 4),
                   row.source});
    return made;
}

Table fittingLosses() {
    Table made = table("Fittings", {words("Fitting", nameWide), words("Source", textWide), number("K", 3, "Middle of the printed range."),
                                    number("Least", 3), number("Greatest", 3)});
    for (const Fitting& row : fittings())
        add(made, {std::string(row.name), std::string(row.source), plain(row.k, 4), plain(row.least, 4), plain(row.greatest, 4)});
    return made;
}

Table leaders() {
    Table made = table("Leaders", {words("Downspout", nameWide, "Write it like this as Size on Water."), words("Source", textWide),
                                   {.heading = "Takes", .format = show::number(1), .measure = Measure::Gpm, .width = numberWide}});
    for (const char* size : {"2x3", "3x4", "2 in", "3 in", "4 in", "5 in", "6 in"})
        add(made, {size, "Plumbing codes' leader formula, 7/24 full; rectangles as the largest circle inside",
                   std::string("=DOWNSPOUT.CAPACITY(\"") + size + "\";;units)"});
    return made;
}

}  // namespace

Sheet tablesSheet(const JobSize&) {
    Sheet sheet;
    sheet.name = "Tables";
    sheet.title = "Tables";
    sheet.purpose = "The words that the functions know, with their numbers and where these come from. Case, order and plurals do not matter.";
    const auto add = [&](const char* heading, const char* line, Table table) {
        Paragraphs above;
        above.heading = heading;
        above.lines = {line};
        above.span = 8;
        sheet.parts.emplace_back(std::move(above));
        sheet.parts.emplace_back(std::move(table));
    };
    add("Stock pipe", "Pipe on Runs, Outlet pipe on Water.", pipes());
    add("Cover over pipes", "Surface up and Surface down on Runs. The limits are those on Rules.", coverOverPipes());
    add("Runoff coefficients", "Roof C, Paved C and Yard C on Water take these words for a number: the high end of the range counts. "
        "SURFACE.COEFFICIENT gives any of the three. For storms up to some 10 years; rarer ones run off more.", coefficients());
    add("Curve numbers", "SURFACE.CURVE, by hydrologic soil group: A drains best, D worst.", curveNumbers());
    add("Roughness of sheet flow", "TRAVEL.SHEET. Several times the n that a channel with the same cover has.", sheetFlow());
    add("Shallow concentrated flow", "TRAVEL.SHALLOW.", shallowFlow());
    add("Fitting losses", "FITTING.LOSS: head lost is K V2/2g of the full pipe. Books differ by a factor of two for one elbow.", fittingLosses());
    add("Downspouts", "Enters by and Size on Water, DOWNSPOUT.CAPACITY.", leaders());
    return sheet;
}

}  // namespace trenchbook::sheets
