#include "menu/stored.h"

namespace trenchbook::addin {

namespace fs = std::filesystem;

std::optional<NewFile> NewFile::asked(const Call& call, const std::vector<fs::path>& reads) {
    const auto given = call.text("To");
    return given ? std::optional<NewFile>(std::in_place, call, pathOf(*given), reads) : std::nullopt;
}

NewFile::NewFile(const Call& call, const fs::path& file, const std::vector<fs::path>& reads) {
    if (file.extension() != ".ods" && file.extension() != ".xlsx")
        throw Refused(file.string() + " must end in .ods or .xlsx");
    desk_ = std::make_shared<HiddenDesk>(call);
    target_ = std::make_shared<sheets::Target>(
        file, call.flag("Replace") ? sheets::Target::Existing::Replaced : sheets::Target::Existing::Refused,
        reads);
}

void NewFile::write(const Document& document) const {
    const fs::path made = desk_->workingFile(file().filename());
    sheets::store(document, made, file().extension() == ".xlsx" ? "Calc MS Excel 2007 XML" : "calc8");
    target_->put(made);
}

void NewFile::put(const Document& document) const {
    write(document);
    sheets::close(document);
}

}  // namespace trenchbook::addin
