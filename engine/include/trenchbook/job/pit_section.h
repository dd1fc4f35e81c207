// The pit of a solved job cut open, with the storm that is asked going through it: what pitDrawing() draws.
//
//     const Job job;
//     pitSectionOf(job, solve(job), {}).has_value();    // false: no pit, or one whose sizes or ground are not known
//
// The storm is that of the sheet Pit: even rain, an NRCS storm of 24 hours, or alternating blocks of the job's own rain
// table, in 48 steps; then two days in steps of two hours. Where it cannot be made, or nothing drains to the pit yet,
// the pit is drawn without water.
#pragma once

#include <optional>
#include <string>

#include "trenchbook/ground/pit_drawing.h"
#include "trenchbook/job/job.h"
#include "trenchbook/job/solve.h"
#include "trenchbook/water/rain.h"

namespace trenchbook {

struct PitStormAsked {
    std::optional<Length> rain = {};  // of the whole storm; none: from the table
    Duration lasts = Duration::hours(24);
    std::string shape = "type II";  // type I, IA, II, III; nested; even
    std::optional<RainTable> table = {};
};

std::optional<PitSection> pitSectionOf(const Job& job, const SolvedJob& solved, const PitStormAsked& storm);

}  // namespace trenchbook
