// A line seen from the side: what lies where on its paper.
#include "trenchbook/job/profile_drawing.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

// Three runs at 1 %, a short one of 4 ft between two of 50; water over a gas line of 12 in, both crossed.
Job job(const std::string& line = "street") {
    Job made;
    const auto node = [&](const char* name, double ground) {
        made.nodes.push_back({.name = name, .ground = Length::feet(ground), .blank = false});
    };
    node("long name A", 101), node("B", 100.6), node("long name C", 100.5), node("Out", 98);
    const auto run = [&](const char* from, const char* to, double length) {
        made.runs.push_back({.line = line,
                             .from = from,
                             .to = to,
                             .length = Length::feet(length),
                             .pipe = stockPipe("6 SDR35"),
                             .slope = Slope::fraction(0.01),
                             .surfaceUp = CoverSurface::Lawn,
                             .surfaceDown = CoverSurface::Lawn,
                             .blank = false});
    };
    run("long name A", "B", 50), run("B", "long name C", 4), run("long name C", "Out", 50);
    made.runs[2].outletLevel = Length::feet(97.5);
    made.crossings = {{.what = "gas",
                       .from = "long name C",
                       .to = "Out",
                       .at = Length::feet(20),
                       .depth = Length::inches(48),
                       .diameter = Length::inches(12),
                       .passesAbove = false,
                       .blank = false}};
    return made;
}

ProfileDrawing seen(const Job& job, ProfileAsked asked = {.line = "street"}) {
    return profileOf(job, solve(job), asked);
}

std::vector<const PlanStroke*> of(const ProfileDrawing& drawing, DrawingLayer layer) {
    std::vector<const PlanStroke*> all;
    for (const PlanStroke& stroke : drawing.strokes)
        if (stroke.layer == layer) all.push_back(&stroke);
    return all;
}

// The points of each word: letters with one name that follow each other.
struct Word {
    std::string text;
    std::vector<std::pair<double, double>> points;  // mm
};
std::vector<Word> words(const ProfileDrawing& drawing) {
    std::vector<Word> all;
    std::string last;
    for (const PlanStroke& stroke : drawing.strokes) {
        if (!stroke.name.empty() && stroke.name != last) all.push_back({stroke.name, {}});
        last = stroke.name;
        if (stroke.name.empty()) continue;
        for (const PlanPoint& point : stroke.points)
            all.back().points.emplace_back(point.east.millimetres(), point.north.millimetres());
    }
    return all;
}
// Whether a straight line parts them, tried at every degree: written upright or along a line.
bool apart(const Word& a, const Word& b) {
    for (int degree = 0; degree < 180; ++degree) {
        const double c = std::cos(degree * 0.017453292519943), s = std::sin(degree * 0.017453292519943);
        const auto reach = [&](const Word& word) {
            double least = 1e9, most = -1e9;
            for (const auto& [x, y] : word.points)
                least = std::min(least, x * c + y * s), most = std::max(most, x * c + y * s);
            return std::pair(least, most);
        };
        const auto one = reach(a), other = reach(b);
        if (one.second < other.first || other.second < one.first) return true;
    }
    return false;
}
void expectApart(const ProfileDrawing& drawing, const ProfileAsked& asked) {
    const std::vector<Word> all = words(drawing);
    ASSERT_FALSE(all.empty());
    for (std::size_t i = 0; i < all.size(); ++i) {
        for (const auto& [x, y] : all[i].points) {
            EXPECT_TRUE(x > -1e-6 && x < asked.width.millimetres() + 1e-6) << all[i].text;
            EXPECT_TRUE(y > -1e-6 && y < asked.height.millimetres() + 1e-6) << all[i].text;
        }
        for (std::size_t j = 0; j < i; ++j)
            EXPECT_TRUE(apart(all[i], all[j])) << all[i].text << " touches " << all[j].text;
    }
}

TEST(ProfileDrawing, PipeIsABandAtItsLevels) {
    const ProfileDrawing drawing = seen(job());
    EXPECT_EQ(drawing.along, 240);  // 104 ft on 232 mm, 9.1 in
    const auto bands = of(drawing, DrawingLayer::PipeMiddle);
    ASSERT_GE(bands.size(), 9u);  // a band, invert and crown a run; the key's is one more
    // ASTM D3034: 6 in SDR 35 is 6.275 in outside, its wall 0.180 in.
    const double wall = 0.180 / 12, outside = 6.275 / 12;
    const PlanStroke& lowest = *bands[0];
    ASSERT_EQ(lowest.points.size(), 4u);
    const auto level = [&](const PlanPoint& at) {
        return drawing.low.feet() + (at.north - drawing.origin.north).feet() * drawing.up;
    };
    const auto station = [&](const PlanPoint& at) {
        return drawing.first.feet() + (at.east - drawing.origin.east).feet() * drawing.along;
    };
    EXPECT_NEAR(level(lowest.points[0]), 97.5 - wall, 1e-9);
    EXPECT_NEAR(level(lowest.points[1]), 98.0 - wall, 1e-9);
    EXPECT_NEAR(level(lowest.points[2]), 98.0 - wall + outside, 1e-9);
    EXPECT_NEAR(level(lowest.points[3]), 97.5 - wall + outside, 1e-9);
    EXPECT_NEAR(station(lowest.points[0]), 0, 1e-9);
    EXPECT_NEAR(station(lowest.points[1]), 50, 1e-9);
    EXPECT_NEAR(level(bands[1]->points[0]), 97.5, 1e-9);  // invert
    // The other line, 12 in across, its top 4 ft below the ground at 20 of 50 ft down: 100.5 - 0.4 * 2.5 - 4.
    const auto ovals = of(drawing, DrawingLayer::Crossing);
    ASSERT_EQ(ovals.size(), 2u);  // and the key's
    double low = 1e9, top = -1e9;
    for (const PlanPoint& point : ovals[0]->points)
        low = std::min(low, level(point)), top = std::max(top, level(point));
    EXPECT_NEAR(top, 95.5, 1e-9);
    EXPECT_NEAR(low, 94.5, 1e-9);
    EXPECT_NEAR(station(ovals[0]->points[4]), 30, 1e-9);  // its top
}

TEST(ProfileDrawing, LevelsBeginAtARoundOneJustUnderWhatIsDrawn) {
    const ProfileDrawing drawing = seen(job());
    EXPECT_NEAR(drawing.low.feet(), 94, 1e-9);  // the gas line's bottom is 94.5
    Job alone = job();
    alone.crossings.clear();
    EXPECT_NEAR(seen(alone).low.feet(), 97, 1e-9);  // the outside bottom at the outlet is 97.485
    EXPECT_LT(seen(alone).up, drawing.up);
    // Metric: the same in meters.
    Job metric = job();
    metric.units = UnitSystem::Metric;
    EXPECT_EQ(seen(metric).along, 200);  // 31.7 m on 232 mm
    EXPECT_NEAR(seen(metric).low.metres() * 10, std::floor(seen(metric).low.metres() * 10 + 1e-6), 1e-6);
}

TEST(ProfileDrawing, WordsNeverTouch) {
    const ProfileAsked asked{.line = "STREET "};
    const ProfileDrawing drawing = seen(job(), asked);
    expectApart(drawing, asked);
    std::map<std::string, int> counted;
    for (const Word& word : words(drawing)) ++counted[word.text];
    for (const char* name :
         {"long name A", "B", "long name C", "Out", "gas", "6 SDR35  1%", "Ground", "Other lines"})
        EXPECT_EQ(counted[name], 1) << name;
    EXPECT_EQ(drawing.leftOut, 0u);
    // Thirty nodes 2 ft apart, with names of twelve letters: more tiers than a few, still apart.
    Job crowded;
    for (int i = 0; i <= 30; ++i)
        crowded.nodes.push_back(
            {.name = "cleanout no " + std::to_string(i), .ground = Length::feet(103), .blank = false});
    for (int i = 0; i < 30; ++i)
        crowded.runs.push_back({.line = "street",
                                .from = crowded.nodes[i].name,
                                .to = crowded.nodes[i + 1].name,
                                .length = Length::feet(2),
                                .pipe = stockPipe("4 SDR35"),
                                .slope = Slope::fraction(0.01 + i * 0.001),
                                .blank = false});
    crowded.runs.back().outletLevel = Length::feet(100);
    const ProfileDrawing many = seen(crowded, {.line = "street"});
    expectApart(many, {});
    EXPECT_GT(many.leftOut, 0u);  // thirty slopes have no room on 2 ft each: counted, not hidden
}

TEST(ProfileDrawing, SpanishWordsNeverTouchEither) {
    ProfileAsked asked{.line = "street", .language = Language::Spanish};
    const Job typed = job();
    const SolvedJob solved = solve(typed);
    for (const SolvedRun& run : solved.runs)
        asked.planned.push_back({*run.invertUp - Length::feet(0.5), *run.invertDown - Length::feet(0.5)});
    asked.laid = asked.planned;
    const ProfileDrawing drawing = profileOf(typed, solved, asked);
    expectApart(drawing, asked);
    const std::vector<Word> all = words(drawing);
    for (const char* word : {"Terreno", "Tubo", "Plan más barato", "Como quedó"})
        EXPECT_TRUE(std::any_of(all.begin(), all.end(), [&](const Word& one) { return one.text == word; }))
            << word;
    EXPECT_EQ(of(drawing, DrawingLayer::Planned).size(), 4u);  // three runs and the key
}

TEST(ProfileDrawing, APlanThatIsTheLineIsNotDrawnOverIt) {
    ProfileAsked asked{.line = "street"};
    const Job typed = job();
    const SolvedJob solved = solve(typed);
    for (const SolvedRun& run : solved.runs) asked.planned.push_back({run.invertUp, run.invertDown});
    EXPECT_TRUE(of(profileOf(typed, solved, asked), DrawingLayer::Planned).empty());
}

TEST(ProfileDrawing, DrawsWhatIsKnown) {
    EXPECT_TRUE(seen(job(), {.line = "garden"}).strokes.empty());
    EXPECT_TRUE(seen({}).strokes.empty());
    Job noLevel = job();
    noLevel.runs[2].outletLevel.reset();  // no inverts at all
    const ProfileDrawing drawing = seen(noLevel);
    EXPECT_TRUE(of(drawing, DrawingLayer::PipeMiddle).empty());
    EXPECT_EQ(of(drawing, DrawingLayer::Ground).size(), 4u);  // three runs and the key
    EXPECT_THROW(seen(job(), {.line = "street", .width = Length::millimetres(30)}), Error);
    EXPECT_THROW(seen(job(), {.line = "street", .height = Length::metres(5)}), Error);
}

}  // namespace
}  // namespace trenchbook
