// Room for a job that is longer than the ready rows of its workbook.
#pragma once

#include "jobbook/parts.h"

namespace trenchbook::sheets {

// Gives each table of the document at least the rows that the description has: rows are inserted in the middle of a
// table, with the formulas, styles and rules of the row above, so that everything that reads the table reads them too.
// Computed tables whose rows each read a place of their own stay as they are; they have rows for as many more as blocks
// are taller than their tables, and the caller asks for no more than that.
void makeRoom(const Document& document, const Workbook& description);

// The same for one table of that name.
void makeRoom(const Document& document, const std::string& name, int rows);

}  // namespace trenchbook::sheets
