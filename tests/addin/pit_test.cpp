// PIT.* as Calc calls them: units, storms as ranges, blocks, rules and facts.
#include <numbers>

#include "catalog_harness.h"

namespace trenchbook::addin {
namespace {

using namespace harness;

Range twoColumns(std::vector<std::pair<Cell, Cell>> rows) {
    Range range{.rows = rows.size(), .columns = 2, .cells = {}};
    for (auto& [first, second] : rows) {
        range.cells.push_back(first);
        range.cells.push_back(second);
    }
    return range;
}

// Rain in inches; the metric storm is the same in millimetres.
Range storm(double unit = 1) {
    return twoColumns({{30.0, 0.3 * unit}, {60.0, 0.9 * unit}, {90.0, 0.2 * unit}});
}

std::vector<Value> stormCall(const std::string& name, std::vector<Value> rest, bool metric) {
    std::vector<Value> values = {storm()};
    values.insert(values.end(), rest.begin(), rest.end());
    if (!metric) return values;
    values = inMetric(name, values);
    values[0] = storm(25.4);
    return values;
}

TEST(PitFunctions, WorkAnOrdinancesExample) {
    EXPECT_NEAR(number("PIT.ROCK", {140.0, 0.4}) * 27, 350, 1e-9);
    EXPECT_NEAR(number("PIT.ROCK", {140.0}) * 27, 350, 1e-9);
    EXPECT_NEAR(number("PIT.ROCK", {140.0, 0.4, 20.0}) * 27, 300, 1e-9);
    EXPECT_NEAR(number("PIT.STORAGE", {20.0, 6.0, 3.0}), 144, 1e-9);
    EXPECT_NEAR(number("PIT.STORAGE", {"20'", "6 ft", "36 in", 0.35}), 126, 1e-9);
    EXPECT_NEAR(number("PIT.DRAINTIME", {20.0, 6.0, 3.0, 0.5}), 28.8, 1e-9);
    EXPECT_NEAR(number("PIT.RAINHELD", {140.0, 824.0}), 140.0 / 824 * 12, 1e-12);
    EXPECT_LT(number("PIT.DRAINTIME", {20.0, 6.0, 3.0, 0.5, 0.4, 0.5}), 28.8);
}

TEST(PitFunctions, UsAndMetricAgree) {
    expectUnitsAgree("PIT.ROCK", {140.0, 0.4, 12.0});
    expectUnitsAgree("PIT.STORAGE", {20.0, 6.0, 3.0, 0.35});
    expectUnitsAgree("PIT.DRAINTIME", {20.0, 6.0, 3.0, 0.5, 0.4, 0.5});
    expectUnitsAgree("PIT.RAINHELD", {144.0, 1300.0});
    expectUnitsAgree("PIT.MOUND", {20.0, 6.0, 0.5, 48.0, 10.0, 0.2, 10.0});
    const std::vector<Value> size = {1000.0, 4.0, 3.0, 2.0};
    EXPECT_NEAR(number("PIT.SIZE", stormCall("PIT.SIZE", size, true)),
                number("PIT.SIZE", stormCall("PIT.SIZE", size, false)) * 0.3048, 1e-9);
}

TEST(PitFunctions, StormIsTheSameInBothUnits) {
    // A pit too small for its storm, one row: highest, its minute, first overflow, overflow, soaked, empty,
    // balance.
    const std::vector<Value> pit = {1000.0, 6.0, 4.0, 3.0, 2.0, 0.4, 0.5, 0.5};
    const Numbers us = numbers("PIT.STORM", stormCall("PIT.STORM", pit, false));
    const Numbers metric = numbers("PIT.STORM", stormCall("PIT.STORM", pit, true));
    ASSERT_EQ(us.columns, 7u);
    ASSERT_EQ(us.rows(), 1u);
    ASSERT_EQ(metric.rows(), 1u);
    const double cubicFoot = 0.3048 * 0.3048 * 0.3048;
    const double factors[] = {0.3048, 1, 1, cubicFoot, cubicFoot, 1};
    for (std::size_t i = 0; i < 6; ++i) EXPECT_NEAR(metric.items[i], us.items[i] * factors[i], 1e-9) << i;
    EXPECT_NEAR(us.items[0], 3, 1e-12);  // full
    EXPECT_GT(us.items[2], 30);          // in the second step
    EXPECT_LT(us.items[2], 60);
    EXPECT_NEAR(us.items[3] + us.items[4], 1000 * 1.4 / 12 + 6 * 4 * 0.5 * 0.4, 1e-9);
    EXPECT_LT(us.items[6], 1e-12);

    // The course ends where the summary does; a large pit has no first overflow.
    const Numbers course = numbers("PIT.COURSE", stormCall("PIT.COURSE", pit, false));
    ASSERT_EQ(course.columns, 4u);
    ASSERT_EQ(course.rows(), 3u);
    EXPECT_EQ(course.items[4], 60);
    EXPECT_NEAR(course.items[11], us.items[3], 1e-12);
    const Numbers large = numbers("PIT.STORM", {storm(), 1000.0, 100.0, 4.0, 3.0, 2.0});
    EXPECT_TRUE(isBlankCell(large.items[2]));
    EXPECT_EQ(large.items[3], 0);

    // At the length PIT.SIZE gives, nothing overflows; a foot less, something does.
    const double length = number("PIT.SIZE", {storm(), 1000.0, 4.0, 3.0, 2.0});
    EXPECT_LT(numbers("PIT.STORM", {storm(), 1000.0, length, 4.0, 3.0, 2.0}).items[3], 1e-9);
    EXPECT_GT(numbers("PIT.STORM", {storm(), 1000.0, length - 1, 4.0, 3.0, 2.0}).items[3], 0);
}

TEST(PitFunctions, StormsAreReadForgivinglyButStrictly) {
    // Blank rows, and a first row of nothing at minute 0, do not matter; a nested RAIN.STORM is such a range.
    const Range gaps = twoColumns({{0.0, 0.0},
                                   {Nothing{}, Nothing{}},
                                   {30.0, 0.3},
                                   {60.0, 0.9},
                                   {"", " "},
                                   {90.0, 0.2},
                                   {Nothing{}, Nothing{}}});
    EXPECT_EQ(numbers("PIT.STORM", {gaps, 1000.0, 6.0, 4.0, 3.0, 2.0}).items,
              numbers("PIT.STORM", {storm(), 1000.0, 6.0, 4.0, 3.0, 2.0}).items);
    const auto why = [](Value rain) {
        return whyNot("PIT.STORM", {std::move(rain), 1000.0, 6.0, 4.0, 3.0, 2.0});
    };
    EXPECT_EQ(why(3.0), "storm is 3; allowed: two columns, minute and rain in the step.");
    EXPECT_EQ(why(column({1.0, 2.0})),
              "storm is a range of 2 x 1; allowed: two columns, minute and rain in the step.");
    EXPECT_EQ(why(twoColumns({{30.0, 0.3}, {"soon", 0.2}})),
              "storm: row 2 is not two numbers; allowed: minute and rain in the step.");
    EXPECT_EQ(why(twoColumns({{30.0, Nothing{}}})),
              "storm: row 1 is not two numbers; allowed: minute and rain in the step.");
    EXPECT_EQ(why(twoColumns({{30.0, errorCell(502)}})),
              "storm: row 1 is not two numbers; allowed: minute and rain in the step.");
    EXPECT_EQ(why(twoColumns({{30.0, 0.3}, {20.0, 0.2}})),
              "storm: minute 20 in row 2; allowed: minutes that rise from row to row.");
    EXPECT_EQ(why(twoColumns({{Nothing{}, Nothing{}}})),
              "storm is empty; allowed: rows of minute and depth.");
}

TEST(PitFunctions, BadArgumentsAreNamed) {
    EXPECT_EQ(whyNot("PIT.STORAGE", {20.0, 6.0, 3.0, 40.0}),
              "voids is 40; allowed: above 0 and at most 1. If 40 percent is meant, write 0.4.");
    EXPECT_EQ(whyNot("PIT.STORAGE", {20.0, 6.0, 3.0, 0.0}), "voids is 0; allowed: above 0 and at most 1.");
    EXPECT_EQ(whyNot("PIT.STORAGE", {0.0, 6.0, 3.0}), "length is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("PIT.ROCK", {-1.0}), "hold is -1; allowed: above 0.");
    EXPECT_EQ(whyNot("PIT.DRAINTIME", {20.0, 6.0, 3.0, 0.0}), "rate is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("PIT.DRAINTIME", {20.0, 6.0, 3.0, 0.5, 0.4, 50.0}, Language::Spanish),
              "side share es 50; se admite: de 0 a 1. Si se trata de 50 por ciento, escriba 0.5.");
    EXPECT_EQ(whyNot("PIT.RAINHELD", {144.0, 0.0}), "area x C is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("PIT.STORM", {storm(), 1000.0, 6.0, 4.0, 3.0, 2.0, 0.4, 0.0, 3.5}),
              "start water is 3.5; allowed: at most the rock depth of 3 ft (0.9144 m).");
    EXPECT_EQ(whyNot("PIT.SIZE", {twoColumns({{30.0, 0.0}}), 1000.0, 4.0, 3.0, 2.0}),
              "storm brings no rain; there is no pit to size.");
    EXPECT_EQ(whyNot("PIT.MOUND", {20.0, 6.0, 0.5, 48.0, 10.0, 20.0, 10.0}),
              "specific yield is 20; allowed: above 0 and at most 1. If 20 percent is meant, write 0.2.");
}

TEST(PitFunctions, RoutingSpoilsOnlyFromTheBadRowOn) {
    const Range depth = column({0.0, 1.0, 2.0, Nothing{}}), storage = column({0.0, 600.0, 1400.0, Nothing{}}),
                outflow = column({0.0, 10.0, 60.0, Nothing{}});
    const Range minutes = column({0.0, 10.0, 20.0, 30.0, Nothing{}, 40.0});
    const Numbers good = numbers(
        "PIT.ROUTE", {minutes, column({0.0, 50.0, 20.0, 0.0, Nothing{}, 0.0}), depth, storage, outflow});
    ASSERT_EQ(good.columns, 3u);
    ASSERT_EQ(good.rows(), 6u);
    EXPECT_EQ(good.items[0], 0);
    EXPECT_TRUE(isBlankCell(good.items[12]));
    // Minute 10: 250 gal in; the storage rises by that less what flows out in ten minutes at half the rate.
    EXPECT_NEAR(good.items[4], (250 - good.items[5] * 5) * 231 / 1728, 1e-9);

    const Numbers bad = numbers(
        "PIT.ROUTE", {minutes, column({0.0, 50.0, "much", 0.0, Nothing{}, 0.0}), depth, storage, outflow});
    for (std::size_t i = 0; i < 6; ++i) EXPECT_EQ(bad.items[i], good.items[i]) << i;
    for (std::size_t i : {6, 9, 15}) EXPECT_TRUE(std::isnan(bad.items[i]) && !isBlankCell(bad.items[i])) << i;
    EXPECT_TRUE(isBlankCell(bad.items[12]));

    const std::vector<Value> us = {column({0.0, 10.0, 20.0}), column({0.0, 50.0, 20.0}),
                                   column({0.0, 1.0, 2.0}), column({0.0, 600.0, 1400.0}),
                                   column({0.0, 10.0, 60.0})};
    const Numbers american = numbers("PIT.ROUTE", us),
                  metric = numbers("PIT.ROUTE", inMetric("PIT.ROUTE", us));
    EXPECT_NEAR(metric.items[6], american.items[6] * 0.3048, 1e-9);
    EXPECT_NEAR(metric.items[7], american.items[7] * std::pow(0.3048, 3), 1e-9);
    EXPECT_NEAR(metric.items[8], american.items[8] * 3.785411784 / 60, 1e-9);

    EXPECT_EQ(whyNot("PIT.ROUTE", {column({0.0, 10.0}), column({0.0, 5000.0}), depth, storage, outflow}),
              "at minute 10 the water rises above the table's last row: continue the table.");
    EXPECT_EQ(whyNot("PIT.ROUTE", {column({0.0, 10.0}), column({0.0}), depth, storage, outflow}),
              "inflow is 1 row; allowed: 2 rows, as many as minute.");
    EXPECT_EQ(whyNot("PIT.ROUTE", {column({0.0}), column({0.0}), column({0.0, "one"}), column({0.0, 5.0}),
                                   column({0.0, 5.0})}),
              "depth: \"one\" in row 2; allowed: a length in ft, such as 12.4, 5' 6-1/2\", 66 1/2 in.");
}

TEST(PitFunctions, CheckGivesEveryReason) {
    const Range noRules = twoColumns({{Nothing{}, Nothing{}}});
    const Range keys = column({"rate", "drain hours", "high water", "pit depth", "widest", "foundation",
                               "lot line", "well", "ground slope", "soil group"});
    const Range sand = column({2.0, 20.0, 9.0, 3.5, 10.0, 15.0, 12.0, Nothing{}, "3%", "A"});
    const Range clay = column({0.05, 190.0, 7.0, 3.5, 10.0, 15.0, 12.0, "", "3%", "D"});
    EXPECT_EQ(words("PIT.CHECK", {noRules, keys, sand}), "OK");
    EXPECT_EQ(words("PIT.CHECK", {noRules, keys, clay}),
              "soil takes too little: 0.05 in/hr, at least 0.5 in/hr (pit.rate.min)\n"
              "too long to empty: 190 h, at most 48 h (pit.drain.max)\n"
              "soil group D: too tight for a pit (pit.group.d)");
    EXPECT_EQ(words("PIT.CHECK",
                    {twoColumns({{"pit.rate.min", 0.01}, {"pit.group.d", 1.0}}), keys, clay, "US", "es"}),
              "tarda mucho en vaciarse: 190 h, como máximo 48 h (pit.drain.max)");
    // Metric: the same lot, facts and rule in metric units.
    const Range metric = column({50.8, 20.0, 2.75, 1.07, 3.05, 4.6, 3.7, Nothing{}, 0.03, "A"});
    EXPECT_EQ(words("PIT.CHECK", {noRules, keys, metric, "metric"}), "OK");
    EXPECT_EQ(words("PIT.CHECK", {twoColumns({{"pit.rate.max", 40.0}}), keys, metric, "metric"}),
              "soil takes too much to clean the water: 50.8 mm/h, at most 40 mm/h (pit.rate.max)");

    EXPECT_EQ(whyNot("PIT.CHECK", {noRules, column({"rate", "wel"}), column({1.0, 2.0})}).substr(0, 27),
              "key is \"wel\"; allowed: rate");
    EXPECT_EQ(whyNot("PIT.CHECK", {noRules, column({"rate"}), column({-1.0})}),
              "rate is -1; allowed: 0 or more.");
    EXPECT_EQ(whyNot("PIT.CHECK", {twoColumns({{"pit.rate", 1.0}}), keys, sand}),
              "rules: \"pit.rate\" is not the key of a rule.");
    EXPECT_EQ(whyNot("PIT.CHECK", {noRules, keys, column({1.0})}),
              "value is 1 row; allowed: 10 rows, as many as key.");
}

// A circle 6 ft across: pi x 9 = 28.27 sq ft of bottom, pi x 6 ft around.
TEST(PitFunctions, RoundPits) {
    const double bottom = std::numbers::pi * 9, around = std::numbers::pi * 6;
    EXPECT_NEAR(number("PIT.STORAGE", {6.0, "round", 3.0}), bottom * 3 * 0.4, 1e-9);
    // Bottom alone: n h / f = 0.4 x 36 in / 0.5 in/hr.
    EXPECT_NEAR(number("PIT.DRAINTIME", {6.0, "round", 3.0, 0.5}), 28.8, 1e-9);
    const double walls = 0.5 * around * 3 / bottom;
    EXPECT_NEAR(number("PIT.DRAINTIME", {6.0, "Redondo", 3.0, 0.5, 0.4, 0.5}),
                28.8 * std::log1p(walls) / walls, 1e-9);
    // Half an inch in an hour on 1000 sq ft is 41.67 cu ft; the bottom takes 1.18 cu ft of it, the pit holds 33.93.
    const Range hour{.rows = 1, .columns = 2, .cells = {60.0, 0.5}};
    const Numbers storm = numbers("PIT.STORM", {hour, 1000.0, 6.0, "round", 3.0, 0.5});
    EXPECT_NEAR(storm.items[3], 1000 * 0.5 / 12 - bottom * 0.5 / 12 - bottom * 3 * 0.4, 1e-9);
    // The diameter that takes it just so: the water reaches the top and nothing runs over.
    const double diameter = number("PIT.SIZE", {hour, 1000.0, "round", 3.0, 0.5});
    const Numbers fits = numbers("PIT.STORM", {hour, 1000.0, diameter, "round", 3.0, 0.5});
    EXPECT_NEAR(fits.items[0], 3, 1e-7);
    EXPECT_EQ(fits.items[3], 0);
    EXPECT_NEAR(diameter, std::sqrt(1000 * 0.5 / 12 / (1.2 + 0.5 / 12) * 4 / std::numbers::pi), 1e-8);
    EXPECT_NEAR(number("PIT.STORAGE", {6 * 0.3048, "round", 3 * 0.3048, 0.4, "metric"}),
                bottom * 1.2 * 0.028316846592, 1e-9);
    EXPECT_EQ(whyNot("PIT.STORAGE", {0.0, "round", 3.0}), "length is 0; allowed: above 0.");
    EXPECT_NE(whyNot("PIT.STORAGE", {6.0, "rounded", 3.0}).find("width is \"rounded\""), std::string::npos);
    EXPECT_NE(whyNot("PIT.MOUND", {6.0, "round", 0.5, 48.0, 10.0, 0.2, 10.0}), "OK");
}

// A cloudburst: 0.6 in within 5 minutes on 1000 sq ft brings 10 cu ft a minute; 24 cu ft are full after 2.4 minutes less
// what soaks away.
TEST(PitFunctions, StormsOfMinutes) {
    const Range burst{.rows = 1, .columns = 2, .cells = {5.0, 0.6}};
    const Numbers storm = numbers("PIT.STORM", {burst, 1000.0, 5.0, 4.0, 3.0, 0.6});
    const double soaks = 20 * 0.6 / 12 / 60;  // cu ft a minute
    EXPECT_NEAR(storm.items[2], 24 / (10 - soaks), 1e-9);
    EXPECT_NEAR(storm.items[3], 50 - 24 - 5 * soaks, 1e-9);
    // A centered storm of 15 minutes in steps of 5 out of the table; the peak in the middle is the 5-minute depth.
    const Range table{.rows = 3, .columns = 2, .cells = {"", 10.0, "5-min", 0.5, "60-min", 1.5}};
    const Numbers steps = numbers("RAIN.STORM", {table, 15.0, 10.0, 5.0});
    ASSERT_EQ(steps.rows(), 3u);
    EXPECT_NEAR(steps.items[3], 0.5, 1e-12);
}

}  // namespace
}  // namespace trenchbook::addin
