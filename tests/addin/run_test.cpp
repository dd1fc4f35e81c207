// RUN.* as Calc calls them: units, the trade's spellings, text in a number's place, the rules as a range.
#include "catalog_harness.h"
#include "trenchbook/core/units.h"

namespace trenchbook::addin {
namespace {

using namespace harness;

Range ruleRange(std::vector<std::pair<Cell, Cell>> rows) {
    Range range;
    range.rows = rows.size();
    range.columns = 2;
    for (const auto& [key, value] : rows) {
        range.cells.push_back(key);
        range.cells.push_back(value);
    }
    return range;
}
const Range noRules = ruleRange({{Nothing{}, Nothing{}}});

std::vector<Value> run(Value slope, Value coverUp, Value coverDown, Range rules = noRules) {
    return {42.0,   std::move(slope), "4 SDR35",       60.0, std::move(coverUp), std::move(coverDown),
            "lawn", "lawn",           std::move(rules)};
}

TEST(RunFunctions, ReadTheTradesSpelling) {
    EXPECT_NEAR(number("RUN.DROP", {42.0, "1/8 in/ft"}), 0.4375, 1e-12);
    EXPECT_NEAR(number("RUN.DROP", {"42'", 0.01, "1/2 in"}), 0.42 + 0.5 / 12, 1e-12);
    EXPECT_NEAR(number("RUN.SLOPE", {42.0, 98.60, 98.18}), 0.01, 1e-12);
    EXPECT_NEAR(number("RUN.SLOPE", {40.0, 98.0, 98.4}), -0.01, 1e-12);
    EXPECT_NEAR(number("RUN.COVER", {100.0, 98.5, "4 SDR35"}), 18 - (4.215 - 0.120), 1e-9);
    EXPECT_NEAR(number("RUN.CUT", {100.0, 98.5, "4 SDR35", 3.0}), 1.5 + (0.120 + 3) / 12, 1e-12);
}

TEST(RunFunctions, UsAndMetricAgree) {
    const double m = metresPerFoot;
    EXPECT_NEAR(number("RUN.DROP", {42 * m, 0.01, 0.05 * m, "metric"}),
                number("RUN.DROP", {42.0, 0.01, 0.05}) * m, 1e-9);
    EXPECT_NEAR(number("RUN.SLOPE", {42 * m, 99 * m, 98 * m, "metric"}),
                number("RUN.SLOPE", {42.0, 99.0, 98.0}), 1e-9);
    EXPECT_NEAR(number("RUN.COVER", {100 * m, 98 * m, "6 SCH40", "metric"}),
                number("RUN.COVER", {100.0, 98.0, "6 SCH40"}) * 25.4, 1e-9);
    EXPECT_NEAR(number("RUN.CUT", {100 * m, 98 * m, "6 SCH40", 76.2, "metric"}),
                number("RUN.CUT", {100.0, 98.0, "6 SCH40", 3.0}) * m, 1e-9);
    EXPECT_EQ(words("RUN.CHECK", run("2%", 12.0, 12.0)), "OK");
    EXPECT_EQ(words("RUN.CHECK", {42 * m, "2%", "4 SDR35", 60 * 0.0630901964, 304.8, 304.8, "lawn", "lawn",
                                  ruleRange({{"cover.lawn", 304.8}}), Nothing{}, "metric"}),
              "OK");
}

TEST(RunFunctions, BadArgumentsAreNamed) {
    EXPECT_EQ(whyNot("RUN.DROP", {"abc", 0.01}),
              "length is \"abc\"; allowed: a length in ft, such as 12.4, 5' 6-1/2\", 66 1/2 in.");
    EXPECT_EQ(number("RUN.DROP", {0.0, 0.01, 0.05}), 0.05);
    EXPECT_EQ(whyNot("RUN.DROP", {-1.0, 0.01}), "length is -1; allowed: 0 or more.");
    EXPECT_EQ(whyNot("RUN.DROP", {42.0, 0.0}), "slope is 0; allowed: above 0 and below 1 (a fraction).");
    EXPECT_EQ(whyNot("RUN.DROP", {42.0, 0.01, -1.0}), "fittings drop is -1; allowed: 0 or more.");
    EXPECT_EQ(whyNot("RUN.SLOPE", {-3.0, 1.0, 0.0}), "length is -3; allowed: above 0.");
    EXPECT_EQ(whyNot("RUN.COVER", {100.0, 98.0, 3.975}).substr(0, 8), "pipe is ");
    EXPECT_EQ(whyNot("RUN.CUT", {100.0, 98.0, "4 SDR35", -1.0}), "bedding is -1; allowed: 0 or more.");
    EXPECT_EQ(whyNot("RUN.CUT", {100.0, 98.0, "4 SDR35", -1.0}, Language::Spanish),
              "bedding es -1; se admite: 0 o más.");
}

TEST(RunCheckFunction, SaysEveryReason) {
    EXPECT_EQ(words("RUN.CHECK", run("1%", 9.0, 12.0)),
              "too flat: 1%, at least 1.04% (1/8 in/ft) for 4 in pipe; "
              "shallow at the upper end: 9 in under lawn, at least 12 in");
    EXPECT_EQ(words("RUN.CHECK", {42.0, -0.01, "4 SDR35", 60.0, 12.0, 12.0, "lawn", "lawn", noRules,
                                  Nothing{}, "US", "es"}),
              "sube 1%");
    // Empty text exempts an end; a blank cell given alone arrives as 0 and is no cover.
    EXPECT_EQ(words("RUN.CHECK", run("2%", "", "")), "OK");
    EXPECT_EQ(words("RUN.CHECK", run("2%", 0.0, 12.0)),
              "shallow at the upper end: 0 in under lawn, at least 12 in");
}

TEST(RunCheckFunction, RulesStandOverTheDefaults) {
    EXPECT_EQ(words("RUN.CHECK",
                    run("1%", 9.0, 12.0,
                        ruleRange({{"cover.lawn", 9.0}, {Nothing{}, "a note"}, {"slope.min.4in", "1%"}}))),
              "OK");
    EXPECT_EQ(whyNot("RUN.CHECK", run("1%", 9.0, 12.0, ruleRange({{"cover.lawn", "nine"}}))),
              "rules: cover.lawn is \"nine\"; allowed: a number from 0 to 120 in.");
    EXPECT_EQ(whyNot("RUN.CHECK", run("1%", 9.0, 12.0, ruleRange({{"cover.lwan", 9.0}}))),
              "rules: \"cover.lwan\" is not the key of a rule.");
    EXPECT_EQ(whyNot("RUN.CHECK", run("1%", 9.0, 12.0, column({"cover.lawn"}))),
              "rules is a range of 1 x 1; allowed: two columns, key and value.");
    EXPECT_EQ(whyNot("RUN.CHECK", {42.0, 0.02, "4 SDR35", 60.0, 12.0, 12.0, "moon", "lawn", noRules}),
              "surface up is \"moon\"; allowed: lawn, end of lawn, bed, walk, drive, street, daylight.");
    EXPECT_EQ(
        whyNot("RUN.CHECK", {42.0, 0.02, "4 SRD35", 60.0, 12.0, 12.0, "lawn", "lawn", noRules}).substr(0, 17),
        "pipe is \"4 SRD35\"");
    EXPECT_EQ(whyNot("RUN.CHECK", {42.0, 0.02, "4 SDR35", -60.0, 12.0, 12.0, "lawn", "lawn", noRules}),
              "flow is -60; allowed: 0 or more.");
}

}  // namespace
}  // namespace trenchbook::addin
