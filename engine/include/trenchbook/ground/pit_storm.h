// A storm through a rock pit: how high the water comes, what overflows, what soaks away, when it is empty again.
//
//     Storm storm = nrcsStorm(Length::inches(4), StormType::II, Duration::minutes(30));
//     RockPit pit{.length = Length::feet(20), .width = Length::feet(6), .rockDepth = Length::feet(3)};
//     runStorm(storm, Area::squareFeet(900), pit, SoilRate::inchesPerHour(0.5)).overflow.cubicFeet();
//
// Within a step the rain is even, so the water depth h obeys
//     n A dh/dt = q - f (A + s P h),   0 <= h <= rock depth
// with constants, and is solved exactly: there is no step error, and the moments of full, overflowing and
// empty are closed formulas. Soaked water is integrated on its own; that inflow, overflow, soaked and stored
// water add up is therefore a check, and balanceError (a share of all water) shows it: rounding only, below
// 1e-12 in a day of one-minute steps. The same model as drainTime() in pit.h. All rain of the area runs in
// without delay.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "trenchbook/ground/pit.h"
#include "trenchbook/water/storm.h"

namespace trenchbook {

struct PitStorm {
    Length highest;                         // deepest water, from the pit's bottom
    Duration highestAt;                     // when it is first reached
    std::optional<Duration> firstOverflow;  // none when the pit takes it all
    Volume overflow;
    Volume soaked;     // until empty
    Duration toEmpty;  // from the end of the storm
    double balanceError = 0;
};

// State at the end of each step of the storm.
struct PitState {
    Duration end;
    Length water;
    Volume soaked, overflow;  // since the beginning
};

// `course`, when given, receives one state a step.
// Errors: of the pit; BadArgument "storm" (no steps, times that do not rise, rain below 0), "area x C",
// "rate", "start water" (below 0, above the rock).
PitStorm runStorm(std::span<const StormStep> storm, Area areaTimesC, const RockPit& pit, SoilRate rate,
                  Length startWater = {}, std::vector<PitState>* course = nullptr);

// The shortest pit of this width and depth (the length given is not read), or the smallest round one, that takes the storm without
// overflow, starting empty; right to 1e-10 of the length, never short. A longer pit never overflows more as
// long as it is longer than 2 * side share * rock depth; a pit that short loses more through its end walls
// than its length matters, and the answer is then only a length that does. Errors as above, and NoSolution
// "storm" when it brings no rain or the end walls alone take it.
Length shortestPit(std::span<const StormStep> storm, Area areaTimesC, const RockPit& pit, SoilRate rate);

}  // namespace trenchbook
