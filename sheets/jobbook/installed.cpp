#include "jobbook/installed.h"

#include <stdexcept>

namespace trenchbook::sheets {

std::filesystem::path extensionFolder() {
    namespace fs = std::filesystem;
    const fs::path here = fs::read_symlink("/proc/self/exe").parent_path();
    for (const fs::path& folder : {here / "extension", here.parent_path() / "share" / "trenchbook" / "extension"})
        if (fs::exists(folder / "trenchbook" / "description.xml")) return folder;
    throw std::runtime_error("the add-in is not beside " + (here / "jobbook").string() +
                             "; build the target 'extension', or install Trenchbook whole");
}

}  // namespace trenchbook::sheets
