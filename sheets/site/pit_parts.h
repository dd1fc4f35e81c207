// The parts of the Pit sheet that stand in files of their own.
#pragma once

#include <string>
#include <vector>

#include "templates/job.h"

namespace trenchbook::sheets::pit {

// Table "Soak": readings by hole, the last of each hole counts.
Table soakTable(const JobSize& size);
// A storm through the pit: what it is, what it does, its course, the same storm day after day.
std::vector<Part> stormParts();
Table courseTable();
Block sharesBlock();  // the storm by its shape, for Workings
// The mound under the pit.
Form moundForm();

inline Field computed(const char* label, const char* name, Format format, Measure measure,
                      const std::string& formula, const char* note = "") {
    return {.label = label,
            .name = name,
            .kind = Kind::Computed,
            .format = format,
            .measure = measure,
            .value = "=" + formula,
            .note = note};
}
inline Field verdict(const char* label, const char* name, const std::string& formula, const char* note = "",
                     bool wide = false) {
    return {.label = label,
            .name = name,
            .kind = Kind::Verdict,
            .format = show::general,
            .value = "=" + formula,
            .note = note,
            .wide = wide};
}
// The formula's value, blank until the condition holds and where the engine refuses.
inline std::string when(const std::string& condition, const std::string& formula) {
    return "IF(" + condition + ";IFERROR(" + formula + ";\"\");\"\")";
}

constexpr double labelWidth = 42, valueWidth = 46;  // mm, of the two columns that all parts share

const std::string sized = "AND(N(pit_length)>0;N(pit_width)>0;N(pit_depth)>0)";
// Arguments that PIT.STORM and PIT.COURSE take after the storm.
const std::string asBuilt = "pit_area;pit_length;pit_width;pit_depth;pit_rate;pit_voids;pit_sides";

}  // namespace trenchbook::sheets::pit
