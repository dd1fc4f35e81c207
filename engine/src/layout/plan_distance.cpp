#include "trenchbook/layout/plan_distance.h"

#include <algorithm>
#include <limits>

#include "layout/plan_geometry.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

using layout::Vec;

struct Side {
    Vec a, b;
};

std::vector<Vec> cornersOf(const PlanShape& shape) {
    std::vector<Vec> corners;
    for (const PlanPoint& corner : shape.corners) corners.push_back(layout::vec(corner));
    return corners;
}
std::vector<Side> sidesOf(const std::vector<Vec>& corners, bool open) {
    if (corners.empty())
        throw Error(Error::Kind::BadArgument, "corners", Text{"none", "ninguna"},
                    {"one or more", "una o más"});
    if (corners.size() == 1) return {{corners[0], corners[0]}};
    std::vector<Side> sides;
    for (std::size_t i = 0; i + 1 < corners.size(); ++i) sides.push_back({corners[i], corners[i + 1]});
    if (corners.size() > 2 && !open) sides.push_back({corners.back(), corners.front()});
    return sides;
}

bool crossEachOther(const Side& p, const Side& q) {
    const Vec along = p.b - p.a, other = q.b - q.a;
    const double a = layout::cross(along, q.a - p.a), b = layout::cross(along, q.b - p.a);
    const double c = layout::cross(other, p.a - q.a), d = layout::cross(other, p.b - q.a);
    return a * b < 0 && c * d < 0;
}

}  // namespace

Length gap(const PlanShape& a, const PlanShape& b) {
    const std::vector<Vec> cornersA = cornersOf(a), cornersB = cornersOf(b);
    const std::vector<Side> sidesA = sidesOf(cornersA, a.open), sidesB = sidesOf(cornersB, b.open);
    const auto holds = [](const PlanShape& shape, const std::vector<Vec>& corners, Vec at) {
        return shape.filled && corners.size() > 2 && layout::inside(at, corners);
    };
    if (holds(a, cornersA, cornersB[0]) || holds(b, cornersB, cornersA[0])) return {};
    // Nearest at an end of one of the two sides, unless they cross.
    double least = std::numeric_limits<double>::infinity();
    for (const Side& p : sidesA)
        for (const Side& q : sidesB) {
            if (crossEachOther(p, q)) return {};
            for (const double far :
                 {layout::toSegment(p.a, q.a, q.b).far, layout::toSegment(p.b, q.a, q.b).far,
                  layout::toSegment(q.a, p.a, p.b).far, layout::toSegment(q.b, p.a, p.b).far})
                least = std::min(least, far);
        }
    return Length::fromSi(least);
}

double nearestShare(const PlanPoint& from, const PlanPoint& to, const PlanShape& shape) {
    const Side run{layout::vec(from), layout::vec(to)};
    double least = std::numeric_limits<double>::infinity(), share = 0;
    const auto take = [&](double far, double at) {
        if (far < least || (far == least && at < share)) least = far, share = at;
    };
    for (const Side& side : sidesOf(cornersOf(shape), shape.open)) {
        if (crossEachOther(run, side)) {
            const Vec along = run.b - run.a, other = side.b - side.a;
            take(0, layout::cross(side.a - run.a, other) / layout::cross(along, other));
        }
        take(layout::toSegment(run.a, side.a, side.b).far, 0);
        take(layout::toSegment(run.b, side.a, side.b).far, 1);
        for (const Vec corner : {side.a, side.b}) {
            const layout::Nearest nearest = layout::toSegment(corner, run.a, run.b);
            take(nearest.far, nearest.share);
        }
    }
    return share;
}

}  // namespace trenchbook
