#include "trenchbook/core/tape.h"

#include <array>
#include <charconv>
#include <cmath>
#include <optional>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

// What text processors and autocorrection make of marks and fractions, and the plain spelling of each.
struct Spelling {
    std::string_view typed;
    std::string_view plain;
};
constexpr std::array spellings = {
    Spelling{"’", "'"},    Spelling{"′", "'"},    Spelling{"‘", "'"},    Spelling{"”", "\""},
    Spelling{"″", "\""},   Spelling{"“", "\""},   Spelling{"–", "-"},    Spelling{"−", "-"},
    Spelling{"½", " 1/2"}, Spelling{"¼", " 1/4"}, Spelling{"¾", " 3/4"}, Spelling{"⅛", " 1/8"},
    Spelling{"⅜", " 3/8"}, Spelling{"⅝", " 5/8"}, Spelling{"⅞", " 7/8"}, Spelling{"\u00A0", " "},
};

// Plain lower-case ASCII of what was typed, on the stack. Empty when it is too long or holds anything else:
// no reading of the trade needs more than a few dozen characters.
class PlainText {
  public:
    explicit PlainText(std::string_view typed) {
        while (!typed.empty()) {
            const auto c = static_cast<unsigned char>(typed.front());
            if (c < 0x80) {
                add(c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : static_cast<char>(c));
                typed.remove_prefix(1);
                continue;
            }
            const Spelling* known = nullptr;
            for (const Spelling& spelling : spellings)
                if (typed.starts_with(spelling.typed)) known = &spelling;
            if (known == nullptr) fits_ = false;
            if (!fits_) return;
            for (char plain : known->plain) add(plain);
            typed.remove_prefix(known->typed.size());
        }
    }
    std::string_view view() const {
        return fits_ ? std::string_view(buffer_.data(), size_) : std::string_view();
    }

  private:
    void add(char c) {
        if (size_ == buffer_.size())
            fits_ = false;
        else
            buffer_[size_++] = c;
    }
    std::array<char, 64> buffer_;
    std::size_t size_ = 0;
    bool fits_ = true;
};

struct Number {
    double value = 0;
    bool whole = false;     // digits alone: what may stand before inches or a fraction
    bool fraction = false;  // ends in n/d
};

enum class TapeUnit { Foot, Inch, Metre, Centimetre, Millimetre };

double metresPer(TapeUnit unit) {
    switch (unit) {
        case TapeUnit::Foot:
            return metresPerFoot;
        case TapeUnit::Inch:
            return metresPerInch;
        case TapeUnit::Metre:
            return 1;
        case TapeUnit::Centimetre:
            return 1e-2;
        case TapeUnit::Millimetre:
            return 1e-3;
    }
    return 1;
}

// Takes pieces from the front; each taker leaves the text alone when its piece is not there.
class Reader {
  public:
    explicit Reader(std::string_view text) : rest_(text) { skipBlanks(); }

    bool done() const { return rest_.empty(); }

    bool take(std::string_view piece) {
        if (!rest_.starts_with(piece)) return false;
        // A word ends where its letters end: "in" is not the start of "inch".
        if (isLetter(piece.back()) && rest_.size() > piece.size() && isLetter(rest_[piece.size()]))
            return false;
        rest_.remove_prefix(piece.size());
        skipBlanks();
        return true;
    }

    // +1 or -1.
    double takeSign() {
        if (take("-")) return -1;
        take("+");
        return 1;
    }

    // 12, 12.4, .5, 1/2. Mixed numbers join two of these.
    std::optional<Number> takeSimple() {
        double value = 0;
        const char* end = rest_.data() + rest_.size();
        if (rest_.empty() || !(isDigit(rest_.front()) || rest_.front() == '.')) return std::nullopt;
        const auto read = std::from_chars(rest_.data(), end, value, std::chars_format::fixed);
        if (read.ec != std::errc()) return std::nullopt;
        const std::string_view digits(rest_.data(), static_cast<std::size_t>(read.ptr - rest_.data()));
        Number number{value, digits.find('.') == std::string_view::npos, false};
        rest_.remove_prefix(digits.size());
        if (number.whole && rest_.size() > 1 && rest_[0] == '/' && isDigit(rest_[1])) {
            double divisor = 0;
            const auto below = std::from_chars(rest_.data() + 1, end, divisor, std::chars_format::fixed);
            const std::string_view under(rest_.data() + 1,
                                         static_cast<std::size_t>(below.ptr - rest_.data() - 1));
            if (below.ec != std::errc() || divisor == 0 || under.find('.') != std::string_view::npos)
                return std::nullopt;
            number = {value / divisor, false, true};
            rest_.remove_prefix(under.size() + 1);
        }
        skipBlanks();
        return number;
    }

    // Also `6 1/2` and `6-1/2`: a whole number and a proper fraction.
    std::optional<Number> takeMixed() {
        const std::optional<Number> first = takeSimple();
        if (!first || !first->whole) return first;
        const std::string_view before = rest_;
        take("-");
        const std::optional<Number> second = takeSimple();
        if (second && second->fraction && second->value < 1)
            return Number{first->value + second->value, false, true};
        rest_ = before;
        return first;
    }

    std::optional<TapeUnit> takeUnit() {
        struct Word {
            std::string_view spelled;
            TapeUnit unit;
        };
        static constexpr std::array words = {
            Word{"''", TapeUnit::Inch},       Word{"\"", TapeUnit::Inch},   Word{"in.", TapeUnit::Inch},
            Word{"in", TapeUnit::Inch},       Word{"inch", TapeUnit::Inch}, Word{"inches", TapeUnit::Inch},
            Word{"pulg.", TapeUnit::Inch},    Word{"pulg", TapeUnit::Inch}, Word{"pulgada", TapeUnit::Inch},
            Word{"pulgadas", TapeUnit::Inch}, Word{"'", TapeUnit::Foot},    Word{"ft.", TapeUnit::Foot},
            Word{"ft", TapeUnit::Foot},       Word{"foot", TapeUnit::Foot}, Word{"feet", TapeUnit::Foot},
            Word{"pie", TapeUnit::Foot},      Word{"pies", TapeUnit::Foot}, Word{"mm", TapeUnit::Millimetre},
            Word{"cm", TapeUnit::Centimetre}, Word{"m", TapeUnit::Metre},
        };
        for (const Word& word : words)
            if (take(word.spelled)) return word.unit;
        return std::nullopt;
    }

    // What stands between a drop and the length it falls over.
    bool takePer() { return take("/") || take("per") || take("por") || takeIn(); }
    bool takeIn() { return take("in") || take("en"); }

    std::string_view rest() const { return rest_; }
    void goBack(std::string_view rest) { rest_ = rest; }

  private:
    static bool isDigit(char c) { return c >= '0' && c <= '9'; }
    static bool isLetter(char c) { return c >= 'a' && c <= 'z'; }
    void skipBlanks() {
        while (!rest_.empty() && (rest_.front() == ' ' || rest_.front() == '\t')) rest_.remove_prefix(1);
    }
    std::string_view rest_;
};

// Inches behind feet stay under a foot: `5' 14"` is a slip of the pen, not six feet two.
std::optional<Length> feetAndInches(double sign, const Number& feet, Reader& reader) {
    const std::optional<Number> inches = reader.takeMixed();
    if (!inches || !(inches->value < 12)) return std::nullopt;
    const std::optional<TapeUnit> unit = reader.takeUnit();
    if ((unit && *unit != TapeUnit::Inch) || !reader.done()) return std::nullopt;
    return Length::feet(sign * (feet.value * 12 + inches->value) / 12);
}

std::optional<Length> tapeReading(Reader reader, BareNumber bare) {
    const double sign = reader.takeSign();

    // Feet-inches without marks, `5-6 1/2`: only where bare numbers are feet, and never `5-1/2`, which might
    // be five and a half of anything.
    {
        Reader dashed = reader;
        const std::optional<Number> feet = dashed.takeSimple();
        if (feet && feet->whole && bare == BareNumber::Feet && dashed.take("-")) {
            Reader whole = dashed;
            const std::optional<Number> start = whole.takeSimple();
            if (start && !start->fraction)
                if (const std::optional<Length> length = feetAndInches(sign, *feet, dashed)) return length;
        }
    }

    const std::optional<Number> first = reader.takeMixed();
    if (!first) return std::nullopt;
    const std::optional<TapeUnit> unit = reader.takeUnit();
    if (!unit) {
        if (!reader.done() || first->fraction) return std::nullopt;
        return bare == BareNumber::Feet ? Length::feet(sign * first->value)
                                        : Length::metres(sign * first->value);
    }
    if (reader.done()) return Length::metres(sign * first->value * metresPer(*unit));

    // Whole feet, then inches.
    if (*unit != TapeUnit::Foot || !first->whole) return std::nullopt;
    reader.take("-");
    return feetAndInches(sign, *first, reader);
}

std::optional<Slope> slopeReading(Reader reader) {
    const double sign = reader.takeSign();
    const std::optional<Number> first = reader.takeMixed();
    if (!first) return std::nullopt;
    // A fraction alone is refused: `1/8` is 12.5 % to a mathematician and 1 % to a pipe layer.
    if (reader.done()) {
        if (first->fraction) return std::nullopt;
        return Slope::fraction(sign * first->value);
    }
    if (reader.take("%") || reader.take("percent") || reader.take("por ciento")) {
        if (!reader.done()) return std::nullopt;
        return Slope::percent(sign * first->value);
    }

    const std::string_view afterNumber = reader.rest();
    if (!first->fraction && (reader.take(":") || reader.take("to") || reader.takeIn())) {
        const std::optional<Number> length = reader.takeSimple();
        if (length && reader.done() && !length->fraction && length->value > 0)
            return Slope::fraction(sign * first->value / length->value);
    }
    reader.goBack(afterNumber);

    const std::optional<TapeUnit> dropUnit = reader.takeUnit();
    if (!dropUnit || !reader.takePer()) return std::nullopt;
    const std::optional<Number> length = reader.takeMixed();
    const std::optional<TapeUnit> lengthUnit = reader.takeUnit();
    if (!lengthUnit || !reader.done() || (length && !(length->value > 0))) return std::nullopt;
    // Feet and inches meet as the whole number 12, so that 1/8 in/ft is 1/96 to the last place.
    double ratio = metresPer(*dropUnit) / metresPer(*lengthUnit);
    if (*dropUnit == TapeUnit::Inch && *lengthUnit == TapeUnit::Foot)
        return Slope::fraction(sign * first->value / (12 * (length ? length->value : 1)));
    return Slope::fraction(sign * first->value * ratio / (length ? length->value : 1));
}

std::string quoted(std::string_view text) {
    // A pasted page would bury the message.
    if (text.size() > 60) {
        std::size_t end = 57;
        while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;
        return "\"" + std::string(text.substr(0, end)) + "...\"";
    }
    return "\"" + std::string(text) + "\"";
}

// `2`, `1/8`, `2-1/8` from a count of 1/parts, reduced.
std::string mixedText(long long count, long long parts) {
    const long long whole = count / parts;
    long long part = count % parts;
    while (part != 0 && part % 2 == 0) {
        part /= 2;
        parts /= 2;
    }
    if (part == 0) return std::to_string(whole);
    const std::string fraction = std::to_string(part) + "/" + std::to_string(parts);
    return whole == 0 ? fraction : std::to_string(whole) + "-" + fraction;
}

}  // namespace

Length readTape(std::string_view text, BareNumber bare) {
    const PlainText plainText(text);
    const std::optional<Length> length = tapeReading(Reader(plainText.view()), bare);
    if (!length || !std::isfinite(length->si()))
        throw Error(Error::Kind::BadArgument, "text", quoted(text),
                    {"a length such as 5' 6-1/2\", 5-6 1/2, 66 1/2 in, 12.4 ft, 3.5 m",
                     "una longitud como 5' 6-1/2\", 5-6 1/2, 66 1/2 in, 12.4 ft, 3.5 m"});
    return *length;
}

std::string tapeText(Length length, int fraction) {
    if (fraction < 1 || fraction > 64 || (fraction & (fraction - 1)) != 0)
        throw Error(Error::Kind::BadArgument, "fraction", std::to_string(fraction),
                    Text::same("1, 2, 4, 8, 16, 32, 64"));
    constexpr double farthestFeet = 1e9;  // beyond it a double no longer holds the 1/64 inch
    if (!(std::fabs(length.feet()) <= farthestFeet))
        throw Error(Error::Kind::BadArgument, "feet", plain(length.feet()),
                    {"at most 1 000 000 000 ft (304 800 km)", "como máximo 1 000 000 000 ft (304 800 km)"});
    const long long count = std::llround(std::fabs(length.inches()) * fraction);
    const long long foot = 12LL * fraction;
    const long long feet = count / foot;
    const std::string inches = [&] {
        const long long rest = count % foot;
        const std::string mixed = mixedText(rest, fraction);
        // `5' 0-1/2"`, for `5' 1/2"` is easily read as five and a half feet.
        return (feet != 0 && rest != 0 && rest < fraction ? "0-" + mixed : mixed) + "\"";
    }();
    const std::string sign = length.si() < 0 && count != 0 ? "-" : "";
    return sign + (feet == 0 ? "" : std::to_string(feet) + "' ") + inches;
}

Slope readSlope(std::string_view text) {
    const PlainText plainText(text);
    const std::optional<Slope> slope = slopeReading(Reader(plainText.view()));
    if (!slope || !std::isfinite(slope->si()))
        throw Error(Error::Kind::BadArgument, "slope", quoted(text),
                    {"a fraction such as 0.01, or 1/8 in/ft, 1%, 1:96, 1 in 96, 10 mm/m",
                     "una fracción como 0.01, o 1/8 in/ft, 1%, 1:96, 1 en 96, 10 mm/m"});
    return *slope;
}

std::string slopeText(Slope slope, SlopeStyle style) {
    if (!(std::fabs(slope.fraction()) <= 1e6))
        throw Error(Error::Kind::BadArgument, "slope", plain(slope.fraction()),
                    {"at most 1 000 000", "como máximo 1 000 000"});
    const std::string sign = slope.si() < 0 ? "-" : "";
    const double steep = std::fabs(slope.fraction());
    switch (style) {
        case SlopeStyle::Percent:
            return plain(slope.percent(), 2) + "%";
        case SlopeStyle::OneIn:
            if (steep == 0) return "0";
            return sign + "1 in " + plain(1 / steep, steep > 0.05 ? 1 : 0);
        case SlopeStyle::InchesPerFoot:
            break;
    }
    constexpr int parts = 16;
    const double sixteenths = steep * 12 * parts;
    const long long count = std::llround(sixteenths);
    // A slope worked out from levels carries rounding in its last places; that is not "about".
    const bool exact = std::fabs(sixteenths - static_cast<double>(count)) <= 1e-9 * sixteenths;
    return (exact ? "" : "~") + (count == 0 ? "" : sign) + mixedText(count, parts) + " in/ft";
}

SlopeStyle slopeStyle(std::string_view name) {
    const PlainText plainName(name);
    Reader reader(plainName.view());
    const auto is = [&](std::string_view word) {
        Reader copy = reader;
        return copy.take(word) && copy.done();
    };
    if (is("in/ft")) return SlopeStyle::InchesPerFoot;
    if (is("%") || is("percent")) return SlopeStyle::Percent;
    if (is("1 in") || is("1 en") || is("1 in n") || is("1:n")) return SlopeStyle::OneIn;
    throw Error(Error::Kind::BadArgument, "style", quoted(name), Text::same("\"in/ft\", \"%\", \"1 in\""));
}

}  // namespace trenchbook
