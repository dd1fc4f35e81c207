// What is told of the ends of the lines: swale, rim, bank, curb, existing pipe.
#include <gtest/gtest.h>

#include <cmath>
#include <functional>

#include "jobs.h"
#include "judged.h"
#include "trenchbook/water/swale.h"

namespace trenchbook {
namespace {

using enum Severity;

Job drained() {
    Job job = smallJob();
    job.nodes[2].kinds = nodeKinds("ditch");
    job.outlets = {{.node = "Out",
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

TEST(JudgeOutlets, FlowIsTheLinesAndItsOwn) {
    const SolvedOutlet solved = solve(drained()).outlets[0];
    // 1,300 sq ft of area x C x 4 in/hr / 96.25 = 54.026 gpm.
    EXPECT_NEAR(solved.lineFlow->gpm(), 54.0260, 1e-4);
    EXPECT_NEAR(solved.flow->gpm(), 100.0260, 1e-4);
    EXPECT_TRUE(isOk(drained(), Part::Outlets, 0));
}

TEST(JudgeOutlets, DepthCarriesTheFlowByManning) {
    const SolvedOutlet solved = solve(drained()).outlets[0];
    const double y = solved.depth->feet();
    // Manning, US units: 1.486 / n A R^(2/3) S^(1/2) with A = y (b + 3 y), P = b + 2 y sqrt(10).
    const double area = y * (1 + 3 * y), radius = area / (1 + 2 * y * std::sqrt(10.0));
    const double cfs = 1.486 / 0.045 * area * std::pow(radius, 2.0 / 3) * std::sqrt(0.02);
    EXPECT_NEAR(cfs, solved.flow->cfs(), 1e-3 * cfs);
    EXPECT_NEAR(solved.velocity->feetPerSecond(), solved.flow->cfs() / area, 1e-9);
    EXPECT_NEAR(solved.spare->feet(), 1.5 - y, 1e-12);
}

// Each of the four by itself: it is asked for, and nothing is computed without it, not even to blame another value.
TEST(JudgeOutlets, WhatIsMissingIsAskedAndNothingElse) {
    const auto level = [](Outlet& swale) { swale.slope = Slope(); };
    const auto smooth = [](Outlet& swale) { swale.roughness = 0; };
    const struct {
        const char* heading;
        std::function<void(Outlet&)> take, spoil;
    } cases[] = {
        {"Bottom", [](Outlet& swale) { swale.bottom.reset(); }, level},
        {"Side slope", [](Outlet& swale) { swale.sideSlope.reset(); }, level},
        {"Slope", [](Outlet& swale) { swale.slope.reset(); }, smooth},
        {"Roughness", [](Outlet& swale) { swale.roughness.reset(); }, level},
    };
    for (const auto& [heading, take, spoil] : cases) {
        Job job = drained();
        spoil(job.outlets[0]);
        EXPECT_TRUE(tells(job, Part::Outlets, 0, No, anyRule, "is 0"));
        take(job.outlets[0]);
        EXPECT_TRUE(tells(job, Part::Outlets, 0, NotJudged, "", std::string(heading) + " is missing"));
        EXPECT_FALSE(tells(job, Part::Outlets, 0, No, anyRule, "")) << heading;
    }
}

// A rule that asks for nothing is met by nothing.
TEST(JudgeOutlets, NoDistanceIsEnoughWhereNoneIsAsked) {
    Job job = drained();
    job.outlets[0].lotLine = Length();
    EXPECT_TRUE(tells(job, Part::Outlets, 0, No, "outlet.line.min", "outlet to the lot line"));
    job.rules.set("outlet.line.min", 0, UnitSystem::US);
    EXPECT_FALSE(tells(job, Part::Outlets, 0, No, "outlet.line.min", ""));
}

TEST(JudgeOutlets, TheOutletMustBeAnEnd) {
    Job job = drained();
    job.outlets[0].node = "";
    EXPECT_TRUE(tells(job, Part::Outlets, 0, NotJudged, "", "Outlet is missing"));
    job.outlets[0].node = "A";
    EXPECT_TRUE(tells(job, Part::Outlets, 0, No, "", "no run ends at A"));
    job.outlets[0].node = "B";
    EXPECT_TRUE(tells(job, Part::Outlets, 0, No, "", "a run leaves B"));
}

TEST(JudgeOutlets, FlowMustBeKnown) {
    Job job = drained();
    job.inlets[0].roof.coefficient.reset();
    EXPECT_TRUE(tells(job, Part::Outlets, 0, NotJudged, "", "no flow at Out"));
    job = drained();
    job.outlets[0].unusable = {{"Other flow", "some", {"Other flow is \"some\"", "Other flow es \"some\""}}};
    EXPECT_FALSE(solve(job).outlets[0].flow.has_value());
    EXPECT_TRUE(tells(job, Part::Outlets, 0, No, "", "Other flow is"));
    EXPECT_FALSE(tells(job, Part::Outlets, 0, NotJudged, "", "no flow"));
    job = drained();
    job.inlets.clear();
    jobs::closeUnfed(job);
    job.outlets[0].otherFlow.reset();
    EXPECT_TRUE(tells(job, Part::Outlets, 0, No, "", "no water comes to Out"));
}

TEST(JudgeOutlets, EverySizeIsAskedFor) {
    Job job = drained();
    Outlet& swale = job.outlets[0];
    swale.bottom.reset();
    swale.sideSlope.reset();
    swale.deep.reset();
    swale.slope.reset();
    swale.roughness.reset();
    for (const char* heading : {"Bottom", "Side slope", "Deep", "Slope", "Roughness"})
        EXPECT_TRUE(tells(job, Part::Outlets, 0, NotJudged, "", std::string(heading) + " is missing"));
    job = drained();
    job.outlets[0].bottom = Length{};
    job.outlets[0].sideSlope = 0;
    EXPECT_TRUE(tells(job, Part::Outlets, 0, No, "", ""));
    job = drained();
    job.outlets[0].deep = Length{};
    EXPECT_TRUE(tells(job, Part::Outlets, 0, No, "", "Deep must be above 0"));
}

TEST(JudgeOutlets, Freeboard) {
    Job job = drained();
    const Length depth = *solve(job).outlets[0].depth;
    job.outlets[0].deep = depth + Length::feet(0.5);
    EXPECT_TRUE(isOk(job, Part::Outlets, 0));
    job.outlets[0].deep = depth + Length::feet(0.499);
    EXPECT_TRUE(tells(job, Part::Outlets, 0, Check, "freeboard.min", "freeboard 0.499 ft, at least 0.5 ft"));
    job.outlets[0].deep = depth + Length::feet(0.001);
    EXPECT_TRUE(tells(job, Part::Outlets, 0, Check, "freeboard.min", "freeboard 0.001 ft, at least 0.5 ft"));
    job.outlets[0].deep = depth - Length::feet(0.001);
    EXPECT_TRUE(tells(job, Part::Outlets, 0, No, "freeboard.min", "runs over"));
}

TEST(JudgeOutlets, VelocityOnGrass) {
    Job job = drained();
    job.outlets[0].apronStone = Length::inches(6);  // the pipe's own end is another matter
    const Velocity velocity = *solve(job).outlets[0].velocity;
    job.rules.set("velocity.outlet.max", velocity.feetPerSecond(), UnitSystem::US);
    EXPECT_TRUE(isOk(job, Part::Outlets, 0));
    job.rules.set("velocity.outlet.max", velocity.feetPerSecond() * 1.001, UnitSystem::US);
    EXPECT_TRUE(isOk(job, Part::Outlets, 0));
    job.rules.set("velocity.outlet.max", velocity.feetPerSecond() * 0.999, UnitSystem::US);
    EXPECT_TRUE(tells(job, Part::Outlets, 0, No, "velocity.outlet.max", "too fast for grass"));
}

TEST(JudgeOutlets, ShootingWater) {
    Job job = drained();
    job.outlets[0].slope = Slope::percent(12);
    const SolvedOutlet solved = solve(job).outlets[0];
    ASSERT_LT(solved.depth->si(), solved.critical->si());
    EXPECT_TRUE(tells(job, Part::Outlets, 0, Check, "", "the water shoots"));
    // At the critical slope depth and critical depth are one: S = (n Q / (1.486 A R^(2/3)))^2 there.
    const double y = solved.critical->feet(), area = y * (1 + 3 * y);
    const double radius = area / (1 + 2 * y * std::sqrt(10.0));
    const double critical =
        std::pow(0.045 * solved.flow->cfs() / (1.486 * area * std::pow(radius, 2.0 / 3)), 2);
    job.outlets[0].slope = Slope::fraction(critical * 0.99);
    EXPECT_FALSE(tells(job, Part::Outlets, 0, Check, "", "the water shoots"));
    job.outlets[0].slope = Slope::fraction(critical * 1.01);
    EXPECT_TRUE(tells(job, Part::Outlets, 0, Check, "", "the water shoots"));
}

TEST(JudgeOutlets, OutletOverTheFlowLine) {
    Job job = drained();
    job.outlets[0].flowLine = Length::feet(96 - 0.17);  // invert 96
    EXPECT_NEAR(solve(job).outlets[0].overFlowLine->feet(), 0.17, 1e-9);
    EXPECT_TRUE(isOk(job, Part::Outlets, 0));
    job.outlets[0].flowLine = Length::feet(96 - 0.169);
    EXPECT_TRUE(tells(job, Part::Outlets, 0, Check, "outlet.above.min",
                      "outlet over the flow line 0.169 ft, at least 0.17 ft"));
    job.outlets[0].flowLine.reset();
    EXPECT_TRUE(tells(job, Part::Outlets, 0, NotJudged, "outlet.above.min", "Flow line is blank"));
    job.outlets[0].flowLine = Length::feet(95);
    job.runs[1].outletLevel.reset();
    EXPECT_TRUE(tells(job, Part::Outlets, 0, NotJudged, "outlet.above.min", "the outlet has no level yet"));
}

// A line that ends under its ditch's bottom cannot run out.
TEST(JudgeOutlets, AnOutletUnderItsDitchIsNo) {
    Job job = drained();
    job.outlets[0].flowLine = Length::feet(96.3);
    EXPECT_TRUE(tells(job, Part::Outlets, 0, No, "outlet.above.min", "ends 0.3 ft under the flow line"));
    EXPECT_FALSE(tells(job, Part::Outlets, 0, Check, "outlet.above.min", ""));
    job.outlets[0].flowLine = Length::feet(96);
    EXPECT_FALSE(tells(job, Part::Outlets, 0, No, "outlet.above.min", ""));
    EXPECT_TRUE(tells(job, Part::Outlets, 0, Check, "outlet.above.min", "0 ft, at least 0.17 ft"));
    // A gutter is swept; under it the pipe does not run there either.
    Job curb = job;
    curb.nodes[2].kinds = nodeKinds("curb");
    curb.runs[1].outletWater = Length::feet(95.9);
    EXPECT_FALSE(tells(curb, Part::Outlets, 0, Check, "outlet.above.min", ""));
    curb.outlets[0].flowLine = Length::feet(96.3);
    EXPECT_TRUE(tells(curb, Part::Outlets, 0, No, "outlet.above.min", "ends 0.3 ft under the flow line"));
}

// The swale's depth over its bottom is what the line ends in; what is seen there counts where it is higher.
TEST(JudgeOutlets, TheSwalesWaterIsTheLines) {
    Job job = drained();
    const SolvedJob solved = solve(job);
    EXPECT_NEAR(solved.outlets[0].water->feet(), 95.5 + solved.outlets[0].depth->feet(), 1e-12);
    EXPECT_LT(solved.outlets[0].water->feet(), 96);
    EXPECT_EQ(solved.runs[1].water->state, WaterState::DropsIn);
    job.runs[1].outletWater = Length::feet(96.25);
    EXPECT_NEAR(solve(job).outlets[0].water->feet(), 96.25, 1e-12);
    EXPECT_TRUE(
        tells(job, Part::Outlets, 0, Caution, "outlet.backwater.max", "stands 0.25 ft over its invert"));
    EXPECT_TRUE(isOk(job, Part::Outlets, 0));
    // Bore 3.975 in = 0.33125 ft: at the crown it does not come back yet, over it a check valve is asked for.
    job.runs[1].outletWater = Length::feet(96.33125);
    EXPECT_TRUE(isOk(job, Part::Outlets, 0));
    job.runs[1].outletWater = Length::feet(96.3315);
    EXPECT_TRUE(tells(job, Part::Outlets, 0, Check, "outlet.backwater.max", "a check valve"));
    job.outlets[0].checkValve = false;
    EXPECT_TRUE(tells(job, Part::Outlets, 0, Check, "outlet.backwater.max", "a check valve"));
    job.outlets[0].checkValve = true;
    EXPECT_TRUE(isOk(job, Part::Outlets, 0));
}

// A missing tailwater is asked for, not assumed.
TEST(JudgeOutlets, WhatTheLineEndsInIsAskedFor) {
    for (const char* kind : {"ditch", "curb", "existing pipe", "pump basin"}) {
        Job job = smallJob();
        job.nodes[2].kinds = nodeKinds(kind);
        EXPECT_FALSE(solve(job).runs[1].water.has_value()) << kind;
        EXPECT_TRUE(tells(job, Part::Runs, 1, NotJudged, "", "the water that Out ends in is not known"))
            << kind;
        EXPECT_TRUE(tells(job, Part::Nodes, 0, NotJudged, "", "how high the water stands")) << kind;
        EXPECT_FALSE(isOk(job, Part::Outlets, 0)) << kind;
        job.runs[1].outletWater = Length::feet(95.9);
        EXPECT_TRUE(solve(job).runs[1].water.has_value()) << kind;
    }
    for (const char* kind : {"curb", "existing pipe"}) {
        Job job = smallJob();
        job.nodes[2].kinds = nodeKinds(kind);
        EXPECT_TRUE(tells(job, Part::Outlets, 0, NotJudged, "", "Outlet water is missing")) << kind;
        job.runs[1].outletWater = Length::feet(95.9);
        EXPECT_TRUE(isOk(job, Part::Outlets, 0)) << kind;
    }
    Job job = smallJob();
    EXPECT_TRUE(solve(job).runs[1].water.has_value()) << "on a bank it falls away";
    job.nodes[2].kinds = nodeKinds("outlet");
    EXPECT_TRUE(tells(job, Part::Nodes, 2, NotJudged, "", "how does the line end here?"));
    EXPECT_TRUE(tells(job, Part::Runs, 1, NotJudged, "", "how the line ends at Out is not said"));
    job.outlets.clear();
    EXPECT_TRUE(tells(job, Part::Nodes, 2, NotJudged, "", "it has no row on Outlets"));
}

TEST(JudgeOutlets, ALineThatEndsDoesNotGoOn) {
    Job job = smallJob();
    job.nodes[1].kinds = nodeKinds("riser");
    EXPECT_TRUE(tells(job, Part::Nodes, 1, No, "", "the line ends here, and a run leaves it"));
    job.nodes[1].kinds = nodeKinds("basin");
    EXPECT_FALSE(tells(job, Part::Nodes, 1, No, "", "the line ends here"));
    job.nodes[2].kinds = nodeKinds("basin");
    EXPECT_TRUE(tells(job, Part::Nodes, 2, NotJudged, "", "how does the line end here?"));
}

// A tee at level 98 whose 4 in grate is half open. Q = 54.026 gpm = 0.120372 cfs.
Job bubbling(const char* kind) {
    Job job = smallJob();
    job.nodes[2].kinds = nodeKinds(kind);
    job.outlets[0].across = Length::inches(4);
    job.outlets[0].openShare = 0.5;
    job.outlets[0].groundFalls = Slope::percent(2);
    job.outlets[0].weepHole = Length::inches(0.5);
    return job;
}

TEST(JudgeOutlets, TheHeadOverTheRimComesFromTheOpening) {
    // Orifice, HEC-22 8.4.4: h = (Q / (0.6 A))^2 / 2g, A = pi/4 (1/3 ft)^2 x 0.5 = 0.0436332 sq ft: 0.12037 / 0.02618
    // = 4.5979 ft/s, 0.32857 ft clean; half of the opening blocked 4 times that.
    const SolvedOutlet is = solve(bubbling("riser")).outlets[0];
    EXPECT_NEAR(is.headClean->feet(), 0.3286, 3e-4);
    EXPECT_NEAR(is.head->feet(), 1.3143, 1.2e-3);
    // And the turn upwards, 1.80 velocity heads of the 4 in pipe: 0.120372 / 0.0861785 = 1.39678 ft/s, 0.03032 ft.
    EXPECT_NEAR(is.water->feet(), 98 + is.head->feet() + 1.8 * 0.03032, 1e-4);
    EXPECT_NEAR(solve(bubbling("riser")).runs[1].water->levelDown.feet(), is.water->feet(), 1e-9);
    EXPECT_TRUE(tells(bubbling("riser"), Part::Outlets, 0, Caution, "grate.blocked", "1.31 ft over the rim"));
    // Without a grate there is nothing that leaves block, and the bore is the pipe's.
    Job open = bubbling("riser");
    open.outlets[0].openShare = 1;
    open.outlets[0].across.reset();
    const SolvedOutlet free = solve(open).outlets[0];
    EXPECT_EQ(free.head, free.headClean);
    // Weir: h = (Q / (3.33 pi D))^(2/3), D = 0.33125 ft: (0.120372 / 3.46540)^(2/3) = 0.10646 ft; the orifice,
    // (0.120372 / (0.6 x 0.0861785))^2 / 64.35 = 0.0842 ft, is less.
    EXPECT_NEAR(free.head->feet(), 0.10646, 2e-4);
    open.outlets[0].openShare.reset();
    EXPECT_TRUE(tells(open, Part::Outlets, 0, NotJudged, "", "Open share is missing"));
    EXPECT_TRUE(tells(open, Part::Runs, 1, NotJudged, "", "over the rim of Out is not known"));
}

// What is not looked at here is no OK.
TEST(JudgeOutlets, AnothersPipeIsAskedAbout) {
    Job job = smallJob();
    job.runs[1].outletWater = Length::feet(95.9);
    job.nodes[2].kinds = nodeKinds("existing pipe");
    EXPECT_TRUE(tells(job, Part::Outlets, 0, Caution, "", "the existing pipe must carry 54 gpm more"));
    EXPECT_TRUE(isOk(job, Part::Outlets, 0));
}

TEST(JudgeOutlets, TheRimAgainstTheGround) {
    Job job = bubbling("pop-up");
    EXPECT_TRUE(isOk(job, Part::Outlets, 0));
    job.nodes[2].opening = Length::feet(98.1);
    EXPECT_FALSE(tells(job, Part::Outlets, 0, Caution, "outlet.rim.max", ""));
    job.nodes[2].opening = Length::feet(98.11);
    EXPECT_TRUE(tells(job, Part::Outlets, 0, Caution, "outlet.rim.max", "stands 0.11 ft over the ground"));
    job.nodes[2].opening = Length::feet(97.99);
    EXPECT_TRUE(
        tells(job, Part::Outlets, 0, Check, "outlet.rim.min", "rim over the ground around it -0.01 ft"));
    job.nodes[2].opening.reset();
    job.outlets[0].groundFalls = Slope::percent(1.99);
    EXPECT_TRUE(tells(job, Part::Outlets, 0, Check, "ground.away.min", "beyond the rim falls 1.99 %"));
    job.outlets[0].groundFalls.reset();
    EXPECT_TRUE(tells(job, Part::Outlets, 0, NotJudged, "ground.away.min", "Ground falls is blank"));
}

TEST(JudgeOutlets, WhatStaysBehindARim) {
    Job job = bubbling("riser");
    // Rim 98, inverts 96 to 97.4: the line stands full, 100 ft of bore 3.975 in: 0.0861785 sq ft x 100 ft.
    const SolvedOutlet is = solve(job).outlets[0];
    EXPECT_NEAR(is.stays->cubicFeet(), 8.61785, 1e-4);
    // All of it through a half-inch hole, under 2 ft of head and less: longer than at the full head alone,
    // 8.61785 / (0.6 x 0.00136354 x 11.349) = 928 s, shorter than at 0.5 ft, twice that.
    EXPECT_GT(is.empties->minutes(), 928.0 / 60);
    EXPECT_LT(is.empties->minutes(), 2 * 928.0 / 60);
    // Half of a level pipe is half its area: rim at the axis of a level run of its own.
    Job level = bubbling("riser");
    level.runs.erase(level.runs.begin());
    level.runs[0].slope = Slope::percent(1e-7);
    level.nodes[2].ground = level.nodes[2].opening = Length::feet(96 + 3.975 / 24);
    EXPECT_NEAR(solve(level).outlets[0].stays->cubicFeet(), 60 * 0.0861785 / 2, 1e-3);
    job.outlets[0].weepHole = Length();
    EXPECT_TRUE(tells(job, Part::Outlets, 0, Check, "outlet.empty.max", "64 gallons stay in the line"));
    job.outlets[0].weepHole.reset();
    EXPECT_TRUE(tells(job, Part::Outlets, 0, NotJudged, "", "Weep hole is missing"));
    // Through 0.023 in the same water takes (0.5 / 0.023)^2 = 473 times as long: more than three days, less than ten.
    job.outlets[0].weepHole = Length::inches(0.023);
    EXPECT_TRUE(tells(job, Part::Outlets, 0, Check, "outlet.empty.max", "weep away in"));
    job.rules.set("outlet.empty.max", 240, UnitSystem::US);
    EXPECT_TRUE(isOk(job, Part::Outlets, 0));
    // A tee is let out by its pit.
    Job tee = bubbling("tee");
    tee.outlets[0].weepHole.reset();
    EXPECT_TRUE(tells(tee, Part::Outlets, 0, NotJudged, "", "Weep hole is missing"));
    tee.pit.node = "Out";
    EXPECT_FALSE(tells(tee, Part::Outlets, 0, NotJudged, "", "Weep hole"));
    // 3 ft of rock at 0.4 voids hold 1.2 ft of water over the bottom: 72 h at 0.2 in/hr.
    tee.pit.length = tee.pit.width = Length::feet(5);
    tee.pit.rockDepth = Length::feet(3);
    tee.pit.rate = SoilRate::inchesPerHour(0.2);
    EXPECT_NEAR(solve(tee).outlets[0].empties->hours(), 72, 1e-9);
    EXPECT_FALSE(tells(tee, Part::Outlets, 0, Check, "outlet.empty.max", ""));
    tee.pit.rate = SoilRate::inchesPerHour(0.199);
    EXPECT_TRUE(
        tells(tee, Part::Outlets, 0, Check, "outlet.empty.max", "until the pit is empty, after 72.36 h"));
}

TEST(JudgeOutlets, FastWaterOnABankAsksForStone) {
    Job job = smallJob();
    const double fps = solve(job).outlets[0].endVelocity->feetPerSecond();
    job.rules.set("velocity.outlet.max", fps + 1e-6, UnitSystem::US);
    EXPECT_TRUE(isOk(job, Part::Outlets, 0));
    job.rules.set("velocity.outlet.max", fps - 0.01, UnitSystem::US);
    EXPECT_TRUE(tells(job, Part::Outlets, 0, Check, "velocity.outlet.max", "a stone apron"));
    job.outlets[0].apronStone = Length::inches(6);
    EXPECT_TRUE(isOk(job, Part::Outlets, 0));
    // Dane County, L = 1.7 Q / D^1.5 + 8 D: 1.7 x 0.120372 / 0.33125^1.5 + 8 x 0.33125 = 1.0733 + 2.65 = 3.72 ft; widths
    // 3 D = 0.99 and 3 D + 2/3 L = 3.48 ft.
    const StoneApron apron = *solve(job).outlets[0].apron;
    EXPECT_NEAR(apron.length.feet(), 3.7233, 2e-3);
    EXPECT_TRUE(
        tells(job, Part::Outlets, 0, Caution, "", "stone apron 3.72 ft long, 0.99 ft to 3.48 ft wide"));
    // Small stone is washed away.
    job.outlets[0].apronStone = Length::inches(0.2);
    EXPECT_TRUE(tells(job, Part::Outlets, 0, No, "", "stone apron: stone is 0.2"));
    job.outlets[0].apronStone = Length::inches(6);
    job.nodes[2].kinds = nodeKinds("curb");
    job.runs[1].outletWater = Length::feet(95.9);
    EXPECT_TRUE(tells(job, Part::Outlets, 0, Check, "", "only on a bank or in a ditch"));
}

TEST(JudgeOutlets, DistancesThatAreGivenAreJudged) {
    Job job = drained();
    const auto check = [&](std::optional<Length> Outlet::*distance, double least, const char* rule) {
        job.outlets[0].*distance = Length::feet(least);
        EXPECT_TRUE(isOk(job, Part::Outlets, 0)) << rule;
        job.outlets[0].*distance = Length::feet(least + 0.01);
        EXPECT_TRUE(isOk(job, Part::Outlets, 0)) << rule;
        job.outlets[0].*distance = Length::feet(least - 0.01);
        EXPECT_TRUE(tells(job, Part::Outlets, 0, No, rule, "at least"));
        (job.outlets[0].*distance).reset();
    };
    check(&Outlet::lotLine, 10, "outlet.line.min");  // O'Fallon IL 13501
    check(&Outlet::walk, 10, "outlet.walk.min");     // O'Fallon IL 13501
    check(&Outlet::foundation, 5, "outlet.foundation.min");
}

TEST(JudgeOutlets, BlankDistancesAreToldWhereTheOutletAsksForThem) {
    Job job = drained();
    const auto asked = [&](const char* kind, const char* whose) {
        job.facts.outlet = whose;
        job.nodes[2].kinds = nodeKinds(kind);
        job.runs[1].outletWater = Length::feet(95.6);
        std::string rules;
        for (const Finding& finding : told(job, Part::Outlets, 0))
            if (finding.severity == NotJudged && findRule(finding.rule) != nullptr)
                rules += finding.rule + " ";
        return rules;
    };
    const std::string all = "outlet.line.min outlet.walk.min outlet.foundation.min ";
    EXPECT_EQ(asked("ditch", "own swale"), all);
    EXPECT_EQ(asked("ditch", "zanja propia"), all);
    EXPECT_EQ(asked("ditch", "a pond"), all);
    EXPECT_EQ(asked("ditch", "easement swale"), "outlet.walk.min outlet.foundation.min ");
    EXPECT_EQ(asked("ditch", "roadside ditch"), "");
    EXPECT_EQ(asked("bank", "roadside ditch"), all);
    for (const char* kind : {"tee", "riser", "pop-up"}) EXPECT_EQ(asked(kind, ""), all + "ground.away.min ");
    for (const char* kind : {"curb", "existing pipe"}) EXPECT_EQ(asked(kind, ""), "");
    // Where a pump's discharge ends.
    EXPECT_EQ(asked("pump basin", "own swale"), all);
    for (const char* whose :
         {"roadside ditch", "cuneta", "curb", "bordillo", "public inlet", "sumidero público"})
        EXPECT_EQ(asked("pump basin", whose), "") << whose;
    job.outlets[0].flowLine.reset();
    EXPECT_EQ(asked("ditch", "roadside ditch"), "outlet.above.min ");
    EXPECT_EQ(asked("bank", ""), all + "outlet.above.min ");
    EXPECT_EQ(asked("curb", ""), "outlet.above.min ");
    EXPECT_EQ(asked("existing pipe", ""), "outlet.above.min ");
    EXPECT_EQ(asked("pump basin", ""), all);
    EXPECT_EQ(asked("riser", ""), all + "ground.away.min ");
}

// A rule of 0 asks for nothing: what lies on the line itself is not under it.
TEST(JudgeOutlets, ARuleOfNothingIsMetByNothing) {
    Job job = drained();
    job.outlets[0].lotLine = Length();
    EXPECT_TRUE(tells(job, Part::Outlets, 0, No, "outlet.line.min", "outlet to the lot line"));
    job.rules.set("outlet.line.min", 0, UnitSystem::US);
    EXPECT_TRUE(isOk(job, Part::Outlets, 0));
}

TEST(JudgeOutlets, ASwaleBesideTheHouseFallsEnough) {
    // IRC 2006 R401.3: swales within 10 ft of the house fall 2 %.
    Job job = drained();
    job.outlets[0].foundation = Length::feet(10);
    EXPECT_TRUE(isOk(job, Part::Outlets, 0));
    job.outlets[0].slope = Slope::percent(1.99);
    EXPECT_TRUE(tells(job, Part::Outlets, 0, Check, "ground.away.min", "falls 1.99 %, at least 2 %"));
    job.outlets[0].foundation = Length::feet(10.01);
    EXPECT_TRUE(isOk(job, Part::Outlets, 0));
}

TEST(JudgeOutlets, WaterThatFallsFromAHangingPipeWantsStone) {
    Job job = smallJob();  // invert 96
    job.outlets[0].flowLine = Length::feet(94.5);
    EXPECT_TRUE(isOk(job, Part::Outlets, 0));
    job.outlets[0].flowLine = Length::feet(94.49);
    EXPECT_TRUE(tells(job, Part::Outlets, 0, Check, "outlet.above.max", "stone where the water lands"));
    job.outlets[0].apronStone = Length::inches(6);
    EXPECT_TRUE(isOk(job, Part::Outlets, 0));
    job.outlets[0].apronStone.reset();
    // Into an existing pipe it may fall.
    job.nodes[2].kinds = nodeKinds("existing pipe");
    job.runs[1].outletWater = Length::feet(95);
    EXPECT_TRUE(isOk(job, Part::Outlets, 0));
}

// Rim 98. The swale of drained(), from a flow line so high that it stands over the rim.
TEST(JudgeOutlets, ARimStandsOverItsSwale) {
    Job job = bubbling("riser");
    const Outlet swale = drained().outlets[0];
    Outlet& outlet = job.outlets[0];
    outlet.bottom = swale.bottom, outlet.sideSlope = swale.sideSlope, outlet.slope = swale.slope;
    outlet.roughness = swale.roughness, outlet.deep = Length::feet(5), outlet.otherFlow = Flow::gpm(2000);
    outlet.flowLine = Length::feet(90);
    const Length depth = *solve(job).outlets[0].depth, dry = *solve(job).outlets[0].head;
    outlet.flowLine = Length::feet(98) - depth;
    EXPECT_FALSE(tells(job, Part::Outlets, 0, Check, "", "the swale stands"));
    EXPECT_NEAR(solve(job).outlets[0].head->feet(), dry.feet(), 1e-9);
    outlet.flowLine = Length::feet(98.25) - depth;
    EXPECT_TRUE(tells(job, Part::Outlets, 0, Check, "", "the swale stands 0.25 ft over the rim"));
    EXPECT_GT(solve(job).outlets[0].head->feet(), 0.25);
    outlet.flowLine = Length::feet(98);
    EXPECT_FALSE(tells(job, Part::Outlets, 0, No, "outlet.above.min", ""));
    outlet.flowLine = Length::feet(98.1);
    EXPECT_TRUE(
        tells(job, Part::Outlets, 0, No, "outlet.above.min", "the rim lies 0.1 ft under the flow line"));
}

}  // namespace
}  // namespace trenchbook
