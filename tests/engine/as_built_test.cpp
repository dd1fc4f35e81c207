// The lot as built: where nodes were measured after the work, and what is written at them.
#include "trenchbook/job/as_built.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "trenchbook/core/error.h"
#include "trenchbook/job/draw_lot.h"
#include "trenchbook/job/plan_drawing.h"

namespace trenchbook {
namespace {

// A wall of 40 ft; nodes 10 ft south of it at 0, 30 and 60 ft: ties by Pythagoras.
Job planned() {
    Job job;
    const auto corner = [&](const char* name, double x, double y) {
        job.lotPoints.push_back({.name = name,
                                 .what = LotThing::Building,
                                 .object = "house",
                                 .east = Length::feet(x),
                                 .north = Length::feet(y),
                                 .blank = false});
    };
    corner("W", 0, 0), corner("E", 40, 0), corner("N", 40, 30), corner("M", 0, 30);
    job.nodes = {{.name = "A", .tie1 = "W 10", .tie2 = "E 41.231", .blank = false},
                 {.name = "B",
                  .kinds = nodeKinds("cleanout"),
                  .turn = Angle::degrees(0),
                  .tie1 = "W 31.623",
                  .tie2 = "E 14.142",
                  .blank = false},
                 {.name = "C", .tie1 = "E 22.361", .tie2 = "W 60.828", .blank = false}};
    job.runs = {{.from = "A", .to = "B", .length = Length::feet(30), .blank = false},
                {.from = "B", .to = "C", .length = Length::feet(30), .blank = false}};
    job.lotTapes = {{.from = "N", .to = "B", .length = Length::feet(41.231), .blank = false}};
    drawLot(job);
    return job;
}
// B was laid 3 ft nearer to E and 1 ft farther from the wall: at 33, -11.
std::vector<LaidNode> laid() {
    return {{.node = "b", .invert = Length::feet(96.4), .ties = {"W 34.785", "E 13.038"}, .blank = false},
            {},
            {.node = "C", .invert = Length::feet(96.1), .blank = false},
            {.node = "no such node", .ties = {"W 1", "E 1"}, .blank = false}};
}

TEST(AsBuilt, MovesWhatWasMeasuredAndNothingElse) {
    const Job plan = planned();
    ASSERT_TRUE(plan.drawn.nodes[1].place.placed());
    EXPECT_NEAR(plan.drawn.nodes[1].place.at->east.feet(), 30, 0.01);
    const AsBuilt built = asBuilt(plan, laid());
    const auto at = [&](std::size_t node) { return *built.job.drawn.nodes[node].place.at; };
    EXPECT_NEAR(at(1).east.feet(), 33, 0.01);
    EXPECT_NEAR(at(1).north.feet(), -11, 0.01);
    for (const std::size_t row : {0u, 2u}) EXPECT_EQ(at(row), *plan.drawn.nodes[row].place.at) << row;
    ASSERT_EQ(built.moved.size(), 4u);
    EXPECT_NEAR(built.moved[0]->feet(), std::hypot(3, 1), 0.02);
    for (const std::size_t row : {1u, 2u, 3u}) EXPECT_FALSE(built.moved[row]) << row;
    // The plan's tapes to B would be slips of feet.
    EXPECT_TRUE(built.job.drawn.slips.empty());
    EXPECT_TRUE(built.job.drawn.turnsOff.empty());
}

TEST(AsBuilt, WritesInvertsAndCleanoutsAtTheNodes) {
    const AsBuilt built = asBuilt(planned(), laid());
    EXPECT_EQ(built.tags[0], "");
    EXPECT_EQ(built.tags[1], "CO 96.40");
    EXPECT_EQ(built.tags[2], "96.10");
    const PlanDrawing drawing = drawingOf(built.job, 120, built.tags);
    for (const char* text : {"A", "B CO 96.40", "C 96.10"})
        EXPECT_TRUE(std::any_of(drawing.labels.begin(), drawing.labels.end(), [&](const PlanLabel& label) {
            return label.text == text;
        })) << text;
    Job metric = planned();
    metric.units = UnitSystem::Metric;
    EXPECT_EQ(asBuilt(metric, laid()).tags[2], "29.291");  // 96.1 ft
}

TEST(AsBuilt, OneTieAloneIsNoPlace) {
    std::vector<LaidNode> one = laid();
    one[0].ties = {"W 34.785", ""};
    const AsBuilt built = asBuilt(planned(), one);
    EXPECT_FALSE(built.moved[0]);
    EXPECT_FALSE(built.job.drawn.nodes[1].place.placed());
}

TEST(AsBuilt, InvertsOfRuns) {
    const std::vector<RunEnds> ends = laidInverts(planned(), laid());
    ASSERT_EQ(ends.size(), 2u);
    EXPECT_FALSE(ends[0].up);
    EXPECT_NEAR(ends[0].down->feet(), 96.4, 1e-9);
    EXPECT_NEAR(ends[1].up->feet(), 96.4, 1e-9);
    EXPECT_NEAR(ends[1].down->feet(), 96.1, 1e-9);
}

TEST(AsBuilt, IsReadAsTyped) {
    const Grid table{3,
                     4,
                     {"Node", "Invert", "Tie 1", "Tie 2", "S5", 96.42, "house N 31' 6\"", "house W 12", "S6",
                      "deep", Nothing(), Nothing()}};
    const std::vector<LaidNode> read = readLaid(table, UnitSystem::US);
    ASSERT_EQ(read.size(), 2u);
    EXPECT_NEAR(read[0].invert->feet(), 96.42, 1e-9);
    EXPECT_EQ(read[0].ties[0], "house N 31' 6\"");
    EXPECT_FALSE(read[1].invert);
    ASSERT_EQ(read[1].unusable.size(), 1u);
    EXPECT_EQ(read[1].unusable[0].heading, "Invert");
    EXPECT_THROW(readLaid(Grid{1, 1, {"Invert"}}, UnitSystem::US), Error);
}

}  // namespace
}  // namespace trenchbook
