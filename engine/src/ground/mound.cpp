#include "trenchbook/ground/mound.h"

#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>

#include "trenchbook/core/error.h"

namespace trenchbook {

double hantushIntegral(double alpha, double beta) {
    // With t = u^2 the integrand is smooth down to u = 0.
    const auto integrand = [&](double u) {
        return u == 0 ? 0 : 2 * u * std::erf(alpha / u) * std::erf(beta / u);
    };
    return boost::math::quadrature::gauss_kronrod<double, 31>::integrate(integrand, 0.0, 1.0, 12, 1e-12);
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
    const auto residual = [&](double rise) {
        const double meanThickness = before + rise / 2;
        const double spread = conductivity * meanThickness / mound.specificYield * time;
        const double reach = std::sqrt(4 * spread);
        const double integral = hantushIntegral(mound.length.si() / 2 / reach, mound.width.si() / 2 / reach);
        return rise * 2 * meanThickness - 2 * mound.rate.si() / conductivity * spread * integral;
    };
    // S* is below 1: the mound is never higher than a column that loses nothing sideways.
    const double highest = mound.rate.si() * time / mound.specificYield;
    std::uintmax_t steps = 100;
    const auto [low, high] = boost::math::tools::toms748_solve(
        residual, 0.0, highest, [](double a, double b) { return b - a <= 1e-11 * b; }, steps);
    return Length::metres((low + high) / 2);
}

}  // namespace trenchbook
