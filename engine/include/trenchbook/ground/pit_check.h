// Does a rock pit belong here: every reason for no, and the cautions that its depth triggers.
//
//     PitFacts facts;
//     facts.set("rate", 0.06, UnitSystem::US);
//     facts.set("soil group", "D", UnitSystem::US);
//     checkPit(facts, Ruleset(), UnitSystem::US).reasons[0].says.en;
//         // "soil takes too little: 0.06 in/hr, at least 0.5 in/hr (pit.rate.min)"
//
// Each limit is one rule (rules.h, with source and whom to ask), named at the end of its reason, so that
// changing a rule moves exactly the reasons that name it. Limits are met within 1e-9 of their size. What
// every lot has and nobody has measured yet is a reason too; what a lot may lack (a well, a pool) is left
// blank.
#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "trenchbook/core/text.h"
#include "trenchbook/rules/rules.h"

namespace trenchbook {

enum class PitFact {
    Rate,        // design infiltration rate
    DrainHours,  // full to empty
    HighWater,   // ground down to seasonal high water
    PitDepth,    // ground down to the pit's bottom
    Widest,      // widest dimension of the pit at the surface
    Foundation,  // distance from the pit, as the next five
    LotLine,
    Well,
    Septic,
    Pool,
    GroundSlope,
    SoilGroup,  // hydrologic soil group, A to D; a dual group counts as D
    Perc,       // percolation test
    RoofArea,   // that drains to this pit
    RockDepth,
};
inline constexpr std::size_t pitFactCount = 15;

struct PitFactInfo {
    PitFact fact;
    const char* key;  // as the sheet writes it: "high water"
    Unit unit;
    bool needed;  // every lot has it
    Text says;
};
// Every fact, in the order of PitFact.
std::span<const PitFactInfo> pitFactTable();

class PitFacts {
  public:
    // Errors: BadArgument "key" for an unknown one, "value" for what is not a number, below 0, or not a soil
    // group. Blank text leaves the fact unknown. A slope may be the trade's text, a soil group is a letter.
    void set(std::string_view key, double value, UnitSystem units);
    void set(std::string_view key, std::string_view typed, UnitSystem units);
    // In SI, soil groups as 1 to 4; none when not known.
    std::optional<double> operator[](PitFact fact) const { return si_[static_cast<std::size_t>(fact)]; }

  private:
    std::array<std::optional<double>, pitFactCount> si_;
};

struct PitFinding {
    std::string rule;  // its key; empty for a fact that is missing
    Text says;
    std::optional<double> measured = {};  // in SI, in the rule's unit; none where no number is compared
};
struct PitVerdict {
    std::vector<PitFinding> reasons;   // for no
    std::vector<PitFinding> cautions;  // for the crew; they do not refuse the pit
    // OK or the reasons, then the cautions, one a line.
    Text text() const;
};

PitVerdict checkPit(const PitFacts& facts, const Ruleset& rules, UnitSystem units);

}  // namespace trenchbook
