#include "trenchbook/layout/traverse.h"

#include <cmath>
#include <string>

#include "trenchbook/core/error.h"

namespace trenchbook {

Closure closure(std::span<const Leg> legs) {
    Closure found;
    PlanPoint end;
    for (const Leg& leg : legs) {
        end = ahead(end, leg.azimuth, leg.length);
        found.perimeter += leg.length;
    }
    found.east = end.east;
    found.north = end.north;
    return found;
}

std::vector<PlanPoint> traverse(const PlanPoint& start, std::span<const Leg> legs) {
    std::vector<PlanPoint> points = {start};
    for (const Leg& leg : legs) points.push_back(ahead(points.back(), leg.azimuth, leg.length));
    return points;
}

std::vector<PlanPoint> compassRule(const PlanPoint& start, std::span<const Leg> legs) {
    const Closure missed = closure(legs);
    if (legs.size() < 3 || !(missed.perimeter > Length{}))
        throw Error(Error::Kind::BadArgument, "legs", std::to_string(legs.size()),
                    {"three or more with a length", "tres o más con longitud"});
    std::vector<PlanPoint> corners = {start};
    for (const Leg& leg : legs.first(legs.size() - 1)) {
        const PlanPoint as = ahead(corners.back(), leg.azimuth, leg.length);
        const double share = leg.length / missed.perimeter;
        corners.push_back({as.east - missed.east * share, as.north - missed.north * share});
    }
    return corners;
}

Area enclosed(std::span<const PlanPoint> corners) {
    double twice = 0;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        // From the first corner, so that far coordinates lose no digits.
        const PlanPoint& next = corners[(i + 1) % corners.size()];
        const Length ax = corners[i].east - corners[0].east, ay = corners[i].north - corners[0].north;
        const Length bx = next.east - corners[0].east, by = next.north - corners[0].north;
        twice += (ax * by).si() - (bx * ay).si();
    }
    return Area::fromSi(std::fabs(twice) / 2);
}

}  // namespace trenchbook
