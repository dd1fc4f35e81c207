#include "catalog/limits.h"

#include <algorithm>
#include <cmath>

namespace trenchbook::addin {
namespace {

// Four digits that count, so that 0.00004 and 98425 both stay what they are. An open end has nothing to write.
std::string written(double value) {
    if (!std::isfinite(value)) return {};
    if (value == 0) return "0";
    const int digits = 4 - static_cast<int>(std::ceil(std::log10(std::fabs(value))));
    return plain(value, std::clamp(digits, 0, 9));
}

Text ends(const Limits& limits, const std::string& least, const std::string& greatest) {
    const bool hasLeast = std::isfinite(limits.least);
    if (!std::isfinite(limits.greatest)) {
        if (!hasLeast) return {};
        return limits.above ? Text{"above " + least, "mayor que " + least}
                            : Text{least + " or more", least + " o más"};
    }
    const Text upper = limits.below ? Text{"below " + greatest, "menor que " + greatest}
                                    : Text{"at most " + greatest, "como máximo " + greatest};
    if (!hasLeast) return upper;
    if (!limits.above && !limits.below) return {least + " to " + greatest, least + " a " + greatest};
    const Text lower = limits.above ? Text{"above " + least, "mayor que " + least}
                                    : Text{least + " or more", least + " o más"};
    return lower + Text{" and ", " y "} + upper;
}

// An end that a unit changes is told in both.
Text endsText(const Limits& limits, Measure measure) {
    const Text us = ends(limits, written(limits.least), written(limits.greatest));
    const auto counts = [](double end) { return std::isfinite(end) && end != 0; };
    if (!hasUnit(measure) || !(counts(limits.least) || counts(limits.greatest))) return us;
    const auto metric = [&](double end) {
        return written(inUnit(measure, UnitSystem::Metric, siOf(measure, end)));
    };
    const Text again = limits.least == 0 ? Text::same(metric(limits.greatest))
                                         : ends(limits, metric(limits.least), metric(limits.greatest));
    return us + Text::same(" ") + info(measure).us + Text::same(" (") + again + Text::same(" ") +
           info(measure).metric + Text::same(")");
}

std::string listed(std::span<const double> numbers) {
    std::string text;
    for (const double number : numbers) text += (text.empty() ? "" : ", ") + plain(number);
    return text;
}

bool closed(const Limits& limits) {
    return std::isfinite(limits.least) && std::isfinite(limits.greatest) && !limits.above && !limits.below;
}

}  // namespace

bool holds(const Limits& limits, Measure measure, double si) {
    if (!limits.oneOf.empty())
        return std::find(limits.oneOf.begin(), limits.oneOf.end(), si) != limits.oneOf.end();
    if (limits.whole && si != std::floor(si)) return false;
    // An end is turned into SI as the number was, so that the end itself, typed, is not refused by a last digit.
    const double least = siOf(measure, limits.least), greatest = siOf(measure, limits.greatest);
    return (limits.above ? si > least : si >= least) && (limits.below ? si < greatest : si <= greatest);
}

bool Limits::bounded() const {
    return !oneOf.empty() || whole || least != -unlimited || greatest != unlimited;
}

Text limitsText(const Limits& limits, Measure measure) {
    if (!limits.oneOf.empty()) return Text::same(listed(limits.oneOf));
    if (measure == Measure::Pipe) {
        const Text name{"a stock name", "un nombre comercial"};
        if (limits.least == unlimited) return name;
        Limits bore = limits;
        bore.also = {};
        return name + Text{", or a bore ", ", o un diámetro "} + endsText(bore, Measure::Inches);
    }
    Text text = limits.whole ? allowedText(limits, measure) : endsText(limits, measure);
    if (!limits.also.empty()) text += (text.empty() ? Text{} : Text::same(", ")) + limits.also.text();
    return text;
}

Text allowedText(const Limits& limits, Measure measure) {
    if (!limits.oneOf.empty()) return Text::same(listed(limits.oneOf));
    const Text told = endsText(limits, measure);
    const Text from = closed(limits) ? Text{"from ", "de "} + told : told;
    return limits.of.text() + (limits.whole ? Text{"a whole number ", "un número entero "} + from : from);
}

}  // namespace trenchbook::addin
