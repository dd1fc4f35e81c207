// JOB.STORMS as Calc calls it.
#include "catalog_harness.h"
#include "job_tables.h"

namespace trenchbook::addin {
namespace {

using namespace harness;

const Range rain{.rows = 4, .columns = 2, .cells = {"", 10.0, "5-min", 0.6, "10-min", 1.0, "60-min", 1.8}};

std::vector<Value> asked(Value table, const char* units = "US") {
    const Tables job;
    Nothing none;
    return {job.facts, job.nodes, job.water, job.runs, none, none, none,
            none,      none,      table,     none,     none, none, units};
}

TEST(StormFunctions, ARowAStorm) {
    const Numbers storms = numbers("JOB.STORMS", asked(rain));
    ASSERT_EQ(storms.columns, 13u);
    ASSERT_EQ(storms.rows(), 9u);
    const auto at = [&](std::size_t row, std::size_t column) { return storms.items[row * 13 + column]; };
    EXPECT_NEAR(at(1, 0), 10, 1e-12);
    EXPECT_NEAR(at(1, 1), 1, 1e-12);
    EXPECT_NEAR(at(1, 2), 6, 1e-9);
    // 6 in/hr is the job's own rain: the same share and freeboard as it is solved for.
    const Numbers runs = numbers("JOB.RUNS", asked(rain));
    const NumberView& view = numberView(Viewed::Runs);
    double most = 0;
    for (std::size_t row = 0; row < runs.rows(); ++row) {
        const double flow = runs.items[row * runs.columns + *view.place("Flow")];
        const double capacity = runs.items[row * runs.columns + *view.place("Capacity")];
        if (flow > 0 && capacity > 0) most = std::max(most, flow / capacity);
    }
    EXPECT_NEAR(at(1, 3), most, 1e-12);
    const Numbers nodes = numbers("JOB.NODES", asked(rain));
    double least = 1e9;
    for (std::size_t row = 0; row < nodes.rows(); ++row)
        if (const double free =
                nodes.items[row * nodes.columns + *numberView(Viewed::Nodes).place("Freeboard")];
            !std::isnan(free))
            least = std::min(least, free);
    EXPECT_NEAR(at(1, 4), least, 1e-12);
    EXPECT_TRUE(isBlankCell(at(2, 1)));  // 15 minutes are not in the table
    EXPECT_NEAR(at(8, 0), 60, 1e-12);    // centered
    const Texts words = texts("JOB.STORMS.TEXT", asked(rain));
    ASSERT_EQ(words.columns, 5u);
    EXPECT_EQ(words.items[5], "10 min");
    EXPECT_EQ(words.items[2 * 5 + 3], "not in the table");
    EXPECT_EQ(words.items[1 * 5 + 4].substr(0, 35), "In a 10-minute cloudburst of 1 in, ");
    std::vector<Value> spanish = asked(rain);
    spanish.push_back("es");
    EXPECT_EQ(texts("JOB.STORMS.TEXT", spanish).items[2 * 5 + 3], "no está en la tabla");
}

// A pit of 4 x 3 x 1 ft with 40 % voids holds 4.8 cu ft; 0.1 in in 10 minutes bring 14 from 950 + 540 + 200 sq ft, even
// over the time. What soaks away in that time is a hundredth of it.
TEST(StormFunctions, APitThatFailsFirstSaysWhen) {
    Range little = rain;
    for (std::size_t row = 1; row < 4; ++row)
        little.cells[2 * row + 1] = std::get<double>(rain.cells[2 * row + 1]) / 10;
    std::vector<Value> values = asked(little);
    Range nodes = Tables().nodes;
    nodes.cells[6 * nodes.columns + 1] = "tee";
    values[1] = nodes;
    values[6] = table(2, {"Tee at node", "Out", "Length", 4.0, "Width", 3.0, "Rock depth", 1.0,
                          "Soil over it", 0.5, "Voids", 0.4, "Side share", 0.0, "Design soak rate", 0.5});
    const Numbers storms = numbers("JOB.STORMS", values);
    ASSERT_EQ(texts("JOB.STORMS.TEXT", values).items[1 * 5 + 3], "pit full after 3 minutes");
    const double minutes = 4.8 / (0.1 / 12 * 1690) * 10;
    for (const std::size_t column : {9u, 12u})
        EXPECT_NEAR(storms.items[13 + column], minutes, 0.02 * minutes) << column;
}

TEST(StormFunctions, MetricIsTheSameJob) {
    Range millimetres = rain;
    for (std::size_t row = 1; row < 4; ++row)
        millimetres.cells[2 * row + 1] = std::get<double>(rain.cells[2 * row + 1]) * 25.4;
    // The tables stay in feet as text would: only what the rain does to its own columns is compared.
    const Numbers us = numbers("JOB.STORMS", asked(rain));
    const Numbers metric = numbers("JOB.STORMS", asked(millimetres, "metric"));
    EXPECT_NEAR(metric.items[13 + 1] / 25.4, us.items[13 + 1], 1e-9);
    EXPECT_NEAR(metric.items[13 + 2] / 25.4, us.items[13 + 2], 1e-9);
}

TEST(StormFunctions, NoTableNothingTried) {
    const Texts words = texts("JOB.STORMS.TEXT", asked(Nothing{}));
    ASSERT_EQ(words.rows(), 9u);
    for (std::size_t row = 0; row < 9; ++row) EXPECT_EQ(words.items[row * 5 + 3], "not in the table");
    EXPECT_EQ(texts("JOB.STORMS.TEXT", asked(0.0)).rows(), 9u);
}

TEST(StormFunctions, BadTables) {
    Range hole = rain;
    hole.cells[3] = "";
    EXPECT_EQ(whyNot("JOB.STORMS", asked(hole)), "rain: a hole: there is no rain for 5-min at 10 years.");
    EXPECT_EQ(whyNot("JOB.STORMS", {Nothing{}, Nothing{}, Nothing{}}),
              "runs is blank; allowed: a range with headings.");
    Range early = rain;
    early.cells[1] = 2.0;  // the job asks 10 years
    EXPECT_EQ(whyNot("JOB.STORMS", asked(early)),
              "return is 10 years, outside the rain table, which holds 2 to 2 years.");
}

}  // namespace
}  // namespace trenchbook::addin
