#include "trenchbook/money/fit.h"

#include <cmath>
#include <string>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

void require(std::span<const double> x, std::span<const double> y, Held held, std::size_t least) {
    if (x.size() < least)
        throw Error(Error::Kind::BadArgument, "x", std::to_string(x.size()),
                    {"at least " + std::to_string(least) + " points",
                     "al menos " + std::to_string(least) + " puntos"});
    if (x.size() != y.size())
        throw Error(
            Error::Kind::BadArgument, "y", std::to_string(y.size()),
            {"as many as x: " + std::to_string(x.size()), "tantos como x: " + std::to_string(x.size())});
    requireNotNegative(held.weight, "weight");
}

void requireSpread(double squares) {
    if (!(squares > 0))
        throw Error(Error::Kind::BadArgument, "x", Text{"one place alone", "un solo lugar"},
                    {"two places at least, not 0", "al menos dos lugares, no 0"});
}

double mean(std::span<const double> values) {
    double sum = 0;
    for (const double value : values) sum += value;
    return sum / static_cast<double>(values.size());
}

double rootMeanSquare(const std::vector<double>& values) {
    double sum = 0;
    for (const double value : values) sum += value * value;
    return std::sqrt(sum / static_cast<double>(values.size()));
}

}  // namespace

LineFit fitLine(std::span<const double> x, std::span<const double> y, Held held) {
    require(x, y, held, 3);
    const auto count = static_cast<double>(x.size());
    const double meanX = mean(x), meanY = mean(y);
    double sxx = 0, sxy = 0, syy = 0;
    for (std::size_t i = 0; i < x.size(); ++i) {
        sxx += (x[i] - meanX) * (x[i] - meanX);
        sxy += (x[i] - meanX) * (y[i] - meanY);
        syy += (y[i] - meanY) * (y[i] - meanY);
    }
    requireSpread(sxx);
    LineFit fit;
    fit.slope = (sxy + held.weight * held.slope) / (sxx + held.weight);
    fit.intercept = meanY - fit.slope * meanX;
    for (std::size_t i = 0; i < x.size(); ++i) {
        const double away = x[i] - meanX, residual = (y[i] - meanY) - fit.slope * away;
        fit.squares += residual * residual;
        fit.leftOut.push_back(residual / (1 - 1 / count - away * away / (sxx + held.weight)));
    }
    fit.leftOutError = rootMeanSquare(fit.leftOut);
    fit.determined = syy > 0 ? 1 - fit.squares / syy : 1;
    fit.residualDeviation = std::sqrt(fit.squares / (count - 2));
    if (held.weight > 0) return fit;
    fit.slopeError = fit.residualDeviation / std::sqrt(sxx);
    fit.interceptError = fit.residualDeviation * std::sqrt(1 / count + meanX * meanX / sxx);
    return fit;
}

LineFit fitOrigin(std::span<const double> x, std::span<const double> y, Held held,
                  std::span<const double> weights) {
    require(x, y, held, held.weight > 0 ? 1 : 2);
    if (!weights.empty() && weights.size() != x.size())
        throw Error(Error::Kind::BadArgument, "weights", std::to_string(weights.size()),
                    {"as many as x, or none", "tantos como x, o ninguno"});
    const auto weightOf = [&](std::size_t i) { return weights.empty() ? 1.0 : weights[i]; };
    double sxx = 0, sxy = 0, syy = 0;
    for (std::size_t i = 0; i < x.size(); ++i) {
        sxx += weightOf(i) * x[i] * x[i];
        sxy += weightOf(i) * x[i] * y[i];
        syy += weightOf(i) * y[i] * y[i];
    }
    requireSpread(sxx);
    LineFit fit;
    fit.slope = (sxy + held.weight * held.slope) / (sxx + held.weight);
    for (std::size_t i = 0; i < x.size(); ++i) {
        const double residual = y[i] - fit.slope * x[i];
        fit.squares += weightOf(i) * residual * residual;
        const double leverage = weightOf(i) * x[i] * x[i] / (sxx + held.weight);
        if (leverage < 1) fit.leftOut.push_back(residual / (1 - leverage));
    }
    if (!fit.leftOut.empty()) fit.leftOutError = rootMeanSquare(fit.leftOut);
    fit.determined = syy > 0 ? 1 - fit.squares / syy : 1;
    if (x.size() > 1) fit.residualDeviation = std::sqrt(fit.squares / static_cast<double>(x.size() - 1));
    if (held.weight == 0) fit.slopeError = fit.residualDeviation / std::sqrt(sxx);
    return fit;
}

}  // namespace trenchbook
