#include "trenchbook/ground/pit.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "reference.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

using namespace reference;

// A rectangle of this area and perimeter.
RockPit rectangle(double area, double perimeter, double depth, double voids, double sideShare) {
    const double half = perimeter / 4;
    const double spread = std::sqrt(std::max(0.0, half * half - area));
    return {.length = Length::metres(half + spread),
            .width = Length::metres(half - spread),
            .rockDepth = Length::metres(depth),
            .voids = voids,
            .sideShare = sideShare};
}

TEST(Pit, DrainsAsPublished) {
    for (const Row& row : rows("20b_drywell_trench_sizing.csv")) {
        if (row.item == "Time to drain, bottom and sides" && row.kind == "computed") {
            const RockPit pit =
                rectangle(row.input("A_m2"), row.input("perim_m"), row.input("d_m"), row.input("n"), 1);
            check("PIT.DRAINTIME", row,
                  drainTime(pit, SoilRate::millimetresPerHour(row.input("f_mmh"))).hours());
        }
        if (row.item == "Time to drain, bottom only") {
            const RockPit pit = rectangle(9, 12, row.input("d_m"), row.input("n"), 0);
            check("PIT.DRAINTIME", row,
                  drainTime(pit, SoilRate::millimetresPerHour(row.input("f_mmh"))).hours());
        }
        if (row.item == "Drawdown time") {
            // Standing water of Rv over the bottom: a pit that is all voids.
            const RockPit pit{.length = Length::feet(row.input("A_ft2")),
                              .width = Length::feet(1),
                              .rockDepth = Length::feet(row.input("Rv_ft3") / row.input("A_ft2")),
                              .voids = 1};
            check("PIT.DRAINTIME", row, drainTime(pit, SoilRate::inchesPerHour(row.input("K_inh"))).hours());
        }
        if (row.item == "Storage volume at that area" || row.item == "Provided storage") {
            const RockPit pit{.length = Length::feet(row.input("A_ft2")),
                              .width = Length::feet(1),
                              .rockDepth = Length::feet(row.input("d_ft")),
                              .voids = 1};
            check("PIT.STORAGE", row, storage(pit).cubicFeet());
        }
    }
}

TEST(Pit, HoldsWhatAnOrdinanceWorksOut) {
    for (const Row& row : rows("08b_trench_and_pit_examples.csv")) {
        if (row.output == "required infiltration volume")
            check(
                "PIT.RAINHELD", "rain that fills 140 cu ft from 824 sq ft, in",
                rainHeld(Volume::cubicFeet(row.number()), Area::squareFeet(row.input("imperv_ft2"))).inches(),
                row.input("depth_in"), 0.005, row.source.c_str(), "read");
        if (row.output == "gross bed volume")
            check("PIT.ROCK", row,
                  rockToHold(Volume::cubicFeet(row.input("volume_ft3")), row.input("void")).cubicFeet());
    }
    // Its 3 by 6 by 20 ft trench does hold the 140 cu ft.
    const RockPit trench{.length = Length::feet(20), .width = Length::feet(6), .rockDepth = Length::feet(3)};
    EXPECT_NEAR(storage(trench).cubicFeet(), 144, 1e-9);
    // The pipe's own water needs no rock.
    EXPECT_NEAR(rockToHold(Volume::cubicFeet(140), 0.4, Volume::cubicFeet(20)).cubicFeet(), 300, 1e-9);
    EXPECT_EQ(rockToHold(Volume::cubicFeet(10), 0.4, Volume::cubicFeet(20)).si(), 0);
}

RockPit anyPit() {
    return {.length = Length::feet(*rc::gen::inRange(10, 600) / 10.0),
            .width = Length::feet(*rc::gen::inRange(10, 150) / 10.0),
            .rockDepth = Length::feet(*rc::gen::inRange(5, 80) / 10.0),
            .voids = *rc::gen::inRange(10, 101) / 100.0,
            .sideShare = *rc::gen::inRange(0, 101) / 100.0};
}

RC_GTEST_PROP(Pit, DrainsSoonerThroughMoreAndFasterSoil, ()) {
    const RockPit pit = anyPit();
    const SoilRate rate = SoilRate::inchesPerHour(*rc::gen::inRange(1, 500) / 100.0);
    const Duration time = drainTime(pit, rate);
    RC_ASSERT(time.si() > 0);
    RC_ASSERT(std::fabs(drainTime(pit, 2 * rate) / time - 0.5) < 1e-12);
    RockPit bottomOnly = pit;
    bottomOnly.sideShare = 0;
    RC_ASSERT(time <= drainTime(bottomOnly, rate));
    RC_ASSERT(std::fabs(drainTime(bottomOnly, rate).hours() - pit.voids * (pit.rockDepth / rate).hours()) <
              1e-9 * time.hours() + 1e-9);
    // No slower than if the walls were wet to the top all the time.
    const Area most = pit.bottom() + pit.perimeter() * pit.rockDepth * pit.sideShare;
    RC_ASSERT(time.si() >= (storage(pit) / (rate * most)).si() * (1 - 1e-12));
    // Sides that hardly count and sides that do not count agree.
    RockPit hardly = bottomOnly;
    hardly.sideShare = 1e-14;
    RC_ASSERT(std::fabs(drainTime(hardly, rate) / drainTime(bottomOnly, rate) - 1) < 1e-11);
}

RC_GTEST_PROP(Pit, RockHoldsWhatItIsAskedTo, ()) {
    const RockPit pit = anyPit();
    const Volume rock = pit.bottom() * pit.rockDepth;
    RC_ASSERT(std::fabs(rockToHold(storage(pit), pit.voids) / rock - 1) < 1e-12);
    const Area roof = Area::squareFeet(*rc::gen::inRange(100, 5000));
    RC_ASSERT(std::fabs(roof * rainHeld(storage(pit), roof) / storage(pit) - 1) < 1e-12);
}

std::string refusal(const RockPit& pit, SoilRate rate = SoilRate::inchesPerHour(1)) {
    try {
        drainTime(pit, rate);
        return "accepted";
    } catch (const Error& error) {
        return error.sentence(Language::English);
    }
}

TEST(Pit, SaysWhatIsAllowed) {
    const RockPit good{.length = Length::feet(10), .width = Length::feet(4), .rockDepth = Length::feet(3)};
    EXPECT_EQ(refusal(good), "accepted");
    RockPit pit = good;
    pit.voids = 40;
    EXPECT_EQ(refusal(pit), "voids is 40; allowed: from 0 to 1. If 40 percent is meant, write 0.4.");
    pit.voids = 1.2;
    EXPECT_EQ(refusal(pit), "voids is 1.2; allowed: from 0 to 1. If 1.2 percent is meant, write 0.012.");
    pit.voids = 0;
    EXPECT_EQ(refusal(pit), "voids is 0; allowed: above 0.");
    pit = good;
    pit.sideShare = -0.5;
    EXPECT_EQ(refusal(pit), "side share is -0.5; allowed: from 0 to 1.");
    pit = good;
    pit.length = Length{};
    EXPECT_EQ(refusal(pit), "length is 0; allowed: above 0.");
    pit = good;
    pit.width = Length::metres(-1);
    EXPECT_EQ(refusal(pit), "width is -1; allowed: above 0.");
    pit = good;
    pit.rockDepth = Length::metres(std::nan(""));
    EXPECT_EQ(refusal(pit), "rock depth is not a number; allowed: above 0.");
    EXPECT_EQ(refusal(good, SoilRate{}), "rate is 0; allowed: above 0.");
    EXPECT_THROW(rainHeld(Volume::cubicFeet(1), Area{}), Error);
    EXPECT_THROW(rainHeld(Volume::cubicFeet(-1), Area::squareFeet(1)), Error);
    EXPECT_THROW(rockToHold(Volume{}), Error);
    EXPECT_THROW(rockToHold(Volume::cubicFeet(1), 0.4, Volume::cubicFeet(-1)), Error);
}

}  // namespace
}  // namespace trenchbook
