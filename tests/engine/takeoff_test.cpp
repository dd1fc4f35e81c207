// Takeoff: small lots counted by hand, published earthwork, and what holds for any lot.
#include "trenchbook/takeoff/takeoff.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <functional>
#include <set>

#include "reference.h"
#include "takeoff_lots.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

using namespace lots;
using Counts = std::map<std::string, double>;

// --- Small lots, counted by hand ---

// D, a downspout at the head; C, a cleanout on the way; O, the outlet. 25 ft and 20 ft of 4 in, risers 2.75 ft.
Lot threePoints() {
    Lot lot;
    lot.run("D", "C", 25, "4 SDR35").run("C", "O", 20, "4 SDR35");
    lot.node("D", "downspout").node("C", "cleanout").node("O", "outlet");
    return lot;
}

TEST(Takeoff, ADownspoutACleanoutAndAnOutlet) {
    const Takeoff takeoff = threePoints().takeoff();
    EXPECT_EQ(english(takeoff.findings), "");
    // D ends the line with two 45s under its adapter; C is a wye, a 45 and the fitting; O has a guard.
    EXPECT_EQ(pieces(takeoff), (Counts{{"BEND45-4SDR35", 3},
                                       {"DOWNSPOUT-4SDR35", 1},
                                       {"WYE-4SDR35", 1},
                                       {"CLEANOUT-4SDR35", 1},
                                       {"GUARD-4", 1}}));
    // Bells: 25 ft of 10 ft sticks has 2, 20 ft has 1.
    EXPECT_EQ(takeoff.runs[0].bells, 2u);
    EXPECT_EQ(takeoff.runs[1].bells, 1u);
    // Sockets: D 2 x 2 + 1, C 3 + 2 + 1, O 1, bells 3: 15, which is a pint at 4 in; half of primer.
    EXPECT_EQ(takeoff.nodes[0].sockets, 5u);
    EXPECT_EQ(takeoff.nodes[1].sockets, 6u);
    EXPECT_EQ(takeoff.nodes[2].sockets, 1u);
    EXPECT_EQ(takeoff.bulk.glued, 15u);
    EXPECT_NEAR(*takeoff.bulk.cementPints, 1, 1e-12);
    EXPECT_NEAR(*takeoff.bulk.primerPints, 0.5, 1e-12);
    // Trench 12 in wide: 45 sq ft of lawn, a quarter of it new; sand 45 x 1 x 0.25 ft; bank 45 x 1 x 3 ft.
    EXPECT_NEAR(takeoff.bulk.lawn->squareFeet(), 45, 1e-9);
    EXPECT_NEAR(takeoff.bulk.sod->squareFeet(), 11.25, 1e-9);
    EXPECT_NEAR(takeoff.bulk.bedding->cubicFeet(), 11.25, 1e-9);
    EXPECT_NEAR(takeoff.bulk.beddingWeight->shortTons(), 11.25 / 27 * 1.3, 1e-9);
    EXPECT_NEAR(takeoff.bulk.bank->cubicFeet(), 135, 1e-9);
    // The pipe's room by its outside, 4.215 in.
    const double room = std::acos(-1.0) / 4 * std::pow(4.215 / 12, 2) * 45;
    EXPECT_NEAR(takeoff.bulk.pipeRoom->cubicFeet(), room, 1e-9);
    EXPECT_NEAR(takeoff.bulk.surplus->cubicFeet(), 11.25 + room, 1e-9);
    EXPECT_NEAR(takeoff.bulk.haulLoose->cubicFeet(), 1.25 * (11.25 + room), 1e-9);
    EXPECT_NEAR(*takeoff.bulk.haulLoads, 1.25 * (11.25 + room) / 270, 1e-9);
    // Pipe: 25 + 20 + 2 x 2.75 = 50.5 ft. Six sticks: 4 whole ones, 5 ft with a riser, and a riser.
    const TakeoffLine& pipe = takeoff.lines.front();
    EXPECT_EQ(pipe.code, "PIPE-4SDR35");
    EXPECT_NEAR(pipe.net->in(UnitSystem::US), 50.5, 1e-9);
    EXPECT_EQ(pipe.net->unit(UnitSystem::US).en, "ft");
    EXPECT_EQ(pipe.fewestSticks, 6u);
    EXPECT_EQ(pipe.from.en, "Runs and risers: 4 to cut, fewest sticks 6");
    EXPECT_EQ(pipe.from.es, "Runs y tubos verticales: 4 por cortar, barras mínimas 6");
}

TEST(Takeoff, WordsForTheCrew) {
    const Takeoff takeoff = threePoints().takeoff();
    EXPECT_EQ(takeoff.nodes[1].words.en,
              "1 x wye 4 SDR35; 1 x 45 bend 4 SDR35 for the riser; 1 x cleanout fitting 4 SDR35; "
              "riser 4 SDR35 2.75 ft");
    EXPECT_EQ(takeoff.nodes[1].words.es,
              "1 x ye 4 SDR35; 1 x codo de 45, 4 SDR35, para el tubo vertical; "
              "1 x registro de limpieza 4 SDR35; tubo vertical 4 SDR35 2.75 ft");
    Lot metric = threePoints();
    metric.job.units = UnitSystem::Metric;
    EXPECT_NE(metric.takeoff().nodes[1].words.en.find("0.84 m"), std::string::npos);
}

TEST(Takeoff, ANodeOfSeveralKindsKeepsEveryWye) {
    Lot lot = threePoints();
    lot.job.nodes[1].kinds = nodeKinds("cleanout + downspout");
    const Takeoff takeoff = lot.takeoff();
    // Each riser comes in by a wye of its own: the cleanout's and the downspout's.
    EXPECT_EQ(pieces(takeoff), (Counts{{"BEND45-4SDR35", 4},
                                       {"DOWNSPOUT-4SDR35", 2},
                                       {"WYE-4SDR35", 2},
                                       {"CLEANOUT-4SDR35", 1},
                                       {"GUARD-4", 1}}));
    EXPECT_EQ(takeoff.nodes[1].risers.size(), 2u);
    // At a head the first riser ends the pipe, the other one comes in by a wye: 2 + 1 elbows.
    lot.job.nodes[1].kinds = nodeKinds("cleanout");
    lot.job.nodes[0].kinds = nodeKinds("downspout/cleanout");
    EXPECT_EQ(pieces(lot.takeoff()), (Counts{{"BEND45-4SDR35", 4},
                                             {"DOWNSPOUT-4SDR35", 1},
                                             {"WYE-4SDR35", 2},
                                             {"CLEANOUT-4SDR35", 2},
                                             {"GUARD-4", 1}}));
}

TEST(Takeoff, ARiserIntoALargerLine) {
    Lot lot;
    lot.run("D", "C", 28, "6 SDR35").run("C", "O", 20, "6 SDR35");
    lot.node("D", "downspout").node("C", "downspout").node("O", "outlet");
    const Takeoff takeoff = lot.takeoff();
    // The head turns up in 4 in: reducer and two 45s. C: a 6 x 4 wye and a 45.
    EXPECT_EQ(pieces(takeoff), (Counts{{"REDUCER-6X4SDR35", 1},
                                       {"BEND45-4SDR35", 3},
                                       {"DOWNSPOUT-4SDR35", 2},
                                       {"WYE-6X4SDR35", 1},
                                       {"GUARD-6", 1}}));
    EXPECT_NEAR(amounts(takeoff)["PIPE-4SDR35"], 5.5, 1e-9);
    EXPECT_NEAR(amounts(takeoff)["PIPE-6SDR35"], 48, 1e-9);
    // C: two 6 in sockets, and 1 + 2 + 1 of 4 in.
    EXPECT_NEAR(takeoff.nodes[1].cementPints, 2 / 5.0 + 4 / 15.0, 1e-12);
    EXPECT_EQ(takeoff.nodes[1].sockets, 6u);
}

TEST(Takeoff, RunsThatJoin) {
    // Three lines of 6, 4 and 3 in meet in a 6 in line: the 6 goes on, the others come in by their own wyes.
    Lot lot;
    lot.run("A", "W", 10, "6 SCH40").run("B", "W", 10, "4 SCH40").run("C", "W", 10, "3 SCH40");
    lot.run("W", "O", 10, "6 SCH40");
    lot.node("A", "cap").node("B", "cap").node("C", "cap").node("W", "wye").node("O", "outlet");
    EXPECT_EQ(pieces(lot.takeoff()), (Counts{{"CAP-6SCH40", 1},
                                             {"CAP-4SCH40", 1},
                                             {"CAP-3SCH40", 1},
                                             {"WYE-6X4SCH40", 1},
                                             {"WYE-6X3SCH40", 1},
                                             {"GUARD-6", 1}}));
    // Without the 6 in line the largest goes on through a reducer.
    lot.job.runs[0].pipe = stockPipe("3 SCH40");
    const Counts grown = pieces(lot.takeoff());
    EXPECT_EQ(grown.at("REDUCER-6X4SCH40"), 1);
    EXPECT_EQ(grown.at("WYE-6X3SCH40"), 2);
    EXPECT_FALSE(grown.contains("WYE-6X4SCH40"));
    // All of one size: a wye for each but one.
    for (std::size_t row : {0u, 1u, 2u}) lot.job.runs[row].pipe = stockPipe("6 SCH40");
    EXPECT_EQ(pieces(lot.takeoff()).at("WYE-6SCH40"), 2);
}

TEST(Takeoff, NoWyeTakesALargerBranch) {
    Lot lot;
    lot.run("A", "W", 10, "4 SDR35").run("B", "W", 10, "6 SDR35").run("W", "O", 10, "4 SDR35");
    lot.node("A", "cap").node("B", "cap").node("W", "wye").node("O", "outlet");
    const Takeoff takeoff = lot.takeoff();
    ASSERT_EQ(takeoff.of(Part::Nodes, 2).size(), 2u);
    EXPECT_EQ(takeoff.of(Part::Nodes, 2)[0].severity, Severity::No);
    EXPECT_EQ(takeoff.of(Part::Nodes, 2)[0].says.en,
              "no wye takes a branch of 6 SDR35 into 4 SDR35: it is not counted");
    EXPECT_EQ(takeoff.of(Part::Nodes, 2)[1].says.en, "nothing joins at this wye: none is counted");
}

TEST(Takeoff, AnotherMakeNeedsAnAdapter) {
    // 20 ft of corrugated into 20 ft of SDR 35: one adapter, no coupling at the joint, cement on one side of it.
    Lot lot;
    lot.run("A", "B", 20, "4 CORRUGATED").run("B", "O", 20, "4 SDR35");
    lot.node("A", "cap").node("B", "crossing").node("O", "outlet");
    Takeoff takeoff = lot.takeoff();
    EXPECT_EQ(pieces(takeoff),
              (Counts{{"ADAPTER-4CORRUGATED-SDR35", 1}, {"CAP-4CORRUGATED", 1}, {"GUARD-4", 1}}));
    EXPECT_EQ(takeoff.runs[0].sockets, 3u) << "a bell, and the adapter's two ends";
    EXPECT_NEAR(*takeoff.runs[0].cementPints, 1 / 15.0, 1e-12);
    // SDR 35, a bell and the guard: with the adapter 3 sockets.
    EXPECT_EQ(takeoff.bulk.glued, 3u);
    // A make of the same outside fits; two runs that meet without a fitting take a coupling.
    lot.job.runs[0].pipe = stockPipe("4 D2729");
    takeoff = lot.takeoff();
    EXPECT_FALSE(takeoff.runs[0].adapter);
    EXPECT_EQ(pieces(takeoff).at("COUPLING-4SDR35"), 1);
    // In a basin both pipes have hubs of their own.
    lot.job.nodes[1].kinds = nodeKinds("basin");
    lot.job.runs[0].pipe = stockPipe("3 SCH40");
    EXPECT_EQ(pieces(lot.takeoff()), (Counts{{"CAP-3SCH40", 1},
                                             {"HUB-3SCH40", 1},
                                             {"HUB-4SDR35", 1},
                                             {"BASIN-12", 1},
                                             {"BASIN-12-RISER", 3},
                                             {"GUARD-4", 1}}));
}

TEST(Takeoff, PipeThatIsNotGluedTakesNoCement) {
    for (const char* make : {"DUALWALL", "CORRUGATED"}) {
        Lot lot = threePoints();
        for (trenchbook::Run& run : lot.job.runs) run.pipe = stockPipe(std::string("4 ") + make);
        const Takeoff takeoff = lot.takeoff();
        EXPECT_EQ(*takeoff.bulk.cementPints, 0) << make;
        EXPECT_EQ(takeoff.bulk.glued, 0u) << make;
        EXPECT_FALSE(amounts(takeoff).contains("CEMENT")) << make;
        EXPECT_EQ(takeoff.nodes[1].sockets, 6u) << make;
        EXPECT_EQ(pieces(takeoff).at(std::string("DOWNSPOUT-4") + make), 1);
    }
}

TEST(Takeoff, Turns) {
    Lot lot;
    lot.run("A", "B", 20, "4 SDR35").run("B", "O", 20, "4 SDR35");
    lot.node("A", "basin").node("B", "bend", 67.5).node("O", "outlet");
    EXPECT_EQ(pieces(lot.takeoff()), (Counts{{"HUB-4SDR35", 1},
                                             {"BASIN-12", 1},
                                             {"BASIN-12-RISER", 3},
                                             {"BEND45-4SDR35", 1},
                                             {"BEND22-4SDR35", 1},
                                             {"GUARD-4", 1}}));
    // 31 degrees is 8.5 off a 22.5 and 14 off a 45: more than the 3 that the rule lets pass.
    lot.job.nodes[1].turn = Angle::degrees(31);
    Takeoff takeoff = lot.takeoff();
    ASSERT_EQ(takeoff.of(Part::Nodes, 1).size(), 1u);
    const Finding finding = takeoff.of(Part::Nodes, 1)[0];
    EXPECT_EQ(finding.severity, Severity::No);
    EXPECT_EQ(finding.rule, "bend.tolerance");
    EXPECT_EQ(finding.measured->si, 31);
    EXPECT_EQ(finding.allowed->si, 3);
    // The rule decides, at its limit too.
    lot.job.rules.set("bend.tolerance", 8.5, UnitSystem::US);
    EXPECT_EQ(pieces(lot.takeoff()).at("BEND22-4SDR35"), 1);
    lot.job.rules.set("bend.tolerance", 8.4, UnitSystem::US);
    EXPECT_FALSE(pieces(lot.takeoff()).contains("BEND22-4SDR35"));
    // A turn in a basin needs no elbow: the pipe leaves where it has to.
    lot.job.nodes[1].kinds = nodeKinds("basin");
    EXPECT_EQ(english(lot.takeoff().findings), "");
}

TEST(Takeoff, TheTeeInThePit) {
    Lot lot;
    lot.run("A", "T", 20, "4 SDR35");
    lot.node("A", "channel").trenchDrain("A", 12).node("T", "tee");
    lot.job.nodes[1].opening = Length::feet(99.75);
    const Takeoff takeoff = lot.takeoff();
    EXPECT_EQ(pieces(takeoff),
              (Counts{{"HUB-4SDR35", 1}, {"CHANNEL-4", 1}, {"TEE-4SDR35", 1}, {"TEEGRATE-4", 1}}));
    // From the invert, 97.25, to the rim.
    ASSERT_EQ(takeoff.nodes[1].risers.size(), 1u);
    EXPECT_NEAR(takeoff.nodes[1].risers[0].length->feet(), 2.5, 1e-9);
}

TEST(Takeoff, TheCleanoutEndsAtItsCap) {
    Lot lot = threePoints();
    for (Node& node : lot.job.nodes) node.opening = Length::feet(99.25);
    const Takeoff takeoff = lot.takeoff();
    EXPECT_NEAR(takeoff.nodes[0].risers[0].length->feet(), 2.75, 1e-9) << "a downspout, at the ground";
    EXPECT_NEAR(takeoff.nodes[1].risers[0].length->feet(), 2, 1e-9);
}

TEST(Takeoff, TheDeviceThatNodesNames) {
    Lot lot = threePoints();
    // A variety of the usual one, in its place.
    lot.job.nodes[0].device = "DOWNSPOUT-2X3";
    // A cleanout has no device of its own: the box comes on top.
    lot.job.nodes[1].device = "BOX-6";
    Counts counts = pieces(lot.takeoff());
    EXPECT_EQ(counts.at("DOWNSPOUT-2X3"), 1);
    EXPECT_FALSE(counts.contains("DOWNSPOUT-4SDR35"));
    EXPECT_EQ(counts.at("BOX-6"), 1);
    EXPECT_EQ(lot.takeoff().nodes[0].sockets, 5u);
    // Where several things stand a box replaces none of them.
    lot.job.nodes[1].kinds = nodeKinds("cleanout + downspout");
    counts = pieces(lot.takeoff());
    EXPECT_EQ(counts.at("BOX-6"), 1);
    EXPECT_EQ(counts.at("DOWNSPOUT-4SDR35"), 1);
    // Alone, whatever is named stands for it.
    lot.job.nodes[0].device = "LEAF-TRAP";
    EXPECT_FALSE(pieces(lot.takeoff()).contains("DOWNSPOUT-2X3"));
    EXPECT_EQ(pieces(lot.takeoff()).at("LEAF-TRAP"), 1);
}

TEST(Takeoff, TrenchWidthsOfTheRules) {
    struct Case {
        const char* pipe;
        double inches;
    };
    for (const Case& row :
         {Case{"4 SDR35", 12}, Case{"5 SCH40", 12}, Case{"6 SDR35", 15}, Case{"8 SDR35", 18}}) {
        Lot lot;
        lot.run("A", "O", 20, row.pipe).node("A", "cap").node("O", "outlet");
        EXPECT_NEAR(lot.takeoff().runs[0].trenchWidth->inches(), row.inches, 1e-9) << row.pipe;
        lot.job.runs[0].trenchWidth = Length::inches(24);
        EXPECT_NEAR(lot.takeoff().runs[0].trenchWidth->inches(), 24, 1e-9);
        EXPECT_NEAR(lot.takeoff().bulk.bank->cubicFeet(), 20 * 2 * 3, 1e-9);
    }
}

TEST(Takeoff, HalfTheTrenchWhereOneEndIsLawn) {
    Lot lot;
    lot.run("A", "O", 20, "4 SDR35").node("A", "cap").node("O", "outlet");
    const auto lawn = [&](CoverSurface up, CoverSurface down) {
        lot.job.runs[0].surfaceUp = up;
        lot.job.runs[0].surfaceDown = down;
        return lot.takeoff().runs[0].lawn->squareFeet();
    };
    EXPECT_NEAR(lawn(CoverSurface::Lawn, CoverSurface::LawnEnd), 20, 1e-9);
    EXPECT_NEAR(lawn(CoverSurface::Lawn, CoverSurface::Daylight), 10, 1e-9);
    EXPECT_NEAR(lawn(CoverSurface::Bed, CoverSurface::Lawn), 10, 1e-9);
    EXPECT_NEAR(lawn(CoverSurface::Drive, CoverSurface::Bed), 0, 1e-9);
}

// --- The pit ---

Lot withPit() {
    Lot lot;
    lot.run("A", "T", 20, "4 SDR35").node("A", "channel").trenchDrain("A", 12).node("T", "tee");
    lot.job.pit.node = "T";
    lot.job.pit.length = Length::feet(10);
    lot.job.pit.width = Length::feet(4);
    lot.job.pit.rockDepth = Length::feet(3);
    lot.job.pit.soilOver = Length::feet(1.5);
    return lot;
}

TEST(Takeoff, ThePitIsDugToItsRealDepth) {
    const Takeoff takeoff = withPit().takeoff();
    EXPECT_NEAR(takeoff.bulk.rock->cubicFeet(), 120, 1e-9);
    EXPECT_NEAR(takeoff.bulk.pitEarth->cubicFeet(), 10 * 4 * (3 + 1.5), 1e-9);
    EXPECT_NEAR(takeoff.bulk.rockWeight->shortTons(), 120 / 27.0 * 1.4, 1e-9);
    // Top, bottom, four sides of 3 ft, and a foot of overlap all around.
    EXPECT_NEAR(takeoff.bulk.fabric->squareFeet(), 2 * 40 + 28 * 3 + 28 * 1, 1e-9);
    EXPECT_NEAR(takeoff.bulk.lawn->squareFeet(), 20 + 40, 1e-9);
    EXPECT_NEAR(takeoff.works[static_cast<std::size_t>(Work::DigPit)].amount->in(UnitSystem::US), 180 / 27.0,
                1e-9);
}

TEST(Takeoff, APitWithoutASizeIsNotNothing) {
    Lot lot = withPit();
    lot.job.pit.soilOver.reset();
    Takeoff takeoff = lot.takeoff();
    EXPECT_FALSE(takeoff.bulk.pitEarth);
    EXPECT_TRUE(takeoff.bulk.rock);
    EXPECT_EQ(takeoff.of(Part::Pit, Finding::whole).size(), 1u);
    EXPECT_FALSE(takeoff.works[static_cast<std::size_t>(Work::DigPit)].amount);
    lot.job.pit.width.reset();
    takeoff = lot.takeoff();
    EXPECT_EQ(amounts(takeoff).at("ROCK"), -1);
    EXPECT_EQ(amounts(takeoff).at("FABRIC"), -1);
    EXPECT_EQ(amounts(takeoff).at("SOD"), -1);
    EXPECT_EQ(amounts(takeoff).at("HAUL"), -1);
    EXPECT_EQ(takeoff.of(Part::Pit, Finding::whole)[0].severity, Severity::NotJudged);
    // A size that belongs to no node is told too.
    lot = withPit();
    lot.job.pit.node.clear();
    takeoff = lot.takeoff();
    EXPECT_FALSE(amounts(takeoff).contains("ROCK"));
    EXPECT_EQ(takeoff.of(Part::Pit, Finding::whole).size(), 1u);
    lot.job.pit = {};
    EXPECT_EQ(english(lot.takeoff().findings), "");
}

// --- Digging ---

// One run of 20 ft, 12 in wide, with the cuts given.
Takeoff dug(double cutUp, double cutDown, double handFeet = 0, const std::string& pipe = "4 SDR35") {
    Lot lot;
    lot.run("A", "B", 20, pipe).node("A", "cleanout").node("B", "bank");
    lot.terms.handDigMore = Length::feet(handFeet);
    SolvedJob solved = lot.solved();
    solved.runs[0].cutUp = Length::feet(cutUp);
    solved.runs[0].cutDown = Length::feet(cutDown);
    return takeOff(lot.job, solved, lot.terms);
}
double work(const Takeoff& takeoff, Work kind) {
    return takeoff.works[static_cast<std::size_t>(kind)].amount->in(UnitSystem::US);
}

TEST(Digging, FollowsTheCut) {
    const Takeoff shallow = dug(2.5, 2.5), deep = dug(6, 6);
    EXPECT_NEAR(work(shallow, Work::DigByMachine), 20 * 2.5 / 27, 1e-9);
    EXPECT_EQ(work(shallow, Work::DigByMachineDeep), 0);
    EXPECT_EQ(work(shallow, Work::ProtectTrench), 0);
    EXPECT_NEAR(work(deep, Work::DigByMachine), 20 * 5 / 27.0, 1e-9);
    EXPECT_NEAR(work(deep, Work::DigByMachineDeep), 20 * 1 / 27.0, 1e-9);
    EXPECT_NEAR(work(deep, Work::ProtectTrench), 20, 1e-9);
    EXPECT_NEAR(work(deep, Work::Backfill) - work(shallow, Work::Backfill), 20 * 3.5 / 27, 1e-9);
    EXPECT_EQ(work(deep, Work::LayPipe), work(shallow, Work::LayPipe));
}

TEST(Digging, TellsWhereTheBottomPassesFiveFeet) {
    // From 4 to 6 ft: the lower half is under 5 ft, by half a foot in the mean.
    EXPECT_NEAR(work(dug(4, 6), Work::DigByMachineDeep), 10 * 0.5 / 27, 1e-9);
    EXPECT_NEAR(work(dug(6, 4), Work::DigByMachineDeep), 10 * 0.5 / 27, 1e-9);
    EXPECT_NEAR(work(dug(5, 5), Work::DigByMachineDeep), 0, 1e-9);
    EXPECT_NEAR(work(dug(5, 7), Work::DigByMachineDeep), 20 * 1 / 27.0, 1e-9);
}

TEST(Digging, ByHandIsTakenFromTheMachine) {
    const Takeoff all = dug(6, 6), some = dug(6, 6, 5), more = dug(6, 6, 50);
    EXPECT_NEAR(work(some, Work::DigByHand), 5 * 5 / 27.0, 1e-9);
    EXPECT_NEAR(work(some, Work::DigByHandDeep), 5 * 1 / 27.0, 1e-9);
    EXPECT_EQ(work(some, Work::HandDigLength), 5);
    for (const auto& [machine, hand] :
         {std::pair{Work::DigByMachine, Work::DigByHand}, {Work::DigByMachineDeep, Work::DigByHandDeep}}) {
        EXPECT_NEAR(work(some, machine) + work(some, hand), work(all, machine), 1e-9);
        // More than there is: all of it by hand, and nothing twice.
        EXPECT_NEAR(work(more, hand), work(all, machine), 1e-9);
        EXPECT_NEAR(work(more, machine), 0, 1e-9);
    }
}

TEST(Digging, LargerPipeIsLaidForItself) {
    EXPECT_EQ(work(dug(3, 3), Work::LayPipe), 20);
    EXPECT_EQ(work(dug(3, 3), Work::LayLargePipe), 0);
    EXPECT_EQ(work(dug(3, 3, 0, "6 SDR35"), Work::LayPipe), 0);
    EXPECT_EQ(work(dug(3, 3, 0, "6 SDR35"), Work::LayLargePipe), 20);
}

// --- Channel drains ---

TEST(Channels, AreBoughtAndSetByTheirLengthOnWater) {
    Lot lot;
    lot.run("C", "B", 20, "4 SDR35").node("C", "channel").node("B", "bank");
    const Takeoff without = lot.takeoff();
    EXPECT_EQ(english(without.findings),
              "no row of Water gives the length of this channel drain: it is not counted");
    EXPECT_FALSE(without.works[static_cast<std::size_t>(Work::SetChannel)].amount);
    lot.trenchDrain("c", 40);
    const Takeoff with = lot.takeoff();
    EXPECT_EQ(english(with.findings), "");
    EXPECT_NEAR(amounts(with).at("CHANNEL-LENGTH"), 40, 1e-9);
    EXPECT_NEAR(work(with, Work::SetChannel), 40, 1e-9);
    lot.job.inlets[0].node = "B";
    EXPECT_EQ(amounts(lot.takeoff()).at("CHANNEL-LENGTH"), -1) << "not known again";
}

// --- A pump ---

// D, a downspout; P, the basin that 20 ft of 4 in end in. The pump lifts through 45 ft of 2 in.
Lot pumpedLot() {
    Lot lot;
    lot.run("D", "P", 20, "4 SDR35");
    lot.node("D", "downspout").node("P", "pump basin");
    lot.job.pumps = {{.node = "P",
                      .inside = Length::inches(24),
                      .floor = Length::feet(94),
                      .pipe = stockPipe("2 SCH40"),
                      .length = Length::feet(45),
                      .elbows = 3,
                      .checkValve = true,
                      .powerOut = PowerOut::Alarm,
                      .concrete = Volume::cubicYards(0.5),
                      .blank = false}};
    return lot;
}

TEST(Takeoff, APumpItsBasinAndItsDischarge) {
    const Takeoff takeoff = pumpedLot().takeoff();
    EXPECT_EQ(english(takeoff.findings),
              "electrician, sod and spoil of the discharge's trench are not counted: put them on Additions");
    EXPECT_EQ(takeoff.findings[0].severity, Severity::Caution);
    // The line enters the basin by a hub.
    EXPECT_EQ(pieces(takeoff), (Counts{{"BEND45-4SDR35", 2},
                                       {"DOWNSPOUT-4SDR35", 1},
                                       {"HUB-4SDR35", 1},
                                       {"PUMP-BASIN", 1},
                                       {"PUMP", 1},
                                       {"PUMP-ALARM", 1},
                                       {"CHECK-VALVE-2", 1},
                                       {"BEND90-2SCH40", 3}}));
    const Counts counts = amounts(takeoff);
    EXPECT_NEAR(counts.at("PIPE-2SCH40"), 45, 1e-9);
    EXPECT_NEAR(counts.at("CONCRETE"), 0.5 * 27 / 0.6, 1e-9) << "bags of 0.6 cu ft";
    // A hole 4 ft across and 6 ft deep; the basin's room is hauled, the rest goes back.
    EXPECT_NEAR(takeoff.bulk.pitEarth->cubicYards(), 3.14159265358979 / 4 * 16 * 6 / 27, 1e-9);
    EXPECT_NEAR(takeoff.bulk.pumpRoom.cubicYards(), 3.14159265358979 / 4 * 4 * 6 / 27, 1e-9);
    EXPECT_NEAR(counts.at("PUMP"), 1, 0);
    // Sockets at P: hub 1, valve 2, elbows 3 x 2, and 4 bells of 45 ft in 10 ft sticks. At D 2 x 2 + 1, and 1 bell.
    EXPECT_EQ(takeoff.nodes[1].sockets, 13u);
    EXPECT_EQ(takeoff.bulk.glued, 13u + 5u + 1u);
    // Cement: 7 sockets of 4 in at 15 a pint, 12 of 2 in at 20.
    EXPECT_NEAR(*takeoff.bulk.cementPints, 7.0 / 15 + 12.0 / 20, 1e-12);
    const auto amount = [&](Work work) {
        return takeoff.works[static_cast<std::size_t>(work)].amount->in(UnitSystem::US);
    };
    EXPECT_NEAR(amount(Work::LayPipe), 65, 1e-9);
    // 20 ft 3 ft deep, and 45 ft as deep as cover.lawn asks over a pipe of 2.375 in; both 12 in wide.
    EXPECT_NEAR(amount(Work::DigByMachine), (20 * 3 + 45 * (1 + 2.375 / 12)) / 27, 1e-9);
    EXPECT_EQ(takeoff.works[static_cast<std::size_t>(Work::LayPipe)].from.en, "Runs and Pump: all lengths");
    EXPECT_EQ(takeoff.works[static_cast<std::size_t>(Work::BasinsChannelsOutlets)].amount->in(UnitSystem::US),
              1);
    EXPECT_NE(takeoff.nodes[1].words.en.find("discharge 2 SCH40 45 ft"), std::string::npos)
        << takeoff.nodes[1].words.en;
    EXPECT_EQ(takeoff.lengths.back().piece.en, "discharge of P");
}

TEST(Takeoff, WhatIsThereBesideThePump) {
    const auto with = [](PowerOut powerOut) {
        Lot lot = pumpedLot();
        lot.job.pumps[0].powerOut = powerOut;
        return pieces(lot.takeoff());
    };
    EXPECT_EQ(with(PowerOut::SecondPump).at("PUMP"), 2);
    EXPECT_EQ(with(PowerOut::Battery).at("PUMP-BATTERY"), 1);
    EXPECT_EQ(with(PowerOut::Generator).at("PUMP-GENERATOR"), 1);
    for (const PowerOut none : {PowerOut::Nothing, PowerOut::Overflow, PowerOut::NotSaid})
        EXPECT_EQ(with(none).size(), 7u);
}

TEST(Takeoff, APumpThatIsNotKnownIsNotNothing) {
    const struct {
        std::function<void(Lot&)> spoil;
        Severity severity;
        const char* says;
    } cases[] = {
        {[](Lot& lot) { lot.job.pumps.clear(); }, Severity::NotJudged, "no row on Pump"},
        {[](Lot& lot) { lot.job.pumps[0].pipe.reset(); }, Severity::NotJudged,
         "the discharge pipe is not known"},
        {[](Lot& lot) { lot.job.pumps[0].pipe = bareBore(Length::inches(2)); }, Severity::No, "bare bore"},
        {[](Lot& lot) { lot.job.pumps[0].elbows.reset(); }, Severity::NotJudged, "check valve or elbows"},
        {[](Lot& lot) { lot.job.pumps[0].checkValve.reset(); }, Severity::NotJudged, "check valve or elbows"},
        {[](Lot& lot) { lot.job.pumps[0].length.reset(); }, Severity::NotJudged, "the discharge's length"},
        {[](Lot& lot) { lot.terms.sticks.erase("PIPE-2SCH40"); }, Severity::No,
         "no stick length is known for PIPE-2SCH40"},
    };
    for (const auto& [spoil, severity, says] : cases) {
        Lot lot = pumpedLot();
        spoil(lot);
        const Takeoff takeoff = lot.takeoff();
        bool told = false;
        for (const Finding& finding : takeoff.of(Part::Nodes, 1))
            told = told || (finding.severity == severity && finding.says.en.find(says) != std::string::npos &&
                            finding.says.es != finding.says.en);
        EXPECT_TRUE(told) << says << ": " << english(takeoff.findings);
    }
    Lot lot = pumpedLot();
    lot.job.pumps[0].length.reset();
    const Takeoff takeoff = lot.takeoff();
    EXPECT_EQ(amounts(takeoff).at("PIPE-2SCH40"), -1);
    EXPECT_EQ(amounts(takeoff).at("CEMENT"), -1);
    EXPECT_FALSE(takeoff.works[static_cast<std::size_t>(Work::LayPipe)].amount);
    // A basin at the end of pipe that lies there already is bought all the same.
    lot = pumpedLot();
    lot.job.runs[0].existing = true;
    EXPECT_EQ(pieces(lot.takeoff()).at("PUMP"), 1);
}

// --- What cannot be counted ---

// Its run is not bought, so nothing is asked of it; the node where new pipe meets it cannot be counted, and says so.
TEST(Takeoff, PipeThatLiesThereMayBeUnknown) {
    Lot lot = threePoints();
    lot.job.runs[0].existing = true;
    lot.job.runs[0].pipe.reset();
    const Takeoff takeoff = lot.takeoff();
    EXPECT_EQ(takeoff.runs[0].bells, 0u);
    EXPECT_FALSE(takeoff.runs[0].adapter);
    EXPECT_EQ(takeoff.of(Part::Runs, 0).size(), 0u) << english(takeoff.findings);
    EXPECT_EQ(takeoff.runs[1].bells, 1u);
    EXPECT_FALSE(takeoff.of(Part::Nodes, 1).empty()) << english(takeoff.findings);
    EXPECT_EQ(amounts(takeoff).at("CEMENT"), -1);
}

TEST(Takeoff, AnUnknownLengthLeavesItsSumsOpen) {
    Lot lot = threePoints();
    lot.job.runs[0].length.reset();
    const Takeoff takeoff = lot.takeoff();
    const Counts counts = amounts(takeoff);
    for (const char* code : {"PIPE-4SDR35", "CEMENT", "PRIMER", "BEDDING", "SOD", "HAUL"})
        EXPECT_EQ(counts.at(code), -1) << code;
    EXPECT_EQ(counts.at("WYE-4SDR35"), 1) << "pieces are known all the same";
    EXPECT_FALSE(takeoff.works[static_cast<std::size_t>(Work::DigByMachine)].amount);
    ASSERT_EQ(takeoff.of(Part::Runs, 0).size(), 1u);
    EXPECT_EQ(takeoff.of(Part::Runs, 0)[0].severity, Severity::NotJudged);
    EXPECT_EQ(takeoff.of(Part::Runs, 1).size(), 0u);
}

TEST(Takeoff, EveryUnknownIsNamed) {
    struct Case {
        const char* what;
        std::function<void(Lot&, SolvedJob&)> spoil;
        Part part;
        std::size_t row;
        Severity severity;
        const char* says;
    };
    const Case cases[] = {
        {"pipe", [](Lot& lot, SolvedJob&) { lot.job.runs[1].pipe.reset(); }, Part::Runs, 1,
         Severity::NotJudged, "the pipe is not known"},
        {"bare bore", [](Lot& lot, SolvedJob&) { lot.job.runs[1].pipe = bareBore(Length::inches(4)); },
         Part::Runs, 1, Severity::No, "bare bore"},
        {"node of a bare bore",
         [](Lot& lot, SolvedJob&) { lot.job.runs[1].pipe = bareBore(Length::inches(4)); }, Part::Nodes, 1,
         Severity::No, "C-O is a bare bore"},
        {"node of an unknown pipe", [](Lot& lot, SolvedJob&) { lot.job.runs[1].pipe.reset(); }, Part::Nodes,
         2, Severity::NotJudged, "the pipe of C-O is not known"},
        {"stick", [](Lot& lot, SolvedJob&) { lot.terms.sticks.clear(); }, Part::Runs, 0, Severity::No,
         "no stick length is known for PIPE-4SDR35"},
        {"cut", [](Lot&, SolvedJob& solved) { solved.runs[0].cutDown.reset(); }, Part::Runs, 0,
         Severity::NotJudged, "no cut yet"},
        {"pipe in the air", [](Lot&, SolvedJob& solved) { solved.runs[0].cutDown = Length::feet(-0.1); },
         Part::Runs, 0, Severity::No, "over the ground"},
        {"surface", [](Lot& lot, SolvedJob&) { lot.job.runs[0].surfaceDown.reset(); }, Part::Runs, 0,
         Severity::NotJudged, "lawn and paving are not counted"},
        {"kind", [](Lot& lot, SolvedJob&) { lot.job.nodes[1].kinds = {}; }, Part::Nodes, 1,
         Severity::NotJudged, "what stands here is not said"},
        {"ground", [](Lot& lot, SolvedJob&) { lot.job.nodes[1].ground.reset(); }, Part::Nodes, 1,
         Severity::NotJudged, "the riser's length is not known yet"},
        {"invert", [](Lot&, SolvedJob& solved) { solved.runs[0].invertUp.reset(); }, Part::Nodes, 0,
         Severity::NotJudged, "the riser's length is not known yet"},
        {"riser upside down", [](Lot& lot, SolvedJob&) { lot.job.nodes[1].ground = Length::feet(97); },
         Part::Nodes, 1, Severity::No, "over the top of its riser"},
        {"node that no run uses", [](Lot& lot, SolvedJob&) { lot.node("X", "basin"); }, Part::Nodes, 3,
         Severity::Check, "no run starts or ends here"},
        {"node twice", [](Lot& lot, SolvedJob&) { lot.node(" c ", "basin"); }, Part::Nodes, 3, Severity::No,
         "counted once"},
        {"point without a node", [](Lot& lot, SolvedJob&) { lot.job.nodes.pop_back(); }, Part::Runs, 1,
         Severity::NotJudged, "Nodes has no O"},
        {"crossing",
         [](Lot& lot, SolvedJob& solved) {
             lot.job.crossings.push_back({.what = "gas", .blank = false});
             solved.crossings.emplace_back();
         },
         Part::Crossings, 0, Severity::NotJudged, "digging by hand"},
    };
    for (const Case& row : cases) {
        Lot lot = threePoints();
        SolvedJob solved = lot.solved();
        row.spoil(lot, solved);
        const Takeoff takeoff = takeOff(lot.job, solved, lot.terms);
        bool told = false;
        for (const Finding& finding : takeoff.of(row.part, row.row))
            told = told || (finding.severity == row.severity &&
                            finding.says.en.find(row.says) != std::string::npos && !finding.says.es.empty());
        EXPECT_TRUE(told) << row.what << ": " << english(takeoff.findings);
    }
    EXPECT_EQ(english(threePoints().takeoff().findings), "") << "and nothing where all is known";
}

TEST(Takeoff, ANodeThatIsNotCountedLeavesTheCementOpen) {
    Lot lot = threePoints();
    lot.job.nodes.pop_back();
    EXPECT_FALSE(lot.takeoff().bulk.cementPints);
    EXPECT_TRUE(threePoints().takeoff().bulk.cementPints);
}

TEST(Takeoff, BlankRowsKeepTheirPlaces) {
    Lot lot = threePoints();
    lot.job.runs.insert(lot.job.runs.begin() + 1, trenchbook::Run{});
    lot.job.nodes.insert(lot.job.nodes.begin(), Node{});
    const Takeoff takeoff = lot.takeoff();
    EXPECT_EQ(english(takeoff.findings), "");
    EXPECT_EQ(pieces(takeoff), pieces(threePoints().takeoff()));
    EXPECT_EQ(takeoff.runs.size(), 3u);
    EXPECT_FALSE(takeoff.runs[1].bells);
    EXPECT_FALSE(takeoff.nodes[0].counted);
    const Takeoff none = Lot().takeoff();
    EXPECT_TRUE(none.lines.empty());
    EXPECT_EQ(none.works[0].amount->in(UnitSystem::US), 0) << "no job without a run";
}

// --- What to buy ---

TEST(Takeoff, ACodeBoughtInPlaceOfAnother) {
    Lot lot = threePoints();
    lot.terms.buyAs = {{"wye-4sdr35", "W44"}, {"PIPE-4SDR35", "P4S"}};
    lot.terms.sticks = {{"p4s", Length::feet(13)}};
    const Takeoff takeoff = lot.takeoff();
    EXPECT_EQ(english(takeoff.findings), "");
    const Counts counts = amounts(takeoff);
    EXPECT_EQ(counts.at("W44"), 1);
    EXPECT_NEAR(counts.at("P4S"), 50.5, 1e-9);
    EXPECT_FALSE(counts.contains("WYE-4SDR35"));
    EXPECT_EQ(takeoff.runs[0].bells, 1u) << "25 ft of 13 ft sticks";
    // Two makes bought as one share their sticks: 6 + 6 ft come out of one of 13 ft.
    Lot two;
    two.run("A", "O", 6, "4 SDR35").run("B", "Q", 6, "4 D2729");
    for (const char* name : {"A", "B", "O", "Q"}) two.node(name, "crossing");
    two.terms.buyAs = {{"PIPE-4D2729", "PIPE-4SDR35"}};
    two.terms.sticks = {{"PIPE-4SDR35", Length::feet(13)}};
    EXPECT_EQ(two.takeoff().lines.front().fewestSticks, 1u);
    EXPECT_NEAR(amounts(two.takeoff()).at("PIPE-4SDR35"), 12, 1e-9);
    // Pieces bought by the code of a bulk good cannot be added to it.
    lot.terms.buyAs = {{"WYE-4SDR35", "CEMENT"}};
    EXPECT_NE(english(lot.takeoff().of(Part::Runs, Finding::whole)).find("two kinds of goods"),
              std::string::npos);
}

TEST(Takeoff, LinesSayWhereTheyComeFrom) {
    const Takeoff takeoff = threePoints().takeoff();
    for (const TakeoffLine& line : takeoff.lines)
        if (line.code == "BEND45-4SDR35") {
            EXPECT_EQ(line.from.en, "Nodes: D x2, C");
            EXPECT_EQ(line.from.es, "Nodes: D x2, C");
        }
    // The volumes of ADownspoutACleanoutAndAnOutlet: 11.25 cu ft of sand are 0.42 cu yd or 0.32 m3, 45 sq ft of lawn
    // are 4 m2.
    const auto from = [](const Takeoff& taken, const std::string& code) {
        for (const TakeoffLine& line : taken.lines)
            if (line.code == code) return line.from;
        return Text();
    };
    EXPECT_EQ(from(takeoff, "BEDDING").en, "Runs: length x width x bedding = 0.42 cu yd");
    EXPECT_EQ(from(takeoff, "SOD").en, "Runs and pit: 25% of 45 sq ft under lawn");
    Lot metric = threePoints();
    metric.job.units = UnitSystem::Metric;
    EXPECT_EQ(from(metric.takeoff(), "BEDDING").es, "Runs: largo x ancho x cama = 0.32 m3");
    EXPECT_EQ(from(metric.takeoff(), "SOD").es, "Runs y pozo: 25% de 4 m2 bajo césped");
    // One piece bought for runs and for nodes.
    Lot mixed;
    mixed.run("A", "B", 20, "4 CORRUGATED").run("B", "O", 20, "4 SDR35");
    mixed.node("A", "cap").node("B", "crossing").node("O", "outlet");
    mixed.terms.buyAs = {{"GUARD-4", "ADAPTER-4CORRUGATED-SDR35"}};
    EXPECT_EQ(from(mixed.takeoff(), "ADAPTER-4CORRUGATED-SDR35").en, "Runs: A to B; Nodes: O");
    EXPECT_EQ(from(mixed.takeoff(), "ADAPTER-4CORRUGATED-SDR35").es, "Runs: A a B; Nodes: O");
    std::set<std::string> codes;
    for (const TakeoffLine& line : takeoff.lines) {
        EXPECT_TRUE(codes.insert(line.code).second) << line.code;
        EXPECT_FALSE(line.from.en.empty() || line.from.es.empty()) << line.code;
    }
}

TEST(Takeoff, CleanoutsThatTheRulesAsk) {
    Lot lot = threePoints();
    SolvedJob solved = lot.solved();
    solved.runs[0].asked = AskedCleanouts{.atUpperNode = false, .along = 2, .first = Length::feet(8)};
    solved.runs[1].asked = AskedCleanouts{.atUpperNode = true, .along = 0, .first = {}};
    Takeoff takeoff = takeOff(lot.job, solved, lot.terms);
    ASSERT_EQ(takeoff.asked.size(), 2u);
    EXPECT_EQ(takeoff.asked[0].count, 2u);
    EXPECT_EQ(takeoff.asked[0].where.en, "on D to C 2 x, 8 ft below D");
    EXPECT_EQ(takeoff.asked[1].where.es, "en C");
    // Told once for the whole, and not bought.
    EXPECT_EQ(
        english(takeoff.findings),
        "the rules ask 3 more cleanouts than Nodes has, not counted: on D to C 2 x, 8 ft below D; at C");
    EXPECT_EQ(amounts(takeoff).at("CLEANOUT-4SDR35"), 1);
    const auto work = [&] {
        return takeoff.works[static_cast<std::size_t>(Work::CleanoutsAndWyes)].amount->in(UnitSystem::US);
    };
    EXPECT_EQ(work(), 2) << "a wye and a cleanout";
    lot.terms.buyAsked = true;
    takeoff = takeOff(lot.job, solved, lot.terms);
    EXPECT_EQ(english(takeoff.findings), "");
    EXPECT_EQ(amounts(takeoff).at("CLEANOUT-4SDR35"), 4);
    EXPECT_EQ(amounts(takeoff).at("WYE-4SDR35"), 4);
    EXPECT_EQ(amounts(takeoff).at("BEND45-4SDR35"), 6);
    EXPECT_EQ(work(), 2 + 2 * 3);
}

// --- Work ---

TEST(Takeoff, AmountsOfWork) {
    Lot lot = threePoints();
    lot.terms.handDigMore = Length::feet(3);
    lot.job.crossings.push_back({.what = "gas", .blank = false});
    SolvedJob solved = lot.solved();
    solved.crossings[0].handDig = Length::feet(4);
    const Takeoff takeoff = takeOff(lot.job, solved, lot.terms);
    ASSERT_EQ(takeoff.works.size(), static_cast<std::size_t>(Work::HandDigLength) + 1);
    const std::map<Work, double> expected = {
        {Work::SetUp, 1},
        {Work::CutSod, 45},
        {Work::DigByMachine, 38 * 3 / 27.0},
        {Work::DigByHand, 7 * 3 / 27.0},
        {Work::HandDigLength, 7},
        {Work::LayPipe, 45},
        {Work::CleanoutsAndWyes, 2},
        {Work::Downspouts, 1},
        {Work::BasinsChannelsOutlets, 1},
        {Work::DigPit, 0},
        {Work::RockAndFabric, 0},
        {Work::LaySod, 45},
        {Work::LayLargePipe, 0},
        {Work::ProtectTrench, 0},
        {Work::SetChannel, 0},
        {Work::FlushTest, 1},
    };
    for (const WorkAmount& work : takeoff.works) {
        EXPECT_EQ(static_cast<std::size_t>(work.work),
                  static_cast<std::size_t>(&work - takeoff.works.data()));
        EXPECT_FALSE(work.name.en.empty() || work.name.es.empty() || work.from.en.empty() ||
                     work.from.es.empty());
        if (expected.contains(work.work)) {
            EXPECT_NEAR(work.amount->in(UnitSystem::US), expected.at(work.work), 1e-9) << work.name.en;
        }
        EXPECT_NEAR(takeoff.works[static_cast<std::size_t>(Work::HaulSpoil)].amount->in(UnitSystem::US),
                    takeoff.bulk.haulLoose->cubicYards(), 1e-12);
    }
    // More by hand than there is trench: no digging is left for the machine.
    lot.terms.handDigMore = Length::feet(100);
    EXPECT_EQ(takeOff(lot.job, solved, lot.terms).works[2].amount->in(UnitSystem::US), 0);
}

TEST(Takeoff, TermsThatCannotBe) {
    Lot lot = threePoints();
    lot.terms.sodShare = 1.5;
    EXPECT_THROW(lot.takeoff(), Error);
    lot.terms.sodShare = 0;
    EXPECT_FALSE(amounts(lot.takeoff()).contains("SOD"));
    lot.terms.kerf = Length::inches(-1);
    EXPECT_THROW(lot.takeoff(), Error);
    lot.terms.kerf = {};
    lot.terms.handDigMore = Length::feet(-1);
    EXPECT_THROW(lot.takeoff(), Error);
}

TEST(Takeoff, SwellOfTheSoilByItsWords) {
    const Ruleset rules;
    const std::map<std::string, double> expected = {
        {"clay", 0.35},       {"Silty CLAY", 0.35},   {"arcilla", 0.35}, {"sand", 0.12}, {"arena fina", 0.12},
        {"sandy loam", 0.25}, {"arena franca", 0.25}, {"loam", 0.25},    {"", 0.25}};
    for (const auto& [soil, swell] : expected) EXPECT_EQ(swellOf(soil, rules), swell) << soil;
}

// --- Published earthwork ---

TEST(Takeoff, PublishedEarthThroughALot) {
    for (const auto& row : reference::rows("20e_earthwork.csv")) {
        if (row.item == "Volume from three areas, average end area") {
            // A trench one unit wide: the printed areas are its cuts.
            Lot lot;
            lot.run("A", "B", 1, "4 SDR35").run("B", "O", 1, "4 SDR35");
            lot.node("A", "cap").node("B", "crossing").node("O", "outlet");
            for (trenchbook::Run& run : lot.job.runs) {
                run.length = Length::metres(row.input("L_m"));
                run.trenchWidth = Length::metres(1);
            }
            SolvedJob solved = lot.solved();
            solved.runs[0].cutUp = Length::metres(40);
            solved.runs[0].cutDown = solved.runs[1].cutUp = Length::metres(50);
            solved.runs[1].cutDown = Length::metres(80);
            EXPECT_EQ(row.word("A_m2"), "40,50,80");
            reference::check("TAKEOFF", row, takeOff(lot.job, solved, lot.terms).bulk.bank->cubicMetres());
        }
        if (row.item == "Bank to loose") {
            // The rock of a pit takes the room of so much soil.
            Lot lot;
            lot.job.pit.node = "T";
            lot.job.pit.length = lot.job.pit.width = Length::feet(27);
            lot.job.pit.rockDepth = Length::feet(row.input("bcy") / 27);
            lot.job.pit.soilOver = Length::feet(1);
            lot.job.rules.set("swell.loam", row.input("swell"), UnitSystem::US);
            reference::check("TAKEOFF", row, lot.takeoff().bulk.haulLoose->cubicYards());
            for (const auto& loads : reference::rows("20e_earthwork.csv"))
                if (loads.item == "Truck loads") {
                    lot.job.rules.set("truck.load", loads.input("truck_lcy"), UnitSystem::US);
                    reference::check("TAKEOFF", loads, *lot.takeoff().bulk.haulLoads);
                }
        }
    }
}

// --- What holds for any lot ---

// A tree of up to twelve runs to the outlet N0, each node of one or two kinds, in mixed pipe.
Lot anyLot() {
    const std::vector<std::string> kinds = {"downspout",
                                            "channel",
                                            "basin",
                                            "bend",
                                            "cleanout",
                                            "wye",
                                            "crossing",
                                            "cap",
                                            "cleanout + downspout",
                                            "basin + downspout"};
    Lot lot;
    lot.node("N0", "outlet");
    const std::size_t runs = *rc::gen::inRange<std::size_t>(1, 13);
    for (std::size_t i = 1; i <= runs; ++i) {
        const std::size_t below = *rc::gen::inRange<std::size_t>(0, i);
        const StockPipe& row = *rc::gen::elementOf(std::vector<StockPipe>(stock().begin(), stock().end()));
        lot.run("N" + std::to_string(i), "N" + std::to_string(below), *rc::gen::inRange<int>(1, 600) / 10.0,
                row.pipe.name);
        const std::string kind = *rc::gen::elementOf(kinds);
        lot.node("N" + std::to_string(i), kind,
                 *rc::gen::elementOf(std::vector<double>{0, 22.5, 45, 67.5, 90}));
        if (kind == "channel") lot.trenchDrain("N" + std::to_string(i), 12);
    }
    return lot;
}

TEST(TakeoffProperties, NothingIsNegativeAndAllCutsAreThere) {
    rc::check([] {
        const Lot lot = anyLot();
        const Takeoff takeoff = lot.takeoff();
        for (const auto& [code, amount] : amounts(takeoff)) RC_ASSERT(amount > 0);
        double lengths = 0, cut = 0;
        for (const PipeLength& length : takeoff.lengths) lengths += length.length.feet();
        for (const CutRow& row : takeoff.cuts.rows) cut += static_cast<double>(row.many) * row.length.feet();
        RC_ASSERT(std::fabs(lengths - cut) < 1e-4);
        double lines = 0;
        for (const auto& [code, amount] : amounts(takeoff))
            if (code.starts_with("PIPE-")) lines += amount;
        RC_ASSERT(std::fabs(lengths - lines) < 1e-6);
        for (const WorkAmount& work : takeoff.works) RC_ASSERT(work.amount->in(UnitSystem::US) >= 0);
        // One line a code, and every piece of a node on it.
        const Counts all = amounts(takeoff);
        for (const auto& [code, count] : pieces(takeoff)) RC_ASSERT(all.at(code) == count);
    });
}

TEST(TakeoffProperties, TellingMoreNeverLowersACount) {
    rc::check([] {
        const Lot lot = anyLot();
        // The same lot before its last node was entered.
        Lot before = lot;
        before.job.nodes.pop_back();
        const Counts less = pieces(before.takeoff()), more = pieces(lot.takeoff());
        for (const auto& [code, count] : less) RC_ASSERT(more.contains(code) && more.at(code) >= count);
        // And a node of one kind more: only a bare coupling gives way to a fitting.
        Lot grown = lot;
        grown.job.nodes.back().kinds.add(NodeKind::Downspout);
        const Counts grownTo = pieces(grown.takeoff());
        for (const auto& [code, count] : more)
            if (!code.starts_with("COUPLING-"))
                RC_ASSERT(grownTo.contains(code) && grownTo.at(code) >= count);
    });
}

TEST(TakeoffProperties, ARunTakenAwayTakesItsLength) {
    rc::check([] {
        Lot lot = anyLot();
        const auto dug = [&] {
            const Takeoff takeoff = lot.takeoff();
            return work(takeoff, Work::LayPipe) + work(takeoff, Work::LayLargePipe);
        };
        const double before = dug(), length = lot.job.runs.back().length->feet();
        lot.job.runs.pop_back();
        RC_ASSERT(std::fabs(before - length - dug()) < 1e-9);
    });
}

TEST(TakeoffProperties, BothUnitSystemsCountTheSame) {
    rc::check([] {
        Lot lot = anyLot();
        const Takeoff us = lot.takeoff();
        lot.job.units = UnitSystem::Metric;
        const Takeoff metric = lot.takeoff();
        RC_ASSERT(us.lines.size() == metric.lines.size());
        for (std::size_t i = 0; i < us.lines.size(); ++i) {
            RC_ASSERT(us.lines[i].code == metric.lines[i].code);
            RC_ASSERT(us.lines[i].net->value == metric.lines[i].net->value);
        }
    });
}

TEST(Takeoff, EveryStockPipeThroughALot) {
    for (const StockPipe& row : stock()) {
        Lot lot;
        lot.run("D", "C", 25, row.pipe.name)
            .run("C", "B", 20, row.pipe.name)
            .run("B", "O", 20, row.pipe.name);
        lot.node("D", "downspout").node("C", "cleanout", 45).node("B", "basin").node("O", "outlet");
        const Takeoff takeoff = lot.takeoff();
        EXPECT_EQ(english(takeoff.findings), "") << row.pipe.name;
        const std::string word = pipeWord(row.pipe), riser = pipeWord(riserFor(row.pipe));
        const Counts counts = pieces(takeoff);
        EXPECT_EQ(counts.at("HUB-" + word), 2);
        EXPECT_EQ(counts.at("CLEANOUT-" + riser), 1);
        EXPECT_EQ(counts.at("DOWNSPOUT-" + riser), 1);
        EXPECT_EQ(counts.at("BEND45-" + riser), word == riser ? 4 : 3);
        EXPECT_GE(amounts(takeoff).at(pipeCode(row.pipe)), 65) << row.pipe.name;
        EXPECT_EQ(*takeoff.bulk.cementPints > 0, row.pipe.joint == Joint::SolventWeld) << row.pipe.name;
        for (const auto& [code, count] : counts)
            EXPECT_TRUE(code.ends_with(row.pipe.system) || code.starts_with("GUARD-") ||
                        code.starts_with("BASIN-12"))
                << code;
    }
}

}  // namespace
}  // namespace trenchbook
