#include "trenchbook/pipe/friction.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>

#include "books.h"
#include "trenchbook/core/error.h"
#include "trenchbook/pipe/circular.h"
#include "trenchbook/pipe/manning.h"

using namespace trenchbook;
using namespace trenchbook::reference;

TEST(Friction, Computed) {
    int checked = 0;
    for (const Row& row : rows("06c_friction_computed.csv")) {
        if (row.item == "Colebrook friction factor") {
            check("PIPE.FRICTION.WALL", row, frictionFactor(row.input("Re"), row.input("eps_D")));
            ++checked;
        } else if (row.item == "Darcy-Weisbach head loss") {
            const Length loss = wallLoss(Length::inches(row.input("D_in")), Flow::cfs(row.input("Q_cfs")),
                                         Length::feet(row.input("L_ft")), Length::feet(row.input("eps_ft")),
                                         KinematicViscosity::squareFeetPerSecond(row.input("nu_ft2s")));
            check("PIPE.FRICTION.WALL", row, loss.feet(), gravityFeet / row.input("g"), gravityReason);
            ++checked;
        }
    }
    EXPECT_EQ(checked, 47);
}

TEST(Friction, WorkedExamples) {
    for (const Row& row : rows("06a_efm_mays_headloss_examples.csv"))
        if (row.item == "Example 7.6 Darcy-type head loss") {
            const Length bore = Length::feet(row.input("D_ft"));
            const Flow flow = Flow::cfs(row.input("Q_cfs"));
            const Length loss = darcyLoss(bore, flow, Length::feet(row.input("L_ft")), 0.01);
            const double factor = gravityFeet / row.input("g");
            if (row.output == "V") check("PIPE.VELOCITY", row, (flow / fullArea(bore)).feetPerSecond());
            if (row.output == "head loss")
                check("PIPE.FRICTION.WALL", row, loss.feet(), factor, gravityReason);
            if (row.output == "pump head")
                check("PIPE.FRICTION.WALL", row,
                      loss.feet() * factor + row.input("z2_ft") - row.input("z1_ft"), 1, gravityReason);
        }
    for (const Row& row : rows("01e_efm_pipe_examples.csv"))
        if (row.item == "Example 15.8 pipe flowing full" && row.output == "pipe friction loss")
            check("PIPE.FRICTION", row,
                  manningLoss(Length::inches(row.input("D_in")), Flow::cfs(row.input("Q_cfs")),
                              Length::feet(row.input("L_ft")), bookRoughness(row))
                      .feet(),
                  1, manningReason);
    for (const Row& row : rows("12d_normal_critical_depth_examples.csv"))
        if (row.output == "head loss" && row.has("D_m")) {
            const Length bore = Length::metres(row.input("D_m"));
            const Slope slope = Slope::fraction(row.input("S0"));
            const Length loss = manningLoss(bore, capacity(bore, slope, row.input("n")),
                                            Length::metres(row.input("L_m")), row.input("n"));
            checkMisprint("PIPE.FRICTION", row, loss.metres(), 0.00405 * 304.8,
                          "the source rounds its own slope 0.00405 to 0.004");
        }
}

TEST(Friction, WaterViscosity) {
    // Printed to four figures in textbook appendices, m2/s x 1e6: White, Fluid Mechanics, table A.1 (from
    // memory), and Streeter and Wylie, appendix C, in ft2/s x 1e5 (from memory).
    constexpr const char* white = "White, Fluid Mechanics, properties of water (from memory)";
    const auto metric = [](double celsius) {
        return waterViscosity(Temperature::celsius(celsius)).squareMetresPerSecond() * 1e6;
    };
    check("PIPE.FRICTION.WALL", "viscosity of water at 0 C, 1e-6 m2/s", metric(0), 1.788, 0.010, white,
          "memory");
    check("PIPE.FRICTION.WALL", "viscosity of water at 10 C, 1e-6 m2/s", metric(10), 1.307, 0.005, white,
          "memory");
    check("PIPE.FRICTION.WALL", "viscosity of water at 20 C, 1e-6 m2/s", metric(20), 1.004, 0.005, white,
          "memory");
    check("PIPE.FRICTION.WALL", "viscosity of water at 40 C, 1e-6 m2/s", metric(40), 0.658, 0.003, white,
          "memory");
    check("PIPE.FRICTION.WALL", "viscosity of water at 60 C, 1e-6 m2/s", metric(60), 0.475, 0.003, white,
          "memory");
    EXPECT_THROW(waterViscosity(Temperature::fahrenheit(20)), Error);
    EXPECT_THROW(waterViscosity(Temperature::celsius(101)), Error);
    EXPECT_THROW(waterViscosity(Temperature::celsius(std::nan(""))), Error);
    for (double t = 0; t < 100; ++t) EXPECT_GT(metric(t), metric(t + 1)) << t;
}

TEST(Friction, Laws) {
    // Laminar: 64/Re; the two meet at the ends of the range between.
    EXPECT_DOUBLE_EQ(frictionFactor(1000, 0), 0.064);
    EXPECT_NEAR(frictionFactor(2000.0001, 0.001), 0.032, 1e-6);
    EXPECT_NEAR(frictionFactor(3999.999, 0.001), frictionFactor(4000, 0.001), 1e-7);
    const bool held = rc::check("Colebrook's equation holds; rougher walls lose more", [] {
        const double reynolds = std::pow(10.0, *rc::gen::inRange(3603, 8000) / 1000.0);
        const double rough = *rc::gen::inRange(0, 50001) / 1e6;
        const double f = frictionFactor(reynolds, rough);
        RC_LOG() << "Re " << reynolds << ", e/D " << rough << ", f " << f;
        const double x = 1 / std::sqrt(f);
        RC_ASSERT(std::fabs(x + 2 * std::log10(rough / 3.7 + 2.51 * x / reynolds)) < 1e-12);
        if (rough < 0.049) RC_ASSERT(frictionFactor(reynolds, rough + 0.001) > f);
    });
    EXPECT_TRUE(held);
}

TEST(Friction, ManningLossIsTheSlopeTimesTheLength) {
    const Length bore = Length::inches(3.975);
    const Flow flow = capacity(bore, Slope::percent(1), 0.011);
    EXPECT_NEAR(manningLoss(bore, flow, Length::feet(250), 0.011).feet(), 2.5, 1e-12);
    EXPECT_NEAR(manningLoss(bore, flow * 2, Length::feet(250), 0.011).feet(), 10, 1e-11);
    EXPECT_EQ(manningLoss(bore, Flow(), Length::feet(250), 0.011).si(), 0);
}

TEST(Friction, BadInput) {
    const KinematicViscosity water = waterViscosity(Temperature::fahrenheit(60));
    const Length bore = Length::inches(4), length = Length::feet(100);
    EXPECT_THROW(wallLoss(Length(), Flow::gpm(10), length, Length(), water), Error);
    EXPECT_THROW(wallLoss(bore, Flow::gpm(-10), length, Length(), water), Error);
    EXPECT_THROW(wallLoss(bore, Flow::gpm(10), Length::feet(-1), Length(), water), Error);
    EXPECT_THROW(wallLoss(bore, Flow::gpm(10), length, Length::inches(0.3), water), Error);
    EXPECT_THROW(wallLoss(bore, Flow::gpm(10), length, Length::inches(-0.1), water), Error);
    EXPECT_EQ(wallLoss(bore, Flow(), length, Length(), water).si(), 0);
    EXPECT_THROW(manningLoss(bore, Flow::gpm(10), length, 0), Error);
}
