#include "trenchbook/lines/structure_loss.h"
#include "sentence.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <string>

#include "reference.h"
#include "trenchbook/core/error.h"
#include "trenchbook/pipe/circular.h"
#include "trenchbook/pipe/fittings.h"

using namespace trenchbook;
using namespace trenchbook::reference;

namespace {

constexpr const char* file = "30b_junction_bend_transition.csv";

const Row& rowOf(std::string_view item, std::string_view output) {
    for (const Row& row : rows(file))
        if (row.item == item && row.output == output) return row;
    ADD_FAILURE() << "no row " << item << ": " << output;
    return rows(file).front();
}

// Example 7-3, structures 43 and 42: the 2.0 ft pipe below with 6.75 cfs.
StructureOutlet outlet(double energy, double velocityHead) {
    return {.bore = Length::feet(2.0),
            .flow = Flow::cfs(6.75),
            .energy = Length::feet(energy),
            .velocityHead = Length::feet(velocityHead)};
}

}  // namespace

TEST(StructureLoss, Structure43StepByStep) {
    const std::string here = "Grade line, structure 43";
    const Row& control = rowOf(here, "Eai, outlet control");
    const StructureOutlet below = outlet(control.input("Ei_ft"), control.input("hv_ft"));
    // All of the flow falls in from the pipe 12.79 ft higher.
    const Row& height = rowOf(here, "relative plunge height");
    const StructureInflow falls[] = {{.flow = below.flow, .drop = Length::feet(height.input("zk_ft"))}};
    const StructureEnergy found = structureEnergy(below, falls);
    check("engine: structureEnergy", rowOf(here, "discharge intensity"), found.dischargeIntensity);
    check("engine: structureEnergy", control, found.outletControl.feet());
    check("engine: structureEnergy", rowOf(here, "Eai, inlet submerged"), found.drowned.feet());
    check("engine: structureEnergy", rowOf(here, "Eai, inlet unsubmerged"), found.free.feet());
    EXPECT_EQ(found.initial, found.outletControl);
    check("engine: structureEnergy", height, found.plunge);

    // The next printed step takes 5.46 for the plunge and 2.36 for the initial level: a misprint is carried
    // on (5.25 was found before). From these inputs:
    const Row& additional = rowOf(here, "additional loss");
    const double initial = additional.input("Eai_ft");
    const StructureOutlet printed =
        outlet(additional.input("Ei_ft"), (initial - additional.input("Ei_ft")) / 0.2);
    const StructureInflow higher[] = {
        {.flow = below.flow, .drop = Length::feet(additional.input("CP") * 2.0 + initial)}};
    const StructureEnergy next = structureEnergy(printed, higher);
    EXPECT_NEAR(next.plunge, additional.input("CP"), 1e-9);
    EXPECT_NEAR(next.floor, additional.input("CB"), 1e-12);
    check("engine: structureEnergy", additional, next.additional.feet());
    const Row& level = rowOf(here, "EGL in the structure");
    check("engine: structureEnergy", level, next.energy.feet() + level.input("BOCi_ft"));
}

TEST(StructureLoss, Structure42StepByStep) {
    const std::string here = "Grade line, structure 42";
    const Row& additional = rowOf(here, "additional loss");
    const Row& angled = rowOf(here, "angled inflow coefficient");
    const Row& plunging = rowOf(here, "plunging coefficient");
    const double initial = additional.input("Eai_ft");
    const double energy = additional.input("Ei_ft");
    const StructureInflow inflows[] = {
        {.flow = Flow::cfs(angled.input("Qj_cfs")), .turn = Angle::degrees(180 - angled.input("theta_deg"))},
        {.flow = Flow::cfs(plunging.input("Qk_cfs")),
         .drop = Length::feet(plunging.input("hk") * 2.0 + initial)}};
    const StructureEnergy found =
        structureEnergy(outlet(energy, (initial - energy) / 0.2), inflows, StructureFloor::Flat);
    check("engine: structureEnergy", angled, found.turn);
    check("engine: structureEnergy", plunging, found.plunge);
    check("engine: structureEnergy", additional, found.additional.feet());
}

TEST(StructureLoss, Structures41And40) {
    const std::string here = "Grade line, structure 41";
    const Row& intensity = rowOf(here, "discharge intensity");
    // The pipe below shoots: no outlet control, and its energy is more than the inlet asks for.
    const Row& level = rowOf(here, "EGL in the structure");
    const StructureOutlet below{.bore = Length::feet(intensity.input("D_ft")),
                                .flow = Flow::cfs(intensity.input("Q_cfs")),
                                .energy = Length::feet(level.input("Ei_ft")),
                                .velocityHead = Length::feet(1.22),
                                .shooting = true};
    const StructureEnergy found = structureEnergy(below, {});
    check("engine: structureEnergy", intensity, found.dischargeIntensity);
    check("engine: structureEnergy", rowOf(here, "Eai, inlet submerged"), found.drowned.feet());
    check("engine: structureEnergy", rowOf(here, "Eai, inlet unsubmerged"), found.free.feet());
    check("engine: structureEnergy", level, found.energy.feet() + level.input("BOCi_ft"));
    EXPECT_EQ(found.loss, Length{});

    const Row& last = rowOf("Grade line, structure 40", "discharge intensity");
    check("engine: structureEnergy", last,
          structureEnergy({.bore = Length::feet(last.input("D_ft")),
                           .flow = Flow::cfs(last.input("Q_cfs")),
                           .energy = Length::feet(1),
                           .velocityHead = Length::feet(0.1)},
                          {})
              .dischargeIntensity);

    // What the pipe above loses at its exit into the box.
    const Row& exit = rowOf("Grade line, pipe 41-42", "exit loss into a structure");
    EXPECT_EQ(exit.input("K"), structureExitK);
    const Length bore = Length::feet(1.5);
    const Flow flow = Velocity::feetPerSecond(exit.input("V_fps")) * fullArea(bore);
    check("FITTING.LOSS", exit, fittingLoss(bore, flow, structureExitK).feet());
}

TEST(StructureLoss, FloorsOfTheTable) {
    int checked = 0;
    for (const Row& row : rows(file)) {
        if (!row.item.starts_with("Benching, ")) continue;
        std::string name = row.item.substr(10);
        if (name == "flat floor" || name == "depressed floor") name.erase(name.find(" floor"));
        const bool drowned = row.inputs.starts_with("bench submerged");
        // A box 3 bores deep, or one half a bore deep.
        const StructureEnergy found =
            structureEnergy(outlet(drowned ? 6.0 : 1.0, 0.001), {}, structureFloor(name));
        if (!drowned) {
            // Not below the inlet's own need, which here is 0.66 bores.
            EXPECT_LT(found.initial.feet(), 2.0);
        }
        EXPECT_NEAR(found.floor, row.number(), 1e-12) << row.id;
        check("engine: structureEnergy", row, std::round(found.floor * 1e9) / 1e9);
        ++checked;
    }
    EXPECT_EQ(checked, 10);
    // Straight between: at 1.75 bores half of both.
    EXPECT_NEAR(structureEnergy(outlet(3.5, 0), {}, StructureFloor::HalfBench).floor, (-0.05 - 0.85) / 2,
                1e-12);
}

TEST(StructureLoss, FromTheWaterInTheOutlet) {
    const Length bore = Length::inches(6);
    const Flow flow = Flow::gpm(200);
    const StructureOutlet full = structureOutlet(bore, flow, Length::inches(7));
    const double velocity = flow.cfs() / (3.14159265358979 / 4 * 0.25);
    EXPECT_NEAR(full.velocityHead.feet(), velocity * velocity / (2 * gravity / metresPerFoot), 1e-12);
    EXPECT_FALSE(full.shooting);
    const StructureOutlet fast = structureOutlet(bore, flow, Length::inches(2));
    EXPECT_TRUE(fast.shooting);
    EXPECT_NEAR((fast.energy - fast.velocityHead).inches(), 2, 1e-12);
}

TEST(StructureLoss, Laws) {
    EXPECT_TRUE(rc::check("never a gain; a turn or a fall never helps", [] {
        const Length bore = Length::inches(*rc::gen::inRange(3, 24));
        const Flow flow = Flow::gpm(*rc::gen::inRange(5, 400));
        const Length water = bore * (*rc::gen::inRange(20, 400) / 100.0);
        const StructureOutlet below = structureOutlet(bore, flow, water);
        const double turn = *rc::gen::inRange(0, 180);
        const auto loss = [&](double degrees, double drop) {
            const StructureInflow in[] = {
                {.flow = flow * 0.5},
                {.flow = flow * 0.5, .turn = Angle::degrees(degrees), .drop = bore * drop}};
            return structureEnergy(below, in).loss;
        };
        RC_ASSERT(loss(turn, 0) >= Length{});
        RC_ASSERT(loss(turn, 0) >= loss(turn / 2, 0));
        RC_ASSERT(loss(0, 9) >= loss(0, 8));
        RC_ASSERT(loss(0, 30) == loss(0, 10));  // falls count up to 10 bores
    }));
    // Straight on is as no inflow told.
    const StructureInflow straight[] = {{.flow = Flow::cfs(6.75)}};
    EXPECT_EQ(structureEnergy(outlet(3, 0.2), straight).energy, structureEnergy(outlet(3, 0.2), {}).energy);
}

TEST(StructureLoss, Refusals) {
    const StructureOutlet below = outlet(3, 0.2);
    const auto with = [&](StructureInflow inflow) {
        return sentence([&] { structureEnergy(below, std::span(&inflow, 1)); });
    };
    EXPECT_EQ(with({.flow = Flow::cfs(8)}),
              "inflows together are 3590.65 gpm (226.535 L/s), but only 3029.61 gpm (191.139 L/s) leave.");
    EXPECT_EQ(with({.flow = Flow::cfs(-1)}).substr(0, 10), "inflows is");
    EXPECT_EQ(with({.flow = Flow::cfs(1), .turn = Angle::degrees(181)}),
              "turns is 181; allowed: from 0 to 180.");
    EXPECT_EQ(with({.flow = Flow::cfs(1), .drop = Length::feet(-1)}).substr(0, 8), "drops is");
    EXPECT_EQ(sentence([] { structureFloor("round"); }),
              "floor is \"round\"; allowed: flat, depressed, half bench, full bench or improved.");
    EXPECT_EQ(structureFloor(" Media banqueta"), StructureFloor::HalfBench);
    EXPECT_EQ(sentence([] { structureOutlet(Length::feet(1), Flow::cfs(1), Length{}); }),
              "water is 0; allowed: above 0.");
}
