// A pit or trench filled with clean rock: what it holds, how long it takes to empty.
//
//     RockPit pit{.length = Length::feet(20), .width = Length::feet(6), .rockDepth = Length::feet(3)};
//     storage(pit).cubicFeet();                                 // 144
//     drainTime(pit, SoilRate::inchesPerHour(0.5)).hours();     // 28.8
//
// Upright walls on a level bottom, a rectangle or a circle. Water leaves at the soil's rate through the bottom and, where a side share
// is given, through that share of the walls as far up as they are wet; the rate does not grow with depth.
// pit_storm.h runs a storm through the same pit with the same model.
#pragma once

#include <numbers>

#include "trenchbook/core/units.h"

namespace trenchbook {

struct RockPit {
    Length length = {};  // of a round pit the diameter
    Length width = {};   // of a round pit not read
    Length rockDepth = {};
    double voids = 0.4;    // share of the rock's volume that takes water
    double sideShare = 0;  // share of the wetted walls that counts; 0 is the cautious choice
    bool round = false;

    Area bottom() const { return round ? length * length * (std::numbers::pi / 4) : length * width; }
    Length perimeter() const { return round ? length * std::numbers::pi : 2 * (length + width); }
};

// Checks a pit's own numbers. Errors: BadArgument "length", "width", "rock depth", "voids", "side share".
void require(const RockPit& pit);
// Voids above 0 and at most 1; a percent is asked back. Errors: BadArgument "voids".
void requireVoids(double voids);

// Water that the rock holds when full: bottom * depth * voids. Exact.
Volume storage(const RockPit& pit);

// Rock that holds this water, beside what lies inside the pipe buried in it: (hold - pipe inside) / voids;
// none where the pipe alone holds it. Exact. Errors: "hold", "voids", "pipe inside".
Volume rockToHold(Volume hold, double voids = 0.4, Volume pipeInside = {});

// Full to empty with nothing running in:
//     t = n A / (f s P) * ln(1 + s P h / A),  n h / f when no side counts
// from n A dh/dt = -f (A + s P h). Source: drainage time of a stone-filled bed with flow from its sides, LID
// guide of the Sustainable Technologies Evaluation Program. Exact for this model. Errors: of the pit, and
// "rate".
Duration drainTime(const RockPit& pit, SoilRate rate);

// Rain that fills a storage: storage / (area times runoff coefficient). Exact. Errors: "storage", "area x C".
Length rainHeld(Volume storage, Area areaTimesC);

}  // namespace trenchbook
