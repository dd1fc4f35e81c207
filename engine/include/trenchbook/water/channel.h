// A trench drain: a rectangular channel that takes in water all along its length and lets it out at one end.
//
//     const TrenchDrain drain{.width = Length::inches(4), .length = Length::feet(20)};
//     deepestInDrain(drain, Flow::gpm(60)).inches();
//     trenchCapacity(drain, Length::inches(4)).gpm();
//
// Spatially varied flow, Q = q x, the water entering at right angles without momentum along the channel:
//     dy/dx = (S0 - Sf - 2 Q q / (g A^2)) / (1 - F^2),  Sf by Manning
// (Hinds 1926; Chow, Open-Channel Hydraulics, 1959, chapter 12, from memory). Integrated upstream from the
// outlet: from critical depth when it is free, from the water standing there when that is higher. On a steep
// channel the control moves inside, to the point where the flow passes through critical depth on its own; the
// water above it is integrated upstream from there, the shooting water below it downstream to the outlet or
// to the jump.
//
// Accuracy of the integration about 1e-8 of the depth (1e-5 in a long thin sheet of shooting water); level
// and frictionless it is the closed form, head depth sqrt(yL^2 + 2 yc^3/yL), sqrt(3) yc when free. Waves and
// air are not in it: keep a freeboard. Where shooting water jumps back to calm the jump's own length is left
// out.
//
// Errors: BadArgument "width", "length", "slope" (below 0 or 1 and more), "roughness", "flow", "depth",
// "freeboard", "water depth at the outlet" (its own sentence when it leaves no room in the channel).
#pragma once

#include <vector>

#include "trenchbook/core/units.h"

namespace trenchbook {

struct TrenchDrain {
    Length width;
    Length length;
    Slope slope = {};          // of the floor, toward the outlet; 0 is level
    double roughness = 0.010;  // Manning n
};

struct TrenchWater {
    Length deepest;              // anywhere along the channel
    std::vector<Length> depths;  // at equal steps from the head (first) to the outlet (last)
    bool controlInside = false;  // the flow passes through critical depth above the outlet
};

// Depths at `steps` equal steps. `outletDepth` is the water standing at the outlet, over the floor; 0 (or
// less than critical depth) means a free outlet.
TrenchWater trenchWater(const TrenchDrain& drain, Flow flow, Length outletDepth = {}, int steps = 20);

// The deepest water along the channel.
Length deepestInDrain(const TrenchDrain& drain, Flow flow, Length outletDepth = {});

// The flow, taken in evenly along the channel, at which the deepest water is `freeboard` below the rim of a
// channel `depth` deep: deepestInDrain solved for the flow.
Flow trenchCapacity(const TrenchDrain& drain, Length depth, Length freeboard = {}, Length outletDepth = {});

}  // namespace trenchbook
