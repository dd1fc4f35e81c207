// Room for a job that is longer than its workbook, blocks included.
#pragma once

#include "jobbook/parts.h"

namespace trenchbook::sheets {

// Gives each table at least the rows, and each block the height, that the description has. A block is an array formula
// over a fixed range: it is set anew, and on a paper the parts below it move down. Styles, notes and what is written
// beside a block stay.
void growJob(const Document& document, const Workbook& description);

}  // namespace trenchbook::sheets
