// The drawing: scales, paper, DXF, GeoJSON.
#include "trenchbook/layout/drawing.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <map>
#include <sstream>

#include "trenchbook/core/error.h"
#include "trenchbook/job/draw_lot.h"
#include "trenchbook/job/plan_drawing.h"
#include "trenchbook/layout/dxf.h"
#include "trenchbook/layout/geojson.h"
#include "trenchbook/layout/lettering.h"

namespace trenchbook {
namespace {

PlanPoint at(double east, double north) { return {Length::feet(east), Length::feet(north)}; }
PlanDrawing across(double east, double north) {
    return {.strokes = {{.layer = DrawingLayer::LotLine, .points = {at(0, 0), at(east, north)}}}};
}
double scaleOf(double east, double north, UnitSystem units = UnitSystem::US) {
    return onPaper(across(east, north), Length::inches(7.5), Length::inches(8), units).scale;
}

// A house, a line of two runs with a tree, a crossing.
Job job() {
    Job made;
    const auto point = [&](const char* name, LotThing what, double x, double y) {
        made.lotPoints.push_back(
            {.name = name, .what = what, .east = Length::feet(x), .north = Length::feet(y), .blank = false});
    };
    point("SW", LotThing::Building, 0, 0), point("SE", LotThing::Building, 40, 0),
        point("NE", LotThing::Building, 40, 30), point("oak", LotThing::Tree, 60, 20),
        point("A", LotThing::NotSaid, 5, -3), point("B", LotThing::NotSaid, 50, -10);
    made.nodes = {
        {.name = "A", .blank = false}, {.name = "B", .blank = false}, {.name = "C", .blank = false}};
    made.runs = {
        {.from = "A", .to = "B", .length = Length::feet(45.5), .pipe = stockPipe("4 SDR35"), .blank = false},
        {.from = "B", .to = "C", .length = Length::feet(20), .pipe = stockPipe("6 SDR35"), .blank = false}};
    made.crossings = {{.what = "gas", .from = "A", .to = "B", .at = Length::feet(10), .blank = false}};
    drawLot(made);
    return made;
}

TEST(Drawing, UsualScales) {
    EXPECT_EQ(scaleOf(30, 10), 60);      // 1 in = 5 ft
    EXPECT_EQ(scaleOf(75, 10), 120);     // 1 in = 10 ft, just
    EXPECT_EQ(scaleOf(75.01, 10), 240);  // 1 in = 20 ft
    EXPECT_EQ(scaleOf(10, 161), 360);    // 1 in = 30 ft: the height binds
    EXPECT_EQ(scaleOf(750, 10), 1200);
    EXPECT_EQ(scaleOf(760, 10), 2400);
    EXPECT_EQ(scaleOf(25, 10, UnitSystem::Metric), 50);
    EXPECT_EQ(scaleOf(62, 10, UnitSystem::Metric), 100);
    EXPECT_EQ(scaleOf(63, 10, UnitSystem::Metric), 200);
    EXPECT_EQ(scaleOf(1000, 10, UnitSystem::Metric), 2000);
    const PaperPlace paper = onPaper(across(80, 20), Length::inches(7.5), Length::inches(8), UnitSystem::US);
    EXPECT_EQ(paper.name.en, "1 in = 20 ft");
    EXPECT_EQ(onPaper(across(80, 20), Length::inches(7.5), Length::inches(8), UnitSystem::Metric).name.es,
              "1:200");
    EXPECT_NEAR(paper.of(at(40, 10)).east.inches(), 3.75, 1e-12);
    EXPECT_NEAR(paper.of(at(40, 10)).north.inches(), 4, 1e-12);
    EXPECT_NEAR(paper.of(at(80, 20)).east.inches(), 5.75, 1e-12);
    EXPECT_THROW(onPaper({}, Length::inches(7), Length::inches(8), UnitSystem::US), Error);
    EXPECT_NO_THROW(onPaper(across(80, 20), largestPaper, largestPaper, UnitSystem::US));
    EXPECT_THROW(onPaper(across(80, 20), largestPaper * 1.001, Length::inches(8), UnitSystem::US), Error);
    EXPECT_THROW(onPaper(across(80, 20), Length::inches(8), Length::inches(1e7), UnitSystem::US), Error);
    EXPECT_THROW(onPaper(across(1, 1), Length{}, Length::inches(8), UnitSystem::US), Error);
}

TEST(Drawing, EverythingLiesOnThePaperAndKeepsItsLength) {
    rc::check([] {
        const auto some = [](int most) { return *rc::gen::inRange(-most, most) / 4.0; };
        PlanDrawing drawing;
        for (int i = 0; i < 5; ++i)
            drawing.strokes.push_back({.points = {at(some(2000), some(2000)), at(some(2000), some(2000))}});
        const Length wide = Length::inches(4), high = Length::inches(9);
        const PaperPlace paper =
            onPaper(drawing, wide, high, *rc::gen::element(UnitSystem::US, UnitSystem::Metric));
        for (const PlanStroke& stroke : drawing.strokes) {
            const PlanPoint a = paper.of(stroke.points[0]), b = paper.of(stroke.points[1]);
            for (const PlanPoint& one : {a, b}) {
                RC_ASSERT(one.east.inches() > -1e-6 && one.east.inches() < 4 + 1e-6);
                RC_ASSERT(one.north.inches() > -1e-6 && one.north.inches() < 9 + 1e-6);
            }
            RC_ASSERT(std::fabs(distance(a, b).si() * paper.scale -
                                distance(stroke.points[0], stroke.points[1]).si()) < 1e-6);
            RC_ASSERT(distance(paper.back(a), stroke.points[0]).si() < 1e-6);
        }
    });
}

TEST(Drawing, HoldsWhatHasAPlace) {
    const PlanDrawing drawing = drawingOf(job(), 120);
    std::map<DrawingLayer, int> strokes;
    for (const PlanStroke& stroke : drawing.strokes) ++strokes[stroke.layer];
    EXPECT_EQ(strokes[DrawingLayer::Building], 1);
    EXPECT_EQ(strokes[DrawingLayer::Tree], 1);
    EXPECT_EQ(strokes[DrawingLayer::PipeSmall], 1);
    EXPECT_EQ(strokes[DrawingLayer::PipeMiddle], 1);  // straight on from B: its turn is blank
    EXPECT_EQ(strokes[DrawingLayer::Flow], 2);
    EXPECT_EQ(strokes[DrawingLayer::Node], 3);
    EXPECT_EQ(strokes[DrawingLayer::Crossing], 1);
    for (const PlanStroke& stroke : drawing.strokes)
        if (stroke.layer == DrawingLayer::PipeSmall) {
            EXPECT_NEAR(distance(stroke.points[0], stroke.points[1]).feet(), std::hypot(45, 7), 1e-9);
        }
    // Signs are in the size of the paper.
    for (const PlanStroke& stroke : drawing.strokes)
        if (stroke.layer == DrawingLayer::Tree) {
            EXPECT_NEAR(distance(stroke.points[0], stroke.points[8]).millimetres() / 120, 6, 1e-9);
        }
    const ScaledDrawing scaled = drawingFor(job(), Length::inches(7.5), Length::inches(7));
    EXPECT_EQ(scaled.paper.scale, 120);
    for (const PlanStroke& stroke : scaled.drawing.strokes)
        for (const PlanPoint& one : stroke.points) {
            EXPECT_GE(scaled.paper.of(one).east.inches(), -1e-9);
            EXPECT_LE(scaled.paper.of(one).east.inches(), 7.5 + 1e-9);
        }
}

TEST(Drawing, OnPaperWithWordsAndABar) {
    const Length wide = Length::inches(7.5), high = Length::inches(7);
    const std::vector<PlanStroke> strokes = paperStrokes(job(), wide, high);
    const PaperPlace paper = paperOf(job(), wide, high);
    double bar = 0;
    std::size_t letters = 0;
    for (const PlanStroke& stroke : strokes) {
        letters += stroke.name == "word";
        for (const PlanPoint& one : stroke.points) {
            EXPECT_GE(one.east.inches(), -1e-9) << stroke.name;
            EXPECT_LE(one.east.inches(), 7.5 + 1e-9) << stroke.name;
            EXPECT_GE(one.north.inches(), -1e-9) << stroke.name;
            EXPECT_LE(one.north.inches(), 7 + 0.1) << stroke.name;
        }
        if (stroke.layer == DrawingLayer::Frame && stroke.points.size() == 2 &&
            stroke.points[0].north == stroke.points[1].north)
            bar = std::max(bar, distance(stroke.points[0], stroke.points[1]).inches());
        if (stroke.name == "A-B" && stroke.layer == DrawingLayer::PipeSmall) {
            EXPECT_NEAR(distance(stroke.points[0], stroke.points[1]).si() * paper.scale,
                        Length::feet(std::hypot(45, 7)).si(), 1e-9);
        }
    }
    EXPECT_GE(letters, 6u);
    EXPECT_NEAR(bar, 2, 1e-9);  // twice the feet to the inch
}

// Boxes around words, from the strokes of their letters.
TEST(Drawing, WordsDoNotLieOnEachOther) {
    Job made = job();
    // Twelve trees in three bunches: their names have to make room.
    for (int i = 0; i < 12; ++i)
        made.lotPoints.push_back({.name = "T" + std::to_string(i),
                                  .what = LotThing::Tree,
                                  .east = Length::feet(15 + 30 * (i % 3) + 2 * (i / 3)),
                                  .north = Length::feet(50 + i / 3 * 3),
                                  .blank = false});
    drawLot(made);
    const std::vector<PlanStroke> strokes = paperStrokes(made, Length::inches(7.5), Length::inches(7));
    std::vector<std::pair<PlanPoint, PlanPoint>> letters;  // each letter's stroke as a box
    for (const PlanStroke& stroke : strokes) {
        if (stroke.name != "word" || stroke.layer != DrawingLayer::Tree) continue;
        PlanPoint low = stroke.points.front(), high = low;
        for (const PlanPoint& one : stroke.points) {
            low = {std::min(low.east, one.east), std::min(low.north, one.north)};
            high = {std::max(high.east, one.east), std::max(high.north, one.north)};
        }
        letters.emplace_back(low, high);
    }
    ASSERT_GT(letters.size(), 36u);
    // Of one letter the strokes may cross; no stroke of another word, a letter and more away, comes near.
    std::size_t crossed = 0;
    for (std::size_t i = 0; i < letters.size(); ++i)
        for (std::size_t k = i + 1; k < letters.size(); ++k) {
            const auto& [a, b] = letters[i];
            const auto& [c, d] = letters[k];
            const bool sameLine = std::fabs((a.north - c.north).millimetres()) < 2.5 &&
                                  std::fabs((a.east - c.east).millimetres()) < 6;
            crossed +=
                !sameLine && a.east < d.east && c.east < b.east && a.north < d.north && c.north < b.north;
        }
    EXPECT_EQ(crossed, 0u);
}

TEST(Drawing, TheArrowPointsNorth) {
    const auto arrow = [](const Job& of, std::optional<Angle> typed) {
        std::optional<Angle> way;
        for (const PlanStroke& stroke : paperStrokes(of, Length::inches(7.5), Length::inches(7), typed))
            if (stroke.name == "north" && stroke.points.size() == 2)
                way = azimuth(stroke.points[0], stroke.points[1]);
        return way;
    };
    EXPECT_FALSE(arrow(job(), {}));  // nobody said
    EXPECT_NEAR(arrow(job(), Angle::degrees(45))->degrees(), 45, 1e-9);
    // The wall from (0, 0) to (40, 0) runs to the north: north is to the right.
    Job known = job();
    known.lotPoints[0].longitude = known.lotPoints[1].longitude = Angle::degrees(-93);
    known.lotPoints[0].latitude = Angle::degrees(45);
    known.lotPoints[1].latitude = Angle::degrees(45 + 12.192 / 111131.7);
    drawLot(known);
    EXPECT_NEAR(arrow(known, {})->degrees(), 90, 1e-3);
}

TEST(Drawing, LettersAreLegible) {
    const Length height = Length::millimetres(2);
    for (const char* const text : {"A", "ñ", "G7", "house NE", "?"}) {
        const std::vector<PlanStroke> strokes = lettered(text, {}, height);
        ASSERT_FALSE(strokes.empty()) << text;
        for (const PlanStroke& stroke : strokes) {
            EXPECT_GE(stroke.points.size(), 2u) << text;
            for (const PlanPoint& one : stroke.points) {
                EXPECT_LE(one.east, letteredWidth(text, height) + Length::millimetres(1e-9)) << text;
                EXPECT_LE(one.north.millimetres(), 2.4) << text;
            }
        }
    }
    // Small letters and accents are drawn as the capital.
    EXPECT_EQ(lettered("á", {}, height).front().points, lettered("A", {}, height).front().points);
    EXPECT_NE(lettered("b", {}, height).front().points, lettered("d", {}, height).front().points);
    EXPECT_TRUE(lettered("", {}, height).empty());
}

// Pairs of a group code and a value, as the format has them.
std::vector<std::pair<int, std::string>> pairs(const std::string& dxf) {
    std::vector<std::pair<int, std::string>> all;
    std::istringstream lines(dxf);
    for (std::string code, value; std::getline(lines, code) && std::getline(lines, value);)
        all.emplace_back(std::stoi(code), value);
    return all;
}

TEST(Dxf, SaysItsUnitAndKeepsLengths) {
    for (const UnitSystem units : {UnitSystem::US, UnitSystem::Metric}) {
        const auto read = pairs(dxfText(drawingOf(job(), 120), units));
        std::string unit;
        double x = 0;
        std::vector<std::pair<double, double>> run;
        bool pipe = false, vertex = false;
        for (std::size_t i = 0; i < read.size(); ++i) {
            const auto& [code, value] = read[i];
            if (code == 9 && value == "$INSUNITS") unit = read[i + 1].second;
            if (code == 0) pipe = pipe && value == "VERTEX", vertex = value == "VERTEX";
            if (code == 8 && value == "PIPE-SMALL") pipe = true;
            if (pipe && vertex && code == 10) x = std::stod(value);
            if (pipe && vertex && code == 20) run.emplace_back(x, std::stod(value));
        }
        EXPECT_EQ(unit, units == UnitSystem::US ? "2" : "6");
        ASSERT_EQ(run.size(), 2u);
        const double length = std::hypot(run[1].first - run[0].first, run[1].second - run[0].second);
        EXPECT_NEAR(length, std::hypot(45, 7) * (units == UnitSystem::US ? 1 : 0.3048), 1e-5);
        EXPECT_EQ(read.back().second, "EOF");
        EXPECT_EQ(read.front().second, "SECTION");
    }
}

TEST(Dxf, LettersBeyondAscii) {
    PlanDrawing drawing;
    drawing.labels = {{DrawingLayer::Node, {}, "caño 1\n"}};
    const std::string dxf = dxfText(drawing, UnitSystem::US);
    EXPECT_NE(dxf.find("ca\\U+00F1o 1\n"), std::string::npos);
    for (const char letter : dxf) EXPECT_TRUE(letter == '\n' || (letter >= 0x20 && letter < 0x7F));
}

// A degree of latitude is 111,132 m at 45 degrees, one of longitude 78,847 m (WGS 84; any almanac's table).
TEST(GeoJson, LiesOnTheGlobe) {
    const double east = 30 / 78846.8, north = 40 / 111131.7;
    const std::vector<GeoPoint> known = {
        {{}, Angle::degrees(-93), Angle::degrees(45)},
        {{Length::metres(50), {}}, Angle::degrees(-93 + east), Angle::degrees(45 + north)}};
    const GeoFit fit = geoFit(known);
    EXPECT_LT(fit.worst.metres(), 0.001);
    EXPECT_NEAR(fit.longitude(known[1].at).degrees(), -93 + east, 1e-8);
    EXPECT_NEAR(fit.latitude(known[1].at).degrees(), 45 + north, 1e-8);
    // 50 m along the drawing's X lie 30 m east and 40 m north: its north is turned to the left by 53.13
    // degrees.
    EXPECT_NEAR(fit.turned.degrees(), -std::atan2(40, 30) * 180 / std::acos(-1), 1e-3);
    // Square to it on the left: 40 m west, 30 m north.
    EXPECT_NEAR(fit.longitude({{}, Length::metres(50)}).degrees(), -93 - 40 / 78846.8, 1e-7);
    EXPECT_NEAR(fit.latitude({{}, Length::metres(50)}).degrees(), 45 + 30 / 111131.7, 1e-7);
    EXPECT_THROW(geoFit(std::vector<GeoPoint>{known[0]}), Error);
    EXPECT_THROW(geoFit(std::vector<GeoPoint>{known[0], known[0]}), Error);
    // A telephone's place that is 5 m off shows.
    std::vector<GeoPoint> off = known;
    off[1].latitude = off[1].latitude + Angle::degrees(10 / 111131.7);
    EXPECT_GT(geoFit(off).worst.metres(), 2);
}

TEST(GeoJson, RingsCloseCounterClockwise) {
    const std::vector<GeoPoint> known = {
        {{}, Angle::degrees(-93), Angle::degrees(45)},
        {at(100, 0), Angle::degrees(-93 + 30.48 / 78846.8), Angle::degrees(45)}};
    PlanDrawing drawing;
    drawing.strokes = {{DrawingLayer::Building, {at(0, 0), at(0, 30), at(40, 30)}, true, "the \"old\" house"},
                       {DrawingLayer::PipeSmall, {at(0, 0), at(0, 30)}, false, "A-B"}};
    const std::string text = geoJson(drawing, geoFit(known));
    EXPECT_NE(text.find("\"FeatureCollection\""), std::string::npos);
    EXPECT_NE(text.find("\"the \\\"old\\\" house\""), std::string::npos);
    EXPECT_NE(text.find("\"LineString\",\"coordinates\":[[-93.0000"), std::string::npos) << text;
    // Four places: the first again at the end; and the middle two in the other order.
    const std::size_t ring = text.find("[[[");
    std::vector<std::pair<double, double>> places;
    std::istringstream numbers(text.substr(ring + 2, text.find("]]]") - ring - 1));
    for (std::string place; std::getline(numbers, place, ']');) {
        const std::size_t open = place.find('[');
        if (open == std::string::npos) continue;
        const std::string pair = place.substr(open + 1);
        places.emplace_back(std::stod(pair), std::stod(pair.substr(pair.find(',') + 1)));
    }
    ASSERT_EQ(places.size(), 4u);
    EXPECT_EQ(places.front(), places.back());
    double turn = 0;
    for (std::size_t i = 0; i + 1 < places.size(); ++i)
        turn += (places[i].first + 93) * (places[i + 1].second - 45) -
                (places[i + 1].first + 93) * (places[i].second - 45);
    EXPECT_GT(turn, 0);
}

}  // namespace
}  // namespace trenchbook
