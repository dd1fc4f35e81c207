// Hours for one of a kind of work, learned from jobs that were built: few jobs move the start little, many decide.
//
//     #include "trenchbook/money/learned_rate.h"
//     using namespace trenchbook;
//     const WorkDone jobs[] = {{.quantity = 120, .hours = 11}, {.quantity = 80, .hours = 9}};
//     LearnedRate rate = learnRate(jobs, 0.08, 4);    // start: 0.08 hours a foot, worth four jobs
//     rate.manHours;                                  // (20 + 4 x 100 x 0.08) / (200 + 4 x 100) = 0.0867
//
// All hours over all amounts, with the start counted as so many jobs of the mean amount:
//
//     rate = (sum of hours + K mean start) / (sum of amounts + K mean)
//
// the line through the origin by least squares where the hours of a job vary in proportion to its amount, held towards the
// start (fit.h). For one amount a job this is the shrunken mean of Efron and Morris, c y + (1 - c) mean with c = n / (n + K):
// Stein's Paradox in Statistics, Scientific American, May 1977. K has no source: what the start is worth.
//
// Errors of the hours, as shares of what they should have been: of each job by the rate that the others teach, root of the mean
// square; and of the start alone. None for one job, of which there is nothing to leave out but itself.
// Errors: BadArgument "jobs" (none), "quantity", "hours" (above 0), "start", "start jobs".
#pragma once

#include <cstddef>
#include <optional>
#include <span>

namespace trenchbook {

struct WorkDone {
    double quantity = 0;  // in the unit of the rate
    double hours = 0;     // man-hours, as if in loam with good access
};

struct LearnedRate {
    double manHours = 0;
    std::size_t jobs = 0;
    std::optional<double> leftOutError = {};
    double startError = 0;
};

LearnedRate learnRate(std::span<const WorkDone> jobs, double start, double startJobs);

}  // namespace trenchbook
