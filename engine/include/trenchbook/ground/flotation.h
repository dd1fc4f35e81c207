// Will it float? An empty basin, tank or pipe in flooded ground: what pushes it up against what holds it
// down.
//
//     const Buried basin{.outside = basinVolume(Length::inches(18), Length{}, Length::inches(30)),
//                        .weight = Weight::pounds(40)};
//     flotationFactor(basin);                                  // 0.145: it floats
//     concreteNeeded(basin, 1.5).cubicFeet();                  // 4.27 of concrete cast to it
//
// Uplift is the weight of the water that the empty thing displaces. Against it stand its own weight and, by
// what they weigh under water, concrete cast to it and the soil that must be lifted along: straight up over
// the thing and over a collar around its base. Friction of the soil on the walls is left out, so the answer
// is the careful one; sheets of the precast pipe trade (American Concrete Pipe Association, Design Data 41)
// count some of it. Water stands at the ground unless said otherwise. Asked of a factor: 1.5 (Burnett
// County, Wisconsin, tank anchoring form), 2.0 (Design Data 41).
#pragma once

#include "trenchbook/core/units.h"

namespace trenchbook {

inline constexpr BulkDensity waterDensity = BulkDensity::kilogramsPerCubicMetre(1000);
inline constexpr BulkDensity concreteDensity = BulkDensity::poundsPerCubicFoot(150);  // Design Data 41
// Soaked topsoil, the lightest soaked soil of a pipe maker's buoyancy page; with its water, in air.
inline constexpr BulkDensity soakedSoil = BulkDensity::poundsPerCubicFoot(115);

struct Buried {
    Volume outside;  // of the thing, as far as water stands around it
    Weight weight;   // its own, empty
    Volume concrete = {};
    Volume soil = {};  // lifted along
    BulkDensity soilDensity = soakedSoil;
};

// What pushes up. Errors: BadArgument "outside" not above 0.
Weight upliftOn(Volume outside);
// What holds down over what pushes up; below 1 it floats. Errors: BadArgument "outside", "weight",
// "concrete", "soil"; "soil weight" not above that of water.
double flotationFactor(const Buried& thing);
// What must be cast to it, or lie over it, besides what does already, to reach a factor; 0 where nothing is
// missing.
Volume concreteNeeded(const Buried& thing, double factor);
Volume soilNeeded(const Buried& thing, double factor);

// Round (width 0) or rectangular, outside dimensions. Errors: BadArgument "length", "width", "depth".
Area basinArea(Length length, Length width);
Volume basinVolume(Length length, Length width, Length depth);

// A slab that stands out around the base: its concrete, and the soil over it up to the ground.
struct Collar {
    Volume concrete, soil;
};
// Errors: BadArgument "collar", "collar thickness" below 0; more than the depth.
Collar collarAround(Length length, Length width, Length depth, Length collar, Length thickness);

// An empty pipe under `cover` over its top, per length, with the soil straight over it. Errors: BadArgument
// "outside", "cover", "pipe weight", "soil weight".
double pipeFlotationFactor(Length outside, Length cover, WeightPerLength weight = {},
                           BulkDensity soil = soakedSoil);
// The least cover for a factor; 0 where the pipe's own weight and the soil beside its crown are enough.
// Errors: also "factor" not above 0.
Length coverAgainstFloating(Length outside, double factor, WeightPerLength weight = {},
                            BulkDensity soil = soakedSoil);

}  // namespace trenchbook
