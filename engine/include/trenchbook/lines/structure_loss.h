// Energy that water loses in a box where pipes meet, by turn, plunge and floor: FHWA access hole method.
//
//     const StructureOutlet out = structureOutlet(Length::inches(6), Flow::gpm(200), Length::inches(7));
//     const StructureInflow in[] = {{.flow = Flow::gpm(200), .turn = Angle::degrees(90)}};
//     structureEnergy(out, in).energy.feet();                  // over the outlet pipe's invert: 0.730
//
// FHWA HEC-22, 3rd edition (2009), 7.1.6.7 (4th edition, 9.1.6.7). The outlet pipe's energy Ei is known; the
// box stands at first at the largest of
//     outlet control     Ei + 0.2 V^2/2g              not where the outlet pipe shoots
//     inlet, drowned     D DI^2                       DI = Q / (A (g D)^0.5)
//     inlet, free        1.6 D DI^0.67
// and of what this lies over Ei, the additional losses take their share:
//     (C floor + C turn + C plunge) (Eai - Ei)        not below 0
//     C turn = 4.5 (Qj/Q) cos(w/2)      w the flow-weighted angle of the inflows, 180 degrees straight on
//     C plunge = sum of Qk hk / Q       hk = (drop - Eai) / D, the drop counted up to 10 D
// An inflow plunges where its invert lies over Eai; the others turn. The energy in the box is never below
// Ei. An inflowing pipe that does not plunge starts from the box's energy + 0.4 V^2/2g (structureExitK).
//
// Range: fitted in the laboratory for DI up to 1.6 (free inlet up to 0.5), single boxes wide enough for their
// pipes. Fittings without a box: pipe/fittings.h and pipe/transition.h.
#pragma once

#include <span>
#include <string_view>

#include "trenchbook/core/units.h"

namespace trenchbook {

// Of what an inflowing pipe loses at its exit into the box, K V^2/2g.
inline constexpr double structureExitK = 0.4;

struct StructureOutlet {
    Length bore;
    Flow flow;            // all that leaves the box
    Length energy;        // Ei: depth + pressure + velocity head at the pipe's upper end, over its invert
    Length velocityHead;  // there
    bool shooting = false;
};
// From the water at the outlet pipe's upper end, over its invert; above the crown it is the pressure line.
// Errors: BadArgument "pipe", "flow", "water" (all above 0).
StructureOutlet structureOutlet(Length bore, Flow flow, Length water);

struct StructureInflow {
    Flow flow = {};
    Angle turn = {};   // from the outlet pipe's direction: 0 straight on, 90 a right angle
    Length drop = {};  // its invert (or the grate that water falls in by) over the outlet pipe's invert
};

enum class StructureFloor {
    Flat,
    Depressed,  // a sump under the outlet pipe
    HalfBench,  // a channel up to half the pipe
    FullBench,
    Improved,
};
// "flat", "depressed", "half bench", "full bench", "improved", or Spanish. Errors: BadArgument "floor".
StructureFloor structureFloor(std::string_view name);

struct StructureEnergy {
    double dischargeIntensity = 0;
    Length outletControl, drowned, free;  // the three first guesses
    Length initial;                       // Eai, the largest of them
    double floor = 0, turn = 0, plunge = 0;
    Length additional;
    Length energy;  // Ea, over the outlet pipe's invert: where the water stands in the box
    Length loss;    // energy - Ei
};
// Without inflows all of the flow comes straight on. Errors: BadArgument "inflows" (below 0, or together
// more than the outlet's), "turns" (outside 0 to 180 degrees), "drops" (below 0).
StructureEnergy structureEnergy(const StructureOutlet& outlet, std::span<const StructureInflow> inflows,
                                StructureFloor floor = StructureFloor::Flat);

}  // namespace trenchbook
