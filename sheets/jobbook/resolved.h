// Whether the functions that a workbook uses are there. A file that another office or another version wrote may name
// functions that are not: its sums then leave out what they gave, believable and wrong.
#pragma once

#include <filesystem>

#include "jobbook/parts.h"

namespace trenchbook::sheets {

// Throws Refused naming the first such cell and its function. Only functions of ours count: a user's own cell with a
// slip in it spoils nothing but itself.
void requireResolved(const Document& document, const std::filesystem::path& file);

}  // namespace trenchbook::sheets
