// Level-pool routing: any inflow through any storage and outflow, both read from the water's depth.
//
//     std::vector<PoolInflow> in = {{Duration(), Flow()}, {Duration::minutes(1), Flow::gpm(20)}};
//     std::vector<PoolRating> table = {{}, {Length::feet(1), Volume::cubicFeet(40), Flow::gpm(30)}};
//     routePool(in, table)[1].outflow.gpm();    // 0.94
//
// Storage indication: over a step dt
//     S2/dt + O2/2 = S1/dt - O1/2 + (I1 + I2)/2
// with storage and outflow linear between the rows of the table. The pool starts at the table's first row. Source:
// FHWA HDS-2, section 8.4 and example 8.11 (and its culvert example 7.2), reproduced row by row in the tests.
//
// Accuracy: exact for the trapezoidal step of the method; the step must be short against the time in which
// the inflow changes.
#pragma once

#include <span>
#include <vector>

#include "trenchbook/core/units.h"

namespace trenchbook {

struct PoolInflow {
    Duration at;
    Flow flow;
};
struct PoolRating {
    Length depth;
    Volume storage;
    Flow outflow;
};
using PoolStep = PoolRating;  // the state at one moment

// One state for each moment of the inflow; steps may differ in length.
// Errors: BadArgument "minute" (not rising), "inflow" (below 0), "depth" (fewer than two rows, not rising),
// "storage" (falling, below 0), "outflow" (falling, below 0); OutsideValidity "storage" when the pool rises
// above or falls below the table, or a step is too long for the method, with the minute.
std::vector<PoolStep> routePool(std::span<const PoolInflow> inflow, std::span<const PoolRating> table);

}  // namespace trenchbook
