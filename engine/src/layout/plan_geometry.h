// Plane geometry in metres, for the files of this folder.
#pragma once

#include <cmath>
#include <numbers>
#include <span>

#include "trenchbook/layout/plan_point.h"

#pragma GCC visibility push(hidden)
namespace trenchbook::layout {

inline constexpr double perDegree = std::numbers::pi / 180;

struct Vec {
    double x = 0, y = 0;

    friend Vec operator+(Vec a, Vec b) { return {a.x + b.x, a.y + b.y}; }
    friend Vec operator-(Vec a, Vec b) { return {a.x - b.x, a.y - b.y}; }
    friend Vec operator*(double factor, Vec a) { return {factor * a.x, factor * a.y}; }
};
inline double dot(Vec a, Vec b) { return a.x * b.x + a.y * b.y; }
// Above 0 where b lies to the left of a.
inline double cross(Vec a, Vec b) { return a.x * b.y - a.y * b.x; }
inline double size(Vec a) { return std::hypot(a.x, a.y); }

inline Vec vec(const PlanPoint& point) { return {point.east.si(), point.north.si()}; }
inline PlanPoint point(Vec at) { return {Length::fromSi(at.x), Length::fromSi(at.y)}; }

// How far a line that comes from `before` turns at `at`, in degrees, above 0 to the right; -180 to 180.
inline double deflection(Vec before, Vec at, Vec after) {
    const Vec in = at - before, out = after - at;
    return -std::atan2(cross(in, out), dot(in, out)) / perDegree;
}

// From a point to the nearest of a segment, and where along it (0 to 1).
struct Nearest {
    double far = 0, share = 0;
};
Nearest toSegment(Vec at, Vec a, Vec b);
// Whether a point lies inside corners in order; on their line either may be told.
bool inside(Vec at, std::span<const Vec> corners);
// To the outline, from within and from without.
double toOutline(Vec at, std::span<const Vec> corners, bool closed = true);
// Length of a segment within corners and more than `skin` from their line: 0 where it runs along a wall.
double within(Vec a, Vec b, std::span<const Vec> corners, double skin);

}  // namespace trenchbook::layout
#pragma GCC visibility pop
