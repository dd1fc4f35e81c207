#include "trenchbook/ground/pit_check.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "reference.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

using namespace reference;

using Facts = std::map<std::string, double>;

// A sandy lot with room; no well, septic field or pool.
const Facts sandLot = {{"rate", 2},       {"drain hours", 20}, {"high water", 9},  {"pit depth", 3.5},
                       {"widest", 10},    {"foundation", 15},  {"lot line", 12},   {"ground slope", 0.03},
                       {"soil group", 1}, {"perc", 6},         {"roof area", 900}, {"rock depth", 2.5}};
// Clay over a high water table, everything too near, on a steep back yard.
const Facts clayLot = {{"rate", 0.05}, {"drain hours", 190}, {"high water", 4},     {"pit depth", 6},
                       {"widest", 5},  {"foundation", 6},    {"lot line", 4},       {"well", 60},
                       {"septic", 20}, {"pool", 8},          {"ground slope", 0.3}, {"soil group", 4},
                       {"perc", 120},  {"roof area", 1500},  {"rock depth", 5}};

PitFacts factsOf(const Facts& values, UnitSystem units = UnitSystem::US) {
    PitFacts facts;
    for (const auto& [key, value] : values) {
        if (key == "soil group")
            facts.set(key, std::string(1, static_cast<char>('A' - 1 + static_cast<int>(value))), units);
        else
            facts.set(key, value, units);
    }
    return facts;
}

std::set<std::string> rulesOf(const std::vector<PitFinding>& findings) {
    std::set<std::string> keys;
    for (const PitFinding& finding : findings) keys.insert(finding.rule);
    return keys;
}

std::set<std::string> failing(const Facts& values, const Ruleset& rules = {}) {
    const PitVerdict verdict = checkPit(factsOf(values), rules, UnitSystem::US);
    const std::set<std::string> keys = rulesOf(verdict.reasons);
    EXPECT_EQ(keys.size(), verdict.reasons.size()) << verdict.text().en;
    return keys;
}

TEST(PitCheck, ASandLotPasses) {
    const PitVerdict verdict = checkPit(factsOf(sandLot), Ruleset(), UnitSystem::US);
    EXPECT_EQ(verdict.text().en, "OK");
    EXPECT_EQ(verdict.text().es, "OK");
}

TEST(PitCheck, AClayLotIsRefusedWithEveryReasonAndNoOther) {
    EXPECT_EQ(
        failing(clayLot),
        (std::set<std::string>{"pit.rate.min", "pit.drain.max", "pit.separation.min", "pit.aspect.max",
                               "pit.setback.foundation.min", "pit.setback.line.min", "pit.setback.well.min",
                               "pit.setback.septic.min", "pit.setback.pool.min", "pit.slope.max",
                               "pit.group.d", "pit.perc.max", "pit.area.max", "pit.rock.depth.max"}));
    EXPECT_EQ(
        checkPit(factsOf(clayLot), Ruleset(), UnitSystem::US).text().en,
        "soil takes too little: 0.05 in/hr, at least 0.5 in/hr (pit.rate.min)\npercolation too slow: 120 "
        "min/in, at most 60 min/in (pit.perc.max)\ntoo long to empty: 190 h, at most 48 h "
        "(pit.drain.max)\ntoo near the foundation: 6 ft, at least 10 ft (pit.setback.foundation.min)\ntoo "
        "near the lot line: 4 ft, at least 10 ft (pit.setback.line.min)\ntoo near a well: 60 ft, at least "
        "100 ft (pit.setback.well.min)\ntoo near the septic tank or field: 20 ft, at least 35 ft "
        "(pit.setback.septic.min)\ntoo near the pool: 8 ft, at least 10 ft (pit.setback.pool.min)\nground "
        "too steep: 30 %, at most 20 % (pit.slope.max)\ntoo much roof for one pit: 1500 sq ft, at most 1000 "
        "sq ft (pit.area.max)\nrock too deep: 5 ft, at most 4 ft (pit.rock.depth.max)\nhigh water stands 2 "
        "ft above the pit's bottom: the pit would fill from below (pit.separation.min)\ndeep for its width, "
        "6 ft against 5 ft: it may count as a drainage well; ask the state's injection-well office first "
        "(pit.aspect.max)\nsoil group D: too tight for a pit (pit.group.d)\ncaution: 6 ft deep: a safe way "
        "out within 25 ft (7.6 m) of every worker (cut.exit)\ncaution: 6 ft deep: slope, shore or shield the "
        "sides unless in stable rock (cut.protect)");
}

TEST(PitCheck, SpeaksSpanishAndMetric) {
    Facts lot = sandLot;
    lot["foundation"] = 2;  // m from here on
    lot["lot line"] = 4;
    lot["rate"] = 5;  // mm/h
    lot["pit depth"] = 1.1;
    lot["high water"] = 1.3;
    lot["widest"] = 3;
    lot["roof area"] = 80;
    lot["rock depth"] = 0.8;
    lot["perc"] = 0.2;  // min/mm
    EXPECT_EQ(checkPit(factsOf(lot, UnitSystem::Metric), Ruleset(), UnitSystem::Metric).text().es,
              "el suelo absorbe muy poco: 5 mm/h, al menos 12.7 mm/h (pit.rate.min)\n"
              "muy cerca del cimiento: 2 m, al menos 3.05 m (pit.setback.foundation.min)\n"
              "fondo muy cerca del agua alta: 0.2 m, al menos 0.61 m (pit.separation.min)");
}

TEST(PitCheck, LimitsAreThePublishedOnes) {
    // The printed limit just passes, a hair to the wrong side is refused.
    const auto turnsAt = [](const char* fact, const char* rule, double least, double most) {
        const auto refused = [&](double value) {
            Facts lot = sandLot;
            lot[fact] = value;
            return failing(lot).contains(rule);
        };
        double low = least, high = most;
        const bool atLow = refused(low);
        EXPECT_NE(atLow, refused(high)) << fact;
        while (high - low > 1e-6) {
            const double middle = (low + high) / 2;
            (refused(middle) == atLow ? low : high) = middle;
        }
        return std::round(high * 1e5) / 1e5;
    };
    for (const Row& row : rows("20b_drywell_trench_sizing.csv")) {
        if (row.item == "Dry well: Design permeability, minimum")
            check("PIT.CHECK", row, turnsAt("rate", "pit.rate.min", 0.01, 5));
        if (row.item == "Dry well: Design permeability, maximum")
            check("PIT.CHECK", row, turnsAt("rate", "pit.rate.max", 5, 50));
    }
    for (const Row& row : rows("08a_infiltration_rates_and_limits.csv")) {
        if (row.item == "Field infiltration rate, minimum for HSG A/B siting")
            check("PIT.CHECK", row, turnsAt("rate", "pit.rate.min", 0.01, 5));
        if (row.item == "Setback from buildings, minimum")
            check("PIT.CHECK", row, turnsAt("foundation", "pit.setback.foundation.min", 1, 50));
        if (row.item == "Roof dry well infiltration period")
            check("PIT.CHECK", row, turnsAt("drain hours", "pit.drain.max", 1, 200));
        if (row.item == "Roof area per dry well, maximum")
            check("PIT.CHECK", row, turnsAt("roof area", "pit.area.max", 100, 5000));
    }
    // High water under a pit 3.5 ft deep.
    for (const Row& row : rows("20b_drywell_trench_sizing.csv"))
        if (row.item == "Dry well: Bottom to seasonal high water table, minimum")
            check("PIT.CHECK", row, turnsAt("high water", "pit.separation.min", 3, 20) - 3.5);
}

TEST(PitCheck, DepthTriggersAreThePublishedOnes) {
    const auto cautionsAt = [](double depth) {
        Facts lot = sandLot;
        lot["pit depth"] = depth;
        lot["widest"] = 40;
        lot["high water"] = 60;
        const PitVerdict verdict = checkPit(factsOf(lot), Ruleset(), UnitSystem::US);
        EXPECT_TRUE(verdict.reasons.empty()) << verdict.text().en;
        EXPECT_TRUE(verdict.text().en.starts_with("OK"));
        return rulesOf(verdict.cautions);
    };
    const auto begins = [&](const char* rule) {
        double low = 1, high = 30;
        while (high - low > 1e-7) {
            const double middle = (low + high) / 2;
            (cautionsAt(middle).contains(rule) ? high : low) = middle;
        }
        return std::round(high * 1e5) / 1e5;
    };
    for (const Row& row : rows("20i_safety_and_wells.csv")) {
        if (row.item == "Trench depth needing egress, 1926.651(c)(2)")
            check("PIT.CHECK", row, begins("cut.exit"));
        if (row.item.starts_with("Depth below which the no-cave-in exception"))
            check("PIT.CHECK", row, begins("cut.protect"));
        if (row.item.starts_with("Depth above which a registered"))
            check("PIT.CHECK", row, begins("cut.engineer"));
        if (row.item.starts_with("Well: bored, drilled")) {
            Facts lot = sandLot;
            lot["widest"] = 3.5;
            EXPECT_EQ(failing(lot), std::set<std::string>{}) << "as deep as wide is not deeper";
            lot["widest"] = 3.49;
            const std::set<std::string> keys = failing(lot);
            checkWords("PIT.CHECK", row,
                       keys == std::set<std::string>{"pit.aspect.max"}
                           ? "depth greater than the largest surface dimension"
                           : "another reason");
        }
    }
}

// Which reasons may move when a rule changes: those that name it.
RC_GTEST_PROP(PitCheck, ChangingALimitMovesExactlyItsReasons, ()) {
    Facts lot = *rc::gen::element(sandLot, clayLot);
    for (auto& [key, value] : lot)
        if (key != "soil group") value *= *rc::gen::inRange(20, 300) / 100.0;
    lot["ground slope"] = std::min(lot["ground slope"], 1.0);
    static const std::vector<std::string> keys = [] {
        std::vector<std::string> all;
        for (const Rule& rule : rules())
            if (std::string_view(rule.key).starts_with("pit.") ||
                std::string_view(rule.key).starts_with("cut."))
                all.emplace_back(rule.key);
        return all;
    }();
    const std::string key = *rc::gen::elementOf(keys);
    const Rule& rule = *findRule(key);
    double value = rule.least + (rule.greatest - rule.least) * (*rc::gen::inRange(0, 101) / 100.0);
    if (rule.unit == Unit::YesNo) value = value < 0.5 ? 0 : 1;
    Ruleset changed;
    changed.set(key, value, UnitSystem::US);
    RC_LOG() << key << " = " << value << '\n';

    const auto others = [&](const Ruleset& ruleset) {
        std::vector<std::string> says;
        const PitVerdict verdict = checkPit(factsOf(lot), ruleset, UnitSystem::US);
        for (const auto* list : {&verdict.reasons, &verdict.cautions})
            for (const PitFinding& finding : *list)
                if (finding.rule != key) says.push_back(finding.says.en);
        return says;
    };
    RC_ASSERT(others(Ruleset()) == others(changed));
}

TEST(PitCheck, EveryPitLimitCanBothPassAndRefuse) {
    // The clay lot fails them; eased to their loosest, each reason goes and all others stay.
    const std::set<std::string> all = failing(clayLot);
    for (const std::string& key : all) {
        const Rule& rule = *findRule(key);
        const bool atLeast = key.ends_with(".min");
        Ruleset eased;
        eased.set(key, atLeast ? rule.least : rule.greatest, UnitSystem::US);
        std::set<std::string> expected = all;
        // No limit makes water that stands in the pit good.
        if (key != "pit.separation.min") expected.erase(key);
        EXPECT_EQ(failing(clayLot, eased), expected) << key;
    }
}

TEST(PitCheck, WhatNobodyMeasuredIsAReason) {
    const PitVerdict verdict = checkPit(PitFacts(), Ruleset(), UnitSystem::US);
    EXPECT_EQ(verdict.reasons.size(), 9u);
    EXPECT_EQ(verdict.reasons[2].says.en, "not known yet: depth to seasonal high water");
    EXPECT_EQ(verdict.reasons[2].says.es, "falta saber: la profundidad del agua alta de temporada");
    // What a lot may lack is not asked for.
    for (const PitFinding& finding : verdict.reasons)
        EXPECT_EQ(finding.says.en.find("pool"), std::string::npos) << finding.says.en;
}

std::string refusal(std::string_view key, auto value) {
    try {
        PitFacts facts;
        facts.set(key, value, UnitSystem::US);
        return "accepted";
    } catch (const Error& error) {
        return error.argument() + ": " + error.sentence(Language::English);
    }
}

TEST(PitCheck, ReadsFactsStrictly) {
    EXPECT_EQ(refusal(" Lot Line ", 12), "accepted");
    EXPECT_EQ(refusal("lot line", "12' 6\""), "accepted");
    EXPECT_EQ(refusal("ground slope", "1:10"), "accepted");
    EXPECT_EQ(refusal("soil group", "B/D"), "accepted");
    EXPECT_EQ(refusal("well", ""), "accepted");
    EXPECT_EQ(refusal("wel", 12),
              "key: key is \"wel\"; allowed: rate, drain hours, high water, pit depth, widest, foundation, "
              "lot line, "
              "well, septic, pool, ground slope, soil group, perc, roof area, rock depth.");
    EXPECT_EQ(refusal("well", -1), "value: well is -1; allowed: 0 or more.");
    EXPECT_EQ(refusal("rate", "fast"), "value: rate is \"fast\"; allowed: a number.");
    EXPECT_EQ(refusal("soil group", "E"),
              "value: soil group is \"E\"; allowed: A, B, C, D, or a dual group such as B/D.");
    EXPECT_EQ(refusal("soil group", 3),
              "value: soil group is \"3\"; allowed: A, B, C, D, or a dual group such as B/D.");
    EXPECT_EQ(refusal("ground slope", 5),
              "value: ground slope is 5; allowed: a fraction from 0 to 1, or text such as 10% or 1:10.");
    PitFacts facts;
    facts.set("soil group", "a/d", UnitSystem::US);
    EXPECT_EQ(facts[PitFact::SoilGroup], 4.0);
    facts.set("soil group", "  ", UnitSystem::US);
    EXPECT_FALSE(facts[PitFact::SoilGroup].has_value());
}

}  // namespace
}  // namespace trenchbook
