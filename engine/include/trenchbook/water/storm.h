// Design storms: rain step by step, for a pit or a routing.
//
//     RainTable table = RainTable::parse("duration,2,10\n5-min,0.4,0.6\n60-min,1.2,1.8", Length::inches(1));
//     Storm storm = alternatingBlocks(table, Duration::hours(1), 10, Duration::minutes(5));
//     Storm day = nrcsStorm(Length::inches(4), StormType::II, Duration::minutes(30));
//
// A step is named by the moment it ends; the first begins at 0. Steps are equal and add up to the storm's depth.
//
// Errors: BadArgument "step" when the steps do not fill the storm evenly or are more than 20000, "shape" for
// an unknown name; OutsideValidity "duration" for an NRCS storm that is not 24 hours; those of the rain
// table.
#pragma once

#include <string_view>
#include <vector>

#include "trenchbook/core/units.h"
#include "trenchbook/water/rain.h"

namespace trenchbook {

struct StormStep {
    Duration end;
    Length depth;
};
using Storm = std::vector<StormStep>;

// Alternating blocks: every duration inside the storm, counted about its middle, has its full depth from the
// table. The increments of depth are ranked, the largest is put in the middle (of an even number the earlier
// of the two), the next after it, the next before it, and so on. FHWA HDS-2, example 6.6; Chow, Maidment and
// Mays, section 14.4.
Storm alternatingBlocks(const RainTable& table, Duration duration, double returnYears, Duration step);

// NRCS (SCS) 24-hour distributions, FHWA HDS-2, table 6.5, which is printed at half hours: within a half hour
// the rain is even, so that steps shorter than 30 minutes do not sharpen the peak. For inlets and short pipes
// take alternating blocks.
enum class StormType { I, IA, II, III };
Storm nrcsStorm(Length dayRain, StormType type, Duration step);
// Share of the day's rain that has fallen by `time` (0 to 24 hours).
double nrcsShare(StormType type, Duration time);

// A storm by the name of its shape: "centered" (alternating blocks), "type I", "type IA", "type II", "type
// III". The NRCS storms take the table's 24-hour depth and need a duration of 24 hours.
Storm designStorm(const RainTable& table, Duration duration, double returnYears, Duration step,
                  std::string_view shape = "centered");

}  // namespace trenchbook
