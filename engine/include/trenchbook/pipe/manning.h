// Manning's formula for round pipes: uniform flow at any fill, and every unknown solved for.
//
//     Length bore = Length::inches(3.975);
//     capacity(bore, Slope::percent(1), 0.011).gpm();                     // 99.3 running full
//     normalFill(bore, Slope::percent(1), Flow::gpm(50), 0.011);          // 0.502
//
// Q = A R^(2/3) S^(1/2) / n in SI, where the constant is exactly 1 (Manning 1891; Chow, Open-Channel
// Hydraulics, 1959, chapter 5, from memory). n is the same at every depth. US books that write 1.49 or 1.486
// for 1.48592 differ by 0.27 % or 0.006 %.
//
// Ranges: bore and n above 0; slope above 0 and below 1; fill above 0 and at most 1. The most that uniform flow carries is 1.0757
// times the full-pipe capacity at 0.938 of the bore; normal depths are found below that peak, where they are
// unique. Accuracy: 1e-12 relative down to a trickle. Towards the peak the depth becomes as sensitive as the
// square root: there the flow of the depth returned is right to 1e-12.
#pragma once

#include <optional>

#include "trenchbook/core/units.h"

namespace trenchbook {

// depth / bore of the greatest uniform flow, and that flow over the full-pipe capacity.
inline constexpr double peakFill = 0.9381812161206071;
inline constexpr double peakShare = 1.0757061294004648;

// Flow at fill = depth / bore. Errors: BadArgument "pipe", "slope", "roughness", "fill".
Flow capacity(Length bore, Slope slope, double roughness, double fill = 1);
Velocity fullVelocity(Length bore, Slope slope, double roughness);
// Velocity of uniform flow at this fill. Errors: as capacity.
Velocity velocityAtFill(Length bore, Slope slope, double roughness, double fill);
// The bore that carries this flow at this fill; the next stock size up is for the caller. Errors: BadArgument
// "flow", "slope", "roughness", "fill".
Length boreNeeded(Flow flow, Slope slope, double roughness, double fill = 1);

// The slope that carries this flow at this fill; with fill 1 the friction slope of a full pipe.
Slope slopeNeeded(Length bore, Flow flow, double roughness, double fill = 1);
// The slope at which a full pipe runs with this velocity.
Slope selfCleaningSlope(Length bore, Velocity velocity, double roughness);
// The friction slope at a depth that need not be the normal one; above the crown the pipe is full.
Slope frictionSlope(Length bore, Length depth, Flow flow, double roughness);

// depth / bore of uniform flow, 0 to peakFill. Errors: NoSolution "flow" when it exceeds the peak.
double normalFill(Length bore, Slope slope, Flow flow, double roughness);
Length normalDepth(Length bore, Slope slope, Flow flow, double roughness);
// The same without exceptions for the cases that have none: slope not above 0, flow above the peak.
std::optional<Length> findNormalDepth(Length bore, Slope slope, Flow flow, double roughness);

// Velocity at normal depth; flow over the full area when there is more than the peak.
Velocity uniformVelocity(Length bore, Slope slope, Flow flow, double roughness);

// Mean shear on the wetted wall, unit weight of water (9806.65 N/m3) x R x S at normal depth; when the pipe
// runs full under pressure, with the friction slope that the flow needs.
Shear wallShear(Length bore, Slope slope, Flow flow, double roughness);

}  // namespace trenchbook
