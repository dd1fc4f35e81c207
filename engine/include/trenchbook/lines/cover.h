// One run of pipe between two points: its drop, slope, cover and cut.
//
//     runDrop(Length::feet(42), Slope::inchesPerFoot(0.125)).feet();            // 0.4375
//     coverOver(Length::feet(100), Length::feet(98.5), stockPipe("4 SDR35"));   // 13.905 in
//
// Levels are heights: bigger is higher. Inverts are the inside bottom of the pipe; cover counts from its
// outside top.
#pragma once

#include "trenchbook/core/units.h"
#include "trenchbook/pipe/stock.h"

namespace trenchbook {

// slope x length + what the fittings need on top; two fittings in one place have a length of 0. Errors:
// length or fittings below 0, slope not above 0.
Length runDrop(Length length, Slope slope, Length fittings = {});
// (level up - level down) / length along the pipe; negative runs uphill. Errors: length not above 0.
Slope runSlope(Length length, Length levelUp, Length levelDown);
// ground - invert - (outside - wall); negative where the pipe stands out. Errors: a bare bore.
Length coverOver(Length ground, Length invert, const Pipe& pipe);
// ground - invert + wall + bedding. Errors: a bare bore, bedding below 0.
Length trenchCut(Length ground, Length invert, const Pipe& pipe, Length bedding = {});

}  // namespace trenchbook
