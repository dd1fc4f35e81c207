// Legs of known direction and length, one after the other: around a lot as its plat gives them, or along a
// line that turns.
//
//     const std::vector<Leg> square = {{Angle::degrees(0), Length::feet(50)}, {Angle::degrees(90), Length::feet(80)},
//                                      {Angle::degrees(180), Length::feet(50)}, {Angle::degrees(270), Length::feet(80)}};
//     closure(square).gap().feet();                       // 0
//     enclosed(compassRule({}, square)).squareFeet();     // 4000
//
// The compass rule (Bowditch) spreads what a loop misses over its legs by their length: what surveying texts
// print as adjusted latitudes and departures. A plat of record closes within hundredths of a foot; a gap of
// feet is a number copied wrong.
#pragma once

#include <span>
#include <vector>

#include "trenchbook/layout/plan_point.h"

namespace trenchbook {

struct Leg {
    Angle azimuth = {};
    Length length = {};
};

struct Closure {
    Length east = {}, north = {};  // where the last leg ends, from the start
    Length perimeter = {};
    Length gap() const { return distance({}, {east, north}); }
};
Closure closure(std::span<const Leg> legs);

// The start and the end of every leg as they come.
std::vector<PlanPoint> traverse(const PlanPoint& start, std::span<const Leg> legs);
// The corners of a loop that returns to `start`, one a leg, adjusted by the compass rule.
// Errors: BadArgument "legs" for fewer than 3, or without length.
std::vector<PlanPoint> compassRule(const PlanPoint& start, std::span<const Leg> legs);

// Area inside corners in order, either way round.
Area enclosed(std::span<const PlanPoint> corners);

}  // namespace trenchbook
