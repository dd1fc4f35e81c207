// Every limit and allowance that the workbook uses: one table, one row a rule, each with its source and whom
// to ask.
//
//     Ruleset rules;                                  // the defaults
//     rules.set("cover.lawn", 10, UnitSystem::US);    // the county's own, in the row's unit
//     rules.length("cover.lawn").inches();            // 10
//     rules.slope("slope.min.4in").inchesPerFoot();   // 0.125
//
// Sources disagree, and counties, owners' associations and suppliers have their own numbers: a limit is an
// input with a note beside it, never a constant in code. Keys are lower-case words with dots; once released
// they never change, for they stand in users' files. "min" and "max" in a key say which way the limit works.
#pragma once

#include <initializer_list>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "trenchbook/core/text.h"
#include "trenchbook/core/unit.h"
#include "trenchbook/core/units.h"

namespace trenchbook {

struct Rule {
    const char* key;
    double value;  // default, in the US unit
    Unit unit;
    double least, greatest;  // what can be meant at all, in the US unit: beyond is a slip of the pen
    Text says;
    const char* source;
    Text ask;  // whose word goes before ours

    // The default in the unit of either system.
    double in(UnitSystem units) const;
};

// The whole table, in the order of the Rules sheet.
std::span<const Rule> rules();
// Null when there is no such key. Case and blanks around it do not matter.
const Rule* findRule(std::string_view key);

class Ruleset {
  public:
    Ruleset();  // every rule at its default

    // Errors: BadArgument "rules", in a sentence that names the key, for an unknown key, a value that is not
    // a number, or one out of its range. A slope may be the trade's text (`1/8 in/ft`).
    void set(std::string_view key, double value, UnitSystem units);
    void set(std::string_view key, std::string_view typed, UnitSystem units);

    // Readers. Asking for a key that does not exist, or in another kind than it has, is a fault of the
    // program (std::logic_error).
    double number(std::string_view key) const;  // shares, counts, angles, days, dollars; times in their unit
    Length length(std::string_view key) const;
    Slope slope(std::string_view key) const;
    Velocity velocity(std::string_view key) const;
    Area area(std::string_view key) const;
    Duration duration(std::string_view key) const;
    // In SI, whatever its kind.
    double si(std::string_view key) const;
    // In the unit of either system, whatever its kind.
    double in(std::string_view key, UnitSystem units) const;

  private:
    double read(std::string_view key, std::initializer_list<Unit> kinds) const;

    std::vector<double> si_;  // by row of the table
};

}  // namespace trenchbook
