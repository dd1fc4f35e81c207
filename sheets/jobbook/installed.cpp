#include "jobbook/installed.h"

#include <stdexcept>

namespace trenchbook::sheets {
namespace {

namespace fs = std::filesystem;

fs::path here() { return fs::read_symlink("/proc/self/exe").parent_path(); }
std::optional<fs::path> find(const fs::path& what) {
    for (const fs::path& folder : {here(), here().parent_path() / "share" / "trenchbook"})
        if (fs::exists(folder / what)) return folder / what;
    return std::nullopt;
}

}  // namespace

fs::path extensionFolder() {
    if (const auto description = find("extension/trenchbook/description.xml"))
        return description->parent_path().parent_path();
    throw std::runtime_error("the add-in is not beside " + (here() / "jobbook").string() +
                             "; build the target 'extension', or install Trenchbook whole");
}

std::optional<fs::path> templateFile(const std::string& name) { return find("templates/" + name + ".ots"); }

}  // namespace trenchbook::sheets
