// What is found about each table of a solved job, one function a table.
//
//     Job job; std::vector<Finding> findings;
//     judgeNodes(job, solve(job), findings);
//
// solve() calls them all; each adds to `findings` in the order of the rows, all that it finds and not the first.
#pragma once

#include <vector>

#include "trenchbook/job/job.h"
#include "trenchbook/job/solve.h"

namespace trenchbook {

void judgeRuns(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings);
// Cover and cut under the shots between the nodes.
void judgeShots(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings);
void judgeNodes(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings);
// Does the ground fall away from the house? Told at nodes.
void judgeGround(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings);
// Footings, trees, septic and wells beside the trench. Told at nodes.
void judgeNear(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings);
void judgeDrawing(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings);
void judgeInlets(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings);
void judgeCrossings(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings);
void judgePumps(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings);
// After judgePumps(): the end of a line in a pump basin is as good as its pump.
void judgeOutlets(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings);
void judgePit(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings);
// The questions that are still open, the rain, the locate ticket.
void judgeJob(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings);
// Is the design rain longer than the water is on its way? Told of the whole job.
void judgeDuration(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings);
// What the crew and the owner are warned of, whatever else is well. Told of the whole job.
void judgeCautions(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings);

}  // namespace trenchbook
