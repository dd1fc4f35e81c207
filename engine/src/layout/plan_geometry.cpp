#include "layout/plan_geometry.h"

#include <algorithm>
#include <limits>
#include <vector>

namespace trenchbook::layout {

Nearest toSegment(Vec at, Vec a, Vec b) {
    const Vec along = b - a;
    const double square = dot(along, along);
    const double share = square > 0 ? std::clamp(dot(at - a, along) / square, 0.0, 1.0) : 0;
    return {size(at - (a + share * along)), share};
}

bool inside(Vec at, std::span<const Vec> corners) {
    bool in = false;
    for (std::size_t i = 0, j = corners.size() - 1; i < corners.size(); j = i++) {
        const Vec a = corners[i], b = corners[j];
        if ((a.y > at.y) != (b.y > at.y) && at.x < (b.x - a.x) * (at.y - a.y) / (b.y - a.y) + a.x) in = !in;
    }
    return in;
}

double toOutline(Vec at, std::span<const Vec> corners, bool closed) {
    double least = std::numeric_limits<double>::infinity();
    if (corners.size() == 1) return size(at - corners[0]);
    const std::size_t sides = closed && corners.size() > 2 ? corners.size() : corners.size() - 1;
    for (std::size_t i = 0; i < sides; ++i)
        least = std::min(least, toSegment(at, corners[i], corners[(i + 1) % corners.size()]).far);
    return least;
}

double within(Vec a, Vec b, std::span<const Vec> corners, double skin) {
    const Vec along = b - a;
    std::vector<double> cuts = {0, 1};
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const Vec side = corners[(i + 1) % corners.size()] - corners[i];
        const double turned = cross(along, side);
        if (turned == 0) continue;
        const double share = cross(corners[i] - a, side) / turned;
        if (share > 0 && share < 1) cuts.push_back(share);
    }
    std::sort(cuts.begin(), cuts.end());
    double through = 0;
    for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
        const Vec middle = a + (cuts[i] + cuts[i + 1]) / 2 * along;
        if (inside(middle, corners) && toOutline(middle, corners) > skin)
            through += (cuts[i + 1] - cuts[i]) * size(along);
    }
    return through;
}

}  // namespace trenchbook::layout
