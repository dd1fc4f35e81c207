// Where a line bubbles over: the water that must stand over an upturned tee's or a riser's rim to push a
// flow out.
//
//     const Grate open = roundGrate(Length::inches(4), 1, 0);           // a 4 in riser without a grate
//     outletHead(open, Flow::cfs(0.25)).feet();                         // 0.354
//     const Grate tee = roundGrate(Length::inches(4), 0.5, 0.5);        // half-open grate, half blocked
//     outletHead(tee, Flow::gpm(60)).feet();                            // 1.62
//
// The opening is described as a grate is (water/inlets.h): its edge, and the clear area. FHWA HEC-22, 3rd
// edition, 8.4.4.2, riser pipe: the rim is a sharp-crested weir, Q = 3.33 P H^1.5 (ft and cfs), until the
// opening chokes it as an orifice, Q = 0.6 A (2 g H)^0.5; the smaller flow, thus the larger head, controls.
// With a grate, as HEC-22 4.4.5 treats grates in sags: the bars take away opening (area x open share) but no
// rim; what is blocked takes away both. Where water stands over the rim from outside, H2, the weir passes
// (1 - (H2/H)^1.5)^0.385 of its flow (HEC-22, 8.4.4.2, submerged weir), and the orifice works under H - H2.
//
// Range: HEC-22 gives 3.33 for a crest under 0.3 of its height; a rim that lies flush in flat ground acts
// rather as a broad crest (2.62), which asks for 17 % more head while it is a weir. Near the change from
// weir to orifice measurements scatter by some 20 %. A lid that must be lifted is not in it.
#pragma once

#include "trenchbook/core/units.h"
#include "trenchbook/water/inlets.h"

namespace trenchbook {

// Height of the line's water over the rim that this flow needs; not less than the water outside. 0 flow needs
// none more. Errors: BadArgument "flow", "water outside".
Length outletHead(const Grate& opening, Flow flow, Length waterOutside = {});

// The flow that comes out under this head over the rim; 0 when the water outside stands as high. Errors:
// BadArgument "head", "water outside" (above the head: water would come in).
Flow outletFlow(const Grate& opening, Length head, Length waterOutside = {});

}  // namespace trenchbook
