// Blocks of a whole job, through the catalog: shapes, headings, rows that stay in place, one bad cell, both systems.
#include <chrono>

#include "catalog/listing.h"
#include "job_tables.h"
#include "trenchbook/job/columns.h"
#include "trenchbook/job/views.h"

namespace trenchbook::addin {
namespace {

using namespace harness;

TEST(JobBlocks, HaveARowARowOfTheirTable) {
    const Tables tables;
    const std::vector<std::pair<const char*, std::size_t>> rows = {
        {"JOB.RUNS", 4},    {"JOB.NODES", 5}, {"JOB.WATER", 3},  {"JOB.CROSSINGS", 1},
        {"JOB.OUTLETS", 0}, {"JOB.PIT", 1},   {"JOB.GROUND", 0}, {"JOB.PUMP", 0}};
    for (const auto& [name, count] : rows) {
        EXPECT_EQ(numbers(name, tables.values()).rows(), count) << name;
        EXPECT_EQ(texts(std::string(name) + ".TEXT", tables.values()).rows(), count) << name;
    }
    EXPECT_EQ(numbers("JOB.COUNTS", tables.values()).rows(), 10u);
    EXPECT_EQ(numbers("JOB.FINDINGS", tables.values()).rows(),
              texts("JOB.FINDINGS.TEXT", tables.values()).rows());
}

TEST(JobBlocks, RunsAreWorkedOutFromTheOutletUphill) {
    const Numbers runs = numbers("JOB.RUNS", Tables().values());
    // 96.9 at the outlet, 60 ft at 1 % up to B, 40 ft more to A.
    EXPECT_NEAR(cell(runs, 2, at(Viewed::Runs, "Invert down")), 96.9, 1e-9);
    EXPECT_NEAR(cell(runs, 2, at(Viewed::Runs, "Invert up")), 97.5, 1e-9);
    EXPECT_NEAR(cell(runs, 0, at(Viewed::Runs, "Invert up")), 97.9, 1e-9);
    EXPECT_NEAR(cell(runs, 0, at(Viewed::Runs, "Station up")), 100, 1e-9);
    EXPECT_NEAR(cell(runs, 2, at(Viewed::Runs, "Slope %")), 0.01, 1e-12);
    EXPECT_NEAR(cell(runs, 0, at(Viewed::Runs, "Row below")), 3, 0);
    // An acre inch an hour is 1.00833 cfs: 6 in/hr on 950 + 540 + 200 sq ft of full runoff.
    const double gpm = 6 / 12.0 / 3600 * (950 + 540 + 200) * 1728 / 231 * 60;
    EXPECT_NEAR(cell(runs, 2, at(Viewed::Runs, "Flow")), gpm, 1e-9 * gpm);
    for (std::size_t column = 0; column < runs.columns; ++column)
        EXPECT_TRUE(isBlankCell(cell(runs, 1, column))) << numberView(Viewed::Runs).columns[column].heading;
}

TEST(JobBlocks, WordsStandBesideTheirNumbers) {
    const Texts runs = texts("JOB.RUNS.TEXT", Tables().values());
    EXPECT_EQ(word(runs, 0, 0), word(runs, 0, 1).substr(0, word(runs, 0, 0).size()));
    EXPECT_EQ(word(runs, 1, 0), "");
    EXPECT_EQ(word(runs, 1, 1), "");
    EXPECT_EQ(word(runs, 2, *wordView(Viewed::Runs).place("Run")), "B-Out");
    EXPECT_EQ(word(runs, 2, *wordView(Viewed::Runs).place("Pipe")), "4 SDR35");
    const Texts nodes = texts("JOB.NODES.TEXT", Tables().with("US", "es"));
    EXPECT_EQ(word(nodes, 3, *wordView(Viewed::Nodes).place("Kind")), "bajante");
}

TEST(JobBlocks, AMetricJobIsTheSameJob) {
    Tables us, metric;
    const auto scale = [](Range& range, std::initializer_list<std::size_t> columns, double factor) {
        for (std::size_t row = 1; row < range.rows; ++row)
            for (const std::size_t column : columns)
                if (double* number = std::get_if<double>(&range.cells[row * range.columns + column]))
                    *number *= factor;
    };
    std::get<double>(metric.facts.cells[1]) *= 25.4;
    scale(metric.nodes, {2}, 0.3048);
    scale(metric.water, {2, 4}, 0.3048 * 0.3048);
    scale(metric.runs, {3, 6}, 0.3048);
    scale(metric.crossings, {3}, 0.3048);
    scale(metric.crossings, {4, 5}, 25.4);
    for (const Viewed viewed : {Viewed::Runs, Viewed::Nodes, Viewed::Water, Viewed::Crossings}) {
        const char* const names[] = {"JOB.RUNS", "JOB.NODES", "JOB.WATER", "JOB.GROUND", "JOB.CROSSINGS"};
        const char* name = names[static_cast<std::size_t>(viewed)];
        const Numbers in = numbers(name, us.values()), mm = numbers(name, metric.with("metric"));
        ASSERT_EQ(in.items.size(), mm.items.size());
        for (std::size_t i = 0; i < in.items.size(); ++i) {
            const NumberColumn& column = numberView(viewed).columns[i % in.columns];
            SCOPED_TRACE(column.heading);
            const double factor = info(column.unit).siPerUs / info(column.unit).siPerMetric;
            if (std::isnan(in.items[i]))
                EXPECT_TRUE(std::isnan(mm.items[i]));
            else
                EXPECT_NEAR(mm.items[i], in.items[i] * factor, 1e-8 * (1 + std::fabs(in.items[i] * factor)));
        }
    }
}

// One bad cell spoils its row and what depends on it; the other rows' answers stay equal to the last digit.
TEST(JobBlocks, ABadCellLeavesOtherRowsAlone) {
    const Tables good;
    const Numbers before = numbers("JOB.WATER", good.values());
    for (std::size_t column = 2; column < good.water.columns; ++column) {
        Tables bad = good;
        bad.water.cells[3 * bad.water.columns + column] = std::string(errorMark);
        const Numbers after = numbers("JOB.WATER", bad.values());
        ASSERT_EQ(after.items.size(), before.items.size());
        for (std::size_t i = 0; i < 2 * before.columns; ++i)
            EXPECT_EQ(std::bit_cast<std::uint64_t>(after.items[i]),
                      std::bit_cast<std::uint64_t>(before.items[i]));
        EXPECT_EQ(word(texts("JOB.WATER.TEXT", bad.values()), 2, 0), "NO");
        EXPECT_NE(word(texts("JOB.WATER.TEXT", bad.values()), 2, 1).find("holds an error"),
                  std::string::npos);
    }
    // The side run has no length: the main's levels stand, its flow does not come.
    Tables noLength = good;
    noLength.runs.cells[4 * noLength.runs.columns + 3] = "soon";
    const Numbers runs = numbers("JOB.RUNS", noLength.values());
    EXPECT_NEAR(cell(runs, 0, at(Viewed::Runs, "Invert up")), 97.9, 1e-9);
    EXPECT_TRUE(std::isnan(cell(runs, 3, at(Viewed::Runs, "Invert up"))));
    EXPECT_FALSE(isBlankCell(cell(runs, 3, at(Viewed::Runs, "Invert up"))));
}

TEST(JobBlocks, ColumnsMayMove) {
    Tables moved;
    Range turned = moved.runs;
    for (std::size_t row = 0; row < turned.rows; ++row)
        std::reverse(turned.cells.begin() + static_cast<std::ptrdiff_t>(row * turned.columns),
                     turned.cells.begin() + static_cast<std::ptrdiff_t>((row + 1) * turned.columns));
    const Numbers before = numbers("JOB.RUNS", moved.values());
    moved.runs = turned;
    const Numbers after = numbers("JOB.RUNS", moved.values());
    ASSERT_EQ(before.items.size(), after.items.size());
    for (std::size_t i = 0; i < before.items.size(); ++i)
        EXPECT_EQ(std::bit_cast<std::uint64_t>(after.items[i]),
                  std::bit_cast<std::uint64_t>(before.items[i]));
}

TEST(JobBlocks, RefusalsNameTheTable) {
    Tables tables;
    tables.runs.cells[3] = "Lenght";
    EXPECT_EQ(whyNot("JOB.RUNS", tables.values()),
              "Runs: no column is headed Length; the first row holds the headings");
    EXPECT_EQ(whyNot("JOB.RUNS", tables.values(), Language::Spanish),
              "Runs: ninguna columna se llama Length; la primera fila lleva los encabezados");
    std::vector<Value> word = Tables().values();
    word[1] = "nodes";
    EXPECT_NE(whyNot("JOB.RUNS", word).find("nodes"), std::string::npos);
}

// The cache compares tables whole: another cell, unit or row number is another job.
TEST(JobBlocks, TheSharedJobIsNeverAnothers) {
    Tables tables;
    const Numbers first = numbers("JOB.RUNS", tables.values());
    tables.runs.cells[9 + 3] = 41.0;
    const Numbers longer = numbers("JOB.RUNS", tables.values());
    EXPECT_NEAR(cell(longer, 0, at(Viewed::Runs, "Invert up")), 97.91, 1e-9);
    tables.runs.cells[9 + 3] = "41";
    EXPECT_NEAR(cell(numbers("JOB.RUNS", tables.values()), 0, at(Viewed::Runs, "Invert up")), 97.91, 1e-9);
    tables.runs.cells[9 + 3] = 40.0;
    const Numbers again = numbers("JOB.RUNS", tables.values());
    for (std::size_t i = 0; i < first.items.size(); ++i)
        EXPECT_EQ(std::bit_cast<std::uint64_t>(again.items[i]), std::bit_cast<std::uint64_t>(first.items[i]));
    // 40 m at 1 %, and 60 feet, which the cell says itself.
    EXPECT_NEAR(cell(numbers("JOB.RUNS", tables.with("metric")), 0, at(Viewed::Runs, "Invert up")),
                96.9 + 0.01 * (40 + 60 * 0.3048), 1e-9);
}

TEST(JobBlocks, FindingsNameRowsThatExist) {
    Tables tables;
    tables.runs.cells[9 + 7] = "";           // no surface
    tables.nodes.cells[3 * 5 + 2] = "tall";  // no ground at A
    const Numbers found = numbers("JOB.FINDINGS", tables.values());
    const Texts said = texts("JOB.FINDINGS.TEXT", tables.values());
    ASSERT_GT(found.rows(), 1u);
    bool ground = false, job = false;
    for (std::size_t row = 0; row < found.rows(); ++row) {
        const std::string sheet = word(said, row, *wordView(Viewed::Findings).place("Sheet"));
        const std::string says = word(said, row, *wordView(Viewed::Findings).place("Says"));
        EXPECT_FALSE(says.empty());
        const std::string name = word(said, row, *wordView(Viewed::Findings).place("Name"));
        EXPECT_EQ(word(said, row, *wordView(Viewed::Findings).place("Listed")),
                  sheet == "Job" ? says : sheet + (name.empty() ? "" : " " + name) + ": " + says);
        job = job || sheet == "Job";
        ground = ground || (sheet == "Nodes" && says.find("\"tall\"") != std::string::npos &&
                            cell(found, row, 0) == 2 + 0);
        if (sheet == "Runs" && !isBlankCell(cell(found, row, 0))) {
            EXPECT_GE(cell(found, row, 0), 1);
            EXPECT_LE(cell(found, row, 0), 4);
        }
    }
    EXPECT_TRUE(job);
    EXPECT_TRUE(ground);
}

TEST(JobBlocks, CountsAddUp) {
    const Numbers counts = numbers("JOB.COUNTS", Tables().values());
    for (std::size_t column = 0; column < counts.columns; ++column) {
        double sum = 0;
        for (std::size_t row = 0; row + 1 < counts.rows(); ++row) sum += cell(counts, row, column);
        EXPECT_EQ(cell(counts, counts.rows() - 1, column), sum)
            << numberView(Viewed::Counts).columns[column].heading;
    }
    // Three runs, each counted once.
    const std::size_t runs = static_cast<std::size_t>(Part::Runs);
    EXPECT_EQ(cell(counts, runs, 0) + cell(counts, runs, 1) + cell(counts, runs, 2) + cell(counts, runs, 3),
              3);
}

}  // namespace
}  // namespace trenchbook::addin
