#include "trenchbook/water/perforated.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "books.h"
#include "trenchbook/core/error.h"
#include "trenchbook/pipe/manning.h"

using namespace trenchbook;
using namespace trenchbook::reference;

namespace {
constexpr const char* drainRows = "30m_perforated_gravel_drains.csv";
}

TEST(Perforated, HolesOfAPressureTable) {
    int checked = 0;
    for (const Row& row : rows(drainRows)) {
        if (row.item != "Perforation discharge") continue;
        check("PERFORATED.HOLE", row,
              holeFlow(Length::inches(row.input("d_in")), Length::feet(row.input("head_ft")), row.input("Cd"))
                  .gpm());
        ++checked;
    }
    EXPECT_EQ(checked, 8);
}

// Six slots of 8 x 1.5 mm every 3 cm on 8 m of pipe.
TEST(Perforated, SlottedPipe) {
    const Perforations slots{.opening = Length::millimetres(8),
                             .slotWidth = Length::millimetres(1.5),
                             .around = 6,
                             .spacing = Length::millimetres(30)};
    int checked = 0;
    for (const Row& row : rows(drainRows)) {
        ++checked;
        if (row.item == "Perforated pipe example, open area")
            check("PERFORATED.OPEN", row, openArea(slots, Length::metres(1)).squareMetres());
        else if (row.item == "Perforated pipe example, greatest flow")
            check("PERFORATED.INFLOW", row,
                  perforatedInflow(slots, Length::metres(row.input("L_m")), Length::metres(row.input("h_m")),
                                   1 - row.input("B"), row.input("Cd"))
                      .cubicMetresPerSecond(),
                  std::sqrt(row.input("g") / gravity), gravityReason);
        else
            --checked;
    }
    EXPECT_EQ(checked, 3);
    // Round holes: three of half an inch every 4 in are 9 to the foot, 9 x pi / 16 sq in.
    const Perforations holes{.opening = Length::inches(0.5), .around = 3, .spacing = Length::inches(4)};
    EXPECT_NEAR(openArea(holes, Length::feet(1)).squareInches(), 9 * std::numbers::pi / 16, 1e-12);
}

TEST(Perforated, UnderdrainBore) {
    int checked = 0;
    // The source's 16 is 12 (1/0.4632)^(3/8) = 16.01 rounded.
    const double exact = 12 * std::pow(std::pow(4, 5.0 / 3) / std::numbers::pi / exactManning, 3.0 / 8);
    EXPECT_NEAR(exact, 16.01, 0.01);
    for (const Row& row : rows(drainRows)) {
        if (row.item != "Underdrain bore, NCSU form") continue;
        check("UNDERDRAIN.BORE", row,
              underdrainBore(Flow::cfs(row.input("Q_cfs")), Slope::fraction(row.input("s")), row.input("n"))
                  .inches(),
              16 / exact, "the source rounds 16.01 to 16");
        ++checked;
    }
    EXPECT_EQ(checked, 4);
    const Slope slope = Slope::percent(0.7);
    EXPECT_NEAR(capacity(underdrainBore(Flow::gpm(80), slope, 0.012), slope, 0.012).gpm(), 80, 1e-9);
}

TEST(Perforated, GravelByDarcy) {
    int checked = 0;
    for (const Row& row : rows(drainRows)) {
        ++checked;
        if (row.item == "Gravel trench flowing by Darcy")
            check("GRAVEL.FLOW", row,
                  gravelFlow(Length::feet(row.input("W_ft")), Length::feet(row.input("H_ft")),
                             Slope::fraction(row.input("S")), Velocity::feetPerDay(row.input("K_ft_day")))
                      .cfs());
        else if (row.item == "Darcy flow in a gravel trench")
            check("GRAVEL.FLOW", row,
                  gravelFlow(Length::metres(row.input("A_m2")), Length::metres(1),
                             Slope::fraction(row.input("S")), Velocity::metresPerDay(row.input("K_m_day")))
                          .cubicMetresPerSecond() *
                      86400);
        else
            --checked;
    }
    EXPECT_EQ(checked, 5);
}

TEST(Perforated, WhatIsRefused) {
    const Length one = Length::feet(1);
    const Perforations holes{.opening = one, .spacing = one};
    EXPECT_THROW(holeFlow(Length(), one), Error);
    EXPECT_THROW(holeFlow(one, -one), Error);
    EXPECT_THROW(holeFlow(one, one, 0), Error);
    EXPECT_THROW(holeFlow(one, one, 1.2), Error);
    EXPECT_THROW(openArea({.spacing = one}, one), Error);
    EXPECT_THROW(openArea({.opening = one}, one), Error);
    EXPECT_THROW(openArea({.opening = one, .around = 0, .spacing = one}, one), Error);
    EXPECT_THROW(openArea({.opening = one, .slotWidth = -one, .spacing = one}, one), Error);
    EXPECT_THROW(openArea(holes, -one), Error);
    EXPECT_THROW(perforatedInflow(holes, one, one, 1.5), Error);
    EXPECT_EQ(perforatedInflow(holes, one, one, 1).si(), 0);
    EXPECT_THROW(underdrainBore(Flow(), Slope::percent(1), 0.011), Error);
    EXPECT_THROW(underdrainBore(Flow::gpm(1), Slope(), 0.011), Error);
    EXPECT_THROW(gravelFlow(Length(), one, Slope::percent(1), Velocity::feetPerDay(1)), Error);
    EXPECT_THROW(gravelFlow(one, Length(), Slope::percent(1), Velocity::feetPerDay(1)), Error);
    EXPECT_THROW(gravelFlow(one, one, Slope::percent(1), Velocity()), Error);
}
