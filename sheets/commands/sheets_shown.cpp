#include "commands/sheets_shown.h"

#include <algorithm>

namespace trenchbook::sheets {
namespace {

struct MayStepAside {
    int place;  // among the tabs
    std::string name;
    bool needed, visible;
};

std::vector<MayStepAside> sheetsOf(const Book& book, const BookPart& form) {
    std::vector<MayStepAside> sheets;
    for (int row = form.at.row; row <= form.at.lastRow; ++row) {
        const std::string name = textOf(book.cell({form.at.sheet, form.at.column, row}));
        const auto found = std::find_if(book.sheets.begin(), book.sheets.end(),
                                        [&](const BookSheet& sheet) { return sheet.name == name; });
        if (found == book.sheets.end()) continue;
        // Anything but words, an error too, is no reason to hide it.
        const std::string words = textOf(book.cell({form.at.sheet, form.at.column + 1, row}));
        const bool without = words.starts_with("not needed") || words.starts_with("no hace falta");
        sheets.push_back({static_cast<int>(found - book.sheets.begin()), name, !without, found->visible});
    }
    return sheets;
}

Text listed(const std::vector<std::string>& names, const Text& one, const Text& several) {
    std::string all;
    for (const std::string& name : names) all += (all.empty() ? "" : ", ") + name;
    return (names.size() == 1 ? one : several) + Text::same(all + ".");
}

Text saying(const std::vector<std::string>& shown, const std::vector<std::string>& gone) {
    Text says;
    if (!gone.empty())
        says += listed(gone, {"Stepped aside, not needed: ", "Se aparta, no hace falta: "},
                       {"Stepped aside, not needed: ", "Se apartan, no hacen falta: "});
    if (!shown.empty()) {
        if (!says.empty()) says += Text::same(" ");
        says += listed(shown, {"Shown: ", "Se muestra: "}, {"Shown: ", "Se muestran: "});
    }
    return says;
}

}  // namespace

Planned showSheets(const Book& book, SheetsShown shown) {
    const BookPart* form = book.form(sheetsForm);
    if (form == nullptr)
        return {{},
                {"This workbook was made before sheets could step aside; nothing was changed.",
                 "Este libro se hizo antes de que las hojas pudieran apartarse; no se cambió nada."}};
    const std::vector<MayStepAside> sheets = sheetsOf(book, *form);
    if (shown == SheetsShown::Turned) {
        const auto right = [](const MayStepAside& sheet) { return sheet.visible == sheet.needed; };
        shown = std::all_of(sheets.begin(), sheets.end(), right) ? SheetsShown::Every : SheetsShown::Needed;
    }
    Planned planned;
    std::vector<std::string> come, gone;
    std::string aside = "|";
    for (const MayStepAside& sheet : sheets) {
        const bool show =
            shown == SheetsShown::Every || sheet.needed || (shown == SheetsShown::BackAgain && sheet.visible);
        if (show != sheet.visible) {
            planned.steps.list.emplace_back(ShowSheet{sheet.place, show});
            (show ? come : gone).push_back(sheet.name);
        }
        if (!show) aside += sheet.name + "|";
    }
    const Place kept{form->at.sheet, form->at.column + 1, book.row(*form, asideLabel)};
    if (textOf(book.cell(kept)) != aside) planned.steps.put(kept, aside);
    planned.says = come.empty() && gone.empty() ? Text("Every sheet is needed and shown.",
                                                       "Todas las hojas hacen falta y se muestran.")
                                                : saying(come, gone);
    return planned;
}

}  // namespace trenchbook::sheets
