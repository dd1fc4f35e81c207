#include <cmath>

#include "catalog_harness.h"
#include "reference.h"
#include "trenchbook/core/units.h"

namespace trenchbook::addin {
namespace {

using namespace harness;
using reference::check;

constexpr double foot = 0.3048;
const double litresPerGallon = Volume::gallons(1).litres();
const double litresPerSecondPerGpm = Flow::gpm(1).litresPerSecond();

TEST(Pipe, Stock) {
    EXPECT_NEAR(number("PIPE.BORE", {"4 SDR35"}), 3.975, 1e-12);
    EXPECT_NEAR(number("PIPE.BORE", {"4 SDR35", "metric"}), 3.975 * 25.4, 1e-9);
    EXPECT_NEAR(number("PIPE.OUTSIDE", {"4 sch 40"}), 4.5, 1e-12);
    EXPECT_EQ(number("PIPE.ROUGHNESS", {"4 CORRUGATED"}), 0.020);
    EXPECT_EQ(number("PIPE.ROUGHNESS", {6.0}), 0.011);
    EXPECT_NEAR(number("PIPE.BORE", {3.975}), 3.975, 1e-12);
    EXPECT_NEAR(number("PIPE.BORE", {100.0, "metric"}), 100, 1e-9);
    // A bore typed as text counts in the call's unit; with an inch mark it is inches.
    EXPECT_NEAR(number("PIPE.BORE", {"100", "metric"}), 100, 1e-9);
    EXPECT_NEAR(number("PIPE.BORE", {"4\"", "metric"}), 101.6, 1e-9);
}

// A printed table of a pipe of 1 ft, n 0.013, slope 0.005, computed with 1.49 for the exact constant.
TEST(Pipe, AreaRadiusAndVelocityAtAFill) {
    const double exact = 1 / std::cbrt(metresPerFoot);  // 1.48592
    int checked = 0;
    for (const reference::Row& row : reference::rows("12e_circular_elements_printed_table.csv")) {
        const double fill = row.input("y/d");
        if (row.output.starts_with("area"))
            check("PIPE.AREA", row, number("PIPE.AREA", {12.0, fill}));
        else if (row.output.starts_with("hydraulic radius"))
            check("PIPE.RADIUS", row, number("PIPE.RADIUS", {12.0, fill}) / 12);
        else if (row.output.starts_with("velocity"))
            check("PIPE.VELOCITY.AT", row, number("PIPE.VELOCITY.AT", {12.0, 0.005, 0.013, fill}),
                  1.49 / exact, "the source writes 1.49");
        else
            continue;
        ++checked;
    }
    EXPECT_EQ(checked, 150);
    EXPECT_NEAR(number("PIPE.AREA", {"4 SDR35"}), 3.14159265358979 / 4 * 3.975 * 3.975 / 144, 1e-12);
    EXPECT_NEAR(number("PIPE.RADIUS", {"4 SDR35"}), 3.975 / 4, 1e-12);
    // Flow is velocity times area, at any fill.
    EXPECT_NEAR(number("PIPE.VELOCITY.AT", {"4 SDR35", "1%", "", 0.3}) *
                    number("PIPE.AREA", {"4 SDR35", 0.3}) * Flow::cfs(1).gpm(),
                number("PIPE.CAPACITY", {"4 SDR35", "1%", "", 0.3}), 1e-9);
    expectUnitsAgree("PIPE.AREA", {4.0, 0.3});
    expectUnitsAgree("PIPE.RADIUS", {4.0, 0.3});
    expectUnitsAgree("PIPE.VELOCITY.AT", {4.0, 0.01, 0.012, 0.3});
    EXPECT_EQ(whyNot("PIPE.AREA", {"4 SDR35", 1.2}),
              "fill is 1.2; allowed: above 0 and at most 1. If 1.2 percent is meant, write 0.012.");
    EXPECT_EQ(whyNot("PIPE.RADIUS", {"4 SDR35", 0.0}, Language::Spanish),
              "fill es 0; se admite: mayor que 0 y como máximo 1.");
    EXPECT_EQ(whyNot("PIPE.VELOCITY.AT", {"4 SDR35", "1%", 0.011, 2.0}).substr(0, 9), "fill is 2");
}

TEST(Pipe, BoreForAFlow) {
    const double exact = 1 / std::cbrt(metresPerFoot);
    int checked = 0;
    for (const reference::Row& row : reference::rows("01e_efm_pipe_examples.csv")) {
        if (row.output != "required diameter") continue;
        const double bore = number(
            "PIPE.BORE.FOR", {Flow::cfs(row.input("Q_cfs")).gpm(), row.input("S_ftft"), row.input("n")});
        check("PIPE.BORE.FOR", row, row.unit == "ft" ? bore / 12 : bore,
              std::pow(exact / row.input("k"), 3.0 / 8), "the source writes 1.49");
        ++checked;
    }
    EXPECT_EQ(checked, 2);
    EXPECT_NEAR(
        number("PIPE.CAPACITY", {number("PIPE.BORE.FOR", {120.0, "1%", 0.013, 0.7}), "1%", 0.013, 0.7}), 120,
        1e-9);
    EXPECT_EQ(number("PIPE.BORE.FOR", {120.0, "1%"}), number("PIPE.BORE.FOR", {120.0, "1%", 0.011, 1.0}));
    expectUnitsAgree("PIPE.BORE.FOR", {120.0, 0.01, 0.012, 0.8});
    EXPECT_EQ(whyNot("PIPE.BORE.FOR", {0.0, "1%"}), "flow is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("PIPE.BORE.FOR", {120.0, 0.0}).substr(0, 10), "slope is 0");
    EXPECT_EQ(whyNot("PIPE.BORE.FOR", {120.0, "1%", 0.001}),
              "roughness is 0.001; allowed: Manning n from 0.005 to 0.5.");
    EXPECT_EQ(whyNot("PIPE.BORE.FOR", {120.0, "1%", 0.011, 0.0}).substr(0, 9), "fill is 0");
}

TEST(Pipe, CapacityAndItsInverses) {
    const double full = number("PIPE.CAPACITY", {"4 SDR35", "1%"});
    EXPECT_NEAR(number("PIPE.SLOPE", {"4 SDR35", full}), 0.01, 1e-14);
    EXPECT_NEAR(number("PIPE.CAPACITY", {"4 SDR35", "1%", 0.022}), full / 2, 1e-9);
    const double half = number("PIPE.CAPACITY", {"4 SDR35", "1%", 0.011, 0.5});
    EXPECT_NEAR(half, full / 2, 1e-9);
    EXPECT_NEAR(number("PIPE.FILL", {"4 SDR35", "1%", half}), 0.5, 1e-12);
    EXPECT_NEAR(number("PIPE.SLOPE", {"4 SDR35", half, 0.011, 0.5}), 0.01, 1e-14);
    const double cleaning = number("PIPE.SELFCLEAN", {"4 SDR35"});
    const double squareFeet = 3.14159265358979 / 4 * 3.975 * 3.975 / 144;
    EXPECT_NEAR(number("PIPE.CAPACITY", {"4 SDR35", cleaning}) / Flow::cfs(1).gpm() / squareFeet, 2, 1e-12);
    // An optional left empty in the middle is as if left out.
    EXPECT_NEAR(number("PIPE.CAPACITY", {"4 SDR35", "1%", Nothing{}, 0.5}), half, 1e-12);
}

// Published values through the catalog, units and all. Where a book rounds Manning's constant (1.49
// for 1.48592) the roughness is turned by the same share.
TEST(Pipe, PublishedValues) {
    constexpr const char* sewer =
        "San Diego State University open-channel notes, 12 in sewer, n "
        "0.013, slope 0.00405, 0.88 m/s, 0.064 m3/s";
    check("PIPE.CAPACITY", "304.8 mm full, L/s, metric",
          number("PIPE.CAPACITY", {304.8, 0.00405, 0.013, 1.0, "metric"}), 64, 0.5, sewer, "read");
    // The velocity is printed to 0.005 in 0.88 m/s, so the slope is known to twice that share.
    check("PIPE.SELFCLEAN", "304.8 mm, 0.88 m/s flowing full, metric",
          number("PIPE.SELFCLEAN", {304.8, 0.88, 0.013, "metric"}), 0.00405, 0.00405 * 2 * 0.005 / 0.88,
          sewer, "read");
    check("PIPE.SLOPE", "304.8 mm, 64 L/s full, metric",
          number("PIPE.SLOPE", {304.8, 64.0, 0.013, 1.0, "metric"}), 0.00405, 0.00405 * 2 * 0.5 / 64, sewer,
          "read");
    constexpr const char* culvert =
        "Texas Tech University CE 4353/5360, HW 5 solution, 36 in culvert, 17 cfs, n 0.015, slope 0.002";
    const double gpm = Flow::cfs(17).gpm(), rounded = 1.48592 / 1.49;
    check("PIPE.CRITICAL", "critical depth, in", number("PIPE.CRITICAL", {36.0, gpm}), 1.32 * 12, 0.06,
          culvert, "read");
    check("PIPE.FILL", "normal depth over bore", number("PIPE.FILL", {36.0, 0.002, gpm, 0.015 * rounded}),
          1.77 / 3, 0.005 / 3, culvert, "read");
    constexpr const char* full =
        "Elger, Williams, Crowe and Roberson, Engineering Fluid Mechanics, "
        "example 15.8 (constant 1.49, g 32.2)";
    const double cfs225 = Flow::cfs(225).gpm();
    check("PIPE.FRICTION", "54 in, 225 cfs, 200 ft, n 0.012, ft",
          number("PIPE.FRICTION", {54.0, cfs225, 200.0, 0.012 * rounded}), 2.22, 0.005, full, "read");
    check("FITTING.LOSS", "54 in, 225 cfs, K 1.5, ft",
          number("FITTING.LOSS", {54.0, cfs225, 1.5}) * 32.17405 / 32.2, 4.66, 0.005, full, "read");
    check("PIPE.HOLDS", "4 in bore, 100 ft, gal", number("PIPE.HOLDS", {4.0, 100.0}), 65.28, 0.005,
          "pi/4 x 4 x 4 x 1200 / 231", "common practice");
    check("PIPE.DISPLACES", "4 SCH40, 100 ft, cu ft", number("PIPE.DISPLACES", {"4 SCH40", 100.0}), 11.045,
          0.0005, "pi/4 x 4.5 x 4.5 / 144 x 100", "common practice");
}

TEST(Pipe, MetricAgreesWithUs) {
    const auto agree = [](const char* name, std::vector<Value> us, std::vector<Value> metric,
                          double metricPerUs) {
        metric.push_back("metric");
        EXPECT_NEAR(number(name, metric) / (number(name, us) * metricPerUs), 1, 1e-9) << name;
    };
    const double flow = 60 * litresPerSecondPerGpm;
    const double poundsPerSquareFoot = Shear::poundsPerSquareFoot(1).pascals();
    agree("PIPE.BORE", {"6 SCH40"}, {"6 SCH40"}, 25.4);
    agree("PIPE.OUTSIDE", {"6 SCH40"}, {"6 SCH40"}, 25.4);
    agree("PIPE.CAPACITY", {"4 SDR35", "1%"}, {"4 SDR35", "1%", Nothing{}, Nothing{}}, litresPerSecondPerGpm);
    agree("PIPE.SLOPE", {"4 SDR35", 60.0}, {"4 SDR35", flow, Nothing{}, Nothing{}}, 1);
    agree("PIPE.SELFCLEAN", {"4 SDR35", 2.5}, {"4 SDR35", 2.5 * foot, Nothing{}}, 1);
    agree("PIPE.FILL", {"4 SDR35", "1%", 60.0}, {"4 SDR35", "1%", flow, Nothing{}}, 1);
    agree("PIPE.VELOCITY", {"4 SDR35", "1%", 60.0}, {"4 SDR35", "1%", flow, Nothing{}}, foot);
    agree("PIPE.CRITICAL", {"4 SDR35", 60.0}, {"4 SDR35", flow}, 25.4);
    agree("PIPE.SHEAR", {"4 SDR35", "1%", 60.0}, {"4 SDR35", "1%", flow, Nothing{}}, poundsPerSquareFoot);
    agree("PIPE.FRICTION", {"4 SDR35", 60.0, 80.0}, {"4 SDR35", flow, 80 * foot, Nothing{}}, foot);
    agree("PIPE.FRICTION.WALL", {"4 SDR35", 60.0, 80.0, 0.001, 50.0},
          {"4 SDR35", flow, 80 * foot, 0.0254, 10.0}, foot);
    agree("PIPE.FRICTION.WALL", {"4 SDR35", 60.0, 80.0, 0.001},
          {"4 SDR35", flow, 80 * foot, 0.0254, Nothing{}}, foot);
    agree("PIPE.HOLDS", {"4 SDR35", 100.0}, {"4 SDR35", 100 * foot}, litresPerGallon);
    agree("PIPE.DISPLACES", {"4 SDR35", 100.0}, {"4 SDR35", 100 * foot}, foot * foot * foot);
    agree("FITTING.LOSS", {"4 SDR35", 60.0, 0.75}, {"4 SDR35", flow, 0.75}, foot);
}

TEST(Pipe, Size) {
    EXPECT_EQ(words("PIPE.SIZE", {120.0, "1%"}), "6 SDR35");
    EXPECT_EQ(words("PIPE.SIZE", {79.0, "1%"}), "4 SDR35");
    EXPECT_EQ(words("PIPE.SIZE", {120.0, "1%", column({"4 SCH40", Nothing{}, "8 SCH40", "6 SCH40"})}),
              "8 SCH40");
    EXPECT_EQ(words("PIPE.SIZE", {99.0, "1%", "4 SDR35", 1.0}), "4 SDR35");
    EXPECT_EQ(words("PIPE.SIZE", {4.8, "1%", column({100.0, 150.0}), 0.8, Nothing{}, Nothing{}, "metric"}),
              "100");
    EXPECT_EQ(words("PIPE.SIZE", {10.0, "1%", column({100.0, 150.0}), 0.8, Nothing{}, Nothing{}, "metric"}),
              "150");
    EXPECT_EQ(whyNot("PIPE.SIZE", {9999.0, "1%"}),
              "No candidate carries 9999 gpm (630.84 L/s) at this slope; the largest takes 2470.2 gpm "
              "(155.85 L/s) at the "
              "share allowed.");
    EXPECT_EQ(whyNot("PIPE.SIZE", {20.0, "1%", "4 SDR35", 0.8, Nothing{}, 9.0}),
              "No candidate carries 20 gpm (1.26 L/s) at this slope with at least 9 ft/s (2.74 m/s).");
    EXPECT_EQ(whyNot("PIPE.SIZE", {20.0, "1%", column({"4 SDR35", "4 SRD35"})}),
              "candidates: pipe in row 2 is \"4 SRD35\"; allowed: 4 SDR35, 4 SCH40, 4 D2729, 4 CORRUGATED, 4 "
              "DUALWALL, or "
              "a bore.");
    EXPECT_EQ(whyNot("PIPE.SIZE", {20.0, "1%", "4 SDR35", 80.0}),
              "largest share is 80; allowed: above 0 and at most 1. If 80 percent is meant, write 0.8.");
}

TEST(Pipe, Fittings) {
    EXPECT_EQ(number("FITTING.K", {"45 elbow"}), 0.5625);
    EXPECT_EQ(number("FITTING.K", {"codo 90"}), 0.75);
    EXPECT_EQ(number("FITTING.LOSS", {"4 SDR35", 100.0, "codo 90"}),
              number("FITTING.LOSS", {"4 SDR35", 100.0, 0.75}));
    EXPECT_NE(whyNot("FITTING.K", {"60 bend"})
                  .find("fitting is \"60 bend\"; allowed: one name of the list, such as 90 bend"),
              std::string::npos);
    EXPECT_EQ(whyNot("FITTING.LOSS", {"4 SDR35", 100.0, -1.0}), "K is -1; allowed: 0 or more.");
}

TEST(Pipe, Makeup) {
    EXPECT_EQ(words("BEND.MAKEUP", {67.0}), "45 + 22.5");
    EXPECT_EQ(words("BEND.MAKEUP", {90.0}), "45 + 45");
    EXPECT_EQ(words("BEND.MAKEUP", {90.0, column({11.25, 22.5, 45.0, 90.0})}), "90");
    EXPECT_EQ(words("BEND.MAKEUP", {11.0, column({11.25, Nothing{}, 45.0})}), "11.25");
    EXPECT_EQ(words("BEND.MAKEUP", {50.0, Nothing{}, 5.0}), "45");
    EXPECT_EQ(whyNot("BEND.MAKEUP", {10.0}), "turn is 10; allowed: a sum of 45, 22.5 within 3 deg.");
    EXPECT_EQ(whyNot("BEND.MAKEUP", {200.0}), "turn is 200; allowed: above 0 and at most 180 deg.");
    EXPECT_EQ(whyNot("BEND.MAKEUP", {45.0, 3.0}), "pieces is 3; allowed: 1 to 8 angles from 5 to 90 deg.");
}

// A tolerance from 0 to half of 45 degrees: the limits themselves are allowed.
TEST(Pipe, BendsWithinATolerance) {
    EXPECT_EQ(whyNot("BEND.MAKEUP", {45.0, Nothing{}, 0.0}), "OK");
    EXPECT_EQ(whyNot("BEND.MAKEUP", {45.0, Nothing{}, 22.5}), "OK");
    EXPECT_EQ(whyNot("BEND.MAKEUP", {45.0, Nothing{}, 22.51}).find("tolerance is 22.51"), 0u);
    EXPECT_EQ(whyNot("BEND.MAKEUP", {45.0, Nothing{}, -0.01}).find("tolerance is -0.01"), 0u);
}

TEST(Pipe, BadArguments) {
    EXPECT_EQ(
        whyNot("PIPE.CAPACITY", {"4 SRD35", "1%"}),
        "pipe is \"4 SRD35\"; allowed: 4 SDR35, 4 SCH40, 4 D2729, 4 CORRUGATED, 4 DUALWALL, or a bore.");
    EXPECT_EQ(whyNot("PIPE.CAPACITY", {0.0, "1%"}),
              "pipe is 0; allowed: a stock name such as 4 SDR35, or a bore above 0.");
    EXPECT_EQ(whyNot("PIPE.CAPACITY", {"4 SDR35", 0.0}),
              "slope is 0; allowed: above 0 and below 1 (a fraction).");
    EXPECT_EQ(whyNot("PIPE.CAPACITY", {"4 SDR35", 1.0}),
              "slope is 1; allowed: above 0 and below 1. If 1 percent is meant, write 1% or 0.01.");
    EXPECT_EQ(whyNot("PIPE.CAPACITY", {"4 SDR35", "steep"}),
              "slope is \"steep\"; allowed: a fraction such as 0.01, or 1/8 in/ft, 1%, 1:96.");
    EXPECT_EQ(whyNot("PIPE.CAPACITY", {"4 SDR35", "1%", 11.0}),
              "roughness is 11; allowed: Manning n from 0.005 to 0.5.");
    EXPECT_EQ(whyNot("PIPE.CAPACITY", {"4 SDR35", "1%", 0.011, 80.0}),
              "fill is 80; allowed: above 0 and at most 1. If 80 percent is meant, write 0.8.");
    EXPECT_EQ(whyNot("PIPE.CAPACITY", {"4 SDR35"}),
              "slope is left out; allowed: a fraction such as 0.01, or 1/8 in/ft, 1%, 1:96.");
    EXPECT_EQ(whyNot("PIPE.SLOPE", {"4 SDR35", 0.0}), "flow is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("PIPE.FILL", {"4 SDR35", "1%", 150.0}),
              "flow is 150; allowed: at most 106.8 gpm (6.74 L/s), the most this pipe carries at this slope "
              "without pressure.");
    EXPECT_EQ(whyNot("PIPE.FILL", {"4 SDR35", "1%", -1.0}, Language::Spanish),
              "flow es -1; se admite: 0 o más.");
    EXPECT_EQ(whyNot("PIPE.OUTSIDE", {4.0}),
              "pipe is 4; allowed: a stock name such as 4 SDR35, for the outside matters here.");
    EXPECT_EQ(whyNot("PIPE.SELFCLEAN", {"4 SDR35", -2.0}), "velocity is -2; allowed: above 0.");
    EXPECT_EQ(whyNot("PIPE.FRICTION", {"4 SDR35", 50.0, -10.0}), "length is -10; allowed: 0 or more.");
    EXPECT_EQ(whyNot("PIPE.FRICTION.WALL", {"4 SDR35", 50.0, 10.0, 0.5}),
              "wall roughness is 0.5; allowed: from 0 to 0.05 of the bore.");
    EXPECT_EQ(whyNot("PIPE.FRICTION.WALL", {"4 SDR35", 50.0, 10.0, 0.001, 300.0}),
              "water is 300; allowed: from 32 to 212 °F (0 to 100 °C).");
    EXPECT_EQ(number("PIPE.FILL", {"4 SDR35", "1%", 0.0}), 0);
}

}  // namespace
}  // namespace trenchbook::addin
