// Which elbows make a turn.
//
//     std::vector<Angle> stocked = {Angle::degrees(22.5), Angle::degrees(45)};
//     makeup(Angle::degrees(67), stocked, Angle::degrees(3));    // 45, 22.5
//
// The fewest pieces whose sum comes within the tolerance of the turn; among those the nearest sum, then the
// larger pieces first. Elbows keep adding up only when all turn the same way in one plane, as a drain line
// does. Standard elbows: 11.25, 22.5, 45 and 90 degrees (ASTM F1336 and D2665 patterns, from memory). Long
// turns are made of 45s and 22.5s so that a cable can follow (common practice, no source).
#pragma once

#include <span>
#include <string>
#include <vector>

#include "trenchbook/core/units.h"

namespace trenchbook {

// Empty when the turn lies within the tolerance of straight. Turns above 0 to 180 degrees; pieces from 5 to
// 90 degrees, at most 8 kinds; tolerance from 0 to 22.5 degrees. Errors: BadArgument "turn", "pieces",
// "tolerance"; NoSolution "turn" when no sum of the pieces comes within the tolerance.
std::vector<Angle> makeup(Angle turn, std::span<const Angle> pieces, Angle tolerance);

// `45 + 22.5`; `0` for no piece.
std::string makeupText(std::span<const Angle> pieces);

}  // namespace trenchbook
