// The passes over the runs of a job, in the order in which solve() takes them. Each fills its part of `solved`, one
// entry a row; a number that cannot be worked out is left out, with the fault that says why beside it.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "trenchbook/job/job.h"
#include "trenchbook/job/solve.h"

#pragma GCC visibility push(hidden)
namespace trenchbook {

// Which row of Nodes stands at the ends of the runs: filled into SolvedRun::upper and lower. Of two rows with one
// name the first counts.
void findNodes(const Job& job, SolvedJob& solved);
// Nodes where water enters that no row of Water names, by their keys: no flow below them is known.
std::vector<std::string> unfedNodes(const Job& job);
// Ground, inverts, slope, cover and cut, asked and measured.
void solveLevels(const Job& job, SolvedJob& solved);
// Ground between the nodes, and the cover and cut under it.
void solveShots(const Job& job, SolvedJob& solved);
// Flow, and what it makes of the pipe: share, depth, velocity.
void solveFlows(const Job& job, SolvedJob& solved);
// Where the water stands, with the losses of what stands at the nodes. Needs what solveOutlets() found.
void solveWater(const Job& job, SolvedJob& solved);
// Stations, and how far a cable has to reach.
void solveDistances(const Job& job, SolvedJob& solved);
// Water and freeboard at the nodes.
void solveNodes(const Job& job, SolvedJob& solved);

}  // namespace trenchbook
#pragma GCC visibility pop
