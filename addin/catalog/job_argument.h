// The tables of a job as arguments, and the job solved: shared by all functions that show a part of it.
#pragma once

#include <memory>

#include "catalog/arguments.h"
#include "trenchbook/job/job.h"
#include "trenchbook/job/solve.h"

namespace trenchbook::addin {

struct SolvedTables {
    Job job;
    SolvedJob solved;
    std::string question =
        {};  // the tables as they were given: equal for equal jobs, for answers that build on this
};

// facts; nodes; water; runs; crossings; outlets; pit; pit facts; rules; rain; peak; ground; pump.
std::vector<Argument> jobArguments();
// Optionals behind the tail: the sheet's row of the runs' headings.
std::vector<Argument> jobLater();

// The arguments of an example, in brackets: a roof's water in two runs to daylight, past a gas line.
std::string jobExample();

// Calls with the same tables share one solved job while it is among the last few. Errors: of readJob();
// BadArgument "first row".
std::shared_ptr<const SolvedTables> solvedTables(const Arguments& arguments);

}  // namespace trenchbook::addin
