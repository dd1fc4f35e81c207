// What still stands in the way of a finished job, as cells: one after the other, in the order of the work.
#pragma once

#include "commands/steps.h"

namespace trenchbook::sheets {

struct Missing {
    Place at;          // the cell to fill, where one can be named; else the cell that says what is wrong
    std::string says;  // as the workbook says it: "NOT JUDGED: Job: soil"
};

// First what keeps the job from being judged and every NO, by the list of findings and the Check of each row and form;
// then every CHECK. No cell stands there twice.
std::vector<Missing> allMissing(const Book& book);

// Selects the one after the cell that is selected now; from the last one back to the first.
Planned nextMissing(const Book& book);

}  // namespace trenchbook::sheets
