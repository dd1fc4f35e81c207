// SURFACE.*, RUNOFF.*, ROOF.AREA and TRAVEL.* as Calc calls them.
#include "catalog_harness.h"
#include "reference.h"
#include "trenchbook/core/units.h"

namespace trenchbook::addin {
namespace {

using namespace harness;

constexpr double m = metresPerFoot;
constexpr double m2 = m * m;
const double litresPerSecond = Flow::gpm(1).litresPerSecond();

TEST(RunoffFunctions, KnownAnswers) {
    EXPECT_NEAR(number("RUNOFF.FLOW", {962.5, 0.9, 5.0}), 45, 1e-12);
    EXPECT_NEAR(number("RUNOFF.VOLUME", {1200.0, 0.95, 1.0}), 95, 1e-12);
    EXPECT_NEAR(number("RUNOFF.DEPTH", {7.0, 50.0}), 25.0 / 15, 1e-12);
    EXPECT_NEAR(number("RUNOFF.DEPTH", {7.0, 50.0, 0.05}), 6.5 * 6.5 / 16.5, 1e-12);
    EXPECT_NEAR(number("SURFACE.COMPOSITE", {61.0, 0.2}), 68.4, 1e-12);
    EXPECT_NEAR(number("SURFACE.COMPOSITE", {61.0, 0.2, 1.0}), 61 + 0.2 * 37 / 2, 1e-12);
    EXPECT_EQ(number("SURFACE.COEFFICIENT", {"roof", "high"}), 0.95);
    EXPECT_EQ(number("SURFACE.COEFFICIENT", {"roof"}), 0.85);
    EXPECT_EQ(number("SURFACE.CURVE", {"lawn, good", "B"}), 61);
    EXPECT_NEAR(number("ROOF.AREA", {1200.0, 200.0}), 1300, 1e-9);
    EXPECT_NEAR(number("ROOF.AREA", {1200.0, 200.0, 0.25, 1.1}), 1370, 1e-9);
    EXPECT_NEAR(number("TRAVEL.SHALLOW", {1000.0, "1:100", "unpaved"}), 1000 / 1.61345 / 60, 1e-9);
    EXPECT_EQ(number("TRAVEL.SHEET", {60.0, "2%", "short grass", 3.5}),
              number("TRAVEL.SHEET", {"60'", 0.02, 0.15, 3.5}));
}

// HDS-2 writes V = 10 k sqrt(S) in m/s with a k of its own, up to 8 % from the list's: typed as a number.
TEST(RunoffFunctions, ShallowFlowByANumber) {
    int checked = 0;
    for (const reference::Row& row : reference::rows("02b_hds2_tc_and_rational_examples.csv")) {
        if (row.output != "V" || !row.has("k")) continue;
        const double minutes =
            number("TRAVEL.SHALLOW", {600.0, row.input("S"), 10 * row.input("k"), "metric"});
        reference::check("TRAVEL.SHALLOW", row, 600 / minutes / 60);
        ++checked;
    }
    EXPECT_EQ(checked, 5);
    EXPECT_NEAR(number("TRAVEL.SHALLOW", {600.0, 0.04, 20.0}), 2.5, 1e-12);
    // The list's grassed waterway is the furthest from HDS-2's.
    EXPECT_NEAR(number("TRAVEL.SHALLOW", {600.0, 0.04, 10 * 0.457, "metric"}) /
                    number("TRAVEL.SHALLOW", {600.0, 0.04, "grassed waterways", "metric"}),
                1.076, 0.001);
}

TEST(RunoffFunctions, UsAndMetricAgree) {
    EXPECT_NEAR(number("RUNOFF.FLOW", {1200 * m2, 0.95, 4 * 25.4, "metric"}),
                number("RUNOFF.FLOW", {1200.0, 0.95, 4.0}) * litresPerSecond, 1e-9);
    EXPECT_NEAR(number("RUNOFF.VOLUME", {1200 * m2, 0.95, 25.4, "metric"}),
                number("RUNOFF.VOLUME", {1200.0, 0.95, 1.0}) * m2 * m, 1e-9);
    EXPECT_NEAR(number("RUNOFF.DEPTH", {5 * 25.4, 80.0, Nothing{}, "metric"}),
                number("RUNOFF.DEPTH", {5.0, 80.0}) * 25.4, 1e-9);
    EXPECT_NEAR(number("ROOF.AREA", {1200 * m2, 200 * m2, Nothing{}, Nothing{}, "metric"}),
                number("ROOF.AREA", {1200.0, 200.0}) * m2, 1e-9);
    EXPECT_NEAR(number("TRAVEL.SHEET", {60 * m, 0.02, 0.15, 3.5 * 25.4, "metric"}),
                number("TRAVEL.SHEET", {60.0, 0.02, 0.15, 3.5}), 1e-9);
    EXPECT_NEAR(number("TRAVEL.SHALLOW", {120 * m, 0.02, "lawn", "metric"}),
                number("TRAVEL.SHALLOW", {120.0, 0.02, "lawn"}), 1e-9);
    EXPECT_NEAR(number("TRAVEL.KIRPICH", {500 * m, 0.02, "metric"}), number("TRAVEL.KIRPICH", {500.0, 0.02}),
                1e-9);
}

TEST(RunoffFunctions, FaultsInWords) {
    EXPECT_EQ(whyNot("RUNOFF.FLOW", {1200.0, 95.0, 4.0}),
              "coefficient is 95; allowed: above 0 and at most 1. If 95 percent is meant, write 0.95.");
    EXPECT_EQ(
        whyNot("RUNOFF.FLOW", {1200.0, 95.0, 4.0}, Language::Spanish),
        "coefficient es 95; se admite: mayor que 0 y como máximo 1. Si se trata de 95 por ciento, escriba 0.95.");
    EXPECT_EQ(whyNot("RUNOFF.FLOW", {1200.0, 0.0, 4.0}), "coefficient is 0; allowed: above 0 and at most 1.");
    EXPECT_EQ(whyNot("RUNOFF.FLOW", {0.0, 0.9, 4.0}), "area is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("RUNOFF.FLOW", {"big", 0.9, 4.0}), "area is \"big\"; allowed: a number in sq ft.");
    EXPECT_EQ(whyNot("RUNOFF.FLOW", {100.0, 0.9, 0.0}), "intensity is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("RUNOFF.VOLUME", {100.0, 0.9, -1.0}), "rain is -1; allowed: above 0.");
    EXPECT_EQ(whyNot("RUNOFF.DEPTH", {3.0, 0.8}), "curve number is 0.8; allowed: from 10 to 100.");
    EXPECT_EQ(whyNot("SURFACE.COMPOSITE", {61.0, 20.0}),
              "impervious share is 20; allowed: from 0 to 1. If 20 percent is meant, write 0.2.");
    EXPECT_EQ(whyNot("ROOF.AREA", {100.0, 0.0, 0.5, 3.0}), "pitch factor is 3; allowed: from 1 to 1.5.");
    EXPECT_EQ(whyNot("SURFACE.CURVE", {"roof", "E"}),
              "soil group is \"E\"; allowed: A, B, C or D (the soil survey tells it).");
    EXPECT_EQ(whyNot("TRAVEL.SHEET", {150.0, 0.02, 0.15, 3.5}),
              "length is 150 ft (45.72 m): after 100 ft (30.48 m) a sheet of water has gathered into rills; "
              "take the "
              "rest of the path as shallow flow.");
    EXPECT_EQ(whyNot("TRAVEL.SHALLOW", {150.0, 2.0, "lawn"}).substr(0, 10), "slope is 2");
}

}  // namespace
}  // namespace trenchbook::addin
