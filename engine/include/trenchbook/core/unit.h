// The units that people type and read, in both systems: how each is written, and its size in SI.
//
//     const UnitInfo& inches = info(Unit::Inches);
//     inches.written(UnitSystem::Metric).en;     // "mm"
//     4 * inches.si(UnitSystem::US);             // 0.1016 m
//
// A unit is named for what the US system uses; the metric system has its own in the same row. Factors are exact, as
// in units.h. Days and years are counts of the calendar, and stay counts (factor 1).
#pragma once

#include "trenchbook/core/text.h"

namespace trenchbook {

enum class UnitSystem { US, Metric };

enum class Unit {
    Number,   // no unit
    Share,    // 0 to 1
    YesNo,    // 1 or 0
    Slope,    // fraction
    Degrees,  // angle
    Minutes,
    Hours,
    Days,
    Years,
    Dollars,
    Feet,    // m: lengths, levels, drops, depths
    Inches,  // mm: bores, cover, rain
    SquareFeet,
    CubicFeet,
    CubicYards,
    Gallons,  // L
    Gpm,      // L/s
    FeetPerSecond,
    FeetPerDay,
    InchesPerHour,
    MinutesPerInch,  // min/mm: percolation
    PoundsPerSquareFoot,
    Fahrenheit,  // Celsius; no factor between them: Temperature in units.h converts
    ShortTons,
    TonsPerYard,  // short tons a cubic yard, t/m3
    Pounds,
    PoundsPerFoot,
    PoundsPerCubicFoot,
    DollarsPerFoot,
};

struct UnitInfo {
    Text us, metric;  // how it is written; empty where there is no unit
    double siPerUs = 1, siPerMetric = 1;

    const Text& written(UnitSystem system) const { return system == UnitSystem::Metric ? metric : us; }
    double si(UnitSystem system) const { return system == UnitSystem::Metric ? siPerMetric : siPerUs; }
};
const UnitInfo& info(Unit unit);

}  // namespace trenchbook
