#include "trenchbook/runoff.h"

#include <algorithm>

#include "trenchbook/error.h"

namespace trenchbook {
namespace {

constexpr double hardSurfaceCurveNumber = 98;
constexpr double leastCurveNumber = 10;

void requireRain(double si, const char* argument, Text unit) {
    // A blank cell arrives as 0, and no rain would make every pipe large enough.
    if (!(si > 0))
        throw Error(Error::Kind::BadArgument, argument, plain(si), Text{"above 0 ", "mayor que 0 "} + unit);
    requirePositive(si, argument);
}

}  // namespace

void requireCoefficient(double coefficient, const char* argument) {
    if (coefficient > 1 && coefficient <= 100) {
        const std::string typed = plain(coefficient);
        const std::string meant = plain(coefficient / 100);
        throw Error(Error::Kind::BadArgument, argument,
                    {std::string(argument) + " is " + typed +
                         ": a runoff coefficient is a share from 0 to 1, not a percent; for " + typed +
                         " % type " + meant + ".",
                     std::string(argument) + " es " + typed +
                         ": un coeficiente de escorrentía es una parte de 0 a 1, no un porcentaje; para " +
                         typed + " % escriba " + meant + "."});
    }
    if (!(coefficient > 0 && coefficient <= 1))
        throw Error(Error::Kind::BadArgument, argument, plain(coefficient),
                    {"above 0 and at most 1", "mayor que 0 y como máximo 1"});
}

Flow rationalFlow(Area area, double coefficient, RainRate intensity) {
    requirePositive(area, "area");
    requireCoefficient(coefficient);
    requireRain(intensity.si(), "intensity", Text::same("in/hr (mm/h)"));
    return area * intensity * coefficient;
}

Volume runoffVolume(Area area, double coefficient, Length rain) {
    requirePositive(area, "area");
    requireCoefficient(coefficient);
    requireRain(rain.si(), "rain", Text::same("in (mm)"));
    return area * rain * coefficient;
}

Length runoffDepth(Length rain, double curveNumber, double initialShare) {
    requireRain(rain.si(), "rain", Text::same("in (mm)"));
    requireBetween(curveNumber, leastCurveNumber, 100, "curve number");
    requireBetween(initialShare, 0, 1, "initial share");
    const Length storage = Length::inches(1000 / curveNumber - 10);
    const Length effective = rain - initialShare * storage;
    if (effective <= Length{}) return {};
    return effective * (effective / (effective + storage));
}

double compositeCurveNumber(double pervious, double imperviousShare, double unconnectedShare) {
    requireBetween(pervious, leastCurveNumber, 100, "curve number");
    requireBetween(imperviousShare, 0, 1, "impervious share");
    requireBetween(unconnectedShare, 0, 1, "unconnected share");
    const double absorbed = imperviousShare < 0.30 ? 0.5 * unconnectedShare : 0;
    return pervious + imperviousShare * (hardSurfaceCurveNumber - pervious) * (1 - absorbed);
}

Area roofArea(Area plan, Area wall, double wallShare, double pitchFactor) {
    requirePositive(plan, "plan");
    requireNotNegative(wall, "wall");
    requireBetween(wallShare, 0, 1, "wall share");
    requireBetween(pitchFactor, 1, 1.5, "pitch factor");
    return plan * pitchFactor + wall * wallShare;
}

}  // namespace trenchbook
