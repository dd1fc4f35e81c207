#include "trenchbook/water/travel.h"

#include <cmath>

#include "trenchbook/core/error.h"
#include "trenchbook/pipe/roughness.h"

namespace trenchbook {

Duration sheetTime(Length length, Slope slope, double roughness, Length twoYearDayRain) {
    requirePositive(length, "length");
    requireSlope(slope, "slope");
    requireBetween(roughness, groundRoughness.least, groundRoughness.most, "roughness");
    requirePositive(twoYearDayRain, "two-year day rain");
    if (length > longestSheet * (1 + 1e-12)) {
        const std::string given = plain(length.feet(), 2) + " ft (" + plain(length.metres(), 2) + " m)";
        throw Error(
            Error::Kind::OutsideValidity, "length",
            Text{
                "length is " + given +
                    ": after 100 ft (30.48 m) a sheet of water has gathered into rills; take the rest of the "
                    "path as shallow flow.",
                "length es " + given +
                    ": después de 100 ft (30.48 m) la lámina de agua ya se juntó en surcos; tome el resto "
                    "del recorrido como flujo concentrado."});
    }
    return Duration::hours(0.007 * std::pow(roughness * length.feet(), 0.8) /
                           (std::sqrt(twoYearDayRain.inches()) * std::pow(slope.fraction(), 0.4)));
}

Velocity shallowVelocity(Slope slope, Velocity atUnitSlope) {
    requireSlope(slope, "slope");
    requirePositive(atUnitSlope, "surface");
    return atUnitSlope * std::sqrt(slope.fraction());
}

Duration shallowTime(Length length, Slope slope, Velocity atUnitSlope) {
    requirePositive(length, "length");
    return length / shallowVelocity(slope, atUnitSlope);
}

Duration kirpichTime(Length length, Slope slope) {
    requirePositive(length, "length");
    requireSlope(slope, "slope");
    return Duration::minutes(0.0078 * std::pow(length.feet(), 0.77) * std::pow(slope.fraction(), -0.385));
}

}  // namespace trenchbook
