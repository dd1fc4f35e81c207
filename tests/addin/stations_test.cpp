// LINES.STATIONS, LINES.STAKES, LINES.CLEANOUTS and LINES.COVERS as Calc calls them.
#include <bit>
#include <cmath>

#include "catalog_harness.h"
#include "reference.h"
#include "trenchbook/core/units.h"

namespace trenchbook::addin {
namespace {

using namespace harness;

std::uint32_t code(double cell) {
    return std::isnan(cell) ? static_cast<std::uint32_t>(std::bit_cast<std::uint64_t>(cell)) : 0;
}

const Range from = column({"A", "B", Nothing{}, "X"});
const Range to = column({"B", "Out", Nothing{}, "Ditch"});
const Range length = column({"40' 6\"", 60.0, Nothing{}, "soon"});
const Range line = column({"main", "main", Nothing{}, "side"});

TEST(LinesStations, ThreeNumbersARow) {
    const Numbers got = numbers("LINES.STATIONS", {from, to, length, line});
    EXPECT_EQ(got.columns, 3u);
    EXPECT_NEAR(got.items[0], 100.5, 1e-9);
    EXPECT_NEAR(got.items[1], 60, 1e-9);
    EXPECT_EQ(got.items[2], 2);
    EXPECT_EQ(got.items[5], 1);
    EXPECT_TRUE(isBlankCell(got.items[6]));
    EXPECT_EQ(code(got.items[9]), 502u) << "the row without a length, alone";
    const Range metres = column({30.0, 20.0, Nothing{}, 7.0});
    EXPECT_NEAR(numbers("LINES.STATIONS", {from, to, metres, line, "metric"}).items[0], 50, 1e-9);
}

TEST(LinesStakes, FullStationsAndBothEnds) {
    const Numbers got = numbers("LINES.STAKES", {from, to, length, line, 25.0});
    // B-Out: 0, 25, 50, 60; A-B: 60, 75, 100, 100.5.
    const std::vector<double> stations = {0, 25, 50, 60, 60, 75, 100, 100.5};
    ASSERT_EQ(got.items.size(), 3 * stations.size());
    for (std::size_t i = 0; i < stations.size(); ++i) {
        EXPECT_NEAR(got.items[3 * i + 1], stations[i], 1e-9);
        EXPECT_EQ(got.items[3 * i], i < 4 ? 2 : 1);
        EXPECT_NEAR(got.items[3 * i + 2], stations[i] - (i < 4 ? 0 : 60), 1e-9);
    }
    EXPECT_NEAR(
        numbers("LINES.STAKES", {column({"A"}), column({"B"}), column({7.0}), Nothing{}, Nothing{}, "metric"})
            .items[4],
        3, 1e-9)
        << "metric: every 3 m";
}

TEST(LinesStations, WhatIsMissingIsNamed) {
    for (const char* name : {"LINES.STATIONS", "LINES.STAKES", "LINES.CLEANOUTS"}) {
        EXPECT_EQ(whyNot(name, {}), "from is blank; allowed: one column.") << name;
        EXPECT_EQ(whyNot(name, {from}), "to is blank; allowed: one column.") << name;
        EXPECT_EQ(whyNot(name, {from, to}), "length is blank; allowed: one column.") << name;
    }
    EXPECT_EQ(whyNot("LINES.STATIONS", {from, to, column({1.0})}),
              "length is 1 row; allowed: 4 rows, as many as from.");
    EXPECT_EQ(whyNot("LINES.STAKES", {from, to, length, line, 0.0}), "step is 0; allowed: above 0.");
    EXPECT_NE(whyNot("LINES.STAKES", {}, Language::Spanish), whyNot("LINES.STAKES", {}));
}

TEST(LinesCleanouts, SinceTheLastOpening) {
    const Range all = column({30.0, 60.0, Nothing{}, 5.0});
    const Range node = column({"A", "B", "X"});
    const Range turn = column({Nothing{}, 45.0, "sharp"});
    const Range opening = column({1.0, 0.0, Nothing{}});
    const Numbers got = numbers("LINES.CLEANOUTS", {from, to, all, node, turn, opening});
    ASSERT_EQ(got.columns, 4u);
    EXPECT_NEAR(got.items[0], 30, 1e-9);
    EXPECT_EQ(got.items[2], 0);
    EXPECT_NEAR(got.items[4], 90, 1e-9);
    EXPECT_NEAR(got.items[5], 45, 1e-9);
    EXPECT_EQ(got.items[7], 0);
    EXPECT_TRUE(isBlankCell(got.items[8]));
    EXPECT_EQ(code(got.items[12]), 502u) << "the turn of X is no number";
    EXPECT_EQ(whyNot("LINES.CLEANOUTS", {from, to, all, node, column({1.0}), column({1.0, 0.0, 0.0})}),
              "turn is 1 row; allowed: 3 rows, as many as node.");
    const Range metres = column({9.0, 18.0, Nothing{}, 5.0});
    EXPECT_NEAR(numbers("LINES.CLEANOUTS", {from, to, metres, node, turn, opening, "metric"}).items[4], 27,
                1e-9);
    EXPECT_EQ(numbers("LINES.CLEANOUTS", {from, to, all, node, turn, opening, "US", 40.0}).items[7], 1);
    EXPECT_EQ(whyNot("LINES.CLEANOUTS", {from, to, all, node, turn, opening, "US", -1.0}),
              "sharp is -1; allowed: from 0 to 180.");
}

TEST(LinesCleanouts, AskedByTheRules) {
    const Range all = column({30.0, 130.0, Nothing{}, 5.0});
    const Range pipe = column({"4 SDR35", "4 SDR35", Nothing{}, "rope"});
    const Range node = column({"A", "B", "X"}), turn = column({Nothing{}, 45.0, 0.0}),
                opening = column({1.0, 0.0, 0.0});
    const Numbers got = numbers("LINES.CLEANOUTS.ASKED", {from, to, all, pipe, node, turn, opening});
    ASSERT_EQ(got.columns, 3u);
    EXPECT_EQ(got.items[1], 0);
    EXPECT_TRUE(isBlankCell(got.items[2]));
    EXPECT_EQ(got.items[3], 0);
    EXPECT_EQ(got.items[4], 3) << "160 ft, one every 50";
    EXPECT_NEAR(got.items[5], 20, 1e-9);
    EXPECT_TRUE(isBlankCell(got.items[6]));
    EXPECT_EQ(code(got.items[9]), 502u) << "no such pipe";
    Range rules = column({"cleanout.spacing.4in", 75.0});
    rules.rows = 1, rules.columns = 2;
    EXPECT_EQ(numbers("LINES.CLEANOUTS.ASKED", {from, to, all, pipe, node, turn, opening, rules}).items[4],
              2);
    const Range metres = column({9.0, 39.0, Nothing{}, 5.0});
    EXPECT_NEAR(numbers("LINES.CLEANOUTS.ASKED", {from, to, metres, pipe, node, turn, opening, "", "metric"})
                    .items[5],
                50 * 0.3048 - 9, 1e-9);
    EXPECT_EQ(whyNot("LINES.CLEANOUTS.ASKED", {from, to, all, column({"4 SDR35"}), node, turn, opening}),
              "pipe is 1 row; allowed: 4 rows, as many as from.");
}

TEST(LinesCovers, ByTheRules) {
    const Range up = column({"lawn", "gravel drive", "drive", "daylight", "water", Nothing{}});
    const Range down = column({"bed", "drive", "street", "lawn", "lawn", Nothing{}});
    const Range pipe = column({"4 SDR35", "4 SDR35", "4 SCH40", "4 SDR35", "4 SDR35", Nothing{}});
    Range rules = column({"cover.lawn", 10.0});
    rules.rows = 1;
    rules.columns = 2;
    const Numbers got = numbers("LINES.COVERS", {up, down, pipe, rules});
    EXPECT_EQ(got.columns, 2u);
    EXPECT_NEAR(got.items[0], 10, 1e-9);
    constexpr const char* d2321 = "ASTM D2321: 24 in under wheels, 36 in in other soils";
    reference::check("LINES.COVERS", "SDR 35 under a drive, in", got.items[2], 24, 1e-9, d2321, "memory");
    reference::check("LINES.COVERS", "under a street, in", got.items[5], 36, 1e-9, d2321, "memory");
    reference::check("LINES.COVERS", "Schedule 40 under a drive, in", got.items[4], 18, 1e-9,
                     "the trade's usual cover", "common practice");
    EXPECT_TRUE(isBlankCell(got.items[6])) << "daylight: none asked";
    EXPECT_EQ(code(got.items[8]), 502u) << "no such surface";
    EXPECT_NEAR(got.items[9], 10, 1e-9) << "its other end is not spoiled";
    EXPECT_TRUE(isBlankCell(got.items[10]));
    EXPECT_NEAR(numbers("LINES.COVERS", {up, down, pipe, rules, "metric"}).items[2], 24 * 25.4, 1e-6);
}

}  // namespace
}  // namespace trenchbook::addin
