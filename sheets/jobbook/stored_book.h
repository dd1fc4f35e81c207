// A workbook as the plain data that commands work from, read from its file without an office: an office takes longer to
// open it than everything else that a new lot needs.
#pragma once

#include <filesystem>
#include <optional>
#include <set>

#include "commands/book.h"

namespace trenchbook::sheets {

// Cells of the sheets named, as the file has them; parts and names; no layout, nothing remembered. Nothing where the file
// is no .ods, or not one that is read here (encrypted, damaged): an office can say more about it. Throws Refused where a
// formula asks for a function of ours that today's add-in does not have.
std::optional<Book> storedBook(const std::filesystem::path& file, const std::set<std::string>& sheets);

}  // namespace trenchbook::sheets
