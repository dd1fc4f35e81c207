// Level distance between things on the lot: a node, a run, a pit, a house, a lot line.
//
//     const PlanShape house{.corners = {{}, {Length::feet(40), {}}, {Length::feet(40), Length::feet(30)}}, .filled = true};
//     const PlanShape node{.corners = {{Length::feet(20), Length::feet(-8)}}};
//     gap(house, node).feet();    // 8
//
// One corner is a point, two a line, three or more an outline that closes unless `open`. Within something
// filled, and where outlines cross, the distance is 0.
#pragma once

#include <vector>

#include "trenchbook/layout/plan_point.h"

namespace trenchbook {

struct PlanShape {
    std::vector<PlanPoint> corners = {};
    bool filled = false;  // its inside belongs to it
    bool open = false;    // the last corner is not joined to the first
};

// Errors: BadArgument "corners" for a shape without any.
Length gap(const PlanShape& a, const PlanShape& b);

// The point of a segment that is nearest to a shape, as a share of the way from `from` (0 to 1).
double nearestShare(const PlanPoint& from, const PlanPoint& to, const PlanShape& shape);

}  // namespace trenchbook
