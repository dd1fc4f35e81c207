// Angles of a circular segment, shared by the geometry and the normal-depth solver. Not a public header.
#pragma once

#include <algorithm>
#include <cmath>
#include <numbers>

#pragma GCC visibility push(hidden)
namespace trenchbook::segment {

// t - sin t for t >= 0. Below 1 the two nearly cancel, so the series t3/3! - t5/5! + … is summed instead.
inline double minusSine(double t, double sine) {
    if (t >= 1) return t - sine;
    const double square = t * t;
    double sum = 1;
    // From the smallest term up; the last kept is below 1e-17 at t = 1.
    for (const int k : {17, 15, 13, 11, 9, 7, 5}) sum = 1 - square / (k * (k - 1)) * sum;
    return square * t / 6 * sum;
}
inline double minusSine(double t) { return minusSine(t, t >= 1 ? std::sin(t) : 0); }

// Half angle from invert to the water's edge at depth / bore. Measured from the nearer of invert and crown,
// where the arc sine is well conditioned.
inline double halfAngle(double fill) {
    if (fill >= 1) return std::numbers::pi;
    if (fill > 0.5) return std::numbers::pi - 2 * std::asin(std::sqrt(1 - fill));
    return 2 * std::asin(std::sqrt(fill));
}

inline double square(double x) { return x * x; }

}  // namespace trenchbook::segment
#pragma GCC visibility pop
