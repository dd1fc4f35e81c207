// A workbook that a command writes: whole or not at all, and never over what is read or open elsewhere.
#pragma once

#include "jobbook/target.h"
#include "menu/surroundings.h"

namespace trenchbook::addin {

class NewFile {
  public:
    // Where the argument To names a file; nothing where it is left out: then the new workbook stays open in its window
    // and its person saves it. Replace = true takes the place of a file that is there.
    static std::optional<NewFile> asked(const Call& call, const std::vector<std::filesystem::path>& reads);
    NewFile(const Call& call, const std::filesystem::path& file,
            const std::vector<std::filesystem::path>& reads);

    // Stored there as .ods, or as .xlsx by its name, and closed.
    void put(const Document& document) const;
    // The same without closing.
    void write(const Document& document) const;
    const std::filesystem::path& file() const { return target_->file(); }

  private:
    std::shared_ptr<HiddenDesk> desk_;
    std::shared_ptr<sheets::Target> target_;
};

}  // namespace trenchbook::addin
