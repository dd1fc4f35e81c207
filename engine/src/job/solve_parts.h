// The numbers of a job's side tables, filled into `solved` in this order:
//
//     solveInlets(job, solved);       // before the flows of the lines, which are made of it
//     ...                             // levels, flows and water of all runs
//     solveCrossings(job, solved);
//     solvePumps(job, solved);        // before the outlets: its start is the water that a line ends in
//     solveOutlets(job, solved);
//     solvePit(job, solved);
//
// Each makes one entry a row. A number that an input is missing for, or that the engine refuses, is left out; why is
// told by trenchbook/job/judge.h.
#pragma once

#include <optional>
#include <string_view>

#include "trenchbook/ground/pit.h"
#include "trenchbook/job/job.h"
#include "trenchbook/job/solve.h"

#pragma GCC visibility push(hidden)
namespace trenchbook {

// Everything that moves with the rain, of a job whose nodes and levels are known: inlets, flows, outlets, pit,
// water.
void solveRain(const Job& job, SolvedJob& solved);

void solveInlets(const Job& job, SolvedJob& solved);
void solveCrossings(const Job& job, SolvedJob& solved);
void solvePumps(const Job& job, SolvedJob& solved);
void solveOutlets(const Job& job, SolvedJob& solved);
void solvePit(const Job& job, SolvedJob& solved);

// What the downspout, grate or trench drain of an inlet takes, and what its outlet pipe takes. Errors: of inlets.h and
// channel.h, where a size is missing or refused; the argument is the heading of the cell.
Flow entryTakes(const JobInlet& inlet, const Ruleset& rules, UnitSystem units);
Flow outletPipeTakes(const JobInlet& inlet);

// Key of the rule for the clear distance to what is crossed.
const char* clearanceRule(const Crossing& crossing);

// The discharge pipe of a pump with its fittings; none while a part of it is missing. Errors: OutsideValidity "size"
// where no length is known for its fittings.
std::optional<DischargePipe> dischargeOf(const Pump& pump);

// The row of Nodes with this name; null when there is none.
const Node* nodeNamed(const Job& job, std::string_view name);

// The pit as it is built, voids and side share by the rules where they are left blank; none while a size is missing.
std::optional<RockPit> pitAsBuilt(const Job& job);
// What PIT.CHECK reads: the facts given, and those that follow from the pit's own sizes.
PitFacts pitFacts(const Job& job, const SolvedPit& solved);

}  // namespace trenchbook
#pragma GCC visibility pop
