#include "trenchbook/ground/flotation.h"

#include <algorithm>
#include <numbers>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

const BulkDensity drownedConcrete = concreteDensity - waterDensity;

void requireSoil(BulkDensity soil) {
    if (!(soil > waterDensity) || soil > BulkDensity::poundsPerCubicFoot(200))
        throw Error(Error::Kind::BadArgument, "soil weight",
                    plain(soil.poundsPerCubicFoot(), 1) + " lb/cu ft",
                    {"the soil with its water: above 62.4 and at most 200 lb/cu ft (1000 to 3204 kg/m³)",
                     "la tierra con su agua: más de 62.4 y como máximo 200 lb/cu ft (1000 a 3204 kg/m³)"});
}

void requireThing(const Buried& thing) {
    requirePositive(thing.outside, "outside");
    requireNotNegative(thing.weight, "weight");
    requireNotNegative(thing.concrete, "concrete");
    requireNotNegative(thing.soil, "soil");
    requireSoil(thing.soilDensity);
}

Weight holding(const Buried& thing) {
    return thing.weight + thing.concrete * drownedConcrete + thing.soil * (thing.soilDensity - waterDensity);
}

Weight missing(const Buried& thing, double factor) {
    requireThing(thing);
    requirePositive(factor, "factor");
    return std::max(Weight{}, upliftOn(thing.outside) * factor - holding(thing));
}

Area circle(Length diameter) { return diameter * diameter * (std::numbers::pi / 4); }

// Soil beside the upper half of a pipe, up to the level of its top.
Area besideCrown(Length outside) { return outside * outside * 0.5 - circle(outside) * 0.5; }

void requirePipe(Length outside, WeightPerLength weight, BulkDensity soil) {
    requirePositive(outside, "outside");
    requireNotNegative(weight, "pipe weight");
    requireSoil(soil);
}

}  // namespace

Weight upliftOn(Volume outside) {
    requirePositive(outside, "outside");
    return outside * waterDensity;
}

double flotationFactor(const Buried& thing) {
    requireThing(thing);
    return holding(thing) / upliftOn(thing.outside);
}

Volume concreteNeeded(const Buried& thing, double factor) { return missing(thing, factor) / drownedConcrete; }

Volume soilNeeded(const Buried& thing, double factor) {
    return missing(thing, factor) / (thing.soilDensity - waterDensity);
}

Area basinArea(Length length, Length width) {
    requirePositive(length, "length");
    requireNotNegative(width, "width");
    return width == Length{} ? circle(length) : length * width;
}

Volume basinVolume(Length length, Length width, Length depth) {
    const Area area = basinArea(length, width);
    requirePositive(depth, "depth");
    return area * depth;
}

Collar collarAround(Length length, Length width, Length depth, Length collar, Length thickness) {
    const Area inside = basinArea(length, width);
    requirePositive(depth, "depth");
    requireNotNegative(collar, "collar");
    requireNotNegative(thickness, "collar thickness");
    if (thickness > depth)
        throw Error(Error::Kind::BadArgument, "collar thickness", plain(thickness.inches(), 2) + " in",
                    {"at most the depth of " + plain(depth.inches(), 2) + " in (" +
                         plain(depth.millimetres(), 0) + " mm)",
                     "como máximo la profundidad de " + plain(depth.inches(), 2) + " in (" +
                         plain(depth.millimetres(), 0) + " mm)"});
    const Area ring = basinArea(length + collar * 2, width == Length{} ? width : width + collar * 2) - inside;
    return {.concrete = ring * thickness, .soil = ring * (depth - thickness)};
}

double pipeFlotationFactor(Length outside, Length cover, WeightPerLength weight, BulkDensity soil) {
    requirePipe(outside, weight, soil);
    requireNotNegative(cover, "cover");
    const Length run = Length::metres(1);
    return flotationFactor({.outside = circle(outside) * run,
                            .weight = weight * run,
                            .soil = (outside * cover + besideCrown(outside)) * run,
                            .soilDensity = soil});
}

Length coverAgainstFloating(Length outside, double factor, WeightPerLength weight, BulkDensity soil) {
    requirePipe(outside, weight, soil);
    const Length run = Length::metres(1);
    const Volume needed =
        soilNeeded({.outside = circle(outside) * run, .weight = weight * run, .soilDensity = soil}, factor);
    return std::max(Length{}, (needed / run - besideCrown(outside)) / outside);
}

}  // namespace trenchbook
