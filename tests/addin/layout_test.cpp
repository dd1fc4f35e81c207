// The lot in plan, through the catalog.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "catalog/drawing_pens.h"
#include "catalog_harness.h"
#include "reference.h"

namespace trenchbook::addin {
namespace {

using namespace harness;

Range table(std::size_t columns, std::vector<Cell> cells) {
    const std::size_t rows = cells.size() / columns;
    return {rows, columns, std::move(cells)};
}
double cellOf(const Numbers& block, std::size_t row, std::size_t column) {
    return block.items[row * block.columns + column];
}

// A house 40 by 30 ft and a lot line; A at (5, -2), B at (50, -10).
std::vector<Value> lot(double factor = 1) {
    const auto feet = [&](double value) { return Cell(value * factor); };
    const auto tie = [&](const char* name, double value) {
        return Cell(std::string(name) + " " + std::to_string(value * factor));
    };
    return {table(5, {"Point",   "What",    "Object", "X",      "Y",      "SW",       "building",
                      "house",   feet(0),   feet(0),  "SE",     "",       "house",    feet(40),
                      feet(0),   "NE",      "",       "house",  feet(40), feet(30),   "NW",
                      "",        "house",   feet(0),  feet(30), "L1",     "lot line", "lot",
                      feet(-20), feet(-30), "L2",     "",       "lot",    feet(120),  feet(-30)}),
            table(3, {"From", "To", "Length", "SW", "B", feet(50.99), "SW", "nobody", feet(3)}),
            table(3, {"Node", "Tie 1", "Tie 2", "A", tie("SW", 5.385), tie("SE", 35.057), "B",
                      tie("SE", 14.142), tie("NE", 41.231), "C", "", ""}),
            table(4, {"From", "To", "Length", "Pipe", "A", "B", feet(45.706), "4 SDR35"})};
}
const std::size_t x = 0, y = 1;

TEST(Layout, NodesHaveTheirPlacesAndDistances) {
    const Numbers nodes = numbers("LAYOUT.NODES", lot());
    ASSERT_EQ(nodes.rows(), 3u);
    EXPECT_NEAR(cellOf(nodes, 0, x), 5, 0.01);
    EXPECT_NEAR(cellOf(nodes, 0, y), -2, 0.01);
    EXPECT_NEAR(cellOf(nodes, 1, x), 50, 0.01);
    EXPECT_NEAR(cellOf(nodes, 1, y), -10, 0.01);
    EXPECT_TRUE(isBlankCell(cellOf(nodes, 2, x)));
    EXPECT_NEAR(cellOf(nodes, 0, 11), 2, 0.01);  // to the house
    EXPECT_NEAR(cellOf(nodes, 1, 11), 14.14, 0.02);
    EXPECT_NEAR(cellOf(nodes, 1, 12), 20, 0.02);  // to the lot line
    EXPECT_TRUE(isBlankCell(cellOf(nodes, 1, 13)));
    const Texts words = texts("LAYOUT.NODES.TEXT", lot());
    EXPECT_NE(words.items[0].find("tapes"), std::string::npos) << words.items[0];
    EXPECT_EQ(words.items[4], "no place: tape it to two corners");
}

TEST(Layout, PointsRunsAndTapes) {
    const Numbers points = numbers("LAYOUT.POINTS", lot());
    EXPECT_EQ(points.rows(), 6u);
    EXPECT_NEAR(cellOf(points, 2, x), 40, 1e-12);
    EXPECT_NEAR(cellOf(points, 2, 2), 0, 1e-12);
    const Numbers runs = numbers("LAYOUT.RUNS", lot());
    ASSERT_EQ(runs.rows(), 1u);
    EXPECT_NEAR(cellOf(runs, 0, 4), std::hypot(45, 8), 0.02);
    EXPECT_NEAR(cellOf(runs, 0, 6), 90 + std::atan2(8, 45) * 180 / std::acos(-1), 0.05);
    EXPECT_NEAR(cellOf(runs, 0, 7), 2, 0.01);
    const Numbers tapes = numbers("LAYOUT.TAPES", lot());
    ASSERT_EQ(tapes.rows(), 2u);
    EXPECT_NEAR(cellOf(tapes, 0, 0), std::hypot(50, 10), 0.02);
    EXPECT_NEAR(cellOf(tapes, 0, 1), 0, 0.02);
    EXPECT_TRUE(isBlankCell(cellOf(tapes, 1, 0)));
    const Texts words = texts("LAYOUT.TAPES.TEXT", lot());
    EXPECT_EQ(words.items[0], "OK");
    EXPECT_EQ(words.items[2], "CHECK");
    EXPECT_EQ(words.items[3], "CHECK: nobody is no point of Layout or Nodes");
}

TEST(Layout, AMetricLotIsTheSameLot) {
    std::vector<Value> metric = lot(0.3048);
    metric.insert(metric.end(), {Nothing{}, Nothing{}, std::string("metric")});
    const Numbers us = numbers("LAYOUT.NODES", lot()), si = numbers("LAYOUT.NODES", metric);
    for (std::size_t row = 0; row < 2; ++row)
        for (const std::size_t column :
             {std::size_t{0}, std::size_t{1}, std::size_t{2}, std::size_t{11}, std::size_t{12}})
            EXPECT_NEAR(cellOf(us, row, column) * 0.3048, cellOf(si, row, column), 1e-5);
}

TEST(Layout, TheScaleIsAUsualOneAndTheDrawingKeepsIt) {
    // 140 ft of lot line on 7.5 in take 1 in = 20 ft.
    EXPECT_EQ(number("LAYOUT.SCALE", lot()), 240);
    std::vector<Value> wide = lot();
    wide.insert(wide.end(), {Nothing{}, Nothing{}, 15.0, 10.0});
    EXPECT_EQ(number("LAYOUT.SCALE", wide), 120);
    const Numbers drawing = numbers("LAYOUT.DRAWING", lot());
    ASSERT_EQ(drawing.rows(), drawingPens().rows + 1);
    ASSERT_EQ(drawing.columns, 2 * drawingPens().pairs);
    // Places, east and north, of all points of a pen.
    const auto points = [](const Numbers& of, const std::string& name) {
        std::vector<std::pair<double, double>> all;
        for (const Pen& pen : drawingPens().pens)
            for (const PenStrip& strip : pen.strips)
                for (std::size_t row = strip.first; pen.name == name && row < strip.first + strip.rows; ++row)
                    if (!isBlankCell(cellOf(of, row, 2 * strip.pair)))
                        all.emplace_back(cellOf(of, row, 2 * strip.pair),
                                         cellOf(of, row, 2 * strip.pair + 1));
        return all;
    };
    for (const Pen& pen : drawingPens().pens)
        for (const auto& [east, north] : points(drawing, pen.name)) {
            EXPECT_GE(east, -1e-9);
            EXPECT_LE(east, 190.5 + 1e-9);  // 7.5 in, in millimeters
            EXPECT_GE(north, -1e-9);
        }
    double least = 1000, most = -1000;
    for (const auto& [east, north] : points(drawing, "Buildings")) {
        least = std::min(least, east);
        most = std::max(most, east);
    }
    EXPECT_NEAR(most - least, 40 / 20.0 * 25.4, 1e-9);
    EXPECT_EQ(points(drawing, "Small pipe").size(), 2u);  // one run
    EXPECT_GT(points(drawing, "Words").size(), 40u);
    EXPECT_EQ(cellOf(drawing, drawingPens().rows, 0), 0);  // all had room
    // A crossing is one of the signs; the arrow to the north is drawn as words are.
    std::vector<Value> more = lot();
    more.insert(more.end(), {Nothing{}, Nothing{}, Nothing{}, Nothing{},
                             table(4, {"What", "From", "To", "At", "gas", "A", "B", 10.0}), 90.0});
    const Numbers with = numbers("LAYOUT.DRAWING", more);
    EXPECT_EQ(points(with, "Signs").size(), points(drawing, "Signs").size() + 2);
    EXPECT_GT(points(with, "Words").size(), points(drawing, "Words").size() + 11);
}

TEST(Layout, AJobReadsItsDistances) {
    const Range facts = table(2, {"Rain", 4.0});
    const Range nodes = table(
        4, {"Node", "Kind", "Ground", "Tie 1", "A", "downspout", 100.0, "SW 5.385", "B", "bank", 97.0, ""});
    const Range runs = table(6, {"From", "To", "Length", "Pipe", "Slope", "Outlet level", "A", "B", 45.706,
                                 "4 SDR35", "1%", 96.0});
    const Range points =
        table(5, {"Point", "What", "Object", "X",  "Y",   "SW", "building", "house", 0.0,  0.0,
                  "SE",    "",     "house",  40.0, 0.0,   "NE", "",         "house", 40.0, 30.0,
                  "well",  "well", "",       50.0, -12.0, "B",  "",         "",      50.0, -10.0});
    std::vector<Value> job = {facts, nodes, Nothing{}, runs};
    job.resize(13);
    job.insert(job.end(), {Nothing{}, Nothing{}, Nothing{}, points});
    const Texts drawn = texts("JOB.NODES.TEXT", job);
    EXPECT_NE(drawn.items[1 * drawn.columns + 1].find("to the well by the drawing 2 ft"), std::string::npos)
        << drawn.items[1 * drawn.columns + 1];
    job.pop_back();
    EXPECT_EQ(texts("JOB.NODES.TEXT", job).items[1 * drawn.columns + 1].find("well"), std::string::npos);
}

TEST(Layout, PlatsAndTies) {
    const std::vector<Value> plat = {table(1, {"N 0 E", "N 90 E", "S 0 E", "S 90 W"}),
                                     table(1, {50.0, 80.0, 50.0, 80.0})};
    const Numbers corners = numbers("LAYOUT.PLAT", plat);
    ASSERT_EQ(corners.rows(), 4u);
    EXPECT_NEAR(cellOf(corners, 2, x), 80, 1e-9);
    EXPECT_NEAR(cellOf(corners, 2, y), 50, 1e-9);
    EXPECT_NEAR(number("LAYOUT.CLOSURE", plat), 0, 1e-9);
    const Numbers two = numbers("LAYOUT.TIES", {0.0, 0.0, 30.0, 40.0, 0.0, 30.0});
    EXPECT_NEAR(cellOf(two, 0, y), std::sqrt(500), 1e-9);
    EXPECT_NEAR(cellOf(two, 1, y), -std::sqrt(500), 1e-9);
}

// The lot above, worked by hand: A at (5, -2), B at (50, -10), the house 40 ft wide, 140 ft of lot line.
TEST(Layout, IsWhatPythagorasGives) {
    const char* hand = "plane distances, worked by hand";
    reference::check("LAYOUT.RUNS", "length of a run from (5, -2) to (50, -10), ft",
                     cellOf(numbers("LAYOUT.RUNS", lot()), 0, 4), std::hypot(45.0, 8.0), 0.005, hand,
                     "computed");
    reference::check("LAYOUT.TAPES", "distance from the corner at (0, 0) to (50, -10), ft",
                     cellOf(numbers("LAYOUT.TAPES", lot()), 0, 0), std::hypot(50.0, 10.0), 0.005, hand,
                     "computed");
    reference::checkWords("LAYOUT.TAPES.TEXT", "a tape of 50.99 ft between them",
                          texts("LAYOUT.TAPES.TEXT", lot()).items[0], "OK", hand, "computed");
    // 140 ft on 7.5 in: 224 times smaller at least; the engineer's scale has 10, 20, 30 ft to the inch.
    reference::check("LAYOUT.SCALE", "140 ft on 7.5 in: 20 ft to the inch", number("LAYOUT.SCALE", lot()),
                     240, 0, "divisions of an engineer's scale; the rest worked by hand", "computed");
    const Numbers drawing = numbers("LAYOUT.DRAWING", lot());
    double least = 1000, most = -1000;
    for (std::size_t row = 0; row < drawingPens().pens.front().strips.front().rows; ++row)
        if (!isBlankCell(cellOf(drawing, row, 0))) {
            least = std::min(least, cellOf(drawing, row, 0));
            most = std::max(most, cellOf(drawing, row, 0));
        }
    reference::check("LAYOUT.DRAWING", "a house 40 ft wide at 20 ft to the inch, mm", most - least, 50.8,
                     1e-9, hand, "computed");
    // Fifty north, eighty east, forty-nine south, eighty west ends a foot north of where it began.
    const std::vector<Value> open = {table(1, {"N 0 E", "N 90 E", "S 0 E", "S 90 W"}),
                                     table(1, {50.0, 80.0, 49.0, 80.0})};
    reference::check("LAYOUT.CLOSURE", "a rectangle with one side a foot short, ft",
                     number("LAYOUT.CLOSURE", open), 1, 1e-9, "latitudes and departures, worked by hand",
                     "computed");
    // One distance leaves a circle, two leave two points: a point without any has no place.
    reference::checkWords("LAYOUT.NODES.TEXT", "a node that no tape reaches",
                          texts("LAYOUT.NODES.TEXT", lot()).items[4], "no place: tape it to two corners",
                          "a place in a plane takes two distances", "computed");
    reference::checkWords("LAYOUT.POINTS.TEXT", "a corner whose place is typed",
                          texts("LAYOUT.POINTS.TEXT", lot()).items[1], "OK: typed",
                          "its coordinates are held as they are given", "computed");
}

TEST(Layout, LevelsAdjusted) {
    const Numbers levels =
        numbers("LEVELS.ADJUST", {table(1, {"BM", "A", "TP", "A"}), table(1, {100.0, "", "", ""}),
                                  table(1, {5.0, "", 4.0, ""}), table(1, {"", 6.0, 5.5, 4.48})});
    // Read as 99.00 and, by way of TP over two more readings, as 99.02: three shares to one.
    EXPECT_NEAR(cellOf(levels, 1, 0), 99.005, 1e-9);
    EXPECT_NEAR(cellOf(levels, 3, 0), 99.005, 1e-9);
    EXPECT_EQ(cellOf(levels, 1, 4), 0);
    EXPECT_TRUE(isBlankCell(cellOf(levels, 0, 2)));
}

}  // namespace
}  // namespace trenchbook::addin
