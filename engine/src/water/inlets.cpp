#include "trenchbook/water/inlets.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <numbers>

#include <boost/math/tools/toms748_solve.hpp>

#include "trenchbook/core/error.h"
#include "trenchbook/pipe/circular.h"

namespace trenchbook {
namespace {

// Weir 3.0 in feet and seconds, in metres 3.0 x sqrt(0.3048).
const double weir = 3.0 * std::sqrt(metresPerFoot);
constexpr double orifice = 0.67;

Grate reduced(Length edge, Area area, double openShare, double blockedShare, Length alongWalls) {
    requireShare(openShare, "open share");
    requireShare(blockedShare, "blocked share");
    requireNotNegative(alongWalls, "along walls");
    if (openShare == 0)
        throw Error(Error::Kind::BadArgument, "open share",
                    Text{"open share is 0: a grate without openings lets no water through.",
                         "open share es 0: una rejilla sin aberturas no deja pasar agua."});
    if (blockedShare == 1)
        throw Error(Error::Kind::BadArgument, "blocked share",
                    Text{"blocked share is 1: a grate that is blocked all over lets no water through.",
                         "blocked share es 1: una rejilla tapada por completo no deja pasar agua."});
    if (alongWalls >= edge) {
        const std::string around = plain(edge.inches(), 2) + " in (" + plain(edge.millimetres(), 1) + " mm)";
        throw Error(
            Error::Kind::BadArgument, "along walls", plain(alongWalls.inches(), 2) + " in",
            {"less than the grate's edge of " + around, "menos que el borde de la rejilla, " + around});
    }
    return {(edge - alongWalls) * (1 - blockedShare), area * (openShare * (1 - blockedShare))};
}

// Inlet control, square edge in a headwall.
constexpr double unsubmerged = 0.0098;
constexpr double submerged = 0.0398;
constexpr double submergedAtRest = 0.67;
constexpr double lastUnsubmerged = 3.5;
constexpr double firstSubmerged = 4.0;

// Q = F A D^0.5 in feet and seconds.
double flowForm(Length bore, Flow flow) {
    return (flow / fullArea(bore)).feetPerSecond() / std::sqrt(bore.feet());
}
Flow flowOf(Length bore, double form) {
    return Velocity::feetPerSecond(form * std::sqrt(bore.feet())) * fullArea(bore);
}
Length weirHead(Length bore, double form) {
    const Flow flow = flowOf(bore, form);
    const Length critical = criticalDepth(bore, flow);
    return specificEnergy(segmentAt(bore, critical), flow) + bore * (unsubmerged * form * form);
}
Length orificeHead(Length bore, double form) { return bore * (submerged * form * form + submergedAtRest); }

}  // namespace

Grate rectangularGrate(Length length, Length width, double openShare, double blockedShare,
                       Length alongWalls) {
    requirePositive(length, "length");
    requirePositive(width, "width");
    return reduced(2 * (length + width), length * width, openShare, blockedShare, alongWalls);
}

Grate roundGrate(Length diameter, double openShare, double blockedShare, Length alongWalls) {
    requirePositive(diameter, "length");
    return reduced(std::numbers::pi * diameter, diameter * diameter * (std::numbers::pi / 4), openShare,
                   blockedShare, alongWalls);
}

Flow grateCapacity(const Grate& grate, Length ponding) {
    requirePositive(ponding, "ponding");
    const double head = ponding.si();
    return Flow::fromSi(std::min(weir * grate.edge.si() * std::pow(head, 1.5),
                                 orifice * grate.opening.si() * std::sqrt(2 * gravity * head)));
}

Length gratePonding(const Grate& grate, Flow flow) {
    requirePositive(flow, "flow");
    const double through = flow.si() / (orifice * grate.opening.si());
    return Length::fromSi(
        std::max(std::pow(flow.si() / (weir * grate.edge.si()), 2.0 / 3), through * through / (2 * gravity)));
}

Length basinOutletHead(Length bore, Flow flow) {
    requirePositive(bore, "bore");
    requirePositive(flow, "flow");
    const double form = flowForm(bore, flow);
    if (form <= lastUnsubmerged) return weirHead(bore, form);
    if (form >= firstSubmerged) return orificeHead(bore, form);
    const double share = (form - lastUnsubmerged) / (firstSubmerged - lastUnsubmerged);
    return weirHead(bore, lastUnsubmerged) * (1 - share) + orificeHead(bore, firstSubmerged) * share;
}

Flow basinOutletFlow(Length bore, Length head) {
    requirePositive(bore, "bore");
    requirePositive(head, "head");
    if (head >= orificeHead(bore, firstSubmerged))
        return flowOf(bore, std::sqrt((head / bore - submergedAtRest) / submerged));
    const auto over = [&](double form) { return basinOutletHead(bore, flowOf(bore, form)) - head; };
    // Under a low head the flow goes with its square: more than this would need more head than there is.
    const double least = 0.1 * std::min(1.0, std::pow(head / bore, 2));
    boost::uintmax_t tries = 200;
    const auto [low, high] =
        boost::math::tools::toms748_solve([&](double form) { return over(form).si(); }, least, firstSubmerged,
                                          boost::math::tools::eps_tolerance<double>(45), tries);
    return flowOf(bore, (low + high) / 2);
}

Flow leaderCapacity(Length diameter, double fill) {
    requirePositive(diameter, "size");
    requirePositive(fill, "fill");
    if (fill > (1 + 1e-3) / 3)
        throw Error(Error::Kind::OutsideValidity, "fill", plain(fill),
                    {"above 0 to 1/3: a fuller leader chokes",
                     "mayor que 0 hasta 1/3: más llena se ahoga la bajada"});
    return Flow::gpm(27.8 * std::pow(fill, 5.0 / 3) * std::pow(diameter.inches(), 8.0 / 3));
}

Length leaderDiameter(std::string_view size, Length bare) {
    // "2x3", "2 X 3 in", "2 × 3", "3", "3 in".
    std::string text;
    for (std::size_t i = 0; i < size.size(); ++i) {
        const char c = size[i];
        if (size.substr(i).starts_with("\u00D7")) {
            text += 'x';
            ++i;
        } else if (c >= 'A' && c <= 'Z') {
            text += static_cast<char>(c + 32);
        } else if (c != ' ') {
            text += c;
        }
    }
    const auto number = [&text]() -> double {
        double value = 0;
        const auto read =
            std::from_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed);
        if (read.ec != std::errc()) return 0;
        text.erase(0, static_cast<std::size_t>(read.ptr - text.data()));
        return value;
    };
    const double first = number();
    const bool rectangular = text.starts_with('x');
    if (rectangular) text.erase(0, 1);
    const double second = rectangular ? number() : first;
    const bool inches = text == "in" || text == "\"" || text == "inch" || text == "inches";
    const double least = std::min(first, second);
    if (!(least > 0) || !std::isfinite(least) || !(text.empty() || inches))
        throw Error(Error::Kind::BadArgument, "size", "\"" + std::string(size) + "\"",
                    {"2x3, 3x4 or a diameter", "2x3, 3x4 o un diámetro"});
    return rectangular || inches ? Length::inches(least) : bare * least;
}

}  // namespace trenchbook
