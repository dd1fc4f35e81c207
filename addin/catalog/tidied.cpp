#include "catalog/tidied.h"

#include <cmath>

namespace trenchbook::addin {

double tidied(double number) {
    constexpr double digits = 12;
    const double size = std::fabs(number);
    if (!(size >= 1e-9 && size < 1e12)) return number;
    const double scale = std::pow(10.0, digits - 1 - std::floor(std::log10(size)));
    return std::round(number * scale) / scale;
}

}  // namespace trenchbook::addin
