#include "trenchbook/core/text.h"

#include <cmath>
#include <cstdint>
#include <cstdio>
#include <iterator>

namespace trenchbook {
namespace {

// The number as scaled by 10^decimals and rounded, where the product says beyond doubt which way it rounds; else -1. The
// product is off by less than 1e-7, and nothing closer than 1e-6 to the middle between two is taken.
std::int64_t roundedBeyondDoubt(double size, int decimals) {
    static constexpr double powers[] = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6};
    if (decimals < 0 || decimals >= static_cast<int>(std::size(powers))) return -1;
    const double scaled = size * powers[decimals];
    if (!(scaled > 0.6 && scaled < 1e9)) return -1;
    const double whole = std::floor(scaled), rest = scaled - whole;
    if (std::fabs(rest - 0.5) < 1e-6) return -1;
    return static_cast<std::int64_t>(whole) + (rest > 0.5 ? 1 : 0);
}

}  // namespace

std::string trimmed(std::string_view text) {
    const auto blank = [](char letter) { return letter == ' ' || letter == '\t'; };
    while (!text.empty() && blank(text.front())) text.remove_prefix(1);
    while (!text.empty() && blank(text.back())) text.remove_suffix(1);
    return std::string(text);
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
    if (value == 0) return "0";
    const double size = std::fabs(value);
    char buffer[64];
    if (std::int64_t scaled = roundedBeyondDoubt(size, decimals); scaled > 0) {
        while (decimals > 0 && scaled % 10 == 0) scaled /= 10, --decimals;
        char* const end = std::end(buffer);
        char* first = end;
        for (int digits = 0; scaled > 0 || digits <= decimals; ++digits, scaled /= 10) {
            if (digits == decimals && digits > 0) *--first = '.';
            *--first = static_cast<char>('0' + scaled % 10);
        }
        if (value < 0) *--first = '-';
        return {first, end};
    }
    // Large and tiny values read better in powers of ten than as a row of zeros.
    if (size >= 1e12 || size < 0.5 * std::pow(10.0, -decimals))
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
