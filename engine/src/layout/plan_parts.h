// The two steps of placePoints().
#pragma once

#include "trenchbook/layout/plan_net.h"

#pragma GCC visibility push(hidden)
namespace trenchbook::layout {

// Gives each point a first place, or says why it has none.
void placeFirst(const PlanNet& net, PlacedPlan& plan);
// Moves the placed points until the misfits are least; residuals, slips and errors.
void adjust(const PlanNet& net, PlacedPlan& plan);

}  // namespace trenchbook::layout
#pragma GCC visibility pop
