// Which distances an outlet is asked for, by what stands in Outlet on Job.
//
//     outletKind("own swale").asksLotLine    // true
//
// Water that is let out on the owner's ground must keep away from the lot line, the walk and the walls. A curb, a public
// inlet and a rock pit take it below ground or on the street (a pit keeps distances of its own, pit.setback.*). What a
// county asks beyond that is its own; a distance that is given is judged whatever the kind.
#pragma once

#include <string_view>

#include "trenchbook/core/text.h"

#pragma GCC visibility push(hidden)
namespace trenchbook {

struct OutletKind {
    Text name;            // as on Job
    bool asksFlowLine;    // it can silt shut: height over the receiver's flow line
    bool asksLotLine;     // water runs on over own ground
    bool asksWalk;        // water may reach a public walk
    bool asksFoundation;  // water is let out on ground beside buildings
};
// A kind that is not known, and none, ask nothing.
const OutletKind& outletKind(std::string_view outlet);

}  // namespace trenchbook
#pragma GCC visibility pop
