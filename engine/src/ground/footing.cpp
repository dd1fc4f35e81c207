#include "trenchbook/ground/footing.h"

#include <algorithm>

#include "trenchbook/core/error.h"

namespace trenchbook {

Length footingClearance(Length footingBottom, Length trenchBottom, Length distance) {
    requireNotNegative(distance, "distance");
    return trenchBottom - (footingBottom - distance);
}

Length footingDistance(Length footingBottom, Length trenchBottom) {
    return std::max(Length{}, footingBottom - trenchBottom);
}

}  // namespace trenchbook
