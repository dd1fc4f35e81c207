#include "catalog_harness.h"
#include "reference.h"
#include "trenchbook/core/units.h"

namespace trenchbook::addin {
namespace {

using namespace harness;

TEST(Swale, CapacityDepthVelocityAgree) {
    const double flow = number("SWALE.CAPACITY", {2.0, 3.0, 0.5, "1%", 0.035});
    EXPECT_NEAR(number("SWALE.DEPTH", {flow, 2.0, 3.0, "1%", 0.035}), 0.5, 1e-12);
    // Area 2 x 0.5 + 3 x 0.25 = 1.75 sq ft; 448.831 gpm to the cfs.
    EXPECT_NEAR(number("SWALE.VELOCITY", {flow, 2.0, 3.0, 0.01, 0.035}), flow / 448.8311688 / 1.75, 1e-7);
}

TEST(Swale, PrintedTrapezoid) {
    using reference::check;
    constexpr const char* hw5 =
        "Texas Tech University CE 4353/5360, HW 5 solution, trapezoid 40 ft, 3:1, 3200 cfs";
    const double gpm = Flow::cfs(3200).gpm();
    const double n = 0.025 * 1.48592 / 1.49;  // the source rounds Manning's constant to 1.49
    check("SWALE.DEPTH", "normal depth, n 0.025, slope 0.002, through the catalog",
          number("SWALE.DEPTH", {gpm, 40.0, 3.0, 0.002, n}), 6.82, 0.005, hw5, "read");
    check("SWALE.CRITICAL", "critical depth, through the catalog", number("SWALE.CRITICAL", {gpm, 40.0, 3.0}),
          5.10, 0.005, hw5, "read");
}

TEST(Swale, MetricAgrees) {
    const double foot = 0.3048, gpm = Flow::gpm(1).litresPerSecond();
    EXPECT_NEAR(number("SWALE.CAPACITY", {2 * foot, 3.0, 0.5 * foot, "1%", 0.035, "metric"}) /
                    (number("SWALE.CAPACITY", {2.0, 3.0, 0.5, "1%", 0.035}) * gpm),
                1, 1e-9);
    EXPECT_NEAR(number("SWALE.DEPTH", {450 * gpm, 2 * foot, 3.0, "1%", 0.035, "metric"}) /
                    (number("SWALE.DEPTH", {450.0, 2.0, 3.0, "1%", 0.035}) * foot),
                1, 1e-9);
    EXPECT_NEAR(number("SWALE.VELOCITY", {450 * gpm, 2 * foot, 3.0, "1%", 0.035, "metric"}) /
                    (number("SWALE.VELOCITY", {450.0, 2.0, 3.0, "1%", 0.035}) * foot),
                1, 1e-9);
    EXPECT_NEAR(number("SWALE.CRITICAL", {450 * gpm, 2 * foot, 3.0, "metric"}) /
                    (number("SWALE.CRITICAL", {450.0, 2.0, 3.0}) * foot),
                1, 1e-9);
}

TEST(Swale, BadArguments) {
    EXPECT_EQ(whyNot("SWALE.CAPACITY", {0.0, 0.0, 0.5, "1%", 0.035}),
              "side slope is 0; allowed: above 0 where the bottom has no width.");
    EXPECT_EQ(whyNot("SWALE.CAPACITY", {2.0, 3.0, 0.0, "1%", 0.035}), "depth is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("SWALE.CAPACITY", {-2.0, 3.0, 0.5, "1%", 0.035}), "bottom is -2; allowed: 0 or more.");
    EXPECT_EQ(whyNot("SWALE.DEPTH", {450.0, 2.0, 3.0, 2.0, 0.035}),
              "slope is 2; allowed: above 0 and below 1. If 2 percent is meant, write 2% or 0.02.");
    EXPECT_EQ(whyNot("SWALE.DEPTH", {450.0, 2.0, 3.0, "1%", 35.0}),
              "roughness is 35; allowed: Manning n from 0.005 to 1.");
    EXPECT_EQ(whyNot("SWALE.DEPTH", {-450.0, 2.0, 3.0, "1%", 0.035}, Language::Spanish),
              "flow es -450; se admite: 0 o más.");
    EXPECT_EQ(whyNot("SWALE.VELOCITY", {"much", 2.0, 3.0, "1%", 0.035}),
              "flow is \"much\"; allowed: a number in gpm.");
    EXPECT_EQ(whyNot("SWALE.CRITICAL", {450.0, 2.0}), "side slope is left out; allowed: a number.");
    EXPECT_EQ(number("SWALE.DEPTH", {0.0, 2.0, 3.0, "1%", 0.035}), 0);
}

}  // namespace
}  // namespace trenchbook::addin
