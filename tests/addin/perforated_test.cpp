#include <numbers>

#include "catalog_harness.h"

namespace trenchbook::addin {
namespace {

using namespace harness;

TEST(PerforatedFunctions, DefaultsAreTheCautiousOnes) {
    // 120 places with 3 holes of 1/2 in in 40 ft, half of them clogged.
    const double holes = 360;
    EXPECT_NEAR(number("PERFORATED.INFLOW", {0.5, 3.0, 4.0, 40.0, 1.0}),
                holes / 2 * number("PERFORATED.HOLE", {0.5, 1.0}), 1e-9);
    EXPECT_NEAR(number("PERFORATED.OPEN", {0.5, 3.0, 4.0, 40.0}) * 144, holes * std::numbers::pi / 16, 1e-9);
    EXPECT_NEAR(number("PERFORATED.OPEN", {0.5, 3.0, 4.0, 40.0, 0.1}) * 144, holes * 0.05, 1e-9);
    // Twice the flow in one pipe is the flow itself in each of two.
    EXPECT_NEAR(number("UNDERDRAIN.BORE", {20.0}), number("UNDERDRAIN.BORE", {20.0, 0.005, 4.0, 2.0, 0.011}),
                1e-12);
}

TEST(PerforatedFunctions, MetricAgrees) {
    expectUnitsAgree("PERFORATED.HOLE", {0.25, 1.0, 0.6});
    expectUnitsAgree("PERFORATED.OPEN", {0.5, 3.0, 4.0, 40.0, 0.1});
    expectUnitsAgree("PERFORATED.INFLOW", {0.5, 3.0, 4.0, 40.0, 1.0, 0.2, 0.6, 0.1});
    expectUnitsAgree("UNDERDRAIN.BORE", {20.0, "1%", 3.0, 2.0, 0.012});
    expectUnitsAgree("GRAVEL.FLOW", {1.0, 1.5, "1%", 10000.0});
}

TEST(PerforatedFunctions, BadArguments) {
    EXPECT_EQ(whyNot("PERFORATED.HOLE", {0.0, 1.0}), "hole is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("PERFORATED.HOLE", {0.25, -1.0}), "head is -1; allowed: 0 or more.");
    EXPECT_EQ(whyNot("PERFORATED.HOLE", {0.25, 1.0, 61.0}),
              "coefficient is 61; allowed: above 0 and at most 1. If 61 percent is meant, write 0.61.");
    EXPECT_EQ(whyNot("PERFORATED.OPEN", {0.5, 0.0, 4.0, 40.0}), "holes is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("PERFORATED.OPEN", {0.5, 3.0, 0.0, 40.0}, Language::Spanish),
              "spacing es 0; se admite: mayor que 0.");
    EXPECT_EQ(whyNot("PERFORATED.OPEN", {0.5, 3.0, 4.0, -40.0}), "length is -40; allowed: 0 or more.");
    EXPECT_EQ(whyNot("PERFORATED.INFLOW", {0.5, 3.0, 4.0, 40.0, 1.0, 50.0}),
              "blocked share is 50; allowed: from 0 to 1. If 50 percent is meant, write 0.5.");
    EXPECT_EQ(whyNot("UNDERDRAIN.BORE", {20.0, 0.005, 0.5}), "safety is 0.5; allowed: from 1 to 100.");
    EXPECT_EQ(whyNot("UNDERDRAIN.BORE", {20.0, 0.005, 2.0, 1.5}),
              "pipes is 1.5; allowed: a whole number from 1 to 100.");
    EXPECT_EQ(whyNot("UNDERDRAIN.BORE", {20.0, 0.005, 2.0, 1.0, 11.0}),
              "roughness is 11; allowed: Manning n from 0.005 to 0.5.");
    EXPECT_EQ(whyNot("UNDERDRAIN.BORE", {0.0}), "flow is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("GRAVEL.FLOW", {1.0, 1.0, 0.01, 0.0}), "conductivity is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("GRAVEL.FLOW", {1.0, 0.0, 0.01, 10.0}), "depth is 0; allowed: above 0.");
}

}  // namespace
}  // namespace trenchbook::addin
