#include "trenchbook/core/text.h"

#include <cmath>
#include <cstdio>

namespace trenchbook {

std::string trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t");
    if (first == std::string_view::npos) return "";
    return std::string(text.substr(first, text.find_last_not_of(" \t") - first + 1));
}

std::string nameKey(std::string_view name) {
    std::string key = trimmed(name);
    for (std::size_t i = 0; i < key.size(); ++i) {
        const auto byte = static_cast<unsigned char>(key[i]);
        if (byte >= 'A' && byte <= 'Z') key[i] = static_cast<char>(byte + 0x20);
        // The capitals À to Þ are the bytes C3 80 to C3 9E in UTF-8, their small letters C3 A0 to C3 BE; C3
        // 97 is ×.
        if (byte == 0xC3 && i + 1 < key.size()) {
            const auto letter = static_cast<unsigned char>(key[++i]);
            if (letter >= 0x80 && letter <= 0x9E && letter != 0x97) key[i] = static_cast<char>(letter + 0x20);
        }
    }
    return key;
}

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
