#include "trenchbook/water/surfaces.h"
#include "sentence.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "reference.h"
#include "trenchbook/core/error.h"

using namespace trenchbook;
using namespace trenchbook::reference;

namespace {

// The published name after the table's title: "Sheet-flow n: Cast iron".
std::string afterColon(const std::string& item) { return item.substr(item.find(": ") + 2); }

}  // namespace

TEST(Surfaces, RunoffCoefficientsByTheirPrintedNames) {
    int checked = 0;
    for (const Row& row : rows("02a_hds2_runoff_coefficients.csv")) {
        if (row.output != "C low" && row.output != "C high") continue;
        const RangePart part = row.output == "C low" ? RangePart::Low : RangePart::High;
        check("SURFACE.COEFFICIENT", row, runoffCoefficient(row.item, part));
        ++checked;
    }
    EXPECT_EQ(checked, 48);
    EXPECT_DOUBLE_EQ(runoffCoefficient("roof"), 0.85);
    check("SURFACE.COEFFICIENT", "bare packed soil, smooth: high",
          runoffCoefficient("bare packed soil", RangePart::High), 0.60, 0.005,
          "University of Illinois, course TSM 352, table of runoff coefficients", "read");
}

TEST(Surfaces, CurveNumbersByTheirPrintedNames) {
    const std::vector<Row>& table = rows("03b_tr55_table2-2_curve_numbers.csv");
    EXPECT_EQ(table.size(), 124u);
    for (const Row& row : table) check("SURFACE.CURVE", row, curveNumber(row.item, row.word("HSG")));
}

TEST(Surfaces, SheetRoughnessByTheirPrintedNames) {
    int checked = 0;
    for (const Row& row : rows("02b_hds2_tc_and_rational_examples.csv")) {
        if (!row.item.starts_with("Sheet-flow n: ")) continue;
        check("TRAVEL.SHEET", row, sheetRoughness(afterColon(row.item)));
        ++checked;
    }
    EXPECT_EQ(checked, 18);
}

TEST(Surfaces, ShallowFlowByTheirPrintedNames) {
    int checked = 0;
    for (const Row& row : rows("03d_neh630_examples.csv")) {
        if (!row.item.starts_with("Shallow concentrated flow coefficient: ")) continue;
        check("TRAVEL.SHALLOW", row, shallowSurface(afterColon(row.item)).atUnitSlope.feetPerSecond());
        ++checked;
    }
    for (const Row& row : rows("03c_tr55_examples.csv")) {
        if (row.output != "coefficient of s^0.5") continue;
        const char* surface = row.item == "Appendix F unpaved velocity" ? "unpaved" : "paved";
        check("TRAVEL.SHALLOW", row, shallowSurface(surface).atUnitSlope.feetPerSecond());
        ++checked;
    }
    EXPECT_EQ(checked, 8);
}

TEST(Surfaces, ForgivingNames) {
    EXPECT_EQ(runoffCoefficient("ROOFS"), runoffCoefficient("techo"));
    EXPECT_EQ(runoffCoefficient("driveway"), runoffCoefficient("Drives and walks"));
    EXPECT_EQ(runoffCoefficient("steep lawn, heavy soil", RangePart::Low), 0.25);
    EXPECT_EQ(curveNumber("Lawn good", " b "), 61);
    EXPECT_EQ(curveNumber("1/4 acre residential", "C"), 83);
    EXPECT_EQ(sheetRoughness("DENSE GRASS"), 0.24);
}

TEST(Surfaces, EveryRowIsFoundByItsOwnNames) {
    const auto others = [](const char* also, const auto& lookUp) {
        std::string rest = also;
        while (!rest.empty()) {
            const std::size_t bar = rest.find('|');
            lookUp(rest.substr(0, bar));
            rest.erase(0, bar == rest.npos ? rest.size() : bar + 1);
        }
    };
    for (const RunoffSurface& row : runoffSurfaces()) {
        EXPECT_TRUE(row.low > 0 && row.low < row.high && row.high <= 0.95) << row.name;
        const auto found = [&](const std::string& name) {
            EXPECT_EQ(runoffCoefficient(name, RangePart::Low), row.low) << name;
            EXPECT_EQ(runoffCoefficient(name, RangePart::High), row.high) << name;
        };
        found(row.name);
        others(row.also, found);
    }
    for (const GroundCover& row : groundCovers()) {
        // Worse drained soil runs off more.
        EXPECT_TRUE(std::is_sorted(row.curveNumbers.begin(), row.curveNumbers.end())) << row.name;
        const auto found = [&](const std::string& name) {
            EXPECT_EQ(curveNumber(name, "a"), row.curveNumbers[0]) << name;
            EXPECT_EQ(curveNumber(name, "Group D"), row.curveNumbers[3]) << name;
        };
        found(row.name);
        others(row.also, found);
    }
    for (const SheetSurface& row : sheetSurfaces()) {
        const auto found = [&](const std::string& name) {
            EXPECT_EQ(sheetRoughness(name), row.roughness) << name;
        };
        found(row.name);
        others(row.also, found);
    }
    for (const ShallowSurface& row : shallowSurfaces()) {
        const auto found = [&](const std::string& name) {
            EXPECT_EQ(shallowSurface(name).name, row.name) << name;
        };
        found(row.name);
        others(row.also, found);
    }
}

TEST(Surfaces, UnclearNamesAreAskedBack) {
    EXPECT_EQ(sentence([] { runoffCoefficient("playgruond"); }).substr(0, 40),
              "surface is \"playgruond\"; allowed: one na");
    // Several rows fit: all of them are offered.
    const std::string lawn = sentence([] { runoffCoefficient("lawn"); });
    EXPECT_NE(lawn.find("Lawn, sandy soil, flat"), lawn.npos) << lawn;
    EXPECT_NE(lawn.find("Lawn, heavy soil, steep"), lawn.npos) << lawn;
    EXPECT_EQ(lawn.find("Roofs"), lawn.npos) << lawn;
    EXPECT_NE(sentence([] { curveNumber("woods", "B"); }).find("Woods, fair"), std::string::npos);
    EXPECT_EQ(sentence([] { curveNumber("roof", "E"); }),
              "soil group is \"E\"; allowed: A, B, C or D (the soil survey tells it).");
    EXPECT_EQ(sentence([] { curveNumber("roof", "A/D"); }).substr(0, 13), "soil group is");
    EXPECT_NE(sentence([] { sheetRoughness(""); }).find("roughness"), std::string::npos);
    EXPECT_EQ(sentence([] { rangePart("best"); }), "which is \"best\"; allowed: \"low\", \"mid\", \"high\".");
}
