// What is told of the pit. The limits themselves are tested with checkPit(), which this hands its facts to.
#include <gtest/gtest.h>

#include "jobs.h"
#include "judged.h"

namespace trenchbook {
namespace {

using enum Severity;
constexpr std::size_t whole = Finding::whole;

// 20 x 6 x 3 ft of rock with 0.4 voids hold 144 cu ft; at 0.5 in/hr the bottom alone takes
// 0.4 x 3 ft / (0.5 / 12 ft/h) = 28.8 h to empty.
Job withPit() {
    Job job = smallJob();
    job.nodes[2].kinds = {};
    job.nodes[2].kinds.add(NodeKind::Tee);
    job.outlets[0].openShare = 1;
    job.outlets[0].groundFalls = Slope::percent(2);
    job.pit = {.node = "Out",
               .length = Length::feet(20),
               .width = Length::feet(6),
               .rockDepth = Length::feet(3),
               .soilOver = Length::feet(0.5),
               .rate = SoilRate::inchesPerHour(0.5)};
    const auto fact = [&](const char* key, double value) { job.pit.facts.set(key, value, UnitSystem::US); };
    fact("high water", 9);
    fact("foundation", 15);
    fact("lot line", 12);
    fact("ground slope", 0.03);
    job.pit.facts.set("soil group", "B", UnitSystem::US);
    return job;
}

TEST(JudgePit, NumbersByHand) {
    const SolvedPit pit = solve(withPit()).pit;
    EXPECT_NEAR(pit.storage->cubicFeet(), 144, 1e-9);
    EXPECT_NEAR(pit.drains->hours(), 28.8, 1e-9);
    EXPECT_NEAR(pit.rock->cubicYards(), 360.0 / 27, 1e-9);
    EXPECT_NEAR(pit.areaTimesC->squareFeet(), 1300, 1e-9);
    EXPECT_NEAR(pit.flow->gpm(), 54.0260, 1e-4);
    EXPECT_NEAR(pit.held->inches(), 144.0 / 1300 * 12, 1e-9);
    // As a weir over the rim of the 4 in riser, and the turn upwards: judge_outlets_test.
    EXPECT_NEAR(pit.rimHead->feet(), 0.10646, 2e-4);
    EXPECT_NEAR(pit.bubbleLevel->feet(), 98 + 0.10646 + 1.8 * 0.03032, 3e-4);
    EXPECT_TRUE(isOk(withPit(), Part::Pit, whole));
}

TEST(JudgePit, AreaIsThatOfTheInletsWhateverTheRain) {
    Job job = withPit();
    job.facts.rain = RainRate::inchesPerHour(9);
    EXPECT_NEAR(solve(job).pit.areaTimesC->squareFeet(), 1300, 1e-9);
    job.facts.rain.reset();
    EXPECT_NEAR(solve(job).pit.areaTimesC->squareFeet(), 1300, 1e-9);
    EXPECT_FALSE(solve(job).pit.flow.has_value());
}

TEST(JudgePit, VoidsAndSideShareByTheRules) {
    Job job = withPit();
    job.rules.set("pit.voids", 0.3, UnitSystem::US);
    EXPECT_NEAR(solve(job).pit.storage->cubicFeet(), 108, 1e-9);
    job.pit.voids = 0.4;
    EXPECT_NEAR(solve(job).pit.storage->cubicFeet(), 144, 1e-9);
    job.rules.set("pit.sideshare", 0.5, UnitSystem::US);
    EXPECT_LT(solve(job).pit.drains->hours(), 28.8);
    job.pit.sideShare = 0;
    EXPECT_NEAR(solve(job).pit.drains->hours(), 28.8, 1e-9);
}

TEST(JudgePit, NoPitIsNotJudged) {
    Job job = withPit();
    job.pit.node = "";
    EXPECT_TRUE(told(job, Part::Pit, whole).empty());
}

TEST(JudgePit, NodeAndSizes) {
    Job job = withPit();
    job.pit.node = "P";
    EXPECT_TRUE(tells(job, Part::Pit, whole, No, "", "no node P on Nodes"));
    EXPECT_TRUE(tells(job, Part::Pit, whole, NotJudged, "", "area x C into P is not known"));
    job = withPit();
    job.pit.length.reset();
    job.pit.width.reset();
    job.pit.rockDepth.reset();
    for (const char* heading : {"Length", "Width", "Rock depth"})
        EXPECT_TRUE(tells(job, Part::Pit, whole, NotJudged, "", std::string(heading) + " is missing"));
    job = withPit();
    job.pit.voids = 40;
    EXPECT_TRUE(tells(job, Part::Pit, whole, No, "", "voids is 40"));
    EXPECT_FALSE(solve(job).pit.storage.has_value());
}

TEST(JudgePit, SoakTest) {
    Job job = withPit();
    job.pit.soakOpen = true;
    EXPECT_TRUE(tells(job, Part::Pit, whole, Check, "", "the soak test is not settled"));
    job.pit.soakRefused = true;
    EXPECT_TRUE(tells(job, Part::Pit, whole, No, "", "a soak reading is refused"));
    job.pit.rate.reset();
    EXPECT_TRUE(tells(job, Part::Pit, whole, NotJudged, "", "not known yet: the soil's design rate"));
    EXPECT_TRUE(tells(job, Part::Pit, whole, NotJudged, "", "not known yet: hours to empty"));
}

TEST(JudgePit, ReasonsNameTheirRuleAndTheirNumbers) {
    Job job = withPit();
    job.pit.rate = SoilRate::inchesPerHour(0.25);  // 57.6 h
    EXPECT_TRUE(tells(job, Part::Pit, whole, No, "pit.rate.min", "soil takes too little: 0.25 in/hr"));
    EXPECT_TRUE(tells(job, Part::Pit, whole, No, "pit.drain.max", "too long to empty: 57.6 h, at most 48 h"));
    for (const Finding& finding : told(job, Part::Pit, whole)) {
        if (finding.rule != "pit.drain.max") continue;
        EXPECT_NEAR(Duration::fromSi(finding.measured->si).hours(), 57.6, 1e-9);
        EXPECT_NEAR(Duration::fromSi(finding.allowed->si).hours(), 48, 1e-9);
    }
}

TEST(JudgePit, DepthIsRockAndTheSoilOverIt) {
    Job job = withPit();
    job.pit.soilOver = Length::feet(0.99);
    EXPECT_FALSE(tells(job, Part::Pit, whole, Caution, "cut.exit", "deep"));
    job.pit.soilOver = Length::feet(1);  // 29 CFR 1926.651(c)(2): 4 ft
    EXPECT_TRUE(tells(job, Part::Pit, whole, Caution, "cut.exit", "4 ft deep"));
    EXPECT_TRUE(isOk(job, Part::Pit, whole));  // a caution refuses nothing
    job.pit.soilOver = Length::feet(2);        // 29 CFR 1926.652(a)(1): 5 ft
    EXPECT_TRUE(tells(job, Part::Pit, whole, Caution, "cut.protect", "5 ft deep"));
}

TEST(JudgePit, WellAndSeptic) {
    Job job = withPit();
    job.facts.well = job.facts.septic = Answer::Yes;
    EXPECT_TRUE(tells(job, Part::Pit, whole, NotJudged, "pit.setback.well.min", "how far is the well?"));
    EXPECT_TRUE(tells(job, Part::Pit, whole, NotJudged, "pit.setback.septic.min", "how far is the septic"));
    job.pit.facts.set("well", 100, UnitSystem::US);
    job.pit.facts.set("septic", 35, UnitSystem::US);
    EXPECT_TRUE(isOk(job, Part::Pit, whole));
    job.pit.facts.set("well", 99.9, UnitSystem::US);
    EXPECT_TRUE(tells(job, Part::Pit, whole, No, "pit.setback.well.min", "too near a well"));
}

TEST(JudgePit, WaterMustCome) {
    Job job = withPit();
    job.inlets.clear();
    EXPECT_TRUE(tells(job, Part::Pit, whole, NotJudged, "", "area x C into Out is not known"));
    jobs::closeUnfed(job);
    EXPECT_TRUE(tells(job, Part::Pit, whole, NotJudged, "", "no roof or paving drains to Out yet"));
    job = withPit();
    job.inlets[0].roof.coefficient.reset();
    EXPECT_TRUE(tells(job, Part::Pit, whole, NotJudged, "", "area x C into Out is not known"));
}

// Ground 98: the bottom of 3 ft of rock under 0.5 ft of soil lies at 94.5.
TEST(JudgePit, ThePipeComesInOverTheBottom) {
    Job job = withPit();
    const auto under = [&](double invert) {
        job.runs[1].outletLevel = Length::feet(invert);
        return tells(job, Part::Pit, whole, No, "", "the pipe from B comes in");
    };
    EXPECT_FALSE(under(96));
    EXPECT_FALSE(under(94.5));
    EXPECT_TRUE(under(94.4));
    EXPECT_TRUE(tells(job, Part::Pit, whole, No, "", "0.1 ft under the pit's bottom"));
    // How deep the bottom lies is not known without the soil over it.
    job.pit.soilOver.reset();
    EXPECT_FALSE(under(94.4));
}

// 3 ft of rock under half a foot of soil: the hole is 3.5 ft deep.
TEST(JudgePit, AWalkThatIsNearerThanTheHoleIsDeepIsHeld) {
    const auto told = [](double feet) {
        Job job = withPit();
        job.drawn.pitNear.walk = Length::feet(feet);
        EXPECT_TRUE(isOk(job, Part::Pit, whole)) << "a caution refuses nothing";
        return tells(job, Part::Pit, whole, Caution, "dig.under", "29 CFR 1926.651(i)");
    };
    EXPECT_TRUE(told(3.49));
    EXPECT_FALSE(told(3.5));
    EXPECT_FALSE(told(3.51));
}

TEST(JudgePit, ATreeNearerThanItsRootsIsTold) {
    const auto told = [](double over) {
        Job job = withPit();
        job.drawn.pitNear.tree = job.rules.length("tree.roots") + Length::feet(over);
        return tells(job, Part::Pit, whole, Caution, "tree.roots", "a tree is");
    };
    EXPECT_TRUE(told(-0.01));
    EXPECT_FALSE(told(0));
    EXPECT_FALSE(told(0.01));
}

}  // namespace
}  // namespace trenchbook
