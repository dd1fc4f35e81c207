#include "trenchbook/water/outlet_opening.h"

#include <algorithm>
#include <cmath>

#include <boost/math/tools/toms748_solve.hpp>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

// Sharp crest: 3.33 in feet and seconds, in metres 3.33 x sqrt(0.3048).
const double sharpCrest = 3.33 * std::sqrt(metresPerFoot);
constexpr double squareEdge = 0.6;
constexpr double submergedExponent = 0.385;

// Of the free weir's flow, what passes when `outside` over `inside` (both to the power 1.5) drowns it.
double passing(double outside, double inside) {
    return std::pow(std::max(0.0, 1 - outside / inside), submergedExponent);
}

// H^1.5 of the drowned weir: x passing(outside, x) = free, where free is the flow over the free weir's constant.
double weirPower(double free, double outside) {
    if (outside == 0) return free;
    const auto over = [&](double inside) { return inside * passing(outside, inside) - free; };
    const double low = std::max(free, outside);
    // passing() is at least 1 - outside / inside, so inside never exceeds outside + free.
    const double high = outside + free;
    if (over(low) >= 0) return low;
    if (over(high) <= 0) return high;
    boost::uintmax_t tries = 200;
    const auto [least, most] = boost::math::tools::toms748_solve(
        over, low, high, boost::math::tools::eps_tolerance<double>(50), tries);
    return (least + most) / 2;
}

}  // namespace

Length outletHead(const Grate& opening, Flow flow, Length waterOutside) {
    requireNotNegative(flow, "flow");
    requireNotNegative(waterOutside, "water outside");
    if (flow == Flow{}) return waterOutside;
    const double outside = waterOutside.si();
    const double weir =
        std::pow(weirPower(flow.si() / (sharpCrest * opening.edge.si()), std::pow(outside, 1.5)), 2.0 / 3);
    const double through = flow.si() / (squareEdge * opening.opening.si());
    return Length::fromSi(std::max(weir, outside + through * through / (2 * gravity)));
}

Flow outletFlow(const Grate& opening, Length head, Length waterOutside) {
    requireNotNegative(head, "head");
    requireNotNegative(waterOutside, "water outside");
    if (waterOutside > head) {
        const std::string most = plain(head.feet(), 3) + " ft (" + plain(head.metres(), 3) + " m)";
        throw Error(Error::Kind::BadArgument, "water outside", plain(waterOutside.feet(), 3) + " ft",
                    {"at most the head inside, " + most + ": else water comes in",
                     "como máximo la carga de adentro, " + most + ": si no, el agua entra"});
    }
    if (head == Length{}) return {};
    const double inside = std::pow(head.si(), 1.5);
    const double weir =
        sharpCrest * opening.edge.si() * inside * passing(std::pow(waterOutside.si(), 1.5), inside);
    const double orifice =
        squareEdge * opening.opening.si() * std::sqrt(2 * gravity * (head - waterOutside).si());
    return Flow::fromSi(std::min(weir, orifice));
}

}  // namespace trenchbook
