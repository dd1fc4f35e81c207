// LINES.* as Calc calls them: one answer a row, blanks for blank rows, an error code in the cells of a bad
// row alone.
#include <bit>
#include <cmath>

#include "catalog/line_rows.h"
#include "catalog_harness.h"
#include "trenchbook/core/units.h"

namespace trenchbook::addin {
namespace {

using namespace harness;

constexpr double m = metresPerFoot;

// The error code that a cell would show; 0 for a number.
std::uint32_t code(double cell) {
    return std::isnan(cell) ? static_cast<std::uint32_t>(std::bit_cast<std::uint64_t>(cell)) : 0;
}

// Two lines and a blank row between them: A and C join in B; X has a line of its own.
const Range from = column({"A", "B", Nothing{}, "C", "X"});
const Range to = column({"B", "Out", "", "b ", "Ditch"});
const Range length = column({40.0, "60'", Nothing{}, 20.0, 30.0});
const Range pipe = column({"4 SDR35", "6 sdr-35", Nothing{}, 3.068, "4 SCH40"});

TEST(LinesFaults, OneTextARow) {
    EXPECT_EQ(texts("LINES.FAULTS", {from, to, length, pipe}).items,
              (std::vector<std::string>{"", "", "", "", ""}));
    const Range badLength = column({40.0, 60.0, Nothing{}, "soon", 30.0});
    EXPECT_EQ(texts("LINES.FAULTS", {from, to, badLength, pipe}).items,
              (std::vector<std::string>{"", "waiting on row 4 (C-b)", "",
                                        "length is \"soon\", allowed: above 0", ""}));
    const Range negative = column({40.0, 60.0, Nothing{}, -20.0, 30.0});
    EXPECT_EQ(texts("LINES.FAULTS", {from, to, negative, pipe}).items[3], "length is -20, allowed: above 0");
    const Range badPipe = column({"4 SDR35", "4 SDR35", Nothing{}, "rubber", Nothing{}});
    const Texts said = texts("LINES.FAULTS", {from, to, length, badPipe, "US", "es"});
    EXPECT_EQ(said.items[1], "en espera de la fila 4 (C-b)");
    EXPECT_EQ(said.items[3].substr(0, 16), "pipe es \"rubber\"");
    EXPECT_EQ(said.items[4], "falta el tubo");
    const Range shrinking = column({"6 SDR35", "4 SDR35", Nothing{}, 3.068, "4 SCH40"});
    EXPECT_EQ(texts("LINES.FAULTS", {from, to, length, shrinking}).items[1],
              "pipe gets smaller downstream: row 1 (A-B) is larger");
    EXPECT_EQ(
        texts("LINES.FAULTS", {column({Nothing{}}), column({Nothing{}}), column({12.0}), column({Nothing{}})})
            .items[0],
        "nowhere to go: both nodes are missing");
    EXPECT_EQ(whyNot("LINES.FAULTS", {from, column({"B"}), length, pipe}),
              "to is 1 row; allowed: 5 rows, as many as from.");
}

// Whatever a function asks beside the two columns of names, the tree that they make is the same one; other names make
// another, and the old one is still there.
TEST(LinesFaults, OneTreeServesAllThatAreGivenTheSameNames) {
    const auto treeFor = [](const char* name, const std::vector<Value>& values) {
        return readNetwork(Arguments(*findFunction(name), values), 0, 1);
    };
    const Range inlets = column({"A"}), flows = column({10.0}), other = column({"B", "Out", "", "b ", "Out"});
    const auto first = treeFor("LINES.FAULTS", {from, to, length, pipe});
    EXPECT_EQ(treeFor("LINES.FLOW", {from, to, inlets, flows}), first);
    EXPECT_EQ(treeFor("LINES.FAULTS", {from, to, length, pipe, "metric"}), first);
    EXPECT_NE(treeFor("LINES.FAULTS", {from, other, length, pipe}), first);
    EXPECT_EQ(treeFor("LINES.STATIONS", {from, to, length}), first);
}

// Numbers and words of one question come from one solve: neither depends on which of them was asked first, nor on what
// was asked in between.
TEST(LinesInverts, NumbersAndWordsAnswerTheSameQuestion) {
    const auto asked = [](const char* name, const Cell& slope, const std::string& units) {
        const Range slopes = column({slope, "1%", Nothing{}, "1%", "1%"});
        const Range outlets = column({"", 97.0, Nothing{}, "", 96.0});
        return run(name, {from, to, length, pipe, slopes, outlets, Nothing{}, Nothing{}, units});
    };
    const auto why = [&](const Cell& slope, const std::string& units = "US") {
        return std::get<Texts>(asked("LINES.INVERTS.WHY", slope, units)).items[0];
    };
    const auto up = [&](const Cell& slope, const std::string& units = "US") {
        return std::get<Numbers>(asked("LINES.INVERTS", slope, units)).items[0];
    };
    const double onePercent = up("1%");
    EXPECT_EQ(why("1%"), "");
    EXPECT_NE(why("soon"), "");
    EXPECT_TRUE(std::isnan(up("soon")));
    EXPECT_EQ(up("1%"), onePercent);
    EXPECT_NEAR(up("2%") - onePercent, 0.4, 1e-9);
    EXPECT_NEAR(up("2%", "metric") - up("1%", "metric"), 0.4, 1e-9) << "the same cells in meters";
}

TEST(LinesFaults, RowsAreCountedAsTheSheetCountsThem) {
    const Range badLength = column({40.0, 60.0, Nothing{}, "soon", 30.0});
    EXPECT_EQ(texts("LINES.FAULTS", {from, to, badLength, pipe, "US", "en", 11.0}).items[1],
              "waiting on row 14 (C-b)");
    EXPECT_EQ(texts("LINES.FAULTS", {from, to, badLength, pipe, Nothing{}, Nothing{}, Nothing{}}).items[1],
              "waiting on row 4 (C-b)");
    EXPECT_EQ(whyNot("LINES.FAULTS", {from, to, length, pipe, "US", "en", 0.5}),
              "first row is 0.5; allowed: a whole number from 1 to 1048576.");
    EXPECT_EQ(whyNot("LINES.FAULTS", {from, to, length, pipe, "US", "en", "ten"}),
              "first row is \"ten\"; allowed: a number.");
    EXPECT_EQ(whyNot("LINES.FAULTS", {from, to, length, pipe, "US", "en", 1.0, 1.0}),
              "arguments is 8 values; allowed: at most 7.");
}

TEST(LinesFlow, AddsUpDownstream) {
    const Range node = column({"A", "C", Nothing{}, "x", "B", "A"});
    const Range flow = column({10.0, 5.0, Nothing{}, 7.0, 2.5, 0.25});
    const Numbers got = numbers("LINES.FLOW", {from, to, node, flow});
    ASSERT_EQ(got.items.size(), 5u);
    EXPECT_NEAR(got.items[0], 10.25, 1e-12);
    EXPECT_NEAR(got.items[1], 17.75, 1e-12);
    EXPECT_TRUE(isBlankCell(got.items[2]));
    EXPECT_NEAR(got.items[3], 5, 1e-12);
    EXPECT_NEAR(got.items[4], 7, 1e-12);
    const Range litres = column(
        {10 * 0.0630901964, 5 * 0.0630901964, "", 7 * 0.0630901964, 2.5 * 0.0630901964, 0.25 * 0.0630901964});
    EXPECT_NEAR(numbers("LINES.FLOW", {from, to, node, litres, "metric"}).items[1], 17.75 * 0.0630901964,
                1e-9);

    // An unreadable, a negative and a missing flow spoil what lies downstream of their own node, nothing
    // else.
    for (const Cell& bad : {Cell("much"), Cell(-1.0), Cell(Nothing{})}) {
        const Numbers spoiled =
            numbers("LINES.FLOW", {from, to, node, column({10.0, bad, Nothing{}, 7.0, 2.5, 0.25})});
        EXPECT_NEAR(spoiled.items[0], 10.25, 1e-12);
        EXPECT_EQ(code(spoiled.items[1]), badArgumentCode);
        EXPECT_EQ(code(spoiled.items[3]), badArgumentCode);
        EXPECT_EQ(spoiled.items[4], got.items[4]);
    }
    EXPECT_EQ(whyNot("LINES.FLOW", {from, to, node, column({1.0})}),
              "inlet flow is 1 row; allowed: 6 rows, as many as inlet node.");
}

TEST(LinesInverts, FromTheOutletUphill) {
    const Range slope = column({"1/4 in/ft", "1%", Nothing{}, 0.02, "1:96"});
    const Range outlet = column({Nothing{}, 96.5, Nothing{}, Nothing{}, 90.0});
    const Numbers got = numbers("LINES.INVERTS", {from, to, length, pipe, slope, outlet});
    ASSERT_EQ(got.columns, 2u);
    ASSERT_EQ(got.rows(), 5u);
    const double join = 97.1 + (5.915 - 3.975) / 12;
    EXPECT_NEAR(got.items[2], 97.1, 1e-9);
    EXPECT_NEAR(got.items[3], 96.5, 1e-9);
    EXPECT_NEAR(got.items[1], join, 1e-9);
    EXPECT_NEAR(got.items[0], join + 40.0 / 48, 1e-9);
    EXPECT_TRUE(isBlankCell(got.items[4]));
    EXPECT_NEAR(got.items[7], 97.1 + (5.915 - 3.068) / 12, 1e-9);
    EXPECT_NEAR(got.items[8], 90.3125, 1e-9);

    const Range metricLength = column({40 * m, 60 * m, "", 20 * m, 30 * m});
    const Range metricPipe = column({"4 SDR35", "6 SDR35", "", 3.068 * 25.4, "4 SCH40"});
    const Range metricOutlet = column({"", 96.5 * m, "", "", 90 * m});
    const Numbers metric = numbers("LINES.INVERTS", {from, to, metricLength, metricPipe, slope, metricOutlet,
                                                     Nothing{}, Nothing{}, "metric"});
    for (std::size_t i = 0; i < got.items.size(); ++i) {
        EXPECT_EQ(isBlankCell(metric.items[i]), isBlankCell(got.items[i]));
        if (!isBlankCell(got.items[i])) {
            EXPECT_NEAR(metric.items[i], got.items[i] * m, 1e-9);
        }
    }

    const Numbers fixed =
        numbers("LINES.INVERTS", {from, to, length, pipe, slope, outlet,
                                  column({98.0, Nothing{}, Nothing{}, Nothing{}, Nothing{}}), "invert"});
    EXPECT_NEAR(fixed.items[1], 98, 1e-9);
    EXPECT_NEAR(fixed.items[7], 97.1, 1e-9);
}

TEST(LinesInverts, ABadRowSpoilsItselfAndWhatHangsOnIt) {
    const Range slope = column({"1%", "flat", Nothing{}, 0.02, "1:96"});
    const Range outlet = column({Nothing{}, 96.5, Nothing{}, Nothing{}, Nothing{}});
    const Numbers got = numbers("LINES.INVERTS", {from, to, length, pipe, slope, outlet});
    for (std::size_t row : {0, 1, 3, 4}) EXPECT_EQ(code(got.items[2 * row]), badArgumentCode) << row;
    EXPECT_EQ(texts("LINES.INVERTS.WHY", {from, to, length, pipe, slope, outlet}).items,
              (std::vector<std::string>{
                  "waiting on row 2 (B-Out)", "slope is \"flat\", allowed: above 0 and below 1", "",
                  "waiting on row 2 (B-Out)", "outlet invert is missing: no row goes on from here"}));
    EXPECT_EQ(whyNot("LINES.INVERTS", {from, to, length, pipe, slope, outlet, Nothing{}, "soffit"}),
              "join is \"soffit\"; allowed: \"crown\", \"invert\".");
}

const Range flow = column({30.0, 60.0, Nothing{}, 20.0, 25.0});
const Range up = column({97.5, 97.1, Nothing{}, 97.4, 90.6});
const Range down = column({97.1, 96.5, Nothing{}, 97.2, 90.0});
const Range outletLevel = column({Nothing{}, 98.5, Nothing{}, Nothing{}, Nothing{}});

Range scaled(Range range, double factor) {
    for (Cell& cell : range.cells)
        if (double* number = std::get_if<double>(&cell)) *number *= factor;
    return range;
}

TEST(LinesLevels, WalksUpstreamFromTheOutlet) {
    const Numbers got = numbers("LINES.LEVELS", {from, to, length, pipe, flow, up, down, outletLevel});
    ASSERT_EQ(got.columns, 3u);
    ASSERT_EQ(got.rows(), 5u);
    EXPECT_NEAR(got.items[4], 98.5, 1e-9);
    EXPECT_GT(got.items[3], 98.5);
    EXPECT_EQ(got.items[5], 1);
    // The runs that enter meet the level at the upper end of the run that leaves.
    EXPECT_NEAR(got.items[1], got.items[3], 1e-9);
    EXPECT_NEAR(got.items[10], got.items[3], 1e-9);
    for (std::size_t column : {6, 7, 8}) EXPECT_TRUE(isBlankCell(got.items[column]));
    EXPECT_EQ(got.items[14], 0);
    EXPECT_EQ(texts("LINES.STATE", {from, to, length, pipe, flow, up, down, outletLevel}).items,
              (std::vector<std::string>{"full", "full", "", "full", "free"}));
    EXPECT_EQ(texts("LINES.STATE",
                    {from, to, length, pipe, flow, up, down, outletLevel, Nothing{}, Nothing{}, "US", "es"})
                  .items[4],
              "libre");

    // K as one value for all rows and as a column; roughness likewise.
    const Numbers withK = numbers("LINES.LEVELS", {from, to, length, pipe, flow, up, down, outletLevel, 1.5});
    const Numbers kColumn = numbers("LINES.LEVELS", {from, to, length, pipe, flow, up, down, outletLevel,
                                                     column({1.5, 1.5, Nothing{}, 1.5, 1.5}), 0.011});
    EXPECT_GT(withK.items[3], got.items[3]);
    for (std::size_t i : {0, 1, 3, 4, 9, 12}) EXPECT_EQ(kColumn.items[i], withK.items[i]);
    const Numbers rough =
        numbers("LINES.LEVELS", {from, to, length, pipe, flow, up, down, outletLevel, Nothing{}, 0.015});
    EXPECT_GT(rough.items[3], got.items[3]);
}

TEST(LinesLevels, UsAndMetricAgree) {
    const Range litres = scaled(flow, 0.0630901964);
    const Range metricLength = column({40 * m, 60 * m, Nothing{}, 20 * m, 30 * m});
    const Range metricPipe = column({"4 SDR35", "6 SDR35", Nothing{}, 3.068 * 25.4, "4 SCH40"});
    const Numbers us = numbers("LINES.LEVELS", {from, to, length, pipe, flow, up, down, outletLevel});
    const Numbers metric =
        numbers("LINES.LEVELS", {from, to, metricLength, metricPipe, litres, scaled(up, m), scaled(down, m),
                                 scaled(outletLevel, m), Nothing{}, Nothing{}, "metric"});
    for (std::size_t i = 0; i < us.items.size(); ++i) {
        if (isBlankCell(us.items[i])) continue;
        EXPECT_NEAR(metric.items[i], i % 3 == 2 ? us.items[i] : us.items[i] * m, 1e-9) << i;
    }
}

TEST(LinesLevels, ABadRowIsNamedAndOthersKeepTheirNumbers) {
    const Numbers before = numbers("LINES.LEVELS", {from, to, length, pipe, flow, up, down, outletLevel});
    const Range noFlow = column({30.0, Nothing{}, Nothing{}, 20.0, 25.0});
    const Numbers after = numbers("LINES.LEVELS", {from, to, length, pipe, noFlow, up, down, outletLevel});
    for (std::size_t row : {0, 1, 3})
        for (std::size_t column : {0, 1, 2}) EXPECT_EQ(code(after.items[3 * row + column]), badArgumentCode);
    EXPECT_EQ(after.items[12], before.items[12]);
    EXPECT_EQ(texts("LINES.STATE", {from, to, length, pipe, noFlow, up, down, outletLevel}).items,
              (std::vector<std::string>{"waiting on row 2 (B-Out)", "flow is missing", "",
                                        "waiting on row 2 (B-Out)", "free"}));
    EXPECT_EQ(whyNot("LINES.LEVELS", {from, to, length, pipe, flow, up, down, outletLevel, -1.0}),
              "K is -1; allowed: 0 or more.");
    EXPECT_EQ(whyNot("LINES.LEVELS", {from, to, length, pipe, flow, up, down, outletLevel, Nothing{}, 3.0}),
              "roughness is 3; allowed: Manning n from 0.005 to 0.5.");
    EXPECT_EQ(whyNot("LINES.LEVELS", {from, to, length, pipe, flow, up, down, column({98.5})}),
              "outlet level is 1 row; allowed: 5 rows, as many as from.");
}

Range rain(double unit) {
    Range table;
    table.rows = 4;
    table.columns = 3;
    table.cells = {Nothing{}, 2.0,        10.0,       "5-min", 0.4 * unit, 0.6 * unit,
                   "60-min",  1.2 * unit, 1.8 * unit, "24-hr", 2.6 * unit, 4.0 * unit};
    return table;
}

TEST(LinesPeak, GivesFiveColumns) {
    const Range slope = column({"1%", "1%", Nothing{}, 0.02, "1:96"});
    const Range node = column({"A", "C", "X", "b"});
    const Range area = column({900.0, 500.0, 1200.0, 300.0});
    const Range minutes = column({5.0, 6.0, 5.0, 5.0});
    const std::vector<Value> call = {from, to, length, pipe, slope, node, area, minutes, rain(1), 10.0};
    const Numbers got = numbers("LINES.PEAK", call);
    ASSERT_EQ(got.columns, 5u);
    // Row 1: 900 sq ft at the 5-minute intensity of 7.2 in/hr: 900 x 7.2 / 96.25 gpm.
    EXPECT_NEAR(got.items[0], 900, 1e-9);
    EXPECT_NEAR(got.items[1], 5, 1e-12);
    EXPECT_NEAR(got.items[2], 7.2, 1e-9);
    EXPECT_NEAR(got.items[3], 900 * 7.2 / 96.25, 1e-9);
    EXPECT_NEAR(got.items[5], 1700, 1e-9);
    EXPECT_GT(got.items[6], 6);
    for (std::size_t i = 10; i < 15; ++i) EXPECT_TRUE(isBlankCell(got.items[i]));

    const Range metricLength = column({40 * m, 60 * m, Nothing{}, 20 * m, 30 * m});
    const Range metricPipe = column({"4 SDR35", "6 SDR35", Nothing{}, 3.068 * 25.4, "4 SCH40"});
    const Numbers metric =
        numbers("LINES.PEAK", {from, to, metricLength, metricPipe, slope, node, scaled(area, m * m), minutes,
                               rain(25.4), 10.0, Nothing{}, Nothing{}, "metric"});
    const double factor[] = {m * m, 1, 25.4, 0.0630901964, m};
    for (std::size_t i = 0; i < got.items.size(); ++i) {
        if (isBlankCell(got.items[i])) continue;
        EXPECT_NEAR(metric.items[i], got.items[i] * factor[i % 5], 1e-9 * (1 + got.items[i])) << i;
    }

    std::vector<Value> spoiled = call;
    spoiled[4] = column({"1%", "1%", Nothing{}, "flat", "1:96"});
    const Numbers after = numbers("LINES.PEAK", spoiled);
    EXPECT_EQ(after.items[3], got.items[3]);
    EXPECT_EQ(code(after.items[5]), badArgumentCode);
    EXPECT_EQ(code(after.items[15]), badArgumentCode);
    EXPECT_EQ(after.items[23], got.items[23]);
    EXPECT_EQ(texts("LINES.PEAK.WHY", call).items, std::vector<std::string>(5));
    const Texts said = texts("LINES.PEAK.WHY", spoiled);
    EXPECT_EQ(said.items[1], "waiting on row 4 (C-b)");
    EXPECT_EQ(said.items[3].substr(0, 15), "slope is \"flat\"");
    spoiled.resize(12);
    spoiled.insert(spoiled.end(), {"US", "es", 11.0});
    EXPECT_EQ(texts("LINES.PEAK.WHY", spoiled).items[1], "en espera de la fila 14 (C-b)");
    spoiled = call;
    spoiled.resize(12);
    spoiled[11] = "fast";
    EXPECT_EQ(whyNot("LINES.PEAK", spoiled), "travel is \"fast\"; allowed: \"flow\", \"area\".");
    spoiled = call;
    spoiled[9] = 1000.0;
    EXPECT_EQ(whyNot("LINES.PEAK", spoiled).substr(0, 14), "return is 1000");
}

}  // namespace
}  // namespace trenchbook::addin
