// Every limit of a run's check: at the limit, just on the good side, just on the bad side. The limits are moved off
// their defaults, so that a limit taken from the wrong rule shows.
#include <gtest/gtest.h>

#include <functional>
#include <string>
#include <vector>

#include "trenchbook/job/judge_run.h"
#include "trenchbook/pipe/manning.h"

namespace {

using namespace trenchbook;

constexpr double near = 1e-6;  // of the limit; the check itself forgives 1e-9

RunFacts good() {
    return {.length = Length::feet(40),
            .slope = Slope::percent(2),
            .pipe = stockPipe("4 SDR35"),
            .flow = Flow::gpm(60),
            .coverUp = Length::inches(20),
            .coverDown = Length::inches(20),
            .surfaceUp = CoverSurface::Lawn,
            .surfaceDown = CoverSurface::Lawn,
            .roughness = 0.011};
}

struct Limit {
    const char* rule;
    double value;        // in the rule's US unit
    bool least;          // good from the limit up; else good up to the limit
    const char* begins;  // of the reason
    std::function<void(RunFacts&, double)> set;
    bool atLimit = true;  // the limit itself is good
};

Flow carried(double share) {
    const RunFacts facts = good();
    return capacity(facts.pipe.bore, facts.slope, facts.roughness) * share;
}
// The slope at which the full pipe has this velocity.
Slope slopeFor(double feetPerSecond) {
    const RunFacts facts = good();
    return selfCleaningSlope(facts.pipe.bore, Velocity::feetPerSecond(feetPerSecond), facts.roughness);
}
// Cover under which the trench is so many feet deep: 4.215 in outside, 3 in bedding.
Length coverOfCut(double feet) { return Length::feet(feet) - Length::inches(4.215 + 3); }

const std::vector<Limit>& limits() {
    static const std::vector<Limit> all = {
        {"slope.min.4in", 0.015, true, "too flat",
         [](RunFacts& f, double v) { f.slope = Slope::fraction(v), f.flow = Flow::gpm(20); }},
        {"share.max", 0.6, false, "too full", [](RunFacts& f, double v) { f.flow = carried(v); }},
        {"velocity.min", 3, true, "slow",
         [](RunFacts& f, double v) { f.slope = slopeFor(v), f.flow = Flow::gpm(5); }},
        {"cover.lawn", 13, true, "shallow at the upper end",
         [](RunFacts& f, double v) { f.coverUp = Length::inches(v); }},
        {"cover.end", 9, true, "shallow at the lower end",
         [](RunFacts& f, double v) {
             f.coverDown = Length::inches(v), f.surfaceDown = CoverSurface::LawnEnd;
         }},
        {"cover.bed", 17, true, "shallow at the lower end",
         [](RunFacts& f, double v) { f.coverDown = Length::inches(v), f.surfaceDown = CoverSurface::Bed; }},
        {"cover.walk", 11, true, "shallow at the upper end",
         [](RunFacts& f, double v) { f.coverUp = Length::inches(v), f.surfaceUp = CoverSurface::Walk; }},
        {"cover.drive", 26, true, "shallow at the lower end",
         [](RunFacts& f, double v) { f.coverDown = Length::inches(v), f.surfaceDown = CoverSurface::Drive; }},
        {"cover.street", 31, true, "shallow at the lower end",
         [](RunFacts& f, double v) {
             f.coverDown = Length::inches(v), f.surfaceDown = CoverSurface::Street;
         }},
        {"length.max", 250, false, "long", [](RunFacts& f, double v) { f.length = Length::feet(v); }},
        // A cut is judged from its limit on.
        {"cut.exit", 4.5, false, "cut 4.5 ft: a safe way out",
         [](RunFacts& f, double v) { f.coverDown = coverOfCut(v); }, false},
        {"cut.protect", 5.5, false, "cut 5.5 ft: protective",
         [](RunFacts& f, double v) { f.coverUp = coverOfCut(v); }, false},
    };
    return all;
}

std::vector<std::string> reasons(const Limit& limit, double value) {
    Ruleset rules;
    rules.set(limit.rule, limit.value, UnitSystem::US);
    // The others stand far off.
    for (const char* other : {"cut.exit", "cut.protect"})
        if (std::string(other) != limit.rule) rules.set(other, 10, UnitSystem::US);
    RunFacts facts = good();
    limit.set(facts, value);
    std::vector<std::string> said;
    for (const Text& reason : runReasons(facts, rules, UnitSystem::US)) said.push_back(reason.en);
    return said;
}

TEST(RunBounds, EveryLimitAtBelowAndAbove) {
    for (const Limit& limit : limits()) {
        const double inside = limit.value * (limit.least ? 1 + near : 1 - near);
        const double outside = limit.value * (limit.least ? 1 - near : 1 + near);
        EXPECT_EQ(reasons(limit, inside), std::vector<std::string>{}) << limit.rule;
        EXPECT_EQ(reasons(limit, limit.value).empty(), limit.atLimit) << limit.rule;
        const std::vector<std::string> said = reasons(limit, outside);
        ASSERT_EQ(said.size(), 1U) << limit.rule;
        EXPECT_EQ(said[0].substr(0, std::string(limit.begins).size()), limit.begins) << limit.rule;
    }
}

TEST(RunBounds, FullPipeIsOverloadedFromOneOn) {
    Ruleset rules;
    rules.set("share.max", 1, UnitSystem::US);
    RunFacts facts = good();
    facts.flow = carried(1);
    EXPECT_EQ(checkRun(facts, rules, UnitSystem::US).en, "OK");
    facts.flow = carried(1 + near);
    EXPECT_EQ(checkRun(facts, rules, UnitSystem::US).en.substr(0, 10), "overloaded");
}

TEST(RunBounds, GreatestVelocityIsThatAtTheFlowsOwnDepth) {
    RunFacts facts = good();
    facts.slope = Slope::percent(20);
    const double fast =
        uniformVelocity(facts.pipe.bore, facts.slope, facts.flow, facts.roughness).feetPerSecond();
    for (const double side : {1 - near, 1 + near}) {
        Ruleset rules;
        rules.set("velocity.max", fast * side, UnitSystem::US);
        EXPECT_EQ(runReasons(facts, rules, UnitSystem::US).size(), side < 1 ? 1U : 0U) << side;
    }
}

TEST(RunBounds, TheDeeperEndDecidesTheCut) {
    RunFacts facts = good();
    facts.coverUp = coverOfCut(6);
    EXPECT_EQ(runReasons(facts, Ruleset(), UnitSystem::US).size(), 1U);
    std::swap(facts.coverUp, facts.coverDown);
    EXPECT_EQ(runReasons(facts, Ruleset(), UnitSystem::US).size(), 1U);
    facts.coverUp = {};
    EXPECT_EQ(runReasons(facts, Ruleset(), UnitSystem::US).size(), 1U);
    facts.coverUp = coverOfCut(6), facts.coverDown = {};
    EXPECT_EQ(runReasons(facts, Ruleset(), UnitSystem::US).size(), 1U);
}

TEST(RunBounds, LengthsAreSaidToATenth) {
    RunFacts facts = good();
    facts.length = Length::feet(310.26);
    EXPECT_EQ(checkRun(facts, Ruleset(), UnitSystem::US).en, "long: 310.3 ft, at most 300 ft");
    EXPECT_EQ(checkRun(facts, Ruleset(), UnitSystem::Metric).es, "largo: 94.6 m, máximo 91.4 m");
}

TEST(RunBounds, WheelsAtEitherEnd) {
    RunFacts facts = good();
    facts.pipe = stockPipe("4 D2729");
    facts.coverUp = facts.coverDown = Length::inches(40);
    for (const auto& [up, down, driven] : {std::tuple(CoverSurface::Drive, CoverSurface::Lawn, true),
                                           std::tuple(CoverSurface::Lawn, CoverSurface::Drive, true),
                                           std::tuple(CoverSurface::Street, CoverSurface::Bed, true),
                                           std::tuple(CoverSurface::Bed, CoverSurface::Street, true),
                                           std::tuple(CoverSurface::Walk, CoverSurface::Walk, false)}) {
        facts.surfaceUp = up, facts.surfaceDown = down;
        EXPECT_EQ(runReasons(facts, Ruleset(), UnitSystem::US).size(), driven ? 1U : 0U);
    }
}

}  // namespace
