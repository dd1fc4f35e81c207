// What an argument or an answer is: a number in one of the engine's units, or words, a table, a pipe.
//
//     info(Measure::Inches).metric.en    // "mm"
#pragma once

#include "trenchbook/core/unit.h"

namespace trenchbook::addin {

enum class Measure {
    Plain,    // a number without unit
    Words,    // text
    Table,    // a range with a layout of its own
    Pipe,     // stock name, or a bare bore in inches (mm)
    Slope,    // fraction, or the trade's text
    Share,    // 0 to 1
    Degrees,  // angle
    Minutes,
    Hours,
    Years,
    Dollars,
    Feet,    // ft, m: lengths, levels, drops, depths; typed as a number or a tape reading
    Inches,  // in, mm: bores, cover, rain
    SquareFeet,
    CubicFeet,
    CubicYards,
    Gallons,
    Gpm,
    InchesPerHour,
    FeetPerSecond,
    FeetPerDay,
    PoundsPerSquareFoot,
    Fahrenheit,
    ShortTons,
    TonsPerYard,
    Pounds,
    PoundsPerFoot,
    PoundsPerCubicFoot,
    DollarsPerFoot,
    ByKey,  // a value whose unit another column names
};

// How it is asked for, and its size in SI; measures without a unit have 1.
const UnitInfo& info(Measure measure);
bool hasUnit(Measure measure);  // differs between US and metric

// A number in the unit of this measure as SI, and back. Degrees Fahrenheit become degrees Celsius.
double siOf(Measure measure, double number, UnitSystem units = UnitSystem::US);
double inUnit(Measure measure, UnitSystem units, double si);

}  // namespace trenchbook::addin
