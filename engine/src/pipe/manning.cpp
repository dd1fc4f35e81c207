#include "trenchbook/pipe/manning.h"

#include <array>
#include <cmath>
#include <numbers>

#include "pipe/segment.h"
#include "trenchbook/core/error.h"
#include "trenchbook/pipe/circular.h"

namespace trenchbook {
namespace {

using segment::square;

// x^(2/3), cheaper than pow.
double twoThirds(double x) { return square(std::cbrt(x)); }

void requirePipe(Length bore, double roughness) {
    requirePositive(bore, "pipe");
    requirePositive(roughness, "roughness");
}

// A R^(2/3) / n: flow over the square root of the slope.
double conveyance(Length bore, double roughness, double fill) {
    const Segment wetted = segmentAt(bore, bore * fill);
    return wetted.area.si() * twoThirds(wetted.hydraulicRadius.si()) / roughness;
}

double fullConveyance(Length bore, double roughness) {
    const double d = bore.si();
    return std::numbers::pi / 4 * d * d * twoThirds(d / 4) / roughness;
}

void requireFill(double fill) {
    if (!(fill > 0 && fill <= 1))
        throw Error(Error::Kind::BadArgument, "fill", plain(fill),
                    {"above 0 and at most 1", "mayor que 0 y como máximo 1"});
}

template <std::size_t Size>
double polynomial(const std::array<double, Size>& coefficients, double x) {
    double sum = 0;
    for (std::size_t i = Size; i-- > 0;) sum = sum * x + coefficients[i];
    return sum;
}

// Central angle t of the normal depth for share = flow / full-pipe capacity, above 0 and at most peakShare.
//
// Manning's formula in the angle is (t - sin t)^5 / t^2 = (2 pi)^3 share^3. A trickle has t = u with
// u^13 = 6^5 (2 pi)^3 share^3, so the unknown is solved from
//     G(t) = 13 ln(t/u) + 5 ln(6 (t - sin t) / t^3) = 0,
// in which nothing under- or overflows. The first guess is a polynomial good to 1.4e-5 (interpolated at
// Chebyshev nodes): in u2 for the lower part, in the square root of the distance to the peak for the upper,
// where the curve turns back. One step with the curvature kept cubes that error.
double normalAngle(double share) {
    constexpr double peakAngle = 5.278107137933796;
    const double u = 3.0442779124121205 * std::pow(share, 3.0 / 13);
    double t;
    if (share < 0.55) {
        static constexpr std::array<double, 7> fromTrickle = {1.000005593,    0.01915334639,  0.001117594637,
                                                              -7.48640034e-5, 5.331538546e-5, -7.951416514e-6,
                                                              5.883928358e-7};
        t = u * polynomial(fromTrickle, u * u);
    } else {
        static constexpr std::array<double, 7> fromPeak = {
            3.046717717, -1.366674265, 2.689003629, -3.749098042, 5.534355126, -5.065306597, 2.467351504};
        const double away = std::sqrt(std::fmax(0, 1 - share / peakShare));
        t = peakAngle - away * polynomial(fromPeak, away);
        // So close to the peak the share's own rounding moves the angle more than a step could mend.
        if (away < 1e-6) return t;
    }
    for (int step = 0; step < 20; ++step) {
        const double sineHalf = std::sin(t / 2), cosineHalf = std::cos(t / 2);
        const double sine = 2 * sineHalf * cosineHalf;
        const double shape = segment::minusSine(t, sine);
        const double byShape = 1 / shape, byT = 1 / t;
        const double ratio = t / u, ratio2 = ratio * ratio, ratio4 = ratio2 * ratio2;
        const double thick = 6 * shape * byT * byT * byT, thick2 = thick * thick;
        const double over = ratio4 * ratio4 * ratio4 * ratio * thick2 * thick2 * thick - 1;
        // The product is 1 within 2e-4 at the first guess, where the logarithm's series is exact and quicker.
        const double g = std::fabs(over) < 1e-3
                             ? over * (1 - over * (1.0 / 2 - over * (1.0 / 3 - over * (1.0 / 4 - over / 5))))
                             : std::log1p(over);
        const double growth = 2 * sineHalf * sineHalf * byShape;
        const double slope = 5 * growth - 2 * byT;
        const double bend = 5 * (sine * byShape - growth * growth) + 2 * byT * byT;
        const double move = 2 * g / (slope + std::sqrt(std::fmax(0, slope * slope - 2 * g * bend)));
        t = std::fmin(t - move, peakAngle);
        if (std::fabs(move) < 3e-5 * t) return t;
    }
    throw Error(Error::Kind::NoConvergence, "flow",
                {"The normal depth was not found.", "No se encontró la profundidad normal."});
}

// Fill at normal depth; none when the flow is more than the peak.
std::optional<double> findFill(Length bore, Slope slope, Flow flow, double roughness) {
    if (flow.si() == 0) return 0.0;
    const double share = flow.si() / (fullConveyance(bore, roughness) * std::sqrt(slope.si()));
    // A flow that was computed as the peak comes back as the peak.
    if (share > peakShare * (1 + 1e-14)) return std::nullopt;
    if (share >= peakShare) return peakFill;
    return square(std::sin(normalAngle(share) / 4));
}

}  // namespace

Flow capacity(Length bore, Slope slope, double roughness, double fill) {
    requirePipe(bore, roughness);
    requireSlope(slope, "slope");
    requireFill(fill);
    const double carried = fill == 1 ? fullConveyance(bore, roughness) : conveyance(bore, roughness, fill);
    return Flow::fromSi(carried * std::sqrt(slope.si()));
}

Velocity fullVelocity(Length bore, Slope slope, double roughness) {
    return capacity(bore, slope, roughness) / fullArea(bore);
}

Velocity velocityAtFill(Length bore, Slope slope, double roughness, double fill) {
    const Flow flow = capacity(bore, slope, roughness, fill);  // refuses before the depth is looked at
    return flow / segmentAt(bore, bore * fill).area;
}

Length boreNeeded(Flow flow, Slope slope, double roughness, double fill) {
    requirePositive(flow, "flow");
    // Capacity goes with the bore to the power 8/3.
    const Length metre = Length::metres(1);
    return metre * std::pow(flow / capacity(metre, slope, roughness, fill), 3.0 / 8);
}

Slope slopeNeeded(Length bore, Flow flow, double roughness, double fill) {
    requirePipe(bore, roughness);
    requireNotNegative(flow, "flow");
    requireFill(fill);
    const double carried = fill == 1 ? fullConveyance(bore, roughness) : conveyance(bore, roughness, fill);
    return Slope::fromSi(square(flow.si() / carried));
}

Slope selfCleaningSlope(Length bore, Velocity velocity, double roughness) {
    requirePipe(bore, roughness);
    requirePositive(velocity, "velocity");
    return Slope::fromSi(square(velocity.si() * roughness / twoThirds(bore.si() / 4)));
}

Slope frictionSlope(Length bore, Length depth, Flow flow, double roughness) {
    requirePipe(bore, roughness);
    requireNotNegative(flow, "flow");
    if (depth >= bore) return Slope::fromSi(square(flow.si() / fullConveyance(bore, roughness)));
    requirePositive(depth, "depth");
    return Slope::fromSi(square(flow.si() / conveyance(bore, roughness, depth / bore)));
}

double normalFill(Length bore, Slope slope, Flow flow, double roughness) {
    requirePipe(bore, roughness);
    requireSlope(slope, "slope");
    requireNotNegative(flow, "flow");
    if (const std::optional<double> fill = findFill(bore, slope, flow, roughness)) return *fill;
    const Flow most = capacity(bore, slope, roughness) * peakShare;
    const auto said = [](Flow amount) {
        return plain(amount.gpm(), 1) + " gpm (" + plain(amount.litresPerSecond(), 2) + " L/s)";
    };
    throw Error(
        Error::Kind::NoSolution, "flow", said(flow),
        {"at most " + said(most) + ", the most this pipe carries at this slope without pressure",
         "como máximo " + said(most) + ", lo más que este tubo lleva sin presión con esta pendiente"});
}

Length normalDepth(Length bore, Slope slope, Flow flow, double roughness) {
    return bore * normalFill(bore, slope, flow, roughness);
}

std::optional<Length> findNormalDepth(Length bore, Slope slope, Flow flow, double roughness) {
    requirePipe(bore, roughness);
    requireNotNegative(flow, "flow");
    if (!(slope.si() > 0)) return std::nullopt;  // level and rising pipes have no normal depth
    const std::optional<double> fill = findFill(bore, slope, flow, roughness);
    if (!fill) return std::nullopt;
    return bore * *fill;
}

Velocity uniformVelocity(Length bore, Slope slope, Flow flow, double roughness) {
    requireSlope(slope, "slope");
    if (flow.si() == 0) return Velocity();
    const std::optional<Length> depth = findNormalDepth(bore, slope, flow, roughness);
    return flow / (depth ? segmentAt(bore, *depth).area : fullArea(bore));
}

Shear wallShear(Length bore, Slope slope, Flow flow, double roughness) {
    requireSlope(slope, "slope");
    if (flow.si() == 0) return Shear();
    const std::optional<Length> depth = findNormalDepth(bore, slope, flow, roughness);
    if (!depth)
        return Shear::pascals(waterUnitWeight * bore.si() / 4 * slopeNeeded(bore, flow, roughness).si());
    return Shear::pascals(waterUnitWeight * segmentAt(bore, *depth).hydraulicRadius.si() * slope.si());
}

}  // namespace trenchbook
