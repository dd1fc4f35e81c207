// Where two tapes from known points meet.
//
//     const TwoPlaces places = twoTies({}, Length::feet(30), {Length::feet(40), {}}, Length::feet(30));
//     places.left.north.feet();     // 22.36: to the left, looking from the first point to the second
//     places.right.north.feet();    // -22.36
//
// Two circles meet in two places, mirrored across the line between the points: which one it is says another
// tape, a turn, or who was there. Flat angles between the tapes are poor: below 30 degrees an inch on a tape
// moves the place by two inches or more.
#pragma once

#include "trenchbook/layout/plan_point.h"

namespace trenchbook {

struct TwoPlaces {
    PlanPoint left, right;
    // By how much the tapes are too short to meet, or one of them too long; 0 where they meet. Both places
    // are then the one that misses both tapes alike.
    Length gap = {};
};

// Errors: BadArgument "first tie" or "second tie" for a tape that is not above 0, "second point" where both
// are one.
TwoPlaces twoTies(const PlanPoint& first, Length toFirst, const PlanPoint& second, Length toSecond);

}  // namespace trenchbook
