#include "trenchbook/water/runoff.h"

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

constexpr double hardSurfaceCurveNumber = 98;
constexpr double leastCurveNumber = 10;

}  // namespace

void requireCoefficient(double coefficient, const char* argument) {
    requireShare(coefficient, argument);
    if (!(coefficient > 0))
        throw Error(Error::Kind::BadArgument, argument, plain(coefficient),
                    {"above 0 and at most 1", "mayor que 0 y como máximo 1"});
}

Flow rationalFlow(Area area, double coefficient, RainRate intensity) {
    requirePositive(area, "area");
    requireCoefficient(coefficient);
    requirePositive(intensity, "intensity");
    return area * intensity * coefficient;
}

Volume runoffVolume(Area area, double coefficient, Length rain) {
    requirePositive(area, "area");
    requireCoefficient(coefficient);
    requirePositive(rain, "rain");
    return area * rain * coefficient;
}

Length runoffDepth(Length rain, double curveNumber, double initialShare) {
    requirePositive(rain, "rain");
    requireBetween(curveNumber, leastCurveNumber, 100, "curve number");
    requireShare(initialShare, "initial share");
    const Length storage = Length::inches(1000 / curveNumber - 10);
    const Length effective = rain - initialShare * storage;
    if (effective <= Length{}) return {};
    return effective * (effective / (effective + storage));
}

double compositeCurveNumber(double pervious, double imperviousShare, double unconnectedShare) {
    requireBetween(pervious, leastCurveNumber, 100, "curve number");
    requireShare(imperviousShare, "impervious share");
    requireShare(unconnectedShare, "unconnected share");
    const double absorbed = imperviousShare < 0.30 ? 0.5 * unconnectedShare : 0;
    return pervious + imperviousShare * (hardSurfaceCurveNumber - pervious) * (1 - absorbed);
}

Area roofArea(Area plan, Area wall, double wallShare, double pitchFactor) {
    requirePositive(plan, "plan");
    requireNotNegative(wall, "wall");
    requireShare(wallShare, "wall share");
    requireBetween(pitchFactor, 1, 1.5, "pitch factor");
    return plan * pitchFactor + wall * wallShare;
}

}  // namespace trenchbook
