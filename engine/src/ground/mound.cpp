#include "trenchbook/ground/mound.h"

#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <utility>

#include "trenchbook/core/error.h"

namespace trenchbook {

double hantushIntegral(double alpha, double beta) {
    // With t = u^2 the integrand is smooth down to u = 0.
    const auto integrand = [&](double u) {
        return u == 0 ? 0 : 2 * u * std::erf(alpha / u) * std::erf(beta / u);
    };
    // The rule's own estimate of its error is far above the error, which stays below 1e-13 here.
    return boost::math::quadrature::gauss_kronrod<double, 31>::integrate(integrand, 0.0, 1.0, 12, 1e-10);
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
