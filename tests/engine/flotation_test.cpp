#include "trenchbook/ground/flotation.h"
#include "sentence.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <string>

#include "reference.h"
#include "trenchbook/core/error.h"

using namespace trenchbook;
using namespace trenchbook::reference;

namespace {

constexpr const char* file = "30l_buoyancy.csv";

// The sources weigh water at 62.4 lb/cu ft; 1000 kg/m3 are 62.428.
const double theirWater = 62.4 / waterDensity.poundsPerCubicFoot();
constexpr const char* roundWater = "the source weighs water at 62.4 lb/cu ft";

BulkDensity pcf(double value) { return BulkDensity::poundsPerCubicFoot(value); }

const Row& numbered(std::string_view last) {
    for (const Row& row : rows(file))
        if (row.id.ends_with("-" + std::string(last))) return row;
    ADD_FAILURE() << "no row " << last;
    return rows(file).front();
}

}  // namespace

TEST(Flotation, PublishedTanks) {
    const Length round = Length::inches(67);
    check("FLOAT.UPLIFT", numbered("024"), basinVolume(round, {}, Length::inches(65)).cubicFeet());
    check("FLOAT.UPLIFT", numbered("025"), upliftOn(Volume::cubicFeet(132.6)).pounds(), theirWater,
          roundWater);
    const Volume tank = basinVolume(Length::inches(126), Length::inches(68), Length::inches(64));
    check("FLOAT.UPLIFT", numbered("026"), tank.cubicFeet());
    check("FLOAT.UPLIFT", numbered("027"), upliftOn(tank).pounds(), theirWater, roundWater);
    const Volume five = basinVolume(Length::feet(5), {}, Length::feet(5));
    check("FLOAT.UPLIFT", numbered("030"), five.cubicFeet(), 3.1416 / 3.14159265358979,
          "the source writes 3.1416");
    check("FLOAT.UPLIFT", numbered("031"), five.gallons());
    for (const char* number : {"064", "066"}) {
        const Row& row = numbered(number);
        const Volume basin =
            basinVolume(Length::inches(row.input("D_in")), {}, Length::inches(row.input("depth_in")));
        check("FLOAT.UPLIFT", row, upliftOn(basin).pounds(), theirWater, roundWater);
    }
    const Row& pipe = numbered("003");
    const Volume foot = basinVolume(Length::feet(pipe.input("OD_ft")), {}, Length::feet(1));
    check("FLOAT.UPLIFT", pipe, upliftOn(foot).pounds(), theirWater * 0.785 / (3.14159265358979 / 4),
          "the source writes 62.4 and 0.785");
    const Row& hole = numbered("020");
    check("FLOAT.UPLIFT", hole,
          upliftOn(basinVolume(Length::feet(hole.input("OD_ft")), {}, Length::feet(hole.input("depth_ft"))))
              .pounds(),
          theirWater, roundWater);
}

TEST(Flotation, PublishedHolding) {
    const Row& hole = numbered("021");
    const Buried manhole{.outside = basinVolume(Length::feet(6), {}, Length::feet(23)),
                         .weight = Weight::pounds(34514.0237)};
    check("FLOAT.BASIN", hole, flotationFactor(manhole), 1 / theirWater, roundWater);
    // Soil over the tank that lies dry: as much as soil in the water that is heavier by the water's weight.
    const Row& balance = numbered("029");
    const Length length = Length::inches(126);
    const Length width = Length::inches(68);
    const Buried tank{.outside = basinVolume(length, width, Length::inches(64)),
                      .weight = Weight::pounds(balance.input("tank_lb")),
                      .soilDensity = pcf(80) + waterDensity};
    const Volume soil = soilNeeded(tank, 1);
    const double uplift = upliftOn(tank.outside).pounds();
    const double own = tank.weight.pounds();
    check("FLOAT.BASIN", balance, (soil / basinArea(length, width)).feet(),
          (uplift * theirWater - own) / (uplift - own), roundWater);
    Buried held = tank;
    held.soil = soil;
    EXPECT_NEAR(flotationFactor(held), 1, 1e-12);
    check("engine: basinArea", numbered("028"),
          (basinArea(length, width) * Length::feet(1) * pcf(80)).pounds());
    EXPECT_NEAR(concreteDensity.poundsPerCubicFoot(), numbered("005").number(), 1e-9);
    check("engine: soakedSoil", numbered("046"), soakedSoil.poundsPerCubicFoot());
}

TEST(Flotation, ConcreteThatHolds) {
    for (const char* number : {"065", "067"}) {
        const Row& row = numbered(number);
        const Row& above = numbered(number == std::string("065") ? "064" : "066");
        const Buried basin{.outside = basinVolume(Length::inches(above.input("D_in")), {},
                                                  Length::inches(above.input("depth_in"))),
                           .weight = Weight::pounds(row.input("basin_lb"))};
        // With water at 62.4: uplift and the concrete's weight under water both change.
        const double uplift = upliftOn(basin.outside).pounds();
        const double own = basin.weight.pounds();
        const double exact = (1.25 * uplift - own) / (150 - waterDensity.poundsPerCubicFoot());
        const double theirs = (1.25 * uplift * theirWater - own) / (150 - 62.4);
        check("FLOAT.CONCRETE", row, concreteNeeded(basin, 1.25).cubicFeet(), theirs / exact, roundWater);
        Buried held = basin;
        held.concrete = concreteNeeded(basin, 1.25);
        EXPECT_NEAR(flotationFactor(held), 1.25, 1e-12);
    }
}

TEST(Flotation, EmptyPipes) {
    int uplifts = 0;
    int covers = 0;
    for (const Row& row : rows(file)) {
        if (!row.item.starts_with("Empty pipe, water to grade")) continue;
        const Length outside = Length::inches(row.input("OD_in"));
        if (row.output == "uplift") {
            const Volume foot = basinVolume(outside, {}, Length::feet(1));
            check("FLOAT.UPLIFT", row, upliftOn(foot).pounds(), theirWater, roundWater);
            ++uplifts;
            continue;
        }
        // Soil of 57.6 under water, as theirs; the uplift alone keeps their lighter water.
        const double factor = row.input("factor");
        const WeightPerLength own = WeightPerLength::poundsPerFoot(row.input("pipe_lb_ft"));
        check("FLOAT.COVER", row,
              coverAgainstFloating(outside, factor * theirWater, own, pcf(57.6) + waterDensity).feet(), 1,
              roundWater);
        ++covers;
    }
    EXPECT_EQ(uplifts, 4);
    EXPECT_EQ(covers, 8);
}

TEST(Flotation, CollarsAndLaws) {
    // 24 in round, 36 in deep, a collar 6 in wide and thick: ring pi/4 (9 - 4) = 3.927 sq ft.
    const Collar ring =
        collarAround(Length::feet(2), {}, Length::feet(3), Length::inches(6), Length::inches(6));
    EXPECT_NEAR(ring.concrete.cubicFeet(), 3.92699 / 2, 1e-4);
    EXPECT_NEAR(ring.soil.cubicFeet(), 3.92699 * 2.5, 1e-4);
    const Collar box =
        collarAround(Length::feet(2), Length::feet(1), Length::feet(3), Length::feet(1), Length::feet(1));
    EXPECT_NEAR(box.concrete.cubicFeet(), 4 * 3 - 2, 1e-12);
    EXPECT_TRUE(rc::check("cover found for a factor gives that factor", [] {
        const Length outside = Length::inches(*rc::gen::inRange(3, 24));
        const double factor = *rc::gen::inRange(100, 300) / 100.0;
        const WeightPerLength own = WeightPerLength::poundsPerFoot(*rc::gen::inRange(0, 30) / 10.0);
        const BulkDensity soil = pcf(*rc::gen::inRange(90, 140));
        const Length cover = coverAgainstFloating(outside, factor, own, soil);
        RC_ASSERT(pipeFlotationFactor(outside, cover, own, soil) >= factor - 1e-9);
        if (cover > Length{})
            RC_ASSERT(std::fabs(pipeFlotationFactor(outside, cover, own, soil) - factor) < 1e-9);
        RC_ASSERT(pipeFlotationFactor(outside, cover + Length::inches(1), own, soil) > factor - 1e-9);
    }));
    const Buried basin{.outside = Volume::cubicFeet(10), .weight = Weight::pounds(40)};
    EXPECT_EQ(concreteNeeded(basin, 0.01), Volume{});
}

// A collar of 6 in around a box of 2 by 2 ft, as thick as the box is deep: (3 x 3 - 2 x 2) x 3 cu ft, and no soil on it.
TEST(Flotation, ACollarMayBeAsThickAsTheBoxIsDeep) {
    const Length two = Length::feet(2), three = Length::feet(3);
    const Collar collar = collarAround(two, two, three, Length::inches(6), three);
    EXPECT_NEAR(collar.concrete.cubicFeet(), 15, 1e-12);
    EXPECT_EQ(collar.soil, Volume{});
}

TEST(Flotation, Refusals) {
    EXPECT_EQ(sentence([] { upliftOn(Volume{}); }), "outside is 0; allowed: above 0.");
    EXPECT_EQ(
        sentence(
            [] { flotationFactor({.outside = Volume::cubicFeet(1), .weight = {}, .soilDensity = pcf(60)}); }),
        "soil weight is 60 lb/cu ft; allowed: the soil with its water: above 62.4 and at most 200 lb/cu ft "
        "(1000 to 3204 kg/m³).");
    EXPECT_EQ(sentence([] {
                  collarAround(Length::feet(2), {}, Length::feet(3), Length::feet(1), Length::feet(4));
              }),
              "collar thickness is 48 in; allowed: at most the depth of 36 in (914 mm).");
    EXPECT_EQ(sentence([] { coverAgainstFloating(Length::feet(1), 0); }), "factor is 0; allowed: above 0.");
    EXPECT_EQ(sentence([] { pipeFlotationFactor(Length::feet(1), Length::feet(-1)); }).substr(0, 8),
              "cover is");
    EXPECT_EQ(sentence([] { basinVolume(Length{}, {}, Length::feet(1)); }), "length is 0; allowed: above 0.");
}
