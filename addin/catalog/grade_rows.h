// The arguments of GRADE.PLAN and GRADE.REASON: a job for each outlet's tree, and what cannot be used, row by
// row.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "catalog/arguments.h"
#include "trenchbook/grade.h"

namespace trenchbook::addin {

std::vector<Argument> gradeArguments();

// One outlet's tree, planned.
struct GradeTree {
    std::size_t outletRow = 0;
    std::vector<std::size_t> rows;  // of the sheet, by run of the job
    GradeJob job;
    std::vector<std::size_t> tableRows;  // of the pipe table, from 1, by pipe of the job
    GradeNames names;
    GradePlan plan;
    Text trouble;  // why it could not be planned; then there is no plan
};

struct Grades {
    std::size_t rows = 0;
    std::vector<bool> blank;     // by row
    std::vector<Text> stranded;  // by row: the fault of a row that leads to no outlet, else empty
    std::vector<GradeTree> trees;
};

// Decodes and plans; a call with the same cells as a recent one gets what was planned then. Safe to call from
// several threads.
std::shared_ptr<const Grades> gradesOf(const Arguments& arguments);

}  // namespace trenchbook::addin
