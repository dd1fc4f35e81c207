#include "menu/stored.h"

#include <algorithm>

#include "menu/boxes.h"

namespace trenchbook::addin {

namespace fs = std::filesystem;

std::optional<NewFile> NewFile::asked(const Call& call, const std::vector<fs::path>& reads) {
    const auto given = call.text("To");
    return given ? std::optional<NewFile>(std::in_place, call, pathOf(*given), reads) : std::nullopt;
}

NewFile::NewFile(const Call& call, const fs::path& file, const std::vector<fs::path>& reads) {
    if (file.extension() != ".ods" && file.extension() != ".xlsx")
        throw Refused(file.string() + " must end in .ods or .xlsx");
    bool replace = call.flag("Replace");
    if (fs::exists(file) && !replace) {
        const bool own = std::any_of(reads.begin(), reads.end(), [&](const fs::path& read) {
            return fs::exists(read) && fs::equivalent(file, read);
        });
        if (!own && !call.byProgram())
            replace = agreed(call, file.string() + call.in({" is there already. Replace it?",
                                                            " ya existe. ¿Reemplazarlo?"}));
        if (!own && !replace)
            throw Refused(file.string() + call.in({" is there already; Replace puts the new one in its place",
                                                   " ya existe; Replace pone el nuevo en su lugar"}));
    }
    desk_ = std::make_shared<HiddenDesk>(call);
    target_ = std::make_shared<sheets::Target>(
        file, replace ? sheets::Target::Existing::Replaced : sheets::Target::Existing::Refused, reads);
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
