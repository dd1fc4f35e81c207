// The table of rules: released keys stay, defaults lie in their own range, values are read strictly and told
// by key.
#include "trenchbook/rules/rules.h"

#include <gtest/gtest.h>

#include <set>

#include "reference.h"
#include "trenchbook/core/error.h"
#include "trenchbook/pipe/size_class.h"

namespace trenchbook {
namespace {

std::string refusal(std::string_view key, std::string_view typed, UnitSystem units = UnitSystem::US) {
    try {
        Ruleset().set(key, typed, units);
    } catch (const Error& error) {
        EXPECT_EQ(error.argument(), "rules");
        return error.sentence(Language::English);
    }
    return "accepted";
}
std::string refusal(std::string_view key, double value, UnitSystem units = UnitSystem::US) {
    try {
        Ruleset().set(key, value, units);
    } catch (const Error& error) {
        return error.sentence(Language::English);
    }
    return "accepted";
}

TEST(Rules, EveryRowIsComplete) {
    std::set<std::string> seen;
    for (const Rule& rule : rules()) {
        const std::string key = rule.key;
        EXPECT_TRUE(seen.insert(key).second) << key << " stands twice";
        EXPECT_EQ(key.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789."), std::string::npos) << key;
        EXPECT_LE(rule.least, rule.value) << key;
        EXPECT_LE(rule.value, rule.greatest) << key;
        EXPECT_LT(rule.least, rule.greatest) << key;
        EXPECT_FALSE(rule.says.en.empty() || rule.says.es.empty()) << key;
        EXPECT_NE(rule.says.en, rule.says.es) << key;
        EXPECT_FALSE(std::string(rule.source).empty()) << key;
        EXPECT_FALSE(rule.ask.en.empty() || rule.ask.es.empty()) << key;
        EXPECT_EQ(findRule(key), &rule) << key;
    }
}

TEST(Rules, DefaultsAreReadBackInBothSystems) {
    Ruleset defaults;
    for (const Rule& rule : rules()) {
        EXPECT_NEAR(defaults.in(rule.key, UnitSystem::US), rule.value, 1e-12 * (1 + rule.value)) << rule.key;
        EXPECT_NEAR(defaults.in(rule.key, UnitSystem::Metric), rule.in(UnitSystem::Metric), 1e-9) << rule.key;
        // What a metric sheet shows for the default, and for the ends of the range, is accepted there.
        Ruleset again;
        EXPECT_NO_THROW(again.set(rule.key, rule.in(UnitSystem::Metric), UnitSystem::Metric)) << rule.key;
        EXPECT_NEAR(again.in(rule.key, UnitSystem::US), rule.value, 1e-9 * (1 + rule.value)) << rule.key;
    }
    EXPECT_NEAR(defaults.length("cover.lawn").millimetres(), 304.8, 1e-9);
}

TEST(Rules, LeastSlopeGoesByNominalSize) {
    const Ruleset defaults;
    const auto slope = [&](double nominal) { return defaults.slope(leastSlopeKey(nominal)).inchesPerFoot(); };
    const char* source = "city plumbing code, minimum slopes (codelibrary.amlegal.com, Chicago 2691996)";
    reference::check("RUN.CHECK", "least slope, 2 in, in/ft", slope(2), 0.25, 1e-12, source, "read");
    reference::check("RUN.CHECK", "least slope, 3 in, in/ft", slope(3), 0.125, 1e-12, source, "read");
    reference::check("RUN.CHECK", "least slope, 6 in, in/ft", slope(6), 0.125, 1e-12, source, "read");
    reference::check("RUN.CHECK", "least slope, 8 in, in/ft", slope(8), 0.0625, 1e-12, source, "read");
    EXPECT_EQ(slope(10), slope(8));
    EXPECT_EQ(slope(5), slope(4));
}

TEST(Rules, VelocityOntoGrassAgainstThePrintedTable) {
    // A lot's swale is of grass mixtures, on slopes of 0 to 5 %; the rule's note says 4 to 5 ft/s.
    std::size_t found = 0;
    for (const reference::Row& row : reference::rows("05b_permissible_velocity_and_grass_n.csv")) {
        if (row.output != "permissible velocity" || row.item != "Grass mixtures, reed canarygrass" ||
            !row.has("slope_pct") || row.word("slope_pct") != "0-5")
            continue;
        const double ours = Ruleset().velocity("velocity.outlet.max").feetPerSecond();
        // The rule is for soil that stands erosion; easily eroded soil takes 1 ft/s less.
        const bool eroded = row.inputs.find("easily eroded") != std::string::npos;
        EXPECT_NEAR(ours, row.number() + (eroded ? 1 : 0), 1e-12) << row.inputs;
        ++found;
    }
    EXPECT_EQ(found, 2U);
}

TEST(Rules, TimesAreReadInTheirUnitAndAsDurations) {
    Ruleset own;
    own.set("pit.drain.max", 48, UnitSystem::US);
    EXPECT_NEAR(own.number("pit.drain.max"), 48, 1e-12);
    EXPECT_NEAR(own.duration("pit.drain.max").hours(), 48, 1e-12);
    EXPECT_NEAR(own.si("pit.drain.max"), 48 * 3600, 1e-9);
    EXPECT_THROW(own.duration("cover.lawn"), std::logic_error);
    EXPECT_THROW(own.si("no.such.key"), std::logic_error);
}

TEST(Rules, ValuesAreReadStrictly) {
    Ruleset own;
    own.set(" Cover.Lawn ", 10, UnitSystem::US);
    EXPECT_NEAR(own.length("cover.lawn").inches(), 10, 1e-12);
    own.set("cover.lawn", 200, UnitSystem::Metric);
    EXPECT_NEAR(own.length("cover.lawn").millimetres(), 200, 1e-12);
    own.set("slope.min.4in", "1%", UnitSystem::US);
    EXPECT_NEAR(own.slope("slope.min.4in").percent(), 1, 1e-12);

    EXPECT_EQ(refusal("cover.lown", 10), "rules: \"cover.lown\" is not the key of a rule.");
    EXPECT_EQ(refusal("cover.lown", "ten"), "rules: \"cover.lown\" is not the key of a rule.");
    EXPECT_EQ(refusal("cover.lawn", "ten"),
              "rules: cover.lawn is \"ten\"; allowed: a number from 0 to 120 in.");
    EXPECT_EQ(refusal("cover.lawn", ""), "rules: cover.lawn is blank; allowed: a number from 0 to 120 in.");
    EXPECT_EQ(refusal("cover.lawn", 300), "rules: cover.lawn is 300; allowed: from 0 to 120 in.");
    EXPECT_EQ(refusal("cover.lawn", 4000, UnitSystem::Metric),
              "rules: cover.lawn is 4000; allowed: from 0 to 3048 mm.");
    EXPECT_EQ(refusal("share.max", 80), "rules: share.max is 80; allowed: from 0.1 to 1.");
    EXPECT_EQ(refusal("wheels.d2729", 0.5), "rules: wheels.d2729 is 0.5; allowed: 1 or 0.");
    EXPECT_EQ(refusal("slope.min.4in", "steep"),
              "rules: slope.min.4in is \"steep\"; allowed: a number from 0 to 0.2.");
}

TEST(Rules, AskingForWhatIsNotThereIsAFaultOfTheProgram) {
    EXPECT_THROW(Ruleset().length("share.max"), std::logic_error);
    EXPECT_THROW(Ruleset().number("no.such.key"), std::logic_error);
}

}  // namespace
}  // namespace trenchbook
