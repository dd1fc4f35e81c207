// Runs judged: each finding at its limit, just below and just above.
#include <gtest/gtest.h>

#include <functional>

#include "jobs.h"
#include "trenchbook/job/judge.h"

namespace trenchbook {
namespace {

using Change = std::function<void(Job&)>;

SolvedJob with(const Change& change) {
    Job job = jobs::sound();
    change(job);
    return solve(job);
}
std::string check(const Change& change, std::size_t row) {
    return jobs::check(with(change), Part::Runs, row);
}
bool speaks(const Change& change, std::size_t row, const char* rule, Severity severity) {
    const SolvedJob solved = with(change);
    const Finding* finding = jobs::ruled(solved, Part::Runs, row, rule);
    if (finding == nullptr) return false;
    EXPECT_EQ(finding->severity, severity) << finding->says.en;
    EXPECT_TRUE(finding->allowed) << rule;
    EXPECT_FALSE(finding->says.es.empty()) << rule;
    EXPECT_NE(finding->says.en, finding->says.es) << rule;
    return true;
}
Change slope(double percent) {
    return [=](Job& job) { job.runs[0].slope = Slope::percent(percent); };
}
// Ground over the upper end of run 0, so that cover or cut comes out as asked. Outside top: 4.215 - 0.12 in over the
// invert (ASTM D3034, 4 in SDR 35: outside 4.215 in, wall 0.120 in).
Change coverAt(double inches, CoverSurface surface) {
    return [=](Job& job) {
        job.runs[0].surfaceUp = surface;
        job.nodes[0].ground = Length::feet(97.2) + Length::inches(inches + 4.095);
    };
}
Change set(const char* key, double value) {
    return [=](Job& job) { job.rules.set(key, value, UnitSystem::US); };
}
Change both(Change first, Change second) {
    return [=](Job& job) { first(job), second(job); };
}

TEST(JudgeRun, SlopeAtLeastThatOfItsSize) {
    const double least = 100 * 0.125 / 12;
    const auto flat = [](const Change& change) { return speaks(change, 0, "slope.min.4in", Severity::No); };
    EXPECT_FALSE(flat(slope(least)));
    EXPECT_TRUE(flat(slope(least - 0.001)));
    EXPECT_FALSE(flat(both(slope(least - 0.001), set("slope.tolerance", 0.0001))));
    EXPECT_NE(check(slope(0.8), 0).find("too flat: 0.8%, at least 1.04% (1/8 in/ft) for 4 in pipe"),
              std::string::npos);
}

TEST(JudgeRun, FallInHandOverTheAsLaidTolerance) {
    // 40 ft: 0.02 ft over the least fall are 0.05 % more.
    const double least = 100 * 0.125 / 12;
    const auto tight = [](double percent) {
        return speaks(slope(percent), 0, "aslaid.tolerance", Severity::Caution);
    };
    EXPECT_FALSE(tight(least + 0.05));
    EXPECT_TRUE(tight(least + 0.0499));
    EXPECT_FALSE(tight(least - 0.01)) << "too flat already";
    // 0.4167 ft less 0.02 ft over 40 ft.
    EXPECT_NE(check(slope(least), 0).find("the slope may become 0.99%"), std::string::npos)
        << check(slope(least), 0);
    EXPECT_FALSE(
        speaks(both(slope(least), set("aslaid.tolerance", 0)), 0, "aslaid.tolerance", Severity::Caution));
}

TEST(JudgeRun, FallKeptAtASharpFitting) {
    // Run 1 leaves B; 0.05 ft are kept, its fall in hand is 40 ft x (slope - 1.0417 %).
    const auto kept = [](double percent, double turn) {
        return speaks(
            [=](Job& job) {
                job.rules.set("slope.spare", 0.05, UnitSystem::US);
                job.runs[1].slope = Slope::percent(percent);
                job.nodes[1].turn = Angle::degrees(turn);
            },
            1, "slope.spare", Severity::Check);
    };
    const double least = 100 * 0.125 / 12;
    EXPECT_FALSE(kept(least + 0.125, 90));
    EXPECT_TRUE(kept(least + 0.1249, 90));
    EXPECT_FALSE(kept(least + 0.1249, 67.5)) << "not sharp";
    EXPECT_TRUE(kept(least + 0.1249, 67.6));
}

TEST(JudgeRun, ShareOfTheFullPipe) {
    // Areas that bring 80 % and 100 % of what the pipe carries full.
    const double full = solve(jobs::sound()).runs[0].capacity->gpm();
    const auto roof = [=](double share) {
        return [=](Job& job) { job.inlets = {jobs::roof("A", share * full * 96.25 / (0.95 * 6))}; };
    };
    EXPECT_FALSE(speaks(roof(0.8), 0, "share.max", Severity::No));
    EXPECT_TRUE(speaks(roof(0.8001), 0, "share.max", Severity::No));
    EXPECT_NE(check(roof(0.9), 0).find("too full: 90% of the full pipe's flow, at most 80%"),
              std::string::npos);
    EXPECT_EQ(check(roof(1), 0).find("overloaded"), std::string::npos);
    EXPECT_NE(check(roof(1.001), 0).find("overloaded"), std::string::npos);
    // Flows in words: gpm to a tenth, liters a second to a hundredth; a gpm is 0.0630902 L/s.
    const std::string carried = plain(1.5 * full, 1) + " gpm",
                      litres = plain(1.5 * full * 0.0630902, 2) + " L/s";
    EXPECT_NE(check(roof(1.5), 0).find("overloaded: " + carried + " in a pipe"), std::string::npos);
    EXPECT_NE(check(both(roof(1.5), [](Job& job) { job.units = UnitSystem::Metric; }), 0)
                  .find("overloaded: " + litres + " in a pipe"),
              std::string::npos);
}

TEST(JudgeRun, Velocities) {
    const double full = solve(jobs::sound()).runs[0].velocityFull->feetPerSecond();
    const double flowing = solve(jobs::sound()).runs[0].velocity->feetPerSecond();
    EXPECT_FALSE(speaks(set("velocity.min", full), 0, "velocity.min", Severity::No));
    EXPECT_TRUE(speaks(set("velocity.min", full + 0.001), 0, "velocity.min", Severity::No));
    EXPECT_FALSE(speaks(set("velocity.max", flowing), 0, "velocity.max", Severity::No));
    EXPECT_TRUE(speaks(set("velocity.max", flowing - 0.001), 0, "velocity.max", Severity::No));
}

TEST(JudgeRun, CoverBySurfaceAtBothEnds) {
    const auto shallow = [](double inches, CoverSurface surface, const char* rule) {
        return speaks(coverAt(inches, surface), 0, rule, Severity::No);
    };
    const struct {
        CoverSurface surface;
        double inches;
        const char* rule;
    } limits[] = {{CoverSurface::Lawn, 12, "cover.lawn"},   {CoverSurface::LawnEnd, 8, "cover.end"},
                  {CoverSurface::Bed, 10, "cover.bed"},     {CoverSurface::Walk, 12, "cover.walk"},
                  {CoverSurface::Drive, 24, "cover.drive"}, {CoverSurface::Street, 36, "cover.street"}};
    for (const auto& limit : limits) {
        EXPECT_FALSE(shallow(limit.inches, limit.surface, limit.rule)) << limit.rule;
        EXPECT_TRUE(shallow(limit.inches - 0.01, limit.surface, limit.rule)) << limit.rule;
    }
    // Daylight exempts 3 ft: there, of 40 ft to B's 17.505 in, the cover is c + 0.075 (17.505 - c).
    const double least = (8 - 0.075 * 17.505) / 0.925;
    EXPECT_FALSE(shallow(least + 1e-6, CoverSurface::Daylight, "cover.end"));
    EXPECT_TRUE(shallow(least - 0.01, CoverSurface::Daylight, "cover.end"));
    const auto lower = [](double inches) {
        return speaks(
            [=](Job& job) { job.nodes[1].ground = Length::feet(96.6) + Length::inches(inches + 4.095); }, 0,
            "cover.lawn", Severity::No);
    };
    EXPECT_FALSE(lower(12));
    EXPECT_TRUE(lower(11.99));
}

TEST(JudgeRun, ThinPipeUnderWheels) {
    const Change thin =
        both(coverAt(40, CoverSurface::Drive), [](Job& job) { job.runs[0].pipe = stockPipe("4 D2729"); });
    EXPECT_TRUE(speaks(thin, 0, "wheels.d2729", Severity::No));
    EXPECT_FALSE(speaks(both(thin, set("wheels.d2729", 1)), 0, "wheels.d2729", Severity::No));
    EXPECT_FALSE(speaks(both(thin, [](Job& job) { job.runs[0].surfaceUp = CoverSurface::Lawn; }), 0,
                        "wheels.d2729", Severity::No));
}

TEST(JudgeRun, CutsByTheirDepth) {
    // Ground to trench bottom: cover, 4.215 in outside, 3 in of bedding.
    const auto cut = [](double feet) { return coverAt(12 * feet - 7.215, CoverSurface::Lawn); };
    EXPECT_FALSE(speaks(cut(3.999), 0, "cut.exit", Severity::Caution));
    EXPECT_TRUE(speaks(cut(4), 0, "cut.exit", Severity::Caution));
    EXPECT_TRUE(speaks(cut(4.999), 0, "cut.exit", Severity::Caution));
    EXPECT_TRUE(speaks(cut(5), 0, "cut.protect", Severity::No));
    EXPECT_FALSE(speaks(cut(5), 0, "cut.exit", Severity::Caution));
    EXPECT_TRUE(speaks(cut(19.999), 0, "cut.protect", Severity::No));
    EXPECT_TRUE(speaks(cut(20), 0, "cut.engineer", Severity::No));
    EXPECT_TRUE(speaks(both(cut(4), set("cut.protect", 4)), 0, "cut.protect", Severity::No));
}

TEST(JudgeRun, LongestRun) {
    const auto feet = [](double length) {
        return [=](Job& job) { job.runs[0].length = Length::feet(length); };
    };
    EXPECT_FALSE(speaks(feet(300), 0, "length.max", Severity::No));
    EXPECT_TRUE(speaks(feet(300.01), 0, "length.max", Severity::No));
}

TEST(JudgeRun, CleanoutSpacing) {
    const auto first = [](double feet, const char* pipe = "4 SDR35") {
        return [=](Job& job) {
            job.runs[0].length = Length::feet(feet);
            job.runs[0].pipe = job.runs[1].pipe = stockPipe(pipe);
        };
    };
    EXPECT_FALSE(speaks(first(50), 0, "cleanout.spacing.4in", Severity::Check));
    EXPECT_TRUE(speaks(first(50.1), 0, "cleanout.spacing.4in", Severity::Check));
    EXPECT_FALSE(speaks(first(100, "6 SDR35"), 0, "cleanout.spacing.6in", Severity::Check));
    EXPECT_TRUE(speaks(first(100.1, "6 SDR35"), 0, "cleanout.spacing.6in", Severity::Check));
    // Through a bend: told where it is passed, and not again below.
    const Change bend = [](Job& job) { job.nodes[1] = jobs::node("B", "bend", 98.4); };
    EXPECT_TRUE(speaks(bend, 1, "cleanout.spacing.4in", Severity::Check));
    EXPECT_FALSE(speaks(both(bend, first(60)), 1, "cleanout.spacing.4in", Severity::Check));
    EXPECT_NE(check(bend, 1).find("80 ft of pipe since the last cleanout, rule asks one every 50 ft"),
              std::string::npos);
    const Change head = both(bend, [](Job& job) { job.nodes[0] = jobs::node("A", "downspout", 99); });
    EXPECT_NE(check(head, 1).find("the head of the line, which has no cleanout"), std::string::npos);
    // 80 ft of 6 in pipe pass; the 4 in run below them does not, though no limit was passed above it.
    const Change mixed = both(bend, [](Job& job) {
        job.runs[0].length = Length::feet(80);
        job.runs[0].pipe = stockPipe("6 SDR35");
    });
    EXPECT_FALSE(speaks(mixed, 0, "cleanout.spacing.6in", Severity::Check));
    EXPECT_TRUE(speaks(mixed, 1, "cleanout.spacing.4in", Severity::Check));
}

TEST(JudgeRun, TurnsSinceTheLastCleanout) {
    const auto turning = [](double degrees) {
        return [=](Job& job) {
            job.nodes[1] = jobs::node("B", "bend", 98.4);
            job.nodes[1].turn = Angle::degrees(degrees);
        };
    };
    EXPECT_FALSE(speaks(turning(135), 1, "cleanout.turn", Severity::Check));
    EXPECT_TRUE(speaks(turning(135.1), 1, "cleanout.turn", Severity::Check));
}

TEST(JudgeRun, ABankBetweenTwoShots) {
    const std::string words = "between two shots: shoot the break";
    const auto told = [&](double feet, double fall, UnitSystem units = UnitSystem::US) {
        return check(
                   [=](Job& job) {
                       job.units = units;
                       const auto length = [&](double value) {
                           return units == UnitSystem::US ? Length::feet(value) : Length::metres(value);
                       };
                       job.runs[0].length = length(feet);
                       job.nodes[0].ground = *job.nodes[1].ground + length(fall);
                   },
                   0)
                   .find(words) != std::string::npos;
    };
    // More than 4 ft within less than 20 ft; more than 4 % over more than 25 ft.
    EXPECT_FALSE(told(19, 4));
    EXPECT_TRUE(told(19, 4.01));
    EXPECT_FALSE(told(20, 4.01));
    EXPECT_TRUE(told(19, -4.01)) << "uphill too";
    EXPECT_FALSE(told(26, 1.04));
    EXPECT_TRUE(told(26, 1.05));
    EXPECT_FALSE(told(25, 1.05));
    EXPECT_TRUE(told(5.9, 1.21, UnitSystem::Metric));
    EXPECT_FALSE(told(5.9, 1.2, UnitSystem::Metric));
    EXPECT_FALSE(told(6, 1.21, UnitSystem::Metric));
    // One shot alone tells nothing about the ground between.
    for (const std::size_t missing : {0u, 1u})
        EXPECT_EQ(check([=](Job& job) { job.nodes[missing].ground.reset(); }, 0).find(words),
                  std::string::npos);
}

TEST(JudgeRun, ComesInLowerThanTheRunThatLeaves) {
    const auto fixed = [](double level) {
        return check([=](Job& job) { job.runs[0].fixedDown = Length::feet(level); }, 0)
                   .find("lower than the run that leaves B") != std::string::npos;
    };
    EXPECT_FALSE(fixed(96.6));
    EXPECT_FALSE(fixed(96.5996));
    EXPECT_TRUE(fixed(96.599));
}

TEST(JudgeRun, PipeMayNotGetSmallerDownstream) {
    EXPECT_NE(check([](Job& job) { job.runs[0].pipe = stockPipe("6 SDR35"); }, 1)
                  .find("NO: pipe gets smaller downstream: row 1 (A-B) is larger"),
              std::string::npos);
}

// What is missing is not judged; what is wrong is NO; neither is ever OK.
TEST(JudgeRun, MissingAndWrongInputs) {
    const auto is = [](const Change& change, std::size_t row, const std::string& said) {
        EXPECT_NE(check(change, row).find(said), std::string::npos)
            << check(change, row) << "\n  wanted " << said;
    };
    is([](Job& job) { job.runs[0].length.reset(); }, 0, "NOT JUDGED: Length is missing");
    is([](Job& job) { job.runs[0].pipe.reset(); }, 0, "NOT JUDGED: Pipe is missing");
    is([](Job& job) { job.runs[0].slope.reset(); }, 0, "NOT JUDGED: Slope is missing");
    is([](Job& job) { job.runs[0].surfaceUp.reset(); }, 0, "NOT JUDGED: Surface up is missing");
    is([](Job& job) { job.runs[0].surfaceDown.reset(); }, 0, "NOT JUDGED: Surface down is missing");
    is([](Job& job) { job.runs[1].outletLevel.reset(); }, 1,
       "NOT JUDGED: Outlet level is missing: no row goes on from here");
    is([](Job& job) { job.runs[1].outletLevel.reset(); }, 0,
       "NOT JUDGED: no invert: waiting on row 2 (B-Out)");
    is([](Job& job) { job.nodes[0].ground.reset(); }, 0, "NOT JUDGED: no ground level for A on Nodes");
    is([](Job& job) { job.runs[0].from = "Ax"; }, 0, "NO: no node Ax on Nodes");
    is([](Job& job) { job.runs[0].from = job.runs[0].to = ""; }, 0, "NOT JUDGED: From and To are missing");
    is([](Job& job) { job.runs[0].to = ""; }, 0, "NOT JUDGED: nowhere to go: the lower node is missing");
    is([](Job& job) { job.runs[0].from = ""; }, 0, "NOT JUDGED: comes from nowhere");
    is([](Job& job) { job.runs[0].to = "A"; }, 0, "NO: joins itself");
    is([](Job& job) { job.runs[1].to = "A"; }, 0, "NO: loop");
    is([](Job& job) { job.runs[1].from = "A"; }, 1, "NO: two ways out: row 1 (A-B)");
    is([](Job& job) { job.runs[1].length.reset(); }, 0, "NOT JUDGED: waiting on row 2 (B-Out)");
    is([](Job& job) { job.facts.rain.reset(); }, 0,
       "NOT JUDGED: no flow: an inlet upstream has a fault or no row (see Water)");
    is(
        [](Job& job) {
            job.runs[0].length.reset();
            job.runs[0].unusable = {jobs::unusable("Length", "12 ff")};
        },
        0, "NO: Length is \"12 ff\"");
    const std::string once = check(
        [](Job& job) {
            job.runs[0].length.reset();
            job.runs[0].unusable = {jobs::unusable("Length", "12 ff")};
        },
        0);
    EXPECT_EQ(once.find("missing"), std::string::npos) << once;
    is([](Job& job) { job.runs[0].slope = Slope::percent(0); }, 0, "NO: no fall");
}

TEST(JudgeRun, AllOfARowsFindingsAreTold) {
    const SolvedJob solved = with(both(coverAt(5, CoverSurface::Lawn), slope(0.5)));
    EXPECT_NE(jobs::ruled(solved, Part::Runs, 0, "slope.min.4in"), nullptr);
    EXPECT_NE(jobs::ruled(solved, Part::Runs, 0, "cover.lawn"), nullptr);
    EXPECT_NE(jobs::ruled(solved, Part::Runs, 0, "velocity.min"), nullptr);
}

TEST(JudgeRun, ABareBoreIsNeverOk) {
    const SolvedJob solved = with([](Job& job) { job.runs[0].pipe = bareBore(Length::inches(3.975)); });
    EXPECT_EQ(verdict(solved.of(Part::Runs, 0)), Severity::NotJudged);
    EXPECT_FALSE(solved.runs[0].coverUp || solved.runs[0].cutDown);
    EXPECT_TRUE(solved.runs[0].capacity);
    EXPECT_NE(jobs::check(solved, Part::Runs, 0).find("cover and cut: a bare bore has no outside"),
              std::string::npos);
}

TEST(JudgeRun, BlankRowsAreNotJudged) {
    Job job = jobs::sound();
    job.runs.emplace(job.runs.begin());
    const SolvedJob solved = solve(job);
    EXPECT_TRUE(solved.of(Part::Runs, 0).empty());
    EXPECT_TRUE(solved.of(Part::Runs, 1).empty());
    EXPECT_TRUE(solved.runs[1].water);
}

TEST(JudgeRun, MetricJobsAreToldInMetric) {
    const std::string said =
        check(both(coverAt(5, CoverSurface::Lawn), [](Job& job) { job.units = UnitSystem::Metric; }), 0);
    EXPECT_NE(said.find("shallow at the upper end: 127 mm under lawn, at least 304.8 mm"), std::string::npos)
        << said;
}

TEST(JudgeRun, CorrugatedPipeIsToldOf) {
    const auto of = [](const char* pipe) {
        return check([=](Job& job) { job.runs[0].pipe = stockPipe(pipe); }, 0).find("sags hold water");
    };
    EXPECT_NE(of("4 CORRUGATED"), std::string::npos);
    EXPECT_NE(of("4 CORRUGATED PERF"), std::string::npos);
    EXPECT_EQ(of("4 DUALWALL"), std::string::npos);
    EXPECT_EQ(of("4 SDR35"), std::string::npos);
}

}  // namespace
}  // namespace trenchbook
