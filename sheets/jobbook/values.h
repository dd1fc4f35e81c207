// The tables and forms of a document as computed values, one CSV each.
#pragma once

#include <filesystem>

#include "jobbook/parts.h"

namespace trenchbook::sheets {

// Every part on a visible sheet: headings of the visible columns, then the rows that hold anything; forms as
// field,value. Dates as 2026-05-31, percents as fractions, an error as its code. Throws Refused
// where a file of other columns is in the way. Returns the files written.
std::vector<std::filesystem::path> writeValues(const Document& document, const std::filesystem::path& folder);

}  // namespace trenchbook::sheets
