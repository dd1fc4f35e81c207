#include "job/cell_words.h"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace trenchbook::cells {
namespace {

constexpr std::string_view hardBlank = "\u00A0";

bool isBlank(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }
bool isDigit(char c) { return c >= '0' && c <= '9'; }

// "1,200" and "12,345.5" without their commas; none where the commas do not group thousands.
std::optional<std::string> ungrouped(std::string_view digits) {
    std::string kept;
    const std::size_t point = std::min(digits.find('.'), digits.size());
    const std::size_t firstComma = digits.find(',');
    for (std::size_t i = 0; i < digits.size(); ++i) {
        if (digits[i] != ',') {
            kept += digits[i];
            continue;
        }
        const bool grouped = i > 0 && i < point && firstComma <= 3 && (point - i) % 4 == 0;
        if (!grouped) return std::nullopt;
    }
    // Once grouped, all of it is: 1,2345678 is no number, and 0,125 is a decimal comma.
    if (firstComma != std::string_view::npos) {
        if (digits.front() == '0') return std::nullopt;
        std::size_t run = 0;
        for (std::size_t i = 0; i < point; ++i) {
            run = digits[i] == ',' ? 0 : run + 1;
            if (run > 3) return std::nullopt;
        }
    }
    return kept;
}

}  // namespace

std::string_view trimmed(std::string_view text) {
    for (;;) {
        if (!text.empty() && isBlank(text.front()))
            text.remove_prefix(1);
        else if (text.starts_with(hardBlank))
            text.remove_prefix(hardBlank.size());
        else if (!text.empty() && isBlank(text.back()))
            text.remove_suffix(1);
        else if (text.ends_with(hardBlank))
            text.remove_suffix(hardBlank.size());
        else
            return text;
    }
}

std::optional<TypedNumber> typedNumber(std::string_view text) {
    text = trimmed(text);
    TypedNumber number;
    if (text.starts_with('$')) {
        number.unit = "$";
        text = trimmed(text.substr(1));
    }
    bool minus = false;
    if (text.starts_with("\u2212")) {
        minus = true;
        text.remove_prefix(3);
    } else if (text.starts_with('-') || text.starts_with('+')) {
        minus = text.front() == '-';
        text.remove_prefix(1);
    }
    std::size_t end = 0;
    while (end < text.size() && (isDigit(text[end]) || text[end] == '.' || text[end] == ',')) ++end;
    // An exponent, as spreadsheets write very small numbers.
    if (end + 1 < text.size() && (text[end] == 'e' || text[end] == 'E')) {
        std::size_t digits = end + 1;
        if (text[digits] == '-' || text[digits] == '+') ++digits;
        if (digits < text.size() && isDigit(text[digits])) {
            end = digits;
            while (end < text.size() && isDigit(text[end])) ++end;
        }
    }
    const std::optional<std::string> digits = ungrouped(text.substr(0, end));
    if (!digits || digits->empty() || (!isDigit(digits->front()) && digits->front() != '.'))
        return std::nullopt;
    const auto [stop, failed] =
        std::from_chars(digits->data(), digits->data() + digits->size(), number.value);
    if (failed != std::errc() || stop != digits->data() + digits->size() || !std::isfinite(number.value))
        return std::nullopt;
    if (minus) number.value = -number.value;
    std::string behind;
    for (const char c : trimmed(text.substr(end)))
        if (!isBlank(c) && c != '.') behind += c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c;
    if (!behind.empty() && !number.unit.empty()) return std::nullopt;
    if (!behind.empty()) number.unit = behind;
    return number;
}

}  // namespace trenchbook::cells
