// FLOAT.* and FOOTING.* as Calc calls them.
#include "catalog_harness.h"
#include "reference.h"
#include "trenchbook/core/units.h"
#include "trenchbook/ground/flotation.h"

namespace trenchbook::addin {
namespace {

using namespace harness;

const double theirWater = 62.4 / waterDensity.poundsPerCubicFoot();
constexpr const char* roundWater = "the source weighs water at 62.4 lb/cu ft";

TEST(FloatFunctions, PublishedTanks) {
    int checked = 0;
    for (const reference::Row& row : reference::rows("30l_buoyancy.csv")) {
        if (row.item.starts_with("Empty plastic basin")) {
            reference::check("FLOAT.UPLIFT", row,
                             number("FLOAT.UPLIFT", {row.input("D_in"), row.input("depth_in")}), theirWater,
                             roundWater);
            ++checked;
        } else if (row.item == "Tank 68 x 126 x 64 in, uplift") {
            reference::check("FLOAT.UPLIFT", row, number("FLOAT.UPLIFT", {126.0, 64.0, 68.0}), theirWater,
                             roundWater);
            ++checked;
        } else if (row.item == "Manhole flotation, weight over uplift, no soil friction") {
            reference::check("FLOAT.BASIN", row, number("FLOAT.BASIN", {72.0, 276.0, 34514.0237}),
                             1 / theirWater, roundWater);
            ++checked;
        }
    }
    EXPECT_EQ(checked, 4);
}

TEST(FloatFunctions, KnownAnswers) {
    const double concrete = number("FLOAT.CONCRETE", {18.0, 30.0, 40.0});
    // 1.5 x 275.8 lb less 40 lb, by 87.57 lb/cu ft of concrete under water.
    const double water = waterDensity.poundsPerCubicFoot();
    const double uplift = number("FLOAT.UPLIFT", {18.0, 30.0});
    EXPECT_NEAR(concrete, (1.5 * uplift - 40) / (150 - water), 1e-9);
    EXPECT_NEAR(number("FLOAT.BASIN", {18.0, 30.0, 40.0}), 40 / uplift, 1e-12);
    // Water half way up lifts half as much.
    EXPECT_NEAR(number("FLOAT.BASIN", {18.0, 30.0, 40.0, "", 15.0}), 80 / uplift, 1e-12);
    EXPECT_EQ(number("FLOAT.BASIN", {18.0, 30.0, 40.0, "", 40.0}), number("FLOAT.BASIN", {18.0, 30.0, 40.0}));
    EXPECT_GT(number("FLOAT.BASIN", {18.0, 30.0, 40.0, "", "", 6.0, 6.0}), 1.5);
    const double cover = number("FLOAT.COVER", {"6 SDR35", 1.5, 2.36, 120.0});
    EXPECT_NEAR(number("FLOAT.PIPE", {"6 SDR35", cover, 2.36, 120.0}), 1.5, 1e-9);
    EXPECT_GT(number("FLOAT.COVER", {"6 SDR35"}), cover);
    expectUnitsAgree("FLOAT.UPLIFT", {24.0, 36.0, 18.0});
    expectUnitsAgree("FLOAT.BASIN", {24.0, 36.0, 90.0, 18.0, 30.0, 6.0, 6.0, 110.0});
    expectUnitsAgree("FLOAT.CONCRETE", {24.0, 36.0, 90.0, 18.0, 30.0, 1.25});
    expectUnitsAgree("FLOAT.PIPE", {"6 SDR35", 6.0, 2.36, 110.0});
    expectUnitsAgree("FLOAT.COVER", {"6 SDR35", 1.5, 2.36, 110.0});
}

TEST(FloatFunctions, FaultsInWords) {
    EXPECT_EQ(whyNot("FLOAT.UPLIFT", {0.0, 30.0}), "length is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("FLOAT.UPLIFT", {18.0, 0.0}), "depth is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("FLOAT.BASIN", {18.0, 30.0, -1.0}), "weight is -1; allowed: 0 or more.");
    EXPECT_EQ(whyNot("FLOAT.BASIN", {18.0, 30.0, 40.0, "", 0.0}), "water depth is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("FLOAT.BASIN", {18.0, 30.0, 40.0, "", "", 6.0, 40.0}),
              "collar thickness is 40; allowed: at most the depth of 30 in (762 mm).");
    EXPECT_EQ(whyNot("FLOAT.BASIN", {18.0, 30.0, 40.0, "", "", 6.0, 6.0, 50.0}).substr(0, 17),
              "soil weight is 50");
    EXPECT_EQ(whyNot("FLOAT.CONCRETE", {18.0, 30.0, 40.0, "", "", 0.0}), "factor is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("FLOAT.PIPE", {"6 SDR35", -1.0}), "cover is -1; allowed: 0 or more.");
    EXPECT_EQ(whyNot("FLOAT.PIPE", {6.0, 1.0}).substr(0, 7), "pipe is");
    EXPECT_EQ(whyNot("FLOAT.COVER", {"6 SDR35", 1.5, -1.0}), "pipe weight is -1; allowed: 0 or more.");
}

TEST(FootingFunctions, PublishedLine) {
    int checked = 0;
    for (const reference::Row& row : reference::rows("30g_trench_footing_safety.csv")) {
        if (row.output != "distance" || !row.has("footing_bottom_ft")) continue;
        const double footing = 100 - row.input("footing_bottom_ft");
        const double trench = 100 - row.input("trench_depth_ft");
        const double distance = number("FOOTING.DISTANCE", {footing, trench});
        reference::check("FOOTING.DISTANCE", row, distance);
        EXPECT_NEAR(number("FOOTING.CLEARANCE", {footing, trench, distance}), 0, 1e-12);
        ++checked;
    }
    EXPECT_EQ(checked, 4);
    EXPECT_NEAR(number("FOOTING.CLEARANCE", {98.0, 97.0, 2.5}), 1.5, 1e-12);
    expectUnitsAgree("FOOTING.CLEARANCE", {98.0, 95.0, 2.5});
    expectUnitsAgree("FOOTING.DISTANCE", {98.0, 95.0});
    EXPECT_EQ(whyNot("FOOTING.CLEARANCE", {98.0, 97.0, -2.0}), "distance is -2; allowed: 0 or more.");
    EXPECT_EQ(whyNot("FOOTING.DISTANCE", {98.0, "deep"}).substr(0, 13), "trench bottom");
}

}  // namespace
}  // namespace trenchbook::addin
