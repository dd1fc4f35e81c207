// What people type in a cell, taken apart: words, and numbers with a sign, separators and a unit.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#pragma GCC visibility push(hidden)
namespace trenchbook::cells {

// Without blanks around it, hard ones and line ends too.
std::string_view trimmed(std::string_view text);

// A number and what stands before and behind it: "1,200 sq ft" is 1200 and "sq ft", "$350" is 350 and "$".
struct TypedNumber {
    double value = 0;
    std::string unit = {};  // lower case, without blanks and full stops
};
// Thousands are grouped by commas, the decimal sign is a point; none where it is no number, or one that two
// people read differently ("1,5").
std::optional<TypedNumber> typedNumber(std::string_view text);

}  // namespace trenchbook::cells
#pragma GCC visibility pop
