#include "trenchbook/ground/pit_storm.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <sstream>

#include "reference.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

using namespace reference;

struct Case {
    std::vector<StormStep> storm;
    Area area;
    RockPit pit;
    SoilRate rate;
    Length start{};

    PitStorm run(std::vector<PitState>* course = nullptr) const {
        return runStorm(storm, area, pit, rate, start, course);
    }
};

std::ostream& operator<<(std::ostream& out, const Case& c) {
    out << "area " << c.area.squareMetres() << " m2, pit " << c.pit.length.metres() << " x "
        << c.pit.width.metres() << " x " << c.pit.rockDepth.metres() << " m, voids " << c.pit.voids
        << ", side share " << c.pit.sideShare << ", rate " << c.rate.millimetresPerHour() << " mm/h, start "
        << c.start.metres() << " m, storm";
    for (const StormStep& step : c.storm) out << ' ' << step.end.minutes() << ':' << step.depth.millimetres();
    return out;
}

// The same pit by small explicit steps, with no formula in common.
struct Stepped {
    double highest = 0, overflow = 0, soaked = 0, hoursToEmpty = 0, firstOverflow = -1;
};
Stepped stepped(const Case& c, double step) {
    const double bottom = c.pit.length.si() * c.pit.width.si();
    const double perimeter = 2 * (c.pit.length.si() + c.pit.width.si());
    const double capacity = c.pit.voids * bottom * c.pit.rockDepth.si();
    double volume = c.start.si() * c.pit.voids * bottom;
    Stepped result;
    result.highest = c.start.si();
    double now = 0;
    std::size_t row = 0;
    const double stormEnd = c.storm.back().end.si();
    while (row < c.storm.size() || volume > 1e-9) {
        double inflow = 0, until = now + step;
        if (row < c.storm.size()) {
            const double begin = row > 0 ? c.storm[row - 1].end.si() : 0;
            inflow = c.storm[row].depth.si() * c.area.si() / (c.storm[row].end.si() - begin);
            if (until >= c.storm[row].end.si()) until = c.storm[row++].end.si();
        }
        const double dt = until - now;
        const double depth = volume / (c.pit.voids * bottom);
        const double taken =
            std::min(c.rate.si() * (bottom + c.pit.sideShare * perimeter * depth) * dt, volume + inflow * dt);
        volume += inflow * dt - taken;
        result.soaked += taken;
        if (volume > capacity) {
            if (result.firstOverflow < 0) result.firstOverflow = until;
            result.overflow += volume - capacity;
            volume = capacity;
        }
        result.highest = std::max(result.highest, volume / (c.pit.voids * bottom));
        now = until;
    }
    result.hoursToEmpty = (now - stormEnd) / 3600;
    return result;
}

Case anyCase() {
    Case c;
    double minute = 0;
    const int steps = *rc::gen::inRange(1, 40);
    for (int i = 0; i < steps; ++i) {
        minute += *rc::gen::inRange(1, 60);
        c.storm.push_back({Duration::minutes(minute), Length::millimetres(*rc::gen::inRange(0, 120) / 10.0)});
    }
    c.area = Area::squareMetres(*rc::gen::inRange(20, 300));
    c.pit = {.length = Length::metres(*rc::gen::inRange(10, 120) / 10.0),
             .width = Length::metres(*rc::gen::inRange(5, 30) / 10.0),
             .rockDepth = Length::metres(*rc::gen::inRange(3, 20) / 10.0),
             .voids = *rc::gen::inRange(20, 60) / 100.0,
             .sideShare = *rc::gen::element(0.0, 0.25, 0.5, 1.0)};
    c.rate = SoilRate::millimetresPerHour(*rc::gen::inRange(1, 200));
    c.start = c.pit.rockDepth * (*rc::gen::inRange(0, 101) / 100.0);
    return c;
}

Volume rain(const Case& c) {
    Length depth;
    for (const StormStep& step : c.storm) depth += step.depth;
    return depth * c.area;
}

TEST(PitStorm, FillsAsPublished) {
    for (const Row& row : rows("20b_drywell_trench_sizing.csv")) {
        if (row.item != "Depth reached during a storm, bottom and sides") continue;
        const double hours = row.input("D_h");
        const double area = row.input("A_m2"), half = row.input("perim_m") / 4;
        const double spread = std::sqrt(half * half - area);
        const Case c{.storm = {{Duration::hours(hours), Length::millimetres(row.input("i_mmh") * hours)}},
                     .area = Area::squareMetres(row.input("Ai_m2")),
                     .pit = {.length = Length::metres(half + spread),
                             .width = Length::metres(half - spread),
                             .rockDepth = Length::metres(5),
                             .voids = row.input("n"),
                             .sideShare = 1},
                     .rate = SoilRate::millimetresPerHour(row.input("f_mmh"))};
        std::vector<PitState> course;
        check("PIT.STORM", row, c.run(&course).highest.metres());
        check("PIT.COURSE", row, course.back().water.metres());
    }
}

TEST(PitSize, GivesPublishedBottomAreas) {
    // A bed of one foot width: its length is its bottom area. The rain is even over the filling time.
    for (const Row& row : rows("20b_drywell_trench_sizing.csv")) {
        const bool recharge = row.item == "Least bottom area, outflow during filling";
        const bool trench = row.item == "Trench bottom area" && row.output == "A" && row.has("WQv_ft3");
        if (!recharge && !trench) continue;
        const double volume = row.input(recharge ? "Rv_ft3" : "WQv_ft3");
        const std::vector<StormStep> storm = {{Duration::hours(row.input("T_h")), Length::feet(1)}};
        const RockPit pit{.width = Length::feet(1),
                          .rockDepth = Length::feet(row.input("d_ft")),
                          .voids = recharge ? 1 : row.input("n")};
        const SoilRate rate = SoilRate::inchesPerHour(row.input(recharge ? "K_inh" : "k_inh"));
        check("PIT.SIZE", row, shortestPit(storm, Area::squareFeet(volume), pit, rate).feet());
    }
    for (const Row& row : rows("08b_trench_and_pit_examples.csv"))
        if (row.output == "trench plan area") {
            // The ordinance lets nothing soak away while the trench fills: the storm falls in a second.
            const std::vector<StormStep> burst = {{Duration::seconds(1), Length::inches(2.04)}};
            const RockPit pit{
                .width = Length::feet(1), .rockDepth = Length::feet(row.input("depth_ft")), .voids = 0.4};
            check("PIT.SIZE", row,
                  shortestPit(burst, Area::squareFeet(824), pit, SoilRate::inchesPerHour(0.5)).feet());
        }
}

RC_GTEST_PROP(PitStorm, AgreesWithSmallSteps, ()) {
    const Case c = anyCase();
    RC_LOG() << c << '\n';
    const PitStorm exact = c.run();
    const double step = 1;
    const Stepped fine = stepped(c, step);
    const double water = (rain(c) + c.pit.bottom() * c.start * c.pit.voids).si();
    // An explicit step is off by up to what can change in it.
    const double rate = c.rate.si() * (c.pit.bottom() + c.pit.perimeter() * c.pit.rockDepth).si();
    const double slack = 2e-4 * water + 2 * rate * step;
    RC_ASSERT(std::fabs(exact.overflow.si() - fine.overflow) < slack);
    RC_ASSERT(std::fabs(exact.soaked.si() - fine.soaked) < slack);
    RC_ASSERT(std::fabs(exact.highest.si() - fine.highest) < slack / (c.pit.voids * c.pit.bottom().si()));
    RC_ASSERT(std::fabs(exact.toEmpty.hours() - fine.hoursToEmpty) < 0.002 * fine.hoursToEmpty + 0.01);
}

RC_GTEST_PROP(PitStorm, LosesNoWater, ()) {
    const Case c = anyCase();
    RC_LOG() << c << '\n';
    std::vector<PitState> course;
    const PitStorm result = c.run(&course);
    RC_ASSERT(result.balanceError < 1e-12);
    const Volume all = rain(c) + c.pit.bottom() * c.start * c.pit.voids;
    RC_ASSERT(std::fabs((result.overflow + result.soaked - all).si()) <= 1e-11 * all.si());
    RC_ASSERT(result.overflow.si() >= 0 && result.soaked.si() >= 0);
    RC_ASSERT(result.highest <= c.pit.rockDepth && result.highest >= c.start);
    RC_ASSERT(result.firstOverflow.has_value() == (result.overflow.si() > 0));
    if (result.firstOverflow)
        RC_ASSERT(result.highest == c.pit.rockDepth && result.highestAt <= *result.firstOverflow);
    RC_ASSERT(course.size() == c.storm.size());
    for (std::size_t i = 1; i < course.size(); ++i) {
        RC_ASSERT(course[i].soaked >= course[i - 1].soaked && course[i].overflow >= course[i - 1].overflow);
        RC_ASSERT(course[i].water <= result.highest);
    }
}

RC_GTEST_PROP(PitStorm, SplittingStepsChangesNothing, ()) {
    const Case c = anyCase();
    RC_LOG() << c << '\n';
    Case split = c;
    split.storm.clear();
    Duration begin{};
    for (const StormStep& step : c.storm) {
        const Duration middle = begin + (step.end - begin) * 0.37;
        split.storm.push_back({middle, step.depth * 0.37});
        split.storm.push_back({step.end, step.depth * 0.63});
        begin = step.end;
    }
    const PitStorm whole = c.run(), parts = split.run();
    const double tiny = 1e-9 * (1 + rain(c).si());
    RC_ASSERT(std::fabs((whole.overflow - parts.overflow).si()) < tiny);
    RC_ASSERT(std::fabs((whole.soaked - parts.soaked).si()) < tiny);
    RC_ASSERT(std::fabs((whole.highest - parts.highest).si()) < 1e-9);
}

RC_GTEST_PROP(PitStorm, ALongerPitNeverOverflowsMore, ()) {
    Case c = anyCase();
    c.start = Length{};
    RC_PRE(c.pit.length >= 2 * c.pit.sideShare * c.pit.rockDepth);
    RC_LOG() << c << '\n';
    Case longer = c;
    longer.pit.length = c.pit.length * (1 + *rc::gen::inRange(1, 100) / 100.0);
    RC_ASSERT(longer.run().overflow.si() <= c.run().overflow.si() + 1e-9 * rain(c).si());
    Case deeper = c;
    deeper.pit.rockDepth = c.pit.rockDepth * (1 + *rc::gen::inRange(1, 100) / 100.0);
    RC_ASSERT(deeper.run().overflow.si() <= c.run().overflow.si() + 1e-9 * rain(c).si());
}

RC_GTEST_PROP(PitStorm, FasterSoilNeverEmptiesLater, ()) {
    const Case c = anyCase();
    RC_LOG() << c << '\n';
    Case faster = c;
    faster.rate = c.rate * (1 + *rc::gen::inRange(1, 300) / 100.0);
    const PitStorm slow = c.run(), fast = faster.run();
    RC_ASSERT(fast.toEmpty.si() <= slow.toEmpty.si() * (1 + 1e-9));
    RC_ASSERT(fast.overflow.si() <= slow.overflow.si() + 1e-9 * rain(c).si());
    RC_ASSERT(fast.highest.si() <= slow.highest.si() * (1 + 1e-9));
}

RC_GTEST_PROP(PitStorm, EmptiesInTheDrainTime, ()) {
    // A full pit and a storm of a dry moment, against the closed formula: the pit empties in that moment, too.
    Case c = anyCase();
    c.start = c.pit.rockDepth;
    const Duration moment = Duration::seconds(1e-6);
    c.storm = {{moment, Length{}}};
    RC_LOG() << c << '\n';
    const PitStorm result = c.run();
    RC_ASSERT(std::fabs((moment + result.toEmpty) / drainTime(c.pit, c.rate) - 1) < 1e-9);
    // And with the emptying inside a long dry step.
    c.storm = {{2 * drainTime(c.pit, c.rate), Length{}}};
    std::vector<PitState> course;
    RC_ASSERT(c.run(&course).toEmpty.si() == 0);
    RC_ASSERT(course.back().water.si() == 0);
    RC_ASSERT(std::fabs(course.back().soaked / storage(c.pit) - 1) < 1e-12);
}

RC_GTEST_PROP(PitSize, JustTakesTheStorm, ()) {
    Case c = anyCase();
    c.start = Length{};
    c.pit.sideShare = *rc::gen::element(0.0, 0.1);
    RC_PRE(rain(c).si() > 0);
    RC_LOG() << c << '\n';
    Length length;
    try {
        length = shortestPit(c.storm, c.area, c.pit, c.rate);
    } catch (const Error& error) {
        // The end walls alone take a drizzle: then a pit of a millimetre does.
        RC_ASSERT(error.kind() == Error::Kind::NoSolution);
        c.pit.length = Length::millimetres(1);
        RC_ASSERT(c.run().overflow.si() <= 1e-9 * rain(c).si());
        return;
    }
    c.pit.length = length;
    RC_ASSERT(c.run().overflow.si() <= 1e-9 * rain(c).si());
    RC_PRE(length > 2 * c.pit.sideShare * c.pit.rockDepth);
    c.pit.length = 0.999 * length;
    RC_ASSERT(c.run().overflow.si() > 0);
}

template <class Change>
std::string refusal(Change change) {
    Case c{.storm = {{Duration::minutes(10), Length::inches(1)}, {Duration::minutes(20), Length::inches(1)}},
           .area = Area::squareFeet(1000),
           .pit = {.length = Length::feet(10), .width = Length::feet(4), .rockDepth = Length::feet(3)},
           .rate = SoilRate::inchesPerHour(1)};
    change(c);
    try {
        c.run();
        return "accepted";
    } catch (const Error& error) {
        return error.sentence(Language::English);
    }
}

TEST(PitStorm, BlamesTheStormForItsRows) {
    const RockPit pit{.length = Length::feet(10), .width = Length::feet(4), .rockDepth = Length::feet(3)};
    const auto blamed = [&](double firstMinute, double secondMinute, double inches) -> std::string {
        const StormStep storm[] = {{Duration::minutes(firstMinute), Length::inches(0.3)},
                                   {Duration::minutes(secondMinute), Length::inches(inches)}};
        try {
            (void)runStorm(storm, Area::squareFeet(1000), pit, SoilRate::inchesPerHour(2));
        } catch (const Error& error) {
            EXPECT_EQ(error.kind(), Error::Kind::BadArgument);
            return error.argument();
        }
        return "nothing";
    };
    EXPECT_EQ(blamed(30, 60, 0.9), "nothing");
    EXPECT_EQ(blamed(30, 60, 0), "nothing");
    EXPECT_EQ(blamed(30, 30, 0.9), "storm");
    EXPECT_EQ(blamed(0, 30, 0.9), "storm");
    EXPECT_EQ(blamed(30, 60, -0.01), "storm");
}

TEST(PitStorm, SaysWhatIsAllowed) {
    EXPECT_EQ(refusal([](Case&) {}), "accepted");
    EXPECT_EQ(refusal([](Case& c) { c.storm.clear(); }),
              "storm is empty; allowed: rows of minute and depth.");
    EXPECT_EQ(refusal([](Case& c) { c.storm[1].end = c.storm[0].end; }),
              "storm: minute 10 in row 2; allowed: minutes that rise from row to row.");
    EXPECT_EQ(refusal([](Case& c) { c.storm[0].depth = Length::inches(-1); }),
              "storm: a depth of rain below 0 in row 1; allowed: 0 or more.");
    EXPECT_EQ(refusal([](Case& c) { c.area = Area{}; }), "area x C is 0; allowed: above 0.");
    EXPECT_EQ(refusal([](Case& c) { c.rate = SoilRate{}; }), "rate is 0; allowed: above 0.");
    EXPECT_EQ(refusal([](Case& c) { c.start = Length::feet(4); }),
              "start water is 4; allowed: at most the rock depth of 3 ft (0.9144 m).");
    EXPECT_EQ(refusal([](Case& c) { c.pit.voids = 40; }),
              "voids is 40; allowed: from 0 to 1. If 40 percent is meant, write 0.4.");
    const RockPit pit{.width = Length::feet(4), .rockDepth = Length::feet(3), .sideShare = 1};
    const std::vector<StormStep> dry = {{Duration::hours(1), Length{}}},
                                 drizzle = {{Duration::hours(24), Length::inches(0.1)}};
    EXPECT_THROW(shortestPit(dry, Area::squareFeet(1000), pit, SoilRate::inchesPerHour(1)), Error);
    EXPECT_THROW(shortestPit(drizzle, Area::squareFeet(10), pit, SoilRate::inchesPerHour(10)), Error);
}

}  // namespace
}  // namespace trenchbook
