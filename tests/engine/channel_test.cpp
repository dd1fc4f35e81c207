#include "trenchbook/water/channel.h"
#include "sentence.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <cmath>

#include "reference.h"
#include "trenchbook/core/error.h"

using namespace trenchbook;
using namespace trenchbook::reference;

namespace {

double critical(const TrenchDrain& drain, Flow flow) {
    const double unit = flow.si() / drain.width.si();
    return std::cbrt(unit * unit / gravity);
}

// A second route to the same profile: the balance of forces, dM/dx = y (S0 - Sf) with M = y^2/2 + q^2 x^2/(g
// y), in small steps that thin out toward the outlet, calm water upstream and shooting water downstream.
// Where the calm water would have less force than critical depth it stays at critical depth.
class Balance {
  public:
    Balance(const TrenchDrain& drain, Flow flow) : drain_(drain), flow_(flow) {}

    struct Found {
        double head, deepest;
    };
    Found run(double outlet, int steps) const {
        const double length = drain_.length.si();
        std::vector<double> calm(static_cast<std::size_t>(steps + 1));
        double y = std::max(outlet, criticalAt(length));
        double force = forceOf(length, y);
        calm.back() = y;
        double control = 0;  // downstream end of the calm reach at the head
        for (int i = 0; i < steps; ++i) {
            const double from = static_cast<double>(i) / steps;
            const double to = static_cast<double>(i + 1) / steps;
            force = step(from, to, force, true);
            const double x = place(to);
            const double least = forceOf(x, criticalAt(x));
            if (x > 0 && force < least) {
                force = least;
                control = 0;
            } else if (control == 0) {
                control = place(from);
            }
            calm[static_cast<std::size_t>(steps - 1 - i)] = depthOf(x, force, true);
        }
        Found found{calm.front(), *std::max_element(calm.begin(), calm.end())};
        if (control == length) return found;
        // Shooting from the control to the outlet.
        found.deepest = std::max(outlet, 0.0);
        for (int i = 0; i <= steps; ++i)
            if (place(1 - static_cast<double>(i) / steps) <= control)
                found.deepest = std::max(found.deepest, calm[static_cast<std::size_t>(i)]);
        force = forceOf(control, criticalAt(control));
        for (int i = static_cast<int>(std::ceil(std::sqrt(1 - control / length) * steps)); i > 0; --i) {
            const double from = static_cast<double>(i) / steps;
            const double to = static_cast<double>(i - 1) / steps;
            force = std::max(step(from, to, force, false), forceOf(place(to), criticalAt(place(to))));
            found.deepest = std::max(found.deepest, depthOf(place(to), force, false));
        }
        return found;
    }

  private:
    double place(double t) const { return drain_.length.si() * (1 - t * t); }
    double unitFlow(double x) const { return flow_.si() / drain_.width.si() * x / drain_.length.si(); }
    double criticalAt(double x) const { return std::cbrt(unitFlow(x) * unitFlow(x) / gravity); }
    double forceOf(double x, double y) const { return y * y / 2 + unitFlow(x) * unitFlow(x) / (gravity * y); }
    double depthOf(double x, double force, bool calm) const {
        double low = criticalAt(x);
        if (force <= forceOf(x, low) && x > 0) return low;
        double high = calm ? std::sqrt(2 * force) : 0;
        for (int i = 0; i < 60; ++i) {
            const double middle = (low + high) / 2;
            (forceOf(x, middle) < force ? low : high) = middle;
        }
        return (low + high) / 2;
    }
    double change(double t, double force, bool calm) const {
        const double x = place(t);
        const double y = depthOf(x, force, calm);
        const double width = drain_.width.si();
        const double velocity = unitFlow(x) / y;
        const double radius = width * y / (width + 2 * y);
        const double friction = std::pow(drain_.roughness * velocity, 2) / std::pow(radius, 4.0 / 3);
        return -2 * t * drain_.length.si() * y * (drain_.slope.si() - friction);
    }
    double step(double from, double to, double force, bool calm) const {
        const double h = to - from;
        const double a = change(from, force, calm);
        const double b = change(from + h / 2, force + h / 2 * a, calm);
        const double c = change(from + h / 2, force + h / 2 * b, calm);
        const double d = change(to, force + h * c, calm);
        return force + h / 6 * (a + 2 * b + 2 * c + d);
    }

    TrenchDrain drain_;
    Flow flow_;
};

}  // namespace

TEST(Channel, LevelFrictionlessFreeOutfall) {
    const TrenchDrain drain{.width = Length::inches(4), .length = Length::feet(20), .roughness = 0};
    const Flow flow = Flow::gpm(60);
    const double yc = critical(drain, flow);
    const TrenchWater water = trenchWater(drain, flow, {}, 10);
    EXPECT_FALSE(water.controlInside);
    int checked = 0;
    for (const Row& row : rows("12f_lateral_inflow_benchmarks.csv")) {
        if (row.item != "Rectangular, level, frictionless, free outfall") continue;
        const auto station = static_cast<std::size_t>(std::lround(10 * row.input("x/L")));
        check("CHANNEL.DEPTH", row, water.depths[station].si() / yc);
        ++checked;
    }
    EXPECT_EQ(checked, 11);
    // Novak's equation 4.28 gives the place of each depth.
    for (int i = 1; i < 10; ++i) {
        const double y = water.depths[static_cast<std::size_t>(i)].si() / yc;
        check("CHANNEL.DEPTH", "place of a computed depth, x/L = [(y/yc)(1.5 - 0.5 (y/yc)^2)]^0.5",
              std::sqrt(y * (1.5 - 0.5 * y * y)), i / 10.0, 1e-6,
              "Novak, Moffat, Nalluri and Narayanan, Hydraulic Structures, eq. 4.28", "read");
    }
    check("CHANNEL.CAPACITY", "flow whose head depth is sqrt(3) yc, level and frictionless",
          trenchCapacity(drain, Length::inches(4)).si(),
          drain.width.si() * std::sqrt(gravity * std::pow(Length::inches(4).si() / std::sqrt(3.0), 3)), 1e-10,
          "closed form of the momentum balance (Hinds 1926)", "computed");
}

TEST(Channel, LevelFrictionlessDrownedOutlet) {
    const TrenchDrain drain{.width = Length::inches(6), .length = Length::feet(30), .roughness = 0};
    const Flow flow = Flow::gpm(100);
    const double yc = critical(drain, flow);
    int checked = 0;
    for (const Row& row : rows("12f_lateral_inflow_benchmarks.csv")) {
        if (row.item != "Rectangular, level, frictionless, drowned outlet") continue;
        const Length outlet = Length::fromSi(row.input("yL/yc") * yc);
        check("CHANNEL.DEPTH", row, deepestInDrain(drain, flow, outlet).si() / yc);
        ++checked;
    }
    EXPECT_EQ(checked, 10);
}

TEST(Channel, WithFrictionAndSlope) {
    int checked = 0;
    for (const Row& row : rows("12f_lateral_inflow_benchmarks.csv")) {
        if (!row.has("b_m")) continue;
        // The rows take g = 9.81: with the flow scaled by sqrt(g) and n against it nothing else changes.
        const double scale = std::sqrt(gravity / row.input("g"));
        const TrenchDrain drain{.width = Length::metres(row.input("b_m")),
                                .length = Length::metres(row.input("L_m")),
                                .slope = Slope::fraction(row.input("S0")),
                                .roughness = row.input("n") / scale};
        const TrenchWater water =
            trenchWater(drain, Flow::cubicMetresPerSecond(row.input("Q_out_m3s") * scale),
                        Length::metres(row.input("y_outlet_m")), 1);
        check("CHANNEL.DEPTH", row, water.depths.front().metres(), 1, "inputs turned to g = 9.80665 m/s2");
        ++checked;
    }
    EXPECT_EQ(checked, 6);
}

// Against the balance of forces in 20000 steps: free and drowned, level to steep, control at the outlet or
// inside.
TEST(Channel, FineIndependentIntegration) {
    struct Case {
        double inchesWide, feetLong, slope, roughness, gpm, outletInches;
        bool inside;
    };
    for (const Case& c :
         {Case{4, 20, 0, 0.010, 60, 0, false}, Case{4, 40, 0.005, 0.010, 90, 0, false},
          Case{4, 33, 0.01, 0.010, 32, 0, false}, Case{4, 33, 0.03, 0.010, 32, 0, true},
          Case{4, 98, 0.03, 0.010, 32, 0, true}, Case{4, 98, 0.02, 0.010, 32, 3.2, true},
          Case{2, 98, 0.02, 0.010, 160, 0, false}, Case{6, 60, 0.002, 0.013, 150, 5, false}}) {
        const TrenchDrain drain{.width = Length::inches(c.inchesWide),
                                .length = Length::feet(c.feetLong),
                                .slope = Slope::fraction(c.slope),
                                .roughness = c.roughness};
        const Flow flow = Flow::gpm(c.gpm);
        const Length outlet = Length::inches(c.outletInches);
        const TrenchWater water = trenchWater(drain, flow, outlet);
        const Balance::Found fine = Balance(drain, flow).run(outlet.si(), 20000);
        const std::string label = plain(c.inchesWide) + " in, " + plain(c.feetLong) + " ft, slope " +
                                  plain(c.slope) + ", " + plain(c.gpm) + " gpm, outlet " +
                                  plain(c.outletInches) + " in";
        EXPECT_EQ(water.controlInside, c.inside) << label;
        check("CHANNEL.DEPTH", label.c_str(), water.deepest.inches(), Length::metres(fine.deepest).inches(),
              2e-4 * water.deepest.inches(), "balance of forces in 20000 steps (second route, in this test)",
              "computed");
        if (!c.inside) {
            EXPECT_NEAR(water.depths.front().si(), fine.head, 1e-5 * water.deepest.si()) << label;
        }
    }
}

TEST(Channel, Laws) {
    EXPECT_TRUE(rc::check("capacity undoes depth; more of anything that hinders is deeper", [] {
        const TrenchDrain drain{.width = Length::inches(*rc::gen::inRange(2, 13)),
                                .length = Length::feet(*rc::gen::inRange(2, 120)),
                                .slope = Slope::fraction(*rc::gen::inRange(0, 60) / 1000.0),
                                .roughness = *rc::gen::inRange(8, 20) / 1000.0};
        const Length depth = Length::inches(*rc::gen::inRange(10, 120) / 10.0);
        const bool drowned = *rc::gen::arbitrary<bool>();
        const Length outlet = drowned ? depth * (*rc::gen::inRange(1, 90) / 100.0) : Length{};
        const Flow flow = trenchCapacity(drain, depth, {}, outlet);
        RC_ASSERT(std::fabs(deepestInDrain(drain, flow, outlet) / depth - 1) < 1e-6);
        RC_ASSERT(deepestInDrain(drain, flow * 1.02, outlet) > depth);
        RC_ASSERT(trenchCapacity(drain, depth * 1.05, {}, outlet) > flow);
        TrenchDrain rougher = drain;
        rougher.roughness *= 1.2;
        RC_ASSERT(deepestInDrain(rougher, flow, outlet) >= depth * (1 - 1e-6));
        TrenchDrain steeper = drain;
        steeper.slope = drain.slope + Slope::fraction(0.005);
        RC_ASSERT(deepestInDrain(steeper, flow, outlet) <= depth * (1 + 1e-6));
        // Every depth is one of still or moving water: none below 0, none above the deepest.
        for (Length at : trenchWater(drain, flow, outlet).depths) {
            RC_ASSERT(at > Length{});
            RC_ASSERT(at <= depth * (1 + 1e-6));
        }
    }));
    EXPECT_TRUE(rc::check("Froude's law: twice the size, with n in step, carries 2^2.5 times the flow", [] {
        const TrenchDrain drain{.width = Length::inches(*rc::gen::inRange(2, 13)),
                                .length = Length::feet(*rc::gen::inRange(2, 120)),
                                .slope = Slope::fraction(*rc::gen::inRange(0, 60) / 1000.0)};
        TrenchDrain larger = drain;
        larger.width = drain.width * 2;
        larger.length = drain.length * 2;
        larger.roughness = drain.roughness * std::pow(2.0, 1.0 / 6);
        const Flow flow = Flow::gpm(*rc::gen::inRange(5, 300));
        const double twice = deepestInDrain(larger, flow * std::pow(2.0, 2.5)) / deepestInDrain(drain, flow);
        RC_ASSERT(std::fabs(twice - 2) < 1e-6);
    }));
}

// A long narrow channel in which a thin sheet of shooting water clings to its balanced depth until it turns
// calm. What the momentum gains between head and outlet is weight down the slope less friction, summed here
// station by station.
TEST(Channel, ThinSheetThatTurnsCalm) {
    const TrenchDrain drain{.width = Length::inches(2),
                            .length = Length::feet(86),
                            .slope = Slope::fraction(0.019),
                            .roughness = 0.015};
    for (double gpm : {6.9, 7.5, 9.0, 9.78}) {
        constexpr int steps = 4000;
        const TrenchWater water = trenchWater(drain, Flow::gpm(gpm), {}, steps);
        const double inflow = Flow::gpm(gpm).si() / drain.width.si();  // at the outlet, per width
        const auto depth = [&](int i) { return water.depths[static_cast<std::size_t>(i)].si(); };
        const auto unitFlow = [&](int i) { return inflow * i / steps; };
        const auto momentum = [&](int i) {
            return unitFlow(i) * unitFlow(i) / (gravity * depth(i)) + depth(i) * depth(i) / 2;
        };
        const auto push = [&](int i) {
            const double radius = drain.width.si() * depth(i) / (drain.width.si() + 2 * depth(i));
            const double velocity = unitFlow(i) / depth(i);
            return depth(i) * (drain.slope.si() - drain.roughness * drain.roughness * velocity * velocity /
                                                      std::pow(radius, 4.0 / 3));
        };
        constexpr int first = steps / 20;
        double sum = 0;
        double least = 0;  // of weight alone, to judge the difference by
        for (int i = first; i < steps; ++i) {
            sum += (push(i) + push(i + 1)) / 2 * drain.length.si() / steps;
            least += depth(i) * drain.slope.si() * drain.length.si() / steps;
        }
        EXPECT_NEAR(momentum(steps) - momentum(first), sum, 5e-6 * least) << gpm << " gpm";
    }
}

// Steep narrow channels may turn from calm to shooting and, where they run fuller, back to calm without a
// jump.
TEST(Channel, CalmShootingAndCalmAgain) {
    const TrenchDrain drain{.width = Length::inches(3),
                            .length = Length::feet(63),
                            .slope = Slope::fraction(0.026),
                            .roughness = 0.012};
    const Flow flow = Flow::gpm(114.8);
    const TrenchWater water = trenchWater(drain, flow, {}, 200);
    EXPECT_TRUE(water.controlInside);
    const double yc = critical(drain, flow);
    double before = 0;
    int changes = 0;
    for (std::size_t i = 1; i < water.depths.size(); ++i) {
        const double x = static_cast<double>(i) / 200;
        const double froude2 = x * x / std::pow(water.depths[i].si() / yc, 3);
        EXPECT_GT(water.depths[i].si(), before)
            << i;  // no jump, and no step back before the outlet's drawdown
        if (i < 190) before = water.depths[i].si();
        const double last = std::pow((static_cast<double>(i) - 1) / 200, 2) /
                            std::pow(std::max(water.depths[i - 1].si(), 1e-12) / yc, 3);
        changes += i > 1 && (froude2 > 1) != (last > 1);
    }
    EXPECT_EQ(changes, 2);
    EXPECT_TRUE(rc::check("there is water at every station, never deeper than the deepest", [] {
        const TrenchDrain any{.width = Length::inches(*rc::gen::inRange(2, 13)),
                              .length = Length::feet(*rc::gen::inRange(2, 120)),
                              .slope = Slope::fraction(*rc::gen::inRange(0, 60) / 1000.0),
                              .roughness = *rc::gen::inRange(8, 20) / 1000.0};
        const Flow load = Flow::gpm(std::pow(10, *rc::gen::inRange(0, 300) / 100.0));
        const Length outlet = Length::inches(*rc::gen::inRange(0, 100) / 10.0);
        const TrenchWater found = trenchWater(any, load, outlet);
        for (Length depth : found.depths) {
            RC_ASSERT(depth > Length{});
            RC_ASSERT(depth <= found.deepest * (1 + 1e-6));
        }
    }));
}

// The control leaves the outlet without a jump in the answer, and the ends of the range hold.
TEST(Channel, RobustEverywhere) {
    TrenchDrain drain{.width = Length::inches(4), .length = Length::feet(30)};
    const Flow flow = Flow::gpm(50);
    double before = deepestInDrain(drain, flow).inches();
    for (int i = 1; i <= 400; ++i) {
        drain.slope = Slope::fraction(i * 0.0001);
        const double deepest = deepestInDrain(drain, flow).inches();
        EXPECT_LE(deepest, before * (1 + 1e-6)) << drain.slope.fraction();
        EXPECT_GE(deepest, before * 0.97) << drain.slope.fraction();
        before = deepest;
    }
    for (double slope : {0.0, 0.001, 0.02, 0.3, 0.9})
        for (double length : {0.1, 3.0, 300.0})
            for (double gpm : {0.1, 5.0, 100.0, 3000.0}) {
                drain.slope = Slope::fraction(slope);
                drain.length = Length::feet(length);
                const TrenchWater water = trenchWater(drain, Flow::gpm(gpm));
                EXPECT_TRUE(water.deepest > Length{} && std::isfinite(water.deepest.si()))
                    << slope << " " << length << " ft " << gpm << " gpm";
                for (Length depth : water.depths)
                    EXPECT_TRUE(depth > Length{} && depth <= water.deepest * (1 + 1e-9))
                        << slope << " " << length << " ft " << gpm << " gpm: " << depth.inches();
            }
}

TEST(Channel, Refusals) {
    const TrenchDrain drain{.width = Length::inches(4), .length = Length::feet(20)};
    EXPECT_EQ(
        sentence([&] { trenchCapacity(drain, Length::inches(4), {}, Length::inches(5)); }),
        "water depth at the outlet is 5 in (127 mm), but the channel has room for only 4 in (101.6 mm): the "
        "outlet drowns it, and it takes no water.");
    EXPECT_EQ(sentence([&] { trenchCapacity(drain, Length::inches(4), Length::inches(4)); }),
              "freeboard is 4 in; allowed: less than the channel's depth.");
    EXPECT_EQ(sentence([&] { deepestInDrain(drain, Flow{}); }), "flow is 0; allowed: above 0.");
    EXPECT_EQ(sentence([&] { deepestInDrain({.width = {}, .length = Length::feet(20)}, Flow::gpm(1)); }),
              "width is 0; allowed: above 0.");
    TrenchDrain percent = drain;
    percent.slope = Slope::fraction(1);
    EXPECT_EQ(sentence([&] { deepestInDrain(percent, Flow::gpm(1)); }).substr(0, 10), "slope is 1");
    percent.slope = Slope::fraction(-0.01);
    EXPECT_EQ(sentence([&] { deepestInDrain(percent, Flow::gpm(1)); }).substr(0, 14), "slope is -0.01");
}
