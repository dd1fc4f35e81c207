#include "trenchbook/core/text.h"

#include <cmath>
#include <cstdio>

namespace trenchbook {

std::string plain(double value, int decimals) {
    if (!std::isfinite(value)) return std::isnan(value) ? "not a number" : "infinite";
    // Large and tiny values read better in powers of ten than as a row of zeros.
    const double size = std::fabs(value);
    char buffer[64];
    if (size != 0 && (size >= 1e12 || size < 0.5 * std::pow(10.0, -decimals)))
        return std::snprintf(buffer, sizeof buffer, "%.3g", value), buffer;
    std::snprintf(buffer, sizeof buffer, "%.*f", decimals, value);
    std::string text(buffer);
    if (text.find('.') != std::string::npos) {
        text.erase(text.find_last_not_of('0') + 1);
        if (text.back() == '.') text.pop_back();
    }
    return text == "-0" ? "0" : text;
}

}  // namespace trenchbook
