// Whole packs to order.
//
//     packsToOrder(23, 0.05, 10);   // 3: 24.15 pieces in packs of 10
//
// Rounds up, but not for the noise of arithmetic: 3.0000000001 packs are 3. Net amount and pack have the same
// unit.
#pragma once

namespace trenchbook {

// net * (1 + waste) / pack, rounded up; a billionth part of the packs is noise.
// Errors: BadArgument "net" (below 0), "waste" (outside 0 to 1), "pack" (not above 0); OutsideValidity beyond
// 1e8 packs.
double packsToOrder(double net, double waste = 0, double pack = 1);

}  // namespace trenchbook
