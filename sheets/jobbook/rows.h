// Room for a job that is longer than the ready rows of its workbook.
#pragma once

#include "jobbook/parts.h"

namespace trenchbook::sheets {

// Gives each table of the document at least the rows that the description has: rows are inserted in the middle of a table, with the formulas, styles and rules of the row above, so that
// everything that reads the table reads them too. Notes and computed cells are not touched otherwise.
void makeRoom(const Document& document, const Workbook& description);

}  // namespace trenchbook::sheets
