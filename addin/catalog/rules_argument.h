// Rules as an argument: two columns, key and value, over the defaults.
#pragma once

#include "catalog/arguments.h"
#include "trenchbook/rules/rules.h"

namespace trenchbook::addin {

Argument rulesArgument(bool optional = true);  // left out: the defaults
// Rows without a key are passed over.
Ruleset readRules(const Arguments& arguments, std::size_t index);

// Calls take(key, number or text) for one key and its value; an empty cell counts as empty text.
template <class Take>
void withValue(const Cell& value, Take take) {
    if (const double* number = std::get_if<double>(&value)) {
        take(*number);
    } else {
        const std::string* text = std::get_if<std::string>(&value);
        take(text == nullptr ? std::string_view() : std::string_view(*text));
    }
}

}  // namespace trenchbook::addin
