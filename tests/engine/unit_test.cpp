// The table of units against the exact legal definitions, written out here.
#include "trenchbook/core/unit.h"

#include <gtest/gtest.h>

#include <set>
#include <string>

#include "trenchbook/core/units.h"

namespace {

using namespace trenchbook;

struct Written {
    Unit unit;
    const char* us;
    const char* metric;
    double siPerUs, siPerMetric;
};

constexpr double ft = 0.3048, in = 0.0254, gal = 231 * in * in * in, pound = 0.45359237;

// NIST Handbook 44, appendix C: foot, inch, gallon, pound by definition; the rest by arithmetic.
const Written table[] = {
    {Unit::Number, "", "", 1, 1},
    {Unit::Share, "", "", 1, 1},
    {Unit::YesNo, "1 or 0", "1 or 0", 1, 1},
    {Unit::Slope, "", "", 1, 1},
    {Unit::Degrees, "deg", "deg", 1, 1},
    {Unit::Minutes, "min", "min", 60, 60},
    {Unit::Hours, "h", "h", 3600, 3600},
    {Unit::Days, "days", "days", 1, 1},
    {Unit::Years, "years", "years", 1, 1},
    {Unit::Dollars, "$", "$", 1, 1},
    {Unit::Feet, "ft", "m", ft, 1},
    {Unit::Inches, "in", "mm", in, 0.001},
    {Unit::SquareFeet, "sq ft", "m²", ft* ft, 1},
    {Unit::CubicFeet, "cu ft", "m³", ft* ft* ft, 1},
    {Unit::CubicYards, "cu yd", "m³", 27 * ft* ft* ft, 1},
    {Unit::Gallons, "gal", "L", gal, 0.001},
    {Unit::Gpm, "gpm", "L/s", gal / 60, 0.001},
    {Unit::FeetPerSecond, "ft/s", "m/s", ft, 1},
    {Unit::FeetPerDay, "ft/day", "m/day", ft / 86400, 1.0 / 86400},
    {Unit::InchesPerHour, "in/hr", "mm/h", in / 3600, 0.001 / 3600},
    {Unit::MinutesPerInch, "min/in", "min/mm", 60 / in, 60 / 0.001},
    {Unit::PoundsPerSquareFoot, "lb/sq ft", "N/m²", pound * 9.80665 / (ft * ft), 1},
    {Unit::Fahrenheit, "°F", "°C", 1, 1},
    {Unit::ShortTons, "short tons", "t", 2 * pound, 1},
    {Unit::TonsPerYard, "short tons per cu yd", "t/m³", 2 * pound / (27 * ft * ft * ft), 1},
    {Unit::Pounds, "lb", "kg", pound * 0.001, 0.001},
    {Unit::PoundsPerFoot, "lb/ft", "kg/m", pound * 0.001 / ft, 0.001},
    {Unit::PoundsPerCubicFoot, "lb/cu ft", "kg/m³", pound * 0.001 / (ft * ft * ft), 0.001},
    {Unit::DollarsPerFoot, "$/ft", "$/m", 1 / ft, 1},
};

TEST(Unit, EveryRowAgainstTheLegalDefinitions) {
    std::set<Unit> seen;
    for (const Written& row : table) {
        seen.insert(row.unit);
        const UnitInfo& ours = info(row.unit);
        EXPECT_EQ(ours.us.en, row.us);
        EXPECT_EQ(ours.metric.en, row.metric) << row.us;
        EXPECT_EQ(ours.written(UnitSystem::US).en, row.us);
        EXPECT_EQ(ours.written(UnitSystem::Metric).en, row.metric) << row.us;
        EXPECT_NEAR(ours.si(UnitSystem::US) / row.siPerUs, 1, 1e-14) << row.us;
        EXPECT_NEAR(ours.si(UnitSystem::Metric) / row.siPerMetric, 1, 1e-14) << row.us;
        EXPECT_EQ(ours.us.empty(), ours.us.es.empty()) << row.us;
    }
    EXPECT_EQ(seen.size(), static_cast<std::size_t>(Unit::DollarsPerFoot) + 1) << "a unit is not checked";
}

TEST(Unit, SpanishWhereTheWordDiffers) {
    EXPECT_EQ(info(Unit::YesNo).us.es, "1 o 0");
    EXPECT_EQ(info(Unit::Days).us.es, "días");
    EXPECT_EQ(info(Unit::Years).metric.es, "años");
    EXPECT_EQ(info(Unit::ShortTons).us.es, "toneladas cortas");
    EXPECT_EQ(info(Unit::TonsPerYard).us.es, "toneladas cortas por cu yd");
}

}  // namespace
