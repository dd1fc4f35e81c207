// Cutting stock: the fewest sticks of one length that give all the pieces, and which piece comes from which
// stick.
//
//     std::vector<Length> pieces = {Length::feet(12), Length::feet(8), Length::feet(7), Length::feet(13)};
//     cutSticks(pieces, Length::feet(20), Length::inches(0)).sticks.size();   // 2
//
// A cut takes the kerf; a piece that ends where the stick ends needs none. A piece longer than the stick is
// whole sticks and one remainder, so a run of 47 ft from 20 ft sticks is two sticks and a piece of 7 ft.
// Lengths are worked to the micrometre and a stick forgives 0.05 mm, so that three pieces of 6 2/3 ft, typed
// with six digits, come out of 20 ft.
//
// The count is proved fewest for any list of up to provedPieces pieces shorter than the stick. Longer lists
// are proved too, nearly all: of 120 pieces as they are taped on a lot, and the hard triplets of the public
// collections of bin packing, in less than a tenth of a second. Where the search ends at its stated effort
// (about half a second), the plan carries the bound: it is at most sticks.size() - fewest sticks above the
// best.
//
// Method: bin completion (R. E. Korf, 2002) with the lower bound L2 and the dominance rule of Martello and
// Toth (Knapsack Problems, 1990, ch. 8); lists that it does not finish soon get the linear programme over
// cutting patterns (Gilmore and Gomory, 1961), whose value bounds the count and whose patterns lead the
// search. All from memory; first-fit decreasing as the start.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "trenchbook/core/units.h"

namespace trenchbook {

inline constexpr std::size_t provedPieces = 30;

struct StickPart {
    std::size_t piece;  // index in the list given
    Length length;      // the piece, or the part of a long piece that this stick gives
};

struct Stick {
    std::vector<StickPart> parts;  // longest first
    Length offcut;                 // what is left after the cuts
};

struct CuttingPlan {
    std::vector<Stick> sticks;  // whole sticks first
    std::size_t fewest = 0;     // proved: no plan has fewer sticks than this
    bool proved() const { return fewest == sticks.size(); }
};

// Errors: BadArgument "pieces" (not above 0, none, more than 5,000 or 100,000 sticks), "stock" (not 1 mm to
// 30 km), "kerf" (below 0, or as long as the stick).
CuttingPlan cutSticks(std::span<const Length> pieces, Length stock, Length kerf = Length::inches(0.125));

}  // namespace trenchbook
