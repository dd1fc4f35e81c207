// The lot drawn from a job's notes: places of its points and nodes, what its tapes say against each other,
// and the distances that rules ask for.
//
//     Job job;
//     drawLot(job);                // readJob() has done it
//     job.drawn.nodesNear.size();  // as many as rows of Nodes, each with the nearest building, lot line, tree
//
// Where a distance cell is blank (To footing, To tree, To septic, To well, From house; To lot line, To walk,
// To foundation; the pit's setbacks) the drawing fills it, and notes that it did: Node::drawn, Outlet::drawn,
// Pit::drawn. What is typed goes before what is drawn. A footing reaches beyond its wall by the rule
// footing.beyond.wall, and the trench is as wide as its rule says; lengths of runs are taken along the
// trench, with twice the usual error of a tape.
#pragma once

#include "trenchbook/job/job.h"

namespace trenchbook {

void drawLot(Job& job);

}  // namespace trenchbook
