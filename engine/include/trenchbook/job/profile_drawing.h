// A line of a job seen from the side, on its paper: ground, pipe as a band between its outsides, water, least
// cover, the cheapest plan, other buried lines as circles, with names, sizes and slopes, level and distance.
//
//     const Job job;
//     const ProfileDrawing seen = profileOf(job, solve(job), {.line = "street"});
//     seen.strokes.empty();    // true: no run of that line has a place
//
// Lengths along the line and heights have a usual scale each, named on the paper; heights are drawn larger, so a
// circle becomes an upright oval, true in both scales but never narrower than can be seen. The level scale starts
// at a round level under all that is drawn. Names of nodes stand in tiers over the ground and never touch; a size
// and slope that finds no free place beside its run is left out and counted. Stations count from the outlet.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "trenchbook/job/job.h"
#include "trenchbook/job/solve.h"
#include "trenchbook/layout/drawing.h"

namespace trenchbook {

// Inverts of a run at both ends.
struct RunEnds {
    std::optional<Length> up = {}, down = {};
};

struct ProfileAsked {
    std::string line = {};  // matched as names are
    Length width = Length::millimetres(252), height = Length::millimetres(118);
    Language language = Language::English;
    std::vector<RunEnds> planned = {}, laid = {};  // a row a run, or nothing
};

struct ProfileDrawing {
    std::vector<PlanStroke> strokes = {};  // on paper, from its lower left; letters have their word as name
    double along = 0, up = 0;              // scales: lengths on the lot over lengths on paper
    PlanPoint origin = {};                 // where on paper the station `first` and the level `low` lie
    Length first = {}, low = {};
    std::size_t leftOut = 0;  // sizes and slopes that found no place

    PlanPoint of(Length station, Length level) const;
};

// Empty where no run of the line has both a station and levels. Errors: BadArgument "width" or "height" for a paper
// over largestPaper or too small for its margins.
ProfileDrawing profileOf(const Job& job, const SolvedJob& solved, const ProfileAsked& asked);

}  // namespace trenchbook
