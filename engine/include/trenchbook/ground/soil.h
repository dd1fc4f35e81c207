// The rate at which soil takes water, from a soak hole: the drop of the water with the side walls taken out.
//
//     SoakTest test{Length::inches(1.5), Duration::minutes(10), Length::inches(8), Length::inches(47.75)};
//     soakRate(test).inchesPerHour();      // 0.3673, as tested
//     designRate(test).inchesPerHour();    // 0.1837, with the safety factor 2
//
// Water leaves a hole through its bottom and its wetted wall, so the bare drop is many times the rate of the
// soil. The inverse borehole (Porchet) form with the mean depth spreads the water lost over both:
//
//     rate = drop * r / (time * (r + 2 * mean depth)),  mean depth = start depth + gravel - drop / 2
//
// Depths count from the bottom of the hole; gravel under the mark is added.
//
// Accuracy: against the exact (logarithmic) falling head it reads low, on the safe side: by under 1 % where a
// quarter of the water has gone, 3 % at a half, 17 % where the hole runs dry.
//
// Source: Porchet's method as county handbooks of low-impact development print it (from memory); checked
// against a consultant's reductions, see docs/methods/ground.md.
#pragma once

#include "trenchbook/core/units.h"

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
