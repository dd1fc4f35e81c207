#include "site/inputs.h"

#include <stdexcept>

#include "trenchbook/lines/cover_surface.h"
#include "trenchbook/lines/node_kind.h"

namespace trenchbook::sheets {
namespace {

Measure measureOf(CellKind kind) {
    switch (kind) {
        case CellKind::Slope:
            return Measure::Slope;
        case CellKind::Share:
            return Measure::Share;
        case CellKind::Feet:
            return Measure::Feet;
        case CellKind::Inches:
            return Measure::Inches;
        case CellKind::SquareFeet:
            return Measure::SquareFeet;
        case CellKind::CubicFeet:
            return Measure::CubicFeet;
        case CellKind::Pounds:
            return Measure::Pounds;
        case CellKind::Degrees:
            return Measure::Degrees;
        case CellKind::Minutes:
            return Measure::Minutes;
        case CellKind::Hours:
            return Measure::Hours;
        case CellKind::Years:
            return Measure::Years;
        case CellKind::Gpm:
            return Measure::Gpm;
        case CellKind::InchesPerHour:
            return Measure::InchesPerHour;
        default:
            return Measure::Plain;
    }
}

std::vector<std::string> wordsOf(const InputColumn& input) {
    std::vector<std::string> words;
    if (input.kind == CellKind::NodeKinds)
        for (const NodeKindInfo& kind : nodeKindTable()) words.push_back(kind.name.en);
    if (input.kind == CellKind::OverPipe)
        for (const CoverSurfaceInfo& surface : coverSurfaces()) words.push_back(surface.name.en);
    for (const ChoiceWord& word : input.words) words.push_back(word.name.en);
    return words;
}

Validity validityOf(const InputColumn& input, const Shown& shown) {
    Validity validity;
    validity.listFormula = shown.list;
    if (validity.listFormula.empty()) validity.words = wordsOf(input);
    validity.strict = input.kind == CellKind::Choice && validity.listFormula.empty();
    validity.several = input.kind == CellKind::NodeKinds;
    // Cells that take the trade's spelling hold text, which a limit on numbers would refuse.
    if (shown.format.as == Format::As::Number || shown.format.as == Format::As::Percent) {
        if (input.least > -InputColumn::anything) validity.least = input.least;
        if (input.greatest < InputColumn::anything) validity.greatest = input.greatest;
    }
    return validity;
}

const InputColumn& find(InputTable table, const char* heading) {
    const InputColumn* found = inputColumn(table, heading);
    if (found == nullptr)
        throw std::logic_error(tableWord(table).en + " reads no input " + std::string(heading));
    return *found;
}

std::string unitOf(const InputColumn& input) {
    return input.kind == CellKind::Size ? "=IF(units=\"metric\";\"mm\";\"in\")" : "";
}

}  // namespace

std::vector<Column> inputs(InputTable table, std::initializer_list<Shown> shown) {
    std::vector<Column> columns;
    for (const Shown& as : shown) {
        const InputColumn& input = find(table, as.heading);
        columns.push_back({.heading = input.heading,
                           .kind = as.kind,
                           .format = as.format,
                           .measure = measureOf(input.kind),
                           .width = as.width,
                           .validity = validityOf(input, as),
                           .note = input.note,
                           .unit = unitOf(input)});
    }
    for (const InputColumn& input : inputColumns(table)) {
        bool listed = false;
        for (const Shown& as : shown) listed = listed || std::string(as.heading) == input.heading;
        if (!listed) throw std::logic_error(tableWord(table).en + " does not show " + input.heading);
    }
    return columns;
}

Field input(InputTable table, const Shown& shown, const char* name, const char* value) {
    const InputColumn& input = find(table, shown.heading);
    return {.label = input.heading,
            .name = name,
            .kind = shown.kind,
            .format = shown.format,
            .measure = measureOf(input.kind),
            .value = value,
            .validity = validityOf(input, shown),
            .note = input.note,
            .unit = unitOf(input)};
}

std::vector<Column> verdictColumns(double checkWidth) {
    return {
        {.heading = "Verdict", .kind = Kind::Verdict, .width = 26, .formula = "<Verdict>", .centred = true},
        {.heading = "Check",
         .kind = Kind::Verdict,
         .width = checkWidth,
         .formula = "<Check>",
         .note = "Everything that the rules say about this row, the worst first.",
         .wrapped = true}};
}

std::string answered(const std::string& mark) { return "IFERROR(<" + mark + ">;\"\")"; }

std::vector<Column> operator+(std::vector<Column> first, const std::vector<Column>& more) {
    first.insert(first.end(), more.begin(), more.end());
    return first;
}

}  // namespace trenchbook::sheets
