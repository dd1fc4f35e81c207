// What is told of crossings: where they lie, how much room there is, and whether the ticket lets anybody dig.
#include <gtest/gtest.h>

#include "judged.h"

namespace trenchbook {
namespace {

using enum Severity;

// A 2 in line over run A-B, half way. There by hand: ground 99.75, our invert 97.0, our outside top
// 97.0 + (4.215 - 0.12) / 12 = 97.34125, our outside bottom 97.0 - 0.12 / 12 = 96.99.
// Passing above, clear = (99.75 - 97.34125) x 12 - depth - 2 = 26.905 in - depth.
Job crossed(double depthInches = 14) {
    Job job = smallJob();
    job.crossings = {{.what = "water",
                      .from = "A",
                      .to = "B",
                      .at = Length::feet(20),
                      .depth = Length::inches(depthInches),
                      .diameter = Length::inches(2),
                      .passesAbove = true,
                      .marked = Marked::Yes,
                      .ticket = "0001",
                      .blank = false}};
    return job;
}

TEST(JudgeCrossings, LevelsByHand) {
    const SolvedCrossing solved = solve(crossed()).crossings[0];
    EXPECT_EQ(solved.run, 0u);
    EXPECT_NEAR(solved.ground->feet(), 99.75, 1e-9);
    EXPECT_NEAR(solved.ourInvert->feet(), 97.0, 1e-9);
    EXPECT_NEAR(solved.ourTop->feet(), 97.34125, 1e-9);
    EXPECT_NEAR(solved.ourBottom->feet(), 96.99, 1e-9);
    EXPECT_NEAR(solved.itsTop->feet(), 99.75 - 14.0 / 12, 1e-9);
    EXPECT_NEAR(solved.itsBottom->feet(), 99.75 - 16.0 / 12, 1e-9);
    EXPECT_NEAR(solved.clearance->inches(), 12.905, 1e-9);
    EXPECT_NEAR(solved.handDig->inches(), 2 + 2 * 24, 1e-9);
    // Our outside stays a foot under its bottom.
    EXPECT_NEAR(solved.keptLevel->feet(), 99.75 - 16.0 / 12 - 1, 1e-9);
    EXPECT_TRUE(isOk(crossed(), Part::Crossings, 0));
}

TEST(JudgeCrossings, ClearanceAtItsLimit) {
    EXPECT_TRUE(isOk(crossed(14.905), Part::Crossings, 0));  // 12 in to the last place
    EXPECT_TRUE(isOk(crossed(14.904), Part::Crossings, 0));
    EXPECT_TRUE(
        tells(crossed(14.906), Part::Crossings, 0, No, "crossing.clearance",
              "clear distance 11.999 in, at least 12 in; our pipe's outside must stay below 97.34 ft"));
    EXPECT_TRUE(
        tells(crossed(26.904), Part::Crossings, 0, No, "crossing.clearance", "clear distance 0.001 in"));
    EXPECT_TRUE(
        tells(crossed(27.905), Part::Crossings, 0, No, "crossing.clearance", "they meet: short by 1 in"));
    const Finding finding = told(crossed(20.905), Part::Crossings, 0).front();
    EXPECT_NEAR(Length::fromSi(finding.measured->si).inches(), 6, 1e-9);
    EXPECT_NEAR(Length::fromSi(finding.allowed->si).inches(), 12, 1e-9);
}

TEST(JudgeCrossings, SprinklerLinesMayComeNearer) {
    Job job = crossed(23.905);  // 3 in clear
    EXPECT_TRUE(tells(job, Part::Crossings, 0, No, "crossing.clearance", "clear distance 3 in"));
    for (const char* word : {"irrigation", "Irrigation ", "riego"}) {
        job.crossings[0].what = word;
        EXPECT_TRUE(isOk(job, Part::Crossings, 0)) << word;
    }
    job.crossings[0].depth = Length::inches(23.906);
    EXPECT_TRUE(tells(job, Part::Crossings, 0, No, "crossing.clearance.irrigation", "at least 3 in"));
}

TEST(JudgeCrossings, PassingBelow) {
    // Clear = our bottom 96.99 - (99.75 - depth / 12) = depth - 33.12 in.
    Job job = crossed(45.12);
    job.crossings[0].passesAbove = false;
    EXPECT_TRUE(isOk(job, Part::Crossings, 0));
    job.crossings[0].depth = Length::inches(45.119);
    EXPECT_TRUE(tells(job, Part::Crossings, 0, No, "crossing.clearance", "must stay above 96.99 ft"));
    job.crossings[0].depth = Length::inches(32.12);
    EXPECT_TRUE(tells(job, Part::Crossings, 0, No, "crossing.clearance", "they meet: short by 1 in"));
}

TEST(JudgeCrossings, TheRunMustBeThere) {
    Job job = crossed();
    job.crossings[0].to = "Out";
    EXPECT_TRUE(tells(job, Part::Crossings, 0, No, "", "no run goes from A to Out on Runs"));
    EXPECT_FALSE(solve(job).crossings[0].clearance.has_value());
}

TEST(JudgeCrossings, PlaceAlongTheRun) {
    Job job = crossed(10);
    job.crossings[0].at = Length::feet(0);
    EXPECT_TRUE(isOk(job, Part::Crossings, 0));
    job.crossings[0].at = Length::feet(-0.01);
    EXPECT_TRUE(tells(job, Part::Crossings, 0, No, "", "At must be 0 or more"));
    job.crossings[0].at = Length::feet(40);
    EXPECT_TRUE(isOk(job, Part::Crossings, 0));
    job.crossings[0].at = Length::feet(40.01);
    EXPECT_TRUE(tells(job, Part::Crossings, 0, No, "", "At lies beyond the end of run A-B"));
    EXPECT_FALSE(solve(job).crossings[0].clearance.has_value());
    job.crossings[0].at.reset();
    EXPECT_TRUE(tells(job, Part::Crossings, 0, NotJudged, "", "At is missing: how far from A?"));
}

TEST(JudgeCrossings, WhatIsMissingIsNotJudged) {
    Job job = crossed();
    job.crossings[0].depth.reset();
    job.crossings[0].diameter.reset();
    job.crossings[0].passesAbove.reset();
    EXPECT_TRUE(tells(job, Part::Crossings, 0, NotJudged, "", "Its depth is missing: dig by hand"));
    EXPECT_TRUE(tells(job, Part::Crossings, 0, NotJudged, "", "Its diameter is missing"));
    EXPECT_TRUE(
        tells(job, Part::Crossings, 0, NotJudged, "", "Passes is missing: does it pass above or below?"));
    job = crossed();
    job.crossings[0].diameter = Length{};
    EXPECT_TRUE(tells(job, Part::Crossings, 0, No, "", "Its diameter must be above 0"));
    job = crossed();
    job.crossings[0].depth = Length::inches(-1);
    EXPECT_TRUE(tells(job, Part::Crossings, 0, No, "", "Its depth must be 0 or more"));
    job = crossed();
    job.runs[1].outletLevel.reset();
    EXPECT_TRUE(tells(job, Part::Crossings, 0, NotJudged, "", "run A-B has no levels here yet"));
    job = crossed();
    job.runs[0].pipe = bareBore(Length::inches(3.975));
    EXPECT_TRUE(tells(job, Part::Crossings, 0, NotJudged, "", "outside of a bare bore is not known"));
}

TEST(JudgeCrossings, ACellThatCannotBeUsedIsNotMissingToo) {
    Job job = crossed();
    job.crossings[0].at.reset();
    job.crossings[0].unusable = {{"At", "mid", {"At is \"mid\"", "At es \"mid\""}}};
    EXPECT_TRUE(tells(job, Part::Crossings, 0, No, "", "At is \"mid\""));
    EXPECT_FALSE(tells(job, Part::Crossings, 0, NotJudged, "", "At is missing"));
}

TEST(JudgeCrossings, Marks) {
    Job job = crossed();
    job.crossings[0].marked = Marked::No;
    EXPECT_TRUE(tells(job, Part::Crossings, 0, Check, "", "not marked yet"));
    job.crossings[0].marked = Marked::NotSaid;
    EXPECT_TRUE(tells(job, Part::Crossings, 0, Check, "", "not marked yet"));
    job.crossings[0].marked = Marked::Private;
    job.crossings[0].ticket = "";
    EXPECT_TRUE(isOk(job, Part::Crossings, 0));
    job.crossings[0].marked = Marked::Yes;
    EXPECT_TRUE(tells(job, Part::Crossings, 0, NotJudged, "", "Ticket is missing"));
}

// Today is Wednesday 2026-11-25.
TEST(JudgeCrossings, ATicketOfItsOwn) {
    Job job = crossed();
    Crossing& crossing = job.crossings[0];
    crossing.ticket = "0002";
    EXPECT_TRUE(tells(job, Part::Crossings, 0, NotJudged, "", "ticket 0002: its first and last day"));
    crossing.goodFrom = Date::of(2026, 11, 25);
    crossing.goodUntil = Date::of(2026, 11, 29);
    EXPECT_TRUE(isOk(job, Part::Crossings, 0));  // 4 days are left
    crossing.goodUntil = Date::of(2026, 11, 28);
    EXPECT_TRUE(tells(job, Part::Crossings, 0, Check, "ticket.warn", "ticket 0002 runs out on 2026-11-28"));
    crossing.goodUntil = Date::of(2026, 11, 25);
    EXPECT_TRUE(tells(job, Part::Crossings, 0, Check, "ticket.warn", "runs out on 2026-11-25"));
    crossing.goodFrom = Date::of(2026, 11, 20);
    crossing.goodUntil = Date::of(2026, 11, 24);
    EXPECT_TRUE(tells(job, Part::Crossings, 0, No, "", "ticket 0002 ran out on 2026-11-24"));
    crossing.goodFrom = Date::of(2026, 11, 26);
    crossing.goodUntil = Date::of(2026, 12, 10);
    EXPECT_TRUE(tells(job, Part::Crossings, 0, Check, "", "ticket 0002 is good from 2026-11-26"));
    crossing.goodUntil = Date::of(2026, 11, 25);
    EXPECT_TRUE(tells(job, Part::Crossings, 0, No, "", "ends before it begins"));
}

TEST(JudgeCrossings, WithoutTodayNoDayIsAssumed) {
    Job job = crossed();
    job.facts.today.reset();
    EXPECT_TRUE(tells(job, Part::Crossings, 0, NotJudged, "", "today's date is not known"));
}

}  // namespace
}  // namespace trenchbook
