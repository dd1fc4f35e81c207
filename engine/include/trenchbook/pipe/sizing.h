// Picking a pipe that carries a flow, and what a pipe holds and takes up.
//
//     const Pipe stocked[] = {stockPipe("4 SDR35"), stockPipe("6 SDR35")};
//     firstThatCarries(Flow::gpm(120), Slope::percent(1), stocked, {}).name;    // "6 SDR35"
//     insideVolume(stockPipe("4 SDR35"), Length::feet(100)).gallons();          // 64.5
#pragma once

#include <optional>
#include <span>

#include "trenchbook/core/units.h"
#include "trenchbook/pipe/stock.h"

namespace trenchbook {

struct SizingLimits {
    double largestShare = 0.8;  // flow over full-pipe capacity; 0.8 is the usual spare (common practice)
    std::optional<double> roughness;  // Manning n for every candidate; each pipe's own when left out
    Velocity leastVelocity;           // of this flow at normal depth
};

// The first of the candidates, in the caller's order of preference, whose Manning capacity running full
// carries the flow within the share and fast enough. Errors: BadArgument "flow", "slope", "largest share"
// (above 0 to 1); NoSolution "candidates" when none does, saying how far the last one is off.
Pipe firstThatCarries(Flow flow, Slope slope, std::span<const Pipe> candidates, const SizingLimits& limits);

// Water in the bore, and soil or rock that the outside takes the place of. Errors: BadArgument "length" below
// 0; "pipe" for the outside of a bare bore.
Volume insideVolume(const Pipe& pipe, Length length);
Volume outsideVolume(const Pipe& pipe, Length length);

}  // namespace trenchbook
