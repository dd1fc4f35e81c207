// How findings are made: limits met within a hair, amounts written in the job's units, each said in both languages.
//
//     RowFindings row(job, Part::Crossings, 3, findings);
//     row.unusable(crossing.unusable);
//     row.atLeast(Severity::No, "crossing.clearance", clearance.si(), {"clear distance", "separación"});
//         // "clear distance 11.5 in, at least 12 in"
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "trenchbook/core/error.h"
#include "trenchbook/core/units.h"
#include "trenchbook/job/job.h"
#include "trenchbook/rules/finding.h"
#include "trenchbook/rules/standing.h"

#pragma GCC visibility push(hidden)
namespace trenchbook {

// Below or above a limit by more than 1e-9 of its size: what was worked out in another unit still meets it.
bool isUnder(double value, double limit);
bool isOver(double value, double limit);

// "11.5 in", "0.42 ft", "1.04 %", in the system's unit; `decimals` at most, -1 as usual for the unit.
Text amountText(Amount amount, UnitSystem units, int decimals = -1);
// Both with as many decimals as it takes to tell them apart: 11.996 in is not "12 in, at least 12 in".
struct Compared {
    Text measured, allowed;
};
Compared comparedText(Amount measured, Amount allowed, UnitSystem units);

// "40 gpm", "2.52 L/s".
Text flowText(Flow flow, UnitSystem units);

// " by the drawing", where nobody typed a distance; else nothing.
Text byDrawing(bool drawn);

// A rule's limit as an amount.
Amount limitOf(const Ruleset& rules, std::string_view key);

// The findings of one row.
class RowFindings {
  public:
    RowFindings(const Job& job, Part part, std::size_t row, std::vector<Finding>& findings)
        : RowFindings(job.rules, job.units, part, row, findings) {}
    RowFindings(const Ruleset& rules, UnitSystem units, Part part, std::size_t row,
                std::vector<Finding>& findings)
        : rules_(rules), units_(units), part_(part), row_(row), findings_(findings) {}

    // A rule without a number speaks.
    void tell(Severity severity, Standing rule, Text says);
    // A rule speaks, with nothing that is measured against it.
    void tell(Severity severity, const char* rule, Text says);
    // The value is compared with the rule `key` by the caller; `says` is the whole sentence.
    void tell(Severity severity, const char* rule, double measured, Text says);
    // Only where the value misses the limit: "what 3.2 ft, at least 4 ft" and `after`. True when it did.
    bool atLeast(Severity severity, const char* rule, double measured, Text what, Text after = {});
    bool atMost(Severity severity, const char* rule, double measured, Text what, Text after = {});
    // As atLeast, for a small difference of levels: met within a thousandth of a millimeter, as levels are no better.
    bool atLeastAbout(Severity severity, const char* rule, Length measured, Text what, Text after = {});

    // Every cell that could not be used, each with its own reason.
    void unusable(const std::vector<Unusable>& cells);
    // An input that is not there: told as missing, unless its cell stands among those that could not be used.
    template <class Value>
    bool needs(const std::optional<Value>& value, const std::vector<Unusable>& cells, const char* heading,
               Text why = {}) {
        if (value) return true;
        if (!stands(cells, heading)) missing(heading, std::move(why));
        return false;
    }
    void missing(const char* heading, Text why = {});
    static bool stands(const std::vector<Unusable>& cells, std::string_view heading);

  private:
    void compare(Severity severity, const char* rule, double measured, Text what, const Text& side,
                 const Text& after);

    const Ruleset& rules_;
    UnitSystem units_;
    Part part_;
    std::size_t row_;
    std::vector<Finding>& findings_;
};

// The refusal of the engine in both languages.
Text sentenceOf(const Error& error);

}  // namespace trenchbook
#pragma GCC visibility pop
