#include "commands/value.h"

#include <algorithm>
#include <cstdio>

namespace trenchbook::sheets {

std::string textOf(const Value& value) {
    if (const double* number = std::get_if<double>(&value)) {
        char buffer[40];
        std::snprintf(buffer, sizeof buffer, "%.15g", *number);
        return buffer;
    }
    if (const std::string* text = std::get_if<std::string>(&value)) return *text;
    return "";
}

bool isBlank(const Value& value) { return std::holds_alternative<std::monostate>(value); }

bool isBlankRow(const std::vector<Value>& cells) {
    return std::all_of(cells.begin(), cells.end(), [](const Value& value) {
        const std::string* text = std::get_if<std::string>(&value);
        return isBlank(value) || (text != nullptr && *text == "#N/A");
    });
}

const Value& Row::value(const std::string& heading) const {
    static const Value blank;
    const auto found = cells.find(heading);
    return found == cells.end() ? blank : found->second;
}

std::string Row::text(const std::string& heading) const { return textOf(value(heading)); }

std::optional<double> Row::number(const std::string& heading) const {
    const double* number = std::get_if<double>(&value(heading));
    return number == nullptr ? std::nullopt : std::optional<double>(*number);
}

}  // namespace trenchbook::sheets
