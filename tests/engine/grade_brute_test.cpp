// All plans of small trees on a coarse grid, tried one by one.
#include <gtest/gtest.h>

#include "grade_jobs.h"

namespace trenchbook {
namespace {

using gradetest::described;
using gradetest::RandomJobs;
using gradetest::Rules;

struct Laid {
    double up, down;
    std::size_t pipe;
    double cost;
};

// Every way to lay one run by the rules of the run alone.
std::vector<Laid> waysToLay(const Rules& rules, std::size_t index) {
    const GradeJob& job = rules.job;
    const GradeRun& run = job.runs[index];
    // No end lies above the ground of the higher end and what wall and bedding add to it.
    const double most = std::max(run.groundUp, run.groundDown).feet() + 1;
    const auto levels = [&](Length ground, const std::optional<Length>& fixed) {
        if (fixed) return std::vector<double>{fixed->feet()};
        std::vector<double> all;
        const double grid = job.grid.feet();
        for (double step = std::floor((ground.feet() - job.deepestCut.feet()) / grid) - 1; step * grid < most;
             ++step)
            all.push_back(step * grid);
        return all;
    };
    std::vector<Laid> ways;
    for (std::size_t pipe : run.pipes)
        for (double up : levels(run.groundUp, run.fixedUp))
            for (double down : levels(run.groundDown, run.fixedDown))
                if (rules.brokenInRun(index, up, down, pipe).empty())
                    ways.push_back({up, down, pipe, rules.cost(index, up, down, pipe)});
    return ways;
}

// Runs are tried in order 0, 1, 2...: each joins an earlier one.
double leastCost(const Rules& rules, const std::vector<std::vector<Laid>>& ways, std::vector<Laid>& chosen) {
    const std::size_t index = chosen.size();
    if (index == ways.size()) return 0;
    double least = std::numeric_limits<double>::infinity();
    for (const Laid& way : ways[index]) {
        if (index > 0) {
            const Laid& below = chosen[*rules.job.runs[index].below];
            if (!rules.brokenAtJoin(way.down, way.pipe, below.up, below.pipe).empty()) continue;
        }
        const double drop = index > 0 ? rules.dropCost(way.down, chosen[*rules.job.runs[index].below].up) : 0;
        chosen.push_back(way);
        least = std::min(least, way.cost + drop + leastCost(rules, ways, chosen));
        chosen.pop_back();
    }
    return least;
}

struct Seen {
    int fits = 0;
    int impossible = 0;
};

void compare(const GradeJob& job, int trial, Seen& seen) {
    const Rules rules{job};
    std::vector<std::vector<Laid>> ways;
    for (std::size_t i = 0; i < job.runs.size(); ++i) ways.push_back(waysToLay(rules, i));
    std::vector<Laid> chosen;
    const double least = leastCost(rules, ways, chosen);
    const GradePlan plan = planGrade(job);
    ASSERT_EQ(plan.fits, std::isfinite(least)) << "trial " << trial << "\n" << described(job);
    ASSERT_EQ(gradeFits(job), plan.fits) << described(job);
    if (!plan.fits) {
        ++seen.impossible;
        return;
    }
    ++seen.fits;
    ASSERT_EQ(rules.broken(plan), "") << "trial " << trial << "\n" << described(job);
    ASSERT_NEAR(plan.cost.dollars(), least, 1e-5) << "trial " << trial << "\n" << described(job);
    ASSERT_NEAR(plan.cost.dollars(), rules.cost(plan), 1e-5) << described(job);
}

TEST(GradeBrute, EveryPlanOfSmallTreesCostsNoLess) {
    RandomJobs random(20260101);
    Seen seen;
    for (int trial = 0; trial < 600 && !HasFatalFailure(); ++trial) {
        const std::size_t runs = 1 + random.upTo(2);
        compare(random.job(runs, runs == 3 ? 0.25 : 0.1, 2.2), trial, seen);
    }
    EXPECT_GT(seen.fits, 100);
    EXPECT_GT(seen.impossible, 100);
}

TEST(GradeBrute, EveryWayPastTwoCrossings) {
    RandomJobs random(20260108);
    random.crossings = 0.8;
    Seen seen;
    for (int trial = 0; trial < 1500 && !HasFatalFailure(); ++trial) {
        const bool two = trial % 10 == 0;
        compare(random.job(two ? 2 : 1, two ? 0.2 : 0.03, 2.5), trial, seen);
    }
    EXPECT_GT(seen.fits, 200);
    EXPECT_GT(seen.impossible, 200);
}

}  // namespace
}  // namespace trenchbook
