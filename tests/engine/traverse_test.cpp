#include "trenchbook/layout/traverse.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <map>
#include <numbers>

#include "reference.h"
#include "trenchbook/core/error.h"
#include "trenchbook/layout/ties.h"

using namespace trenchbook;
using namespace trenchbook::reference;

namespace {

constexpr const char* table = "30e_plan_geometry.csv";

Leg leg(const char* bearing, double feet) { return {readBearing(bearing), Length::feet(feet)}; }
std::vector<Leg> loopABCD() {
    return {leg("S 68-05-35 W", 472.68), leg("N 19-46-00 W", 216.13), leg("N 45-55-20 E", 276.52),
            leg("S 54-59-15 E", 382.24)};
}
// Around the lot of a teaching sheet; AB's latitude stands in no row.
std::vector<Leg> teaching() {
    return {leg("N 76-00 E", 80.40), leg("S 36-00 E", 46.30), leg("S 61-00 W", 72.80),
            leg("N 38-00 W", 68.00)};
}
std::vector<Leg> sixSided() {
    return {leg("N 5-30 E", 495.85),   leg("N 46-02 E", 850.62),  leg("S 67-38 E", 855.45),
            leg("S 12-25 E", 1020.87), leg("S 83-44 W", 1117.26), leg("N 55-09 W", 660.08)};
}

PlanPoint step(const PlanPoint& from, const PlanPoint& to) {
    return {to.east - from.east, to.north - from.north};
}
PlanPoint alone(const Leg& one) { return ahead({}, one.azimuth, one.length); }
PlanPoint adjusted(const std::vector<Leg>& legs, std::size_t i) {
    const std::vector<PlanPoint> corners = compassRule({}, legs);
    return step(corners[i], corners[(i + 1) % corners.size()]);
}

// As the sources go on: with latitudes and departures as printed.
std::vector<Leg> asPrinted(std::vector<Leg> legs, double digit) {
    for (Leg& one : legs) {
        const PlanPoint is = alone(one);
        const auto round = [&](Length length, double unit) {
            return Length::fromSi(std::round(length.si() / unit / digit) * digit * unit);
        };
        const double foot = Length::feet(1).si();
        const PlanPoint printed{round(is.east, foot), round(is.north, foot)};
        one = {azimuth({}, printed), distance({}, printed)};
    }
    return legs;
}

// The rows of a loop whose items begin with `name` and end with "line X".
int checkLoop(const std::string& name, const std::vector<Leg>& legs, const std::vector<std::string>& lines,
              double digit) {
    const std::vector<Leg> printed = asPrinted(legs, digit);
    int checked = 0;
    for (const Row& row : rows(table)) {
        if (!row.item.starts_with(name)) continue;
        for (std::size_t i = 0; i < lines.size(); ++i) {
            if (!row.item.ends_with("line " + lines[i])) continue;
            const PlanPoint is = alone(legs[i]), rounded = alone(printed[i]), moved = adjusted(printed, i);
            // Printed corrections of the teaching sheet are without sign.
            const bool plain = row.number() > 0 && row.output.starts_with("correction") && name[0] == 'T';
            const auto correction = [&](double by) { return plain ? std::fabs(by) : by; };
            const std::map<std::string, double> ours = {
                {"latitude", is.north.feet()},
                {"departure", is.east.feet()},
                {"adjusted latitude", moved.north.feet()},
                {"adjusted departure", moved.east.feet()},
                {"adjusted length", distance({}, moved).feet()},
                {"correction to latitude", correction(moved.north.feet() - rounded.north.feet())},
                {"correction to departure", correction(moved.east.feet() - rounded.east.feet())}};
            const auto found = ours.find(row.output);
            if (found == ours.end()) continue;
            check("LAYOUT.PLAT", row, found->second);
            ++checked;
        }
    }
    return checked;
}

}  // namespace

TEST(Traverse, PublishedLoops) {
    EXPECT_EQ(checkLoop("Loop traverse", loopABCD(), {"AB", "BC", "CD", "DA"}, 1e-3), 16);
    EXPECT_EQ(checkLoop("Teaching traverse", teaching(), {"AB", "BC", "CD", "DA"}, 1e-3), 18);
    EXPECT_EQ(checkLoop("Six-sided traverse", sixSided(), {"1", "2", "3", "4", "5", "6"}, 1e-4), 36);
}

TEST(Traverse, PublishedClosures) {
    int checked = 0;
    const auto see = [&](const Row& row, double ours) {
        check("LAYOUT.PLAT", row, ours);
        ++checked;
    };
    for (const Row& row : rows(table)) {
        const bool loop = row.item.starts_with("Loop traverse"),
                   six = row.item.starts_with("Six-sided traverse");
        if (!loop && !six) continue;
        const Closure found = closure(loop ? asPrinted(loopABCD(), 1e-3) : sixSided());
        if (row.output == "closure in latitude") see(row, std::fabs(found.north.feet()));
        if (row.output == "closure in departure") see(row, std::fabs(found.east.feet()));
        if (row.output == "misclosure") see(row, found.gap().feet());
        if (row.output == "perimeter") see(row, found.perimeter.feet());
        if (row.output == "north of A'") see(row, 500 + found.north.feet());
        if (row.output == "east of A'") see(row, 2000 + found.east.feet());
        if (row.output == "area") see(row, enclosed(compassRule({}, sixSided())).squareFeet());
        if (row.item.starts_with("Loop traverse, adjusted point ")) {
            const auto place = static_cast<std::size_t>(row.item.back() - 'A');
            const PlanPoint at =
                compassRule({Length::feet(2000), Length::feet(500)}, asPrinted(loopABCD(), 1e-3))[place];
            see(row, (row.output == "north" ? at.north : at.east).feet());
        }
    }
    EXPECT_EQ(checked, 15);
}

TEST(Traverse, PublishedSteps) {
    int checked = 0;
    const auto see = [&](const Row& row, double ours) {
        check("LAYOUT.PLAT", row, ours);
        ++checked;
    };
    const std::vector<PlanPoint> five = {{Length::feet(942.04), Length::feet(317.89)},
                                         {Length::feet(1282.54), Length::feet(675.32)},
                                         {Length::feet(1259.97), Length::feet(406.31)},
                                         {Length::feet(1489.47), Length::feet(235.12)},
                                         {Length::feet(1126.40), Length::feet(65.81)}};
    std::vector<Leg> turning;
    double way = 90;
    const double lengths[] = {42, 18.5, 26, 31, 12}, turns[] = {45, -22.5, -90, 11.25, 0};
    for (std::size_t i = 0; i < 5; ++i) {
        turning.push_back({Angle::degrees(way), Length::feet(lengths[i])});
        way += turns[i];
    }
    const std::vector<PlanPoint> ends = traverse({}, turning);
    for (const Row& row : rows(table)) {
        if (row.item == "Inverse A to C") {
            const PlanPoint to{Length::feet(row.input("dE_ft")), Length::feet(row.input("dN_ft"))};
            see(row, row.unit == "deg" ? 360 - azimuth({}, to).degrees() : distance({}, to).feet());
        }
        if (row.item == "Forward from point 1") {
            const PlanPoint to = ahead({Length::feet(2000), Length::feet(1000)}, readBearing("140-54-25"),
                                       Length::feet(690.811));
            see(row, (row.output == "north" ? to.north : to.east).feet());
        }
        if (row.item == "Inverse")
            see(row, distance({Length::feet(1450.051), Length::feet(836.445)},
                              {Length::feet(2435.613), Length::feet(463.846)})
                         .feet());
        if (row.item == "Traverse table, latitude")
            see(row, ahead({}, readBearing("N 15-30 E"), Length::feet(row.input("d_ft"))).north.feet());
        if (row.id.ends_with("-111")) see(row, enclosed(five).squareFeet());
        if (row.item.starts_with("Deflection traverse")) {
            const PlanPoint end = ends[static_cast<std::size_t>(row.item.back() - '0')];
            see(row, (row.output == "north" ? end.north : end.east).feet());
        }
    }
    EXPECT_EQ(checked, 18);
}

TEST(Traverse, Bearings) {
    EXPECT_DOUBLE_EQ(readBearing("N 45 E").degrees(), 45);
    EXPECT_DOUBLE_EQ(readBearing("s 45 e").degrees(), 135);
    EXPECT_DOUBLE_EQ(readBearing("S 45°30' W").degrees(), 225.5);
    EXPECT_DOUBLE_EQ(readBearing("N 19-46-00 W").degrees(), 340 + 14.0 / 60);
    EXPECT_DOUBLE_EQ(readBearing("N 0 W").degrees(), 0);
    EXPECT_DOUBLE_EQ(readBearing("west").degrees(), 270);
    EXPECT_DOUBLE_EQ(readBearing("291.5").degrees(), 291.5);
    for (const char* wrong : {"", "N", "N 91 E", "N 45", "45 E", "N 45-60 E", "N 45.5-10 E", "360", "-10",
                              "N x E", "N 1-2-3-4 E", "abc", "E 45 N", "N E"})
        EXPECT_THROW(readBearing(wrong), Error) << wrong;
}

TEST(Traverse, Refusals) {
    EXPECT_THROW(compassRule({}, std::vector<Leg>(2, leg("N 1 E", 5))), Error);
    EXPECT_THROW(compassRule({}, std::vector<Leg>(3)), Error);
}

TEST(Traverse, AreaIsAlikeAnywhereAndBothWaysRound) {
    rc::check([] {
        const auto some = [](int most) { return *rc::gen::inRange(1, most) / 8.0; };
        const double wide = some(2000), high = some(2000), east = some(20000), north = some(20000);
        std::vector<PlanPoint> corners = {{Length::feet(east), Length::feet(north)},
                                          {Length::feet(east + wide), Length::feet(north)},
                                          {Length::feet(east + wide), Length::feet(north + high)},
                                          {Length::feet(east), Length::feet(north + high)}};
        RC_ASSERT(std::fabs(enclosed(corners).squareFeet() / (wide * high) - 1) < 1e-9);
        std::reverse(corners.begin(), corners.end());
        RC_ASSERT(std::fabs(enclosed(corners).squareFeet() / (wide * high) - 1) < 1e-9);
    });
}

TEST(Ties, PublishedPoints) {
    int checked = 0;
    const auto see = [&](const Row& row, double ours) {
        check("LAYOUT.TIES", row, ours);
        ++checked;
    };
    const PlanPoint a{Length::feet(2000), Length::feet(1000)},
        b{Length::feet(1811.082), Length::feet(480.951)};
    const TwoPlaces lr = twoTies(a, Length::feet(573.754425365), b, Length::feet(506.674813857));
    const TwoPlaces fp = twoTies(a, Length::feet(690.810970878), b, Length::feet(624.765196683));
    const PlanPoint r{Length::metres(10000), Length::metres(10000)},
        s{Length::metres(13462.56), Length::metres(11373.62)};
    const TwoPlaces p = twoTies(r, Length::metres(3051.63), s, Length::metres(1980.27));
    for (const Row& row : rows(table)) {
        const auto part = [&](const PlanPoint& at) {
            return row.output.starts_with("north") ? at.north : at.east;
        };
        // Looking from a, south of it, to b.
        if (row.item == "Second intersection of the two ties to LR") see(row, part(lr.left).feet());
        if (row.item == "Second intersection of the two ties to FP") see(row, part(fp.right).feet());
        if (row.item == "Two-distance problem, P south") see(row, part(p.right).metres());
        if (row.item == "Two-distance problem, other solution") see(row, part(p.left).metres());
    }
    EXPECT_EQ(checked, 8);
    // The points themselves, as their source prints them.
    EXPECT_NEAR(fp.left.north.feet(), 463.846, 5e-4);
    EXPECT_NEAR(fp.left.east.feet(), 2435.613, 5e-4);
}

TEST(Ties, BothPlacesFitBothTapes) {
    rc::check([] {
        const auto some = [] { return *rc::gen::inRange(-4000, 4000) / 16.0; };
        const PlanPoint a{Length::feet(some()), Length::feet(some())},
            b{Length::feet(some()), Length::feet(some())}, p{Length::feet(some()), Length::feet(some())};
        RC_PRE(distance(a, b).feet() > 1 && distance(a, p).feet() > 1 && distance(b, p).feet() > 1);
        const TwoPlaces places = twoTies(a, distance(a, p), b, distance(b, p));
        for (const PlanPoint& at : {places.left, places.right}) {
            // Where the three stand in one line the root of a rounding error is left.
            RC_ASSERT(std::fabs((distance(a, at) - distance(a, p)).feet()) < 1e-5);
            RC_ASSERT(std::fabs((distance(b, at) - distance(b, p)).feet()) < 1e-5);
        }
        const bool isLeft =
            ((b.east - a.east) * (p.north - a.north)).si() > ((b.north - a.north) * (p.east - a.east)).si();
        RC_ASSERT(distance(isLeft ? places.left : places.right, p).feet() < 1e-2);
    });
}

TEST(Ties, TapesThatDoNotMeet) {
    const PlanPoint b{Length::feet(50), {}};
    const TwoPlaces shorts = twoTies({}, Length::feet(20), b, Length::feet(28));
    EXPECT_NEAR(shorts.gap.feet(), 2, 1e-12);
    EXPECT_NEAR(shorts.left.east.feet(), 21, 1e-12);
    EXPECT_EQ(shorts.left, shorts.right);
    EXPECT_NEAR(twoTies({}, Length::feet(80), b, Length::feet(28)).left.east.feet(), 79, 1e-12);
    EXPECT_NEAR(twoTies({}, Length::feet(20), b, Length::feet(74)).left.east.feet(), -22, 1e-12);
    EXPECT_THROW(twoTies({}, Length::feet(20), {}, Length::feet(20)), Error);
    EXPECT_THROW(twoTies({}, Length::feet(0), b, Length::feet(20)), Error);
}
