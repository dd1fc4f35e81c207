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
    for (const char* name : {"engine_state", "engine_here"})
        if (const auto found = book.names.find(name); found != book.names.end())
            steps.put({found->second.sheet, found->second.column, found->second.row}, says.in(language));
    // Under the title of the first sheet, where it is read first.
    if (const BookPart* job = book.form("Job")) steps.put({job->at.sheet, 0, 1}, says.in(language));
    return steps;
}

}  // namespace trenchbook::sheets
