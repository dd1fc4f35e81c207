// Soil and rock by volume and weight: bank (in place), loose (dug), and bulk goods by the ton.
//
//     trenchVolume(Length::feet(54), Length::feet(1), Length::feet(1), Length::feet(2)).cubicYards();   // 3
//     looseVolume(Volume::cubicYards(10), 0.3).cubicYards();                                            // 13
//
// All are exact arithmetic. Average end areas are the earthwork rule of highway and sewer estimating
// (route-survey texts, from memory); with one width the end areas are width times cut, and the rule is exact
// for an even bottom.
#pragma once

#include "trenchbook/core/units.h"

namespace trenchbook {

// Bank volume between two cross-sections: length * (area up + area down) / 2.
// With upright walls the areas are width * cut. A cut of 0 is allowed, where the trench runs out to daylight.
// Errors: BadArgument "length", "width", "cut up", "cut down".
Volume trenchVolume(Length length, Length width, Length cutUp, Length cutDown);

// Dug soil takes more room: bank * (1 + swell). Swell 0 to 1; common earth 0.25 (docs/methods/ground.md).
// Errors: BadArgument "bank", "swell".
Volume looseVolume(Volume bank, double swell);

// Weight to order: volume * density * (1 + waste). Density is the product's own, from the supplier: clean
// crushed stone lies between 1.2 and 1.6 short tons per cubic yard. Errors: BadArgument "rock", "density",
// "waste".
Weight bulkWeight(Volume volume, BulkDensity density, double waste = 0);

}  // namespace trenchbook
