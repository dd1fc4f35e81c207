#include "trenchbook/water/stone_apron.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

constexpr std::array classes = {
    StoneClass{1, Length::inches(5), 4, 3.5},  StoneClass{2, Length::inches(6), 4, 3.3},
    StoneClass{3, Length::inches(10), 5, 2.4}, StoneClass{4, Length::inches(14), 6, 2.2},
    StoneClass{5, Length::inches(20), 7, 2.0}, StoneClass{6, Length::inches(22), 8, 2.0}};

// What is sold, by its middle size: Dane County's table of stone, then the larger classes.
constexpr std::array sold = {2.0, 4.0, 6.0, 8.0, 10.0, 12.0, 14.0, 20.0, 22.0};  // in

constexpr Length largestPipe = Length::inches(60);

std::string said(Length size) {
    return plain(size.inches(), 2) + " in (" + plain(size.millimetres(), 0) + " mm)";
}

void requireOutlet(Length bore, Flow flow) {
    requirePositive(bore, "pipe");
    requirePositive(flow, "flow");
    if (bore > largestPipe)
        throw Error(Error::Kind::OutsideValidity, "pipe", said(bore),
                    {"at most " + said(largestPipe) + ": larger pipes need a basin",
                     "como máximo " + said(largestPipe) + ": tubos mayores piden un tanque disipador"});
}

}  // namespace

std::span<const StoneClass> stoneClasses() { return classes; }

const StoneClass& stoneClass(Length stone) {
    const auto found = std::find_if(classes.begin(), classes.end(),
                                    [&](const StoneClass& row) { return row.stone >= stone; });
    if (found == classes.end())
        throw Error(Error::Kind::OutsideValidity, "flow",
                    Text{"flow needs stone of " + said(stone) + ", larger than the largest class, " +
                             said(classes.back().stone) + ": an apron is not enough.",
                         "flow pide piedra de " + said(stone) + ", mayor que la clase más grande, " +
                             said(classes.back().stone) + ": un zampeado no basta."});
    return *found;
}

Length stoneNeeded(Length bore, Flow flow, std::optional<Length> tailwater,
                   std::optional<Length> shootingDepth) {
    requireOutlet(bore, flow);
    if (tailwater) requireNotNegative(*tailwater, "tailwater");
    Length across = bore;
    if (shootingDepth) {
        if (!(*shootingDepth > Length{} && *shootingDepth < bore))
            throw Error(Error::Kind::BadArgument, "shooting depth", said(*shootingDepth),
                        {"above 0 and below the bore of " + said(bore),
                         "mayor que 0 y menor que el diámetro interior de " + said(bore)});
        across = (bore + *shootingDepth) / 2;
    }
    const Length water = std::clamp(tailwater.value_or(Length{}), across * 0.4, across);
    const double intensity = flow.si() / (std::sqrt(gravity) * std::pow(across.si(), 2.5));
    return across * (0.2 * std::pow(intensity, 4.0 / 3) * (across / water));
}

Length apronLength(Length bore, Flow flow) {
    requireOutlet(bore, flow);
    return Length::feet(1.7 * flow.cfs() / std::pow(bore.feet(), 1.5)) + bore * 8;
}

StoneApron stoneApron(Length bore, Flow flow, std::optional<Length> tailwater,
                      std::optional<Length> shootingDepth, std::optional<Length> laid) {
    StoneApron made;
    made.needed = stoneNeeded(bore, flow, tailwater, shootingDepth);
    const StoneClass& least = stoneClass(made.needed);  // refuses what no class holds
    if (laid) {
        requirePositive(*laid, "stone");
        if (*laid < made.needed || *laid > classes.back().stone)
            throw Error(
                Error::Kind::BadArgument, "stone", said(*laid),
                {"from " + said(made.needed) + ", what this flow needs, to " + said(classes.back().stone),
                 "de " + said(made.needed) + ", lo que pide este caudal, a " + said(classes.back().stone)});
        made.laid = *laid;
    } else {
        const auto next = std::find_if(sold.begin(), sold.end(),
                                       [&](double size) { return Length::inches(size) >= made.needed; });
        made.laid = next == sold.end() ? least.stone : Length::inches(*next);
    }
    made.length = apronLength(bore, flow);
    made.widthAtPipe = bore * 3;
    made.widthAtEnd = made.widthAtPipe + made.length * (2.0 / 3);
    made.thickness = made.laid * stoneClass(made.laid).thicknessOverStone;
    made.volume = made.length * ((made.widthAtPipe + made.widthAtEnd) / 2) * made.thickness;
    return made;
}

}  // namespace trenchbook
