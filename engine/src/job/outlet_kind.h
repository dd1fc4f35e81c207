// What is asked about the end of a line, by what stands there and by what Job says about where the water goes.
//
//     const Job job;
//     asked(job, nodeKinds("ditch")).foundation      // of a swale on the owner's ground
//
// Water that comes out on the ground keeps away from the lot line, walks and walls. A gutter, an existing pipe and a pump
// take it off the ground. A ditch is asked by whose it is: what a county asks beyond that is its own. A distance that is
// given is judged whatever the kind.
#pragma once

#include "trenchbook/job/job.h"

#pragma GCC visibility push(hidden)
namespace trenchbook {

struct OutletAsked {
    bool flowLine = false;     // how high the pipe ends over the bottom of what it ends in
    bool lotLine = false;      // water runs on over own ground
    bool walk = false;         // water may reach a walk
    bool foundation = false;   // water comes out on ground beside buildings
    bool groundFalls = false;  // water wells up and must find its way off
};
OutletAsked asked(const Job& job, const NodeKinds& kinds);

}  // namespace trenchbook
#pragma GCC visibility pop
