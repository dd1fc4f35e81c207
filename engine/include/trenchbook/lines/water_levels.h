// Where the water stands: levels along one pipe, and along whole lines from each outlet uphill.
//
//     PipeReach reach{.length = Length::feet(60), .bore = Length::inches(3.975), .flow = Flow::gpm(50)};
//     reachWater(reach, Length::feet(98.2));     // bubbling tee 98.2 ft: level at both ends, share that runs full
//
// Levels are those of the water surface, or of the pressure line where the pipe runs full. In each reach:
//   mild (normal depth above critical), level, adverse or overloaded: walked upstream from the water below,
//   or from
//       the critical depth where that lies lower (gradually varied flow, gradual_flow.h)
//   steep: holds normal depth, unless the water below has more momentum than the reach brings: then a jump
//   moves up
//       the pipe to where both are equal (momentum functions Q2/gA + Az), or drowns it altogether
//   full: loses Manning friction, and at its upper end K V2/2g, once for all that K stands for
// Free outfall: the lesser of normal and critical depth. Drops end the influence of the water below. A jump
// that the water from above pushes down into a mild reach is not followed: the level told there is the higher
// one. In part-full flow fittings lose nothing here. At a grate the level that counts is the energy level at
// the run's upper end plus the entry loss: level + (1 + K) V2/2g.
//
// At a node the water level of the run that leaves it is the level below for all runs that enter: with K of
// the run that leaves taken as the pressure loss of the node (Mays, Stormwater Collection Systems Design
// Handbook, 2001, as in tests/reference/06a), or as 1 + entry loss where a box stills the water. Accuracy:
// walks 1e-10 of the length; the limits of one-dimensional flow and of n are wider by far.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "trenchbook/core/units.h"
#include "trenchbook/lines/network.h"

namespace trenchbook {

// One pipe under water: where it lies and what it carries.
struct PipeReach {
    Length length;  // above 0
    Length bore;    // above 0
    double roughness = 0.011;
    Flow flow;  // 0 or more; without flow the water stands level
    Length invertUp, invertDown;
    double lossK = 0;  // 0 or more; lost when the upper end runs full
};

enum class WaterState {
    Free,         // open surface over its whole length
    DropsIn,      // the water below stands under its invert
    PartDrowned,  // full over part of its length, or steep with the jump of the water below inside
    Full,         // under pressure over its whole length
};

struct ReachWater {
    Length levelUp, levelDown;
    double fullShare = 0;  // of the length
    WaterState state = WaterState::Free;
};

// `levelBelow`: of the water that the lower end meets; none for a free outfall.
// Errors: BadArgument "length", "pipe", "roughness", "flow", "K".
ReachWater reachWater(const PipeReach& reach, std::optional<Length> levelBelow);

// What earlier passes found about a run, that its water depends on.
struct Carried {
    std::optional<Flow> flow = {};
    std::optional<Length> invertUp = {}, invertDown = {};
    std::optional<Length> levelBelow = {};  // of the water that an outlet run ends in; none: free outfall
    double lossK = 0;
    Text belowUnknown = {};  // why the level below is not known; empty when it is
};

// One answer a row; a row that cannot be computed spoils those upstream of it. Cells of the columns Length, Pipe,
// Flow, Invert up, Invert down, Outlet water, K and Roughness that cannot be used are told.
// Errors: BadArgument "length" where the number of rows differs.
std::vector<Worked<ReachWater>> lineWater(const Network& lines, std::span<const Run> runs,
                                          std::span<const Carried> carried);

// "free", "part drowned", "full", "free drop".
const Text& stateText(WaterState state);

}  // namespace trenchbook
