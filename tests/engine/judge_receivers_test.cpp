// What is told of the swale or ditch that a line empties into.
#include <gtest/gtest.h>

#include <cmath>
#include <functional>

#include "judged.h"
#include "trenchbook/water/swale.h"

namespace trenchbook {
namespace {

using enum Severity;

Job drained() {
    Job job = smallJob();
    job.receivers = {{.node = "Out",
                      .otherFlow = Flow::gpm(46),
                      .bottom = Length::feet(1),
                      .deep = Length::feet(1.5),
                      .sideSlope = 3,
                      .slope = Slope::percent(2),
                      .roughness = 0.045,
                      .flowLine = Length::feet(95.5),
                      .blank = false}};
    return job;
}

TEST(JudgeReceivers, FlowIsTheLinesAndItsOwn) {
    const SolvedReceiver solved = solve(drained()).receivers[0];
    // 1,300 sq ft of area x C x 4 in/hr / 96.25 = 54.026 gpm.
    EXPECT_NEAR(solved.lineFlow->gpm(), 54.0260, 1e-4);
    EXPECT_NEAR(solved.flow->gpm(), 100.0260, 1e-4);
    EXPECT_TRUE(isOk(drained(), Part::Swale, 0));
}

TEST(JudgeReceivers, DepthCarriesTheFlowByManning) {
    const SolvedReceiver solved = solve(drained()).receivers[0];
    const double y = solved.depth->feet();
    // Manning, US units: 1.486 / n A R^(2/3) S^(1/2) with A = y (b + 3 y), P = b + 2 y sqrt(10).
    const double area = y * (1 + 3 * y), radius = area / (1 + 2 * y * std::sqrt(10.0));
    const double cfs = 1.486 / 0.045 * area * std::pow(radius, 2.0 / 3) * std::sqrt(0.02);
    EXPECT_NEAR(cfs, solved.flow->cfs(), 1e-3 * cfs);
    EXPECT_NEAR(solved.velocity->feetPerSecond(), solved.flow->cfs() / area, 1e-9);
    EXPECT_NEAR(solved.spare->feet(), 1.5 - y, 1e-12);
}

// Each of the four by itself: it is asked for, and nothing is computed without it, not even to blame another value.
TEST(JudgeReceivers, WhatIsMissingIsAskedAndNothingElse) {
    const auto level = [](Receiver& swale) { swale.slope = Slope(); };
    const auto smooth = [](Receiver& swale) { swale.roughness = 0; };
    const struct {
        const char* heading;
        std::function<void(Receiver&)> take, spoil;
    } cases[] = {
        {"Bottom", [](Receiver& swale) { swale.bottom.reset(); }, level},
        {"Side slope", [](Receiver& swale) { swale.sideSlope.reset(); }, level},
        {"Slope", [](Receiver& swale) { swale.slope.reset(); }, smooth},
        {"Roughness", [](Receiver& swale) { swale.roughness.reset(); }, level},
    };
    for (const auto& [heading, take, spoil] : cases) {
        Job job = drained();
        spoil(job.receivers[0]);
        EXPECT_TRUE(tells(job, Part::Swale, 0, No, anyRule, "is 0"));
        take(job.receivers[0]);
        EXPECT_TRUE(tells(job, Part::Swale, 0, NotJudged, "", std::string(heading) + " is missing"));
        EXPECT_FALSE(tells(job, Part::Swale, 0, No, anyRule, "")) << heading;
    }
}

// A rule that asks for nothing is met by nothing.
TEST(JudgeReceivers, NoDistanceIsEnoughWhereNoneIsAsked) {
    Job job = drained();
    job.receivers[0].lotLine = Length();
    EXPECT_TRUE(tells(job, Part::Swale, 0, No, "outlet.line.min", "outlet to the lot line"));
    job.rules.set("outlet.line.min", 0, UnitSystem::US);
    EXPECT_FALSE(tells(job, Part::Swale, 0, No, "outlet.line.min", ""));
}

TEST(JudgeReceivers, TheOutletMustBeAnEnd) {
    Job job = drained();
    job.receivers[0].node = "";
    EXPECT_TRUE(tells(job, Part::Swale, 0, NotJudged, "", "Outlet is missing"));
    job.receivers[0].node = "A";
    EXPECT_TRUE(tells(job, Part::Swale, 0, No, "", "no run ends at A"));
    job.receivers[0].node = "B";
    EXPECT_TRUE(tells(job, Part::Swale, 0, No, "", "a run leaves B"));
}

TEST(JudgeReceivers, FlowMustBeKnown) {
    Job job = drained();
    job.inlets[0].roof.coefficient.reset();
    EXPECT_TRUE(tells(job, Part::Swale, 0, NotJudged, "", "no flow at Out"));
    job = drained();
    job.receivers[0].unusable = {
        {"Other flow", "some", {"Other flow is \"some\"", "Other flow es \"some\""}}};
    EXPECT_FALSE(solve(job).receivers[0].flow.has_value());
    EXPECT_TRUE(tells(job, Part::Swale, 0, No, "", "Other flow is"));
    EXPECT_FALSE(tells(job, Part::Swale, 0, NotJudged, "", "no flow"));
    job = drained();
    job.inlets.clear();
    job.receivers[0].otherFlow.reset();
    EXPECT_TRUE(tells(job, Part::Swale, 0, No, "", "no water comes to Out"));
}

TEST(JudgeReceivers, EverySizeIsAskedFor) {
    Job job = drained();
    Receiver& swale = job.receivers[0];
    swale.bottom.reset();
    swale.sideSlope.reset();
    swale.deep.reset();
    swale.slope.reset();
    swale.roughness.reset();
    for (const char* heading : {"Bottom", "Side slope", "Deep", "Slope", "Roughness"})
        EXPECT_TRUE(tells(job, Part::Swale, 0, NotJudged, "", std::string(heading) + " is missing"));
    job = drained();
    job.receivers[0].bottom = Length{};
    job.receivers[0].sideSlope = 0;
    EXPECT_TRUE(tells(job, Part::Swale, 0, No, "", ""));
    job = drained();
    job.receivers[0].deep = Length{};
    EXPECT_TRUE(tells(job, Part::Swale, 0, No, "", "Deep must be above 0"));
}

TEST(JudgeReceivers, Freeboard) {
    Job job = drained();
    const Length depth = *solve(job).receivers[0].depth;
    job.receivers[0].deep = depth + Length::feet(0.5);
    EXPECT_TRUE(isOk(job, Part::Swale, 0));
    job.receivers[0].deep = depth + Length::feet(0.499);
    EXPECT_TRUE(tells(job, Part::Swale, 0, Check, "freeboard.min", "freeboard 0.499 ft, at least 0.5 ft"));
    job.receivers[0].deep = depth + Length::feet(0.001);
    EXPECT_TRUE(tells(job, Part::Swale, 0, Check, "freeboard.min", "freeboard 0.001 ft, at least 0.5 ft"));
    job.receivers[0].deep = depth - Length::feet(0.001);
    EXPECT_TRUE(tells(job, Part::Swale, 0, No, "freeboard.min", "runs over"));
}

TEST(JudgeReceivers, VelocityOnGrass) {
    Job job = drained();
    const Velocity velocity = *solve(job).receivers[0].velocity;
    job.rules.set("velocity.outlet.max", velocity.feetPerSecond(), UnitSystem::US);
    EXPECT_TRUE(isOk(job, Part::Swale, 0));
    job.rules.set("velocity.outlet.max", velocity.feetPerSecond() * 1.001, UnitSystem::US);
    EXPECT_TRUE(isOk(job, Part::Swale, 0));
    job.rules.set("velocity.outlet.max", velocity.feetPerSecond() * 0.999, UnitSystem::US);
    EXPECT_TRUE(tells(job, Part::Swale, 0, No, "velocity.outlet.max", "too fast for grass"));
}

TEST(JudgeReceivers, ShootingWater) {
    Job job = drained();
    job.receivers[0].slope = Slope::percent(12);
    const SolvedReceiver solved = solve(job).receivers[0];
    ASSERT_LT(solved.depth->si(), solved.critical->si());
    EXPECT_TRUE(tells(job, Part::Swale, 0, Check, "", "the water shoots"));
    // At the critical slope depth and critical depth are one: S = (n Q / (1.486 A R^(2/3)))^2 there.
    const double y = solved.critical->feet(), area = y * (1 + 3 * y);
    const double radius = area / (1 + 2 * y * std::sqrt(10.0));
    const double critical =
        std::pow(0.045 * solved.flow->cfs() / (1.486 * area * std::pow(radius, 2.0 / 3)), 2);
    job.receivers[0].slope = Slope::fraction(critical * 0.99);
    EXPECT_FALSE(tells(job, Part::Swale, 0, Check, "", "the water shoots"));
    job.receivers[0].slope = Slope::fraction(critical * 1.01);
    EXPECT_TRUE(tells(job, Part::Swale, 0, Check, "", "the water shoots"));
}

TEST(JudgeReceivers, OutletOverTheFlowLine) {
    Job job = drained();
    job.receivers[0].flowLine = Length::feet(96 - 0.17);  // invert 96
    EXPECT_NEAR(solve(job).receivers[0].overFlowLine->feet(), 0.17, 1e-9);
    EXPECT_TRUE(isOk(job, Part::Swale, 0));
    job.receivers[0].flowLine = Length::feet(96 - 0.169);
    EXPECT_TRUE(tells(job, Part::Swale, 0, Check, "outlet.above.min",
                      "outlet over the flow line 0.169 ft, at least 0.17 ft"));
    job.receivers[0].flowLine.reset();
    EXPECT_TRUE(tells(job, Part::Swale, 0, NotJudged, "outlet.above.min", "Flow line is blank"));
    job.receivers[0].flowLine = Length::feet(95);
    job.runs[1].outletLevel.reset();
    EXPECT_TRUE(tells(job, Part::Swale, 0, NotJudged, "outlet.above.min", "the outlet has no level yet"));
}

TEST(JudgeReceivers, ATeeBubblesOverItsRim) {
    Job job = drained();
    job.nodes[2].kinds = {};
    job.nodes[2].kinds.add(NodeKind::Tee);
    job.nodes[2].opening = Length::feet(97.5);
    EXPECT_NEAR(solve(job).receivers[0].overFlowLine->feet(), 2, 1e-9);
}

TEST(JudgeReceivers, DistancesThatAreGivenAreJudged) {
    Job job = drained();
    const auto check = [&](std::optional<Length> Receiver::*distance, double least, const char* rule) {
        job.receivers[0].*distance = Length::feet(least);
        EXPECT_TRUE(isOk(job, Part::Swale, 0)) << rule;
        job.receivers[0].*distance = Length::feet(least + 0.01);
        EXPECT_TRUE(isOk(job, Part::Swale, 0)) << rule;
        job.receivers[0].*distance = Length::feet(least - 0.01);
        EXPECT_TRUE(tells(job, Part::Swale, 0, No, rule, "at least"));
        (job.receivers[0].*distance).reset();
    };
    check(&Receiver::lotLine, 10, "outlet.line.min");  // O'Fallon IL 13501
    check(&Receiver::walk, 10, "outlet.walk.min");     // O'Fallon IL 13501
    check(&Receiver::foundation, 5, "outlet.foundation.min");
}

TEST(JudgeReceivers, BlankDistancesAreToldWhereTheOutletAsksForThem) {
    Job job = drained();
    const auto asked = [&](const char* outlet) {
        job.facts.outlet = outlet;
        std::string rules;
        for (const Finding& finding : told(job, Part::Swale, 0))
            if (finding.severity == NotJudged) rules += finding.rule + " ";
        return rules;
    };
    EXPECT_EQ(asked("own swale"), "outlet.line.min outlet.walk.min outlet.foundation.min ");
    EXPECT_EQ(asked("zanja propia"), "outlet.line.min outlet.walk.min outlet.foundation.min ");
    EXPECT_EQ(asked("easement swale"), "outlet.walk.min outlet.foundation.min ");
    EXPECT_EQ(asked("roadside ditch"), "");
    job.receivers[0].flowLine.reset();
    EXPECT_EQ(asked("roadside ditch"), "outlet.above.min ");
    EXPECT_EQ(asked("curb"), "");
    EXPECT_EQ(asked("public inlet"), "");
    EXPECT_EQ(asked("rock pit with overflow"), "");
    EXPECT_EQ(asked("a pond"), "");
}

// A rule of 0 asks for nothing: what lies on the line itself is not under it.
TEST(JudgeReceivers, ARuleOfNothingIsMetByNothing) {
    Job job = drained();
    job.receivers[0].lotLine = Length();
    EXPECT_TRUE(tells(job, Part::Swale, 0, No, "outlet.line.min", "outlet to the lot line"));
    job.rules.set("outlet.line.min", 0, UnitSystem::US);
    EXPECT_TRUE(isOk(job, Part::Swale, 0));
}

TEST(JudgeReceivers, ASwaleBesideTheHouseFallsEnough) {
    // IRC 2006 R401.3: swales within 10 ft of the house fall 2 %.
    Job job = drained();
    job.receivers[0].foundation = Length::feet(10);
    EXPECT_TRUE(isOk(job, Part::Swale, 0));
    job.receivers[0].slope = Slope::percent(1.99);
    EXPECT_TRUE(tells(job, Part::Swale, 0, Check, "ground.away.min", "falls 1.99 %, at least 2 %"));
    job.receivers[0].foundation = Length::feet(10.01);
    EXPECT_TRUE(isOk(job, Part::Swale, 0));
}

}  // namespace
}  // namespace trenchbook
