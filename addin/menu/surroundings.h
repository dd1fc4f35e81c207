// What a command finds around it: the installed package, files that people name, a desk to work on.
#pragma once

#include <filesystem>

#include "menu/call.h"
#include "office/desk.h"

namespace trenchbook::addin {

// A file or folder as programs give it, by its path or as a file: address.
std::filesystem::path pathOf(const std::string& given);
// Where the workbook is stored; nothing for one that never was.
std::optional<std::filesystem::path> fileOf(const Document& document);

// A template of the package ("job"). Throws Refused where the package has none.
std::filesystem::path packageTemplate(const Call& call, const std::string& name);
// A new workbook from it, in a window of its own.
Document newFromTemplate(const Call& call, const std::string& name);

// Opens what is only read, hidden, from copies in a folder that goes with it.
class HiddenDesk {
  public:
    explicit HiddenDesk(const Call& call);
    ~HiddenDesk();
    HiddenDesk(const HiddenDesk&) = delete;
    HiddenDesk& operator=(const HiddenDesk&) = delete;

    // A workbook to read. Throws Refused where the file is not there or is no workbook.
    Document open(const std::filesystem::path& file);
    // The workbook as it stands in the window, what is not stored yet included.
    Document copyOf(const Document& document);
    std::filesystem::path workingFile(const std::filesystem::path& name) { return desk_.workingFile(name); }

  private:
    std::filesystem::path folder_;
    sheets::Desk desk_;
};

}  // namespace trenchbook::addin
