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

}  // namespace trenchbook::addin
