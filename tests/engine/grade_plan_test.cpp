// The plan rule by rule, on lines small enough to work out by hand.
#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

#include "grade_jobs.h"
#include "reference.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

using gradetest::described;
using gradetest::Rules;

constexpr double rod = 0.01;

// One run of 100 ft of 4 SDR35 (outside 4.215 in, wall 0.12 in) that falls with the ground from 100 to 98 ft,
// 12 in of cover at both ends; digging $4 per ft at 1 ft, $10 at 3 ft.
GradeJob oneRun() {
    GradeJob job;
    job.pipes = {{stockPipe("4 SDR35"), PricePerLength::dollarsPerFoot(2.10), Slope::percent(1)},
                 {stockPipe("6 SDR35"), PricePerLength::dollarsPerFoot(4.20), Slope::percent(0.5)}};
    job.digging = {{Length::feet(1), PricePerLength::dollarsPerFoot(4)},
                   {Length::feet(3), PricePerLength::dollarsPerFoot(10)}};
    GradeRun run;
    run.length = Length::feet(100);
    run.groundUp = Length::feet(100);
    run.groundDown = Length::feet(98);
    run.pipes = {0};
    run.coverUp = run.coverDown = Length::inches(12);
    run.outletLowest = Length::feet(90);
    job.runs = {run};
    return job;
}

TEST(GradePlan, LiesAsShallowAsCoverAllows) {
    const GradePlan plan = planGrade(oneRun());
    ASSERT_TRUE(plan.fits);
    const GradedRun& run = plan.runs[0];
    // 100 - 1 - (4.215 - 0.12) / 12 = 98.65875, on the grid 98.65; two feet lower at the other end.
    EXPECT_NEAR(run.invertUp.feet(), 98.65, 1e-9);
    EXPECT_NEAR(run.invertDown.feet(), 96.65, 1e-9);
    EXPECT_NEAR(run.slope.fraction(), 0.02, 1e-12);
    // 100 - 98.65 + 0.01 = 1.36 ft, $4 + 0.36 x $3 = $5.08 per ft.
    EXPECT_NEAR(run.cutUp.feet(), 1.36, 1e-9);
    EXPECT_NEAR(run.cutDown.feet(), 1.36, 1e-9);
    EXPECT_NEAR(run.cost.dollars(), 100 * (2.10 + 5.08), 1e-6);
    EXPECT_NEAR(plan.cost.dollars(), 718, 1e-6);
}

TEST(GradePlan, TheOutletTooHighSaysHowMuchIsMissing) {
    GradeJob job = oneRun();
    job.runs[0].coverDown.reset();
    job.runs[0].outletLowest = Length::feet(97.70);
    const GradePlan plan = planGrade(job);
    ASSERT_FALSE(plan.fits);
    EXPECT_TRUE(plan.runs.empty());
    // From 98.65 a fall of 1.00 leads to 97.65.
    const GradeReason& reason = plan.reason;
    EXPECT_EQ(reason.kind, GradeReason::Kind::ShortOfFall);
    EXPECT_NEAR(reason.missing().feet(), 0.05, 1e-9);
    EXPECT_NEAR(reason.needed.feet(), 1.00, 1e-9);
    EXPECT_NEAR(reason.available.feet(), 0.95, 1e-9);
    EXPECT_EQ(reason.high.rule, GradeLimit::Rule::Cover);
    EXPECT_EQ(reason.low.rule, GradeLimit::Rule::OutletLowest);
    EXPECT_EQ(
        gradeText(job, plan, {{"D1"}, {"Swale"}}).en,
        "NO: 0.05 ft short. D1: invert at most 98.65 ft (12 in of cover over 4 SDR35, ground 100.00 ft). "
        "Swale: invert at least 97.70 ft (lowest outlet). On the way (D1-Swale) at least 1.00 ft of fall; "
        "there is 0.95 ft. Any one of these is enough: least cover at D1 11.4 in (-0.05 ft), with pipe that "
        "bears it; lowest outlet 97.65 ft (-0.05 ft) if what it ends in lies lower; 6 SDR35 allowed from D1-Swale "
        "to the outlet (0.29 ft to spare); length of D1-Swale 95.00 ft (-5.00 ft).");
    EXPECT_EQ(gradeText(job, plan, {{"D1"}, {"Zanjón"}}, UnitSystem::Metric).es.substr(0, 21),
              "NO: faltan 0.01524 m.");

    // A lower outlet is advised down to what it must stay over, and no further.
    const auto advice = [&](double floor) {
        job.runs[0].outletFloor = Length::feet(floor);
        return gradeText(job, planGrade(job), {{"D1"}, {"Swale"}}).en;
    };
    EXPECT_NE(advice(97.65).find("lowest outlet 97.65 ft (-0.05 ft);"), std::string::npos) << advice(97.65);
    EXPECT_EQ(advice(97.66).find("lowest outlet 97.6"), std::string::npos) << advice(97.66);
    EXPECT_EQ(advice(98).find("lowest outlet 97.6"), std::string::npos) << advice(98);
}

TEST(GradePlan, WhereNothingHelpsTheOtherWaysOutAreNamed) {
    // Cover that no pipe of the table and no fall can give, with an outlet that may not go lower: 60 in at D1 under a
    // ground of 100.00 is 95.00 at the crown, and the outlet may not lie under 99.
    GradeJob job = oneRun();
    job.runs[0].coverUp = job.runs[0].coverDown = Length::inches(60);
    job.runs[0].outletLowest = job.runs[0].outletFloor = Length::feet(99);
    const GradePlan plan = planGrade(job);
    ASSERT_FALSE(plan.fits);
    ASSERT_TRUE(plan.reason.cures.empty());
    EXPECT_NE(gradeText(job, plan, {{"D1"}, {"Swale"}})
                  .en.find("No single change is enough: another outlet, two outlets, or a pump."),
              std::string::npos);
}

TEST(GradePlan, SurveyStakeoutOfASewer) {
    // The stake's cut in the manual is hub to invert; ours goes on to the trench bottom, one pipe wall lower.
    GradeJob job = oneRun();
    job.pipes[0].leastSlope = Slope::percent(2.18);
    GradeRun& run = job.runs[0];
    run.length = Length::feet(50);
    run.groundUp = Length::feet(126.94);
    run.groundDown = Length::feet(127.33);
    run.coverUp = run.coverDown = Length::inches(12);
    run.fixedUp = Length::feet(122.87);
    run.outletLowest = Length::feet(115);
    const GradePlan plan = planGrade(job);
    ASSERT_TRUE(plan.fits) << gradeText(job, plan, {{"9+00"}, {"8+50"}}).en;
    const double wall = wallOf(job.pipes[0].pipe).feet();
    int checked = 0;
    for (const reference::Row& row : reference::rows("20d_levelling_and_grade.csv")) {
        const auto check = [&](const char* item, double ours) {
            if (row.item != item) return;
            reference::check("GRADE.PLAN", row, ours);
            ++checked;
        };
        check("Sewer stakeout: fall", (plan.runs[0].invertUp - plan.runs[0].invertDown).feet());
        check("Sewer stakeout: invert at 8+50", plan.runs[0].invertDown.feet());
        check("Sewer stakeout: cut at 9+00", plan.runs[0].cutUp.feet() - wall);
        check("Sewer stakeout: cut at 8+50", plan.runs[0].cutDown.feet() - wall);
    }
    EXPECT_EQ(checked, 4);

    // An outlet that may not lie as low as the stakeout's is out of reach by the difference.
    run.outletLowest = Length::feet(122);
    const GradePlan tooHigh = planGrade(job);
    ASSERT_FALSE(tooHigh.fits);
    EXPECT_EQ(tooHigh.reason.kind, GradeReason::Kind::ShortOfFall);
    for (const reference::Row& row : reference::rows("20d_levelling_and_grade.csv")) {
        if (row.item == "Sewer stakeout: fall")
            reference::check("GRADE.REASON", row, tooHigh.reason.needed.feet());
        if (row.item == "Sewer stakeout: invert at 8+50")
            reference::check("GRADE.REASON", row, 122 - tooHigh.reason.missing().feet());
    }
}

// A 4 in branch and a 4 in main enter a 6 in run: with crowns the 6 in invert lies 5.915 - 3.975 = 1.94 in
// lower, 0.1617 ft, 0.17 ft on the grid.
GradeJob join() {
    GradeJob job = oneRun();
    GradeRun outlet = job.runs[0];
    outlet.pipes = {1};
    GradeRun upper = job.runs[0];
    upper.below = 0;
    upper.groundUp = Length::feet(101);
    upper.groundDown = Length::feet(100);
    upper.outletLowest.reset();
    job.runs = {outlet, upper, upper};
    job.runs[2].groundUp = Length::feet(104);
    return job;
}

TEST(GradePlan, JoinsByCrownOrByInvert) {
    for (const Join how : {Join::Crown, Join::Invert}) {
        GradeJob job = join();
        job.join = how;
        // The 6 in run could lie higher than the branches let it: exempt, and no digging below.
        job.runs[0].coverUp = Length::inches(6);
        const GradePlan plan = planGrade(job);
        ASSERT_TRUE(plan.fits);
        const double lowest = std::min(plan.runs[1].invertDown.feet(), plan.runs[2].invertDown.feet());
        EXPECT_NEAR(lowest, 98.65, 1e-9);
        EXPECT_NEAR(plan.runs[0].invertUp.feet(), how == Join::Crown ? 98.48 : 98.65, 1e-9);
    }
}

TEST(GradePlan, ADropIsMadeWhereALowerEndMayLieHigher) {
    GradeJob job = join();
    job.runs[0].crossings = {{Length::feet(0), GradeCrossing::Side::Below, Length::feet(96)}};
    const GradePlan plan = planGrade(job);
    ASSERT_TRUE(plan.fits);
    // 96 - (6.275 - 0.18) / 12 = 95.49 at the crossing; the branches stay up and drop into the node.
    EXPECT_NEAR(plan.runs[0].invertUp.feet(), 95.49, 1e-9);
    EXPECT_NEAR(plan.runs[1].invertDown.feet(), 98.65, 1e-9);
    EXPECT_NEAR(plan.runs[2].invertDown.feet(), 98.65, 1e-9);
}

TEST(GradePlan, ADropIsPaidByTheFootOrNotMade) {
    GradeJob job = join();
    job.runs[0].crossings = {{Length::feet(0), GradeCrossing::Side::Below, Length::feet(96)}};
    const GradePlan free = planGrade(job);
    job.dropPrice = PricePerLength::dollarsPerFoot(1);
    const GradePlan cheap = planGrade(job);
    for (std::size_t run : {1, 2}) {
        EXPECT_EQ(cheap.runs[run].invertDown, free.runs[run].invertDown);
        EXPECT_NEAR(cheap.runs[run].cost.dollars(), free.runs[run].cost.dollars() + 98.65 - 95.49, 1e-5);
    }
    EXPECT_NEAR(cheap.cost.dollars(), free.cost.dollars() + 2 * (98.65 - 95.49), 1e-5);
    // Dearer than any digging: then only the crowns are kept level, (5.915 - 3.975) / 12 = 0.1617 on the
    // grid.
    job.dropPrice = PricePerLength::dollarsPerFoot(10000);
    job.deepestCut = Length::feet(20);
    const GradePlan dear = planGrade(job);
    ASSERT_TRUE(dear.fits);
    for (std::size_t run : {1, 2})
        EXPECT_NEAR(dear.runs[run].invertDown.feet() - dear.runs[0].invertUp.feet(),
                    job.runs[run].pipes[0] == job.runs[0].pipes[0] ? 0 : 0.17, 1e-9);
    job.dropPrice = PricePerLength::dollarsPerFoot(-1);
    EXPECT_THROW(planGrade(job), Error);
}

TEST(GradePlan, NoPipeGetsSmallerDownstream) {
    GradeJob job = join();
    job.runs[0].pipes = {0};
    job.runs[2].pipes = {1};
    const GradePlan plan = planGrade(job);
    ASSERT_FALSE(plan.fits);
    EXPECT_EQ(plan.reason.kind, GradeReason::Kind::Shrinks);
    EXPECT_EQ(plan.reason.high.run, 2u);
    EXPECT_EQ(plan.reason.low.run, 0u);
    EXPECT_EQ(gradeText(job, plan, {{"B", "A", "C"}, {"Out", "B", "B"}}).en,
              "NO: no pipe may get smaller downstream, and B-Out (4 SDR35) lists none as large as 6 SDR35, "
              "the least "
              "that C-B can have. Any one of these is enough: 6 SDR35 allowed from B-Out to the outlet.");
}

TEST(GradePlan, TakesTheSizeThatIsCheaperWithItsDigging) {
    GradeJob job = oneRun();
    job.runs[0].pipes = {0, 1};
    EXPECT_EQ(planGrade(job).runs[0].pipe, 0u);
    // Level ground: the smaller pipe needs 1.00 ft of fall, the larger one half of it, in ever dearer
    // digging.
    job.runs[0].groundDown = job.runs[0].groundUp;
    job.digging = {{Length::feet(1), PricePerLength::dollarsPerFoot(4)},
                   {Length::feet(2), PricePerLength::dollarsPerFoot(14)}};
    EXPECT_EQ(planGrade(job).runs[0].pipe, 0u);
    job.pipes[1].price = PricePerLength::dollarsPerFoot(2.20);
    EXPECT_EQ(planGrade(job).runs[0].pipe, 1u);
}

TEST(GradePlan, FlowAsksForSlope) {
    GradeJob job = oneRun();
    job.runs[0].groundDown = job.runs[0].groundUp;
    job.runs[0].flow = Flow::gpm(150);
    const GradePlan plan = planGrade(job);
    ASSERT_TRUE(plan.fits);
    const double needed = Rules{job}.slopeNeeded(0, 0) * 100;
    EXPECT_GT(needed, 1.5);
    EXPECT_NEAR(plan.runs[0].invertUp.feet() - plan.runs[0].invertDown.feet(), std::ceil(needed / rod) * rod,
                1e-9);
}

TEST(GradePlan, InvertsSetByHandAreKeptToTheLastDigit) {
    GradeJob job = join();
    job.runs[1].fixedDown = Length::feet(98.1234567);
    job.runs[0].fixedUp = Length::feet(97.5);
    const GradePlan plan = planGrade(job);
    ASSERT_TRUE(plan.fits);
    EXPECT_NEAR(plan.runs[1].invertDown.feet(), 98.1234567, 1e-12);
    EXPECT_NEAR(plan.runs[0].invertUp.feet(), 97.5, 1e-12);
    EXPECT_EQ(Rules{job}.broken(plan), "");
    // One that breaks a rule makes the plan impossible and is named.
    job.runs[0].fixedUp = Length::feet(99.2);
    const GradePlan broken = planGrade(job);
    ASSERT_FALSE(broken.fits);
    EXPECT_EQ(broken.reason.low.rule, GradeLimit::Rule::Fixed);
}

TEST(GradePlan, WithoutDiggingCostItLiesAsHighAsItCan) {
    GradeJob job = oneRun();
    job.digging.clear();
    job.runs[0].outletHighest = Length::feet(96.2);
    const GradePlan plan = planGrade(job);
    ASSERT_TRUE(plan.fits);
    EXPECT_NEAR(plan.runs[0].invertUp.feet(), 98.65, 1e-9);
    EXPECT_NEAR(plan.runs[0].invertDown.feet(), 96.2, 1e-9);
    EXPECT_NEAR(plan.cost.dollars(), 210, 1e-9);
}

// The same job with its rows shuffled has the same plan to the last digit.
TEST(GradePlan, TheOrderOfRowsDoesNotMatter) {
    gradetest::RandomJobs random(20260107);
    std::mt19937 shuffler(7);
    int fits = 0;
    for (int trial = 0; trial < 300; ++trial) {
        const GradeJob job = random.job(6, 0.02, 3.5);
        std::vector<std::size_t> place(job.runs.size());
        std::iota(place.begin(), place.end(), std::size_t{0});
        std::shuffle(place.begin(), place.end(), shuffler);
        GradeJob other = job;
        for (std::size_t i = 0; i < place.size(); ++i) {
            GradeRun run = job.runs[i];
            if (run.below) run.below = place[*run.below];
            other.runs[place[i]] = run;
        }
        const GradePlan plan = planGrade(job);
        const GradePlan shuffled = planGrade(other);
        ASSERT_EQ(plan.fits, shuffled.fits) << described(job);
        if (!plan.fits) continue;
        ++fits;
        ASSERT_EQ(plan.cost, shuffled.cost) << described(job);
        for (std::size_t i = 0; i < place.size(); ++i) {
            ASSERT_EQ(plan.runs[i].invertUp, shuffled.runs[place[i]].invertUp) << described(job);
            ASSERT_EQ(plan.runs[i].invertDown, shuffled.runs[place[i]].invertDown) << described(job);
            ASSERT_EQ(plan.runs[i].pipe, shuffled.runs[place[i]].pipe) << described(job);
        }
    }
    EXPECT_GT(fits, 30);
}

TEST(GradePlan, RefusesWhatIsNotATree) {
    const auto argument = [](const GradeJob& job) {
        try {
            planGrade(job);
        } catch (const Error& error) {
            return error.argument();
        }
        return std::string("none");
    };
    GradeJob loop = join();
    loop.runs[0].below = 1;
    EXPECT_EQ(argument(loop), "to");
    GradeJob two = join();
    two.runs[1].below.reset();
    EXPECT_EQ(argument(two), "to");
    GradeJob bad = join();
    bad.runs[1].length = Length();
    EXPECT_EQ(argument(bad), "length");
    bad = join();
    bad.runs[2].pipes.clear();
    EXPECT_EQ(argument(bad), "pipe");
    bad = join();
    bad.runs[0].outletLowest.reset();
    EXPECT_EQ(argument(bad), "outlet lowest");
    bad = join();
    std::swap(bad.digging[0], bad.digging[1]);
    EXPECT_EQ(argument(bad), "dig cost");
    bad = join();
    bad.grid = Length::feet(1e-6);
    EXPECT_EQ(argument(bad), "grid");
    bad.grid = Length::feet(1e-4);
    bad.deepestCut = Length::feet(20);
    EXPECT_EQ(argument(bad), "grid") << "a window of more than 60000 levels";
    for (const double huge : {1e5, 1e20, 1e300}) {
        bad = join();
        bad.runs[0].length = Length::metres(huge);
        EXPECT_EQ(argument(bad), "length");
        bad = join();
        bad.runs[0].groundUp = Length::metres(-huge);
        EXPECT_EQ(argument(bad), "ground up");
        bad = join();
        bad.runs[0].coverUp = Length::metres(huge);
        EXPECT_EQ(argument(bad), "cover up");
        bad = join();
        bad.deepestCut = Length::metres(huge);
        EXPECT_EQ(argument(bad), "deepest cut");
    }
    // Flow that no slope carries only makes the plan impossible.
    bad = join();
    bad.runs[0].flow = Flow::gpm(1e200);
    EXPECT_FALSE(planGrade(bad).fits);
    // Money beyond counting.
    bad = join();
    bad.pipes[1].price = PricePerLength::dollarsPerFoot(1e200);
    EXPECT_EQ(argument(bad), "dig cost");
    bad = join();
    bad.runs[0].crossings = {{Length::feet(101), GradeCrossing::Side::Below, Length::feet(96)}};
    EXPECT_EQ(argument(bad), "crossings");
    bad = join();
    bad.pipes[0].pipe = bareBore(Length::inches(4));
    EXPECT_EQ(argument(bad), "pipe");
}

}  // namespace
}  // namespace trenchbook
