// The papers that leave the office, as PDF.
#pragma once

#include <filesystem>
#include <functional>

#include "jobbook/parts.h"
#include "kit/look.h"

namespace trenchbook::sheets {

// One PDF for each sheet that goes to somebody (those that the document has), and whole.pdf, the job's
// folder. `told` hears how many of how many are written. Changes the document for printing: store nothing of it afterwards. Returns the files written.
std::vector<std::filesystem::path> writePapers(const Document& document, const std::filesystem::path& folder,
                                               std::optional<Paper> size = {},
                                               const std::function<void(int, int)>& told = {});

}  // namespace trenchbook::sheets
