#include "trenchbook/pipe/circular.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <numbers>

#include "books.h"
#include "trenchbook/core/error.h"
#include "trenchbook/pipe/manning.h"

using namespace trenchbook;
using namespace trenchbook::reference;

namespace {

const Length foot = Length::feet(1);

// Independent of the engine's series: the segment integrated in long double over the half angle, by Simpson's
// rule.
struct Integrated {
    long double area, moment;  // of a bore of 1
};
Integrated integrate(long double fill) {
    const long double a = 2 * std::asin(std::sqrt(fill));
    const int steps = 4000;
    const auto area = [](long double t) { return std::sin(t) * std::sin(t) / 2; };  // dA/dt of a unit bore
    long double sumArea = 0, sumMoment = 0;
    for (int i = 0; i <= steps; ++i) {
        const long double t = a * i / steps;
        const long double weight = i == 0 || i == steps ? 1 : i % 2 ? 4 : 2;
        const long double half = std::sin(t / 2), edge = std::sin(a / 2);
        sumArea += weight * area(t);
        sumMoment += weight * area(t) * (edge * edge - half * half);  // depth under the surface
    }
    return {sumArea * a / steps / 3, sumMoment * a / steps / 3};
}

}  // namespace

TEST(Circular, ComputedElements) {
    for (const Row& row : rows("01a_circular_elements_computed.csv")) {
        if (!row.has("d/D")) continue;
        const double fill = row.input("d/D");
        const Segment wet = segmentAt(foot, foot * fill), full = segmentAt(foot, foot);
        const double share =
            capacity(foot, Slope::percent(1), 0.013, fill) / capacity(foot, Slope::percent(1), 0.013);
        const double area = wet.area / full.area;
        if (row.output == "A/Af") check("PIPE.CAPACITY", row, area);
        if (row.output == "P/Pf") check("PIPE.CAPACITY", row, wet.wettedPerimeter / full.wettedPerimeter);
        if (row.output == "R/Rf") check("PIPE.SHEAR", row, wet.hydraulicRadius / full.hydraulicRadius);
        if (row.output == "V/Vf") check("PIPE.VELOCITY", row, share / area);
        if (row.output == "Q/Qf") check("PIPE.CAPACITY", row, share);
        if (row.output == "T/D") check("PIPE.CRITICAL", row, wet.surfaceWidth / foot);
        if (row.output == "A/D^2") check("PIPE.CAPACITY", row, wet.area.squareFeet());
        if (row.output == "R/D") check("PIPE.SHEAR", row, wet.hydraulicRadius / foot);
    }
}

TEST(Circular, PrintedElements) {
    const Slope slope = Slope::fraction(0.005);
    const double toBook = 1.49 / exactManning;
    for (const Row& row : rows("12e_circular_elements_printed_table.csv")) {
        const double fill = row.input("y/d");
        const Segment wet = segmentAt(foot, foot * fill);
        const Flow flow = capacity(foot, slope, 0.013, fill), fullFlow = capacity(foot, slope, 0.013);
        const double share = flow / fullFlow;
        const Velocity velocity = uniformVelocity(foot, slope, flow, 0.013);
        if (row.output == "central angle") check("PIPE.CAPACITY", row, 2 * wet.wettedPerimeter.feet());
        if (row.output == "area, d 1 ft") check("PIPE.CAPACITY", row, wet.area.squareFeet());
        if (row.output == "wetted perimeter, d 1 ft") check("PIPE.CAPACITY", row, wet.wettedPerimeter.feet());
        if (row.output == "hydraulic radius, d 1 ft") check("PIPE.SHEAR", row, wet.hydraulicRadius.feet());
        if (row.output.starts_with("discharge"))
            check("PIPE.CAPACITY", row, flow.cfs(), toBook, manningReason);
        if (row.output == "Q/Qfull") check("PIPE.CAPACITY", row, share);
        // Above the peak the pipe has a second, shallower depth for the same flow; the table holds the deeper
        // one.
        const double ratio = fill <= peakFill ? velocity / fullVelocity(foot, slope, 0.013)
                                              : share / (wet.area / fullArea(foot));
        if (row.output.starts_with("velocity"))
            check("PIPE.VELOCITY", row, ratio * fullVelocity(foot, slope, 0.013).feetPerSecond(), toBook,
                  manningReason);
        if (row.output == "V/Vfull") check("PIPE.VELOCITY", row, ratio);
    }
}

TEST(Circular, CriticalDepthComputed) {
    for (const Row& row : rows("01d_circular_critical_depth_computed.csv"))
        check("PIPE.CRITICAL", row,
              criticalDepth(Length::inches(row.input("D_in")), bookFlow(row, Flow::cfs(row.input("Q_cfs"))))
                  .feet());
    for (const Row& row : rows("12j_gvf_circular_computed.csv")) {
        if (row.output != "critical depth") continue;
        const bool metric = row.has("D_m");
        const double q = row.input("Q");
        const Flow flow = bookFlow(row, metric ? Flow::cubicMetresPerSecond(q) : Flow::cfs(q));
        const Length depth =
            criticalDepth(metric ? Length::metres(row.input("D_m")) : Length::feet(row.input("D_ft")), flow);
        check("PIPE.CRITICAL", row, metric ? depth.metres() : depth.feet());
    }
}

TEST(Circular, CriticalDepthPrinted) {
    int checked = 0;
    for (const Row& row : rows("12d_normal_critical_depth_examples.csv")) {
        if (!row.has("D_ft") || !row.has("g")) continue;
        const Length bore = Length::feet(row.input("D_ft"));
        const Length depth = criticalDepth(bore, bookFlow(row, Flow::cfs(row.input("Q_cfs"))));
        if (row.output == "critical depth") check("PIPE.CRITICAL", row, depth.feet()), ++checked;
        if (row.output == "central angle at critical depth")
            check("PIPE.CRITICAL", row, 2 * segmentAt(bore, depth).wettedPerimeter / bore), ++checked;
    }
    EXPECT_EQ(checked, 3);
}

TEST(Circular, MomentumComputed) {
    int checked = 0;
    for (const Row& row : rows("12b_hydraulic_jump_momentum.csv")) {
        if (row.output == "A*hc/D^3") {
            check("LINES.LEVELS", row, segmentAt(foot, foot * row.input("y/D")).pressureMoment.cubicFeet());
            ++checked;
        } else if (row.has("y1/D")) {
            // Scale: any bore and gravity give the same ratios.
            const Flow flow =
                Flow::fromSi(row.input("Q/(g^0.5 D^2.5)") * std::sqrt(gravity) * std::pow(foot.si(), 2.5));
            check("LINES.LEVELS", row, sequentDepth(foot, foot * row.input("y1/D"), flow) / foot);
            ++checked;
        }
    }
    EXPECT_EQ(checked, 38);
}

TEST(Circular, GeometryToTheLastPlacesDownToATrickle) {
    for (double fill :
         {1e-12, 1e-9, 1e-6, 1e-3, 0.02, 0.05, 0.1, 0.15, 0.2, 0.4, 0.5, 0.7, 0.9, 0.99, 0.999999}) {
        const Segment wet = segmentAt(Length::metres(1), Length::metres(fill));
        const Integrated exact = integrate(fill);
        EXPECT_NEAR(wet.area.si() / static_cast<double>(exact.area), 1, 1e-12) << "fill " << fill;
        EXPECT_NEAR(wet.pressureMoment.si() / static_cast<double>(exact.moment), 1, 1e-12) << "fill " << fill;
    }
}

TEST(Circular, CriticalDepthIsWhereTheFroudeNumberIsOne) {
    const Length bore = Length::inches(6);
    for (double fill : {1e-9, 1e-6, 1e-3, 0.1, 0.3, 0.5, 0.7, 0.9, 0.99, 0.9999, 0.99999999}) {
        const Segment wet = segmentAt(bore, bore * fill);
        const Flow flow =
            Flow::fromSi(std::sqrt(gravity * std::pow(wet.area.si(), 3) / wet.surfaceWidth.si()));
        EXPECT_NEAR(froudeNumber(wet, flow), 1, 1e-12) << "fill " << fill;
        EXPECT_NEAR(criticalDepth(bore, flow) / wet.depth, 1, 1e-12) << "fill " << fill;
    }
    EXPECT_EQ(criticalDepth(bore, Flow()).si(), 0);
    EXPECT_LE(criticalDepth(bore, Flow::gpm(1e9)), bore);
}

TEST(Circular, LeastEnergyAtTheCriticalDepth) {
    const bool held = rc::check("energy and momentum are least at the critical depth", [] {
        const Length bore = Length::inches(*rc::gen::inRange(2, 30));
        const Flow flow = Flow::gpm(*rc::gen::inRange(1, 3000) / 2.0);
        const Length critical = criticalDepth(bore, flow);
        const Segment at = segmentAt(bore, critical);
        for (double factor : {0.9, 0.99, 1.01, 1.1}) {
            const Segment beside = segmentAt(bore, critical * factor);
            RC_ASSERT(specificEnergy(beside, flow) >= specificEnergy(at, flow) * (1 - 1e-12));
            RC_ASSERT(momentum(beside, flow) >= momentum(at, flow) * (1 - 1e-12));
        }
    });
    EXPECT_TRUE(held);
}

// By hand: 1 cubic metre a second fills a pipe of 1 m at 4 / pi m/s, whose head is 0.082656 m.
TEST(Circular, EnergyOfAFullPipe) {
    const Segment full = segmentAt(Length::metres(1), Length::metres(1));
    EXPECT_NEAR(specificEnergy(full, Flow::cubicMetresPerSecond(1)).metres(), 1.082656, 1e-6);
    EXPECT_EQ(specificEnergy(full, Flow()).metres(), 1);
    EXPECT_EQ(specificEnergy(segmentAt(Length::metres(1), Length()), Flow()).metres(), 0) << "dry";
    EXPECT_EQ(momentum(segmentAt(Length::metres(1), Length()), Flow()).si(), 0) << "dry";
}

TEST(Circular, JumpKeepsMomentumAndLosesEnergy) {
    const bool held = rc::check("a jump keeps momentum, loses energy", [] {
        const Length bore = Length::inches(*rc::gen::inRange(3, 16));
        const Flow flow = Flow::gpm(*rc::gen::inRange(5, 2000));
        const Length depth = criticalDepth(bore, flow) * (*rc::gen::inRange(20, 99) / 100.0);
        const Length behind = sequentDepth(bore, depth, flow);
        RC_LOG() << "bore " << bore.inches() << " in, flow " << flow.gpm() << " gpm, depth "
                 << depth.inches();
        const Segment before = segmentAt(bore, depth), after = segmentAt(bore, behind);
        RC_ASSERT(behind > depth);
        RC_ASSERT(std::fabs(momentum(after, flow) / momentum(before, flow) - 1) < 1e-11);
        RC_ASSERT(specificEnergy(after, flow) <= specificEnergy(before, flow) * (1 + 1e-12));
    });
    EXPECT_TRUE(held);
}

TEST(Circular, FullAndUnderPressure) {
    const Length bore = Length::inches(4);
    const Segment full = segmentAt(bore, bore), pressed = segmentAt(bore, bore * 3);
    EXPECT_DOUBLE_EQ(full.area.squareInches(), 4 * std::numbers::pi);
    EXPECT_DOUBLE_EQ(full.hydraulicRadius.inches(), 1);
    EXPECT_EQ(full.surfaceWidth.si(), 0);
    EXPECT_DOUBLE_EQ(full.pressureMoment / (full.area * (bore / 2)), 1);
    EXPECT_DOUBLE_EQ(pressed.pressureMoment / (full.area * (bore * 2.5)), 1);
    EXPECT_EQ(froudeNumber(full, Flow::gpm(100)), 0);
    // No step at the crown.
    const Segment below = segmentAt(bore, bore * (1 - 1e-13));
    EXPECT_NEAR(below.area / full.area, 1, 1e-12);
    EXPECT_NEAR(below.pressureMoment / full.pressureMoment, 1, 1e-12);
}

TEST(Circular, BadInput) {
    EXPECT_THROW(segmentAt(Length(), Length::inches(1)), Error);
    EXPECT_THROW(segmentAt(foot, Length::inches(-1)), Error);
    EXPECT_THROW(segmentAt(foot, Length::fromSi(std::nan(""))), Error);
    EXPECT_THROW(criticalDepth(foot, Flow::gpm(-1)), Error);
    EXPECT_THROW(momentum(segmentAt(foot, Length()), Flow::gpm(1)), Error);
    EXPECT_EQ(momentum(segmentAt(foot, Length()), Flow()).si(), 0);
}
