// What stands beside the trench: footings, trees, septic, wells; perforated pipe; cautions of the ground.
#include <gtest/gtest.h>

#include <numbers>

#include "jobs.h"
#include "judged.h"
#include "trenchbook/takeoff/takeoff.h"

namespace trenchbook {
namespace {

using enum Severity;

// B's trench bottom is 96.6 - 0.01 - 0.25 = 96.34. A footing whose bottom lies 2 ft below the ground of 99.5 has its
// bottom at 97.5, 1.16 ft higher: by the line of 45 degrees the trench keeps 1.16 ft away (UPC 314.1).
Job beside(double distance) {
    Job job = smallJob();
    job.nodes[1].toFooting = Length::feet(distance);
    job.nodes[1].footingDepth = Length::feet(2);
    return job;
}

TEST(JudgeNear, BesideAFooting) {
    EXPECT_TRUE(isOk(beside(1.16), Part::Nodes, 1));
    EXPECT_TRUE(isOk(beside(1.161), Part::Nodes, 1));
    EXPECT_TRUE(tells(beside(1.159), Part::Nodes, 1, No, "footing.clear.min",
                      "below the line 1:1 from the footing: an engineer's word is needed, who and when"));
    Job job = beside(0.16);
    EXPECT_TRUE(tells(job, Part::Nodes, 1, No, "footing.clear.min", "trench bottom 1 ft below the line"));
    job.nodes[1].engineer = "he said so";
    EXPECT_TRUE(tells(job, Part::Nodes, 1, No, "footing.clear.min", "an engineer's word"));
    job.nodes[1].engineer = "R. Poe, P.E., 2026-11-02";
    EXPECT_TRUE(
        tells(job, Part::Nodes, 1, Caution, "footing.clear.min", "engineer: R. Poe, P.E., 2026-11-02"));
    EXPECT_TRUE(isOk(job, Part::Nodes, 1));
    // A county that wants half a foot more.
    job = beside(1.5);
    job.rules.set("footing.clear.min", 0.5, UnitSystem::US);
    EXPECT_TRUE(tells(job, Part::Nodes, 1, No, "footing.clear.min", "0.34 ft, at least 0.5 ft"));
}

TEST(JudgeNear, AFootingIsAskedWhole) {
    Job job = beside(3);
    job.nodes[1].footingDepth.reset();
    EXPECT_TRUE(tells(job, Part::Nodes, 1, NotJudged, "", "Footing depth is missing"));
    job = beside(3);
    job.nodes[1].toFooting.reset();
    EXPECT_TRUE(tells(job, Part::Nodes, 1, NotJudged, "", "To footing is missing"));
    job = beside(3);
    job.runs[0].slope.reset();
    EXPECT_TRUE(tells(job, Part::Nodes, 1, NotJudged, "", "the trench beside the footing has no level yet"));
}

TEST(JudgeNear, TreesWantGluedPipe) {
    const auto planted = [](const char* pipe, double feet) {
        Job job = smallJob();
        job.runs[0].pipe = stockPipe(pipe);
        job.nodes[0].toTree = Length::feet(feet);
        return job;
    };
    EXPECT_TRUE(isOk(planted("4 SDR35", 2), Part::Nodes, 0));
    EXPECT_TRUE(isOk(planted("4 SCH40", 2), Part::Nodes, 0));
    EXPECT_TRUE(isOk(planted("4 DUALWALL", 10), Part::Nodes, 0));
    EXPECT_TRUE(
        tells(planted("4 DUALWALL", 9.99), Part::Nodes, 0, Check, "tree.roots", "9.99 ft from a tree"));
    EXPECT_TRUE(isOk(planted("4 D2729 PERF", 10), Part::Nodes, 0));
    EXPECT_TRUE(
        tells(planted("4 D2729 PERF", 9.99), Part::Nodes, 0, No, "tree.roots", "roots grow into its holes"));
}

TEST(JudgeNear, SepticAndWellAreAskedWhereThereIsOne) {
    Job job = smallJob();
    EXPECT_TRUE(isOk(job, Part::Nodes, 0));
    job.facts.septic = job.facts.well = Answer::Yes;
    EXPECT_TRUE(tells(job, Part::Nodes, 0, NotJudged, "", "To septic is missing: Job says there is one"));
    EXPECT_TRUE(tells(job, Part::Nodes, 0, NotJudged, "", "To well is missing: Job says there is one"));
    job.nodes[0].toSeptic = job.nodes[0].toWell = Length::feet(10);
    EXPECT_TRUE(isOk(job, Part::Nodes, 0));
    job.nodes[0].toSeptic = Length::feet(9.99);
    job.nodes[0].toWell = Length::feet(9.99);
    EXPECT_TRUE(tells(job, Part::Nodes, 0, Check, "line.septic.min", "to septic 9.99 ft, at least 10 ft"));
    EXPECT_TRUE(tells(job, Part::Nodes, 0, Check, "line.well.min", "to the well 9.99 ft, at least 10 ft"));
    job.facts.septic = job.facts.well = Answer::No;  // typed all the same: judged
    EXPECT_TRUE(tells(job, Part::Nodes, 0, Check, "line.well.min", "to the well"));
}

// B-Out of perforated pipe that carries the roof's water.
Job perforated(double percent = 0.5) {
    Job job = smallJob();
    job.rules.set("cleanout.spacing.4in", 100, UnitSystem::US);
    job.runs[1].pipe = stockPipe("4 perforated D2729");
    job.runs[1].slope = Slope::percent(percent);
    job.nodes[1].fromHouse = Length::feet(12);
    job.nodes[2].fromHouse = Length::feet(30);
    return job;
}

TEST(Perforated, MayLieFlatOrLevel) {
    EXPECT_TRUE(isOk(perforated(), Part::Runs, 1));
    EXPECT_TRUE(tells(perforated(), Part::Runs, 1, Caution, "",
                      "never for sanitary waste; its leakage is not counted"));
    EXPECT_TRUE(tells(perforated(0), Part::Runs, 1, Check, "slope.min.perforated",
                      "how much it carries is not judged"));
    EXPECT_FALSE(tells(perforated(0), Part::Runs, 1, No, "slope.min.perforated", ""));
    Job job = perforated(0.5);
    job.rules.set("slope.min.perforated", 0.005, UnitSystem::US);
    EXPECT_TRUE(isOk(job, Part::Runs, 1));
    job.runs[1].slope = Slope::percent(0.499);
    EXPECT_TRUE(tells(job, Part::Runs, 1, No, "slope.min.perforated", "too flat: 0.499%, at least 0.5%"));
    // Its capacity is that of the pipe.
    Job solid = perforated();
    solid.runs[1].pipe = stockPipe("4 D2729");
    EXPECT_EQ(solve(perforated()).runs[1].capacity->si(), solve(solid).runs[1].capacity->si());
}

TEST(Perforated, NotUnderWheelsNorWithRoofWaterByTheHouse) {
    Job job = perforated();
    job.runs[1].surfaceUp = CoverSurface::Drive;
    job.rules.set("wheels.d2729", 1, UnitSystem::US);
    EXPECT_TRUE(tells(job, Part::Runs, 1, No, "wheels.perforated", "is not for under wheels"));
    job.rules.set("wheels.perforated", 1, UnitSystem::US);
    EXPECT_FALSE(tells(job, Part::Runs, 1, No, "wheels.perforated", ""));
    job = perforated();
    job.nodes[1].fromHouse = Length::feet(10);
    EXPECT_TRUE(isOk(job, Part::Runs, 1));
    job.nodes[1].fromHouse = Length::feet(9.99);
    EXPECT_TRUE(
        tells(job, Part::Runs, 1, No, "perforated.foundation.min", "from the house 9.99 ft, at least 10 ft"));
    job.inlets.erase(job.inlets.begin());  // paving alone
    jobs::closeUnfed(job);
    EXPECT_TRUE(isOk(job, Part::Runs, 1));
    job = perforated();
    job.nodes[1].fromHouse.reset(), job.nodes[2].fromHouse.reset();
    EXPECT_TRUE(
        tells(job, Part::Runs, 1, NotJudged, "perforated.foundation.min", "From house is missing on Nodes"));
}

// 60 ft, trench 1 ft wide: rock 3 in under the pipe, beside its 4.215 in and 6 in over it, less the pipe.
TEST(Perforated, SockAndRockAreCounted) {
    TakeoffTerms terms;
    terms.sticks["PIPE-4SDR35"] = terms.sticks["PIPE-4D2729PERF"] = Length::feet(10);
    const Job job = perforated();
    const Takeoff takeoff = takeOff(job, solve(job), terms);
    const double outside = 4.215 / 12;
    const double rock = 60 * (0.25 + outside + 0.5) - std::numbers::pi / 4 * outside * outside * 60;
    EXPECT_NEAR(takeoff.runs[1].rock->cubicFeet(), rock, 1e-9);
    EXPECT_NEAR(takeoff.bulk.rock->cubicFeet(), rock, 1e-9);
    EXPECT_EQ(takeoff.runs[1].bedding->si(), 0);
    bool sock = false, pipe = false;
    for (const TakeoffLine& line : takeoff.lines) {
        sock = sock || (line.code == "SOCK-4" && std::abs(line.net->in(UnitSystem::US)-60) < 1e-9);
        pipe = pipe || (line.code == "PIPE-4D2729PERF" && std::abs(line.net->in(UnitSystem::US)-60) < 1e-9);
    }
    EXPECT_TRUE(sock);
    EXPECT_TRUE(pipe);
}

TEST(GroundCautions, OnlyWhereTheyMatter) {
    const auto said = [](const Job& job, const char* words) {
        return static_cast<bool>(tells(job, Part::Job, Finding::whole, Caution, anyRule, words));
    };
    Job job = smallJob();
    EXPECT_FALSE(said(job, "silica"));
    EXPECT_FALSE(said(job, "Do not dig out under"));
    job.runs[0].surfaceUp = CoverSurface::Walk;
    EXPECT_TRUE(said(job, "silica"));
    EXPECT_TRUE(said(job, "GFCI"));
    EXPECT_TRUE(said(job, "Do not dig out under"));
    job.runs[0].existing = true;
    EXPECT_FALSE(said(job, "silica"));

    job = smallJob();
    EXPECT_TRUE(said(job, "An empty basin floats"));
    job.nodes[1].kinds = nodeKinds("cleanout");
    EXPECT_FALSE(said(job, "An empty basin floats"));

    EXPECT_FALSE(said(smallJob(), "bonding wire"));
    job.facts.irrigation = Answer::Yes;
    EXPECT_TRUE(said(job, "bonding wire"));

    job.runs[1].outletWater = Length::feet(96);
    EXPECT_FALSE(said(job, "check valve"));
    job.runs[1].outletWater = Length::feet(96.001);
    EXPECT_TRUE(said(job, "check valve"));
}

// A's trench bottom is 97.14.
TEST(GroundCautions, BadAirWhereItCanBe) {
    const auto said = [](double cut, Answer septic, const char* what) {
        Job job = smallJob();
        job.nodes[0].ground = Length::feet(97.14 + cut);
        job.facts.septic = septic;
        job.crossings = {{.what = what, .from = "A", .to = "B", .blank = false}};
        return static_cast<bool>(tells(job, Part::Job, Finding::whole, Caution, "cut.air", "test the air"));
    };
    EXPECT_FALSE(said(4, Answer::Yes, "water"));
    EXPECT_TRUE(said(4.001, Answer::Yes, "water"));
    EXPECT_FALSE(said(4.001, Answer::No, "water"));
    EXPECT_TRUE(said(4.001, Answer::No, "gas"));
    EXPECT_TRUE(said(4.001, Answer::No, "sewer"));
}

TEST(GroundCautions, APrivateLineIsFoundByHand) {
    Job job = smallJob();
    job.crossings = {{.what = "irrigation",
                      .from = "A",
                      .to = "B",
                      .at = Length::feet(20),
                      .depth = Length::inches(8),
                      .diameter = Length::inches(1),
                      .passesAbove = true,
                      .marked = Marked::Private,
                      .blank = false}};
    EXPECT_TRUE(tells(job, Part::Crossings, 0, Caution, "", "private line: nobody marks it"));
    EXPECT_TRUE(isOk(job, Part::Crossings, 0));
}

}  // namespace
}  // namespace trenchbook
