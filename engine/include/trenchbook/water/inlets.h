// What a grate, a basin's outlet pipe and a downspout can take.
//
//     const Grate grate = rectangularGrate(Length::inches(12), Length::inches(12), 0.4);
//     grateCapacity(grate, Length::inches(1)).gpm();
//     basinOutletFlow(Length::inches(3.975), Length::inches(8)).gpm();
//     leaderCapacity(Length::inches(3)).gpm();                           // 67
#pragma once

#include <string_view>

#include "trenchbook/core/units.h"

namespace trenchbook {

// A grate in a low spot: the edge that water falls over, and the opening it falls through, less what is
// blocked and what lies along walls.
struct Grate {
    Length edge;
    Area opening;
};
// `openShare` is clear opening over outside area; `blockedShare` (leaves, half by default as published for
// sags) is taken off edge and opening; `alongWalls` is the part of the edge that no water reaches. Errors:
// BadArgument "length", "width", "open share" (its own sentence for a grate without openings), "blocked
// share", "along walls".
Grate rectangularGrate(Length length, Length width, double openShare, double blockedShare = 0.5,
                       Length alongWalls = {});
Grate roundGrate(Length diameter, double openShare, double blockedShare = 0.5, Length alongWalls = {});

// The lesser of a weir, Q = 3.0 P h^1.5 (US; 1.656 in SI), and an orifice, Q = 0.67 A (2 g h)^0.5. Texas DOT,
// Hydraulic Design Manual, chapter 10, grate inlets in sag. Near the change from one to the other published
// measurements scatter by some 20 %. Errors: BadArgument "ponding".
Flow grateCapacity(const Grate& grate, Length ponding);
// The inverse: how deep water stands on the grate. Errors: BadArgument "flow".
Length gratePonding(const Grate& grate, Flow flow);

// A level round pipe leaving a basin, `head` from the pipe's invert to the water in the basin, outlet free.
// Below the crown the water falls through critical depth like over a weir, above it the entrance is an
// orifice: culvert inlet control for a square edge in a headwall (FHWA HDS-5, form 1; Mays, Water Resources
// Engineering, table 16.2.1):
//     F = Q / (A D^0.5), ft and cfs
//     head/D = Hc/D + 0.0098 F^2           F up to 3.5 (Hc: energy head at critical depth)
//     head/D = 0.0398 F^2 + 0.67           F from 4, straight between
// The pipe behind must carry the flow too. Accuracy of the published fit about 10 %. Errors: BadArgument
// "head", "bore", "flow".
Flow basinOutletFlow(Length bore, Length head);
Length basinOutletHead(Length bore, Flow flow);

// Vertical leader with water clinging to its wall, q = 27.8 r^(5/3) D^(8/3) gpm, D in inches, r the share of
// the cross section that is water: the formula behind the plumbing codes' tables (National Standard Plumbing
// Code, table 13.6.1, r = 7/24). Errors: BadArgument "size"; OutsideValidity "fill" above 1/3, where a leader
// starts to choke.
Flow leaderCapacity(Length diameter, double fill = 7.0 / 24);
// Inside diameter of a leader by its size: "3" or "3 in" round (a bare number counts in `bare`), or "2x3" and
// "3x4" inches, which count as the largest circle that fits inside (plumbing codes' note on rectangular
// leaders, from memory; others allow equal area, up to twice the flow: this is the cautious reading). Errors:
// BadArgument "size".
Length leaderDiameter(std::string_view size, Length bare);

}  // namespace trenchbook
