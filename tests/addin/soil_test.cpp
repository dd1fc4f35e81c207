// SOIL.RATE as Calc calls it.
#include "catalog_harness.h"

namespace trenchbook::addin {
namespace {

using namespace harness;

TEST(SoilFunctions, RateTakesTheWallsOutAndDivides) {
    // 1.5 in in 10 min in an 8 in hole that starts with 47.75 in: 0.3673 in/hr as tested.
    EXPECT_NEAR(number("SOIL.RATE", {1.5, 10.0, 8.0, 47.75, 1.0}), 9.0 * 4 / (4 + 94), 1e-12);
    EXPECT_NEAR(number("SOIL.RATE", {1.5, 10.0, 8.0, 47.75}), 4.5 * 4 / (4 + 94), 1e-12);
    EXPECT_NEAR(number("SOIL.RATE", {1.5, 10.0, 8.0, 45.75, 2.0, 2.0}), 4.5 * 4 / (4 + 94), 1e-12);
}

TEST(SoilFunctions, UsAndMetricAgree) {
    expectUnitsAgree("SOIL.RATE", {1.5, 30.0, 8.0, 12.0});
    expectUnitsAgree("SOIL.RATE", {1.5, 30.0, 8.0, 12.0, 3.0, 2.0});
}

TEST(SoilFunctions, BadReadingsAreSaidInWords) {
    EXPECT_EQ(whyNot("SOIL.RATE", {1.5, 30.0, 8.0, 12.0}), "OK");
    EXPECT_EQ(whyNot("SOIL.RATE", {0.0, 30.0, 8.0, 12.0}),
              "drop is 0: the hole took no water in this reading; wait longer, or take the soil as tight.");
    EXPECT_EQ(whyNot("SOIL.RATE", {-0.5, 30.0, 8.0, 12.0}, Language::Spanish),
              "el agua subió 0.5 in (13 mm) en esta lectura; un descenso "
              "es positivo. Está entrando agua: lea de nuevo.");
    EXPECT_EQ(whyNot("SOIL.RATE", {13.0, 30.0, 8.0, 12.0}),
              "drop is 13 in (330 mm), more than the 12 in (305 mm) of water that stood over the mark.");
    EXPECT_EQ(whyNot("SOIL.RATE", {1.5, 0.0, 8.0, 12.0}), "minutes is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("SOIL.RATE", {1.5, 30.0, -8.0, 12.0}), "hole diameter is -8; allowed: above 0.");
    EXPECT_EQ(whyNot("SOIL.RATE", {1.5, 30.0, 8.0, 0.0}), "start depth is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("SOIL.RATE", {1.5, 30.0, 8.0, 12.0, 0.5}), "safety is 0.5; allowed: from 1 to 20.");
    EXPECT_EQ(whyNot("SOIL.RATE", {1.5, 30.0, 8.0, 12.0, 2.0, -1.0}), "gravel is -1; allowed: 0 or more.");
    EXPECT_EQ(whyNot("SOIL.RATE", {"fast", 30.0, 8.0, 12.0}), "drop is \"fast\"; allowed: a number in in.");
    EXPECT_EQ(whyNot("SOIL.RATE", {1.5, 30.0, 8.0, 12.0, 2.0, 0.0, "imperial"}),
              "units is \"imperial\"; allowed: \"US\", \"metric\".");
}

}  // namespace
}  // namespace trenchbook::addin
