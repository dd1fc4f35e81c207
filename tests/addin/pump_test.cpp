#include "catalog_harness.h"

namespace trenchbook::addin {
namespace {

using namespace harness;

const Range curveFlow = column({0.0, 20.0, "", 40.0, 60.0});
const Range curveHead = column({24.0, 21.0, "", 16.0, 8.0});

TEST(PumpFunctions, WorkTogether) {
    EXPECT_NEAR(number("PUMP.BASIN", {30.0, 6.0}), 45, 1e-12);
    EXPECT_NEAR(number("PUMP.CYCLES", {30.0, 45.0}), 10, 1e-12);
    EXPECT_NEAR(number("PUMP.CYCLES", {20.0, 30.0, 5.0}), 7.5, 1e-12);
    EXPECT_EQ(number("PUMP.CYCLES", {20.0, 30.0, 0.0}), 0);
    const Numbers duty = numbers("PUMP.DUTY", {10.0, "2 SCH40", 100.0, curveFlow, curveHead, 44.0});
    ASSERT_EQ(duty.items.size(), 3u);
    EXPECT_NEAR(number("PUMP.HEAD", {duty.items[0], 10.0, "2 SCH40", 100.0, 44.0}), duty.items[1], 1e-9);
    EXPECT_NEAR(number("PUMP.SPEED", {"2 SCH40", duty.items[0]}), duty.items[2], 1e-12);
    // Lift, friction and one velocity head at the exit.
    const double speed = number("PUMP.SPEED", {2.067, 30.0});
    EXPECT_NEAR(number("PUMP.HEAD", {30.0, 10.0, 2.067, 100.0, 44.0, Nothing{}, 150.0}),
                10 + number("PUMP.FRICTION", {2.067, 30.0, 144.0, 150.0}) + speed * speed / 2 / 32.17405,
                1e-6);
}

TEST(PumpFunctions, MetricAgrees) {
    expectUnitsAgree("PUMP.BASIN", {30.0, 6.0});
    expectUnitsAgree("PUMP.FLOATS", {45.0, 24.0});
    expectUnitsAgree("PUMP.CYCLES", {30.0, 45.0, 10.0});
    expectUnitsAgree("PUMP.FRICTION", {2.067, 30.0, 144.0, 150.0});
    expectUnitsAgree("PUMP.FITTING", {"tee", 2.0});
    expectUnitsAgree("PUMP.HEAD", {30.0, 10.0, 2.067, 100.0, 44.0, 1.0, 150.0});
    expectUnitsAgree("PUMP.SPEED", {2.067, 30.0});
    const std::vector<Value> us = {10.0, 2.067, 100.0, curveFlow, curveHead, 44.0, 1.0, 150.0};
    const Numbers feet = numbers("PUMP.DUTY", us), metres = numbers("PUMP.DUTY", inMetric("PUMP.DUTY", us));
    EXPECT_NEAR(metres.items[0] / 0.0630901964, feet.items[0], 1e-7);
    EXPECT_NEAR(metres.items[1] / 0.3048, feet.items[1], 1e-9);
    EXPECT_NEAR(metres.items[2] / 0.3048, feet.items[2], 1e-9);
}

TEST(PumpFunctions, BadArguments) {
    EXPECT_EQ(whyNot("PUMP.BASIN", {0.0, 6.0}), "pump flow is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("PUMP.BASIN", {30.0, -6.0}, Language::Spanish), "cycle es -6; se admite: mayor que 0.");
    EXPECT_EQ(whyNot("PUMP.FLOATS", {0.0, 24.0}), "volume is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("PUMP.FLOATS", {45.0, 0.0}), "diameter is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("PUMP.CYCLES", {20.0, 30.0, 20.0}),
              "inflow is 20; allowed: less than the pump's 20 gpm (1.26 L/s), or it never stops.");
    EXPECT_EQ(whyNot("PUMP.CYCLES", {20.0, 30.0, -1.0}), "inflow is -1; allowed: 0 or more.");
    EXPECT_EQ(whyNot("PUMP.FRICTION", {2.067, 30.0, 144.0, 0.011}), "C is 0.011; allowed: from 60 to 160.");
    EXPECT_EQ(whyNot("PUMP.FITTING", {"elbow of sorts", 2.0}),
              "fitting is \"elbow of sorts\"; allowed: 90 elbow, 45 elbow, tee, check valve, union, gate "
              "valve.");
    EXPECT_EQ(whyNot("PUMP.FITTING", {"gate valve", 4.0}),
              "size is 4; allowed: a nominal size in inches: 1.25, 1.5, 2, 3.");
    EXPECT_EQ(whyNot("PUMP.HEAD", {30.0, 10.0, 2.067, -100.0}), "length is -100; allowed: 0 or more.");
    EXPECT_EQ(whyNot("PUMP.HEAD", {30.0, 10.0, 2.067, 100.0, -44.0}),
              "fittings length is -44; allowed: 0 or more.");
    EXPECT_EQ(whyNot("PUMP.HEAD", {30.0, 10.0, 2.067, 100.0, 44.0, -1.0}), "K is -1; allowed: 0 or more.");
    EXPECT_EQ(whyNot("PUMP.HEAD", {30.0, "high", 2.067, 100.0}),
              "static lift is \"high\"; allowed: a length in ft, such as 12.4, 5' 6-1/2\", 66 1/2 in.");
    const auto duty = [](double lift, const Range& flow, const Range& head) {
        return whyNot("PUMP.DUTY", {lift, "2 SCH40", 100.0, flow, head, 44.0});
    };
    EXPECT_EQ(duty(10, curveFlow, curveHead), "OK");
    EXPECT_EQ(duty(24, curveFlow, curveHead),
              "static lift is 24; allowed: less than the pump's most, 24 ft (7.32 m).");
    EXPECT_EQ(duty(-9, curveFlow, curveHead),
              "curve flow: the pump works beyond the last point, above 60 gpm (3.79 L/s); type more of the "
              "curve, or a smaller pump will do.");
    EXPECT_EQ(duty(10, column({50.0, 60.0}), column({12.0, 8.0})),
              "curve flow: the pump works before the first point, below 50 gpm (3.15 L/s); type the curve "
              "from 0 on.");
    EXPECT_EQ(duty(10, column({0.0}), column({12.0})),
              "curve flow is a single point; allowed: two points of the pump curve or more.");
    EXPECT_EQ(duty(10, column({0.0, 20.0, 20.0}), column({24.0, 21.0, 16.0})),
              "curve flow: point 3 is not more than the point before it; flows must rise down the list.");
    EXPECT_EQ(duty(10, column({0.0, 20.0}), column({20.0, 21.0})),
              "curve head: point 2 is higher than the point before it; the head falls as the flow grows.");
    EXPECT_EQ(duty(10, column({0.0, 20.0}), column({24.0})),
              "curve head is 1 row; allowed: 2 rows, as many as curve flow.");
    EXPECT_EQ(duty(10, column({0.0, "some"}), column({24.0, 21.0})),
              "curve flow: \"some\" in row 2; allowed: a number in gpm.");
}

}  // namespace
}  // namespace trenchbook::addin
