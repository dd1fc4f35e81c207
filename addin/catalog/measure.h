// The unit of each argument and answer, in US customary and in metric.
#pragma once

#include "trenchbook/core/text.h"
#include "trenchbook/core/units.h"

namespace trenchbook::addin {

enum class Units { US, Metric };

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
    DollarsPerFoot,
    ByKey,  // a value whose unit another column names
};

struct MeasureInfo {
    Text us;      // how the unit is written: "ft"
    Text metric;  // "m"
    double siPerUs;
    double siPerMetric;
};

// The unit's spelling and its size in SI. Measures without a unit have 1 and an empty or plain spelling.
// Fahrenheit (Celsius) is not a factor; temperature() in Arguments converts it.
const MeasureInfo& info(Measure measure);
bool hasUnit(Measure measure);  // differs between US and metric

}  // namespace trenchbook::addin
