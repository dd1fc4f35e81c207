#include "trenchbook/pipe/circular.h"

#include <array>

#include "pipe/segment.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

using segment::square;

// 3 sin a - sin3 a - 3 a cos a = sum of (-1)^k (9/4 + 3^(2k+1)/4 - 3(2k+1)) a^(2k+1) / (2k+1)!, from k = 2.
constexpr std::array<double, 12> momentSeries = [] {
    std::array<double, 12> terms{};
    double factorial = 6, power = 27, sign = -1;  // of k = 1, whose term is nil
    for (int k = 2; k < 14; ++k) {
        factorial *= 2 * k * (2 * k + 1);
        power *= 9;
        sign = -sign;
        terms[k - 2] = sign * (2.25 + power / 4 - 3 * (2 * k + 1)) / factorial;
    }
    return terms;
}();

double momentShape(double a, double sine, double cosine) {
    if (a > 0.8) return 3 * sine - sine * sine * sine - 3 * a * cosine;
    double sum = 0;
    for (std::size_t i = momentSeries.size(); i-- > 0;) sum = sum * a * a + momentSeries[i];
    return sum * square(a * a) * a;
}

void requireWater(const Segment& wetted, Flow flow) {
    if (wetted.area.si() > 0 || flow.si() == 0) return;
    throw Error(Error::Kind::BadArgument, "depth", "0",
                {"above 0 where water flows", "mayor que 0 donde corre agua"});
}

}  // namespace

Area fullArea(Length bore) { return Area::fromSi(std::numbers::pi / 4 * square(bore.si())); }

Segment segmentAt(Length bore, Length depth) {
    requirePositive(bore, "bore");
    requireNotNegative(depth, "depth");
    const double d = bore.si();
    Segment wetted;
    wetted.depth = depth;
    if (depth >= bore) {
        wetted.area = fullArea(bore);
        wetted.wettedPerimeter = bore * std::numbers::pi;
        wetted.hydraulicRadius = bore / 4;
        wetted.pressureMoment = wetted.area * (depth - bore / 2);
        return wetted;
    }
    const double fill = depth / bore;
    const double a = segment::halfAngle(fill);
    const double sine = 2 * std::sqrt(fill * (1 - fill));
    const double cosine = 1 - 2 * fill;
    wetted.area = Area::fromSi(d * d / 8 * segment::minusSine(2 * a, 2 * sine * cosine));
    wetted.wettedPerimeter = bore * a;
    wetted.surfaceWidth = bore * sine;
    if (a > 0) wetted.hydraulicRadius = wetted.area / wetted.wettedPerimeter;
    wetted.pressureMoment = Volume::fromSi(d * d * d / 24 * momentShape(a, sine, cosine));
    return wetted;
}

Volume momentum(const Segment& wetted, Flow flow) {
    requireWater(wetted, flow);
    if (flow.si() == 0) return wetted.pressureMoment;
    return wetted.pressureMoment + Volume::fromSi(square(flow.si()) / (gravity * wetted.area.si()));
}

Length specificEnergy(const Segment& wetted, Flow flow) {
    requireWater(wetted, flow);
    if (flow.si() == 0) return wetted.depth;
    return wetted.depth + Length::fromSi(square((flow / wetted.area).si()) / (2 * gravity));
}

double froudeNumber(const Segment& wetted, Flow flow) {
    requireWater(wetted, flow);
    if (flow.si() == 0) return 0;
    const double area = wetted.area.si();
    return flow.si() / area * std::sqrt(wetted.surfaceWidth.si() / (gravity * area));
}

Length criticalDepth(Length bore, Flow flow) {
    requirePositive(bore, "bore");
    requireNotNegative(flow, "flow");
    if (flow.si() == 0) return Length();
    // With the half angle a: (2a - sin 2a)^3 / sin a = 512 Q2 / (g D5). Logarithms keep both ends in range.
    const double wanted = std::log(512 / gravity) + 2 * std::log(flow.si()) - 5 * std::log(bore.si());
    // First guess from the two ends: a shallow segment has 606.8 fill^4 on the left, a nearly full one
    // (2 pi)^3 / (2 sqrt(1 - fill)).
    const double shallow = (wanted - std::log(606.8)) / 4;
    const double nearlyFull =
        2 * (wanted - std::log(std::numbers::pi * std::numbers::pi * std::numbers::pi * 4));
    double logit = std::max(shallow < -0.2 ? shallow - std::log1p(-std::exp(shallow)) : 1.5, nearlyFull);
    for (int step = 0; step < 60; ++step) {
        const double t = std::exp(-std::fabs(logit) / 2);
        const double sine = 2 * t / (1 + t * t);
        const double cosine = (logit < 0 ? 1 : -1) * (1 - t) * (1 + t) / (1 + t * t);
        const double a = logit < 0 ? 2 * std::atan(t) : std::numbers::pi - 2 * std::atan(t);
        const double shape = segment::minusSine(2 * a, 2 * sine * cosine);
        const double off = 3 * std::log(shape) - std::log(sine) - wanted;
        const double move = off / (6 * sine * sine * sine / shape - cosine / 2);
        logit -= move;
        if (std::fabs(move) < 1e-8) return bore / (1 + std::exp(-logit));
    }
    throw Error(Error::Kind::NoConvergence, "flow",
                {"The critical depth was not found.", "No se encontró la profundidad crítica."});
}

Length sequentDepth(Length bore, Length depth, Flow flow) {
    const Volume kept = momentum(segmentAt(bore, depth), flow);
    Length low = criticalDepth(bore, flow);
    if (depth >= low) return depth;
    // Full, only the pressure grows with the level: a straight line.
    const Volume full = momentum(segmentAt(bore, bore), flow);
    if (kept >= full) return bore + (kept - full) / fullArea(bore);
    // Above the critical depth the momentum function rises; Newton's method, kept between the bounds.
    Length high = bore;
    Length level = (low + high) / 2;
    for (int step = 0; step < 100; ++step) {
        const Segment wetted = segmentAt(bore, level);
        const Volume off = momentum(wetted, flow) - kept;
        (off.si() > 0 ? high : low) = level;
        const double froude = froudeNumber(wetted, flow);
        Length next = level - Length::fromSi(off.si() / (wetted.area.si() * (1 - froude * froude)));
        if (!(next > low && next < high)) next = (low + high) / 2;
        if (std::fabs((next - level) / bore) < 1e-14) return next;
        level = next;
    }
    return level;  // the bounds have met
}

}  // namespace trenchbook
