// Books round the constants that the engine takes exactly. These turn an input so that the engine computes
// with the book's constant, which works for depths as well, where a factor on the result would not.
#pragma once

#include <cmath>

#include "reference.h"
#include "trenchbook/core/units.h"

namespace trenchbook::reference {

// 1.48592…: Manning's constant in feet, exactly 1 in metres.
inline const double exactManning = 1 / std::cbrt(metresPerFoot);
inline constexpr const char* manningReason = "the source rounds Manning's constant 1.48592 to 1.49 or 1.486";
inline constexpr double gravityFeet = gravity / metresPerFoot;
inline constexpr const char* gravityReason = "the source rounds the acceleration of gravity";

// The roughness with which the engine gives what the book's constant gives.
inline double bookRoughness(const Row& row, double n) {
    if (!row.has("k") || row.input("k") == 1) return n;
    return n * exactManning / row.input("k");
}
inline double bookRoughness(const Row& row) { return bookRoughness(row, row.input("n")); }

// The flow that is critical in the engine when this one is critical with the book's gravity.
inline Flow bookFlow(const Row& row, Flow flow) {
    if (!row.has("g")) return flow;
    const double g = row.input("g");
    return flow * std::sqrt((g > 20 ? gravityFeet : gravity) / g);
}

// The x between low and high at which a rising function passes the value.
template <class Function>
double whereRises(double low, double high, double value, Function&& function) {
    for (int step = 0; step < 200; ++step) {
        const double middle = (low + high) / 2;
        (function(middle) < value ? low : high) = middle;
    }
    return (low + high) / 2;
}

}  // namespace trenchbook::reference
