#include "catalog_harness.h"
#include "reference.h"

namespace trenchbook::addin {
namespace {

using namespace harness;

TEST(Tape, Feet) {
    EXPECT_DOUBLE_EQ(number("TAPE.FEET", {"5' 6-1/2\""}), 66.5 / 12);
    EXPECT_DOUBLE_EQ(number("TAPE.FEET", {12.4}), 12.4);
    EXPECT_DOUBLE_EQ(number("TAPE.FEET", {"5' 6-1/2\"", "metric"}), 66.5 * 0.0254);
    EXPECT_DOUBLE_EQ(number("TAPE.FEET", {"3.5", "metric"}), 3.5);
    EXPECT_DOUBLE_EQ(number("TAPE.FEET", {-1.5}), -1.5);  // a level may be below the datum
}

TEST(Tape, Text) {
    EXPECT_EQ(words("TAPE.TEXT", {5.55}), "5' 6-5/8\"");
    EXPECT_EQ(words("TAPE.TEXT", {5.55, 2.0}), "5' 6-1/2\"");
    EXPECT_EQ(words("TAPE.TEXT", {5.55 * 0.3048, 8.0, "metric"}), "5' 6-5/8\"");
    EXPECT_EQ(words("TAPE.TEXT", {"66 1/2 in"}), "5' 6-1/2\"");
}

TEST(Tape, SlopeRead) {
    EXPECT_DOUBLE_EQ(number("SLOPE.READ", {"1/8 in/ft"}), 1.0 / 96);
    EXPECT_DOUBLE_EQ(number("SLOPE.READ", {"1:96"}), 1.0 / 96);
    EXPECT_DOUBLE_EQ(number("SLOPE.READ", {0.02}), 0.02);
}

TEST(Tape, SlopeText) {
    EXPECT_EQ(words("SLOPE.TEXT", {1.0 / 96}), "1/8 in/ft");
    EXPECT_EQ(words("SLOPE.TEXT", {"1%"}), "~1/8 in/ft");
    EXPECT_EQ(words("SLOPE.TEXT", {1.0 / 96, "%"}), "1.04%");
    EXPECT_EQ(words("SLOPE.TEXT", {1.0 / 96, "1 in"}), "1 in 96");
}

TEST(Tape, BadArguments) {
    EXPECT_EQ(whyNot("TAPE.FEET", {"5' 14\""}),
              "text is \"5' 14\"\"; allowed: a length in ft, such as 12.4, 5' 6-1/2\", 66 1/2 in.");
    EXPECT_EQ(whyNot("TAPE.FEET", {"tres"}, Language::Spanish),
              "text es \"tres\"; se admite: una longitud en ft, como 12.4, 5' 6-1/2\", 66 1/2 in.");
    EXPECT_EQ(whyNot("TAPE.FEET", {"tres", "metric"}),
              "text is \"tres\"; allowed: a length in m, such as 3.5.");
    EXPECT_EQ(whyNot("TAPE.TEXT", {5.0, 3.0}), "fraction is 3; allowed: 1, 2, 4, 8, 16, 32, 64.");
    EXPECT_EQ(whyNot("TAPE.TEXT", {5.0, 8.5}), "fraction is 8.5; allowed: 1, 2, 4, 8, 16, 32, 64.");
    EXPECT_EQ(whyNot("SLOPE.READ", {"1/8"}),
              "slope is \"1/8\"; allowed: a fraction such as 0.01, or 1/8 in/ft, 1%, 1:96.");
    EXPECT_EQ(whyNot("SLOPE.TEXT", {0.01, "grades"}),
              "style is \"grades\"; allowed: \"in/ft\", \"%\", \"1 in\".");
    EXPECT_EQ(whyNot("TAPE.FEET", {"5' 6\"", "imperial"}),
              "units is \"imperial\"; allowed: \"US\", \"metric\".");
}

}  // namespace
}  // namespace trenchbook::addin
