#include "jobbook/installed.h"

#include <optional>
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

fs::path templateFile(const std::string& name) {
    if (const auto file = find("templates/" + name + ".ots")) return *file;
    throw std::runtime_error("the template " + name + ".ots is not beside " + (here() / "jobbook").string() +
                             "; build the target 'templates', or install Trenchbook whole");
}

}  // namespace trenchbook::sheets
