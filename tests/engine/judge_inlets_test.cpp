// What is told of inlets: where their water goes, what they bring, what takes it in.
#include <gtest/gtest.h>

#include "judged.h"
#include "trenchbook/job/read.h"

namespace trenchbook {
namespace {

using enum Severity;

Unusable bad(const char* heading, const char* typed) {
    return {heading,
            typed,
            {std::string(heading) + " is \"" + typed + "\"", std::string(heading) + " es \"" + typed + "\""}};
}

TEST(JudgeInlets, FlowIsTheRationalMethod) {
    // 1000 sq ft x 0.9 x 4 in/hr / 96.25 = 37.40 gpm; 500 x 0.8 x 4 / 96.25 = 16.62 gpm.
    const SolvedJob solved = solve(smallJob());
    EXPECT_NEAR(solved.inlets[0].areaTimesC->squareFeet(), 900, 1e-9);
    EXPECT_NEAR(solved.inlets[0].flow->gpm(), 37.4026, 1e-4);
    EXPECT_NEAR(solved.inlets[1].flow->gpm(), 16.6234, 1e-4);
    EXPECT_TRUE(isOk(smallJob(), Part::Water, 0));
}

TEST(JudgeInlets, ThreeSurfacesAddUp) {
    Job job = smallJob();
    job.inlets[0].paved = {Area::squareFeet(200), 0.5};
    job.inlets[0].yard = {Area::squareFeet(1000), 0.1};
    // 900 + 100 + 100
    EXPECT_NEAR(solve(job).inlets[0].areaTimesC->squareFeet(), 1100, 1e-9);
}

TEST(JudgeInlets, WaterMustGoSomewhere) {
    Job job = smallJob();
    job.inlets[0].node = "";
    EXPECT_TRUE(tells(job, Part::Water, 0, NotJudged, "", "Node is missing"));
    job.inlets[0].node = "Z";
    EXPECT_TRUE(tells(job, Part::Water, 0, No, "", "no node Z on Nodes"));
    job.inlets[0].node = "Out";
    EXPECT_TRUE(tells(job, Part::Water, 0, No, "", "no run leaves node Out"));
    job.inlets[0].node = " a ";  // names are matched as people type them
    EXPECT_TRUE(isOk(job, Part::Water, 0));
}

TEST(JudgeInlets, ANodeThatTakesNoWaterIsLookedAt) {
    Job job = smallJob();
    job.nodes[0].kinds = {};
    job.nodes[0].kinds.add(NodeKind::Bend);
    EXPECT_TRUE(tells(job, Part::Water, 0, Check, "", "node A is a bend: no water enters there"));
    job.nodes[0].kinds.add(NodeKind::Downspout);  // both at once
    EXPECT_TRUE(isOk(job, Part::Water, 0));
}

TEST(JudgeInlets, WithoutAreaNothingIsJudged) {
    Job job = smallJob();
    job.inlets[0].roof = {};
    EXPECT_TRUE(tells(job, Part::Water, 0, NotJudged, "", "no area drains here"));
    EXPECT_FALSE(solve(job).inlets[0].flow.has_value());
}

TEST(JudgeInlets, AreaAndCoefficientAreBlamedEachForItsOwn) {
    Job job = smallJob();
    job.inlets[0].roof.coefficient.reset();
    EXPECT_TRUE(tells(job, Part::Water, 0, NotJudged, "", "Roof C is missing"));
    job.inlets[0].roof.coefficient = 95;
    EXPECT_TRUE(tells(job, Part::Water, 0, No, "",
                      "Roof C is 95; allowed: from 0 to 1. If 95 percent is meant, write 0.95."));
    for (const Finding& finding : told(job, Part::Water, 0))
        EXPECT_EQ(finding.says.en.find("area"), std::string::npos) << finding.says.en;
    job.inlets[0].roof.coefficient = 0;
    EXPECT_TRUE(tells(job, Part::Water, 0, No, "", "Roof C is 0"));
    job.inlets[0].roof.coefficient = 1;
    EXPECT_TRUE(isOk(job, Part::Water, 0));
    job.inlets[0].roof.area = Area{};
    EXPECT_TRUE(tells(job, Part::Water, 0, No, "", "Roof area must be above 0"));
    job.inlets[0].roof.area = Area::squareFeet(1e-3);
    EXPECT_TRUE(isOk(job, Part::Water, 0));
}

TEST(JudgeInlets, APercentTypedForACoefficientIsAskedBack) {
    JobTables tables;
    tables.water = Grid{2, 4, {"Inlet", "Node", "Roof area", "Roof C", "North", "A", 1000.0, 95.0}};
    Job job = smallJob();
    job.inlets = readJob(tables, UnitSystem::US).inlets;
    EXPECT_TRUE(tells(job, Part::Water, 0, No, "", "0.95"));
    for (const Finding& finding : told(job, Part::Water, 0)) {
        EXPECT_EQ(finding.severity == No, finding.says.en.find("Roof C") != std::string::npos)
            << finding.says.en;
        EXPECT_EQ(finding.says.en.find("area"), std::string::npos) << finding.says.en;
    }
}

TEST(JudgeInlets, ACellThatCannotBeUsedIsToldOnce) {
    Job job = smallJob();
    job.inlets[0].roof.area.reset();
    job.inlets[0].unusable = {bad("Roof area", "12oo")};
    EXPECT_TRUE(tells(job, Part::Water, 0, No, "", "Roof area is \"12oo\""));
    EXPECT_FALSE(tells(job, Part::Water, 0, NotJudged, "", "no area"));
    EXPECT_FALSE(solve(job).inlets[0].flow.has_value());
    // A second, sound part does not stand for both.
    job.inlets[0].paved = {Area::squareFeet(100), 0.9};
    EXPECT_FALSE(solve(job).inlets[0].flow.has_value());
}

TEST(JudgeInlets, RainIsMissing) {
    Job job = smallJob();
    job.facts.rain.reset();
    EXPECT_TRUE(tells(job, Part::Water, 0, NotJudged, "", "the rain on Job is missing"));
    EXPECT_TRUE(solve(job).inlets[0].areaTimesC.has_value());
    EXPECT_FALSE(solve(job).inlets[0].flow.has_value());
}

TEST(JudgeInlets, MinutesAreAskedOnlyForPeakFlows) {
    Job job = smallJob();
    job.facts.duration.reset();
    EXPECT_TRUE(isOk(job, Part::Water, 0));
    job.peak = PeakAsked{.rain = RainTable::parse(",10\n5-min,0.5\n60-min,2", Length::inches(1))};
    EXPECT_TRUE(tells(job, Part::Water, 0, NotJudged, "", "Minutes is missing"));
    job.inlets[0].time = Duration::minutes(7);
    EXPECT_TRUE(isOk(job, Part::Water, 0));
}

TEST(JudgeInlets, OneInletAtTwoNodesIsCountedTwice) {
    Job job = smallJob();
    job.inlets[1].name = "north";
    EXPECT_TRUE(tells(job, Part::Water, 0, No, "", "North also brings its water to node B"));
    EXPECT_TRUE(tells(job, Part::Water, 1, No, "", "north also brings its water to node A"));
    job.inlets[1].node = "A";
    EXPECT_TRUE(tells(job, Part::Water, 1, Check, "", "the name north stands 2 times"));
    job.inlets[0].name = job.inlets[1].name = "";  // rows without a name are not the same inlet
    EXPECT_TRUE(isOk(job, Part::Water, 1));
}

TEST(JudgeInlets, EntersBy) {
    Job job = smallJob();
    EXPECT_TRUE(tells(job, Part::Water, 0, Caution, "", "not compared"));
    job.inlets[0].unusable = {bad("Enters by", "gutter")};
    EXPECT_TRUE(tells(job, Part::Water, 0, No, "", "Enters by is \"gutter\""));
    EXPECT_FALSE(tells(job, Part::Water, 0, Caution, "", "not compared"));
    job.inlets[0].unusable.clear();
    job.inlets[0].entersBy = EntersBy::Downspout;
    EXPECT_TRUE(tells(job, Part::Water, 0, NotJudged, "", "Size of the downspout is missing"));
    job.inlets[0].size = "wide";
    EXPECT_TRUE(tells(job, Part::Water, 0, No, "", "downspout: size is \"wide\""));
}

// Rain that brings `share` of a flow to the inlet of 900 sq ft of area x C.
RainRate rainFor(Flow flow, double share) {
    return RainRate::fromSi(flow.si() * share / Area::squareFeet(900).si());
}

// share.max 0.8 of what it takes is fine, more is looked at, more than all of it is refused.
void limitsOf(Job job, Flow takes, const std::string& name) {
    job.facts.rain = rainFor(takes, 0.8);
    EXPECT_TRUE(isOk(job, Part::Water, 0)) << name;
    job.facts.rain = rainFor(takes, 0.801);
    EXPECT_TRUE(tells(job, Part::Water, 0, Check, "share.max", name + " takes"));
    job.facts.rain = rainFor(takes, 0.999);
    EXPECT_TRUE(tells(job, Part::Water, 0, Check, "share.max", name + " takes"));
    job.facts.rain = rainFor(takes, 1.001);
    EXPECT_TRUE(tells(job, Part::Water, 0, No, "share.max", name + " takes"));
}

TEST(JudgeInlets, ADownspoutTakesWhatThePlumbingCodesPrint) {
    Job job = smallJob();
    job.inlets[0].entersBy = EntersBy::Downspout;
    job.inlets[0].size = "3x4";
    // National Standard Plumbing Code (2006), table 13.6.1: a 3 in leader takes 67 gpm (printed without decimals).
    const Flow takes = *solve(job).inlets[0].inletTakes;
    EXPECT_NEAR(takes.gpm(), 67, 0.5);
    limitsOf(job, takes, "downspout");
}

TEST(JudgeInlets, AGrateTakesLessWhereItIsBlocked) {
    Job job = smallJob();
    job.inlets[0].entersBy = EntersBy::Grate;
    job.inlets[0].size = "12 x 12";
    EXPECT_TRUE(tells(job, Part::Water, 0, NotJudged, "", "grate: Open share is missing"));
    job.inlets[0].openShare = 0.4;
    EXPECT_TRUE(tells(job, Part::Water, 0, NotJudged, "", "grate: Ponding is missing"));
    job.inlets[0].ponding = Length::inches(1);
    // Texas DOT: weir Q = 3.0 P h^1.5 with P = 4 ft x 0.5 free, h = 1/12 ft: 0.14434 cfs = 64.78 gpm; the orifice
    // 0.67 x (1 sq ft x 0.4 x 0.5) x sqrt(2 x 32.174 x 1/12) = 0.3103 cfs takes more.
    const Flow takes = *solve(job).inlets[0].inletTakes;
    EXPECT_NEAR(takes.gpm(), 64.78, 0.02);
    limitsOf(job, takes, "grate");
    job.rules.set("grate.blocked", 0, UnitSystem::US);
    EXPECT_NEAR(*solve(job).inlets[0].inletTakes / takes, 2, 1e-9);
}

TEST(JudgeInlets, ARoundGrateHasOneSize) {
    Job job = smallJob();
    job.inlets[0].entersBy = EntersBy::Grate;
    job.inlets[0].size = "9\"";
    job.inlets[0].openShare = 0.4;
    job.inlets[0].ponding = Length::inches(1);
    // Edge pi x 0.75 ft x 0.5 = 1.1781 ft: 3.0 x 1.1781 x 0.024056 = 0.085021 cfs = 38.16 gpm.
    EXPECT_NEAR(solve(job).inlets[0].inletTakes->gpm(), 38.16, 0.02);
}

TEST(JudgeInlets, ATrenchDrainIsAskedForItsLengthAndDepth) {
    Job job = smallJob();
    job.inlets[0].entersBy = EntersBy::TrenchDrain;
    job.inlets[0].size = "4x4";
    EXPECT_TRUE(tells(job, Part::Water, 0, NotJudged, "", "trench drain: Length is missing"));
    job.inlets[0].length = Length::feet(20);
    limitsOf(job, *solve(job).inlets[0].inletTakes, "trench drain");
    job.inlets[0].size = "4";
    EXPECT_TRUE(tells(job, Part::Water, 0, No, "", "width x depth"));
    job.inlets[0].size = "4x4x4";
    EXPECT_TRUE(tells(job, Part::Water, 0, No, "", "Size is \"4x4x4\""));
}

TEST(JudgeInlets, TheOutletPipeIsJudgedBesideTheGrate) {
    Job job = smallJob();
    job.inlets[0].outletPipe = stockPipe("4 SDR35");
    EXPECT_TRUE(tells(job, Part::Water, 0, NotJudged, "", "outlet pipe: Outlet head is missing"));
    job.inlets[0].outletHead = Length::inches(8);
    const SolvedInlet solved = solve(job).inlets[0];
    EXPECT_EQ(solved.takes(), solved.outletTakes);
    limitsOf(job, *solved.outletTakes, "outlet pipe");
    // Both too small: both are told.
    job.inlets[0].entersBy = EntersBy::Downspout;
    job.inlets[0].size = "2";
    job.facts.rain = RainRate::inchesPerHour(40);
    EXPECT_TRUE(tells(job, Part::Water, 0, No, "share.max", "outlet pipe takes"));
    EXPECT_TRUE(tells(job, Part::Water, 0, No, "share.max", "downspout takes"));
    EXPECT_EQ(solve(job).inlets[0].takes(), solve(job).inlets[0].inletTakes);
}

TEST(JudgeInlets, SizesOfAMetricJobAreInMillimetres) {
    Job job = smallJob();
    job.units = UnitSystem::Metric;
    job.inlets[0].entersBy = EntersBy::Downspout;
    job.inlets[0].size = "76.2";
    EXPECT_NEAR(solve(job).inlets[0].inletTakes->gpm(), 67, 0.5);
    job.facts.rain = RainRate::millimetresPerHour(1000);
    EXPECT_TRUE(tells(job, Part::Water, 0, No, "share.max", "L/s arrive"));
}

TEST(JudgeInlets, BlankRowsAreNotJudged) {
    Job job = smallJob();
    job.inlets.push_back({});
    EXPECT_TRUE(told(job, Part::Water, 2).empty());
}

// Basin B: its grate is the ground, 99.5, over invert 96.6: 34.8 in.
TEST(JudgeInlets, AHeadIsNoHigherThanTheGrate) {
    Job job = smallJob();
    job.inlets[1].outletPipe = stockPipe("4 SDR35");
    const auto over = [&](double inches) {
        job.inlets[1].outletHead = Length::inches(inches);
        return tells(job, Part::Water, 1, Check, "",
                     "the grate lies only 34.8 in over the pipe that leaves B");
    };
    EXPECT_FALSE(over(34.8));
    EXPECT_TRUE(over(34.9));
    // A downspout has no grate.
    job.inlets[1].node = "A";
    EXPECT_FALSE(over(60));
}

// The C of a lawn typed for a roof lets every pipe pass.
TEST(JudgeInlets, ARoofShedsMostOfTheRain) {
    Job job = smallJob();
    job.inlets[0].roof.coefficient = 0.75;
    EXPECT_TRUE(isOk(job, Part::Water, 0));
    job.inlets[0].roof.coefficient = 0.749;
    EXPECT_TRUE(tells(job, Part::Water, 0, Check, "runoff.roof.min", "Roof C"));
    // Paving and lawns shed what they do.
    job.inlets[0].paved = job.inlets[0].roof;
    job.inlets[0].roof = {};
    EXPECT_TRUE(isOk(job, Part::Water, 0));
}

}  // namespace
}  // namespace trenchbook
