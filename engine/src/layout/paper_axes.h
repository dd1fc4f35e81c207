// Round steps and scales of what is drawn from the side: levels, heights, counts.
#pragma once

#include <cmath>
#include <limits>
#include <optional>
#include <span>

#include "trenchbook/core/units.h"

namespace trenchbook {

// Least and greatest of what is drawn.
struct DrawnSpan {
    double least = std::numeric_limits<double>::infinity(), most = -least;
    void hold(std::optional<Length> value) {
        if (!value) return;
        least = value->si() < least ? value->si() : least;
        most = value->si() > most ? value->si() : most;
    }
    bool any() const { return least <= most; }
};

// Round steps of a level axis, in the system's own unit.
inline std::span<const double> levelSteps(bool metric) {
    static constexpr double feet[] = {0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100},
                            metres[] = {0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50};
    return metric ? std::span<const double>(metres) : std::span<const double>(feet);
}
// Usual scales of heights: feet to the inch, or ratios.
inline std::span<const double> heightScales(bool metric) {
    static constexpr double feet[] = {0.5, 1,  2,  2.5, 3,  4,  5,   6,   8,   10,
                                      15,  20, 25, 30,  40, 50, 100, 200, 500, 1000},
                            ratios[] = {5,   10,  20,  25,  40,   50,   75,   100,
                                        150, 200, 250, 500, 1000, 2000, 5000, 10000};
    return metric ? std::span<const double>(ratios) : std::span<const double>(feet);
}
// The least of the steps that is no shorter on paper than asked; `scale` is lengths over lengths on paper.
inline double stepOf(std::span<const double> steps, Length least, double scale, double unit) {
    for (const double step : steps)
        if (step * unit / scale >= least.si()) return step;
    double step = steps.back();
    while (step * unit / scale < least.si()) step *= 10;
    return step;
}

// Digits behind the point of the numbers along an axis of such steps.
inline int decimalsOf(double step) {
    int decimals = 0;
    for (double shown = step; decimals < 6 && std::fabs(shown - std::round(shown)) > 1e-9; shown *= 10)
        ++decimals;
    return decimals;
}

}  // namespace trenchbook
