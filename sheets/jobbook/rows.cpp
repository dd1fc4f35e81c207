#include "jobbook/rows.h"

#include <algorithm>
#include <com/sun/star/sheet/XCellRangeMovement.hpp>
#include <com/sun/star/table/CellAddress.hpp>
#include <com/sun/star/table/XColumnRowRange.hpp>

namespace trenchbook::sheets {
namespace {

// Computed rows that each read a place of their own: a copy of one would count its place twice.
bool rowsAreSet(const Table& table) {
    return !takesNotes(table) &&
           std::any_of(table.content.begin(), table.content.end(), [](const std::vector<std::string>& cells) {
               return std::any_of(cells.begin(), cells.end(),
                                  [](const std::string& cell) { return cell.rfind('=', 0) == 0; });
           });
}

}  // namespace

void insertRows(const Area& area, sal_Int32 before, sal_Int32 count) {
    const sal_Int32 pattern = before - 1;
    Reference<css::table::XColumnRowRange>(area.sheet, UNO_QUERY_THROW)
        ->getRows()
        ->insertByIndex(before, count);
    const Reference<css::sheet::XCellRangeMovement> sheet(area.sheet, UNO_QUERY_THROW);
    css::table::CellRangeAddress source = area.at;
    source.StartRow = pattern;
    for (sal_Int32 done = 0; done < count;) {
        const sal_Int32 next = std::min(done + 1, count - done);  // what is there already is copied too
        source.EndRow = pattern + next - 1;
        sheet->copyRange(css::table::CellAddress(source.Sheet, source.StartColumn, before + done), source);
        done += next;
    }
}

void makeRoom(const Document& document, const std::string& name, int rows) {
    const std::vector<FoundPart> parts = partsOf(document);  // places move as rows come in
    const FoundPart* table = findPart(parts, name, false);
    if (table == nullptr) return;
    const sal_Int32 ready = table->lastReady() - table->firstReady() + 1;
    if (rows <= ready) return;
    // Before the last ready row, so that every range over the table takes the new ones in.
    const Unprotected open(table->area.sheet);
    insertRows(table->area, table->lastReady(), rows - ready);
}

void makeRoom(const Document& document, const Workbook& description) {
    std::map<std::string, int> rows;
    for (const Sheet& sheet : description.sheets)
        for (const Part& part : sheet.parts)
            if (const Table* table = std::get_if<Table>(&part); table != nullptr && !rowsAreSet(*table))
                rows[table->name] = table->rows;
    for (const auto& [name, needed] : rows) makeRoom(document, name, needed);
}

}  // namespace trenchbook::sheets
