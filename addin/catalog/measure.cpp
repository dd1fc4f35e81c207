#include "catalog/measure.h"

#include <vector>

namespace trenchbook::addin {
namespace {

// What a cell of this measure is asked for, where that is more than a unit.
UnitInfo row(Measure measure) {
    const auto alike = [](const Text& both) { return UnitInfo{both, both}; };
    switch (measure) {
        case Measure::Plain:
            return info(Unit::Number);
        case Measure::Words:
            return alike({"text", "texto"});
        case Measure::Table:
            return alike({"range", "rango"});
        case Measure::Pipe:
            return {{"pipe, or bore in in", "tubo, o diámetro interior en in"},
                    {"pipe, or bore in mm", "tubo, o diámetro interior en mm"},
                    info(Unit::Inches).siPerUs,
                    info(Unit::Inches).siPerMetric};
        case Measure::Slope:
            return alike({"slope", "pendiente"});
        case Measure::Share:
            return alike({"0 to 1", "0 a 1"});
        case Measure::Degrees:
            return info(Unit::Degrees);
        case Measure::Minutes:
            return info(Unit::Minutes);
        case Measure::Hours:
            return info(Unit::Hours);
        case Measure::Years:
            return info(Unit::Years);
        case Measure::Dollars:
            return info(Unit::Dollars);
        case Measure::Feet:
            return info(Unit::Feet);
        case Measure::Inches:
            return info(Unit::Inches);
        case Measure::SquareFeet:
            return info(Unit::SquareFeet);
        case Measure::CubicFeet:
            return info(Unit::CubicFeet);
        case Measure::CubicYards:
            return info(Unit::CubicYards);
        case Measure::Gallons:
            return info(Unit::Gallons);
        case Measure::Gpm:
            return info(Unit::Gpm);
        case Measure::InchesPerHour:
            return info(Unit::InchesPerHour);
        case Measure::FeetPerSecond:
            return info(Unit::FeetPerSecond);
        case Measure::FeetPerDay:
            return info(Unit::FeetPerDay);
        case Measure::PoundsPerSquareFoot:
            return info(Unit::PoundsPerSquareFoot);
        case Measure::Fahrenheit:
            return info(Unit::Fahrenheit);
        case Measure::ShortTons:
            return info(Unit::ShortTons);
        case Measure::TonsPerYard:
            return info(Unit::TonsPerYard);
        case Measure::Pounds:
            return info(Unit::Pounds);
        case Measure::PoundsPerFoot:
            return info(Unit::PoundsPerFoot);
        case Measure::PoundsPerCubicFoot:
            return info(Unit::PoundsPerCubicFoot);
        case Measure::DollarsPerFoot:
            return info(Unit::DollarsPerFoot);
        case Measure::ByKey:
            return {{"in the US unit of its key", "en la unidad de EE. UU. de su clave"},
                    {"in the metric unit of its key", "en la unidad métrica de su clave"}};
    }
    return {};
}

// Every argument of every call asks: looked up by place, and compared once.
struct Entry {
    UnitInfo info;
    bool hasUnit = false;
};

const Entry& entry(Measure measure) {
    static const std::vector<Entry> entries = [] {
        std::vector<Entry> placed;
        for (int place = 0; place <= static_cast<int>(Measure::ByKey); ++place) {
            const UnitInfo made = row(static_cast<Measure>(place));
            placed.push_back({made, made.us.en != made.metric.en});
        }
        return placed;
    }();
    return entries[static_cast<std::size_t>(measure)];
}

}  // namespace

const UnitInfo& info(Measure measure) { return entry(measure).info; }
bool hasUnit(Measure measure) { return entry(measure).hasUnit; }

double siOf(Measure measure, double number, UnitSystem units) {
    if (measure == Measure::Fahrenheit) return units == UnitSystem::Metric ? number : (number - 32) / 1.8;
    return number * info(measure).si(units);
}

double inUnit(Measure measure, UnitSystem units, double si) {
    if (measure == Measure::Fahrenheit) return units == UnitSystem::Metric ? si : si * 1.8 + 32;
    return si / info(measure).si(units);
}

}  // namespace trenchbook::addin
