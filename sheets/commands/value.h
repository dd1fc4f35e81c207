// What a cell holds, and a table's row by its headings. No office types.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace trenchbook::sheets {

// Nothing, a number (dates as days since 1899-12-30, percents as fractions), or text that stays text. An error is the
// text of its code: "Err:502", "#N/A".
using Value = std::variant<std::monostate, double, std::string>;

// As people write it: text as it is, numbers with at most 15 digits.
std::string textOf(const Value& value);
bool isBlank(const Value& value);
// Nothing but blanks, and #N/A where a chart is to leave a gap.
bool isBlankRow(const std::vector<Value>& cells);

struct Row {
    int ready = 0;  // its place among the ready rows, from 0
    std::map<std::string, Value> cells;

    const Value& value(const std::string& heading) const;  // blank when there is no such heading
    std::string text(const std::string& heading) const;
    std::optional<double> number(const std::string& heading) const;
};

}  // namespace trenchbook::sheets
