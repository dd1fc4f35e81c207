#include "trenchbook/ground/footing.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "reference.h"
#include "trenchbook/core/error.h"

using namespace trenchbook;
using namespace trenchbook::reference;

TEST(Footing, PublishedLine) {
    int checked = 0;
    for (const Row& row : rows("30g_trench_footing_safety.csv")) {
        if (row.output == "distance" && row.has("footing_bottom_ft")) {
            // Depths under the same ground.
            const Length footing = -Length::feet(row.input("footing_bottom_ft"));
            const Length trench = -Length::feet(row.input("trench_depth_ft"));
            check("FOOTING.DISTANCE", row, footingDistance(footing, trench).feet());
            EXPECT_EQ(footingClearance(footing, trench, Length::feet(row.number())), Length{});
            ++checked;
        }
        if (row.output == "angle" && row.item.starts_with("Trench deeper than and parallel to a footing")) {
            // One foot away the line has gone down by what a trench bottom level with the footing stands
            // over it.
            const Length foot = Length::feet(1);
            const Length down = footingClearance(Length{}, Length{}, foot);
            const double ours = std::atan2(down.si(), foot.si()) * 180 / std::numbers::pi;
            EXPECT_NEAR(ours, row.number(), 1e-12);
            check("FOOTING.CLEARANCE", row, std::round(ours * 1e9) / 1e9);
            ++checked;
        }
    }
    EXPECT_EQ(checked, 5);
}

TEST(Footing, Signs) {
    EXPECT_NEAR(footingClearance(Length::feet(98), Length::feet(97), Length::feet(2.5)).feet(), 1.5, 1e-12);
    EXPECT_LT(footingClearance(Length::feet(98), Length::feet(95), Length::feet(2.5)), Length{});
    EXPECT_EQ(footingDistance(Length::feet(98), Length::feet(99)), Length{});
    EXPECT_THROW(footingClearance(Length::feet(98), Length::feet(97), Length::feet(-1)), Error);
}
