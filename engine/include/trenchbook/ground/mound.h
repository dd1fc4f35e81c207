// How far the water table rises under a pit: a second opinion where it is shallow.
//
//     moundRise({.length = Length::feet(20), .width = Length::feet(6), .rate = SoilRate::inchesPerHour(0.5),
//                .time = Duration::hours(48), .conductivity = Velocity::feetPerDay(10), .specificYield = 0.2,
//                .saturatedThickness = Length::feet(10)})
//         .feet();
//
// The highest rise, under the middle of a rectangle that recharges evenly (M. S. Hantush, 1967, Growth and
// decay of groundwater mounds in response to uniform percolation, Water Resources Research 3):
//     h^2 - hi^2 = (2 w / K) v t S*(l / sqrt(4 v t), a / sqrt(4 v t)),   v = K b / Sy,  b = (hi + h) / 2
// with half-length l, half-width a, and S* an integral of two error functions. b depends on the answer; the
// equation is solved for it. Assumes a level, wide aquifer of one kind of soil.
//
// Accuracy: the equation to 1e-10, S* to 1e-13; the theory is meant for a rise of up to half the saturated thickness.
#pragma once

#include "trenchbook/core/units.h"

namespace trenchbook {

struct Mound {
    Length length, width;       // of the pit's bottom
    SoilRate rate;              // recharge per area of the bottom
    Duration time;              // that it goes on
    Velocity conductivity;      // of the aquifer, sideways
    double specificYield = 0;   // share of the soil that water can fill or leave
    Length saturatedThickness;  // water-bearing soil under the water table, before
};

// Errors: BadArgument "length", "width", "rate", "hours", "conductivity", "specific yield", "saturated
// thickness".
Length moundRise(const Mound& mound);

// Hantush's S*: the integral over t from 0 to 1 of erf(alpha / sqrt t) erf(beta / sqrt t). Both above 0.
double hantushIntegral(double alpha, double beta);

}  // namespace trenchbook
