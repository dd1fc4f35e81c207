#include "trenchbook/core/unit.h"

#include <array>
#include <cstddef>

#include "trenchbook/core/units.h"

namespace trenchbook {
namespace {

Text same(const char* both) { return Text::same(both); }
UnitInfo alike(const Text& both, double si = 1) { return {both, both, si, si}; }

UnitInfo row(Unit unit) {
    switch (unit) {
        case Unit::Number:
        case Unit::Share:
        case Unit::Slope:
            return {};
        case Unit::YesNo:
            return alike({"1 or 0", "1 o 0"});
        case Unit::Degrees:
            return alike(same("deg"));
        case Unit::Minutes:
            return alike(same("min"), Duration::minutes(1).si());
        case Unit::Hours:
            return alike(same("h"), Duration::hours(1).si());
        case Unit::Days:
            return alike({"days", "días"});
        case Unit::Years:
            return alike({"years", "años"});
        case Unit::Dollars:
            return alike(same("$"));
        case Unit::Feet:
            return {same("ft"), same("m"), Length::feet(1).si(), 1};
        case Unit::Inches:
            return {same("in"), same("mm"), Length::inches(1).si(), Length::millimetres(1).si()};
        case Unit::SquareFeet:
            return {same("sq ft"), same("m²"), Area::squareFeet(1).si(), 1};
        case Unit::CubicFeet:
            return {same("cu ft"), same("m³"), Volume::cubicFeet(1).si(), 1};
        case Unit::CubicYards:
            return {same("cu yd"), same("m³"), Volume::cubicYards(1).si(), 1};
        case Unit::Gallons:
            return {same("gal"), same("L"), Volume::gallons(1).si(), Volume::litres(1).si()};
        case Unit::Gpm:
            return {same("gpm"), same("L/s"), Flow::gpm(1).si(), Flow::litresPerSecond(1).si()};
        case Unit::FeetPerSecond:
            return {same("ft/s"), same("m/s"), Velocity::feetPerSecond(1).si(), 1};
        case Unit::FeetPerDay:
            return {same("ft/day"), same("m/day"), Velocity::feetPerDay(1).si(),
                    Velocity::metresPerDay(1).si()};
        case Unit::InchesPerHour:
            return {same("in/hr"), same("mm/h"), Velocity::inchesPerHour(1).si(),
                    Velocity::millimetresPerHour(1).si()};
        case Unit::MinutesPerInch:
            return {same("min/in"), same("min/mm"), Duration::minutes(1).si() / Length::inches(1).si(),
                    Duration::minutes(1).si() / Length::millimetres(1).si()};
        case Unit::PoundsPerSquareFoot:
            return {same("lb/sq ft"), same("N/m²"), Shear::poundsPerSquareFoot(1).si(), 1};
        case Unit::Fahrenheit:
            return {same("°F"), same("°C"), 1, 1};
        case Unit::ShortTons:
            return {{"short tons", "toneladas cortas"}, same("t"), Weight::shortTons(1).si(), 1};
        case Unit::TonsPerYard:
            return {{"short tons per cu yd", "toneladas cortas por cu yd"},
                    same("t/m³"),
                    BulkDensity::shortTonsPerCubicYard(1).si(),
                    1};
        case Unit::Pounds:
            return {same("lb"), same("kg"), Weight::pounds(1).si(), Weight::kilograms(1).si()};
        case Unit::PoundsPerFoot:
            return {same("lb/ft"), same("kg/m"), WeightPerLength::poundsPerFoot(1).si(),
                    WeightPerLength::kilogramsPerMetre(1).si()};
        case Unit::PoundsPerCubicFoot:
            return {same("lb/cu ft"), same("kg/m³"), BulkDensity::poundsPerCubicFoot(1).si(),
                    BulkDensity::kilogramsPerCubicMetre(1).si()};
        case Unit::DollarsPerFoot:
            return {same("$/ft"), same("$/m"), PricePerLength::dollarsPerFoot(1).si(), 1};
    }
    return {};
}

constexpr std::size_t count = static_cast<std::size_t>(Unit::DollarsPerFoot) + 1;

}  // namespace

const UnitInfo& info(Unit unit) {
    static const std::array<UnitInfo, count> table = [] {
        std::array<UnitInfo, count> made;
        for (std::size_t i = 0; i < count; ++i) made[i] = row(static_cast<Unit>(i));
        return made;
    }();
    return table[static_cast<std::size_t>(unit)];
}

}  // namespace trenchbook
