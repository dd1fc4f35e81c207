// What the ground is made of: runoff coefficients, curve numbers, and roughness for water that runs over it.
//
//     runoffCoefficient("roof", RangePart::Mid);       // 0.85
//     curveNumber("lawn, good", "B");                 // 61
//     sheetRoughness("dense grass");               // 0.24
//
// Published tables, each row with its source. Rows are found by their name, by one of their other words, or
// by any words that fit one row only; case, punctuation, order and plurals do not matter.
//
// Errors: BadArgument for a name that no row or several rows fit, naming those that come near.
#pragma once

#include <array>
#include <span>
#include <string_view>

#include "trenchbook/core/units.h"

namespace trenchbook {

struct RunoffSurface {
    const char* name;
    const char* also;  // other words for it, between bars
    double low;
    double high;
    const char* source;
};
std::span<const RunoffSurface> runoffSurfaces();

// Runoff coefficient of the rational method: the published range's low or high end, or its middle. For storms
// up to some 10 years; rarer ones run off more (the tables' own note). Errors: "surface".
enum class RangePart { Low, Mid, High };
double runoffCoefficient(std::string_view surface, RangePart part = RangePart::Mid);
// "low", "mid", "high". Errors: "which".
RangePart rangePart(std::string_view name);

struct GroundCover {
    const char* name;
    const char* also;
    std::array<double, 4> curveNumbers;  // hydrologic soil groups A, B, C, D
    const char* source;
};
std::span<const GroundCover> groundCovers();

// NRCS curve number of a cover on a hydrologic soil group (A drains best, D worst), average moisture, Ia =
// 0.2 S. Errors: "cover", "soil group".
double curveNumber(std::string_view cover, std::string_view soilGroup);

struct SheetSurface {
    const char* name;
    const char* also;
    double roughness;  // n for very shallow sheet flow; several times the channel's n for the same cover
    const char* source;
};
std::span<const SheetSurface> sheetSurfaces();
// Errors: "roughness".
double sheetRoughness(std::string_view surface);

struct ShallowSurface {
    const char* name;
    const char* also;
    Velocity atUnitSlope;  // V / sqrt(slope)
    const char* source;
};
std::span<const ShallowSurface> shallowSurfaces();
// Errors: "surface".
const ShallowSurface& shallowSurface(std::string_view surface);

}  // namespace trenchbook
