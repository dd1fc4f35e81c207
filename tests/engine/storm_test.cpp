#include "trenchbook/water/storm.h"
#include "sentence.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "reference.h"
#include "trenchbook/core/error.h"

using namespace trenchbook;
using namespace trenchbook::reference;

namespace {

const Length inch = Length::inches(1);

Length sum(const Storm& storm, std::size_t first, std::size_t count) {
    Length total;
    for (std::size_t i = first; i < first + count; ++i) total += storm[i].depth;
    return total;
}

}  // namespace

TEST(Storm, AlternatingBlocksOfHds2) {
    std::string text = "Intensity\n,50\n";
    for (const Row& row : rows("10b_alternating_block_idf.csv"))
        if (row.item == "Baltimore intensity") text += row.word("D_h") + "-hr," + row.value + "\n";
    const Storm storm =
        alternatingBlocks(RainTable::parse(text, inch), Duration::hours(6), 50, Duration::hours(1));
    ASSERT_EQ(storm.size(), 6u);
    int checked = 0;
    for (const Row& row : rows("10b_alternating_block_idf.csv")) {
        if (!row.has("hour") || !row.has("T_yr")) continue;
        const auto hour = static_cast<std::size_t>(row.input("hour"));
        if (row.output == "block depth")
            check("RAIN.STORM", row, storm[hour - 1].depth.inches());
        else
            check("RAIN.STORM", row, sum(storm, 0, hour) / sum(storm, 0, 6));
        ++checked;
    }
    EXPECT_EQ(checked, 12);
}

TEST(Storm, NrcsDistributions) {
    const std::map<std::string, StormType> types = {
        {"I", StormType::I}, {"IA", StormType::IA}, {"II", StormType::II}, {"III", StormType::III}};
    std::map<std::string, Storm> storms;
    for (const auto& [name, type] : types) storms[name] = nrcsStorm(inch, type, Duration::minutes(30));
    const std::vector<Row>& table = rows("10a_scs_24h_distributions.csv");
    EXPECT_EQ(table.size(), 196u);
    for (const Row& row : table) {
        const std::string name = row.item.substr(row.item.rfind(' ') + 1);
        const auto halfHours = static_cast<std::size_t>(2 * row.input("t_h"));
        check("RAIN.STORM", row, sum(storms.at(name), 0, halfHours).inches());
    }
}

TEST(Storm, Laws) {
    // An invented power curve: its increments shrink, so that every window about the peak is exact.
    const RainTable table = RainTable::parse(",2,10\n5-min,0.4,0.6\n24-hr,2.6,4\n", inch);
    EXPECT_TRUE(rc::check("alternating blocks hold the table's depth in every window about the peak", [&] {
        const int count = *rc::gen::inRange(1, 90);
        const Duration step = Duration::minutes(*rc::gen::inRange(5, 15));
        const double years = *rc::gen::inRange(20, 100) / 10.0;
        const Storm storm = alternatingBlocks(table, step * count, years, step);
        RC_ASSERT(storm.size() == static_cast<std::size_t>(count));
        RC_ASSERT(std::fabs(storm.back().end / (step * count) - 1) < 1e-12);
        const std::size_t peak = static_cast<std::size_t>(count - 1) / 2;
        for (std::size_t width = 1; width <= storm.size(); ++width) {
            const std::size_t first = peak - (width - 1) / 2;
            const double ours = sum(storm, first, width) / inch;
            const double wanted = table.depth(step * static_cast<double>(width), years) / inch;
            RC_ASSERT(std::fabs(ours - wanted) < 1e-12);
        }
    }));
    EXPECT_TRUE(rc::check("the NRCS storms rain the whole day's depth at any step", [] {
        const auto type = *rc::gen::element(StormType::I, StormType::IA, StormType::II, StormType::III);
        const int steps = *rc::gen::element(1, 24, 48, 96, 240, 1440);
        const Storm storm = nrcsStorm(Length::inches(4), type, Duration::hours(24.0 / steps));
        RC_ASSERT(storm.size() == static_cast<std::size_t>(steps));
        RC_ASSERT(std::fabs(sum(storm, 0, storm.size()).inches() - 4) < 1e-12);
        for (const StormStep& step : storm) RC_ASSERT(step.depth > Length{});
    }));
    EXPECT_DOUBLE_EQ(nrcsShare(StormType::II, Duration::hours(11.75)), (0.283 + 0.663) / 2);
}

TEST(Storm, ShapesByName) {
    const RainTable table = RainTable::parse(",2,10\n5-min,0.4,0.6\n24-hr,2.6,4\n", inch);
    const Duration day = Duration::hours(24);
    const Duration half = Duration::minutes(30);
    const auto second = [&](const char* shape) {
        return designStorm(table, day, 10, half, shape)[24].depth.inches();
    };
    EXPECT_NEAR(second("type II"), 4 * (0.735 - 0.663), 1e-12);
    EXPECT_NEAR(second("TYPE-III"), 4 * (0.702 - 0.500), 1e-12);
    EXPECT_NEAR(second("Type IA"), 4 * (0.683 - 0.664), 1e-12);
    EXPECT_EQ(second("centered"), alternatingBlocks(table, day, 10, half)[24].depth.inches());

    EXPECT_EQ(sentence([&] { designStorm(table, day, 10, half, "type IV"); }).substr(0, 20),
              "shape is \"type IV\"; ");
    EXPECT_EQ(sentence([&] { designStorm(table, Duration::hours(6), 10, half, "type II"); }),
              "duration is 360 minutes; the NRCS storm types are 24 hours long, 1440 minutes.");
    EXPECT_EQ(sentence([&] { alternatingBlocks(table, Duration::hours(1), 10, Duration::minutes(7)); }),
              "step is 7 min, which does not divide the storm's 60 min into equal steps.");
    EXPECT_EQ(sentence([&] { alternatingBlocks(table, day, 10, Duration::minutes(0.01)); }),
              "step is 0.01 min; allowed: long enough for at most 20000 steps.");
    EXPECT_EQ(sentence([&] { alternatingBlocks(table, day, 10, Duration{}); }),
              "step is 0; allowed: above 0.");
}
