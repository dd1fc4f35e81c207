// The rate at which soil takes water, from a soak hole: the drop of the water with the side walls taken out.
//
//     soakRate({.drop = Length::inches(1.5), .time = Duration::minutes(10), .holeDiameter =
//     Length::inches(8),
//               .startDepth = Length::inches(47.75)})
//         .inchesPerHour();                                  // 0.3673, before the safety factor
//
// Water leaves a hole through its bottom and its wetted wall, so the bare drop is many times the rate of the
// soil. The inverse borehole (Porchet) form with the mean depth spreads the water lost over both:
//     rate = drop * r / (time * (r + 2 * mean depth)),  mean depth = start depth + gravel - drop / 2
// Range: a drop of at most the start depth; depths count from the bottom of the hole, gravel under the mark
// is added. Accuracy: against the exact (logarithmic) falling head it reads low, on the safe side: by 1 %
// where a quarter of the water has gone, 3 % at a half, 17 % where a hole runs dry. Source: Porchet's method
// as county low-impact- development handbooks print it (from memory), checked in docs/methods/ground.md.
#pragma once

#include "trenchbook/units.h"

namespace trenchbook {

struct SoakTest {
    Length drop;    // fall of the water in the reading
    Duration time;  // that it took
    Length holeDiameter;
    Length startDepth;   // water over the mark at the start of the reading
    Length gravel = {};  // between the hole's bottom and the mark
};

// As tested. Errors: BadArgument "drop" (none, a rise, more than there was), "minutes", "hole diameter",
// "start depth", "gravel".
SoilRate soakRate(const SoakTest& test);

// For design: as tested, divided by a safety factor of 1 or more. Errors as above, and "safety".
SoilRate designRate(const SoakTest& test, double safety = 2);

}  // namespace trenchbook
