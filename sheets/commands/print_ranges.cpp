#include "commands/print_ranges.h"

#include <algorithm>

namespace trenchbook::sheets {
namespace {

int lastShownRow(const Book& book, const Rect& printed) {
    const int used = book.sheets[static_cast<std::size_t>(printed.sheet)].rows - 1;
    for (int row = used; row > printed.row; --row) {
        std::vector<Value> shown;
        for (int column = printed.column; column <= printed.lastColumn; ++column)
            if (!book.isHidden(printed.sheet, column))
                shown.push_back(book.cell({printed.sheet, column, row}));
        if (!isBlankRow(shown)) return row;
    }
    return printed.row;
}

}  // namespace

Planned printRanges(const Book& book) {
    Planned planned;
    for (const BookSheet& sheet : book.sheets) {
        if (!sheet.printed) continue;
        Rect area = *sheet.printed;
        area.lastRow = std::max(lastShownRow(book, area), sheet.drawnTo);
        if (area != *sheet.printed) planned.steps.list.emplace_back(PrintArea{area});
    }
    const std::size_t changed = planned.steps.list.size();
    planned.says = changed == 0 ? Text("The print ranges follow the filled rows already.",
                                       "Las áreas de impresión ya siguen a las filas llenas.")
                                : counted(changed, {"sheet", "hoja"}, {"sheets", "hojas"}) +
                                      Text(" now print to the last row that shows anything.",
                                           ": se imprime hasta la última fila que muestra algo.");
    return planned;
}

}  // namespace trenchbook::sheets
