#include "trenchbook/ground/soil.h"

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

std::string inches(Length length) {
    return plain(length.inches(), 2) + " in (" + plain(length.millimetres(), 0) + " mm)";
}

// A reading that cannot be is answered by what it means on the lot.
void requireDrop(const SoakTest& test) {
    using Kind = Error::Kind;
    if (test.drop.si() == 0)
        throw Error(
            Kind::BadArgument, "drop",
            {"drop is 0: the hole took no water in this reading; wait longer, or take the soil as tight.",
             "el descenso es 0: el hoyo no absorbió agua en esta lectura; "
             "espere más o considere el suelo impermeable."});
    if (test.drop.si() < 0)
        throw Error(Kind::BadArgument, "drop",
                    {"the water rose by " + inches(-test.drop) +
                         " in this reading; a drop is positive. Water is running in: read again.",
                     "el agua subió " + inches(-test.drop) +
                         " en esta lectura; un descenso es positivo. Está entrando agua: lea de nuevo."});
    requirePositive(test.drop, "drop");
    if (test.drop > test.startDepth)
        throw Error(Kind::BadArgument, "drop",
                    {"drop is " + inches(test.drop) + ", more than the " + inches(test.startDepth) +
                         " of water that stood over the mark.",
                     "el descenso es " + inches(test.drop) + ", más que los " + inches(test.startDepth) +
                         " de agua que había sobre la marca."});
}

}  // namespace

SoilRate soakRate(const SoakTest& test) {
    requirePositive(test.time, "minutes");
    requirePositive(test.holeDiameter, "hole diameter");
    requirePositive(test.startDepth, "start depth");
    requireNotNegative(test.gravel, "gravel");
    requireDrop(test);
    const Length radius = test.holeDiameter / 2;
    const Length meanDepth = test.startDepth + test.gravel - test.drop / 2;
    const double wettedOverBottom = 1 + 2 * (meanDepth / radius);
    return SoilRate::fromSi(test.drop.si() / test.time.si() / wettedOverBottom);
}

SoilRate designRate(const SoakTest& test, double safety) {
    requireBetween(safety, 1, 20, "safety");
    return soakRate(test) / safety;
}

}  // namespace trenchbook
