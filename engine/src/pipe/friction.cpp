#include "trenchbook/pipe/friction.h"

#include <cmath>
#include <numbers>

#include "trenchbook/core/error.h"
#include "trenchbook/pipe/circular.h"
#include "trenchbook/pipe/manning.h"

namespace trenchbook {
namespace {

constexpr double laminarReynolds = 2000;
constexpr double turbulentReynolds = 4000;

// Newton's method on x = 1/sqrt f, whose equation is all but a straight line.
double colebrook(double reynolds, double relativeRoughness) {
    const double rough = relativeRoughness / 3.7;
    const double viscous = 2.51 / reynolds;
    const double scale = 2 / std::numbers::ln10;
    double x = -1.8 * std::log10(std::pow(rough, 1.11) + 6.9 / reynolds);  // Haaland 1983, within 2 %
    for (int step = 0; step < 20; ++step) {
        const double inside = rough + viscous * x;
        const double move = (x + scale * std::log(inside)) / (1 + scale * viscous / inside);
        x -= move;
        if (std::fabs(move) < 1e-9 * x) return 1 / (x * x);
    }
    throw Error(Error::Kind::NoConvergence, "wall roughness",
                {"The friction factor was not found.", "No se encontró el factor de fricción."});
}

}  // namespace

Length manningLoss(Length bore, Flow flow, Length length, double roughness) {
    requireNotNegative(length, "length");
    return slopeNeeded(bore, flow, roughness) * length;
}

Length darcyLoss(Length bore, Flow flow, Length length, double factor) {
    requirePositive(bore, "pipe");
    requireNotNegative(flow, "flow");
    requireNotNegative(length, "length");
    const double velocity = (flow / fullArea(bore)).si();
    return Length::fromSi(factor * (length / bore) * velocity * velocity / (2 * gravity));
}

double frictionFactor(double reynolds, double relativeRoughness) {
    requirePositive(reynolds, "flow");
    if (!(relativeRoughness >= 0 && relativeRoughness <= 0.05))
        throw Error(Error::Kind::OutsideValidity, "wall roughness",
                    Text::same(plain(relativeRoughness)) + Text{" of the bore", " del diámetro interior"},
                    {"from 0 to 0.05 of the bore", "de 0 a 0.05 del diámetro interior"});
    if (reynolds <= laminarReynolds) return 64 / reynolds;
    if (reynolds >= turbulentReynolds) return colebrook(reynolds, relativeRoughness);
    const double way = (reynolds - laminarReynolds) / (turbulentReynolds - laminarReynolds);
    return std::lerp(64 / laminarReynolds, colebrook(turbulentReynolds, relativeRoughness), way);
}

Length wallLoss(Length bore, Flow flow, Length length, Length wallRoughness, KinematicViscosity viscosity) {
    requirePositive(bore, "pipe");
    requireNotNegative(flow, "flow");
    if (flow.si() == 0) return Length();
    const double reynolds = (flow / fullArea(bore)).si() * bore.si() / viscosity.si();
    return darcyLoss(bore, flow, length, frictionFactor(reynolds, wallRoughness / bore));
}

KinematicViscosity waterViscosity(Temperature water) {
    const double t = water.celsius();
    if (!(t >= 0 && t <= 100))
        throw Error(Error::Kind::OutsideValidity, "water",
                    plain(water.fahrenheit(), 1) + " °F (" + plain(t, 1) + " °C)",
                    {"from 32 to 212 °F (0 to 100 °C)", "de 32 a 212 °F (de 0 a 100 °C)"});
    const double kelvins = (t + 273.15) / 300;
    const double viscosity = 1e-6 * (280.68 * std::pow(kelvins, -1.9) + 511.45 * std::pow(kelvins, -7.7) +
                                     61.131 * std::pow(kelvins, -19.6) + 0.45903 * std::pow(kelvins, -40));
    const double density =
        (999.83952 + t * (16.945176 + t * (-7.9870401e-3 +
                                           t * (-46.170461e-6 + t * (105.56302e-9 - t * 280.54253e-12))))) /
        (1 + 16.879850e-3 * t);
    return KinematicViscosity::squareMetresPerSecond(viscosity / density);
}

}  // namespace trenchbook
