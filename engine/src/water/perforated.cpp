#include "trenchbook/water/perforated.h"

#include <cmath>
#include <numbers>

#include "trenchbook/core/error.h"
#include "trenchbook/pipe/manning.h"

namespace trenchbook {
namespace {

Area circle(Length diameter) { return diameter * diameter * (std::numbers::pi / 4); }

Flow throughOpening(Area open, Length head, double coefficient) {
    requireNotNegative(head, "head");
    requirePositive(coefficient, "coefficient");
    requireShare(coefficient, "coefficient");
    return open * Velocity::fromSi(coefficient * std::sqrt(2 * gravity * head.si()));
}

}  // namespace

Flow holeFlow(Length diameter, Length head, double coefficient) {
    requirePositive(diameter, "hole");
    return throughOpening(circle(diameter), head, coefficient);
}

Area openArea(const Perforations& openings, Length pipe) {
    requirePositive(openings.opening, "hole");
    requireNotNegative(openings.slotWidth, "slot width");
    requirePositive(openings.around, "holes");
    requirePositive(openings.spacing, "spacing");
    requireNotNegative(pipe, "length");
    const Area one =
        openings.slotWidth > Length{} ? openings.opening * openings.slotWidth : circle(openings.opening);
    return one * (openings.around * (pipe / openings.spacing));
}

Flow perforatedInflow(const Perforations& openings, Length pipe, Length head, double blockedShare,
                      double coefficient) {
    requireShare(blockedShare, "blocked share");
    return throughOpening(openArea(openings, pipe) * (1 - blockedShare), head, coefficient);
}

Length underdrainBore(Flow flow, Slope slope, double roughness) {
    requirePositive(flow, "flow");
    requireSlope(slope, "slope");
    // The capacity of a full pipe grows as bore^(8/3).
    const Flow ofOne = capacity(Length::metres(1), slope, roughness);
    return Length::metres(std::pow(flow / ofOne, 3.0 / 8));
}

Flow gravelFlow(Length width, Length depth, Slope slope, Velocity conductivity) {
    requirePositive(width, "width");
    requirePositive(depth, "depth");
    requireSlope(slope, "slope");
    requirePositive(conductivity, "conductivity");
    return width * depth * (conductivity * slope.fraction());
}

}  // namespace trenchbook
