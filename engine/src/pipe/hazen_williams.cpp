#include "trenchbook/pipe/hazen_williams.h"

#include <cmath>

#include "trenchbook/core/error.h"

namespace trenchbook {

Length hazenWilliamsLoss(Length bore, Flow flow, Length length, double c) {
    requirePositive(bore, "pipe");
    requireNotNegative(flow, "flow");
    requireNotNegative(length, "length");
    requireBetween(c, 60, 160, "C");
    const double per100Feet = 0.2083 * std::pow(100 / c * flow.gpm(), 1.85) / std::pow(bore.inches(), 4.87);
    return length * (per100Feet / 100);
}

}  // namespace trenchbook
