// GRATE.*, BASIN.OUTLET, CHANNEL.* and DOWNSPOUT.CAPACITY as Calc calls them.
#include <cmath>
#include <numbers>

#include "catalog_harness.h"
#include "reference.h"
#include "trenchbook/core/units.h"

namespace trenchbook::addin {
namespace {

using namespace harness;

constexpr double mm = 25.4;
const double litresPerSecond = Flow::gpm(1).litresPerSecond();
const double gpmPerCfs = Flow::cfs(1).gpm();

TEST(InletFunctions, KnownAnswers) {
    // 12 x 12 in under 1 in, half blocked: weir of 2 ft.
    EXPECT_NEAR(number("GRATE.CAPACITY", {12.0, 12.0, 0.9, 1.0}), 3 * 2 * std::pow(1.0 / 12, 1.5) * gpmPerCfs,
                1e-9);
    // One side along a wall, nothing blocked.
    EXPECT_NEAR(number("GRATE.CAPACITY", {12.0, 12.0, 0.9, 1.0, 0.0, 12.0}),
                3 * 3 * std::pow(1.0 / 12, 1.5) * gpmPerCfs, 1e-9);
    // Blank width, left out or 0: round.
    const double round = 3 * (std::numbers::pi / 2) * std::pow(1.0 / 12, 1.5) * gpmPerCfs;
    EXPECT_NEAR(number("GRATE.CAPACITY", {12.0, 0.0, 0.9, 1.0}), round, 1e-9);
    EXPECT_NEAR(number("GRATE.CAPACITY", {12.0, "", 0.9, 1.0}), round, 1e-9);
    EXPECT_NEAR(number("GRATE.PONDING",
                       {number("GRATE.CAPACITY", {9.0, 12.0, 0.3, 2.5, 0.3, 4.0}), 9.0, 12.0, 0.3, 0.3, 4.0}),
                2.5, 1e-9);
    reference::check("DOWNSPOUT.CAPACITY", "4 in leader, 7/24 full", number("DOWNSPOUT.CAPACITY", {4.0}), 144,
                     0.5, "National Standard Plumbing Code 2006, table 13.6.1", "read");
    EXPECT_EQ(number("DOWNSPOUT.CAPACITY", {"3x4"}), number("DOWNSPOUT.CAPACITY", {3.0}));
    EXPECT_EQ(number("DOWNSPOUT.CAPACITY", {"2x3", 7.0 / 24}), number("DOWNSPOUT.CAPACITY", {"2"}));
    EXPECT_NEAR(number("BASIN.OUTLET", {"4 SDR35", 8.0}), number("BASIN.OUTLET", {3.975, 8.0}), 1e-9);
    EXPECT_EQ(number("CHANNEL.CAPACITY", {4.0, 4.0, 20.0}),
              number("CHANNEL.CAPACITY", {4.0, 4.0, 20.0, 0.0, 0.010, 0.0, "free"}));
    EXPECT_NEAR(
        number("CHANNEL.DEPTH", {number("CHANNEL.CAPACITY", {4.0, 5.0, 20.0, "1/8 in/ft", 0.011, 1.0, 2.0}),
                                 4.0, 20.0, "1/8 in/ft", 0.011, 2.0}),
        4, 1e-6);
}

TEST(InletFunctions, UsAndMetricAgree) {
    EXPECT_NEAR(number("GRATE.CAPACITY", {12 * mm, 9 * mm, 0.4, 3 * mm, 0.5, 4 * mm, "metric"}),
                number("GRATE.CAPACITY", {12.0, 9.0, 0.4, 3.0, 0.5, 4.0}) * litresPerSecond, 1e-9);
    EXPECT_NEAR(number("GRATE.PONDING", {60 * litresPerSecond, 12 * mm, 9 * mm, 0.4, 0.5, 4 * mm, "metric"}),
                number("GRATE.PONDING", {60.0, 12.0, 9.0, 0.4, 0.5, 4.0}) * mm, 1e-9);
    EXPECT_NEAR(number("BASIN.OUTLET", {"4 SDR35", 8 * mm, "metric"}),
                number("BASIN.OUTLET", {"4 SDR35", 8.0}) * litresPerSecond, 1e-9);
    EXPECT_NEAR(number("DOWNSPOUT.CAPACITY", {3 * mm, 0.3, "metric"}),
                number("DOWNSPOUT.CAPACITY", {3.0, 0.3}) * litresPerSecond, 1e-9);
    EXPECT_NEAR(number("DOWNSPOUT.CAPACITY", {"3x4", Nothing{}, "metric"}),
                number("DOWNSPOUT.CAPACITY", {"3x4"}) * litresPerSecond, 1e-9);
    EXPECT_NEAR(number("CHANNEL.CAPACITY",
                       {4 * mm, 5 * mm, 20 * metresPerFoot, 0.01, 0.011, 1 * mm, 2 * mm, "metric"}),
                number("CHANNEL.CAPACITY", {4.0, 5.0, 20.0, 0.01, 0.011, 1.0, 2.0}) * litresPerSecond, 1e-9);
    EXPECT_NEAR(number("CHANNEL.DEPTH",
                       {60 * litresPerSecond, 4 * mm, 20 * metresPerFoot, 0.01, 0.011, 2 * mm, "metric"}),
                number("CHANNEL.DEPTH", {60.0, 4.0, 20.0, 0.01, 0.011, 2.0}) * mm, 1e-9);
}

TEST(InletFunctions, FaultsInWords) {
    EXPECT_EQ(whyNot("GRATE.CAPACITY", {12.0, 12.0, 0.0, 1.0}),
              "open share is 0: a grate without openings lets no water through.");
    EXPECT_EQ(whyNot("GRATE.CAPACITY", {12.0, 12.0, 0.0, 1.0}, Language::Spanish),
              "open share es 0: una rejilla sin aberturas no deja pasar agua.");
    EXPECT_EQ(whyNot("GRATE.CAPACITY", {12.0, 12.0, 40.0, 1.0}),
              "open share is 40; allowed: from 0 to 1. If 40 percent is meant, write 0.4.");
    EXPECT_EQ(whyNot("GRATE.CAPACITY", {0.0, 12.0, 0.4, 1.0}), "length is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("GRATE.PONDING", {0.0, 12.0, 12.0, 0.4}), "flow is 0; allowed: above 0.");
    EXPECT_EQ(
        whyNot("CHANNEL.CAPACITY", {4.0, 4.0, 20.0, 0.0, 0.010, 0.0, 5.0}),
        "water depth at the outlet is 5 in (127 mm), but the channel has room for only 4 in (101.6 mm): the "
        "outlet drowns it, and it takes no water.");
    EXPECT_EQ(whyNot("CHANNEL.CAPACITY", {4.0, 4.0, 20.0, 0.0, 0.010, 0.0, "half"}),
              "water depth at the outlet is \"half\"; allowed: a number in in.");
    EXPECT_EQ(whyNot("CHANNEL.DEPTH", {60.0, 4.0, 20.0, 0.0, 0.0}),
              "roughness is 0; allowed: Manning n from 0.005 to 0.5.");
    EXPECT_EQ(whyNot("CHANNEL.DEPTH", {60.0, 4.0, 20.0, 2.0}).substr(0, 10), "slope is 2");
    EXPECT_EQ(whyNot("DOWNSPOUT.CAPACITY", {"wide"}), "size is \"wide\"; allowed: 2x3, 3x4 or a diameter.");
    EXPECT_EQ(whyNot("DOWNSPOUT.CAPACITY", {3.0, 0.9}),
              "fill is 0.9; allowed: above 0 to 1/3: a fuller leader chokes.");
    EXPECT_EQ(whyNot("BASIN.OUTLET", {"4 SDR35", 0.0}), "head is 0; allowed: above 0.");
}

}  // namespace
}  // namespace trenchbook::addin
