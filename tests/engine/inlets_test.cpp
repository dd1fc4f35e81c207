#include "trenchbook/water/inlets.h"
#include "sentence.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>

#include "reference.h"
#include "trenchbook/core/error.h"
#include "trenchbook/pipe/circular.h"

using namespace trenchbook;
using namespace trenchbook::reference;

namespace {

const Length foot = Length::feet(1);
const Area wideOpen = Area::squareFeet(1e6);
const Length endless = Length::feet(1e6);

}  // namespace

TEST(Inlets, PublishedCoefficients) {
    for (const Row& row : rows("07a_grate_weir_orifice.csv")) {
        if (row.kind != "coefficient" || row.item == "grate weir coefficient, metric")
            continue;  // 1.66 rounds 1.656
        const Grate clear = rectangularGrate(foot, foot, 0.5, 0);
        const Grate grate = rectangularGrate(foot, foot, 0.5);
        const double orificeHeadFlow =
            std::sqrt(2 * gravity * metresPerFoot) / metresPerFoot;  // ft/s under 1 ft
        double ours = 0;
        if (row.item == "grate weir coefficient, US units")
            ours = grateCapacity({.edge = foot, .opening = wideOpen}, foot).cfs();
        if (row.item == "grate orifice coefficient")
            ours = grateCapacity({.edge = endless, .opening = Area::squareFeet(1)}, foot).cfs() /
                   orificeHeadFlow;
        if (row.item == "safety multiplier on perimeter") ours = grate.edge / clear.edge;
        if (row.item == "safety multiplier on clear area") ours = grate.opening / clear.opening;
        // The rows have no tolerance; the weir passes through the foot and back.
        EXPECT_NEAR(ours, row.number(), 1e-12) << row.id;
        check("GRATE.CAPACITY", row, std::round(ours * 1e9) / 1e9);
    }
}

TEST(Inlets, GrateInASag) {
    int checked = 0;
    for (const Row& row : rows("07a_grate_weir_orifice.csv")) {
        if (row.item != "Grate in sag") continue;
        const Length head = Length::feet(row.input("h_ft"));
        // The other of the two is given room enough not to count.
        const bool isWeir = row.output == "weir capacity";
        const Grate grate{.edge = isWeir ? Length::feet(row.input("P_ft")) : endless,
                          .opening = isWeir ? wideOpen : Area::squareFeet(row.input("A_ft2"))};
        check("GRATE.CAPACITY", row, grateCapacity(grate, head).cfs());
        // The other way round: the printed flow stands at the row's head, within what its last digit moves
        // it.
        const double power = isWeir ? 1.5 : 0.5;
        check("GRATE.PONDING", (row.item + ", head of the printed " + row.output).c_str(),
              gratePonding(grate, Flow::cfs(row.number())).feet(), head.feet(),
              row.allowed() / row.number() * head.feet() / power, row.source.c_str(), row.provenance.c_str());
        ++checked;
        const Grate both{.edge = Length::feet(row.input("P_ft")),
                         .opening = Area::squareFeet(row.input("A_ft2"))};
        EXPECT_LE(grateCapacity(both, head), grateCapacity(grate, head));
    }
    EXPECT_GE(checked, 28);
}

TEST(Inlets, PrintedWeirs) {
    int checked = 0;
    for (const Row& row : rows("12i_weir_head_discharge.csv")) {
        // Kindsvater and Carter: Q = 2/3 sqrt(2g) Cde Le (H + kH)^1.5, where a grate takes 3.0.
        const double theirs = 2.0 / 3 * std::sqrt(2 * row.input("g")) * row.input("Cde");
        const Length head = Length::feet(row.input("H_ft") + row.input("kH_ft"));
        const Grate crest{.edge = Length::feet(row.input("Le_ft")), .opening = wideOpen};
        check("GRATE.CAPACITY", row, grateCapacity(crest, head).cfs(), theirs / 3.0,
              "the source's weir coefficient is 2/3 sqrt(2g) Cde, a grate's is 3.0");
        ++checked;
    }
    EXPECT_EQ(checked, 10);
    for (const Row& row : rows("07a_grate_weir_orifice.csv")) {
        if (row.output != "Lw") continue;
        // The crest that the flow needs at this head: flow over what one foot of it takes.
        const Flow perFoot =
            grateCapacity({.edge = foot, .opening = wideOpen}, Length::feet(row.input("h_ft")));
        check("GRATE.CAPACITY", row, Flow::cfs(row.input("q_cfs")) / perFoot, 3.0 / (3.09 * 0.94),
              "the source's weir coefficient is 3.09 x 0.94, a grate's is 3.0");
    }
}

TEST(Inlets, Leaders) {
    int flows = 0;
    int roofs = 0;
    for (const Row& row : rows("04b_vertical_leaders_nspc2006_upc2000.csv")) {
        const Flow flow = leaderCapacity(Length::inches(row.input("D_in")));
        if (row.output == "flow capacity") {
            check("DOWNSPOUT.CAPACITY", row, flow.gpm());
            ++flows;
            continue;
        }
        // The tables' roofs follow from flows rounded in ways of their own; those that keep the formula's
        // digits are checked here, all of them by proportion in runoff_test.cpp.
        const double roof = flow.gpm() * 96.25 / row.input("rain_inh");
        EXPECT_NEAR(roof / row.number(), 1, 0.0025) << row.id;
        if (std::fabs(roof - row.number()) > row.allowed()) continue;
        check("DOWNSPOUT.CAPACITY", row, roof);
        ++roofs;
    }
    EXPECT_EQ(flows, 12);
    EXPECT_GE(roofs, 20);
    const Length bare = Length::inches(1);
    EXPECT_EQ(leaderDiameter("2x3", bare), Length::inches(2));
    EXPECT_EQ(leaderDiameter(" 4 X 3 in", bare), Length::inches(3));
    EXPECT_EQ(leaderDiameter("3\u00D74", Length::millimetres(1)), Length::inches(3));
    EXPECT_EQ(leaderDiameter("75", Length::millimetres(1)), Length::millimetres(75));
    EXPECT_EQ(leaderDiameter("3 in", Length::millimetres(1)), Length::inches(3));
    for (const char* bad : {"", "x", "3x", "2x-3", "big", "3x4x5", "3 cm", "nan"})
        EXPECT_THROW(leaderDiameter(bad, bare), Error) << bad;
}

// Culvert inlet control, of which the printed parts are the constants and a critical depth.
TEST(Inlets, BasinOutlet) {
    const Length bore = Length::feet(2);
    const auto flowAt = [&](double form) {
        return Velocity::feetPerSecond(form * std::sqrt(2.0)) * fullArea(bore);
    };
    const auto headOverBore = [&](double form) { return basinOutletHead(bore, flowAt(form)) / bore; };
    int checked = 0;
    for (const Row& row : rows("12c_culvert_inlet_outlet_control.csv")) {
        if (row.item != "Inlet control constants" &&
            row.inputs != "circular concrete, square edge with headwall")
            continue;
        if (row.inputs != "circular concrete, square edge with headwall") continue;
        double ours = 0;
        const double slope = (headOverBore(6) - headOverBore(5)) / (36 - 25);
        if (row.output == "c (submerged)") ours = slope;
        if (row.output == "Y (submerged)") ours = headOverBore(5) - 25 * slope;
        const auto loss = [&](double form) {
            const Flow flow = flowAt(form);
            return headOverBore(form) -
                   specificEnergy(segmentAt(bore, criticalDepth(bore, flow)), flow) / bore;
        };
        if (row.output == "K (unsubmerged)") ours = loss(1);
        if (row.output == "M (unsubmerged)") ours = std::log2(loss(2) / loss(1));
        check("BASIN.OUTLET", row, ours);
        ++checked;
    }
    EXPECT_EQ(checked, 4);
    for (const Row& row : rows("12d_normal_critical_depth_examples.csv")) {
        if (!row.has("D_ft") || !row.has("Q_cfs") || row.output != "yc") continue;
        const Length pipe = Length::feet(row.input("D_ft"));
        const Flow flow = Flow::cfs(row.input("Q_cfs"));
        const Segment printed = segmentAt(pipe, Length::feet(row.number()));
        const double form = (flow / fullArea(pipe)).feetPerSecond() / std::sqrt(pipe.feet());
        if (form > 3.5) continue;
        // Near critical depth the energy head hardly changes with the depth, so the rounded depth will do.
        EXPECT_NEAR(basinOutletHead(pipe, flow) / pipe,
                    specificEnergy(printed, flow) / pipe + 0.0098 * form * form, 1e-3)
            << row.id;
    }
}

TEST(Inlets, Laws) {
    EXPECT_TRUE(rc::check("ponding is the inverse of capacity; more water, more ponding", [] {
        const double length = *rc::gen::inRange(3, 48);
        const double width = *rc::gen::inRange(0, 48);
        const double open = *rc::gen::inRange(1, 100) / 100.0;
        const double blocked = *rc::gen::inRange(0, 99) / 100.0;
        const Grate grate =
            width == 0 ? roundGrate(Length::inches(length), open, blocked)
                       : rectangularGrate(Length::inches(length), Length::inches(width), open, blocked);
        const Length ponding = Length::inches(*rc::gen::inRange(1, 200) / 10.0);
        const Flow flow = grateCapacity(grate, ponding);
        RC_ASSERT(std::fabs(gratePonding(grate, flow) / ponding - 1) < 1e-12);
        RC_ASSERT(gratePonding(grate, flow * 1.01) > ponding);
        const Length wall = Length::inches(length / 2);
        const Grate cornered =
            width == 0 ? roundGrate(Length::inches(length), open, blocked, wall)
                       : rectangularGrate(Length::inches(length), Length::inches(width), open, blocked, wall);
        RC_ASSERT(grateCapacity(cornered, ponding) <= flow);
    }));
    EXPECT_TRUE(rc::check("a basin's head is the inverse of its flow, at every size alike", [] {
        const double share = std::pow(10.0, *rc::gen::inRange(-300, 150) / 100.0);  // head over bore
        const Length bore = Length::inches(*rc::gen::inRange(2, 24));
        const Flow flow = basinOutletFlow(bore, bore * share);
        RC_ASSERT(std::fabs(basinOutletHead(bore, flow) / (bore * share) - 1) < 1e-9);
        RC_ASSERT(basinOutletFlow(bore, bore * (share * 1.001)) > flow);
        // Froude's law: flow goes with the bore to the power 2.5.
        const Flow larger = basinOutletFlow(bore * 2, bore * (2 * share));
        RC_ASSERT(std::fabs(larger / flow / std::pow(2.0, 2.5) - 1) < 1e-9);
    }));
    EXPECT_NEAR(leaderCapacity(Length::inches(6), 1.0 / 3) / leaderCapacity(Length::inches(3), 1.0 / 3),
                std::pow(2.0, 8.0 / 3), 1e-12);
}

TEST(Inlets, Refusals) {
    EXPECT_EQ(sentence([] { rectangularGrate(foot, foot, 0); }),
              "open share is 0: a grate without openings lets no water through.");
    EXPECT_EQ(sentence([] { rectangularGrate(foot, foot, 0.4, 1); }),
              "blocked share is 1: a grate that is blocked all over lets no water through.");
    EXPECT_EQ(sentence([] { rectangularGrate(foot, foot, 40); }),
              "open share is 40; allowed: from 0 to 1. If 40 percent is meant, write 0.4.");
    EXPECT_EQ(sentence([] { rectangularGrate(foot, foot, 0.4, 0.5, Length::inches(50)); }),
              "along walls is 50 in; allowed: less than the grate's edge of 48 in (1219.2 mm).");
    EXPECT_EQ(sentence([] { roundGrate(Length{}, 0.4); }), "length is 0; allowed: above 0.");
    EXPECT_EQ(sentence([] { basinOutletFlow(foot, Length{}); }), "head is 0; allowed: above 0.");
    EXPECT_EQ(sentence([] { leaderCapacity(foot, 0.5); }),
              "fill is 0.5; allowed: above 0 to 1/3: a fuller leader chokes.");
}
