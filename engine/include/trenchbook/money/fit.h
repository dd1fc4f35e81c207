// Straight lines through what was measured, held towards a slope that was thought before: least squares with a penalty.
//
//     #include "trenchbook/money/fit.h"
//     using namespace trenchbook;
//     const std::vector<double> x = {1, 2, 3}, y = {2.1, 3.9, 6.2};
//     LineFit line = fitLine(x, y);                        // y = intercept + slope x
//     LineFit held = fitLine(x, y, {.slope = 1.5, .weight = 2});
//     LineFit origin = fitOrigin(x, y);                    // y = slope x
//
// fitLine: slope = (Sxy + weight x held slope) / (Sxx + weight) with sums about the means (Draper and Smith, Applied Regression
// Analysis, for the plain line; ridge regression after Hoerl and Kennard 1970). fitOrigin: the same with sums about 0; each
// point may have a weight of its own (1 over its variance).
// Left out one at a time, a point misses the line of the others by e / (1 - h), h its leverage: exact for both.
// Checked on NIST's certified data set Norris to 12 digits. Errors: BadArgument "x" (fewer than three points, one place alone),
// "y" (another count), "weight" below 0.
#pragma once

#include <span>
#include <vector>

namespace trenchbook {

struct Held {
    double slope = 0;
    double weight = 0;  // in units of Sxx; 0: not held
};

struct LineFit {
    double slope = 0, intercept = 0;
    // Of the plain line alone; 0 where it is held.
    double slopeError = 0, interceptError = 0;  // standard errors
    double residualDeviation = 0, squares = 0;  // of the residuals: standard deviation, sum of squares
    double determined = 0;                      // R squared
    std::vector<double> leftOut = {};           // y of each point less what the others say of it
    double leftOutError = 0;                    // root of the mean of their squares
};

LineFit fitLine(std::span<const double> x, std::span<const double> y, Held held = {});
// Two points are enough. `weights`: empty for 1 each.
LineFit fitOrigin(std::span<const double> x, std::span<const double> y, Held held = {},
                  std::span<const double> weights = {});

}  // namespace trenchbook
