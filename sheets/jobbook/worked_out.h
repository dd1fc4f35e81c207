// What formulas give in a row of an open document, without leaving a trace: neither a cell nor an undo step.
#pragma once

#include "commands/book.h"
#include "jobbook/parts.h"

namespace trenchbook::sheets {

// Worked out one after the other in a free cell of that row, because some names mean the row that reads them. An empty
// formula gives nothing.
std::vector<Value> workedOut(const Document& document, const Place& row,
                             const std::vector<std::string>& formulas);

// The formula of a cell, of a block's cell that of the block, with = in front; what was typed without.
std::string formulaOf(const Document& document, const Place& at);

}  // namespace trenchbook::sheets
