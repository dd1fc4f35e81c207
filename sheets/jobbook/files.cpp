#include "jobbook/files.h"

#include <fstream>
#include <stdexcept>

namespace trenchbook::sheets {

void writeFile(const std::filesystem::path& target, const std::string& bytes) {
    namespace fs = std::filesystem;
    if (target.has_parent_path()) fs::create_directories(target.parent_path());
    fs::path part = target;
    part.replace_filename("." + target.filename().string() + ".part");
    std::ofstream stream(part, std::ios::binary);
    stream << bytes;
    stream.close();
    if (!stream) {
        std::error_code ignored;
        fs::remove(part, ignored);
        throw std::runtime_error("cannot write " + target.string());
    }
    fs::rename(part, target);
}

}  // namespace trenchbook::sheets
