// The certificate of the reason: the sum along the way really exceeds what there is, and exactly the missing
// feet at one of the two places cure it.
#include <gtest/gtest.h>

#include "grade_jobs.h"

namespace trenchbook {
namespace {

using gradetest::described;
using gradetest::RandomJobs;
using gradetest::Rules;
using Rule = GradeLimit::Rule;

GradeNames numbered(const GradeJob& job) {
    GradeNames names;
    for (std::size_t i = 0; i < job.runs.size(); ++i) {
        names.from.push_back("N" + std::to_string(i + 1));
        names.to.push_back(job.runs[i].below ? "N" + std::to_string(*job.runs[i].below + 1) : "Out");
    }
    return names;
}

// What a limit says, worked out again: the level of the invert, in feet, before it is rounded to the grid.
double level(const Rules& rules, const GradeLimit& limit) {
    const GradeRun& run = rules.job.runs[limit.run];
    const double ground = (limit.upperEnd ? run.groundUp : run.groundDown).feet();
    const double bedding = rules.wall(limit.pipe) + rules.job.bedding.feet();
    switch (limit.rule) {
        case Rule::Cover: {
            const double cover = (limit.upperEnd ? *run.coverUp : *run.coverDown).feet();
            return ground - cover - rules.job.pipes[limit.pipe].extraCover.feet() - rules.top(limit.pipe);
        }
        case Rule::Ground:
            return ground + bedding;
        case Rule::DeepestCut:
            return ground + bedding - rules.job.deepestCut.feet();
        case Rule::OutletLowest:
            return run.outletLowest->feet();
        case Rule::OutletHighest:
            return run.outletHighest->feet();
        case Rule::Fixed:
            return (limit.upperEnd ? *run.fixedUp : *run.fixedDown).feet();
        case Rule::CrossingBelow:
            return run.crossings[limit.crossing].level.feet() - rules.top(limit.pipe);
        default:
            return run.crossings[limit.crossing].level.feet() + rules.wall(limit.pipe);
    }
}

bool atCrossing(const GradeLimit& limit) {
    return limit.rule == Rule::CrossingBelow || limit.rule == Rule::CrossingAbove;
}

// The least fall along the way with its pipes, each run and each join rounded up to the grid. Only where both
// places are ends of runs and no invert off the grid lies between.
double leastFall(const Rules& rules, const GradeReason& reason) {
    const GradeJob& job = rules.job;
    const double grid = job.grid.feet();
    double fall = 0;
    for (std::size_t i = 0; i < reason.path.size(); ++i) {
        const std::size_t run = reason.path[i];
        const double needed = rules.slopeNeeded(run, reason.pathPipes[i]) * job.runs[run].length.feet();
        fall += std::ceil(needed / grid - 1e-6) * grid;
    }
    // The joins between the higher and the lower place: pipes from above to below.
    std::vector<std::pair<std::size_t, std::size_t>> joins;
    for (std::size_t i = 0; i + 1 < reason.path.size(); ++i)
        joins.emplace_back(reason.pathPipes[i], reason.pathPipes[i + 1]);
    if (!reason.path.empty()) {
        if (!reason.high.upperEnd) joins.emplace_back(reason.high.pipe, reason.pathPipes.front());
        if (reason.low.upperEnd) joins.emplace_back(reason.pathPipes.back(), reason.low.pipe);
    } else if (reason.high.run != reason.low.run) {
        joins.emplace_back(reason.high.pipe, reason.low.pipe);
    }
    for (const auto& [above, below] : joins) {
        const double crown = job.join == Join::Crown ? rules.bore(below) - rules.bore(above) : 0;
        fall += std::ceil(std::max(crown, 0.0) / grid - 1e-6) * grid;
    }
    return fall;
}

// The least nominal size that a run can have, for what it and the runs upstream list.
double leastNominal(const Rules& rules, std::size_t index) {
    double needed = 0;
    for (std::size_t above = 0; above < rules.job.runs.size(); ++above)
        if (rules.job.runs[above].below == index) needed = std::max(needed, leastNominal(rules, above));
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t pipe : rules.job.runs[index].pipes)
        if (rules.nominal(pipe) >= needed) least = std::min(least, rules.nominal(pipe));
    return least;
}

bool offGrid(const GradeJob& job) {
    for (const GradeRun& run : job.runs)
        for (const std::optional<Length>& fixed : {run.fixedUp, run.fixedDown})
            if (fixed && std::fabs(*fixed / job.grid - std::round(*fixed / job.grid)) > 1e-6) return true;
    return false;
}

// Asks more (or, negative, less) of the rule at the lower place.
void raiseLow(GradeJob& job, const GradeLimit& low, Length by) {
    GradeRun& run = job.runs[low.run];
    switch (low.rule) {
        case Rule::OutletLowest:
            *run.outletLowest += by;
            break;
        case Rule::DeepestCut:
            job.deepestCut += -by;
            break;
        case Rule::CrossingAbove:
            run.crossings[low.crossing].level += by;
            break;
        default:
            *(low.upperEnd ? run.fixedUp : run.fixedDown) += by;
    }
}

void apply(GradeJob& job, const GradeReason& reason, const GradeCure& cure, Length by) {
    using Kind = GradeCure::Kind;
    GradeRun& run = job.runs[cure.run];
    switch (cure.kind) {
        case Kind::LessCover:
            *(reason.high.upperEnd ? run.coverUp : run.coverDown) += -by;
            break;
        case Kind::HigherOutlet:
            *run.outletHighest += by;
            break;
        case Kind::MoveFixedUp:
            *(reason.high.upperEnd ? run.fixedUp : run.fixedDown) += by;
            break;
        case Kind::MoveCrossingUp:
            run.crossings[reason.high.crossing].level += by;
            break;
        case Kind::ShorterRun:
            run.length += -by;
            break;
        case Kind::OtherPipe:
            for (std::optional<std::size_t> i = cure.run; i; i = job.runs[*i].below)
                job.runs[*i].pipes.push_back(cure.pipe);
            break;
        default:
            raiseLow(job, reason.low, -by);
    }
}

// 100 ft at 1 % or more, from 98.00, set by hand, to an outlet at 96.50 or above: 1.50 ft are there, 1.00 are needed.
TEST(GradeReason, AnInvertSetByHandIsNotWeighedAgainstItself) {
    GradeJob job;
    job.pipes = {{.pipe = stockPipe("4 SDR35"), .price = PricePerLength(), .leastSlope = Slope::percent(1)}};
    job.runs = {{.length = Length::feet(100),
                 .groundUp = Length::feet(101),
                 .groundDown = Length::feet(101),
                 .pipes = {0},
                 .coverUp = Length::feet(1),
                 .fixedUp = Length::feet(98),
                 .outletLowest = Length::feet(96.5)}};
    const GradeReason reason = planGrade(job).reason;
    EXPECT_EQ(reason.kind, GradeReason::Kind::Fits);
    EXPECT_EQ(reason.high.rule, Rule::Fixed);
    EXPECT_EQ(reason.low.rule, Rule::OutletLowest);
    EXPECT_NEAR(reason.spare().feet(), 0.5, 1e-9);
}

// Two branches of one length and pipe rise into ground where the deepest cut ends both of them alike: the first of the
// two in the job is named, the other is counted.
TEST(GradeReason, OfTwoThatMissAlikeTheFirstIsNamed) {
    GradeJob job;
    job.pipes = {{.pipe = stockPipe("4 SDR35"), .price = PricePerLength(), .leastSlope = Slope::percent(1)}};
    job.deepestCut = Length::feet(3);
    const GradeRun branch{.below = 0,
                          .length = Length::feet(50),
                          .groundUp = Length::feet(97),
                          .groundDown = Length::feet(100),
                          .pipes = {0},
                          .coverUp = Length::feet(1)};
    GradeRun outlet = branch;
    outlet.below.reset();
    outlet.groundUp = outlet.groundDown = Length::feet(97);
    outlet.coverUp.reset();
    outlet.outletLowest = Length::feet(90);
    job.runs = {outlet, branch, branch};
    const GradePlan plan = planGrade(job);
    const std::string said = gradeText(job, plan, numbered(job)).en;
    ASSERT_EQ(plan.reason.kind, GradeReason::Kind::ShortOfFall) << said;
    EXPECT_EQ(plan.reason.low.rule, Rule::DeepestCut) << said;
    EXPECT_EQ(plan.reason.low.run, 1U) << said;
    EXPECT_EQ(plan.reason.otherConflicts, 1U) << said;
}

// Levels that a rule keeps the invert below are "at most", those that it keeps it above "at least", and one set by hand is
// neither.
TEST(GradeReason, EveryFurtherLimitSaysItsSide) {
    GradeJob job;
    job.pipes = {{.pipe = stockPipe("4 SDR35"), .price = PricePerLength(), .leastSlope = Slope::percent(1)}};
    job.runs = {{.length = Length::feet(100),
                 .groundUp = Length::feet(101),
                 .groundDown = Length::feet(101),
                 .pipes = {0},
                 .coverUp = Length::feet(1),
                 .crossings = {{.fromUpperEnd = Length::feet(20), .level = Length::feet(99)}},
                 .outletLowest = Length::feet(96.5)}};
    const struct {
        Rule rule;
        const char *en, *es;
    } cases[] = {{Rule::Cover, "invert at most 98.00 ft", "fondo del tubo a lo más 98.00 ft"},
                 {Rule::Ground, "invert at most 98.00 ft", "fondo del tubo a lo más 98.00 ft"},
                 {Rule::OutletHighest, "invert at most 98.00 ft", "fondo del tubo a lo más 98.00 ft"},
                 {Rule::CrossingBelow, "invert at most 98.00 ft", "fondo del tubo a lo más 98.00 ft"},
                 {Rule::DeepestCut, "invert at least 98.00 ft", "fondo del tubo al menos 98.00 ft"},
                 {Rule::OutletLowest, "invert at least 98.00 ft", "fondo del tubo al menos 98.00 ft"},
                 {Rule::CrossingAbove, "invert at least 98.00 ft", "fondo del tubo al menos 98.00 ft"},
                 {Rule::Fixed, ": invert 98.00 ft", ": fondo del tubo 98.00 ft"}};
    for (const auto& one : cases) {
        GradePlan plan = planGrade(job);
        const std::string before = gradeText(job, plan, numbered(job)).en;
        plan.reason.also = {{.rule = one.rule, .level = Length::feet(98)}};
        const Text said = gradeText(job, plan, numbered(job));
        EXPECT_EQ(before.find(one.en), std::string::npos) << before;
        EXPECT_NE(said.en.find(one.en), std::string::npos) << said.en;
        EXPECT_NE(said.es.find(one.es), std::string::npos) << said.es;
    }
}

TEST(GradeReason, TheSumAlongTheWayExceedsWhatThereIs) {
    RandomJobs random(20260103);
    int conflicts = 0;
    int plainSums = 0;
    for (int trial = 0; trial < 3000; ++trial) {
        const GradeJob job = random.job(1 + random.upTo(8), random.chance(0.5) ? 0.05 : 0.01, 3);
        const GradePlan plan = planGrade(job);
        const GradeReason& reason = plan.reason;
        const Rules rules{job};
        const std::string said = "trial " + std::to_string(trial) + "\n" + described(job) + "\n" +
                                 gradeText(job, plan, numbered(job)).en;
        if (reason.kind == GradeReason::Kind::Shrinks) {
            const double least = leastNominal(rules, reason.high.run);
            ASSERT_EQ(least, rules.nominal(reason.high.pipe)) << said;
            for (std::size_t pipe : job.runs[reason.low.run].pipes)
                ASSERT_LT(rules.nominal(pipe), least) << said;
            std::optional<std::size_t> run = reason.high.run;
            while (run && *run != reason.low.run) run = job.runs[*run].below;
            ASSERT_TRUE(run) << "the smaller run does not lie below\n" << said;
            continue;
        }
        ASSERT_EQ(reason.kind == GradeReason::Kind::Fits, plan.fits) << said;
        const double grid = job.grid.feet();
        for (const GradeLimit* limit : {&reason.high, &reason.low})
            ASSERT_NEAR(limit->level.feet(), level(rules, *limit), grid * (1 + 1e-6)) << said;
        ASSERT_NEAR(reason.available.feet(), (reason.high.level - reason.low.level).feet(), 1e-9) << said;
        // The way is one way down, from the run of the higher place to that of the lower one.
        for (std::size_t i = 0; i + 1 < reason.path.size(); ++i)
            ASSERT_EQ(job.runs[reason.path[i]].below, reason.path[i + 1]) << said;
        if (plan.fits) {
            ASSERT_GE(reason.spare().feet(), -1e-9) << said;
        } else {
            ++conflicts;
            ASSERT_GE(reason.missing().feet(), grid * (1 - 1e-6)) << said;
        }
        if (atCrossing(reason.high) || atCrossing(reason.low) || !reason.also.empty() || offGrid(job))
            continue;
        // Nothing but a sum: this proves it without any search.
        ++plainSums;
        ASSERT_NEAR(reason.needed.feet(), leastFall(rules, reason), 1e-6) << said;
    }
    EXPECT_GT(conflicts, 500);
    EXPECT_GT(plainSums, 1000);
}

TEST(GradeReason, EachCureIsEnoughAndLessIsNot) {
    RandomJobs random(20260104);
    int tried = 0;
    int byTheMissingFeet = 0;
    for (int trial = 0; trial < 1500; ++trial) {
        const GradeJob job = random.job(1 + random.upTo(5), 0.02, 3);
        const GradePlan plan = planGrade(job);
        if (plan.fits) continue;
        for (const GradeCure& cure : plan.reason.cures) {
            ++tried;
            const std::string said = "trial " + std::to_string(trial) + ", cure " +
                                     std::to_string(static_cast<int>(cure.kind)) + " by " +
                                     std::to_string(cure.amount.feet()) + "\n" + described(job) + "\n" +
                                     gradeText(job, plan, numbered(job)).en;
            GradeJob cured = job;
            apply(cured, plan.reason, cure, cure.amount);
            ASSERT_TRUE(gradeFits(cured)) << said;
            ASSERT_EQ(Rules{cured}.broken(planGrade(cured)), "") << said;
            if (cure.kind == GradeCure::Kind::OtherPipe) {
                if (plan.reason.kind == GradeReason::Kind::Shrinks) continue;
                GradeJob higher = cured;
                raiseLow(higher, plan.reason.low, cure.amount);
                ASSERT_TRUE(gradeFits(higher)) << said;
                raiseLow(higher, plan.reason.low, job.grid);
                ASSERT_FALSE(gradeFits(higher)) << said;
                continue;
            }
            GradeJob less = job;
            apply(less, plan.reason, cure, cure.amount - job.grid);
            ASSERT_FALSE(gradeFits(less)) << said;
            if (std::fabs((cure.amount - plan.reason.missing()).feet()) < 1e-9) ++byTheMissingFeet;
        }
    }
    EXPECT_GT(tried, 500);
    EXPECT_GT(byTheMissingFeet, 300);
}

// With one place short of fall, lifting the higher or lowering the lower one by the missing feet is a cure.
TEST(GradeReason, TheMissingFeetAtEitherPlaceCureALine) {
    RandomJobs random(20260105);
    int seen = 0;
    for (int trial = 0; trial < 1500; ++trial) {
        GradeJob job = random.job(1 + random.upTo(5), 0.01, 3);
        job.deepestCut = Length::feet(30);
        for (GradeRun& run : job.runs) {
            run.pipes.resize(1);
            run.pipes[0] = 0;
            run.crossings.clear();
            run.fixedUp = run.fixedDown = std::nullopt;
        }
        const GradePlan plan = planGrade(job);
        if (plan.fits || plan.reason.otherConflicts > 0 || plan.reason.low.rule != Rule::OutletLowest)
            continue;
        ++seen;
        const std::string said = "trial " + std::to_string(trial) + "\n" + described(job) + "\n" +
                                 gradeText(job, plan, numbered(job)).en;
        GradeJob lower = job;
        raiseLow(lower, plan.reason.low, -plan.reason.missing());
        ASSERT_TRUE(gradeFits(lower)) << said;
        raiseLow(lower, plan.reason.low, job.grid);
        ASSERT_FALSE(gradeFits(lower)) << said;
    }
    EXPECT_GT(seen, 100);
}

TEST(GradeReason, WhatIsToSpareCanBeUsedUpAndNoMore) {
    RandomJobs random(20260106);
    int seen = 0;
    for (int trial = 0; trial < 20000; ++trial) {
        GradeJob job = random.job(1 + random.upTo(5), 0.02, 3);
        const GradePlan plan = planGrade(job);
        if (!plan.fits || plan.reason.low.rule == Rule::DeepestCut || plan.reason.low.rule == Rule::Fixed)
            continue;
        ++seen;
        // With the sizes of the plan.
        for (std::size_t i = 0; i < job.runs.size(); ++i) job.runs[i].pipes = {plan.runs[i].pipe};
        const std::string said = "trial " + std::to_string(trial) + "\n" + described(job) + "\n" +
                                 gradeText(job, plan, numbered(job)).en;
        GradeJob higher = job;
        raiseLow(higher, plan.reason.low, plan.reason.spare());
        ASSERT_TRUE(gradeFits(higher)) << said;
        raiseLow(higher, plan.reason.low, job.grid);
        ASSERT_FALSE(gradeFits(higher)) << said;
    }
    EXPECT_GT(seen, 200);
}

}  // namespace
}  // namespace trenchbook
