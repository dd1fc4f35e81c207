#include "job/say.h"

#include <algorithm>
#include <cmath>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

constexpr double hair = 1e-9;
constexpr int mostDecimals = 7;

int usualDecimals(Unit unit, UnitSystem units) {
    switch (unit) {
        case Unit::Inches:
            return units == UnitSystem::Metric ? 0 : 1;
        case Unit::FeetPerSecond:
            return 1;
        default:
            return 2;
    }
}

}  // namespace

bool isUnder(double value, double limit) { return value < limit - hair * std::fabs(limit); }
bool isOver(double value, double limit) { return value > limit + hair * std::fabs(limit); }

Text amountText(Amount amount, UnitSystem units, int decimals) {
    if (decimals < 0) decimals = usualDecimals(amount.unit, units);
    const UnitInfo& unit = info(amount.unit);
    const bool slope = amount.unit == Unit::Slope, metric = units == UnitSystem::Metric;
    const double value = slope ? 100 * amount.si : amount.si / (metric ? unit.siPerMetric : unit.siPerUs);
    // What is left of a difference of two equal levels is 0, not 4e-14.
    const Text number = Text::same(plain(std::fabs(value) < hair ? 0 : value, decimals));
    const Text name = slope ? Text::same("%") : metric ? unit.metric : unit.us;
    return name.empty() ? number : number + Text::same(" ") + name;
}

Compared comparedText(Amount measured, Amount allowed, UnitSystem units) {
    int decimals = usualDecimals(measured.unit, units);
    Compared said{amountText(measured, units, decimals), amountText(allowed, units, decimals)};
    while (said.measured.en == said.allowed.en && decimals < mostDecimals) {
        ++decimals;
        said = {amountText(measured, units, decimals), amountText(allowed, units, decimals)};
    }
    return said;
}

Text flowText(Flow flow, UnitSystem units) {
    return Text::same(units == UnitSystem::Metric ? plain(flow.litresPerSecond(), 2) + " L/s"
                                                  : plain(flow.gpm(), 1) + " gpm");
}

Text byDrawing(bool drawn) { return drawn ? Text{" by the drawing", " según el plano"} : Text{}; }

Amount limitOf(const Ruleset& rules, std::string_view key) {
    const Unit unit = findRule(key)->unit;
    return {rules.in(key, UnitSystem::US) * info(unit).siPerUs, unit};
}

void RowFindings::tell(Severity severity, Standing rule, Text says) {
    findings_.push_back({.severity = severity,
                         .part = part_,
                         .row = row_,
                         .rule = standingRule(rule).key,
                         .says = std::move(says)});
}

void RowFindings::tell(Severity severity, const char* rule, Text says) {
    findings_.push_back({.severity = severity,
                         .part = part_,
                         .row = row_,
                         .rule = rule,
                         .allowed = limitOf(rules_, rule),
                         .says = std::move(says)});
}

void RowFindings::tell(Severity severity, const char* rule, double measured, Text says) {
    tell(severity, rule, std::move(says));
    findings_.back().measured = Amount{measured, findRule(rule)->unit};
}

void RowFindings::compare(Severity severity, const char* rule, double measured, Text what, const Text& side,
                          const Text& after) {
    const Amount limit = limitOf(rules_, rule);
    const Compared said = comparedText({measured, limit.unit}, limit, units_);
    tell(severity, rule, measured,
         std::move(what) + Text::same(" ") + said.measured + side + said.allowed + after);
}

bool RowFindings::atLeast(Severity severity, const char* rule, double measured, Text what, Text after) {
    if (!isUnder(measured, limitOf(rules_, rule).si)) return false;
    compare(severity, rule, measured, std::move(what), {", at least ", ", al menos "}, after);
    return true;
}

bool RowFindings::atLeastAbout(Severity severity, const char* rule, Length measured, Text what, Text after) {
    if (measured.si() >= limitOf(rules_, rule).si - 1e-6) return false;
    compare(severity, rule, measured.si(), std::move(what), {", at least ", ", al menos "}, after);
    return true;
}

bool RowFindings::atMost(Severity severity, const char* rule, double measured, Text what, Text after) {
    if (!isOver(measured, limitOf(rules_, rule).si)) return false;
    compare(severity, rule, measured, std::move(what), {", at most ", ", como máximo "}, after);
    return true;
}

void RowFindings::unusable(const std::vector<Unusable>& cells) {
    for (const Unusable& cell : cells) tell(Severity::No, Standing::InputUnusable, cell.why);
}

bool RowFindings::stands(const std::vector<Unusable>& cells, std::string_view heading) {
    return std::any_of(cells.begin(), cells.end(),
                       [&](const Unusable& cell) { return cell.heading == heading; });
}

void RowFindings::missing(const char* heading, Text why) {
    tell(Severity::NotJudged, Standing::InputMissing,
         Text{std::string(heading) + " is missing", std::string("falta ") + heading} +
             (why.empty() ? Text() : Text::same(": ")) + why);
}

Text sentenceOf(const Error& error) {
    return {error.sentence(Language::English), error.sentence(Language::Spanish)};
}

}  // namespace trenchbook
