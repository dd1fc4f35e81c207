// JOB.PLAN and JOB.PLAN.TEXT: the plan of the solved job beside the levels typed.
#include <cmath>

#include "job_tables.h"
#include "trenchbook/core/cell.h"

namespace trenchbook::addin {
namespace {

using namespace harness;

// Places in JOB.PLAN.
enum : std::size_t { Up, Down, SlopeOf, CutUp, CutDown, Drop, PlanCosts, TypedCosts, More };

// Less rain than the pipes carry, the gas line deep under them; $2.10 a foot of pipe, and $3 for each foot of cut.
struct Planned : Tables {
    Range pipes = table(6, {"4 SDR35", 2.10, "1%", "", "", 0.8});
    Range digging = table(2, {0.0, 0.0, 10.0, 30.0});

    Planned() {
        facts.cells[1] = 2.0;
        // Soil enough over the last feet before the end in daylight.
        nodes.cells[6 * 5 + 2] = 98.2;
        crossings.cells[7 + 4] = 40.0;
        crossings.cells[7 + 6] = "below";
    }
    std::vector<Value> plan(double dropPrice = 0) const {
        std::vector<Value> all = values();
        all.resize(13);
        for (Value value : std::vector<Value>{pipes, digging, 6.0, dropPrice}) all.push_back(value);
        return all;
    }
};

TEST(JobPlan, IsThePlanOfTheSameRuns) {
    const Planned job;
    const Numbers runs = numbers("JOB.RUNS", job.values()),
                  crossings = numbers("JOB.CROSSINGS", job.values());
    std::vector<Value> rows;
    const auto typed = [&](std::size_t at) {
        std::vector<Cell> cells;
        for (std::size_t row = 1; row < job.runs.rows; ++row) cells.push_back(job.runs.at(row, at));
        rows.emplace_back(column(cells));
    };
    const auto solved = [&](const char* heading) {
        std::vector<Cell> cells;
        for (std::size_t row = 0; row < runs.rows(); ++row) {
            const double number = cell(runs, row, at(Viewed::Runs, heading));
            cells.push_back(std::isnan(number) ? Cell(Nothing()) : Cell(number));
        }
        rows.emplace_back(column(cells));
    };
    typed(1);
    typed(2);
    typed(3);
    solved("Ground up");
    solved("Ground down");
    typed(4);
    solved("Cover asked up");
    solved("Cover asked down");
    typed(6);
    rows.emplace_back(column({Nothing(), Nothing(), Nothing(), Nothing()}));
    rows.emplace_back(job.pipes);
    solved("Flow");
    rows.emplace_back(column({Nothing(), Nothing(), Nothing(), Nothing()}));
    rows.emplace_back(column({Nothing(), Nothing(), Nothing(), Nothing()}));
    const double kept = cell(crossings, 0, at(Viewed::Crossings, "Kept level"));
    // Daylight exempts 3 ft of 60: there the ground is 98.2 + (99.6 - 98.2) x 3 / 60, and cover.end 8 in.
    rows.emplace_back(table(5, {"B", "Out", 20.0, "above", kept,  //
                                "B", "Out", 57.0, "below", 98.27 - 8.0 / 12}));
    rows.emplace_back(6.0);
    rows.emplace_back(job.digging);
    rows.emplace_back(3.0);  // bedding.depth of the rules
    rows.emplace_back("crown");
    const Numbers ours = numbers("JOB.PLAN", job.plan()), theirs = numbers("GRADE.PLAN", rows);
    ASSERT_EQ(ours.rows(), 4u);
    ASSERT_EQ(theirs.rows(), 4u);
    for (const std::size_t row : {0u, 2u, 3u}) {
        SCOPED_TRACE(row);
        for (const std::size_t place : {Up, Down, SlopeOf, CutUp, CutDown})
            EXPECT_NEAR(cell(ours, row, place), cell(theirs, row, place), 1e-9) << place;
        EXPECT_NEAR(cell(ours, row, PlanCosts), cell(theirs, row, 6), 1e-9);
    }
    for (std::size_t place = 0; place < ours.columns; ++place) EXPECT_TRUE(isBlankCell(cell(ours, 1, place)));
}

// The cut goes down to the bedding: 0.120 in wall of ASTM D3034, 3 in bedding, by hand.
TEST(JobPlan, TypedLevelsCostWhatPipeAndCutsCome) {
    const Planned job;
    const Numbers plan = numbers("JOB.PLAN", job.plan());
    const auto cost = [](double feet, double groundUp, double invertUp, double groundDown,
                         double invertDown) {
        const double under = (0.120 + 3) / 12;
        const double up = groundUp - invertUp + under, down = groundDown - invertDown + under;
        return feet * (2.10 + 3 * (up + down) / 2);
    };
    EXPECT_NEAR(cell(plan, 0, TypedCosts), cost(40, 100, 97.9, 99.6, 97.5), 1e-6);
    EXPECT_NEAR(cell(plan, 2, TypedCosts), cost(60, 99.6, 97.5, 98.2, 96.9), 1e-6);
    EXPECT_NEAR(cell(plan, 3, TypedCosts), cost(25, 99.9, 97.75, 99.6, 97.5), 1e-6);
    double all = 0;
    for (const std::size_t row : {0u, 2u, 3u}) {
        EXPECT_NEAR(cell(plan, row, More), cell(plan, row, TypedCosts) - cell(plan, row, PlanCosts), 1e-9);
        all += cell(plan, row, More);
    }
    EXPECT_GE(all, -1e-9) << "no grade is cheaper than the plan";
}

// Pipe and digging by the cuts that the plan shows, and $30 a foot where a run comes in above the one below.
TEST(JobPlan, CostsFollowFromItsOwnCutsAndDrops) {
    const Numbers plan = numbers("JOB.PLAN", Planned().plan(30));
    EXPECT_TRUE(isBlankCell(cell(plan, 2, Drop)));
    const std::vector<std::pair<std::size_t, double>> lengths = {{0, 40}, {2, 60}, {3, 25}};
    for (const auto& [row, feet] : lengths) {
        double cost = feet * (2.10 + 3 * (cell(plan, row, CutUp) + cell(plan, row, CutDown)) / 2);
        if (row != 2) {
            EXPECT_NEAR(cell(plan, row, Drop), cell(plan, row, Down) - cell(plan, 2, Up), 1e-9);
            cost += 30 * cell(plan, row, Drop);
        }
        EXPECT_NEAR(cell(plan, row, PlanCosts), cost, 1e-6) << row;
    }
}

TEST(JobPlan, ARunWithoutLengthSpoilsItsTreeAndSaysWhy) {
    Planned job;
    job.runs.cells[4 * job.runs.columns + 3] = "soon";
    const Numbers plan = numbers("JOB.PLAN", job.plan());
    const Texts words = texts("JOB.PLAN.TEXT", job.plan());
    for (const std::size_t row : {0u, 2u, 3u}) {
        EXPECT_TRUE(std::isnan(cell(plan, row, Up)) && !isBlankCell(cell(plan, row, Up))) << row;
        EXPECT_EQ(word(words, row, 0), "");
    }
    EXPECT_NE(word(words, 2, 1).find("soon"), std::string::npos) << word(words, 2, 1);
}

// Without a table: the runs' own pipes at no price, with the slope and share of the rules; typed levels cost digging.
TEST(JobPlan, ChoosesAmongTheRunsOwnPipesWithoutATable) {
    const Planned job;
    std::vector<Value> own = job.plan(), priced = job.plan();
    own[13] = Nothing();
    priced[13] = table(6, {"4 SDR35", 0.0, "1/8 in/ft", "", "", 0.8});
    const Numbers without = numbers("JOB.PLAN", own), with = numbers("JOB.PLAN", priced);
    ASSERT_EQ(without.items.size(), with.items.size());
    for (const std::size_t row : {0u, 2u, 3u})
        for (std::size_t place = Up; place <= More; ++place)
            if (!isBlankCell(cell(with, row, place))) {
                EXPECT_NEAR(cell(without, row, place), cell(with, row, place), 1e-9);
            }
}

TEST(JobPlan, NamesThePipeOfEachRun) {
    const Texts words = texts("JOB.PLAN.TEXT", Planned().plan());
    ASSERT_EQ(words.rows(), 4u);
    for (const std::size_t row : {0u, 2u, 3u}) EXPECT_EQ(word(words, row, 0), "4 SDR35") << word(words, 2, 1);
    EXPECT_EQ(word(words, 1, 0), "");
    EXPECT_NE(word(words, 2, 1), "") << "the outlet's row says how the plan fits";
}

TEST(JobPlan, TellsWhatAnOversizedPipeWastes) {
    Planned job;
    job.pipes = table(6, {"4 SDR35", 2.10, "1%", "", "", 0.8, "6 SDR35", 4.20, "1%", "", "", 0.8});
    job.runs.cells[3 * job.runs.columns + 5] = "1.5%";
    EXPECT_EQ(word(texts("JOB.PLAN.TEXT", job.plan()), 2, 2).find("passes too"), std::string::npos);
    job.runs.cells[3 * job.runs.columns + 4] = "6 SDR35";
    // 60 ft at 4.20 - 2.10.
    EXPECT_NE(
        word(texts("JOB.PLAN.TEXT", job.plan()), 2, 2).find("4 SDR35 passes too: $ 126.00 less of pipe"),
        std::string::npos)
        << word(texts("JOB.PLAN.TEXT", job.plan()), 2, 2) << word(texts("JOB.RUNS.TEXT", job.values()), 2, 1);
}

TEST(JobPlan, TellsWhereTheLineAsTypedIsDeeperThanThePlan) {
    Planned job;
    const auto saving = [&](std::size_t row) { return word(texts("JOB.PLAN.TEXT", job.plan()), row, 2); };
    // A foot more of cover than anything asks: the outlet a foot lower, every invert typed a foot lower, 125 ft of
    // trench; digging costs $3 for each foot of cut.
    const Numbers before = numbers("JOB.PLAN", job.plan());
    job.runs.cells[3 * job.runs.columns + 6] = 95.9;
    const Numbers after = numbers("JOB.PLAN", job.plan()), runs = numbers("JOB.RUNS", job.values());
    for (const std::size_t row : {0u, 2u, 3u}) {
        const double deeper =
            std::max(cell(after, row, Up) - cell(runs, row, at(Viewed::Runs, "Invert up")),
                     cell(after, row, Down) - cell(runs, row, at(Viewed::Runs, "Invert down")));
        ASSERT_GT(deeper, 0.5) << row;
        char said[80];
        std::snprintf(said, sizeof said, "%.2f ft deeper than the plan: $ %.2f", deeper,
                      cell(after, row, More));
        EXPECT_EQ(saving(row), said);
        EXPECT_GT(cell(after, row, More), cell(before, row, More));
    }
}

}  // namespace
}  // namespace trenchbook::addin
