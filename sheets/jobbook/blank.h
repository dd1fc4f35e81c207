// Empty site notes: one CSV for each table and form that takes any, headings only.
#pragma once

#include <filesystem>
#include <vector>

#include "kit/model.h"

namespace trenchbook::sheets {

// Forms list their fields' labels, whose values are left blank. Refuses to write over a file that is there.
std::vector<std::filesystem::path> writeBlank(const Workbook& workbook, const std::filesystem::path& folder);

}  // namespace trenchbook::sheets
