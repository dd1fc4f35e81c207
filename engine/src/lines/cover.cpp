#include "trenchbook/lines/cover.h"

#include "trenchbook/core/error.h"

namespace trenchbook {

Length runDrop(Length length, Slope slope, Length fittings) {
    requireNotNegative(length, "length");
    requirePositive(slope, "slope");
    requireNotNegative(fittings, "fittings drop");
    return slope * length + fittings;
}

Slope runSlope(Length length, Length levelUp, Length levelDown) {
    requirePositive(length, "length");
    return Slope::fraction((levelUp - levelDown) / length);
}

Length coverOver(Length ground, Length invert, const Pipe& pipe) {
    return ground - invert - invertToOutsideTop(pipe);
}

Length trenchCut(Length ground, Length invert, const Pipe& pipe, Length bedding) {
    requireNotNegative(bedding, "bedding");
    return ground - invert + wallOf(pipe) + bedding;
}

}  // namespace trenchbook
