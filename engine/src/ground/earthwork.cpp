#include "trenchbook/ground/earthwork.h"

#include "trenchbook/core/error.h"

namespace trenchbook {

Volume trenchVolume(Length length, Length width, Length cutUp, Length cutDown) {
    requirePositive(length, "length");
    requirePositive(width, "width");
    requireNotNegative(cutUp, "cut up");
    requireNotNegative(cutDown, "cut down");
    return length * ((width * cutUp + width * cutDown) / 2);
}

Volume looseVolume(Volume bank, double swell) {
    requireNotNegative(bank, "bank");
    requireShare(swell, "swell");
    return bank * (1 + swell);
}

Weight bulkWeight(Volume volume, BulkDensity density, double waste) {
    requireNotNegative(volume, "rock");
    requirePositive(density, "density");
    requireShare(waste, "waste");
    return volume * density * (1 + waste);
}

}  // namespace trenchbook
