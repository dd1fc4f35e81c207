#include "trenchbook/layout/plan_point.h"

#include <charconv>
#include <cmath>
#include <numbers>
#include <optional>
#include <string>
#include <vector>

#include "trenchbook/core/error.h"
#include "trenchbook/core/text.h"

namespace trenchbook {
namespace {

constexpr double perDegree = std::numbers::pi / 180;

[[noreturn]] void refuse(std::string_view text) {
    throw Error(Error::Kind::BadArgument, "bearing", std::string(text),
                {"a bearing such as S 68-05-35 W, or degrees clockwise from north",
                 "un rumbo como S 68-05-35 W, o grados desde el norte en sentido horario"});
}

// The letter that a pole or side begins with; none where the text begins with none.
std::optional<char> letterAt(std::string_view words) {
    if (words.empty()) return std::nullopt;
    const char letter = words.front();
    return letter == 'n' || letter == 's' || letter == 'e' || letter == 'w' ? std::optional(letter)
                                                                            : std::nullopt;
}

// Degrees from up to three numbers, with anything but digits between them.
double degreesIn(std::string_view digits, std::string_view typed) {
    std::vector<double> numbers;
    const char* at = digits.data();
    const char* const end = at + digits.size();
    while (at != end) {
        if ((*at < '0' || *at > '9') && *at != '.') {
            ++at;
            continue;
        }
        double number = 0;
        const auto [after, fault] = std::from_chars(at, end, number, std::chars_format::fixed);
        if (fault != std::errc{}) refuse(typed);
        numbers.push_back(number);
        at = after;
    }
    if (numbers.empty() || numbers.size() > 3) refuse(typed);
    double degrees = 0, unit = 1;
    for (std::size_t i = 0; i < numbers.size(); ++i, unit /= 60) {
        const bool last = i + 1 == numbers.size();
        if ((i > 0 && numbers[i] >= 60) || (!last && numbers[i] != std::floor(numbers[i]))) refuse(typed);
        degrees += numbers[i] * unit;
    }
    return degrees;
}

}  // namespace

Length distance(const PlanPoint& a, const PlanPoint& b) {
    return Length::fromSi(std::hypot(b.east.si() - a.east.si(), b.north.si() - a.north.si()));
}

Angle azimuth(const PlanPoint& from, const PlanPoint& to) {
    const double degrees =
        std::atan2(to.east.si() - from.east.si(), to.north.si() - from.north.si()) / perDegree;
    return Angle::degrees(degrees < 0 ? degrees + 360 : degrees);
}

PlanPoint ahead(const PlanPoint& from, Angle azimuth, Length far) {
    const double turned = azimuth.degrees() * perDegree;
    return {from.east + far * std::sin(turned), from.north + far * std::cos(turned)};
}

Angle readBearing(std::string_view text) {
    const std::string key = nameKey(text);
    for (const auto& [word, degrees] :
         {std::pair{"north", 0.0}, {"east", 90.0}, {"south", 180.0}, {"west", 270.0}})
        if (key == word) return Angle::degrees(degrees);
    for (const char letter : key)
        if (letter == '-' ? key.front() == '-' : letter == '+' || letter == ',') refuse(text);
    const std::optional<char> pole = letterAt(key);
    if (!pole) {
        const double degrees = degreesIn(key, text);
        if (degrees >= 360) refuse(text);
        for (const char letter : key)
            if (letter >= 'a' && letter <= 'z') refuse(text);
        return Angle::degrees(degrees);
    }
    const std::optional<char> side = letterAt(std::string_view(key).substr(key.size() - 1));
    const bool along = *pole == 'n' || *pole == 's', across = side && (*side == 'e' || *side == 'w');
    if (!along || !across || key.size() < 3) refuse(text);
    const std::string_view middle = std::string_view(key).substr(1, key.size() - 2);
    for (const char letter : middle)
        if (letter >= 'a' && letter <= 'z') refuse(text);
    const double degrees = degreesIn(middle, text);
    if (degrees > 90) refuse(text);
    const double turned = *pole == 'n' ? degrees : 180 - degrees;
    return Angle::degrees(*side == 'e' || turned == 0 ? turned : 360 - turned);
}

}  // namespace trenchbook
