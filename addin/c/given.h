// Arguments as they come through the C interface: letters, numbers and texts side by side.
#pragma once

#include <span>
#include <stdexcept>
#include <string_view>
#include <vector>

#include "catalog/value.h"

namespace trenchbook::addin {

// They do not fit together; what() says how.
struct Malformed : std::runtime_error {
    using std::runtime_error::runtime_error;
};

// Texts end with a zero byte each. Throws Malformed.
//
//     valuesOf("tn", std::array{0.01}, std::string_view("4 SDR35\0", 8));    // "4 SDR35", 0.01
std::vector<Value> valuesOf(std::string_view letters, std::span<const double> numbers,
                            std::string_view texts);

}  // namespace trenchbook::addin
