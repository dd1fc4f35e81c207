// Which two places leave the least fall between them, or too little.
#pragma once

#include "grade/model.h"
#include "grade/reach.h"

#pragma GCC visibility push(hidden)
namespace trenchbook::grade {

GradeReason shrinkReason(const Model& model);
// For a model with runs that come too low.
GradeReason conflictReason(const Model& model, const Reaches& reaches);
// For a plan: with the sizes that it chose, what is to spare and where.
GradeReason spareReason(const Model& model, const std::vector<GradedRun>& plan);

// Single changes that make the job fit, each tried out.
std::vector<GradeCure> curesOf(const GradeJob& job, const GradeReason& reason);

}  // namespace trenchbook::grade
#pragma GCC visibility pop
