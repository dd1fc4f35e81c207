// JOB.PROFILE: the block for the chart of a line from the side.
#include <cmath>
#include <utility>

#include "catalog/drawing_pens.h"
#include "job_tables.h"
#include "reference.h"

namespace trenchbook::addin {
namespace {

using namespace harness;

// Behind the tables of a job: no pipe table, dig cost, deepest cut and drop price; the line, width and height in inches.
Numbers profile(const Tables& job, const char* line, double wide = 8, double high = 4,
                const char* language = "en") {
    std::vector<Value> values = job.values();
    values.resize(17);
    for (Value value : std::vector<Value>{line, wide, high, "us", language}) values.push_back(value);
    return numbers("JOB.PROFILE", values);
}

using Points = std::vector<std::pair<double, double>>;
Points pointsOf(const Numbers& block, const std::string& name) {
    Points all;
    for (const Pen& pen : profilePens().pens)
        for (const PenStrip& strip : pen.strips)
            for (std::size_t row = strip.first; pen.name == name && row < strip.first + strip.rows; ++row)
                if (!isBlankCell(cell(block, row, 2 * strip.pair)))
                    all.emplace_back(cell(block, row, 2 * strip.pair), cell(block, row, 2 * strip.pair + 1));
    return all;
}

TEST(JobProfile, DrawsTheRunsOfItsLineInTwoScales) {
    const Numbers block = profile({}, "main");
    ASSERT_EQ(block.rows(), profilePens().rows + 1);
    EXPECT_EQ(cell(block, profilePens().rows, 0), 0);  // all had room
    const Points pipe = pointsOf(block, "Pipe");
    ASSERT_GE(pipe.size(), 5u);
    // The band of the lowest run: outside bottom from the end uphill, 60 ft at 1 %, then its outside top.
    reference::check("JOB.PROFILE", "a run of 60 ft at 20 ft to the inch, mm", pipe[1].first - pipe[0].first,
                     60 / 20.0 * 25.4, 1e-9, "the drawing scale, worked by hand", "computed");
    reference::check("JOB.PROFILE", "outside of a 4 in pipe over its rise of 0.6 ft",
                     (pipe[3].second - pipe[0].second) / (pipe[1].second - pipe[0].second),
                     4.215 / (0.6 * 12), 1e-9, "ASTM D3034: outside diameter 4.215 in", "printed");
    EXPECT_TRUE(pointsOf(block, "As laid").empty());
    EXPECT_GT(pointsOf(block, "Words").size(), 300u);
    // Another line, no line, another language.
    EXPECT_NE(pointsOf(profile({}, "side"), "Pipe"), pipe);
    EXPECT_TRUE(pointsOf(profile({}, "no such line"), "Words").empty());
    EXPECT_EQ(pointsOf(profile({}, "main", 8, 4, "es"), "Ground")[0], pointsOf(block, "Ground")[0]);
    EXPECT_NE(pointsOf(profile({}, "main", 8, 4, "es"), "Words"), pointsOf(block, "Words"));
}

TEST(JobProfile, CountsWhatHasNoRoom) {
    Tables job;
    job.runs.cells[9] = job.runs.cells[27] = std::string("main");
    std::vector<Cell> grown = job.runs.cells;
    // Two hundred more runs along the line: more than the block holds.
    std::string above = "A";
    for (int i = 0; i < 200; ++i) {
        const std::string node = "N" + std::to_string(i);
        for (const Cell& one :
             std::vector<Cell>{"main", node, above, 10.0, "4 SDR35", "1%", "", "lawn", "lawn"})
            grown.push_back(one);
        above = node;
    }
    job.runs = table(9, grown);
    EXPECT_GT(cell(profile(job, "main"), profilePens().rows, 0), 100);
}

TEST(JobProfile, EachPenHasCellsOfItsOwn) {
    for (const Pens* pens : {&drawingPens(), &profilePens()}) {
        std::vector<int> taken(pens->pairs * pens->rows);
        for (const Pen& pen : pens->pens)
            for (const PenStrip& strip : pen.strips) {
                ASSERT_LT(strip.pair, pens->pairs) << pen.name;
                ASSERT_LE(strip.first + strip.rows, pens->rows) << pen.name;
                for (std::size_t row = strip.first; row < strip.first + strip.rows; ++row)
                    EXPECT_EQ(taken[strip.pair * pens->rows + row]++, 0) << pen.name << " " << row;
            }
    }
}

}  // namespace
}  // namespace trenchbook::addin
