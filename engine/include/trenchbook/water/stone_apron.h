// Stone under the end of a pipe, so that the water does not dig a hole: size of stone, length, width, depth.
//
//     const StoneApron apron = stoneApron(Length::inches(6), Flow::cfs(0.8));
//     apron.needed.inches();              // 2.22: half of the stone is at least as large
//     apron.laid.inches();                // 4
//     apron.length.feet();                // 7.85
//     apron.volume.cubicYards();          // 1.40
//
// Size: FHWA HEC-14, 3rd edition (2006), Eq. 10.4 (Fletcher and Grace),
//     d50 = 0.2 D (Q / (g^0.5 D^2.5))^(4/3) D/TW        tailwater TW from 0.4 D to D; 0.4 D when unknown
// with (D + depth)/2 for D where the pipe's water shoots. Width at the pipe 3 D, at the end 3 D + 2/3 L,
// thickness 3.5 to 2.0 times the stone by its class: HEC-14, table 10.1 (from memory; the table's own
// length, 4 to 8 D by class, is shorter than the next). Length: Dane County, Wisconsin, stormwater manual,
//     L = 1.7 Q / D^1.5 + 8 D                            ft and cfs
// which for the small pipes of a yard is the more careful of the two. Under the stone lies fabric or gravel.
// Range: pipes up to 60 in; stone up to 22 in.
#pragma once

#include <optional>
#include <span>

#include "trenchbook/core/units.h"

namespace trenchbook {

// HEC-14, table 10.1 (from memory): what goes with a stone of this size.
struct StoneClass {
    int number;
    Length stone;           // d50
    double lengthOverBore;  // the table's own length of the apron
    double thicknessOverStone;
};
std::span<const StoneClass> stoneClasses();
// The smallest class whose stone is at least this. Errors: OutsideValidity "flow" above the largest class.
const StoneClass& stoneClass(Length stone);

// d50 by Eq. 10.4. Errors: BadArgument "pipe", "flow", "tailwater" below 0, "shooting depth" (above 0, below
// the bore); OutsideValidity "pipe" above 60 in.
Length stoneNeeded(Length bore, Flow flow, std::optional<Length> tailwater = std::nullopt,
                   std::optional<Length> shootingDepth = std::nullopt);
// Dane County's length.
Length apronLength(Length bore, Flow flow);

struct StoneApron {
    Length needed;  // d50 by the formula
    Length laid;    // d50 of the stone that is laid
    Length length, widthAtPipe, widthAtEnd, thickness;
    Volume volume;
};
// `laid`: the stone's d50; left out, the next of 2, 4, 6, 8, 10, 12, 14, 20 and 22 in. Errors: as above;
// BadArgument "stone" smaller than needed.
StoneApron stoneApron(Length bore, Flow flow, std::optional<Length> tailwater = std::nullopt,
                      std::optional<Length> shootingDepth = std::nullopt,
                      std::optional<Length> laid = std::nullopt);

}  // namespace trenchbook
