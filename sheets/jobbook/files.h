// Files that are there whole or not at all.
#pragma once

#include <filesystem>
#include <string>

namespace trenchbook::sheets {

// Written beside the target under a temporary name, then renamed. Makes the folder when it is missing.
void writeFile(const std::filesystem::path& target, const std::string& bytes);

}  // namespace trenchbook::sheets
