#include "catalog/arguments.h"

#include <algorithm>
#include <cctype>
#include <cmath>

#include "trenchbook/core/tape.h"

namespace trenchbook::addin {
namespace {

const Value nothing = Nothing{};

bool isBlankText(const std::string& text) {
    return std::all_of(text.begin(), text.end(), [](unsigned char c) { return std::isspace(c); });
}

std::string lower(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(), [](unsigned char c) { return std::tolower(c); });
    return text;
}

const Text notANumber{"not a number", "un número indefinido"};
const Text blankWord{"blank", "una celda vacía"};

Text cellAsTyped(const Cell& cell) {
    if (const double* number = std::get_if<double>(&cell))
        return std::isfinite(*number) ? Text::same(plain(*number, 6)) : notANumber;
    if (const std::string* text = std::get_if<std::string>(&cell)) return Text::same("\"" + *text + "\"");
    return blankWord;
}

Cell single(const Value& value) {
    if (const double* number = std::get_if<double>(&value)) return *number;
    if (const std::string* text = std::get_if<std::string>(&value)) return *text;
    return Nothing{};
}

bool isBlank(const Cell& cell) {
    if (std::holds_alternative<Nothing>(cell)) return true;
    const std::string* text = std::get_if<std::string>(&cell);
    return text != nullptr && isBlankText(*text);
}

// What a number argument of this measure may be, for messages about text in its place.
Text expected(const Argument& argument, UnitSystem units) {
    const UnitInfo& measure = info(argument.measure);
    const Text& unit = measure.written(units);
    if (argument.measure == Measure::Slope)
        return {"a fraction such as 0.01, or 1/8 in/ft, 1%, 1:96",
                "una fracción como 0.01, o 1/8 in/ft, 1%, 1:96"};
    if (argument.measure == Measure::Feet)
        return units == UnitSystem::Metric ? Text{"a length in m, such as 3.5", "una longitud en m, como 3.5"}
                                           : Text{"a length in ft, such as 12.4, 5' 6-1/2\", 66 1/2 in",
                                                  "una longitud en ft, como 12.4, 5' 6-1/2\", 66 1/2 in"};
    if (unit.empty()) return {"a number", "un número"};
    return Text{"a number in ", "un número en "} + unit;
}

bool refuses(const Argument& argument, double si) {
    return argument.limits && !argument.limits->toldByFunction &&
           !holds(*argument.limits, argument.measure, si);
}

// Shares and slopes that look like a percent are asked back.
std::optional<Text> percentMeant(const Argument& argument, double si) {
    const bool slope = argument.measure == Measure::Slope;
    const bool share = argument.limits->greatest == 1 && (slope || argument.limits->least == 0);
    if (!share || !(si >= 1 && si <= 100)) return std::nullopt;
    const std::string typed = plain(si, 6), fraction = plain(si / 100, 6);
    const Text meant = slope ? Text{typed + "% or ", typed + "% o "} : Text{};
    return Text{"f " + typed + " percent is meant, write ",
                "i se trata de " + typed + " por ciento, escriba "} +
           meant + Text::same(fraction);
}
[[noreturn]] void refuseOutside(const Argument& argument, double si, const Text& typed) {
    const Text allowed = allowedText(*argument.limits, argument.measure);
    if (const std::optional<Text> percent = percentMeant(argument, si))
        throw Error(Error::Kind::BadArgument, argument.name,
                    Text{argument.name + " is ", argument.name + " es "} + typed +
                        Text{"; allowed: ", "; se admite: "} + allowed + Text{". I", ". S"} + *percent +
                        Text::same("."));
    const Text fraction =
        argument.measure == Measure::Slope ? Text{" (a fraction)", " (una fracción)"} : Text{};
    throw Error(Error::Kind::BadArgument, argument.name, typed, allowed + fraction);
}
Text allowedInRow(const Argument& argument, double si) {
    const Text allowed = allowedText(*argument.limits, argument.measure);
    const std::optional<Text> percent = percentMeant(argument, si);
    return percent ? allowed + Text{" (i", " (s"} + *percent + Text::same(")") : allowed;
}

}  // namespace

Text rowCount(std::size_t rows) { return counted(rows, {"row", "fila"}, {"rows", "filas"}); }

Text leftOut() { return {"left out", "un dato omitido"}; }

Text asTyped(const Value& value) {
    if (const Range* range = std::get_if<Range>(&value))
        return Text{"a range of ", "un rango de "} +
               Text::same(std::to_string(range->rows) + " x " + std::to_string(range->columns));
    return cellAsTyped(single(value));
}

Arguments::Arguments(const Function& function, std::span<const Value> values)
    : function_(function), values_(values) {
    std::size_t next = function.arguments.size();
    if (!function.arguments.empty() && function.arguments.back().variadic) return;
    const auto tail = [&](const char* argument, const char* first, const char* second) {
        const std::size_t index = next++;
        if (index >= values_.size()) return false;
        const Cell cell = single(values_[index]);
        const double* zero = std::get_if<double>(&cell);
        if (isBlank(cell) || (zero != nullptr && *zero == 0)) return false;  // left out, or a blank cell
        const std::string* typed = std::get_if<std::string>(&cell);
        const std::string word = typed == nullptr ? "" : lower(*typed);
        if (word == lower(second)) return true;
        if (word != lower(first))
            throw Error(Error::Kind::BadArgument, argument, asTyped(values_[index]),
                        Text::same(std::string("\"") + first + "\", \"" + second + "\""));
        return false;
    };
    if (takesUnits(function) && tail("units", "US", "metric")) units_ = UnitSystem::Metric;
    if (takesLanguage(function) && tail("language", "en", "es")) language_ = Language::Spanish;
    firstLater_ = next;
    next += function.later.size();
    if (values_.size() > next)
        throw Error(
            Error::Kind::BadArgument, "arguments",
            Text{"", "una lista de "} + counted(values_.size(), {"value", "valor"}, {"values", "valores"}),
            {"at most " + std::to_string(next), "como máximo " + std::to_string(next)});
    // A column that is not there has no rows that could be refused; a single value refuses itself when it is read.
    for (std::size_t i = 0; i < function.arguments.size(); ++i)
        if (function.arguments[i].column && !function.arguments[i].optional &&
            std::holds_alternative<Nothing>(raw(i)))
            refuse(i, {"one column", "una columna"});
}

const Value& Arguments::raw(std::size_t index) const {
    return index < values_.size() ? values_[index] : nothing;
}

bool Arguments::given(std::size_t index) const {
    const Value& value = raw(index);
    if (const std::string* text = std::get_if<std::string>(&value)) return !isBlankText(*text);
    return !std::holds_alternative<Nothing>(value);
}

const std::string& Arguments::name(std::size_t index) const { return function_.arguments[index].name; }

void Arguments::refuse(std::size_t index, Text allowed) const {
    throw Error(Error::Kind::BadArgument, name(index), asTyped(raw(index)), std::move(allowed));
}

double Arguments::readCell(const Argument& argument, const Cell& cell) const {
    if (const double* number = std::get_if<double>(&cell)) {
        if (!std::isfinite(*number))
            throw Error(Error::Kind::BadArgument, argument.name, notANumber, expected(argument, units_));
        return from(argument.measure, *number);
    }
    const std::string* text = std::get_if<std::string>(&cell);
    if (text == nullptr)
        throw Error(Error::Kind::BadArgument, argument.name, leftOut(), expected(argument, units_));
    try {
        if (argument.measure == Measure::Slope) return readSlope(*text).si();
        if (argument.measure == Measure::Feet)
            return readTape(*text, units_ == UnitSystem::Metric ? BareNumber::Metres : BareNumber::Feet).si();
    } catch (const Error& error) {
        throw Error(error.kind(), argument.name, cellAsTyped(cell), expected(argument, units_));
    }
    throw Error(Error::Kind::BadArgument, argument.name, cellAsTyped(cell), expected(argument, units_));
}

double Arguments::cellToSi(std::size_t index, const Cell& cell) const {
    const Argument& argument = function_.arguments[index];
    const double si = readCell(argument, cell);
    if (refuses(argument, si)) refuseOutside(argument, si, cellAsTyped(cell));
    return si;
}

Arguments::Entry Arguments::entryOf(std::size_t index, const Cell& cell) const {
    const Argument& argument = function_.arguments[index];
    if (isBlank(cell)) return {};
    double si = 0;
    try {
        si = readCell(argument, cell);
    } catch (const Error&) {
        return {Entry::State::Bad, 0, cellAsTyped(cell), expected(argument, units_)};
    }
    if (refuses(argument, si))
        return {Entry::State::Outside, 0, cellAsTyped(cell), allowedInRow(argument, si)};
    return {Entry::State::Good, si, {}, {}};
}

double Arguments::si(std::size_t index) const {
    const Value& value = raw(index);
    if (const double* number = std::get_if<double>(&value)) return cellToSi(index, *number);
    if (std::holds_alternative<Range>(value)) refuse(index, {"a single cell", "una sola celda"});
    if (!given(index))
        throw Error(Error::Kind::BadArgument, name(index), leftOut(),
                    expected(function_.arguments[index], units_));
    return cellToSi(index, single(value));
}

double Arguments::number(std::size_t index) const { return si(index); }
double Arguments::number(std::size_t index, double fallback) const {
    return given(index) ? si(index) : fallback;
}
Slope Arguments::slope(std::size_t index) const { return Slope::fromSi(si(index)); }

std::string Arguments::text(std::size_t index) const {
    const Value& value = raw(index);
    if (const std::string* text = std::get_if<std::string>(&value); text != nullptr && !isBlankText(*text))
        return *text;
    if (const double* number = std::get_if<double>(&value)) return plain(*number, 6);
    if (std::holds_alternative<Range>(value)) refuse(index, {"a single cell", "una sola celda"});
    throw Error(Error::Kind::BadArgument, name(index), leftOut(), {"text", "texto"});
}

std::string Arguments::text(std::size_t index, const std::string& fallback) const {
    return given(index) ? text(index) : fallback;
}

Pipe Arguments::pipe(std::size_t index) const {
    if (std::holds_alternative<Range>(raw(index))) refuse(index, {"a single cell", "una sola celda"});
    if (!given(index))
        throw Error(
            Error::Kind::BadArgument, name(index), leftOut(),
            {"a stock name such as 4 SDR35, or a bore", "un nombre como 4 SDR35, o un diámetro interior"});
    return cellToPipe(single(raw(index)));
}

Pipe Arguments::cellToPipe(const Cell& cell) const {
    if (const double* bore = std::get_if<double>(&cell))
        return bareBore(Length::fromSi(from(Measure::Pipe, *bore)));
    return pipeNamed(std::get<std::string>(cell));
}

Pipe Arguments::pipeNamed(const std::string& text) const {
    const Pipe pipe = stockPipe(text);
    // A bore typed as text counts in the user's unit as well; with an inch mark it is inches.
    const char last = text[text.find_last_not_of(" \t")];
    const bool bare = pipe.name.empty() && (std::isdigit(static_cast<unsigned char>(last)) || last == '.');
    return bare ? bareBore(Length::fromSi(from(Measure::Pipe, pipe.nominal))) : pipe;
}

std::vector<Pipe> Arguments::pipes(std::size_t index) const {
    std::vector<Pipe> kept;
    for (std::size_t row = 0; row < rows(index); ++row) {
        const Range* cells = range(index);
        const Cell cell = cells ? cells->at(row, 0) : single(raw(index));
        if (isBlank(cell)) continue;
        try {
            kept.push_back(cellToPipe(cell));
        } catch (const Error& error) {
            const Text typed = cellAsTyped(cell), where = cells
                                                              ? Text{" in row " + std::to_string(row + 1),
                                                                     " en la fila " + std::to_string(row + 1)}
                                                              : Text{};
            throw Error(
                error.kind(), name(index),
                Text{name(index) + ": " + error.sentence(Language::English, "pipe" + where.en, typed.en),
                     name(index) + ": " + error.sentence(Language::Spanish, "pipe" + where.es, typed.es)});
        }
    }
    return kept;
}

double Arguments::roughness(std::size_t index, const Pipe& pipe) const {
    return number(index, pipe.roughness);
}

double Arguments::later(std::size_t index, double fallback) const {
    const Value& value = raw(firstLater_ + index);
    const Argument& argument = function_.later[index];
    if (const double* number = std::get_if<double>(&value); number != nullptr && std::isfinite(*number)) {
        const double si = from(argument.measure, *number);
        if (refuses(argument, si)) refuseOutside(argument, si, asTyped(value));
        return *number;
    }
    if (!given(firstLater_ + index)) return fallback;
    throw Error(Error::Kind::BadArgument, argument.name, asTyped(value), {"a number", "un número"});
}

Grid Arguments::laterTable(std::size_t index) const {
    const Value& value = raw(firstLater_ + index);
    if (const Range* cells = std::get_if<Range>(&value)) return *cells;
    const double* number = std::get_if<double>(&value);  // a lone blank cell, as Calc delivers it
    if (!given(firstLater_ + index) || (number != nullptr && *number == 0)) return {};
    throw Error(Error::Kind::BadArgument, function_.later[index].name, asTyped(value),
                {"a range with headings", "un rango con encabezados"});
}

const Range* Arguments::range(std::size_t index) const { return std::get_if<Range>(&raw(index)); }

// Empty text in place of a column that must be given is one blank row.
bool Arguments::here(std::size_t index) const {
    return given(index) ||
           (!function_.arguments[index].optional && !std::holds_alternative<Nothing>(raw(index)));
}

std::size_t Arguments::rows(std::size_t index) const {
    if (const Range* cells = range(index)) {
        if (cells->columns != 1) refuse(index, {"one column", "una columna"});
        return cells->rows;
    }
    return here(index) ? 1 : 0;
}

void Arguments::requireSameRows(std::initializer_list<std::size_t> indexes) const {
    std::optional<std::size_t> first;
    for (std::size_t index : indexes) {
        if (!here(index)) continue;
        const std::size_t height = rows(index);
        if (!first) {
            first = index;
        } else if (height != rows(*first)) {
            throw Error(Error::Kind::BadArgument, name(index), Text{"", "de "} + rowCount(height),
                        rowCount(rows(*first)) +
                            Text{", as many as " + name(*first), ", tantas como " + name(*first)});
        }
    }
}

std::vector<double> Arguments::siNumbers(std::size_t index) const {
    std::vector<double> kept;
    const std::size_t height = rows(index);
    for (std::size_t row = 0; row < height; ++row) {
        const Range* cells = range(index);
        const Cell cell = cells ? cells->at(row, 0) : single(raw(index));
        if (isBlank(cell)) continue;
        kept.push_back(cells == nullptr ? cellToSi(index, cell) : required(index, row, entryOf(index, cell)));
    }
    return kept;
}

void Arguments::refuseRow(std::size_t index, std::size_t row, const Text& typed, const Text& allowed) const {
    const std::string where = std::to_string(row + 1);
    throw Error(
        Error::Kind::BadArgument, name(index),
        Text{name(index) + ": " + typed.en + " in row " + where + "; allowed: " + allowed.en + ".",
             name(index) + ": " + typed.es + " en la fila " + where + "; se admite: " + allowed.es + "."});
}

double Arguments::required(std::size_t index, std::size_t row, const Entry& entry) const {
    if (entry.state != Entry::State::Good && entry.state != Entry::State::Empty && range(index) == nullptr)
        throw Error(Error::Kind::BadArgument, name(index), entry.typed, entry.allowed);
    if (entry.state == Entry::State::Empty)
        refuseRow(index, row, blankWord, expected(function_.arguments[index], units_));
    if (entry.state != Entry::State::Good) refuseRow(index, row, entry.typed, entry.allowed);
    return entry.si;
}

std::vector<double> Arguments::numbers(std::size_t index) const { return siNumbers(index); }

std::vector<std::string> Arguments::words(std::size_t index) const {
    std::vector<std::string> out;
    const std::size_t height = rows(index);
    for (std::size_t row = 0; row < height; ++row) {
        const Range* cells = range(index);
        const Cell cell = cells ? cells->at(row, 0) : single(raw(index));
        if (const double* number = std::get_if<double>(&cell)) {
            out.push_back(plain(*number, 6));
        } else if (isBlank(cell)) {
            out.emplace_back();
        } else {
            // Names are matched without the blanks around them.
            std::string text = std::get<std::string>(cell);
            text.erase(0, text.find_first_not_of(" \t"));
            text.erase(text.find_last_not_of(" \t") + 1);
            out.push_back(text);
        }
    }
    return out;
}

std::vector<Arguments::Entry> Arguments::entries(std::size_t index, std::size_t rowCount) const {
    std::vector<Entry> out(rowCount);
    if (!given(index)) return out;
    const Range* cells = range(index);
    for (std::size_t row = 0; row < rowCount && row < rows(index); ++row) {
        out[row] = entryOf(index, cells ? cells->at(row, 0) : single(raw(index)));
    }
    return out;
}

double Arguments::from(Measure measure, double number) const { return siOf(measure, number, units_); }

double Arguments::in(Measure measure, double si) const { return inUnit(measure, units_, si); }

double Arguments::answer(double si) const { return in(function_.measure, si); }

}  // namespace trenchbook::addin
