// What kinds of work take: man-hours for one of what they are counted in, in loam or common earth with good access.
//
//     #include "trenchbook/takeoff/production.h"
//     double hours = trenchbook::workRate(trenchbook::Work::DigByHand).manHours;  // 1.341 for a cubic yard
//
// A start to work with until jobs of one's own say better. Where print has outputs they are taken over: hand digging and
// filling by hand, from the output norms of the Guild of Project Controls (planningplanet.com, "excavate by hand" and
// "hand fill and compact"): a worker's cubic meters an hour, turned over. All others are the middle of what crews of two or
// three need: common practice, no source.
#pragma once

#include <span>

#include "trenchbook/takeoff/takeoff.h"

namespace trenchbook {

// What hours are counted for, in US units: the job, a piece, a foot, a square foot, a cubic yard.
enum class WorkUnit { Job, Each, Foot, SquareFoot, CubicYard };

struct WorkRate {
    Work work;
    double manHours;
    WorkUnit per;
    bool printed;  // taken over from print; else common practice, no source
};

// One a kind of work, in the order of Work, but for those that are amounts alone.
std::span<const WorkRate> workRates();

// A name for each kind of work and each amount alone that files keep: "dig.machine". It stays when kinds are added or moved.
const char* workKey(Work work);

// Errors: BadArgument "work", for an amount that is no work.
const WorkRate& workRate(Work work);

}  // namespace trenchbook
