// Levels from rod readings of several set-ups, adjusted: what a circuit misses is spread over its readings.
//
//     const std::vector<LevelRow> book = {
//         {.point = "BM", .known = Length::feet(100), .backsight = Length::feet(5)},
//         {.point = "A", .rod = Length::feet(6)},
//         {.point = "TP", .backsight = Length::feet(4), .rod = Length::feet(5.5)},
//         {.point = "A", .rod = Length::feet(4.48)}};
//     const AdjustedLevels levels = adjustLevels(book);
//     levels.rows[1].level->feet();    // 99.005: read as 99.00, and as 99.02 by way of TP
//
// Rows as they stand in a field book: a backsight begins a set-up; a rod read in its row is of the set-up
// before (a turning point). Least squares over all readings, all alike: a plain circuit is spread evenly over
// its set-ups, as field books do by hand; a point read from several set-ups gets the level that fits them all
// best. Known levels are held. A reading that misses by more than its usual error allows is named as in
// plan_net.h: one in a single circuit can only be said to stand among its readings.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "trenchbook/core/units.h"

namespace trenchbook {

struct LevelRow {
    std::string point = {};
    std::optional<Length> known = {}, backsight = {}, rod = {};
};

struct AdjustedLevelRow {
    std::optional<Length> level = {};  // of the row's point; none where no known level is reached from it
    // What was read less what the adjusted levels ask; none where nothing was read or nothing is known.
    std::optional<Length> backsightOff = {}, rodOff = {};
    std::optional<Length> uncertain = {};  // standard error of the level; 0 of a known one
    bool slip = false;                     // the rod or the backsight of this row is a slip, or may be
};

struct AdjustedLevels {
    std::vector<AdjustedLevelRow> rows = {};
    std::size_t redundant = 0;           // readings beyond what the levels need
    std::optional<double> scatter = {};  // of the misfits over their usual error: about 1
};

// `error`: usual error of one reading, a standard deviation.
// Errors: BadArgument "known" for two known levels of one point that differ, "error" for one not above 0.
AdjustedLevels adjustLevels(std::span<const LevelRow> rows, Length error = Length::feet(0.01));

}  // namespace trenchbook
