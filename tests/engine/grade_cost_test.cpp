// What a run costs as laid, against the second writing of the rules and against what the planner counts.
#include <gtest/gtest.h>

#include "grade_jobs.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

using gradetest::described;
using gradetest::RandomJobs;
using gradetest::Rules;

TEST(GradeCost, APlanCostsWhatThePlannerSays) {
    RandomJobs random(20261126);
    int fits = 0;
    for (int trial = 0; trial < 300; ++trial) {
        const GradeJob job = random.job(1 + random.upTo(5), 0.05, 4);
        const GradePlan plan = planGrade(job);
        if (!plan.fits) continue;
        ++fits;
        std::vector<LaidRun> laid;
        for (const GradedRun& run : plan.runs) laid.push_back({run.invertUp, run.invertDown, run.pipe});
        const std::vector<Money> costs = laidCost(job, laid);
        ASSERT_EQ(costs.size(), plan.runs.size());
        // The planner counts each end in units of 1e-6 dollar.
        for (std::size_t i = 0; i < costs.size(); ++i)
            EXPECT_NEAR(costs[i].dollars(), plan.runs[i].cost.dollars(), 4e-6)
                << described(job) << "run " << i;
    }
    EXPECT_GT(fits, 60);
}

TEST(GradeCost, OfAnyInverts) {
    RandomJobs random(20261127);
    for (int trial = 0; trial < 200; ++trial) {
        const GradeJob job = random.job(1 + random.upTo(4), 0.05, 4);
        const Rules rules{job};
        std::vector<LaidRun> laid;
        for (const GradeRun& run : job.runs)
            laid.push_back({run.groundUp - Length::feet(random.real(0.5, 5)),
                            run.groundDown - Length::feet(random.real(0.5, 5)), run.pipes[0]});
        const std::vector<Money> costs = laidCost(job, laid);
        for (std::size_t i = 0; i < laid.size(); ++i) {
            const auto& below = job.runs[i].below;
            const double drop =
                below ? std::max(0.0, (laid[i].invertDown - laid[*below].invertUp).feet()) : 0;
            EXPECT_NEAR(costs[i].dollars(),
                        rules.cost(i, laid[i].invertUp.feet(), laid[i].invertDown.feet(), laid[i].pipe) +
                            rules.dropCost(drop, 0),
                        1e-9 * costs[i].dollars())
                << described(job) << "run " << i;
        }
    }
}

// 10 ft of 4 SDR35 at $2, cut 2.26 ft at both ends (2 ft to the invert, wall 0.120 in, bedding 3 in): digging at
// $3 a foot of depth from a table 0 -> 0, 10 -> 30 $/ft is 10 x 3 x 2.26 = $67.80, in all $87.80.
TEST(GradeCost, ByHand) {
    GradeJob job;
    job.pipes = {{stockPipe("4 SDR35"), PricePerLength::dollarsPerFoot(2), Slope::percent(1)}};
    job.digging = {{Length::feet(0), PricePerLength::dollarsPerFoot(0)},
                   {Length::feet(10), PricePerLength::dollarsPerFoot(30)}};
    job.bedding = Length::inches(3);
    job.runs = {{.length = Length::feet(10),
                 .groundUp = Length::feet(100),
                 .groundDown = Length::feet(100),
                 .pipes = {0},
                 .outletLowest = Length::feet(95)}};
    const std::vector<LaidRun> laid = {{Length::feet(98), Length::feet(98), 0}};
    EXPECT_NEAR(laidCost(job, laid)[0].dollars(), 87.80, 1e-9);
    EXPECT_THROW(laidCost(job, {}), Error);
    const std::vector<LaidRun> noSuchPipe = {{Length::feet(98), Length::feet(98), 1}};
    EXPECT_THROW(laidCost(job, noSuchPipe), Error);
}

}  // namespace
}  // namespace trenchbook
