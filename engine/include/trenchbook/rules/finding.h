// What a rule, or the want of an input, says about one row of a job.
//
//     Finding finding{.severity = Severity::No, .part = Part::Runs, .row = 3, .rule = "slope.min.4in",
//                     .measured = Amount{0.008, Unit::Slope}, .allowed = Amount{0.0104, Unit::Slope},
//                     .says = {"too flat: 0.8%, at least 1.04%", "muy plano: 0.8%, al menos 1.04%"}};
//     verdict(std::vector{finding});    // Severity::No
//
// A row shows all of its findings, the worst first. OK is the absence of the first three severities.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "trenchbook/core/text.h"
#include "trenchbook/rules/rules.h"

namespace trenchbook {

enum class Severity {
    No,         // blocks price, proposal and order
    NotJudged,  // an input is missing: never OK
    Check,      // a person decides, and notes it
    Caution,    // printed, blocks nothing
    Saving,     // feet or dollars to gain
};
// "NO", "NOT JUDGED", "CHECK", "caution", "saving"; in Spanish "NO", "SIN JUZGAR", "REVISE", "cuidado", "ahorro".
const Text& severityWord(Severity severity);

// The tables of a job that rows are counted in.
enum class Part { Job, Nodes, Water, Runs, Ground, Crossings, Outlets, Pump, Pit };
const Text& partWord(Part part);  // as the sheet is named

struct Amount {
    double si = 0;  // angles, counts, days, years, shares, soil groups (1 to 4) in their own unit
    Unit unit = Unit::Number;
};

struct Finding {
    static constexpr std::size_t whole = static_cast<std::size_t>(-1);

    Severity severity = Severity::No;
    Part part = Part::Runs;
    std::size_t row = whole;  // in the part's table, from 0; `whole` where no row is meant
    std::string rule = {};    // its key: of rules.h with a number, of standing.h without; never empty
    std::optional<Amount> measured = {}, allowed = {};
    Text says = {};
};

// The worst severity among them; none when there is nothing that keeps a row from OK.
std::optional<Severity> verdict(std::span<const Finding> findings);

// Worst first; findings of one severity stay in the order in which they were made.
void sortFindings(std::vector<Finding>& findings);

// "NO: too flat: …; CHECK: …", or OK: the sentence of a row's Check. `findings` are of one row, sorted.
Text checkText(std::span<const Finding> findings);

}  // namespace trenchbook
