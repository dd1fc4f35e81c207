// The pit cut open: what lies where on its paper, and the storm beside it.
#include "trenchbook/ground/pit_drawing.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "trenchbook/core/error.h"
#include "trenchbook/ground/pit_storm.h"
#include "trenchbook/job/pit_section.h"
#include "trenchbook/job/read.h"
#include "trenchbook/water/storm.h"

namespace trenchbook {
namespace {

PitSection pit() {
    PitSection made{.length = Length::feet(10),
                    .rockDepth = Length::feet(3),
                    .soilOver = Length::feet(1),
                    .ground = Length::feet(96.5),
                    .rim = Length::feet(97),
                    .invert = Length::feet(95.1),
                    .outside = Length::inches(4.215),
                    .highWater = Length::feet(87.5),
                    .highest = Length::feet(2.5)};
    for (int hour = 1; hour <= 24; ++hour)
        made.course.push_back({Duration::hours(hour), Length::feet(std::min(2.5, hour * 0.25)),
                               Volume::cubicFeet(hour * 3), Volume::cubicFeet(hour > 12 ? hour - 12 : 0)});
    return made;
}

std::vector<const PlanStroke*> of(const PitDrawing& drawing, DrawingLayer layer) {
    std::vector<const PlanStroke*> all;
    for (const PlanStroke& stroke : drawing.strokes)
        if (stroke.layer == layer && stroke.name.empty()) all.push_back(&stroke);
    return all;
}
bool says(const PitDrawing& drawing, const std::string& word) {
    return std::any_of(drawing.strokes.begin(), drawing.strokes.end(),
                       [&](const PlanStroke& stroke) { return stroke.name == word; });
}

// Box of each word: letters with one name that follow each other.
struct Box {
    std::string text;
    double left = 1e9, right = -1e9, low = 1e9, high = -1e9;
};
std::vector<Box> words(const PitDrawing& drawing) {
    std::vector<Box> all;
    std::string last;
    for (const PlanStroke& stroke : drawing.strokes) {
        if (!stroke.name.empty() && stroke.name != last) all.push_back({.text = stroke.name});
        last = stroke.name;
        if (stroke.name.empty()) continue;
        for (const PlanPoint& point : stroke.points) {
            all.back().left = std::min(all.back().left, point.east.millimetres());
            all.back().right = std::max(all.back().right, point.east.millimetres());
            all.back().low = std::min(all.back().low, point.north.millimetres());
            all.back().high = std::max(all.back().high, point.north.millimetres());
        }
    }
    return all;
}
void expectApart(const PitSection& section) {
    const std::vector<Box> all = words(pitDrawing(section));
    ASSERT_GT(all.size(), 20u);
    for (std::size_t i = 0; i < all.size(); ++i) {
        EXPECT_TRUE(all[i].left > -1e-6 && all[i].right < section.width.millimetres() + 1e-6) << all[i].text;
        EXPECT_TRUE(all[i].low > -1e-6 && all[i].high < section.height.millimetres() + 1e-6) << all[i].text;
        for (std::size_t j = 0; j < i; ++j)
            EXPECT_TRUE(all[i].right < all[j].left || all[j].right < all[i].left ||
                        all[i].high < all[j].low || all[j].high < all[i].low)
                << all[i].text << " touches " << all[j].text;
    }
}

TEST(PitDrawing, RockLiesAtItsLevelsInTwoScales) {
    const PitDrawing drawing = pitDrawing(pit());
    const auto rock = of(drawing, DrawingLayer::Pit);
    ASSERT_EQ(rock.size(), 1u);
    const auto level = [&](const PlanPoint& at) {
        return drawing.low.feet() + (at.north - drawing.origin.north).feet() * drawing.up;
    };
    // 96.5 less 1 ft of soil, less 3 ft of rock.
    EXPECT_NEAR(level(rock[0]->points[0]), 92.5, 1e-9);
    EXPECT_NEAR(level(rock[0]->points[2]), 95.5, 1e-9);
    EXPECT_NEAR((rock[0]->points[1].east - rock[0]->points[0].east).feet() * drawing.along, 10, 1e-9);
    const auto water = of(drawing, DrawingLayer::Water);
    EXPECT_NEAR(level(water[0]->points[0]), 95.0, 1e-9);  // 2.5 ft over the bottom
    EXPECT_NEAR(level(of(drawing, DrawingLayer::Limit)[0]->points[0]), 87.5, 1e-9);
    EXPECT_NEAR(level(of(drawing, DrawingLayer::Ground)[0]->points[0]), 96.5, 1e-9);
    // The tee: from the pipe's underside to its rim.
    const auto tee = of(drawing, DrawingLayer::PipeMiddle);
    EXPECT_NEAR(level(tee[0]->points[0]), 95.1, 1e-9);
    EXPECT_NEAR(level(tee[0]->points[2]), 97, 1e-9);
    EXPECT_NEAR(level(tee[0]->points[5]) - 95.1, 4.215 / 12, 1e-9);
    for (const char* word :
         {"Rim of the tee 97.00", "Ground 96.50", "Top of rock 95.50", "Pipe comes in 95.10",
          "Highest water 95.00", "Bottom 92.50", "Seasonal high water 87.50", "Hours after the storm begins",
          "Water over the bottom, ft", "Water so far, cu ft"})
        EXPECT_TRUE(says(drawing, word)) << word;
}

TEST(PitDrawing, WordsNeverTouchAndStayOnThePaper) {
    expectApart(pit());
    PitSection metric = pit();
    metric.units = UnitSystem::Metric;
    metric.language = Language::Spanish;
    expectApart(metric);
    EXPECT_TRUE(says(pitDrawing(metric), "Agua hasta entonces, m³"));
    // Levels that lie on each other, and seasonal high water far below.
    PitSection close = pit();
    close.soilOver = Length::feet(0.05);
    close.rim = Length::feet(96.52);
    close.invert = Length::feet(96.1);
    close.highest = close.rockDepth;
    close.highWater = Length::feet(60);
    expectApart(close);
    PitSection large = pit();
    large.length = Length::feet(90);
    expectApart(large);
}

TEST(PitDrawing, StonesLieInTheRockAndNotInTheTee) {
    const PitDrawing drawing = pitDrawing(pit());
    const auto rock = of(drawing, DrawingLayer::Pit)[0];
    const auto tee = of(drawing, DrawingLayer::PipeMiddle)[0];
    const auto stones = of(drawing, DrawingLayer::Mark);
    EXPECT_GT(stones.size(), 15u);
    for (const PlanStroke* stone : stones)
        for (const PlanPoint& at : stone->points) {
            EXPECT_TRUE(at.east >= rock->points[0].east && at.east <= rock->points[1].east);
            EXPECT_TRUE(at.north >= rock->points[0].north && at.north <= rock->points[2].north);
            EXPECT_FALSE(at.east > tee->points[3].east && at.east < tee->points[2].east &&
                         at.north > tee->points[0].north);
        }
}

TEST(PitDrawing, CurvesEndWhereTheWaterEnds) {
    const PitDrawing drawing = pitDrawing(pit());
    const auto course = of(drawing, DrawingLayer::Laid);  // soaked in: the key, then the curve
    ASSERT_EQ(course.size(), 2u);
    ASSERT_EQ(course[1]->points.size(), 25u);
    const auto over = of(drawing, DrawingLayer::Planned);
    ASSERT_EQ(over.size(), 2u);
    // 12 cu ft bubbled over at the end, 72 soaked in: on one axis.
    const Length base = course[1]->points[0].north;
    EXPECT_NEAR((over[1]->points[24].north - base) / (course[1]->points[24].north - base), 12.0 / 72, 1e-9);
    PitSection none = pit();
    none.course.clear();
    EXPECT_TRUE(of(pitDrawing(none), DrawingLayer::Laid).empty());
}

TEST(PitDrawing, RefusesWhatIsNoPit) {
    for (const auto& spoil : std::vector<void (*)(PitSection&)>{
             [](PitSection& p) { p.length = {}; }, [](PitSection& p) { p.rockDepth = Length::feet(-1); },
             [](PitSection& p) { p.soilOver = Length::feet(-1); },
             [](PitSection& p) { p.width = Length::inches(1); },
             [](PitSection& p) { p.height = Length::metres(9); }}) {
        PitSection spoiled = pit();
        spoil(spoiled);
        EXPECT_THROW(pitDrawing(spoiled), Error);
    }
}

// A roof of 1,000 sq ft on a line that ends in a pit of 10 by 4 by 3 ft.
Job job() {
    Job made;
    made.nodes = {{.name = "B", .kinds = {}, .ground = Length::feet(120), .blank = false},
                  {.name = "A", .kinds = {}, .ground = Length::feet(99), .blank = false},
                  {.name = "Tee", .kinds = {}, .ground = Length::feet(97), .blank = false}};
    made.runs = {{.from = "A",
                  .to = "Tee",
                  .length = Length::feet(40),
                  .pipe = stockPipe("4 SDR35"),
                  .slope = Slope::fraction(0.01),
                  .outletLevel = Length::feet(95.5),
                  .blank = false}};
    made.pit = {.node = "tee",
                .length = Length::feet(10),
                .width = Length::feet(4),
                .rockDepth = Length::feet(3),
                .soilOver = Length::feet(1),
                .rate = SoilRate::inchesPerHour(1)};
    made.pit.facts.set("high water", 9, UnitSystem::US);
    return made;
}

TEST(PitSection, TakesLevelsAndTheStormOfTheJob) {
    const Job lot = job();
    SolvedJob solved = solve(lot);
    solved.pit.areaTimesC = Area::squareFeet(800);
    const auto section = pitSectionOf(lot, solved, {.rain = Length::inches(4)});
    ASSERT_TRUE(section);
    EXPECT_NEAR(section->ground.feet(), 97, 1e-9);
    EXPECT_NEAR(section->highWater->feet(), 88, 1e-9);
    // Outside bottom: the wall of 4 in SDR 35 is 0.120 in (ASTM D3034).
    EXPECT_NEAR(section->invert->feet(), 95.5 - 0.120 / 12, 1e-9);
    const Storm storm = nrcsStorm(Length::inches(4), StormType::II, Duration::minutes(30));
    const RockPit rock{.length = Length::feet(10), .width = Length::feet(4), .rockDepth = Length::feet(3)};
    const PitStorm through = runStorm(storm, Area::squareFeet(800), rock, SoilRate::inchesPerHour(1));
    EXPECT_NEAR(section->highest->feet(), through.highest.feet(), 1e-9);
    ASSERT_EQ(section->course.size(), 72u);
    EXPECT_NEAR(section->course[47].over.cubicFeet(), through.overflow.cubicFeet(), 1e-9);
    EXPECT_NEAR(section->course.back().at.hours(), 72, 1e-9);
    // Water that came in is soaked, gone over, or still there.
    const PitMoment& last = section->course.back();
    EXPECT_NEAR(last.soaked.cubicFeet() + last.over.cubicFeet() + last.water.feet() * 40 * 0.4,
                800 * 4 / 12.0, 1e-6);
}

TEST(PitSection, WithoutStormOrPit) {
    const Job lot = job();
    SolvedJob solved = solve(lot);
    EXPECT_TRUE(
        pitSectionOf(lot, solved, {.rain = Length::inches(4)})->course.empty());  // nothing drains to it
    solved.pit.areaTimesC = Area::squareFeet(800);
    EXPECT_FALSE(pitSectionOf(lot, solved, {})->highest);  // neither rain nor table
    EXPECT_FALSE(
        pitSectionOf(lot, solved, {.rain = Length::inches(4), .lasts = Duration::hours(6)})->highest);
    EXPECT_TRUE(
        pitSectionOf(lot, solved, {.rain = Length::inches(4), .lasts = Duration::hours(6), .shape = "even"})
            ->highest);
    const RainTable table =
        RainTable::parse("duration,2,10\n5-min,0.4,0.6\n60-min,1.2,1.8\n24-hr,3,4.5", Length::inches(1));
    EXPECT_TRUE(pitSectionOf(lot, solved, {.shape = "nested", .table = table})->highest);
    Job without = lot;
    without.nodes[2].ground.reset();
    EXPECT_FALSE(pitSectionOf(without, solved, {}));
    without = lot;
    without.pit.width.reset();
    EXPECT_FALSE(pitSectionOf(without, solved, {}));
    without.pit.node.clear();
    EXPECT_FALSE(pitSectionOf(without, solved, {}));
}

}  // namespace
}  // namespace trenchbook
