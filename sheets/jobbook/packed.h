// One file out of a packed one (zip), as OpenDocument files are.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

namespace trenchbook::sheets {

// Its bytes; nothing where the packed file is no such file, has no such name in it, or keeps it in a way not read here
// (encrypted, over several disks, larger than `limit` once unpacked).
std::optional<std::string> unpacked(const std::filesystem::path& file, const std::string& name,
                                    std::size_t limit = std::size_t{1} << 28);

}  // namespace trenchbook::sheets
