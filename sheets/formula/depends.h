// What a block is handed, followed through the formulas of all sheets and through defined names.
//
//     solvedInput(jobWorkbook({}), "runs_numbers");
//     // {} where everything comes from typed cells, else the way to the answer that it depends on:
//     // {"levels_block", "Runs, column Invert up", "invert_block"}
//
// A block that reads what another block answers makes Calc work out one job in turns, and one that reads its own answer
// is a circle, which Calc does not show inside IFERROR: a full recalculation gives a number, the next edit Err:522.
// The grain is the column: a cell depends on all cells of the columns that its column's formula reads.
// Throws std::logic_error when there is no such block.
#pragma once

#include <string>
#include <vector>

#include "kit/model.h"

namespace trenchbook::sheets {

std::vector<std::string> solvedInput(const Workbook& workbook, const std::string& block);

}  // namespace trenchbook::sheets
