// Small functions that stay exact where their argument goes to nothing: a pit whose sides hardly count must
// give the same answer as one whose sides do not count at all.
#pragma once

#include <cmath>

#pragma GCC visibility push(hidden)
namespace trenchbook {

// ln(1 + x) / x, 1 at 0.
inline double logRatio(double x) { return x == 0 ? 1 : std::log1p(x) / x; }

// (e^x - 1) / x, 1 at 0: mean of an exponential over a step.
inline double phi1(double x) { return x == 0 ? 1 : std::expm1(x) / x; }

// (e^x - 1 - x) / x^2, 1/2 at 0. The series is used where the difference would lose digits.
inline double phi2(double x) {
    if (std::fabs(x) > 0.5) return (std::expm1(x) - x) / (x * x);
    double term = 0.5;
    double sum = term;
    for (int n = 3; std::fabs(term) > 1e-18; ++n) sum += term *= x / n;
    return sum;
}

}  // namespace trenchbook
#pragma GCC visibility pop
