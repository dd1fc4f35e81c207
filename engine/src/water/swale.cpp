#include "trenchbook/water/swale.h"

#include <cmath>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

void requireSwale(const Swale& swale) {
    requireNotNegative(swale.bottom, "bottom");
    requireNotNegative(swale.sideSlope, "side slope");
    if (swale.bottom.si() == 0 && swale.sideSlope == 0)
        throw Error(Error::Kind::BadArgument, "side slope", "0",
                    {"above 0 where the bottom has no width", "mayor que 0 donde el fondo no tiene ancho"});
}

double slantedSide(const Swale& swale) { return std::sqrt(1 + swale.sideSlope * swale.sideSlope); }

// Solves f(ln depth) = 0 for a rising f that returns its value and its derivative.
template <class Equation>
Length solveDepth(double guess, Equation&& equation) {
    double logDepth = std::log(guess);
    for (int step = 0; step < 100; ++step) {
        const auto [value, derivative] = equation(Length::metres(std::exp(logDepth)));
        const double move = value / derivative;
        logDepth -= move;
        if (std::fabs(move) < 1e-8) return Length::metres(std::exp(logDepth));
    }
    throw Error(Error::Kind::NoConvergence, "flow",
                {"The depth in the swale was not found.", "No se encontró la profundidad en la cuneta."});
}

struct ValueAndSlope {
    double value, derivative;
};

}  // namespace

Area swaleArea(const Swale& swale, Length depth) { return depth * (swale.bottom + depth * swale.sideSlope); }

Length swaleSurfaceWidth(const Swale& swale, Length depth) {
    return swale.bottom + depth * (2 * swale.sideSlope);
}

Length swaleWettedPerimeter(const Swale& swale, Length depth) {
    return swale.bottom + depth * (2 * slantedSide(swale));
}

Volume swaleMomentum(const Swale& swale, Length depth, Flow flow) {
    requireSwale(swale);
    requirePositive(depth, "depth");
    const Volume pressure = depth * depth * (swale.bottom / 2 + depth * (swale.sideSlope / 3));
    return pressure + Volume::fromSi(flow.si() * flow.si() / (gravity * swaleArea(swale, depth).si()));
}

Flow swaleCapacity(const Swale& swale, Length depth, Slope slope, double roughness) {
    requireSwale(swale);
    requirePositive(depth, "depth");
    requireSlope(slope, "slope");
    requirePositive(roughness, "roughness");
    const Area area = swaleArea(swale, depth);
    const double radius = (area / swaleWettedPerimeter(swale, depth)).si();
    return Flow::fromSi(area.si() * std::cbrt(radius * radius) * std::sqrt(slope.si()) / roughness);
}

Length swaleDepth(const Swale& swale, Flow flow, Slope slope, double roughness) {
    requireSwale(swale);
    requireSlope(slope, "slope");
    requirePositive(roughness, "roughness");
    requireNotNegative(flow, "flow");
    if (flow.si() == 0) return Length();
    const double wanted = std::log(flow.si() * roughness) - std::log(slope.si()) / 2;
    const double guess = std::exp(wanted * 3 / 8);  // a triangle's power; the constant is found on the way
    return solveDepth(guess, [&](Length depth) {
        const Area area = swaleArea(swale, depth);
        const Length perimeter = swaleWettedPerimeter(swale, depth);
        const double widening = depth * swaleSurfaceWidth(swale, depth) / area;
        const double lengthening = depth * (2 * slantedSide(swale)) / perimeter;
        return ValueAndSlope{(5 * std::log(area.si()) - 2 * std::log(perimeter.si())) / 3 - wanted,
                             (5 * widening - 2 * lengthening) / 3};
    });
}

Velocity swaleVelocity(const Swale& swale, Flow flow, Slope slope, double roughness) {
    const Length depth = swaleDepth(swale, flow, slope, roughness);
    if (depth.si() == 0) return Velocity();
    return flow / swaleArea(swale, depth);
}

Length swaleCriticalDepth(const Swale& swale, Flow flow) {
    requireSwale(swale);
    requireNotNegative(flow, "flow");
    if (flow.si() == 0) return Length();
    const double wanted = 2 * std::log(flow.si()) - std::log(gravity);
    return solveDepth(std::exp(wanted / 5), [&](Length depth) {
        const Area area = swaleArea(swale, depth);
        const Length width = swaleSurfaceWidth(swale, depth);
        return ValueAndSlope{3 * std::log(area.si()) - std::log(width.si()) - wanted,
                             3 * (depth * width / area) - depth * (2 * swale.sideSlope) / width};
    });
}

}  // namespace trenchbook
