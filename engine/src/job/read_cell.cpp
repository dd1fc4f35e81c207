// One reader for every input cell: by the kind of its column.
#include <cctype>
#include <cmath>

#include "job/cell_words.h"
#include "trenchbook/core/error.h"
#include "trenchbook/core/tape.h"
#include "trenchbook/job/read.h"
#include "trenchbook/lines/network.h"
#include "trenchbook/water/surfaces.h"

namespace trenchbook {
namespace {

// A unit that people write behind a number, and its size in SI; in lower case, without blanks and full stops.
struct Spelling {
    const char* unit;
    double si;
};

std::vector<Spelling> spellings(CellKind kind) {
    const double foot = metresPerFoot, inch = metresPerInch;
    switch (kind) {
        case CellKind::Feet:
            return {{"ft", foot}, {"feet", foot}, {"foot", foot}, {"pies", foot}, {"m", 1}, {"metros", 1}};
        case CellKind::Inches:
        case CellKind::Pipe:
        case CellKind::Pipes:
            return {{"in", inch}, {"inch", inch},     {"inches", inch}, {"\"", inch},
                    {"”", inch},  {"pulgadas", inch}, {"mm", 1e-3},     {"cm", 1e-2}};
        case CellKind::SquareFeet: {
            const double square = foot * foot;
            return {{"sqft", square}, {"sf", square}, {"ft2", square}, {"ft²", square}, {"m2", 1}, {"m²", 1}};
        }
        case CellKind::CubicFeet: {
            const double cube = foot * foot * foot;
            return {{"cuft", cube},      {"cf", cube},       {"ft3", cube}, {"ft³", cube},
                    {"cuyd", 27 * cube}, {"yd3", 27 * cube}, {"m3", 1},     {"m³", 1}};
        }
        case CellKind::Pounds:
            return {{"lb", Weight::pounds(1).si()},
                    {"lbs", Weight::pounds(1).si()},
                    {"kg", Weight::kilograms(1).si()}};
        case CellKind::Degrees:
            return {{"deg", 1}, {"degrees", 1}, {"°", 1}, {"º", 1}, {"grados", 1}};
        case CellKind::Minutes:
        case CellKind::Hours:
            return {{"min", 60},    {"mins", 60},    {"minutes", 60}, {"minutos", 60},
                    {"h", 3600},    {"hr", 3600},    {"hrs", 3600},   {"hours", 3600},
                    {"hour", 3600}, {"horas", 3600}, {"days", 86400}};
        case CellKind::Years:
            return {{"years", 1}, {"year", 1}, {"yr", 1}, {"años", 1}};
        case CellKind::MinutesPerInch:
            return {{"min/in", info(unitOf(kind)).siPerUs},
                    {"mpi", info(unitOf(kind)).siPerUs},
                    {"min/mm", info(unitOf(kind)).siPerMetric}};
        case CellKind::Gpm:
            return {{"gpm", Flow::gpm(1).si()},
                    {"gal/min", Flow::gpm(1).si()},
                    {"l/s", Flow::litresPerSecond(1).si()},
                    {"cfs", Flow::cfs(1).si()}};
        case CellKind::InchesPerHour:
            return {{"in/hr", info(unitOf(kind)).siPerUs},
                    {"in/h", info(unitOf(kind)).siPerUs},
                    {"mm/h", info(unitOf(kind)).siPerMetric},
                    {"mm/hr", info(unitOf(kind)).siPerMetric}};
        case CellKind::Share:
        case CellKind::Coefficient:
            return {{"%", 0.01}};
        default:
            return {};
    }
}

double siPerUnit(CellKind kind, UnitSystem units) { return info(unitOf(kind)).si(units); }

// The number in SI; none where it has no unit of this kind behind it.
std::optional<double> measuredNumber(CellKind kind, std::string_view typed, UnitSystem units) {
    const std::optional<cells::TypedNumber> number = cells::typedNumber(typed);
    if (!number) return std::nullopt;
    if (number->unit.empty()) return number->value * siPerUnit(kind, units);
    for (const Spelling& spelling : spellings(kind))
        if (number->unit == spelling.unit) return number->value * spelling.si;
    return std::nullopt;
}

// What was typed, for a sentence: a pasted page is cut short.
std::string quotedText(std::string_view typed) {
    constexpr std::size_t most = 60;
    std::string shown(typed.substr(0, most));
    if (typed.size() > most) {
        // Not within a letter of several bytes.
        while (!shown.empty() && (static_cast<unsigned char>(typed[shown.size()]) & 0xC0) == 0x80)
            shown.pop_back();
        shown += "…";
    }
    return "\"" + shown + "\"";
}

class CellReader {
  public:
    CellReader(const InputColumn& column, UnitSystem units) : column_(column), units_(units) {}

    CellReading read(const Cell& cell) const {
        CellReading reading;
        if (const double* number = std::get_if<double>(&cell)) {
            reading.blank = false;
            guarded(reading, plain(*number, 6), [&] { fromNumber(reading, *number); });
        } else if (const std::string* text = std::get_if<std::string>(&cell)) {
            const std::string_view typed = cells::trimmed(*text);
            if (typed.empty()) return reading;
            reading.blank = false;
            if (typed == errorMark)
                refuse(reading, "error",
                       Text::same(column_.heading) + Text{" holds an error", " contiene un error"});
            else
                guarded(reading, quotedText(typed), [&] { fromText(reading, typed); });
        }
        return reading;
    }

  private:
    template <class Read>
    void guarded(CellReading& reading, const std::string& typed, const Read& read) const {
        try {
            read();
        } catch (const Error& error) {
            const std::string heading = column_.heading;
            refuse(reading, typed,
                   {error.sentence(Language::English, heading, typed),
                    error.sentence(Language::Spanish, heading, typed)});
        }
    }

    void refuse(CellReading& reading, std::string typed, Text sentence) const {
        reading = {.blank = false};
        if (typed.size() > 2 && typed.front() == '"') typed = typed.substr(1, typed.size() - 2);
        reading.unusable = Unusable{column_.heading, std::move(typed), std::move(sentence)};
    }
    [[noreturn]] void refuse(const Text& typed) const {
        throw Error(Error::Kind::BadArgument, column_.heading, typed, allowedText(column_, units_));
    }
    [[noreturn]] void refuse(const std::string& typed) const { refuse(Text::same(typed)); }

    void fromNumber(CellReading& reading, double number) const {
        if (!std::isfinite(number)) refuse(Text{"not a number", "un número indefinido"});
        const std::string written = plain(number, 6);
        switch (column_.kind) {
            case CellKind::Name:
                reading.text = written;
                return;
            case CellKind::Choice:
            case CellKind::NodeKinds:
            case CellKind::OverPipe:
            case CellKind::Curve:
                return fromText(reading, written);
            case CellKind::Size:
                reading.text = sizeOf(written);
                return;
            case CellKind::Pipe:
            case CellKind::Pipes:
                reading.pipes = {boreOf(number * siPerUnit(column_.kind, units_), written)};
                return;
            case CellKind::Date:
                reading.number = Date::serial(inRange(number, written)).days;
                return;
            default:
                reading.number = inRange(number * siPerUnit(column_.kind, units_), written);
        }
    }

    void fromText(CellReading& reading, std::string_view typed) const {
        const std::string quoted = quotedText(typed);
        switch (column_.kind) {
            case CellKind::Name:
                reading.text = typed;
                return;
            case CellKind::Choice:
                return choose(reading, typed, quoted);
            case CellKind::NodeKinds:
                reading.kinds = nodeKinds(typed);
                return;
            case CellKind::OverPipe:
                reading.surface = coverSurface(typed, column_.heading);
                return;
            case CellKind::Size:
                reading.text = sizeOf(typed);
                return;
            case CellKind::Pipe:
                reading.pipes = {pipeOf(typed)};
                return;
            case CellKind::Pipes:
                reading.pipes = pipesOf(typed);
                if (reading.pipes.empty()) refuse(quoted);
                return;
            case CellKind::Curve:
                reading.curve = curveOf(typed, quoted);
                return;
            case CellKind::Date:
                reading.number = dateOf(typed, quoted).days;
                return;
            default:
                reading.number = inRange(measured(typed, quoted), quoted);
        }
    }

    double measured(std::string_view typed, const std::string& quoted) const {
        const CellKind kind = column_.kind;
        if (kind == CellKind::Slope) return slopeOf(typed, quoted);
        if (const std::optional<double> si = measuredNumber(kind, typed, units_)) return *si;
        if (kind == CellKind::Feet || kind == CellKind::Inches) return tapeOf(typed, quoted);
        if (kind == CellKind::Coefficient) return runoffCoefficient(typed, RangePart::High);
        refuse(quoted);
    }

    double slopeOf(std::string_view typed, const std::string& quoted) const {
        try {
            return readSlope(typed).fraction();
        } catch (const Error&) {
            refuse(quoted);
        }
    }

    // Feet and inches, fractions. In a column of inches a fraction alone counts in inches.
    double tapeOf(std::string_view typed, const std::string& quoted) const {
        const bool metric = units_ == UnitSystem::Metric;
        try {
            return readTape(typed, metric ? BareNumber::Metres : BareNumber::Feet).si();
        } catch (const Error&) {
            if (column_.kind != CellKind::Inches || metric) refuse(quoted);
        }
        try {
            return readTape(std::string(typed) + " in").si();
        } catch (const Error&) {
            refuse(quoted);
        }
    }

    double inRange(double si, const std::string& typed) const {
        const double unit = siPerUnit(column_.kind, UnitSystem::US);
        const double least = column_.least * unit, greatest = column_.greatest * unit;
        // A limit typed in the other system comes back a hair off.
        const double hair = 1e-9;
        const bool low = column_.above ? !(si > least) : si < least - hair * (std::abs(least) + unit);
        // A percent typed for a share is asked back.
        if (column_.kind == CellKind::Share || column_.kind == CellKind::Coefficient)
            requireShare(si, column_.heading);
        if (low || si > greatest + hair * (std::abs(greatest) + unit)) refuse(typed);
        return si;
    }

    void choose(CellReading& reading, std::string_view typed, const std::string& quoted) const {
        const std::string key = nameKey(typed);
        std::optional<std::size_t> begun;
        std::size_t beginnings = 0;
        for (std::size_t i = 0; i < column_.words.size(); ++i) {
            const ChoiceWord& word = column_.words[i];
            std::vector<std::string> meant = {nameKey(word.name.en), nameKey(word.name.es)};
            for (const char* other : word.words) meant.push_back(nameKey(other));
            bool begins = false;
            for (const std::string& one : meant) {
                if (one == key) return take(reading, i);
                begins = begins || one.starts_with(key);
            }
            if (!begins) continue;
            begun = i;
            ++beginnings;
        }
        if (beginnings != 1) refuse(quoted);
        take(reading, *begun);
    }
    void take(CellReading& reading, std::size_t place) const {
        reading.number = static_cast<double>(place);
        reading.text = column_.words[place].name.en;
    }

    // A bore typed as text counts in the job's unit, unless it says its own.
    Pipe pipeOf(std::string_view typed) const {
        if (const std::optional<double> bore = measuredNumber(CellKind::Pipe, typed, units_))
            return boreOf(*bore, quotedText(typed));
        return stockPipe(typed);
    }
    Pipe boreOf(double si, const std::string& typed) const {
        return bareBore(Length::fromSi(inRange(si, typed)));
    }
    std::vector<Pipe> pipesOf(std::string_view typed) const {
        std::vector<Pipe> pipes;
        while (!typed.empty()) {
            const std::size_t bar = std::min(typed.find('|'), typed.size());
            const std::string_view one = cells::trimmed(typed.substr(0, bar));
            if (!one.empty()) pipes.push_back(pipeOf(one));
            typed.remove_prefix(std::min(bar + 1, typed.size()));
        }
        return pipes;
    }

    // "0:24; 20:21": flow and head of each point.
    std::vector<PumpPoint> curveOf(std::string_view typed, const std::string& quoted) const {
        std::vector<PumpPoint> curve;
        while (!typed.empty()) {
            const std::size_t end = std::min(typed.find_first_of(";|\n"), typed.size());
            const std::string_view point = cells::trimmed(typed.substr(0, end));
            typed.remove_prefix(std::min(end + 1, typed.size()));
            if (point.empty()) continue;
            const std::size_t colon = point.find(':');
            if (colon == point.npos) refuse(quoted);
            const auto flow = measuredNumber(CellKind::Gpm, cells::trimmed(point.substr(0, colon)), units_);
            const auto head = measuredNumber(CellKind::Feet, cells::trimmed(point.substr(colon + 1)), units_);
            if (!flow || !head || *flow < 0 || *head < 0) refuse(quoted);
            curve.push_back({Flow::fromSi(*flow), Length::fromSi(*head)});
        }
        if (curve.empty()) refuse(quoted);
        return curve;
    }

    // "12x12" from "12 x 12 in", "9" from "9\"": one or two numbers above 0 in the job's unit.
    std::string sizeOf(std::string_view typed) const {
        std::string size;
        std::string bare;
        for (std::size_t i = 0; i < typed.size(); ++i) {
            const char c = typed[i];
            if (typed.substr(i).starts_with("×")) {
                bare += 'x';
                ++i;
            } else if (c != ' ' && c != '"') {
                bare += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
            }
        }
        const std::string_view unit = units_ == UnitSystem::Metric ? "mm" : "in";
        std::string_view rest = bare;
        for (int part = 0; part < 2; ++part) {
            const std::size_t times = std::min(rest.find('x'), rest.size());
            std::string_view one = rest.substr(0, times);
            if (one.ends_with(unit)) one.remove_suffix(unit.size());
            const std::optional<cells::TypedNumber> number = cells::typedNumber(one);
            if (!number || !number->unit.empty() || number->value <= 0) refuse(quotedText(typed));
            size += (part == 0 ? "" : "x") + plain(number->value, 6);
            if (times == rest.size()) return size;
            rest.remove_prefix(times + 1);
        }
        refuse(quotedText(typed));
    }

    Date dateOf(std::string_view typed, const std::string& quoted) const {
        // Year-month-day, a month and a day of one or two figures.
        int parts[3] = {};
        int figures[3] = {};
        int part = 0;
        for (const char c : typed) {
            if (c == '-' && part < 2) {
                ++part;
            } else if (std::isdigit(static_cast<unsigned char>(c)) && figures[part] < 4) {
                parts[part] = 10 * parts[part] + (c - '0');
                ++figures[part];
            } else {
                refuse(quoted);
            }
        }
        if (part != 2 || figures[0] != 4 || figures[1] == 0 || figures[1] > 2 || figures[2] == 0 ||
            figures[2] > 2)
            refuse(quoted);
        const Date day = Date::of(parts[0], parts[1], parts[2]);
        inRange(day.days, quoted);
        return day;
    }

    const InputColumn& column_;
    UnitSystem units_;
};

}  // namespace

CellReading readCell(const InputColumn& column, const Cell& cell, UnitSystem units) {
    return CellReader(column, units).read(cell);
}

}  // namespace trenchbook
