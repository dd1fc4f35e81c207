// The arguments of the functions that plan a whole job, and the job planned: shared by all that show a part of it.
#pragma once

#include "catalog/grade_rows.h"

namespace trenchbook::addin {

// The tables of the job, the pipe table, dig cost, deepest cut, drop price.
std::vector<Argument> planArguments();
inline constexpr std::size_t planArgumentsEnd = 17;
// The arguments of an example, in brackets, with the pipe to choose last.
std::string planExample();

struct Planned {
    std::shared_ptr<const SolvedTables> tables;
    std::shared_ptr<const Grades> grades;
};
Planned planned(const Arguments& arguments);

}  // namespace trenchbook::addin
