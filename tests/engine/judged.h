// A small job for the tests of judgements, and what is told about it.
//
//     A (downspout, ground 100) -- 40 ft at 2 % --> B (basin, 99.5) -- 60 ft at 1 % --> Out (bank, 98), invert 96
//
// 4 SDR35 throughout: outside 4.215 in, wall 0.12 in (ASTM D3034). Inverts by hand: Out 96.0, B 96.0 + 0.6 = 96.6,
// A 96.6 + 0.8 = 97.4. 1,000 sq ft of roof at C 0.9 drain to A, 500 sq ft of paving at C 0.8 to B.
#pragma once

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "trenchbook/job/solve.h"
#include "trenchbook/rules/standing.h"

namespace trenchbook {

inline const std::string anyRule = "*";

inline Job smallJob() {
    Job job;
    const auto node = [](const char* name, NodeKind kind, double ground) {
        Node made{.name = name, .ground = Length::feet(ground), .kindGiven = true, .blank = false};
        made.kinds.add(kind);
        return made;
    };
    job.nodes = {node("A", NodeKind::Downspout, 100), node("B", NodeKind::Basin, 99.5),
                 node("Out", NodeKind::Bank, 98)};
    const auto run = [](const char* from, const char* to, double feet, double percent) {
        return Run{.line = "main",
                   .from = from,
                   .to = to,
                   .length = Length::feet(feet),
                   .pipe = stockPipe("4 SDR35"),
                   .slope = Slope::percent(percent),
                   .surfaceUp = CoverSurface::Lawn,
                   .surfaceDown = CoverSurface::Lawn,
                   .blank = false};
    };
    job.runs = {run("A", "B", 40, 2), run("B", "Out", 60, 1)};
    job.runs[1].outletLevel = Length::feet(96);
    job.runs[1].surfaceDown = CoverSurface::Daylight;
    job.inlets = {
        {.name = "North", .node = "A", .roof = {Area::squareFeet(1000), 0.9}, .blank = false},
        {.name = "Patio", .node = "B", .paved = {Area::squareFeet(500), 0.8}, .blank = false},
    };
    job.outlets = {{.node = "Out",
                    .flowLine = Length::feet(95.5),
                    .lotLine = Length::feet(30),
                    .walk = Length::feet(30),
                    .foundation = Length::feet(30),
                    .blank = false}};
    job.facts = {.name = "Invented lot",
                 .owner = "Invented Owner",
                 .site = "Lot 1",
                 .soil = "loam",
                 .outlet = "roadside ditch",
                 .permission = "got",
                 .quoteDate = Date::of(2026, 11, 20),
                 .today = Date::of(2026, 11, 25),  // a Wednesday
                 .rain = RainRate::inchesPerHour(4),
                 .duration = Duration::minutes(5),
                 .ticket = {.number = "0001",
                            .called = Date::of(2026, 11, 16),
                            .from = Date::of(2026, 11, 19),
                            .until = Date::of(2026, 12, 10)},
                 .septic = Answer::No,
                 .well = Answer::No,
                 .association = Answer::No,
                 .irrigation = Answer::No,
                 .rulesAsked = Answer::Yes,
                 .levels = 3};
    return job;
}

// What is told of one row, both languages looked at.
inline std::vector<Finding> told(const Job& job, Part part, std::size_t row) {
    std::vector<Finding> found;
    for (const Finding& finding : solve(job).findings) {
        if (finding.part != part || finding.row != row) continue;
        EXPECT_FALSE(finding.says.en.empty());
        EXPECT_FALSE(finding.says.es.empty()) << finding.says.en;
        EXPECT_NE(finding.says.en, finding.says.es);
        EXPECT_NE(findRule(finding.rule) == nullptr, findStandingRule(finding.rule) == nullptr)
            << "[" << finding.rule << "] " << finding.says.en;
        found.push_back(finding);
    }
    return found;
}

inline std::string listed(const std::vector<Finding>& findings) {
    std::string all;
    for (const Finding& finding : findings)
        all += severityWord(finding.severity).en + " [" + finding.rule + "] " + finding.says.en + "\n";
    return all;
}

// Whether the row is told so: this severity, this rule ("" for any without a number, anyRule for whichever), these words
// in it.
inline testing::AssertionResult tells(const Job& job, Part part, std::size_t row, Severity severity,
                                      const std::string& rule, const std::string& words) {
    const std::vector<Finding> found = told(job, part, row);
    for (const Finding& finding : found)
        if (finding.severity == severity &&
            (rule == anyRule || finding.rule == rule || (rule.empty() && findStandingRule(finding.rule))) &&
            finding.says.en.find(words) != std::string::npos)
            return testing::AssertionSuccess() << "told: " << finding.says.en;
    return testing::AssertionFailure() << "not told \"" << words << "\" but:\n" << listed(found);
}

// Whether anything keeps the row from OK.
inline testing::AssertionResult isOk(const Job& job, Part part, std::size_t row) {
    const std::vector<Finding> found = told(job, part, row);
    return verdict(found) ? testing::AssertionFailure() << listed(found)
                          : testing::AssertionSuccess() << listed(found);
}

}  // namespace trenchbook
