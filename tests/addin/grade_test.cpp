// GRADE.* as Calc calls them: a block of seven columns, a text on each outlet row, one bad row spoils its
// tree alone.
#include <bit>
#include <cmath>
#include <thread>

#include "catalog/grade_rows.h"
#include "catalog_harness.h"
#include "trenchbook/core/units.h"

namespace trenchbook::addin {
namespace {

using namespace harness;

constexpr double m = metresPerFoot;
constexpr double mm = metresPerInch * 1000;

std::uint32_t code(double cell) {
    return std::isnan(cell) ? static_cast<std::uint32_t>(std::bit_cast<std::uint64_t>(cell)) : 0;
}

Range table(std::size_t columns, std::vector<Cell> cells) {
    Range range;
    range.columns = columns;
    range.rows = cells.size() / columns;
    range.cells = std::move(cells);
    return range;
}

// The places of the arguments.
enum : std::size_t {
    From,
    To,
    RunLength,
    GroundUp,
    GroundDown,
    PipeCell,
    CoverUp,
    CoverDown,
    Lowest,
    Highest,
    Table,
    RunFlow,
    FixedUp,
    FixedDown,
    Crossings,
    Deepest,
    Dig,
    Bedding,
    JoinBy,
    Grid,
    InUnits
};

// A garden line D1-B-Out with a branch from D2, a blank row, and a line of its own from X to a ditch.
std::vector<Value> job() {
    const Nothing none;
    return {column({"D1", "B", none, "D2", "X"}),
            column({"B", "Out", none, "B", "Ditch"}),
            column({60.0, "40'", none, 25.0, 100.0}),
            column({99.80, 99.40, none, 99.60, 100.0}),
            column({99.40, 98.60, none, 99.40, 98.0}),
            column({"4 SDR35|6 SDR35", "4 sdr-35 | 6 SDR35", none, "4 SDR35", "4 SDR35"}),
            column({12.0, 12.0, none, 12.0, 12.0}),
            column({12.0, none, none, 12.0, 12.0}),
            column({none, 96.3, none, none, 90.0}),
            column({none, 97.5, none, none, none}),
            table(6, {"4 SDR35", 2.10, "1%", 0.0, 0.011, 0.8, none, none, none, none, none, none, "6 SDR35",
                      4.20, 0.005, none, none, none}),
            column({30.0, 60.0, none, 10.0, none}),
            column({none, none, none, none, none}),
            column({none, none, none, none, none}),
            table(5, {"B", "Out", 20.0, "below", 97.0, none, none, none, none, none}),
            6.0,
            table(2, {1.0, 4.0, 3.0, 10.0}),
            0.0,
            "crown",
            0.01};
}

std::vector<Value> with(std::size_t index, Value value) {
    std::vector<Value> values = job();
    if (values.size() <= index) values.resize(index + 1);
    values[index] = std::move(value);
    return values;
}
std::vector<Value> withCell(std::size_t index, std::size_t row, Cell cell) {
    std::vector<Value> values = job();
    std::get<Range>(values[index]).cells[row] = std::move(cell);
    return values;
}

double at(const Numbers& block, std::size_t row, std::size_t columnIndex) {
    return block.items[row * block.columns + columnIndex];
}

TEST(GradePlanInCalc, SevenColumnsARow) {
    const Numbers plan = numbers("GRADE.PLAN", job());
    ASSERT_EQ(plan.columns, 7u);
    ASSERT_EQ(plan.rows(), 5u);
    // The line of its own is the one worked out by hand in the engine's test: $718.
    EXPECT_NEAR(at(plan, 4, 0), 98.65, 1e-9);
    EXPECT_NEAR(at(plan, 4, 1), 96.65, 1e-9);
    EXPECT_NEAR(at(plan, 4, 2), 0.02, 1e-12);
    EXPECT_NEAR(at(plan, 4, 3), 1.36, 1e-9);
    EXPECT_NEAR(at(plan, 4, 4), 1.36, 1e-9);
    EXPECT_EQ(at(plan, 4, 5), 1);
    EXPECT_NEAR(at(plan, 4, 6), 718, 1e-6);
    for (std::size_t i = 0; i < 7; ++i) EXPECT_TRUE(isBlankCell(at(plan, 2, i)));
    // The crossing holds the garden line down: halfway its top, 4.095 in above the invert, is at 97.00 or
    // below.
    EXPECT_LE((at(plan, 1, 0) + at(plan, 1, 1)) / 2 + 4.095 / 12, 97.0 + 1e-9);
    EXPECT_GE(at(plan, 1, 1), 96.3 - 1e-9);
    EXPECT_GE(at(plan, 0, 1), at(plan, 1, 0) - 1e-9);
    EXPECT_GE(at(plan, 3, 1), at(plan, 1, 0) - 1e-9);
    // Without the crossing it lies higher and costs less.
    const Numbers higher = numbers("GRADE.PLAN", with(Crossings, Nothing{}));
    EXPECT_GT(at(higher, 1, 0), at(plan, 1, 0) + 0.05);
    EXPECT_LT(at(higher, 1, 6), at(plan, 1, 6));
}

TEST(GradePlanInCalc, TheRowOfThePipeTableCountsItsBlankRows) {
    std::vector<Value> values = withCell(PipeCell, 4, "6 SDR35");
    EXPECT_EQ(at(numbers("GRADE.PLAN", values), 4, 5), 3);
}

TEST(GradePlanInCalc, MetricGivesTheSame) {
    std::vector<Value> metric = job();
    const auto scale = [&](std::size_t index, double factor) {
        if (Range* cells = std::get_if<Range>(&metric[index])) {
            for (Cell& cell : cells->cells)
                if (double* number = std::get_if<double>(&cell)) *number *= factor;
        } else if (double* number = std::get_if<double>(&metric[index])) {
            *number *= factor;
        }
    };
    for (std::size_t index : {RunLength, GroundUp, GroundDown, Lowest, Highest, Deepest, Grid})
        scale(index, m);
    for (std::size_t index : {CoverUp, CoverDown}) scale(index, mm);
    scale(RunFlow, Flow::gpm(1).litresPerSecond());
    metric[Table] =
        table(3, {"4 SDR35", 2.10 / m, "1%", Nothing{}, Nothing{}, Nothing{}, "6 SDR35", 4.20 / m, 0.005});
    metric[Crossings] = table(5, {"B", "Out", 20.0 * m, "below", 97.0 * m});
    metric[Dig] = table(2, {1.0 * m, 4.0 / m, 3.0 * m, 10.0 / m});
    metric.push_back("metric");
    const Numbers us = numbers("GRADE.PLAN", job());
    const Numbers si = numbers("GRADE.PLAN", metric);
    for (std::size_t row : {0, 1, 3, 4})
        for (std::size_t i = 0; i < 7; ++i) {
            const double factor = i == 0 || i == 1 || i == 3 || i == 4 ? m : 1;
            EXPECT_NEAR(at(si, row, i), at(us, row, i) * factor, 1e-9) << "row " << row << ", column " << i;
        }
    EXPECT_EQ(texts("GRADE.REASON", metric).items[4].find(" ft"), std::string::npos);
}

TEST(GradeReasonInCalc, OneTextOnEachOutletRow) {
    const Texts said = texts("GRADE.REASON", job());
    ASSERT_EQ(said.items.size(), 5u);
    for (std::size_t row : {0, 2, 3}) EXPECT_EQ(said.items[row], "");
    EXPECT_EQ(said.items[1].substr(0, 4), "OK: ");
    EXPECT_NE(said.items[1].find("to spare where it is tightest"), std::string::npos) << said.items[1];
    EXPECT_EQ(said.items[4].substr(0, 4), "OK: ");
    std::vector<Value> spanish = with(InUnits, "US");
    spanish.push_back("es");
    EXPECT_EQ(texts("GRADE.REASON", spanish).items[1].substr(0, 12), "OK: sobran 0");
}

TEST(GradeReasonInCalc, AnOutletAFootHigherIsImpossibleAndSaysWhy) {
    std::vector<Value> values = withCell(Lowest, 1, 97.3);
    std::get<Range>(values[Highest]).cells[1] = 98.5;
    const Numbers plan = numbers("GRADE.PLAN", values);
    const Numbers before = numbers("GRADE.PLAN", job());
    for (std::size_t row : {0, 1, 3})
        for (std::size_t i = 0; i < 7; ++i) EXPECT_EQ(code(at(plan, row, i)), badArgumentCode);
    for (std::size_t i = 0; i < 7; ++i)
        EXPECT_EQ(at(plan, 4, i), at(before, 4, i)) << "the other line keeps its numbers";
    // At the crossing at most 97 - 4.095/12 = 96.65875; twenty feet on, at 1 %, 96.45875 or lower: the 6 in
    // pipe needs half the fall, but passes 2 in lower.
    const Texts said = texts("GRADE.REASON", values);
    EXPECT_EQ(said.items[1].substr(0, 4), "NO: ");
    EXPECT_NE(said.items[1].find(
                  "Crossing 20.00 ft down B-Out: invert at most 96.66 ft (4 SDR35 passes below 97.00 ft)."),
              std::string::npos)
        << said.items[1];
    EXPECT_NE(said.items[1].find("Out: invert at least 97.30 ft (lowest outlet)."), std::string::npos)
        << said.items[1];
    EXPECT_NE(said.items[1].find("lowest outlet 96.45 ft (-0.85 ft)"), std::string::npos) << said.items[1];
}

TEST(GradePlanInCalc, ABadRowSpoilsItsTreeAlone) {
    const Numbers before = numbers("GRADE.PLAN", job());
    const struct {
        std::size_t index, row;
        Cell cell;
        const char* said;
    } cases[] = {
        {RunLength, 3, "soon", "row 4 (D2-B): length is \"soon\""},
        {RunLength, 0, Nothing{}, "row 1 (D1-B): length is missing"},
        {GroundUp, 0, "", "row 1 (D1-B): ground up is missing"},
        {GroundDown, 1, "high", "row 2 (B-Out): ground down is \"high\""},
        {PipeCell, 0, "rubber", "row 1 (D1-B): pipe is \"rubber\""},
        {PipeCell, 0, "4 SCH40",
         "row 1 (D1-B): pipe is \"4 SCH40\"; allowed: names that stand in the pipe table."},
        {PipeCell, 3, Nothing{}, "row 4 (D2-B): pipe is missing"},
        {CoverUp, 3, -1.0, "row 4 (D2-B): cover up is -1"},
        {Lowest, 1, Nothing{}, "row 2 (B-Out): outlet lowest is missing"},
        {RunFlow, 0, -5.0, "row 1 (D1-B): flow is -5"},
        {FixedUp, 0, "?", "row 1 (D1-B): fixed up is \"?\""},
        {To, 3, "D2", "row 4 (D2-D2): "},
    };
    for (const auto& c : cases) {
        SCOPED_TRACE(c.said);
        const std::vector<Value> values = withCell(c.index, c.row, c.cell);
        const Numbers plan = numbers("GRADE.PLAN", values);
        const Texts said = texts("GRADE.REASON", values);
        EXPECT_EQ(code(at(plan, c.row, 0)), badArgumentCode);
        if (c.index != To) {
            EXPECT_EQ(said.items[1].substr(0, std::string(c.said).size()), c.said);
            for (std::size_t row : {0, 1, 3})
                for (std::size_t i = 0; i < 7; ++i) EXPECT_EQ(code(at(plan, row, i)), badArgumentCode);
        } else {
            EXPECT_NE(said.items[3], "") << "a row that leads nowhere says so itself";
        }
        for (std::size_t i = 0; i < 7; ++i) {
            EXPECT_EQ(at(plan, 4, i), at(before, 4, i)) << "the other line keeps its numbers";
            EXPECT_TRUE(isBlankCell(at(plan, 2, i)));
        }
    }
}

TEST(GradeReasonInCalc, RowsAreNamedAsTheSheetCountsThem) {
    const auto counted = [](std::vector<Value> values, double first) {
        values.resize(findFunction("GRADE.REASON")->arguments.size());
        values.insert(values.end(), {"US", "en", first});
        return texts("GRADE.REASON", values);
    };
    EXPECT_EQ(counted(withCell(RunLength, 3, "soon"), 8).items[1].substr(0, 15), "row 11 (D2-B): ");
    // Two ways out of D2: each row names the other.
    const std::vector<Value> twice = withCell(From, 0, "D2");
    EXPECT_NE(texts("GRADE.REASON", twice).items[0].find("row 4"), std::string::npos);
    EXPECT_NE(counted(twice, 8).items[0].find("row 11"), std::string::npos) << counted(twice, 8).items[0];
    EXPECT_NE(counted(twice, 8).items[3].find("row 8"), std::string::npos) << counted(twice, 8).items[3];
    std::vector<Value> bad = job();
    bad.resize(findFunction("GRADE.REASON")->arguments.size());
    bad.insert(bad.end(), {"US", "en", 0.5});
    EXPECT_EQ(whyNot("GRADE.REASON", bad), "first row is 0.5; allowed: a whole number from 1 to 1048576.");
}

TEST(GradePlanInCalc, ADropHasItsPrice) {
    // The crossing holds the main down: D1 and D2 drop into B.
    std::vector<Value> values = with(Crossings, table(5, {"B", "Out", 0.0, "below", 97.2}));
    values.resize(findFunction("GRADE.PLAN")->arguments.size());
    const auto priced = [&](const char* units, double price) {
        std::vector<Value> all = values;
        all.insert(all.end(), {units, price});
        return numbers("GRADE.PLAN", all);
    };
    const Numbers free = numbers("GRADE.PLAN", values), cheap = priced("US", 0.01);
    const double drop = at(free, 0, 1) - at(free, 1, 0);
    ASSERT_GT(drop, 0.3);
    EXPECT_NEAR(at(cheap, 0, 6), at(free, 0, 6) + 0.01 * drop, 1e-5);
    EXPECT_LT(at(priced("US", 1e5), 0, 1), at(free, 0, 1)) << "dearer than digging: made lower";
    std::vector<Value> asked = values;
    asked.insert(asked.end(), {"US", "en", 1.0, 1e5});
    EXPECT_EQ(texts("GRADE.REASON", asked).items[1].substr(0, 4), "OK: ");
    values.insert(values.end(), {"US", -1.0});
    EXPECT_EQ(whyNot("GRADE.PLAN", values),
              "drop price is -1; allowed: from 0 to 1000000 $/ft (3280840 $/m).");
}

TEST(GradePlanInCalc, ABadCrossingSpoilsItsTreeOrIsRefused) {
    const auto crossing = [](Cell to, Cell distance, Cell side, Cell level) {
        return with(Crossings,
                    table(5, {"B", std::move(to), std::move(distance), std::move(side), std::move(level)}));
    };
    const auto said = [&](const std::vector<Value>& values) {
        return texts("GRADE.REASON", values).items[1];
    };
    EXPECT_EQ(said(crossing("Ditch", 20.0, "below", 97.0)),
              "row 2 (B-Out): crossings row 1: crossing is \"Ditch\"; allowed: B-Out.");
    EXPECT_EQ(said(crossing("Out", 50.0, "below", 97.0)),
              "row 2 (B-Out): crossings row 1: crossing is 50; allowed: from 0 to 40.");
    EXPECT_EQ(said(crossing("Out", 20.0, "beside", 97.0)),
              "row 2 (B-Out): crossings row 1: crossing is \"beside\"; allowed: \"below\", \"above\".");
    EXPECT_EQ(said(crossing("Out", 20.0, "below", Nothing{})),
              "row 2 (B-Out): crossings row 1: crossing is left out; allowed: a number.");
    // A crossing that asks for nothing yet.
    EXPECT_EQ(said(crossing("Out", 20.0, Nothing{}, Nothing{})), said(with(Crossings, Nothing{})));
    EXPECT_EQ(whyNot("GRADE.PLAN", with(Crossings, table(5, {"Q", "Out", 1.0, "below", 97.0}))),
              "crossings row 1: no run leaves \"Q\".");
}

TEST(GradePlanInCalc, RefusesWhatAllRowsShare) {
    EXPECT_EQ(whyNot("GRADE.PLAN", with(Deepest, -1.0)),
              "deepest cut is -1; allowed: above 0 and below 32800 ft (9997 m).");
    EXPECT_EQ(whyNot("GRADE.PLAN", with(Deepest, "deep")),
              "deepest cut is \"deep\"; allowed: a length in ft, such as 12.4, 5' 6-1/2\", 66 1/2 in.");
    EXPECT_EQ(whyNot("GRADE.PLAN", with(Grid, 0.0)),
              "grid is 0; allowed: from 0.00004 to 32 ft (0.00001 to 10 m).");
    EXPECT_NE(whyNot("GRADE.PLAN", with(JoinBy, "flat")).find("join is \"flat\""), std::string::npos);
    EXPECT_EQ(whyNot("GRADE.PLAN", with(Table, "4 SDR35")),
              "pipe table is \"4 SDR35\"; allowed: a range of at least 3 columns.");
    EXPECT_EQ(whyNot("GRADE.PLAN", with(Dig, table(2, {3.0, 10.0, 1.0, 4.0}))),
              "dig cost is 1 ft in row 2; allowed: cuts that rise from row to row.");
    EXPECT_EQ(whyNot("GRADE.PLAN", with(Dig, table(2, {3.0, 10.0, 3.0, 12.0}))),
              "dig cost is 3 ft in row 2; allowed: cuts that rise from row to row.");
    EXPECT_EQ(whyNot("GRADE.PLAN", with(Dig, table(2, {3.0, 10.0, 4.0, "dear"}))).find("dig cost "), 0u);
    EXPECT_EQ(whyNot("GRADE.PLAN", with(Dig, table(2, {3.0, 10.0, 4.0, Nothing{}}))).find("dig cost "), 0u);
    EXPECT_EQ(whyNot("GRADE.PLAN", with(GroundUp, column({99.0}))),
              "ground up is 1 row; allowed: 5 rows, as many as from.");
    EXPECT_EQ(whyNot("GRADE.PLAN", with(Grid, 0.0), Language::Spanish),
              "grid es 0; se admite: de 0.00004 a 32 ft (0.00001 a 10 m).");
    // A row of the pipe table that cannot be used is told where its pipe is listed.
    const Texts said =
        texts("GRADE.REASON", with(Table, table(3, {"4 SDR35", "free", "1%", "6 SDR35", 4.2, "0.5%"})));
    EXPECT_EQ(said.items[4], "row 5 (X-Ditch): pipe table row 1: price is \"free\"; allowed: a number.");
}

TEST(GradePlanInCalc, TheOrderOfRowsDoesNotMatter) {
    const std::size_t order[] = {4, 3, 2, 1, 0};
    std::vector<Value> turned = job();
    for (Value& value : turned) {
        Range* cells = std::get_if<Range>(&value);
        if (cells == nullptr || cells->columns != 1) continue;
        const std::vector<Cell> before = cells->cells;
        for (std::size_t row = 0; row < before.size(); ++row) cells->cells[row] = before[order[row]];
    }
    const Numbers plan = numbers("GRADE.PLAN", job());
    const Numbers other = numbers("GRADE.PLAN", turned);
    const Texts reason = texts("GRADE.REASON", job());
    const Texts otherReason = texts("GRADE.REASON", turned);
    for (std::size_t row = 0; row < 5; ++row) {
        EXPECT_EQ(reason.items[row], otherReason.items[order[row]]);
        if (row == 2) continue;
        for (std::size_t i = 0; i < 7; ++i) EXPECT_EQ(at(plan, row, i), at(other, order[row], i));
    }
}

TEST(GradePlanInCalc, SolvesOnceForTheSameCells) {
    const auto solved = [](const char* name, const std::vector<Value>& values) {
        return gradesOf(Arguments(*findFunction(name), values));
    };
    const auto first = solved("GRADE.PLAN", job());
    EXPECT_EQ(first, solved("GRADE.REASON", job())) << "plan and reason share";
    std::vector<Value> spanish = with(InUnits, "US");
    spanish.push_back("es");
    EXPECT_EQ(first, solved("GRADE.REASON", spanish)) << "the language changes nothing";
    EXPECT_NE(first, solved("GRADE.PLAN", withCell(GroundUp, 0, 99.81)));
    EXPECT_NE(first, solved("GRADE.PLAN", with(InUnits, "metric"))) << "the units do";
    // A number and its text are two different cells.
    EXPECT_NE(solved("GRADE.PLAN", withCell(RunLength, 0, 60.0)),
              solved("GRADE.PLAN", withCell(RunLength, 0, "60")));
    // Bounded: after many other questions it is solved again, with the same answer.
    for (int i = 0; i < 20; ++i) solved("GRADE.PLAN", withCell(RunLength, 4, 50.0 + i));
    const auto again = solved("GRADE.PLAN", job());
    EXPECT_NE(first, again);
    EXPECT_EQ(first->trees.front().plan.cost, again->trees.front().plan.cost);
}

TEST(GradePlanInCalc, ManyThreadsGetTheirOwnAnswers) {
    std::vector<std::vector<double>> expected;
    for (int i = 0; i < 12; ++i)
        expected.push_back(numbers("GRADE.PLAN", withCell(RunLength, 4, 40.0 + i)).items);
    std::vector<std::thread> threads;
    std::vector<int> wrong(4, 0);
    for (std::size_t thread = 0; thread < wrong.size(); ++thread)
        threads.emplace_back([&, thread] {
            for (int round = 0; round < 60; ++round) {
                const int i = (round * 5 + static_cast<int>(thread) * 3) % 12;
                const Numbers plan = numbers("GRADE.PLAN", withCell(RunLength, 4, 40.0 + i));
                for (std::size_t item = 28; item < 35; ++item)
                    if (plan.items[item] != expected[static_cast<std::size_t>(i)][item]) ++wrong[thread];
            }
        });
    for (std::thread& thread : threads) thread.join();
    EXPECT_EQ(wrong, std::vector<int>(4, 0));
}

TEST(GradeConfidenceInCalc, BothUnits) {
    const double chance = number("GRADE.CONFIDENCE", {40.0, 98.0, 97.58, "1%"});
    EXPECT_NEAR(chance, 0.92135039647485743, 1e-12);  // mpmath 1.3.0
    EXPECT_NEAR(number("GRADE.CONFIDENCE", {40 * m, 98 * m, 97.58 * m, 0.01, 0.01 * m, "metric"}), chance,
                1e-9);
    EXPECT_NEAR(number("GRADE.CONFIDENCE", {"40'", 98.0, 97.58, "1:100", 0.01}), chance, 1e-12);
    EXPECT_EQ(whyNot("GRADE.CONFIDENCE", {40.0, 98.0, 97.58, "1%", 0.0}),
              "rod error is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("GRADE.CONFIDENCE", {0.0, 98.0, 97.58, "1%"}), "length is 0; allowed: above 0.");
}

}  // namespace
}  // namespace trenchbook::addin
