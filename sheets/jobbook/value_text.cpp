#include "jobbook/value_text.h"

#include <algorithm>
#include <charconv>
#include <chrono>
#include <cmath>
#include <ctime>
#include <optional>

namespace trenchbook::sheets {
namespace {

constexpr std::chrono::sys_days dayNought = std::chrono::year(1899) / 12 / 30;  // as the office counts

std::optional<double> number(std::string_view text) {
    if (!text.empty() && text[0] == '+') text.remove_prefix(1);
    double value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc() || end != text.data() + text.size() || !std::isfinite(value))
        return std::nullopt;
    return value;
}

double readNumber(const std::string& text) {
    if (const auto value = number(text)) return *value;
    const bool commas =
        text.find(',') != std::string::npos && text.find_first_not_of("+-0123456789.,") == std::string::npos;
    throw std::invalid_argument(commas ? "is not a number here: write it with a point and without commas"
                                       : "is not a number");
}

double readPercent(const std::string& text) {
    if (!text.empty() && text.back() == '%') {
        const std::string digits = text.substr(0, text.find_last_not_of(" %") + 1);
        if (const auto value = number(digits)) return *value / 100;
        throw std::invalid_argument("is not a percentage");
    }
    const double value = readNumber(text);
    if (std::fabs(value) > 1)
        throw std::invalid_argument("is above the whole: write " + plain(value) + "% or " +
                                    plain(value / 100));
    return value;
}

double readDate(const std::string& text) {
    const auto part = [&](std::size_t from, std::size_t count) {
        const std::string_view digits = std::string_view(text).substr(from, count);
        const bool all =
            std::all_of(digits.begin(), digits.end(), [](char c) { return c >= '0' && c <= '9'; });
        return all ? static_cast<int>(number(digits).value_or(-1)) : -1;
    };
    using namespace std::chrono;
    if (text.size() == 10 && text[4] == '-' && text[7] == '-') {
        const int y = part(0, 4), m = part(5, 2), d = part(8, 2);
        const year_month_day date(year(y), month(static_cast<unsigned>(m)), day(static_cast<unsigned>(d)));
        if (y > 0 && m > 0 && d > 0 && date.ok())
            return static_cast<double>((sys_days(date) - dayNought).count());
    }
    throw std::invalid_argument("is not a date; write year-month-day: 2026-05-31");
}

void checkLimits(double value, const CellSpec& cell, bool metric) {
    // A question in the sheet, not a refusal, is left to the sheet.
    if (!cell.validity.strict) return;
    const bool convert = metric && addin::hasUnit(cell.measure);
    const auto& unit = addin::info(cell.measure);
    const double scale = convert ? unit.siPerUs / unit.siPerMetric : 1;
    const auto& [least, greatest] = std::pair(cell.validity.least, cell.validity.greatest);
    const std::string name = addin::hasUnit(cell.measure) ? " " + (metric ? unit.metric.en : unit.us.en) : "";
    // A limit turned into another unit is not exact in binary.
    const double slack = 1e-9 * std::max(std::fabs(value), 1.0);
    const bool below = least && value < *least * scale - slack;
    const bool above = greatest && value > *greatest * scale + slack;
    if (!below && !above) return;
    std::string allowed;
    if (least) allowed = plain(*least * scale) + (greatest ? " to " : " or more");
    if (greatest) allowed += (least ? "" : "up to ") + plain(*greatest * scale);
    throw std::invalid_argument("is outside " + allowed + name);
}

std::string lower(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(), [](unsigned char c) { return std::tolower(c); });
    return text;
}

// The list's own spelling of the word.
std::string readWord(const std::string& text, const Validity& validity) {
    std::string all;
    for (const std::string& word : validity.words) {
        if (lower(word) == lower(text)) return word;
        all += (all.empty() ? "" : ", ") + word;
    }
    if (!validity.strict && !validity.several) return text;
    throw std::invalid_argument("is not one of: " + all);
}

// Several of the words with + , / or & between them.
std::string readWords(const std::string& text, const Validity& validity) {
    std::string words;
    for (std::size_t from = 0; from <= text.size();) {
        const std::size_t to = std::min(text.find_first_of("+,/&", from), text.size());
        std::string word = text.substr(from, to - from);
        from = to + 1;
        word.erase(0, word.find_first_not_of(' '));
        word.erase(word.find_last_not_of(' ') + 1);
        words += (words.empty() ? "" : " + ") + readWord(word, validity);
    }
    return words;
}

}  // namespace

Value readValue(const std::string& text, const CellSpec& cell, bool metric) {
    if (text.empty()) return std::monostate();
    using As = Format::As;
    if (!cell.validity.words.empty()) {
        const std::string word =
            cell.validity.several ? readWords(text, cell.validity) : readWord(text, cell.validity);
        const bool numeric = cell.format.as != As::Text && number(word);
        return numeric ? Value(*number(word)) : Value(word);
    }
    if (cell.format.as == As::Text) return text;
    if (cell.format.as == As::Date) return readDate(text);
    if (cell.format.as == As::General) {
        const auto value = number(text);
        if (!value) return text;
        checkLimits(*value, cell, metric);
        return *value;
    }
    std::string digits = text;
    if (cell.format.as == As::Money && digits[0] == '$') digits.erase(0, 1);
    const double value = cell.format.as == As::Percent ? readPercent(digits) : readNumber(digits);
    checkLimits(value, cell, metric);
    return value;
}

std::string dateText(double days) {
    using namespace std::chrono;
    const year_month_day date(dayNought + std::chrono::days(std::lround(std::floor(days))));
    char buffer[40];
    std::snprintf(buffer, sizeof buffer, "%04d-%02u-%02u", static_cast<int>(date.year()),
                  static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
    return buffer;
}

std::string moneyText(double dollars) {
    char buffer[64];
    std::snprintf(buffer, sizeof buffer, "%.2f", std::fabs(dollars));
    std::string text = buffer;
    for (std::size_t at = text.size() - 3; at > 3; at -= 3) text.insert(at - 3, ",");
    return (dollars < 0 && text.find_first_not_of("0.") != std::string::npos ? "-" : "") + text;
}

double today() {
    const std::time_t now = std::time(nullptr);
    std::tm local{};
#ifdef _WIN32
    localtime_s(&local, &now);
#else
    localtime_r(&now, &local);
#endif
    using namespace std::chrono;
    const year_month_day date(year(local.tm_year + 1900), month(static_cast<unsigned>(local.tm_mon + 1)),
                              day(static_cast<unsigned>(local.tm_mday)));
    return static_cast<double>((sys_days(date) - dayNought).count());
}

}  // namespace trenchbook::sheets
