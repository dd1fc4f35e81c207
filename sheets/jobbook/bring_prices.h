// Prices from a price book into a job, on purpose: a job keeps its dated copies until somebody brings in new
// ones.
#pragma once

#include "jobbook/parts.h"

namespace trenchbook::sheets {

// Old and new of every item whose price or other words differ, and what is missing in either. With `take`,
// the job's rows become the book's, dates included; a price that changed stays beside the new one under Last.
// Left as they are: rows that the book marks NO, rows whose date is older than the job's, rows that the book
// does not have. Rows that the job's takeoff asks for and that only the book has are added. Both documents
// must be computed.
std::string bringPrices(const Document& job, const Document& book, bool take);

}  // namespace trenchbook::sheets
