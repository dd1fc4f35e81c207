// One run judged by itself: what RUN.CHECK is given, and every reason why it will not do.
//
//     RunFacts facts{.length = Length::feet(42), .slope = Slope::percent(1), .pipe = stockPipe("4 SDR35"),
//                    .flow = Flow::gpm(60)};
//     checkRun(facts, Ruleset(), UnitSystem::US).en;   // "too flat: 1%, at least 1.04% (1/8 in/ft) for 4 in pipe"
//
// A view of the judgement of Runs (judgeRuns in judge.h), as far as these facts reach.
#pragma once

#include <optional>
#include <vector>

#include "trenchbook/core/text.h"
#include "trenchbook/core/units.h"
#include "trenchbook/lines/cover_surface.h"
#include "trenchbook/pipe/stock.h"
#include "trenchbook/rules/finding.h"
#include "trenchbook/rules/rules.h"

namespace trenchbook {

struct RunFacts {
    Length length;
    Slope slope;
    Pipe pipe;
    Flow flow;
    std::optional<Length> coverUp, coverDown;  // none: not known or exempt
    CoverSurface surfaceUp = CoverSurface::Lawn, surfaceDown = CoverSurface::Lawn;
    double roughness = 0.011;
};

// Every finding, in the order: slope, flow, velocity, cover, wheels, cut, length; none when all is well. Limits are met
// within 1e-9 of their size, so that a slope of exactly the limit passes; "slope.tolerance" gives away more, on
// purpose. Cuts are taken as cover + outside + the bedding of the rules. Velocities: least flowing full, greatest at
// the flow's own depth (Manning; see manning.h). Errors: length not above 0, flow below 0, roughness not above 0.
std::vector<Finding> judgeRun(const RunFacts& facts, const Ruleset& rules, UnitSystem units);

// What they say, each on its own.
std::vector<Text> runReasons(const RunFacts& facts, const Ruleset& rules, UnitSystem units);

// The reasons joined by "; ", or OK.
Text checkRun(const RunFacts& facts, const Ruleset& rules, UnitSystem units);

}  // namespace trenchbook
