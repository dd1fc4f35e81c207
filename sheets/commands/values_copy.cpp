#include "commands/values_copy.h"

#include <algorithm>

#include "jobbook/value_text.h"

namespace trenchbook::sheets {
namespace {

PutCells allOf(const BookSheet& sheet, int place) {
    PutCells step{{place, 0, 0}, {}};
    for (auto cell = sheet.cells.begin(); cell != sheet.cells.end(); cell += sheet.columns)
        step.rows.emplace_back(cell, cell + sheet.columns);
    return step;
}

}  // namespace

Steps valuesCopy(const Book& book, double day, Language language) {
    Steps steps;
    for (std::size_t s = 0; s < book.sheets.size(); ++s) {
        const BookSheet& sheet = book.sheets[s];
        const auto place = static_cast<int>(s);
        if (std::find(sheet.formulas.begin(), sheet.formulas.end(), true) == sheet.formulas.end()) continue;
        steps.list.emplace_back(Unprotect{place});
        steps.list.emplace_back(ClearFormulas{{place, 0, 0, sheet.columns - 1, sheet.rows - 1}});
        steps.list.emplace_back(allOf(sheet, place));
    }
    const Text says = {"CHECK: a copy of values of " + dateText(day) + "; nothing is worked out in it",
                       "CHECK: copia de valores del " + dateText(day) + "; en ella no se calcula nada"};
    for (const char* name : {"engine_state", "engine_here"}) {
        const auto found = book.names.find(name);
        if (found == book.names.end()) continue;
        const Rect& field = found->second;
        const std::string was = book.text(name);
        steps.put({field.sheet, field.column, field.row}, says.in(language));
        // It may be said on top of the sheet, too.
        const BookSheet& sheet = book.sheets[static_cast<std::size_t>(field.sheet)];
        for (int row = 0; row < field.row; ++row)
            for (int column = 0; column < sheet.columns; ++column)
                if (const Place at{field.sheet, column, row};
                    book.isFormula(at) && !was.empty() && textOf(book.cell(at)) == was)
                    steps.put(at, says.in(language));
    }
    // Under the title of the first sheet, where it is read first.
    if (const BookPart* job = book.form("Job")) steps.put({job->at.sheet, 0, 1}, says.in(language));
    return steps;
}

}  // namespace trenchbook::sheets
