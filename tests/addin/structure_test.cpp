// STRUCTURE.*, TRANSITION.LOSS, BEND.LOSS and JUNCTION.LOSS as Calc calls them.
#include <cmath>
#include <numbers>

#include "catalog_harness.h"
#include "reference.h"
#include "trenchbook/core/units.h"

namespace trenchbook::addin {
namespace {

using namespace harness;

double gpm(double cfs) { return Flow::cfs(cfs).gpm(); }

// The computed rows write 32.174 ft/s2.
const double theirGravity = gravity / metresPerFoot / 32.174;
constexpr const char* roundGravity = "the source writes 32.174 ft/s2";

TEST(StructureFunctions, TheExamplesStructure42) {
    // HEC-22, example 7-3: outlet 2 ft, 6.75 cfs, energy 1.66 ft at the printed depth 1.56 ft; 5.1 cfs turn
    // by 90 degrees, 1.65 cfs fall in from 5.24 ft.
    const double level = number("STRUCTURE.LEVEL", {24.0, gpm(6.75), 1.56, column({gpm(5.1), gpm(1.65)}),
                                                    column({90.0, 0.0}), column({0.0, 5.24})});
    const double loss = number("STRUCTURE.LOSS", {24.0, gpm(6.75), 1.56, column({gpm(5.1), gpm(1.65)}),
                                                  column({90.0, 0.0}), column({0.0, 5.24})});
    // Printed: 1.68 + 0.06 from rounded steps of 0.01 ft.
    reference::check("STRUCTURE.LEVEL", "HEC-22 example 7-3, structure 42, energy in the box, ft", level,
                     1.74, 0.015, "FHWA HEC-22, 3rd edition (2009), example 7-3: 1.68 + 0.06", "read");
    // 1.74 less the 1.66 ft of the pipe that leaves.
    reference::check("STRUCTURE.LOSS", "HEC-22 example 7-3, structure 42, energy lost in the box, ft", loss,
                     0.08, 0.02, "FHWA HEC-22, 3rd edition (2009), example 7-3: 1.68 + 0.06 - 1.66", "read");
    EXPECT_GT(loss, 0.02);
    EXPECT_LT(loss, level);
}

TEST(StructureFunctions, KnownAnswers) {
    const std::vector<Value> straight = {"6 SDR35", 200.0, 0.6};
    const double through = number("STRUCTURE.LOSS", straight);
    EXPECT_EQ(through, number("STRUCTURE.LOSS", {"6 SDR35", 200.0, 0.6, 200.0}));
    EXPECT_GT(number("STRUCTURE.LOSS", {"6 SDR35", 200.0, 0.6, 200.0, 90.0}), through);
    EXPECT_GT(number("STRUCTURE.LOSS", {"6 SDR35", 200.0, 0.6, 200.0, "", 2.0}), through);
    EXPECT_LE(number("STRUCTURE.LOSS", {"6 SDR35", 200.0, 0.6, 200.0, 90.0, "", "full bench"}),
              number("STRUCTURE.LOSS", {"6 SDR35", 200.0, 0.6, 200.0, 90.0}));
    // Blank rows are passed over.
    EXPECT_EQ(number("STRUCTURE.LOSS",
                     {"6 SDR35", 200.0, 0.6, column({120.0, Nothing{}, 80.0}), column({0.0, "", 90.0})}),
              number("STRUCTURE.LOSS", {"6 SDR35", 200.0, 0.6, column({120.0, 80.0}), column({0.0, 90.0})}));
    const auto metric = [](const char* name) {
        return number(name, {"6 SDR35", Flow::gpm(200).litresPerSecond(), 0.6 * metresPerFoot,
                             Flow::gpm(200).litresPerSecond(), 90.0, 2 * metresPerFoot, "flat", "metric"}) /
               metresPerFoot;
    };
    for (const char* name : {"STRUCTURE.LEVEL", "STRUCTURE.LOSS"})
        EXPECT_NEAR(metric(name), number(name, {"6 SDR35", 200.0, 0.6, 200.0, 90.0, 2.0}), 1e-9);
}

TEST(StructureFunctions, ChangesBendsAndWyes) {
    for (const reference::Row& row : reference::rows("30b_junction_bend_transition.csv")) {
        if (row.output == "bend loss") {
            const double flow = gpm(row.input("V_fps") * std::numbers::pi / 4);  // in a 1 ft pipe
            reference::check("BEND.LOSS", row, number("BEND.LOSS", {12.0, flow, row.input("delta_deg")}),
                             theirGravity, roundGravity);
        } else if (row.output == "junction loss") {
            reference::check("JUNCTION.LOSS", row,
                             number("JUNCTION.LOSS",
                                    {row.input("Di_in"), gpm(row.input("Qi_cfs")), row.input("Dl_in"),
                                     gpm(row.input("Ql_cfs")), row.input("theta_deg"), row.input("Do_in")}),
                             theirGravity, roundGravity);
        } else if (row.item == "Sudden enlargement, full pipe") {
            // Head over velocity head is K.
            const double velocity = row.input("V1_fps");
            const double head = velocity * velocity / (2 * gravity / metresPerFoot);
            const double loss = number("TRANSITION.LOSS",
                                       {12.0, 12 * row.input("D2/D1"), gpm(velocity * std::numbers::pi / 4)});
            reference::check("TRANSITION.LOSS", row, loss / head);
        }
    }
    EXPECT_EQ(number("JUNCTION.LOSS", {4.0, 50.0, 4.0, 40.0, 45.0}),
              number("JUNCTION.LOSS", {4.0, 50.0, 4.0, 40.0, 45.0, 4.0}));
    EXPECT_LT(number("TRANSITION.LOSS", {3.0, 4.0, 60.0, 10.0}), number("TRANSITION.LOSS", {3.0, 4.0, 60.0}));
    expectUnitsAgree("TRANSITION.LOSS", {3.0, 4.0, 60.0, 10.0});
    expectUnitsAgree("BEND.LOSS", {4.0, 100.0, 45.0});
    expectUnitsAgree("JUNCTION.LOSS", {6.0, 200.0, 4.0, 80.0, 45.0, 6.0});
}

TEST(StructureFunctions, FaultsInWords) {
    EXPECT_EQ(whyNot("STRUCTURE.LOSS", {"6 SDR35", 0.0, 0.6}), "flow is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("STRUCTURE.LOSS", {"6 SDR35", 200.0, 0.0}), "water is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("STRUCTURE.LOSS", {"6 SDR35", 200.0, 0.6, column({150.0, 90.0})}),
              "inflows together are 240 gpm (15.142 L/s), but only 200 gpm (12.618 L/s) leave.");
    EXPECT_EQ(whyNot("STRUCTURE.LOSS", {"6 SDR35", 200.0, 0.6, 200.0, 270.0}),
              "turns is 270; allowed: from 0 to 180.");
    EXPECT_EQ(whyNot("STRUCTURE.LOSS", {"6 SDR35", 200.0, 0.6, 200.0, 0.0, -1.0}),
              "drops is -1; allowed: 0 or more.");
    EXPECT_EQ(whyNot("STRUCTURE.LOSS", {"6 SDR35", 200.0, 0.6, column({120.0, 80.0}), column({0.0})}),
              "turns is 1 row; allowed: 2 rows, as many as inflows.");
    EXPECT_EQ(whyNot("STRUCTURE.LOSS", {"6 SDR35", 200.0, 0.6, 200.0, 0.0, 0.0, "round"}),
              "floor is \"round\"; allowed: flat, depressed, half bench, full bench or improved.");
    EXPECT_EQ(whyNot("STRUCTURE.LOSS", {"6 SDR35", 200.0, 0.6, column({120.0, "x"}), column({0.0, 90.0})}),
              "inflows: \"x\" in row 2; allowed: a number in gpm.");
    EXPECT_EQ(whyNot("TRANSITION.LOSS", {"3 SCH40", "no such", 60.0}).substr(0, 9), "next pipe");
    EXPECT_EQ(whyNot("TRANSITION.LOSS", {3.0, 12.0, 60.0}),
              "next pipe is 12; allowed: a third to three times the pipe before it.");
    EXPECT_EQ(whyNot("BEND.LOSS", {4.0, 60.0, 100.0}), "turn is 100; allowed: from 0 to 90.");
    EXPECT_EQ(whyNot("JUNCTION.LOSS", {4.0, 50.0, "no such", 40.0, 45.0}).substr(0, 9), "side pipe");
    EXPECT_EQ(whyNot("JUNCTION.LOSS", {4.0, 50.0, 4.0, 0.0, 45.0}), "side flow is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("JUNCTION.LOSS", {4.0, 50.0, 4.0, 40.0, 120.0}), "angle is 120; allowed: from 0 to 90.");
}

}  // namespace
}  // namespace trenchbook::addin
