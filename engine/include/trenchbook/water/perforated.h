// Drains that take water from the ground: openings of perforated pipe, the bore of an underdrain, a gravel trench.
//
//     holeFlow(Length::inches(0.25), Length::feet(1)).gpm();                                     // 0.74
//     const Perforations holes{.opening = Length::inches(0.5), .around = 3, .spacing = Length::inches(4)};
//     perforatedInflow(holes, Length::feet(40), Length::feet(1), 0.5).gpm();                     // 530
//     underdrainBore(Flow::cfs(0.1), Slope::percent(0.5), 0.011).inches();                       // 3.36
//     gravelFlow(Length::feet(1), Length::feet(1), Slope::percent(1), Velocity::feetPerDay(10000)).gpm();    // 0.52
//
// Openings: Q = Cd A sqrt(2 g h), the free opening under a head h outside the pipe; gravel or a sock before it takes less.
// Cd 0.6 gives the 11.79 d2 sqrt(h) gpm (d in inches, h in feet) of pressure-distribution tables (one filed in Orono,
// Minnesota); 0.61 in the Toronto region's wiki of low impact development, which counts half of the openings of an old
// pipe as clogged. What openings can take is no promise: the soil brings the water, and it may bring less.
// Underdrain: the bore that carries the flow full by Manning; NC State University, which prints D = 16 (Q n / s^0.5)^3/8,
// asks for 2 to 10 times the flow. Gravel: Darcy, Q = K A S, of even (laminar) flow; coarse clean gravel is past that,
// so the answer is then too much.
//
// Errors: BadArgument "hole", "slot width", "holes", "spacing", "length", "head", "coefficient", "blocked share"; "flow",
// "slope", "roughness"; "width", "depth", "conductivity".
#pragma once

#include "trenchbook/core/units.h"

namespace trenchbook {

struct Perforations {
    Length opening = {};    // diameter of a hole, or length of a slot
    Length slotWidth = {};  // 0 for round holes
    double around = 1;      // openings at each place of the pipe
    Length spacing = {};    // from place to place along the pipe
};
inline constexpr double openingCoefficient = 0.6;

// Of a round hole.
Flow holeFlow(Length diameter, Length head, double coefficient = openingCoefficient);
Area openArea(const Perforations& openings, Length pipe);
Flow perforatedInflow(const Perforations& openings, Length pipe, Length head, double blockedShare,
                      double coefficient = openingCoefficient);

Length underdrainBore(Flow flow, Slope slope, double roughness);

Flow gravelFlow(Length width, Length depth, Slope slope, Velocity conductivity);

}  // namespace trenchbook
