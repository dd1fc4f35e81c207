#include "catalog/rain_table.h"

namespace trenchbook::addin {

RainTable rainTable(const Arguments& in, std::size_t index) {
    const Length unit = Length::fromSi(in.from(Measure::Inches, 1));
    const char* name = in.function().arguments[index].name.c_str();
    if (const Range* range = in.range(index)) {
        std::vector<TableCell> cells;
        cells.reserve(range->cells.size());
        for (const Cell& cell : range->cells) {
            if (const double* number = std::get_if<double>(&cell))
                cells.emplace_back(*number);
            else if (const std::string* text = std::get_if<std::string>(&cell))
                cells.emplace_back(*text);
            else
                cells.emplace_back();
        }
        return RainTable::parse(cells, range->columns, unit, name);
    }
    return RainTable::parse(in.text(index), unit, name);
}

bool holdsAnything(const Arguments& in, std::size_t index) {
    const Range* cells = in.range(index);
    if (cells == nullptr) {
        const double* number = std::get_if<double>(&in.raw(index));
        return in.given(index) && !(number != nullptr && *number == 0);
    }
    for (const Cell& cell : cells->cells)
        if (std::holds_alternative<double>(cell) ||
            (std::holds_alternative<std::string>(cell) && !trimmed(std::get<std::string>(cell)).empty()))
            return true;
    return false;
}

}  // namespace trenchbook::addin
