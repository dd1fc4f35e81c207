// Open trapezoids and triangles: the swale that the line empties into.
//
//     Swale swale{.bottom = Length::feet(2), .sideSlope = 3};
//     swaleDepth(swale, Flow::cfs(1), Slope::percent(1), 0.035).feet();    // 0.244
//
// Side slope is run over rise, the same on both sides: 3 is 3 across to 1 up; 0 is a box. Area = y (b + z y),
// wetted perimeter = b + 2 y sqrt(1 + z2) (plain geometry). Manning as in manning.h; the roughness of grass
// depends on its height and the depth of water, so it is always given. Newton's method in the logarithm of
// the depth, in which the capacity is nearly a straight line: 1e-12 relative.
//
// Errors: BadArgument "bottom" below 0, "side slope" below 0 or both 0; "depth", "slope", "roughness",
// "flow".
#pragma once

#include "trenchbook/core/units.h"

namespace trenchbook {

struct Swale {
    Length bottom;         // 0 for a triangle
    double sideSlope = 0;  // run over rise
};

Area swaleArea(const Swale& swale, Length depth);
Length swaleSurfaceWidth(const Swale& swale, Length depth);
Length swaleWettedPerimeter(const Swale& swale, Length depth);
// Momentum function Q2/(g A) + A z, as for a pipe.
Volume swaleMomentum(const Swale& swale, Length depth, Flow flow);

Flow swaleCapacity(const Swale& swale, Length depth, Slope slope, double roughness);
Length swaleDepth(const Swale& swale, Flow flow, Slope slope, double roughness);
Velocity swaleVelocity(const Swale& swale, Flow flow, Slope slope, double roughness);
// Q2 T = g A3: a swale that runs shallower than this shoots.
Length swaleCriticalDepth(const Swale& swale, Flow flow);

}  // namespace trenchbook
