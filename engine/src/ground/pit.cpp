#include "trenchbook/ground/pit.h"

#include <algorithm>

#include "core/phi.h"
#include "trenchbook/core/error.h"

namespace trenchbook {

void requireVoids(double voids) {
    requireShare(voids, "voids");
    requirePositive(voids, "voids");
}

void require(const RockPit& pit) {
    requirePositive(pit.length, "length");
    if (!pit.round) requirePositive(pit.width, "width");
    requirePositive(pit.rockDepth, "rock depth");
    requireVoids(pit.voids);
    requireShare(pit.sideShare, "side share");
}

Volume storage(const RockPit& pit) {
    require(pit);
    return pit.bottom() * pit.rockDepth * pit.voids;
}

Volume rockToHold(Volume hold, double voids, Volume pipeInside) {
    requirePositive(hold, "hold");
    requireVoids(voids);
    requireNotNegative(pipeInside, "pipe inside");
    return std::max(hold - pipeInside, Volume{}) / voids;
}

Duration drainTime(const RockPit& pit, SoilRate rate) {
    require(pit);
    requirePositive(rate, "rate");
    const double wetWallsOverBottom = pit.sideShare * (pit.perimeter() * pit.rockDepth / pit.bottom());
    return pit.voids * (pit.rockDepth / rate) * logRatio(wetWallsOverBottom);
}

Length rainHeld(Volume storage, Area areaTimesC) {
    requireNotNegative(storage, "storage");
    requirePositive(areaTimesC, "area x C");
    return storage / areaTimesC;
}

}  // namespace trenchbook
