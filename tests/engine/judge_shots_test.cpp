// Ground between the nodes: cover and cut under each shot, told there and at its run, and the last feet in daylight.
#include <gtest/gtest.h>

#include "judged.h"
#include "trenchbook/job/judge_run.h"
#include "trenchbook/takeoff/takeoff.h"

namespace trenchbook {
namespace {

using enum Severity;

// A shot half way along A-B, where the invert lies at 97.0: outside top 97.34125 (judged.h), trench bottom 96.74 with
// 3 in of bedding.
Job shotAt(double ground, double feet = 20) {
    Job job = smallJob();
    job.shots = {
        {.from = "A", .to = "b ", .at = Length::feet(feet), .ground = Length::feet(ground), .blank = false}};
    return job;
}

TEST(JudgeShots, LevelsByHand) {
    const SolvedJob solved = solve(shotAt(99));
    const SolvedShot& shot = solved.shots[0];
    EXPECT_EQ(shot.run, 0u);
    EXPECT_NEAR(shot.invert->feet(), 97.0, 1e-9);
    EXPECT_NEAR(shot.cover->feet(), 99 - 97.34125, 1e-9);
    EXPECT_NEAR(shot.cut->feet(), 99 - 96.74, 1e-9);
    EXPECT_NEAR(shot.coverAsked->inches(), 12, 1e-9);
    EXPECT_EQ(shot.surface, CoverSurface::Lawn);
    const trenchbook::Run run = shotAt(99).runs[0];
    // Straight from A 100 over the shot 99 to B 99.5.
    for (const auto& [at, ground] :
         {std::pair{0.0, 100.0}, {10.0, 99.5}, {20.0, 99.0}, {30.0, 99.25}, {40.0, 99.5}})
        EXPECT_NEAR(groundOver(run, solved.runs[0], Length::feet(at))->feet(), ground, 1e-9) << at;
    EXPECT_FALSE(groundOver(run, solved.runs[0], Length::feet(40.001)));
    EXPECT_FALSE(groundOver(run, solved.runs[0], Length::feet(-0.001)));
    EXPECT_TRUE(isOk(shotAt(99), Part::Ground, 0));
}

TEST(JudgeShots, CoverAtItsLimit) {
    const double limit = 97.34125 + 1;
    EXPECT_TRUE(isOk(shotAt(limit), Part::Ground, 0));
    EXPECT_TRUE(isOk(shotAt(limit), Part::Runs, 0));
    EXPECT_TRUE(isOk(shotAt(limit + 0.001), Part::Ground, 0));
    const Job shallow = shotAt(limit - 0.001);
    EXPECT_TRUE(tells(shallow, Part::Ground, 0, No, "cover.lawn",
                      "shallow here: 11.99 in under lawn, at least 12 in"));
    EXPECT_TRUE(
        tells(shallow, Part::Runs, 0, No, "cover.lawn", "shallow 20 ft below A: 11.99 in under lawn"));
    // What is said to lie over it counts before the nearer end's.
    Job drive = shotAt(limit);
    drive.shots[0].surface = CoverSurface::Drive;
    EXPECT_TRUE(tells(drive, Part::Ground, 0, No, "cover.drive", "12 in under drive, at least 24 in"));
}

TEST(JudgeShots, TheNearerEndTellsWhatLiesOverIt) {
    Job job = shotAt(99, 19.9);
    job.runs[0].surfaceDown = CoverSurface::Street;
    EXPECT_EQ(solve(job).shots[0].surface, CoverSurface::Lawn);
    job.shots[0].at = Length::feet(20.1);
    EXPECT_EQ(solve(job).shots[0].surface, CoverSurface::Street);
    // Daylight is the last 3 ft; before them it is the end of a lawn, whatever is typed.
    job.runs[0].surfaceDown = CoverSurface::Daylight;
    EXPECT_EQ(solve(job).shots[0].surface, CoverSurface::LawnEnd);
    job.shots[0].surface = CoverSurface::Daylight;
    EXPECT_EQ(solve(job).shots[0].surface, CoverSurface::LawnEnd);
    job.shots[0].at = Length::feet(37);
    EXPECT_EQ(solve(job).shots[0].surface, CoverSurface::LawnEnd);
    job.shots[0].at = Length::feet(37.01);
    EXPECT_EQ(solve(job).shots[0].surface, CoverSurface::Daylight);
    EXPECT_FALSE(solve(job).shots[0].coverAsked);
}

TEST(JudgeShots, CutBetweenTheEnds) {
    EXPECT_FALSE(tells(shotAt(96.74 + 3.999), Part::Ground, 0, Caution, "cut.exit", "cut"));
    EXPECT_TRUE(tells(shotAt(96.74 + 4), Part::Ground, 0, Caution, "cut.exit", "cut 4 ft"));
    EXPECT_TRUE(tells(shotAt(96.74 + 5), Part::Ground, 0, No, "cut.protect", "cut 5 ft"));
    EXPECT_TRUE(tells(shotAt(96.74 + 5), Part::Runs, 0, No, "cut.protect", "cut 5 ft"));
}

TEST(JudgeShots, WhatIsMissingIsAsked) {
    Job job = shotAt(99);
    job.shots[0].to = "Out";
    EXPECT_TRUE(tells(job, Part::Ground, 0, No, "", "no run goes from A to Out on Runs"));
    job = shotAt(99, 40.01);
    EXPECT_TRUE(tells(job, Part::Ground, 0, No, "", "At lies beyond the end of run A-b"));
    job = shotAt(99);
    job.shots[0].at.reset();
    EXPECT_TRUE(tells(job, Part::Ground, 0, NotJudged, "", "At is missing: how far from A?"));
    job = shotAt(99);
    job.shots[0].ground.reset();
    EXPECT_TRUE(
        tells(job, Part::Ground, 0, NotJudged, "", "no level: name a shot of Levels, or type Ground"));
    job.shots[0].shot = "dip";
    EXPECT_TRUE(tells(job, Part::Ground, 0, NotJudged, "", "no level: shoot dip on Levels, or type Ground"));
    job = shotAt(99);
    job.runs[0].slope.reset();
    EXPECT_TRUE(tells(job, Part::Ground, 0, NotJudged, "", "cover is not judged"));
}

// A dip of 1 ft half way: cuts of A 100 - 97.14, the shot 98.6 - 96.74, B 99.5 - 96.34; average end areas, 1 ft wide.
TEST(JudgeShots, DiggingFollowsTheGroundAndNothingIsBought) {
    TakeoffTerms terms;
    terms.sticks["PIPE-4SDR35"] = Length::feet(10);
    const Job with = shotAt(98.6), without = smallJob();
    const Takeoff dip = takeOff(with, solve(with), terms), straight = takeOff(without, solve(without), terms);
    EXPECT_NEAR(dip.runs[0].bank->cubicFeet(), 20 * (2.86 + 1.86) / 2 + 20 * (1.86 + 3.16) / 2, 1e-9);
    EXPECT_NEAR(straight.runs[0].bank->cubicFeet(), 40 * (2.86 + 3.16) / 2, 1e-9);
    ASSERT_EQ(dip.lines.size(), straight.lines.size());
    for (std::size_t i = 0; i < dip.lines.size(); ++i) {
        EXPECT_EQ(dip.lines[i].code, straight.lines[i].code);
        EXPECT_EQ(dip.lines[i].net->in(UnitSystem::US), straight.lines[i].net->in(UnitSystem::US))
            << dip.lines[i].code;
    }
}

TEST(JudgeShots, LawnGoesHalfWithEachPoint) {
    TakeoffTerms terms;
    terms.sticks["PIPE-4SDR35"] = Length::feet(10);
    Job job = shotAt(99, 10);
    job.shots[0].surface = CoverSurface::Walk;
    // 10 ft between lawn and walk, 30 ft between walk and lawn: half of both.
    EXPECT_NEAR(takeOff(job, solve(job), terms).runs[0].lawn->squareFeet(), 20, 1e-9);
}

// B-Out ends in daylight: 3 ft before it the invert is 96.03, ground there g + 0.05 (99.5 - g).
TEST(JudgeShots, DaylightExemptsTheLastFeetAlone) {
    const double least = 96.03 + 0.34125 + 8.0 / 12, limit = (least - 0.05 * 99.5) / 0.95;
    Job job = smallJob();
    job.nodes[2].ground = Length::feet(limit + 1e-6);
    EXPECT_NEAR(solve(job).runs[1].coverNearDown->inches(), 8, 1e-4);
    EXPECT_FALSE(tells(job, Part::Runs, 1, No, "cover.end", "shallow"));
    job.nodes[2].ground = Length::feet(limit + 0.01);
    EXPECT_FALSE(tells(job, Part::Runs, 1, No, "cover.end", "shallow"));
    job.nodes[2].ground = Length::feet(limit - 0.01);
    EXPECT_TRUE(tells(job, Part::Runs, 1, No, "cover.end",
                      "shallow 3 ft from Out in daylight: 7.9 in under end of lawn"));
    // No curb leaves room for 8 in: the city says which pipe lies behind it.
    Job curb = job;
    curb.nodes[2].kinds = nodeKinds("curb");
    EXPECT_TRUE(tells(curb, Part::Runs, 1, Check, "cover.end", "lay the pipe of the city's curb detail"));
    EXPECT_FALSE(tells(curb, Part::Runs, 1, No, "cover.end", "shallow"));
    // A shot there that is higher.
    job.shots = {
        {.from = "B", .to = "Out", .at = Length::feet(57), .ground = Length::feet(98), .blank = false}};
    EXPECT_FALSE(tells(job, Part::Runs, 1, No, "cover.end", "shallow"));
    job.shots.clear();
    job.rules.set("cover.daylight.within", 0, UnitSystem::US);
    EXPECT_TRUE(tells(job, Part::Runs, 1, No, "cover.end", "shallow 0 ft from Out"));
}

// 45 ft that end under 3.7 in of soil, 12 in at the head: 3.7 + 8.3 x 3 / 45 = 4.25 in where it must be 8.
TEST(JudgeShots, ALongPipeUnderALittleSoilIsNotOk) {
    RunFacts facts{.length = Length::feet(45),
                   .slope = Slope::percent(2),
                   .pipe = stockPipe("4 SDR35"),
                   .flow = Flow::gpm(40),
                   .coverUp = Length::inches(12),
                   .coverDown = Length::inches(3.7),
                   .surfaceDown = CoverSurface::Daylight};
    EXPECT_EQ(checkRun(facts, Ruleset(), UnitSystem::US).en,
              "shallow 3 ft from the lower end in daylight: 4.3 in under end of lawn, at least 8 in");
    facts.coverDown = Length::inches(8);
    EXPECT_EQ(checkRun(facts, Ruleset(), UnitSystem::US).en, "OK");
    facts.length = Length::feet(3);
    facts.coverDown = Length::inches(0);
    EXPECT_EQ(checkRun(facts, Ruleset(), UnitSystem::US).en, "OK");
}

}  // namespace
}  // namespace trenchbook
