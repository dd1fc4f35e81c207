// OUTLET.* and APRON.* as Calc calls them.
#include <cmath>
#include <numbers>

#include "catalog_harness.h"
#include "reference.h"
#include "trenchbook/core/units.h"

namespace trenchbook::addin {
namespace {

using namespace harness;

TEST(OutletFunctions, PublishedHeads) {
    int checked = 0;
    const std::vector<reference::Row>& all = reference::rows("30a_riser_grate_rim.csv");
    for (std::size_t i = 1; i < all.size(); ++i) {
        if (!all[i].note.starts_with("larger of the two heads controls")) continue;
        const reference::Row& larger = all[i].note.ends_with("orifice") ? all[i] : all[i - 1];
        const double gpm = Flow::cfs(larger.input("Q_cfs")).gpm();
        reference::check("OUTLET.HEAD", larger, number("OUTLET.HEAD", {gpm, larger.input("D_in")}));
        ++checked;
    }
    EXPECT_EQ(checked, 20);
}

// HEC-22's riser: the rows of the branch that controls, weir under the least of its heads, orifice from the next on.
TEST(OutletFunctions, PublishedRiser) {
    const double orifice = 0.6 * std::numbers::pi / 4 * std::sqrt(2 * gravity);
    int checked = 0;
    for (const reference::Row& row : reference::rows("30a_riser_grate_rim.csv")) {
        if (!row.item.starts_with("Riser") || row.output == "control") continue;
        const bool us = row.has("D_ft");
        const double head = row.input(us ? "head_ft" : "head_m");
        const bool weir = head < (us ? 0.5 : 0.15);
        if (row.output != (weir ? "weir flow" : "orifice flow")) continue;
        const double theirs = weir ? 1 : row.input("K") / (us ? orifice / std::sqrt(metresPerFoot) : orifice);
        const double flow =
            us ? number("OUTLET.FLOW", {head, row.input("D_ft") * 12}) / Flow::cfs(1).gpm()
               : number("OUTLET.FLOW", {head, row.input("D_m") * 1000, "", "", "", "", "metric"}) / 1000;
        reference::check("OUTLET.FLOW", row, flow, theirs, "the source rounds 0.6 pi/4 (2 g)^0.5");
        ++checked;
    }
    EXPECT_EQ(checked, 13);
}

TEST(OutletFunctions, KnownAnswers) {
    const double tee = number("OUTLET.HEAD", {60.0, 4.0, 0.5, 0.5});
    EXPECT_NEAR(number("OUTLET.FLOW", {tee, 4.0, 0.5, 0.5}), 60, 1e-9);
    EXPECT_EQ(number("OUTLET.HEAD", {60.0, 4.0}), number("OUTLET.HEAD", {60.0, 4.0, 1.0, 0.0, 0.0, 0.0}));
    // A 12 x 9 in box is a weir of 42 in for a trickle: 10 gpm = 0.02228 cfs, (0.02228 / (3.33 x 3.5))^(2/3).
    EXPECT_NEAR(number("OUTLET.HEAD", {10.0, 12.0, 0.4, 0.0, 0.0, 9.0}),
                std::pow(Flow::gpm(10).cfs() / (3.33 * 3.5), 2.0 / 3), 1e-12);
    EXPECT_GT(number("OUTLET.HEAD", {60.0, 4.0, 0.5, 0.5, 0.25}), tee);
    EXPECT_EQ(number("OUTLET.FLOW", {"6 in", 4.0}), number("OUTLET.FLOW", {0.5, 4.0}));
    expectUnitsAgree("OUTLET.HEAD", {60.0, 4.0, 0.5, 0.5, 0.25, 6.0});
    expectUnitsAgree("OUTLET.FLOW", {0.75, 4.0, 0.5, 0.5, 0.25, 6.0});
}

TEST(OutletFunctions, FaultsInWords) {
    EXPECT_EQ(whyNot("OUTLET.HEAD", {0.0, 4.0}), "flow is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("OUTLET.HEAD", {60.0, 0.0}), "opening is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("OUTLET.HEAD", {60.0, 4.0, 0.0}),
              "open share is 0: a grate without openings lets no water through.");
    EXPECT_EQ(whyNot("OUTLET.HEAD", {60.0, 4.0, 0.5, 1.0}),
              "blocked share is 1: a grate that is blocked all over lets no water through.");
    EXPECT_EQ(whyNot("OUTLET.HEAD", {60.0, 4.0, 50.0}),
              "open share is 50; allowed: from 0 to 1. If 50 percent is meant, write 0.5.");
    EXPECT_EQ(whyNot("OUTLET.HEAD", {60.0, 4.0, 0.5, 0.0, -1.0}).substr(0, 16), "water outside is");
    EXPECT_EQ(whyNot("OUTLET.HEAD", {60.0, 4.0, 0.5, 0.0, 0.0, -6.0}).substr(0, 8), "width is");
    EXPECT_EQ(whyNot("OUTLET.FLOW", {0.0, 4.0}), "head is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("OUTLET.FLOW", {1.0, 4.0, 1.0, 0.0, 2.0}),
              "water outside is 2; allowed: at most the head inside, 1 ft (0.305 m): else water comes in.");
    EXPECT_EQ(
        whyNot("OUTLET.FLOW", {1.0, 4.0, 1.0, 0.0, 2.0}, Language::Spanish),
        "water outside es 2; se admite: como máximo la carga de adentro, 1 ft (0.305 m): si no, el agua "
        "entra.");
}

TEST(ApronFunctions, KnownAnswers) {
    int checked = 0;
    for (const reference::Row& row : reference::rows("30c_stone_aprons.csv")) {
        if (!row.has("Q_cfs") || !row.has("D_in") || row.provenance != "computed") continue;
        const double gpm = Flow::cfs(row.input("Q_cfs")).gpm();
        if (row.output == "D50")
            reference::check("APRON.STONE", row, number("APRON.STONE", {row.input("D_in"), gpm}),
                             std::pow(gravity / metresPerFoot / 32.2, 2.0 / 3),
                             "the source writes 32.2 ft/s2");
        else if (row.item == "Apron length, Dane County form")
            reference::check("APRON.LENGTH", row, number("APRON.LENGTH", {row.input("D_in"), gpm}));
        else
            continue;
        ++checked;
    }
    EXPECT_EQ(checked, 16);
    const Numbers size = numbers("APRON.SIZE", {6.0, 300.0});
    ASSERT_EQ(size.columns, 7u);
    EXPECT_EQ(size.items[0], number("APRON.STONE", {6.0, 300.0}));
    EXPECT_EQ(size.items[1], 2.0);
    EXPECT_EQ(size.items[2], number("APRON.LENGTH", {6.0, 300.0}));
    EXPECT_NEAR(size.items[3], 1.5, 1e-12);
    EXPECT_NEAR(size.items[4], 1.5 + size.items[2] * 2 / 3, 1e-12);
    EXPECT_NEAR(size.items[5], 7, 1e-12);  // 3.5 times the stone
    EXPECT_NEAR(size.items[6], size.items[2] * (size.items[3] + size.items[4]) / 2 * (7.0 / 12) / 27, 1e-12);
    EXPECT_EQ(size.items[6], number("APRON.VOLUME", {6.0, 300.0}));
    // Deep tailwater, or shooting water, by their own arguments.
    EXPECT_NEAR(number("APRON.STONE", {6.0, 300.0, 0.5}), size.items[0] * 0.4, 1e-12);
    EXPECT_EQ(number("APRON.STONE", {8.0, 300.0, "", 4.0}), size.items[0]);
    EXPECT_GT(number("APRON.VOLUME", {6.0, 300.0, "", "", 4.0}), size.items[6]);
    expectUnitsAgree("APRON.STONE", {6.0, 300.0, 0.5, 4.0});
    expectUnitsAgree("APRON.LENGTH", {6.0, 300.0});
    expectUnitsAgree("APRON.VOLUME", {6.0, 300.0, 0.5, 4.0, 4.0});
}

TEST(ApronFunctions, FaultsInWords) {
    EXPECT_EQ(whyNot("APRON.STONE", {6.0, 0.0}), "flow is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("APRON.STONE", {72.0, 300.0}),
              "pipe is 72; allowed: at most 60 in (1524 mm): larger pipes need a basin.");
    EXPECT_EQ(whyNot("APRON.STONE", {6.0, 300.0, -1.0}), "tailwater is -1; allowed: 0 or more.");
    EXPECT_EQ(
        whyNot("APRON.STONE", {6.0, 300.0, 0.0, 6.0}, Language::Spanish),
        "shooting depth es 6; se admite: mayor que 0 y menor que el diámetro interior de 6 in (152 mm).");
    EXPECT_EQ(whyNot("APRON.VOLUME", {6.0, 300.0, "", "", 1.0}).substr(0, 10), "stone is 1");
    EXPECT_NE(whyNot("APRON.SIZE", {6.0, 3000.0}).find("an apron is not enough"), std::string::npos);
}

}  // namespace
}  // namespace trenchbook::addin
