#include "trenchbook/ground/mound.h"

#include <algorithm>
#include <boost/math/special_functions/expint.hpp>
#include <boost/math/special_functions/owens_t.hpp>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <numbers>
#include <utility>

#include "trenchbook/core/error.h"

namespace trenchbook {

// Parts of the integral, taken twice, leave known functions: with w = 1 / sqrt t it is the integral from 1 of
// 2 erf(alpha w) erf(beta w) / w^3, what remains is an exponential integral and, from 1 on, that of
// exp(-alpha^2 w^2) erf(beta w), which is Owen's T (D. B. Owen, 1956, Annals of Mathematical Statistics 27).
double hantushIntegral(double alpha, double beta) {
    using boost::math::expint;
    using boost::math::owens_t;
    using InDouble = boost::math::policies::policy<boost::math::policies::promote_double<false>>;
    using std::numbers::inv_pi, std::numbers::inv_sqrtpi, std::numbers::sqrt2;

    // Past either end the value is the same to the last digit, or below any that a pit has.
    alpha = std::clamp(alpha, 1e-150, 40.0);
    beta = std::clamp(beta, 1e-150, 40.0);
    const auto ofOne = [](double one, double other) {
        const double tail = std::exp(-one * one) * std::erf(other);
        return 2 * inv_sqrtpi * one * tail - 8 * one * one * owens_t(sqrt2 * one, other / one, InDouble());
    };
    const double ofBoth = 4 * inv_pi * alpha * beta * expint(1, alpha * alpha + beta * beta, InDouble());
    return std::erf(alpha) * std::erf(beta) + ofOne(alpha, beta) + ofOne(beta, alpha) + ofBoth;
}

Length moundRise(const Mound& mound) {
    requirePositive(mound.length, "length");
    requirePositive(mound.width, "width");
    requirePositive(mound.rate, "rate");
    requirePositive(mound.time, "hours");
    requirePositive(mound.conductivity, "conductivity");
    requireShare(mound.specificYield, "specific yield");
    requirePositive(mound.specificYield, "specific yield");
    requirePositive(mound.saturatedThickness, "saturated thickness");

    const double before = mound.saturatedThickness.si();
    const double time = mound.time.si();
    const double conductivity = mound.conductivity.si();
    // S* is below 1: the mound is never higher than a column that loses nothing sideways. With v put in, the
    // equation is rise = highest S*(rise).
    const double highest = mound.rate.si() * time / mound.specificYield;
    const auto residual = [&](double rise) {
        const double spread = conductivity * (before + rise / 2) / mound.specificYield * time;
        const double reach = std::sqrt(4 * spread);
        return rise - highest * hantushIntegral(mound.length.si() / 2 / reach, mound.width.si() / 2 / reach);
    };
    // S* changes slowly with the rise: from no rise the equation itself comes close, secants do the rest.
    double last = 0, lastResidual = residual(0);
    double rise = -lastResidual;
    for (int tries = 0; tries < 12; ++tries) {
        const double now = residual(rise);
        if (now == lastResidual) break;
        const double better = rise - now * (rise - last) / (now - lastResidual);
        if (!(better >= 0 && better <= highest)) break;
        // The step before was far longer, so that what is missing now is far shorter.
        if (std::fabs(better - rise) <= 3e-8 * better) return Length::metres(better);
        last = std::exchange(rise, better);
        lastResidual = now;
    }
    std::uintmax_t steps = 100;
    const auto [low, high] = boost::math::tools::toms748_solve(
        residual, 0.0, highest, [](double a, double b) { return b - a <= 1e-11 * b; }, steps);
    return Length::metres((low + high) / 2);
}

}  // namespace trenchbook
