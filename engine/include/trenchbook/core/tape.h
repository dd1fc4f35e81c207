// Reading and writing lengths and slopes as the trade says them.
//
//     readTape("5' 6-1/2\"").feet();       // 5.541666...
//     readSlope("1/8 in/ft").fraction();   // 0.0104166...
//
// Reading is exact to the last place of a double; whatever is not fully understood is refused, never guessed.
#pragma once

#include <string>
#include <string_view>

#include "trenchbook/core/text.h"
#include "trenchbook/core/units.h"

namespace trenchbook {

// Feet from `5' 6-1/2"`, `5-6 1/2` (feet-inches), `66 1/2 in`, `12.4 ft`, `3.5 m`, `90 mm`, `12.4` (in
// `bare`). Signs are allowed in front; curly marks and fractions such as ½ are read as they are meant.
// Refused as open to two readings: inches of 12 or more behind feet, a fraction without a unit (`6 1/2`,
// `6-1/2`), a decimal comma, and feet-inches without marks where bare numbers are metres. Errors: BadArgument
// "text".
enum class BareNumber { Feet, Metres };
Length readTape(std::string_view text, BareNumber bare = BareNumber::Feet);

// `5' 6-1/2"` to the nearest 1/fraction inch (fraction 1, 2, 4, 8, 16, 32 or 64).
std::string tapeText(Length length, int fraction = 8);

// A fraction from `1/8 in/ft`, `0.25 in per ft`, `1%`, `1.04 %`, `1:96`, `1 in 96`, `0.0104`, `10 mm/m`,
// `3 in per 50 ft`. A fraction without a unit is refused: `1/8` is 12.5 % to one reader and 1/8 in/ft to the
// other. Errors: BadArgument "slope".
Slope readSlope(std::string_view text);

// `1/8 in/ft` (nearest 1/16, with ~ in front when not exact), `1.04%`, `1 in 96`.
enum class SlopeStyle { InchesPerFoot, Percent, OneIn };
std::string slopeText(Slope slope, SlopeStyle style = SlopeStyle::InchesPerFoot);
// The style by its name: "in/ft", "%", "1 in". Errors: BadArgument "style".
SlopeStyle slopeStyle(std::string_view name);

}  // namespace trenchbook
