#include "jobbook/blank.h"

#include "jobbook/csv.h"
#include "jobbook/files.h"
#include "jobbook/notes.h"

namespace trenchbook::sheets {
namespace {

using Lines = std::vector<std::vector<std::string>>;

Lines headings(const Table& table) {
    Lines lines(1);
    for (std::size_t c = 0; c < table.columns.size(); ++c)
        if (isInput(table.columns[c].kind) || (c == 0 && hasFixedRows(table)))
            lines[0].push_back(table.columns[c].heading);
    return lines;
}

Lines headings(const Form& form) {
    Lines lines = {{"field", "value"}};
    for (const Field& field : form.fields)
        if (isInput(field.kind)) lines.push_back({field.label, ""});
    return lines;
}

}  // namespace

std::vector<std::filesystem::path> writeBlank(const Workbook& workbook, const std::filesystem::path& folder) {
    std::vector<std::pair<std::filesystem::path, Lines>> files;
    const auto add = [&](const auto& part) {
        if (takesNotes(part)) files.emplace_back(folder / notesFile(part.name), headings(part));
    };
    for (const Sheet& sheet : workbook.sheets) {
        for (const Part& part : sheet.parts) {
            if (const Form* form = std::get_if<Form>(&part)) add(*form);
            if (const Table* table = std::get_if<Table>(&part)) add(*table);
        }
    }
    for (const auto& [path, lines] : files)
        if (std::filesystem::exists(path))
            throw Refused(path.string() + " is there already: site notes are never written over");
    std::vector<std::filesystem::path> written;
    for (const auto& [path, lines] : files) {
        writeFile(path, csv::write(lines));
        written.push_back(path);
    }
    return written;
}

}  // namespace trenchbook::sheets
