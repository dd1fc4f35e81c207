// A point of the lot in plan, and what a tape and a compass say between two of them.
//
//     PlanPoint corner{Length::feet(40), Length::feet(30)};
//     distance({}, corner).feet();                            // 50
//     azimuth({}, corner).degrees();                          // 53.13, clockwise from north
//     ahead({}, Angle::degrees(90), Length::feet(12)).east.feet();    // 12
//
// East and north are those of the drawing: north is up, whatever the compass says. All distances are level
// ones; a tape held along a slope of 5 % reads 1/8 % too much, which no tape on a lot can tell.
#pragma once

#include <compare>
#include <string_view>

#include "trenchbook/core/units.h"

namespace trenchbook {

struct PlanPoint {
    Length east = {}, north = {};

    bool operator==(const PlanPoint&) const = default;
};

Length distance(const PlanPoint& a, const PlanPoint& b);
// Direction from one point to another, clockwise from north, 0 to 360 degrees; 0 where both are the same.
Angle azimuth(const PlanPoint& from, const PlanPoint& to);
PlanPoint ahead(const PlanPoint& from, Angle azimuth, Length far);

// An azimuth from a plat's bearing: `S 68-05-35 W`, `N 19°46' W`, `N 45.922 E`, `north`, or degrees clockwise
// from north alone (`291.9`, `140-54-25`). Minutes and seconds below 60, a bearing at most 90 degrees from
// its pole. Errors: BadArgument "bearing".
Angle readBearing(std::string_view text);

}  // namespace trenchbook
