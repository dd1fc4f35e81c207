#include "trenchbook/water/travel.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>

#include "reference.h"
#include "trenchbook/core/error.h"
#include "trenchbook/water/surfaces.h"

using namespace trenchbook;
using namespace trenchbook::reference;

namespace {

Duration sheet(const Row& row) {
    return sheetTime(Length::feet(row.input("L_ft")), Slope::fraction(row.input("s")), row.input("n"),
                     Length::inches(row.input("P2_in")));
}

}  // namespace

TEST(Travel, SheetFlow) {
    int checked = 0;
    for (const char* file : {"03c_tr55_examples.csv", "03d_neh630_examples.csv", "02d_tc_formulas.csv"})
        for (const Row& row : rows(file))
            if (row.has("P2_in") && row.has("n") && ++checked) check("TRAVEL.SHEET", row, sheet(row).hours());
    EXPECT_EQ(checked, 3);
}

TEST(Travel, ShallowFlow) {
    int checked = 0;
    const Velocity unpaved = shallowSurface("unpaved").atUnitSlope;
    for (const Row& row : rows("03c_tr55_examples.csv")) {
        if (row.item != "Example 3-1 shallow concentrated BC") continue;
        if (row.output == "V")
            check("TRAVEL.SHALLOW", row,
                  shallowVelocity(Slope::fraction(row.input("s")), unpaved).feetPerSecond());
        else  // the same path, s 0.01
            check("TRAVEL.SHALLOW", row,
                  shallowTime(Length::feet(row.input("L_ft")), Slope::fraction(0.01), unpaved).hours());
        ++checked;
    }
    EXPECT_EQ(checked, 2);
}

TEST(Travel, Kirpich) {
    int checked = 0;
    for (const Row& row : rows("02d_tc_formulas.csv"))
        if (row.kind == "computed" && row.item == "Kirpich" && ++checked)
            check(
                "TRAVEL.KIRPICH", row,
                kirpichTime(Length::feet(row.input("L_ft")), Slope::fraction(row.input("S_ftft"))).minutes());
    EXPECT_EQ(checked, 1);
}

TEST(Travel, Laws) {
    EXPECT_TRUE(rc::check("longer and flatter takes longer, by the published powers", [] {
        const Length length = Length::feet(*rc::gen::inRange(1, 50));
        const Slope slope = Slope::fraction(*rc::gen::inRange(1, 400) / 1000.0);
        const auto near = [](double a, double b) { RC_ASSERT(std::fabs(a - b) <= 1e-12 * std::fabs(b)); };
        const Length rain = Length::inches(3);
        near(sheetTime(2 * length, slope, 0.2, rain) / sheetTime(length, slope, 0.2, rain), std::pow(2, 0.8));
        near(sheetTime(length, 2 * slope, 0.2, rain) / sheetTime(length, slope, 0.2, rain),
             std::pow(2, -0.4));
        near(sheetTime(length, slope, 0.2, 4 * rain) / sheetTime(length, slope, 0.2, rain), 0.5);
        near(kirpichTime(2 * length, slope) / kirpichTime(length, slope), std::pow(2, 0.77));
        const Velocity lawn = shallowSurface("lawn").atUnitSlope;
        near(shallowTime(length, slope, lawn) / shallowTime(length, 2 * slope, lawn), std::sqrt(2));
    }));
}

TEST(Travel, Refusals) {
    const Slope slope = Slope::percent(2);
    const Length rain = Length::inches(3);
    EXPECT_NO_THROW(sheetTime(Length::feet(100), slope, 0.2, rain));
    EXPECT_NO_THROW(sheetTime(Length::metres(30.48), slope, 0.2, rain));
    try {
        sheetTime(Length::feet(150), slope, 0.2, rain);
        ADD_FAILURE();
    } catch (const Error& error) {
        EXPECT_EQ(error.kind(), Error::Kind::OutsideValidity);
        EXPECT_EQ(error.argument(), "length");
    }
    EXPECT_THROW(sheetTime(Length::feet(50), Slope{}, 0.2, rain), Error);
    EXPECT_THROW(sheetTime(Length::feet(50), slope, 15, rain), Error);
    EXPECT_THROW(sheetTime(Length::feet(50), slope, 0.2, Length{}), Error);
    EXPECT_THROW(shallowTime(Length{}, slope, Velocity::feetPerSecond(7)), Error);
    EXPECT_THROW(shallowTime(Length::feet(50), Slope::fraction(2), Velocity::feetPerSecond(7)), Error);
    EXPECT_THROW(kirpichTime(Length::feet(-1), slope), Error);
}
