#include "catalog/measure.h"

#include <vector>

namespace trenchbook::addin {
namespace {

struct Row {
    Measure measure;
    MeasureInfo info;
};

std::vector<Row> rows() {
    const auto same = [](const char* text) { return Text::same(text); };
    return {
        {Measure::Plain, {same(""), same(""), 1, 1}},
        {Measure::Words, {{"text", "texto"}, {"text", "texto"}, 1, 1}},
        {Measure::Table, {{"range", "rango"}, {"range", "rango"}, 1, 1}},
        {Measure::Pipe,
         {{"pipe, or bore in in", "tubo, o diámetro interior en in"},
          {"pipe, or bore in mm", "tubo, o diámetro interior en mm"},
          metresPerInch,
          1e-3}},
        {Measure::Slope, {{"slope", "pendiente"}, {"slope", "pendiente"}, 1, 1}},
        {Measure::Share, {{"0 to 1", "0 a 1"}, {"0 to 1", "0 a 1"}, 1, 1}},
        {Measure::Degrees, {same("deg"), same("deg"), 1, 1}},
        {Measure::Minutes, {same("min"), same("min"), 60, 60}},
        {Measure::Hours, {same("h"), same("h"), 3600, 3600}},
        {Measure::Years, {{"years", "años"}, {"years", "años"}, 1, 1}},
        {Measure::Dollars, {same("$"), same("$"), 1, 1}},
        {Measure::Feet, {same("ft"), same("m"), metresPerFoot, 1}},
        {Measure::Inches, {same("in"), same("mm"), metresPerInch, 1e-3}},
        {Measure::SquareFeet, {same("sq ft"), same("m²"), Area::squareFeet(1).si(), 1}},
        {Measure::CubicFeet, {same("cu ft"), same("m³"), Volume::cubicFeet(1).si(), 1}},
        {Measure::CubicYards, {same("cu yd"), same("m³"), Volume::cubicYards(1).si(), 1}},
        {Measure::Gallons, {same("gal"), same("L"), cubicMetresPerGallon, 1e-3}},
        {Measure::Gpm, {same("gpm"), same("L/s"), Flow::gpm(1).si(), 1e-3}},
        {Measure::InchesPerHour,
         {same("in/hr"), same("mm/h"), Velocity::inchesPerHour(1).si(),
          Velocity::millimetresPerHour(1).si()}},
        {Measure::FeetPerSecond, {same("ft/s"), same("m/s"), metresPerFoot, 1}},
        {Measure::FeetPerDay,
         {same("ft/day"), same("m/day"), Velocity::feetPerDay(1).si(), Velocity::metresPerDay(1).si()}},
        {Measure::PoundsPerSquareFoot,
         {same("lb/sq ft"), same("N/m²"), Shear::poundsPerSquareFoot(1).si(), 1}},
        {Measure::Fahrenheit, {same("°F"), same("°C"), 1, 1}},
        {Measure::ShortTons, {{"short tons", "toneladas cortas"}, {"t", "t"}, Weight::shortTons(1).si(), 1}},
        {Measure::TonsPerYard,
         {{"short tons per cu yd", "toneladas cortas por cu yd"},
          {"t/m³", "t/m³"},
          BulkDensity::shortTonsPerCubicYard(1).si(),
          1}},
        {Measure::DollarsPerFoot, {same("$/ft"), same("$/m"), 1 / metresPerFoot, 1}},
        {Measure::ByKey,
         {{"in the US unit of its key", "en la unidad de EE. UU. de su clave"},
          {"in the metric unit of its key", "en la unidad métrica de su clave"},
          1,
          1}},
    };
}

// Every argument of every call asks: looked up by place, and compared once.
struct Entry {
    MeasureInfo info;
    bool hasUnit = false;
};

const Entry& entry(Measure measure) {
    static const std::vector<Entry> entries = [] {
        std::vector<Entry> placed;
        for (const Row& row : rows()) {
            const auto place = static_cast<std::size_t>(row.measure);
            if (placed.size() <= place) placed.resize(place + 1);
            placed[place] = {row.info, row.info.us.en != row.info.metric.en};
        }
        return placed;
    }();
    return entries[static_cast<std::size_t>(measure)];
}

}  // namespace

const MeasureInfo& info(Measure measure) { return entry(measure).info; }
bool hasUnit(Measure measure) { return entry(measure).hasUnit; }

}  // namespace trenchbook::addin
