// Whether the functions that a workbook uses are there. A file that another office or another version wrote may name
// functions that are not: its sums then leave out what they gave, believable and wrong.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "jobbook/parts.h"

namespace trenchbook::sheets {

// Throws Refused naming the first such cell and its function. Only functions of ours count: a user's own cell with a
// slip in it spoils nothing but itself.
void requireResolved(const Document& document, const std::filesystem::path& file);

// The same for a formula as a file stores it: the first function of ours in it that is not there today, and the refusal.
std::optional<std::string> unknownInFile(const std::string& formula);
[[noreturn]] void refuseUnknown(const std::filesystem::path& file, const std::string& sheet, int column,
                                int row, const std::string& function);

}  // namespace trenchbook::sheets
