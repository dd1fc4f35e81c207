// Tables of another height than the network's: each function refuses them and names the column.
#include <gtest/gtest.h>

#include <functional>

#include "trenchbook/core/error.h"
#include "trenchbook/lines/cleanouts.h"
#include "trenchbook/lines/inverts.h"
#include "trenchbook/lines/peak.h"
#include "trenchbook/lines/stations.h"
#include "trenchbook/lines/water_levels.h"

namespace trenchbook {
namespace {

std::string refused(const std::function<void()>& call) {
    try {
        call();
    } catch (const Error& error) {
        return error.argument();
    }
    return "nothing";
}

TEST(Rows, OfAnotherNumberAreRefused) {
    const std::vector<std::string> from = {"A", "B"}, to = {"B", "Out"};
    const Network lines(from, to);
    for (const std::size_t rows : {1u, 3u}) {
        const std::vector<trenchbook::Run> runs(rows);
        const std::vector<Carried> carried(rows);
        const RainTable rain =
            RainTable::parse("duration,2,10\n5-min,0.4,0.6\n60-min,1.2,1.8", Length::inches(1));
        EXPECT_EQ(refused([&] { (void)lineFaults(lines, runs); }), "length");
        EXPECT_EQ(refused([&] { (void)lineInverts(lines, runs, Join::Crown); }), "length");
        EXPECT_EQ(refused([&] { (void)lineWater(lines, runs, carried); }), "length");
        EXPECT_EQ(refused([&] { (void)lineWater(lines, std::vector<trenchbook::Run>(2), carried); }), "flow");
        EXPECT_EQ(refused([&] { (void)stations(lines, runs); }), "length");
        EXPECT_EQ(refused([&] { (void)stakes(lines, runs, Length::feet(25)); }), "length");
        EXPECT_EQ(refused([&] { (void)sinceOpenings(lines, runs, {}, Angle::degrees(45)); }), "length");
        EXPECT_EQ(refused([&] { (void)askedCleanouts(lines, runs, {}, cleanoutLimits(Ruleset())); }),
                  "length");
        EXPECT_EQ(refused([&] { (void)linePeaks(lines, runs, {}, rain, 10, Travel::Flow, std::nullopt); }),
                  "length");
        EXPECT_EQ(refused([&] { Network(from, std::vector<std::string>(rows)); }), "to");
    }
    EXPECT_EQ(refused([&] { (void)stakes(lines, std::vector<trenchbook::Run>(2), Length()); }), "step");
}

}  // namespace
}  // namespace trenchbook
