#include "trenchbook/layout/plan_distance.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <cmath>

#include "trenchbook/core/error.h"

using namespace trenchbook;

namespace {

PlanPoint at(double east, double north) { return {Length::feet(east), Length::feet(north)}; }
const PlanShape house{.corners = {at(0, 0), at(40, 0), at(40, 30), at(0, 30)}, .filled = true};

}  // namespace

TEST(PlanDistance, ByHand) {
    EXPECT_NEAR(gap(house, {.corners = {at(20, -8)}}).feet(), 8, 1e-12);
    EXPECT_NEAR(gap(house, {.corners = {at(43, 34)}}).feet(), 5, 1e-12);  // 3, 4, 5 to a corner
    EXPECT_EQ(gap(house, {.corners = {at(20, 10)}}), Length{});
    // A lot line around it is not filled: the house stands 10 ft inside.
    const PlanShape lot{.corners = {at(-10, -20), at(60, -20), at(60, 50), at(-10, 50)}};
    EXPECT_NEAR(gap(lot, house).feet(), 10, 1e-12);
    EXPECT_NEAR(gap(lot, {.corners = {at(20, 10)}}).feet(), 30, 1e-12);
    // Without its last side it is open to the left.
    EXPECT_NEAR(gap({.corners = lot.corners, .open = true}, {.corners = {at(-9, 15)}}).feet(), 35, 1e-12);
    // A run that passes a corner between its ends; one that goes under the house.
    EXPECT_NEAR(gap(house, {.corners = {at(30, -20), at(60, 10)}}).feet(), 10 / std::sqrt(2.0), 1e-12);
    EXPECT_EQ(gap(house, {.corners = {at(-5, 5), at(45, 25)}}), Length{});
    EXPECT_NEAR(nearestShare(at(30, -20), at(60, 10), house), 15.0 / 30, 1e-12);
    EXPECT_NEAR(nearestShare(at(-10, 5), at(50, 5), house), 10.0 / 60, 1e-12);
    EXPECT_THROW(gap(house, {}), Error);
}

TEST(PlanDistance, IsTheLeastOfManyPoints) {
    rc::check([] {
        const auto some = [] { return *rc::gen::inRange(-800, 800) / 8.0; };
        const PlanPoint a = at(some(), some()), b = at(some(), some());
        const Length whole = gap(house, {.corners = {a, b}});
        double least = 1e9;
        constexpr int steps = 2000;
        for (int i = 0; i <= steps; ++i) {
            const double t = static_cast<double>(i) / steps;
            const PlanPoint p{a.east + (b.east - a.east) * t, a.north + (b.north - a.north) * t};
            const double across = std::max({-p.east.feet(), p.east.feet() - 40, 0.0}),
                         along = std::max({-p.north.feet(), p.north.feet() - 30, 0.0});
            const double far = std::hypot(across, along);
            least = std::min(least, far);
        }
        RC_ASSERT(whole.feet() <= least + 1e-9);
        RC_ASSERT(whole.feet() >= least - distance(a, b).feet() / steps - 1e-9);
        // The nearest share is as near.
        const double t = nearestShare(a, b, house);
        const PlanPoint near{a.east + (b.east - a.east) * t, a.north + (b.north - a.north) * t};
        RC_ASSERT(std::fabs(gap(house, {.corners = {near}}).feet() - whole.feet()) < 1e-6);
    });
}

TEST(PlanDistance, IsTheSameBothWays) {
    rc::check([] {
        const auto some = [] { return *rc::gen::inRange(-400, 400) / 4.0; };
        const PlanShape a{.corners = {at(some(), some()), at(some(), some()), at(some(), some())},
                          .filled = true};
        const PlanShape b{.corners = {at(some(), some()), at(some(), some())}};
        RC_ASSERT(gap(a, b) == gap(b, a));
    });
}
