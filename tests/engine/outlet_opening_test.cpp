#include "trenchbook/water/outlet_opening.h"
#include "sentence.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <numbers>

#include "reference.h"
#include "trenchbook/core/error.h"

using namespace trenchbook;
using namespace trenchbook::reference;

namespace {

const Area wideOpen = Area::squareFeet(1e6);
const Length endless = Length::feet(1e6);

Area circle(Length diameter) { return diameter * diameter * (std::numbers::pi / 4); }
// One of the two ways out, the other given room enough not to count.
Grate weirOnly(Length edge) { return {.edge = edge, .opening = wideOpen}; }
Grate orificeOnly(Area opening) { return {.edge = endless, .opening = opening}; }

// The sources write 2.09 D^2 (SI) and 3.78 D^2 (US) for 0.6 A (2 g)^0.5.
double perRoot(double unit) { return 0.6 * std::numbers::pi / 4 * std::sqrt(2 * gravity / unit); }

}  // namespace

TEST(OutletOpening, PublishedRisers) {
    int weirs = 0;
    int orifices = 0;
    for (const Row& row : rows("30a_riser_grate_rim.csv")) {
        if (!row.item.starts_with("Riser")) continue;
        const bool us = row.has("D_ft");
        const auto size = [&](double value) { return us ? Length::feet(value) : Length::metres(value); };
        const auto shown = [&](Flow flow) { return us ? flow.cfs() : flow.cubicMetresPerSecond(); };
        if (row.output == "weir flow") {
            const Length head = size(row.input(us ? "head_ft" : "head_m"));
            const Length rim = size(row.input(us ? "L_ft" : "L_m"));
            const double theirs = us ? 1 : 1.84 / (3.33 * std::sqrt(metresPerFoot));
            check("engine: outletFlow", row, shown(outletFlow(weirOnly(rim), head)), theirs,
                  "the source writes 1.84 in SI for 3.33");
            ++weirs;
        }
        if (row.output == "orifice flow") {
            const Length diameter = size(row.input(us ? "D_ft" : "D_m"));
            const Length head = size(row.input(us ? "head_ft" : "head_m"));
            const double theirs = row.input("K") / perRoot(us ? metresPerFoot : 1);
            check("engine: outletFlow", row, shown(outletFlow(orificeOnly(circle(diameter)), head)), theirs,
                  "the source rounds 0.6 pi/4 (2 g)^0.5");
            ++orifices;
        }
        if (row.output == "control") {
            const Grate riser = roundGrate(Length::metres(0.53), 1, 0);
            const Length head = Length::metres(row.input("head_m"));
            const bool choked = outletFlow(riser, head) < outletFlow(weirOnly(riser.edge), head);
            checkWords("engine: outletFlow", row, choked ? "orifice" : "weir");
        }
    }
    EXPECT_EQ(weirs, 14);
    EXPECT_EQ(orifices, 13);
}

TEST(OutletOpening, PublishedOrifices) {
    int checked = 0;
    for (const Row& row : rows("30a_riser_grate_rim.csv")) {
        if (row.output != "discharge" || row.item.ends_with("total (US)")) continue;
        const bool us = !row.has("d_m") && !row.has("D_m");
        const auto size = [&](double value) { return us ? Length::feet(value) : Length::metres(value); };
        Length diameter;
        Length head;
        double theirs = 1;
        if (row.has("D_in")) {  // with C and g
            diameter = Length::inches(row.input("D_in"));
            head = Length::feet(row.input("H_ft"));
        } else {
            const char* name = us ? (row.has("d_ft") ? "d_ft" : "D_ft") : (row.has("d_m") ? "d_m" : "D_m");
            diameter = size(row.input(name));
            theirs = row.input("K") / perRoot(us ? metresPerFoot : 1);
            if (row.has("holes"))
                head = size(row.input(us ? "H_ft" : "H_m"));
            else
                head = size(row.input(us ? "depth_ft" : "depth_m")) - diameter / 2;  // to the center
        }
        const double holes = row.has("holes") ? row.input("holes") : 1;
        const Flow flow = outletFlow(orificeOnly(circle(diameter) * holes), head);
        check("engine: outletFlow", row, us ? flow.cfs() : flow.cubicMetresPerSecond(), theirs,
              "the source rounds 0.6 pi/4 (2 g)^0.5");
        ++checked;
    }
    EXPECT_EQ(checked, 30);
}

TEST(OutletOpening, PublishedCoefficients) {
    const Length foot = Length::feet(1);
    int checked = 0;
    for (const Row& row : rows("30a_riser_grate_rim.csv")) {
        if (row.item == "orifice coefficient, square edged") {
            const double jet = std::sqrt(2 * gravity * metresPerFoot) / metresPerFoot;
            const double ours = outletFlow(orificeOnly(Area::squareFeet(1)), foot).cfs() / jet;
            EXPECT_NEAR(ours, row.number(), 1e-12);  // the row has no tolerance
            check("engine: outletFlow", row, std::round(ours * 1e9) / 1e9);
            ++checked;
        }
        if (row.item == "sharp crest coefficient, H/Hc below 0.3, US") {
            const double ours = outletFlow(weirOnly(foot), foot).cfs();
            EXPECT_NEAR(ours, row.number(), 1e-12);
            check("engine: outletFlow", row, std::round(ours * 1e9) / 1e9);
            ++checked;
        }
        if (row.item == "exponent of submerged weir reduction") {
            const Flow free = outletFlow(weirOnly(foot), foot);
            const Flow drowned = outletFlow(weirOnly(foot), foot, foot * 0.5);
            const double ours = std::log(drowned / free) / std::log(1 - std::pow(0.5, 1.5));
            EXPECT_NEAR(ours, row.number(), 1e-12);
            check("engine: outletFlow", row, std::round(ours * 1e9) / 1e9);
            ++checked;
        }
    }
    EXPECT_EQ(checked, 3);
}

TEST(OutletOpening, HeadAtAFlow) {
    int heads = 0;
    int changes = 0;
    for (const Row& row : rows("30a_riser_grate_rim.csv")) {
        if (!row.item.starts_with("Round rim")) continue;
        const Grate rim = roundGrate(Length::inches(row.input("D_in")), 1, 0);
        if (row.output == "head") {
            // The weir's flow goes with H^1.5, the orifice's with H^0.5: they meet at their ratio under 1 ft.
            const Length foot = Length::feet(1);
            check("engine: outletHead", row,
                  outletFlow(orificeOnly(rim.opening), foot) / outletFlow(weirOnly(rim.edge), foot));
            ++changes;
            continue;
        }
        const Flow flow = Flow::cfs(row.input("Q_cfs"));
        const bool weir = row.output == "weir head";
        const Length ours = outletHead(weir ? weirOnly(rim.edge) : orificeOnly(rim.opening), flow);
        check("engine: outletHead", row, ours.feet());
        EXPECT_GE(outletHead(rim, flow), ours);
        // The note of the second row names the branch that controls.
        if (row.note.ends_with("controls: orifice")) {
            EXPECT_EQ(outletHead(rim, flow), ours) << row.id;
        } else if (row.note.ends_with("controls: weir")) {
            EXPECT_GT(outletHead(rim, flow), ours) << row.id;
        }
        ++heads;
    }
    EXPECT_EQ(heads, 40);
    EXPECT_EQ(changes, 4);
}

TEST(OutletOpening, BarsTakeOpeningAndDirtTakesBoth) {
    const Length diameter = Length::inches(4);
    const Grate open = roundGrate(diameter, 1, 0);
    const Grate barred = roundGrate(diameter, 0.5, 0);
    const Grate dirty = roundGrate(diameter, 0.5, 0.5);
    const Flow trickle = Flow::gpm(5);
    const Flow storm = Flow::gpm(67);
    EXPECT_EQ(outletHead(barred, trickle), outletHead(open, trickle));
    EXPECT_GT(outletHead(dirty, trickle), outletHead(open, trickle));
    // By hand: 67 gpm = 0.1493 cfs through half of 0.08727 sq ft, h = (0.1493 / (0.6 x 0.04363))^2 / 64.35.
    EXPECT_NEAR(outletHead(barred, storm).feet(), 0.505, 0.001);
    // An orifice of half the area needs four times the head.
    EXPECT_NEAR(outletHead(dirty, storm) / outletHead(barred, storm), 4, 1e-12);
}

TEST(OutletOpening, Laws) {
    EXPECT_TRUE(rc::check("the head is the inverse of the flow, drowned or free", [] {
        const Grate opening =
            roundGrate(Length::inches(*rc::gen::inRange(2, 24)), *rc::gen::inRange(10, 101) / 100.0,
                       *rc::gen::inRange(0, 90) / 100.0);
        const Length outside = Length::inches(*rc::gen::inRange(0, 120) / 10.0);
        const Length head = outside + Length::inches(*rc::gen::inRange(1, 240) / 10.0);
        const Flow flow = outletFlow(opening, head, outside);
        RC_ASSERT(std::fabs(outletHead(opening, flow, outside) / head - 1) < 1e-9);
        RC_ASSERT(outletFlow(opening, head * 1.01, outside) > flow);
        RC_ASSERT(flow <= outletFlow(opening, head));
        RC_ASSERT(outletHead(opening, flow, outside) > outside);
    }));
    const Grate open = roundGrate(Length::inches(4), 1, 0);
    EXPECT_EQ(outletHead(open, Flow{}), Length{});
    EXPECT_EQ(outletHead(open, Flow{}, Length::inches(3)), Length::inches(3));
    EXPECT_EQ(outletFlow(open, Length{}), Flow{});
    EXPECT_EQ(outletFlow(open, Length::inches(3), Length::inches(3)), Flow{});
    // A huge depth outside: nothing but the orifice's own head is added.
    const Flow storm = Flow::gpm(100);
    EXPECT_NEAR((outletHead(open, storm, Length::feet(50)) - Length::feet(50)) / outletHead(open, storm), 1,
                0.01);
}

TEST(OutletOpening, Refusals) {
    const Grate open = roundGrate(Length::inches(4), 1, 0);
    EXPECT_EQ(sentence([&] { outletHead(open, Flow::gpm(-1)); }).substr(0, 8), "flow is ");
    EXPECT_EQ(sentence([&] { outletHead(open, Flow::gpm(1), Length::feet(-1)); }).substr(0, 17),
              "water outside is ");
    EXPECT_EQ(sentence([&] { outletFlow(open, Length::feet(-1)); }).substr(0, 8), "head is ");
    EXPECT_EQ(
        sentence([&] { outletFlow(open, Length::feet(1), Length::feet(2)); }),
        "water outside is 2 ft; allowed: at most the head inside, 1 ft (0.305 m): else water comes in.");
}
