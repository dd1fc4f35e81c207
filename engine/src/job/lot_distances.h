// The distances of a drawn lot, and where the rules read them.
#pragma once

#include "job/lot_net.h"
#include "trenchbook/job/job.h"

#pragma GCC visibility push(hidden)
namespace trenchbook {

// Shapes, the pit's place, and what is nearest to nodes, runs and pit.
void measureLot(Job& job, const LotNet& lot);
// Half the width of its trench: typed, else by the rule of its size.
Length halfTrench(const Job& job, const Run& run);
// Into the distance cells that are blank.
void fillDistances(Job& job);

}  // namespace trenchbook
#pragma GCC visibility pop
