// The arguments of GRADE.PLAN and GRADE.REASON: a job for each outlet's tree, and what cannot be used, row by
// row.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "catalog/arguments.h"
#include "catalog/job_argument.h"
#include "trenchbook/grade/grade.h"
#include "trenchbook/lines/network.h"

namespace trenchbook::addin {

std::vector<Argument> gradeArguments();
Argument dropPriceArgument();
// A length or a depth that the plan can count in steps of its grid.
inline constexpr Limits countableFeet = {.greatest = 32800, .above = true, .below = true};

// One outlet's tree, planned.
struct GradeTree {
    std::size_t outletRow = 0;
    std::vector<std::size_t> rows;  // of the sheet, by run of the job
    GradeJob job;
    std::vector<std::size_t> tableRows;  // of the pipe table, from 1, by pipe of the job
    GradeNames names;
    GradePlan plan;
    // Why there is no plan: a row that cannot be used, or what the engine refuses about the job.
    std::size_t culprit = Network::none;
    Text refused;
};

struct Grades {
    Network lines;
    std::vector<Text> troubles;  // by row: a cell that cannot be used, else empty
    std::vector<GradeTree> trees;

    // GRADE.REASON of a tree, and of a row by itself: the fault of one that leads to no outlet, else empty.
    Text reason(const GradeTree& tree, UnitSystem units, std::size_t firstRow) const;
    Text stranded(std::size_t row, std::size_t firstRow) const;
};

// Decodes and plans; a call with the same cells as a recent one gets what was planned then. The drop price is
// the last of the function's later arguments. Safe to call from several threads.
std::shared_ptr<const Grades> gradesOf(const Arguments& arguments);

// The same from a solved job, whose runs, crossings and rules it takes; the arguments at these places give the rest.
struct PlanTables {
    std::size_t pipes, digging, deepestCut, dropPrice;
};
std::shared_ptr<const Grades> gradesOf(const Arguments& arguments,
                                       const std::shared_ptr<const SolvedTables>& tables,
                                       const PlanTables& at);

}  // namespace trenchbook::addin
