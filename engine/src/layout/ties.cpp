#include "trenchbook/layout/ties.h"

#include <algorithm>
#include <cmath>

#include "trenchbook/core/error.h"

namespace trenchbook {

TwoPlaces twoTies(const PlanPoint& first, Length toFirst, const PlanPoint& second, Length toSecond) {
    requirePositive(toFirst, "first tie");
    requirePositive(toSecond, "second tie");
    const double apart = distance(first, second).si();
    if (!(apart > 0))
        throw Error(Error::Kind::BadArgument, "second point", Text{"the first point", "el primer punto"},
                    {"another point", "otro punto"});
    const double a = toFirst.si(), b = toSecond.si();
    // Along the line from first to second, and beside it.
    double along = (apart * apart + (a - b) * (a + b)) / (2 * apart);
    double beside = 0;
    TwoPlaces places;
    if (a + b < apart) {
        places.gap = Length::fromSi(apart - a - b);
        along = a + (apart - a - b) / 2;
    } else if (std::fabs(a - b) > apart) {
        places.gap = Length::fromSi(std::fabs(a - b) - apart);
        along = a > b ? a - places.gap.si() / 2 : -(a + places.gap.si() / 2);
    } else {
        beside = std::sqrt(std::max(0.0, (a - along) * (a + along)));
    }
    const double east = (second.east - first.east).si() / apart,
                 north = (second.north - first.north).si() / apart;
    const auto at = [&](double side) {
        return PlanPoint{Length::fromSi(first.east.si() + along * east - side * north),
                         Length::fromSi(first.north.si() + along * north + side * east)};
    };
    places.left = at(beside);
    places.right = at(-beside);
    return places;
}

}  // namespace trenchbook
