// One run of pipe between two points: its drop, slope, cover and cut, and what is wrong with it, in words.
//
//     runDrop(Length::feet(42), Slope::inchesPerFoot(0.125)).feet();            // 0.4375
//     coverOver(Length::feet(100), Length::feet(98.5), stockPipe("4 SDR35"));   // 13.905 in
//     const RunFacts facts{.length = Length::feet(60), .slope = Slope::percent(2), .pipe = stockPipe("4 SDR35")};
//     checkRun(facts, Ruleset(), UnitSystem::US).en;                            // "OK"
//
// Levels are heights: bigger is higher. Inverts are the inside bottom of the pipe; cover counts from its outside top.
#pragma once

#include <optional>
#include <vector>

#include "trenchbook/core/text.h"
#include "trenchbook/core/units.h"
#include "trenchbook/lines/cover_surface.h"
#include "trenchbook/pipe/stock.h"
#include "trenchbook/rules/rules.h"

namespace trenchbook {

// slope x length + what the fittings need on top. Errors: length, slope not above 0, fittings below 0.
Length runDrop(Length length, Slope slope, Length fittings = {});
// (level up - level down) / length along the pipe; negative runs uphill. Errors: length not above 0.
Slope runSlope(Length length, Length levelUp, Length levelDown);
// ground - invert - (outside - wall); negative where the pipe stands out. Errors: a bare bore.
Length coverOver(Length ground, Length invert, const Pipe& pipe);
// ground - invert + wall + bedding. Errors: a bare bore, bedding below 0.
Length trenchCut(Length ground, Length invert, const Pipe& pipe, Length bedding = {});

struct RunFacts {
    Length length;
    Slope slope;
    Pipe pipe;
    Flow flow;
    std::optional<Length> coverUp, coverDown;  // none: not known or exempt
    CoverSurface surfaceUp = CoverSurface::Lawn, surfaceDown = CoverSurface::Lawn;
    double roughness = 0.011;
};

// Every reason for no, each on its own, in the order: slope, flow, velocity, cover, wheels, cut, length;
// empty when all is well. Limits are met within 1e-9 of their size, so that a slope of exactly the limit
// passes; "slope .tolerance" gives away more, on purpose. Cuts are taken as cover + outside + the bedding of
// the rules. Velocities: least flowing full, greatest at the flow's own depth (Manning; see manning.h).
// Errors: length not above 0, flow below 0, roughness not above 0.
std::vector<Text> runReasons(const RunFacts& facts, const Ruleset& rules, UnitSystem units);

// The reasons joined by "; ", or OK.
Text checkRun(const RunFacts& facts, const Ruleset& rules, UnitSystem units);

}  // namespace trenchbook
