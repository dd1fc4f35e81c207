// What a number given to a function must lie in: told in the function reference, kept by whatever reads the argument.
//
//     Limits{.greatest = 1, .above = true}    // "above 0 and at most 1"
#pragma once

#include <limits>
#include <span>

#include "catalog/measure.h"
#include "trenchbook/core/text.h"

namespace trenchbook::addin {

// Words that a constant can hold.
struct Phrase {
    const char* en = "";
    const char* es = "";

    constexpr bool empty() const { return *en == '\0'; }
    Text text() const { return {en, es}; }
};

// Ends in the US unit of the argument, included unless told otherwise.
struct Limits {
    double least = 0;
    double greatest = std::numeric_limits<double>::infinity();
    bool above = false;                  // least itself is refused
    bool below = false;                  // greatest itself is refused
    bool whole = false;                  // broken numbers are refused
    std::span<const double> oneOf = {};  // these numbers and no other
    // What else holds and no number can say, as it hangs on the other arguments or on what the number is.
    Phrase also = {};
    Phrase of = {};  // what the ends are those of, in a refusal: "Manning n "
    // The function itself refuses what lies outside, in a sentence that tells more than the ends.
    bool toldByFunction = false;

    bool bounded() const;  // refuses anything at all
};

inline constexpr double unlimited = std::numeric_limits<double>::infinity();
// A turn from straight on to straight back, in degrees.
inline constexpr Limits anyTurn = {.greatest = 180};
inline constexpr Limits aboveZero = {.above = true};
inline constexpr Limits zeroOrMore = {};
inline constexpr Limits anyShare = {.greatest = 1};
inline constexpr Limits someShare = {.greatest = 1, .above = true};
// A slope that pipe is laid at, and one that may be level.
inline constexpr Limits laidSlope = {.greatest = 1, .above = true, .below = true};
inline constexpr Limits levelOrSlope = {.greatest = 1, .below = true};
inline constexpr Limits anyLevel = {.least = -unlimited, .also = {"any level", "cualquier cota"}};
// A bare bore beside the stock names, and no number beside them.
inline constexpr Limits stockOrBore = {.above = true, .toldByFunction = true};
inline constexpr Limits stockAlone = {.least = unlimited, .toldByFunction = true};

// Whether a quantity of this measure in SI lies within.
bool holds(const Limits& limits, Measure measure, double si);

// For the reference: "0.005 to 0.5", "above 0", "32 to 212 °F (0 to 100 °C)", "a stock name, or a bore above 0".
Text limitsText(const Limits& limits, Measure measure);
// For a refusal: "from 0.005 to 0.5".
Text allowedText(const Limits& limits, Measure measure);

}  // namespace trenchbook::addin
