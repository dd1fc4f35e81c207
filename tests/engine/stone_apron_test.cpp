#include "trenchbook/water/stone_apron.h"
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

constexpr const char* file = "30c_stone_aprons.csv";

}  // namespace

TEST(StoneApron, PublishedStone) {
    int checked = 0;
    for (const Row& row : rows(file)) {
        const bool tailwater = row.has("TW") || row.has("TW_ft") || row.has("TW_m");
        if (row.output != "D50" || !tailwater) continue;
        if (row.has("D_in")) {  // tailwater unknown
            check("APRON.STONE", row,
                  stoneNeeded(Length::inches(row.input("D_in")), Flow::cfs(row.input("Q_cfs"))).inches(),
                  std::pow(gravity / metresPerFoot / 32.2, 2.0 / 3), "the source writes 32.2 ft/s2");
        } else if (row.has("D_ft")) {
            const Length ours = stoneNeeded(Length::feet(row.input("D_ft")), Flow::cfs(row.input("Q_cfs")),
                                            Length::feet(row.input("TW_ft")));
            check("APRON.STONE", row, ours.feet());
        } else {
            const Length ours =
                stoneNeeded(Length::metres(row.input("D_m")), Flow::cubicMetresPerSecond(row.input("Q_m3s")),
                            Length::metres(row.input("TW_m")));
            check("APRON.STONE", row, ours.metres());
        }
        ++checked;
    }
    EXPECT_EQ(checked, 10);
}

TEST(StoneApron, TailwaterCountsWithinItsLimits) {
    const Length bore = Length::feet(1);
    const Flow flow = Flow::cfs(2.5);
    const auto with = [&](double share) { return stoneNeeded(bore, flow, bore * share); };
    // Stone goes with 1 / TW between the limits and does not change beyond them: what it is there tells
    // where they lie.
    for (const Row& row : rows(file)) {
        if (row.output != "TW/D" || !row.item.starts_with("Tailwater used")) continue;
        const double beyond = row.item.ends_with("least share of diameter") ? 0.01 : 7;
        const double ours = with(0.5) / with(beyond) * 0.5;
        EXPECT_NEAR(ours, row.number(), 1e-12) << row.id;
        check("APRON.STONE", row, std::round(ours * 1e9) / 1e9);
    }
    EXPECT_EQ(stoneNeeded(bore, flow), with(0.4));
}

TEST(StoneApron, ClassesAndWidths) {
    int checked = 0;
    for (const Row& row : rows(file)) {
        if (!row.item.starts_with("Stone class ")) continue;
        const StoneClass& found = stoneClasses()[static_cast<std::size_t>(row.input("class")) - 1];
        EXPECT_EQ(found.number, row.input("class"));
        if (row.output == "D50") check("engine: stoneClass", row, found.stone.inches());
        if (row.output == "apron length over D") check("engine: stoneClass", row, found.lengthOverBore);
        if (row.output == "apron depth over D50") check("engine: stoneClass", row, found.thicknessOverStone);
        EXPECT_EQ(&stoneClass(found.stone), &found);
        ++checked;
    }
    EXPECT_EQ(checked, 18);
    for (const Row& row : rows(file)) {
        if (row.item != "Apron below a culvert (US)" || row.output == "D50") continue;
        if (row.output == "length")
            check("engine: stoneClass", row,
                  stoneClass(Length::feet(0.43)).lengthOverBore * row.input("D_ft"));
        if (row.output == "depth")
            check("engine: stoneClass", row,
                  stoneClass(Length::feet(0.43)).thicknessOverStone * row.input("D50_in"));
        if (row.output == "width at the end") {
            // The flare is the same whatever the length: 3 D + 2/3 L.
            const StoneApron ours = stoneApron(Length::feet(row.input("D_ft")), Flow::cfs(85));
            const double flare = (ours.widthAtEnd - ours.widthAtPipe) / ours.length;
            check("engine: stoneClass", row, ours.widthAtPipe.feet() + flare * row.input("L_ft"));
        }
    }
    // Width at the pipe, three diameters: North Carolina's sheets print it too.
    int widths = 0;
    for (const Row& row : rows(file)) {
        if (row.output != "width at the pipe" || row.provenance != "read") continue;
        const Length bore =
            row.has("Do_ft") ? Length::feet(row.input("Do_ft")) : Length::inches(row.input("D_in"));
        if (bore > Length::inches(60)) continue;
        check("APRON.SIZE", row, stoneApron(bore, Flow::cfs(1)).widthAtPipe.feet());
        ++widths;
    }
    EXPECT_EQ(widths, 5);
}

TEST(StoneApron, LengthByDaneCounty) {
    int checked = 0;
    for (const Row& row : rows(file)) {
        if (row.item != "Apron length, Dane County form") continue;
        check("APRON.LENGTH", row,
              apronLength(Length::inches(row.input("D_in")), Flow::cfs(row.input("Q_cfs"))).feet());
        ++checked;
    }
    EXPECT_EQ(checked, 8);
}

TEST(StoneApron, Laws) {
    EXPECT_TRUE(rc::check("more water or less tailwater, no smaller stone; the parts make the volume", [] {
        const Length bore = Length::inches(*rc::gen::inRange(3, 24));
        const Flow flow = Flow::fromSi(std::pow(bore.si(), 2.5) * *rc::gen::inRange(5, 200) / 100.0);
        const Length water = bore * (*rc::gen::inRange(0, 150) / 100.0);
        RC_ASSERT(stoneNeeded(bore, flow * 1.1, water) > stoneNeeded(bore, flow, water));
        RC_ASSERT(stoneNeeded(bore, flow, water * 1.1) <= stoneNeeded(bore, flow, water));
        const StoneApron apron = stoneApron(bore, flow, water);
        RC_ASSERT(apron.laid >= apron.needed);
        const double wide = (apron.widthAtPipe.feet() + apron.widthAtEnd.feet()) / 2;
        RC_ASSERT(std::fabs(apron.volume.cubicFeet() / (wide * apron.length.feet() * apron.thickness.feet()) -
                            1) < 1e-12);
    }));
    // Shooting water: a pipe of the mean of bore and depth.
    EXPECT_EQ(stoneNeeded(Length::inches(8), Flow::cfs(0.5), std::nullopt, Length::inches(4)),
              stoneNeeded(Length::inches(6), Flow::cfs(0.5)));
    const StoneApron chosen =
        stoneApron(Length::inches(6), Flow::cfs(0.8), std::nullopt, std::nullopt, Length::inches(3));
    EXPECT_EQ(chosen.laid, Length::inches(3));
    EXPECT_NEAR(chosen.thickness.inches(), 10.5, 1e-12);
}

TEST(StoneApron, Refusals) {
    const Length bore = Length::inches(6);
    EXPECT_EQ(sentence([&] { stoneNeeded(Length::inches(61), Flow::cfs(1)); }),
              "pipe is 61 in (1549 mm); allowed: at most 60 in (1524 mm): larger pipes need a basin.");
    EXPECT_EQ(sentence([&] { stoneNeeded(bore, Flow{}); }), "flow is 0; allowed: above 0.");
    EXPECT_EQ(sentence([&] { stoneNeeded(bore, Flow::cfs(1), Length::feet(-1)); }).substr(0, 12),
              "tailwater is");
    EXPECT_EQ(sentence([&] { stoneNeeded(bore, Flow::cfs(1), std::nullopt, bore); }),
              "shooting depth is 6 in (152 mm); allowed: above 0 and below the bore of 6 in (152 mm).");
    EXPECT_EQ(
        sentence([&] { stoneApron(bore, Flow::cfs(0.8), std::nullopt, std::nullopt, Length::inches(1)); }),
        "stone is 1 in (25 mm); allowed: from 2.22 in (56 mm), what this flow needs, to 22 in (559 mm).");
    EXPECT_EQ(sentence([&] { stoneApron(bore, Flow::cfs(8)); }).substr(0, 24), "flow needs stone of 47.8");
}
