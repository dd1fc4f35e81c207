#include "trenchbook/water/rain.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <map>
#include <optional>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

// Above 0 and below what any rain table holds: depths in mm, years and minutes all stay under it.
constexpr double farBeyond = 1e8;
bool isEntry(double value) { return value > 0 && value < farBeyond; }

// Lower case, with the typographic blanks and hyphens of web pages made plain ones, and no blanks around.
std::string plainText(std::string_view text) {
    static constexpr std::pair<std::string_view, char> odd[] = {
        {"\u00A0", ' '}, {"\u2010", '-'}, {"\u2011", '-'}, {"\u2012", '-'}, {"\u2013", '-'}, {"\u00ED", 'i'}};
    std::string out;
    while (!text.empty()) {
        const auto found = std::find_if(std::begin(odd), std::end(odd),
                                        [&](const auto& o) { return text.starts_with(o.first); });
        if (found != std::end(odd)) {
            out += found->second;
            text.remove_prefix(found->first.size());
            continue;
        }
        const char c = text.front();
        out += c >= 'A' && c <= 'Z'                  ? static_cast<char>(c + 32)
               : c == '\n' || c == '\r' || c == '\t' ? ' '
                                                     : c;
        text.remove_prefix(1);
    }
    const auto first = out.find_first_not_of(' ');
    if (first == std::string::npos) return "";
    return out.substr(first, out.find_last_not_of(' ') - first + 1);
}

std::optional<double> takeNumber(std::string_view& text) {
    double value = 0;
    const auto read =
        std::from_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed);
    if (read.ec != std::errc() || !std::isfinite(value)) return std::nullopt;
    text.remove_prefix(static_cast<std::size_t>(read.ptr - text.data()));
    return value;
}

void skip(std::string_view& text, std::string_view characters) {
    text.remove_prefix(std::min(text.find_first_not_of(characters), text.size()));
}

bool isBlank(const TableCell& cell) {
    const std::string* text = std::get_if<std::string>(&cell);
    return std::holds_alternative<std::monostate>(cell) || (text != nullptr && plainText(*text).empty());
}

std::string asWritten(const TableCell& cell) {
    if (const double* number = std::get_if<double>(&cell)) return plain(*number);
    const std::string* text = std::get_if<std::string>(&cell);
    return text == nullptr ? "" : "\"" + *text + "\"";
}

// A positive number that is the whole cell, or stands in front of bounds in brackets.
std::optional<double> readEntry(const TableCell& cell) {
    std::optional<double> value;
    if (const double* number = std::get_if<double>(&cell)) {
        value = *number;
    } else if (const std::string* text = std::get_if<std::string>(&cell)) {
        const std::string kept = plainText(*text);
        std::string_view rest = kept;
        value = takeNumber(rest);
        skip(rest, " ");
        if (!rest.empty() && rest.front() != '(' && rest.front() != '[') return std::nullopt;
    }
    return value && isEntry(*value) ? value : std::nullopt;
}

std::optional<Duration> readDuration(const TableCell& cell) {
    if (const double* number = std::get_if<double>(&cell))
        return isEntry(*number) ? std::optional(Duration::minutes(*number)) : std::nullopt;
    const std::string* text = std::get_if<std::string>(&cell);
    if (text == nullptr) return std::nullopt;
    const std::string kept = plainText(*text);
    std::string_view rest = kept;
    const std::optional<double> value = takeNumber(rest);
    if (!value || !isEntry(*value)) return std::nullopt;
    skip(rest, " -");
    rest = rest.substr(0, rest.find_last_not_of(" :.") + 1);
    static const std::map<std::string_view, Duration> units = [] {
        std::map<std::string_view, Duration> known;
        for (const char* name : {"", "m", "min", "mins", "minute", "minutes", "minuto", "minutos"})
            known[name] = Duration::minutes(1);
        for (const char* name : {"h", "hr", "hrs", "hour", "hours", "hora", "horas"})
            known[name] = Duration::hours(1);
        for (const char* name : {"d", "day", "days", "dia", "dias"}) known[name] = Duration::days(1);
        return known;
    }();
    const auto unit = units.find(rest);
    return unit == units.end() ? std::nullopt : std::optional(unit->second * *value);
}

// Years: "10", "10-yr", "10 years", or the yearly chance "1/10".
std::optional<double> readReturnPeriod(const TableCell& cell) {
    std::optional<double> years;
    if (const double* number = std::get_if<double>(&cell)) {
        years = *number;
    } else if (const std::string* text = std::get_if<std::string>(&cell)) {
        const std::string kept = plainText(*text);
        std::string_view rest = kept;
        years = takeNumber(rest);
        if (years == 1 && rest.starts_with('/')) {
            rest.remove_prefix(1);
            years = takeNumber(rest);
        }
        skip(rest, " -");
        static constexpr std::string_view units[] = {"",      "yr", "yrs",       "year",
                                                     "years", "y",  "a\u00F1os", "anos"};
        if (std::find(std::begin(units), std::end(units), rest) == std::end(units)) return std::nullopt;
    }
    return years && isEntry(*years) ? years : std::nullopt;
}

std::vector<TableCell> split(std::string_view line) {
    const char separator = line.find('\t') != line.npos ? '\t' : line.find(';') != line.npos ? ';' : ',';
    std::vector<TableCell> cells;
    for (bool more = true; more;) {
        const std::size_t end = line.find(separator);
        cells.emplace_back(std::string(line.substr(0, end)));
        more = end != line.npos;
        if (more) line.remove_prefix(end + 1);
    }
    return cells;
}

// Low and high value, and the share of the way from one to the other on a log scale.
struct Between {
    std::size_t low, high;
    double share;
};
template <class Values, class Value>
Between between(const Values& sorted, Value value) {
    const auto above = std::lower_bound(sorted.begin(), sorted.end(), value);
    const auto high = static_cast<std::size_t>(above - sorted.begin());
    if (high < sorted.size() && sorted[high] == value) return {high, high, 0};
    return {high - 1, high, std::log(value / sorted[high - 1]) / std::log(sorted[high] / sorted[high - 1])};
}

Length geometric(Length low, Length high, double share) { return low * std::pow(high / low, share); }

Text yearsText(double years) {
    return Text::same(plain(years)) + (years == 1 ? Text{" year", " año"} : Text{" years", " años"});
}

}  // namespace

// Finds the table among what was pasted, and checks it.
class RainTableReader {
  public:
    RainTableReader(std::vector<std::vector<TableCell>> rows, Length unit, const char* argument)
        : rows_(std::move(rows)), unit_(unit), argument_(argument) {}

    RainTable read() {
        for (std::vector<TableCell>& row : rows_) {
            if (row.empty()) continue;
            const bool duration = !isBlank(row[0]) && readDuration(row[0]).has_value();
            if (table_.durations_.empty() && !duration && isHeading(row)) {
                columns_.clear();
                for (std::size_t column = 1; column < row.size(); ++column)
                    if (!isBlank(row[column])) columns_.push_back(column);
                heading_ = &row;
            } else if (!duration && repeatsHeading(row)) {
                break;  // the next table: bounds, or another station
            } else if (duration) {
                if (table_.durations_.empty()) takeHeading();
                takeRow(row);
            } else if (!table_.durations_.empty()) {
                refuseStray(row);
            } else {
                believe(row);
            }
        }
        if (table_.durations_.empty())
            refuse(
                {"no durations were found below the return periods; the first column holds 5-min, 2-hr, "
                 "1-day and so on",
                 "no hay duraciones bajo los períodos de retorno; la primera columna lleva 5-min, 2-hr, "
                 "1-day, etc."});
        return std::move(table_);
    }

  private:
    [[noreturn]] void refuse(const Text& what) const {
        throw Error(Error::Kind::BadArgument, argument_,
                    Text::same(std::string(argument_) + ": ") + what + Text::same("."));
    }

    static bool isHeading(const std::vector<TableCell>& row) {
        bool any = false;
        for (std::size_t column = 1; column < row.size(); ++column) {
            if (isBlank(row[column])) continue;
            if (!readReturnPeriod(row[column])) return false;
            any = true;
        }
        return any;
    }

    bool repeatsHeading(const std::vector<TableCell>& row) const {
        if (table_.durations_.empty()) return false;
        for (std::size_t i = 0; i < columns_.size(); ++i)
            if (columns_[i] >= row.size() || readReturnPeriod(row[columns_[i]]) != table_.returns_[i])
                return false;
        return true;
    }

    // Titles above the table may name the unit.
    void believe(const std::vector<TableCell>& row) {
        for (const TableCell& cell : row) {
            const std::string* text = std::get_if<std::string>(&cell);
            if (text == nullptr) continue;
            const std::string title = plainText(*text);
            if (title.find("intensit") != title.npos || title.find("intensidad") != title.npos)
                intensities_ = true;
            if (title.find("millimet") != title.npos) unit_ = Length::millimetres(1);
            if (title.find("inches") != title.npos) unit_ = Length::inches(1);
        }
    }

    void takeHeading() {
        if (heading_ == nullptr)
            refuse(
                {"no return periods were found above the durations; the first row holds years: 1, 2, 5, 10 "
                 "and so on",
                 "no hay períodos de retorno sobre las duraciones; la primera fila "
                 "lleva años: 1, 2, 5, 10, etc."});
        for (std::size_t column : columns_) {
            const double years = *readReturnPeriod((*heading_)[column]);
            if (!table_.returns_.empty() && years <= table_.returns_.back()) {
                refuse(Text{"out of order: ", "fuera de orden: "} + yearsText(years) +
                       Text{" stands after ", " está después de "} + yearsText(table_.returns_.back()) +
                       Text{"; return periods must grow from left to right",
                            "; los períodos de retorno deben crecer de izquierda a derecha"});
            }
            table_.returns_.push_back(years);
        }
    }

    void takeRow(const std::vector<TableCell>& row) {
        const Duration duration = *readDuration(row[0]);
        const std::string name = durationText(duration);
        if (!table_.durations_.empty() && duration <= table_.durations_.back()) {
            const std::string before = durationText(table_.durations_.back());
            refuse({"out of order: " + name + " stands below " + before +
                        "; durations must grow from top to bottom",
                    "fuera de orden: " + name + " está debajo de " + before +
                        "; las duraciones deben crecer de arriba abajo"});
        }
        for (std::size_t i = 0; i < columns_.size(); ++i) {
            const TableCell cell = columns_[i] < row.size() ? row[columns_[i]] : TableCell{};
            const Text place = Text{name + " at ", name + " a "} + yearsText(table_.returns_[i]);
            const std::optional<double> entry = readEntry(cell);
            if (!entry && isBlank(cell))
                refuse(Text{"a hole: there is no rain for ", "un hueco: no hay lluvia para "} + place);
            if (!entry)
                refuse(Text{"the rain for ", "la lluvia para "} + place + Text{" is ", " es "} +
                       Text::same(asWritten(cell)) +
                       Text{", which is not a depth above 0", ", que no es una altura mayor que 0"});
            take(*entry, duration, i, place);
        }
        for (std::size_t column = 1; column < row.size(); ++column)
            if (readEntry(row[column]) && !std::binary_search(columns_.begin(), columns_.end(), column))
                refuse(Text{"a hole: a return period is missing above column ",
                            "un hueco: falta un período de retorno sobre la columna "} +
                       Text::same(plain(static_cast<double>(column + 1))));
        table_.durations_.push_back(duration);
    }

    void take(double entry, Duration duration, std::size_t i, const Text& place) {
        const Length depth = unit_ * (intensities_ ? entry * duration.hours() : entry);
        if (!table_.durations_.empty()) {
            const Length above = table_.entry(table_.durations_.size() - 1, i);
            // Printed intensities are rounded, so that depths made from them may shrink by a hair.
            const double grown = intensities_ ? 1.05 : 1;
            if (depth * grown < above)
                refuse(
                    Text{"the rain for ", "la lluvia para "} + place +
                    Text{" is less than in the shorter time above it; a longer time brings more rain. Is "
                         "this a "
                         "table of intensities? Then keep its title, which says so, or paste depths",
                         " es menos que en el tiempo menor que está arriba; más tiempo trae más lluvia. ¿Es "
                         "una tabla de intensidades? Entonces conserve su título, "
                         "que lo dice, o pegue alturas"});
        }
        if (i > 0 && depth < table_.depths_.back())
            refuse(Text{"the rain for ", "la lluvia para "} + place +
                   Text{" is less than for the shorter return period beside it",
                        " es menos que para el período de retorno menor que está a su lado"});
        table_.depths_.push_back(depth);
    }

    // Rows of words below the table are its footer; rows with depths but no duration are a mistake.
    void refuseStray(const std::vector<TableCell>& row) const {
        for (std::size_t column : columns_) {
            if (column >= row.size() || !readEntry(row[column])) continue;
            const std::string before = durationText(table_.durations_.back());
            if (isBlank(row[0]))
                refuse({"a hole: a duration is missing in the row below " + before,
                        "un hueco: falta una duración en la fila debajo de " + before});
            refuse(
                {asWritten(row[0]) + " below " + before + " is not a duration such as 5-min, 2-hr or 1-day",
                 asWritten(row[0]) + " debajo de " + before +
                     " no es una duración como 5-min, 2-hr o 1-day"});
        }
    }

    std::vector<std::vector<TableCell>> rows_;
    Length unit_;
    const char* argument_;
    bool intensities_ = false;
    const std::vector<TableCell>* heading_ = nullptr;
    std::vector<std::size_t> columns_;  // that hold a return period
    RainTable table_;
};

RainTable RainTable::parse(const std::vector<TableCell>& cells, std::size_t columns, Length unit,
                           const char* argument) {
    std::vector<std::vector<TableCell>> rows;
    for (std::size_t start = 0; columns > 0 && start + columns <= cells.size(); start += columns) {
        const auto first = cells.begin() + static_cast<std::ptrdiff_t>(start);
        std::vector<TableCell> row(first, first + static_cast<std::ptrdiff_t>(columns));
        const std::string* line = std::get_if<std::string>(&row[0]);
        if (line != nullptr && std::all_of(row.begin() + 1, row.end(), isBlank)) row = split(*line);
        rows.push_back(std::move(row));
    }
    return RainTableReader(std::move(rows), unit, argument).read();
}

RainTable RainTable::parse(std::string_view text, Length unit, const char* argument) {
    std::vector<std::vector<TableCell>> rows;
    for (bool more = true; more;) {
        const std::size_t end = text.find('\n');
        rows.push_back(split(text.substr(0, end)));
        more = end != text.npos;
        if (more) text.remove_prefix(end + 1);
    }
    return RainTableReader(std::move(rows), unit, argument).read();
}

Length RainTable::depth(Duration duration, double returnYears) const {
    if (!(duration > Duration{})) requirePositive(duration.minutes(), "duration");
    if (duration < durations_.front()) return intensity(duration, returnYears) * duration;
    if (duration > durations_.back()) {
        const std::string given = plain(duration.minutes());
        const std::string longest =
            durationText(durations_.back()) + " (" + plain(durations_.back().minutes()) + " min)";
        throw Error(
            Error::Kind::OutsideValidity, "duration",
            Text{"duration is " + given + " minutes, beyond the rain table, which ends at " + longest + ".",
                 "duration es " + given + " minutos, más allá de la tabla de lluvia, que termina en " +
                     longest + "."});
    }
    if (!(returnYears >= returns_.front() && returnYears <= returns_.back())) {
        throw Error(Error::Kind::OutsideValidity, "return",
                    Text{"return is ", "return es "} + yearsText(returnYears) +
                        Text{", outside the rain table, which holds ",
                             ", fuera de la tabla de lluvia, que tiene de "} +
                        Text::same(plain(returns_.front())) + Text{" to ", " a "} +
                        yearsText(returns_.back()) + Text::same("."));
    }
    const Between row = between(durations_, duration);
    const Between column = between(returns_, returnYears);
    return geometric(geometric(entry(row.low, column.low), entry(row.low, column.high), column.share),
                     geometric(entry(row.high, column.low), entry(row.high, column.high), column.share),
                     row.share);
}

RainRate RainTable::intensity(Duration duration, double returnYears) const {
    if (!(duration >= Duration{})) requireNotNegative(duration.minutes(), "duration");
    const Duration counted = std::max(duration, durations_.front());
    return RainRate::fromSi(depth(counted, returnYears).si() / counted.si());
}

RainRate formulaIntensity(RainRate a, double b, double c, Duration duration) {
    requirePositive(duration.minutes(), "duration");
    requirePositive(a, "a");
    requireNotNegative(b, "b");
    requireBetween(c, 0, 2, "c");
    return a / std::pow(duration.minutes() + b, c);
}

std::string durationText(Duration duration) {
    if (duration < Duration::minutes(119)) return plain(duration.minutes()) + "-min";
    if (duration < Duration::hours(47)) return plain(duration.hours()) + "-hr";
    return plain(duration.days()) + "-day";
}

}  // namespace trenchbook
