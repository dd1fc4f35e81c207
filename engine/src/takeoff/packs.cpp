#include "trenchbook/takeoff/packs.h"

#include <cmath>

#include "trenchbook/core/error.h"

namespace trenchbook {

double packsToOrder(double net, double waste, double pack) {
    constexpr double noise = 1e-9;
    requireNotNegative(net, "net");
    requireShare(waste, "waste");
    requirePositive(pack, "pack");
    const double packs = net * (1 + waste) / pack;
    if (packs > 1e8)
        throw Error(Error::Kind::OutsideValidity, "net", plain(net),
                    {"at most 100,000,000 packs", "como máximo 100,000,000 paquetes"});
    return std::ceil(packs * (1 - noise));
}

}  // namespace trenchbook
