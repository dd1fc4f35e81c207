// Tables and forms of an open document, found by the defined names that the writer makes. Inserted, deleted
// and moved rows are where the document has them now.
#pragma once

#include <com/sun/star/sheet/XSpreadsheet.hpp>
#include <com/sun/star/table/CellRangeAddress.hpp>
#include <optional>

#include "commands/book.h"
#include "jobbook/notes.h"
#include "office/office.h"

namespace trenchbook::sheets {

using Document = Reference<css::sheet::XSpreadsheetDocument>;

void calculate(const Document& document);

// A rectangle of one sheet.
struct Area {
    Reference<css::sheet::XSpreadsheet> sheet;
    css::table::CellRangeAddress at;

    Reference<css::table::XCellRange> range(sal_Int32 column, sal_Int32 row, sal_Int32 lastColumn,
                                            sal_Int32 lastRow) const {
        return sheet->getCellRangeByPosition(column, row, lastColumn, lastRow);
    }
    Reference<css::table::XCellRange> range() const {
        return range(at.StartColumn, at.StartRow, at.EndColumn, at.EndRow);
    }
};

Rect rectOf(const css::table::CellRangeAddress& at);

// From the sheet's first cell to the last one that holds anything or has a format of its own.
Area usedArea(const Reference<css::sheet::XSpreadsheet>& sheet);

struct FoundPart {
    std::string name;  // as the workbook's description has it: "Runs", "Close-out"
    using Is = BookPart::Is;
    Is is = Is::Table;
    Area
        area;  // tables: headings, units, thin row, ready rows, closing row; forms: labels and values; lists:
               // headings, units, rows

    bool isForm() const { return is == Is::Form; }
    // Tables: the rows between the thin and the closing row; lists: all of them.
    sal_Int32 firstReady() const { return area.at.StartRow + (is == Is::Table ? 3 : 2); }
    sal_Int32 lastReady() const { return area.at.EndRow - (is == Is::Table ? 1 : 0); }
};

// In the order of the sheets, from top to bottom.
std::vector<FoundPart> partsOf(const Document& document);
// The same without those on Workings, which only formulas read.
std::vector<FoundPart> shownPartsOf(const Document& document);
const FoundPart* findPart(const std::vector<FoundPart>& parts, const std::string& name, bool isForm);
std::vector<std::string> headingsOf(const FoundPart& table);

// The cells of a defined name; nothing when the document has no such name or it is no range.
std::optional<Area> namedArea(const Document& document, const std::string& name);

// Everything an area holds, computed. An error is the text of its code: "Err:502", "#N/A".
std::vector<std::vector<Value>> valuesOf(const Area& area);
std::vector<std::vector<Value>> valuesOf(const Area& area, sal_Int32 column, sal_Int32 row,
                                         sal_Int32 lastColumn, sal_Int32 lastRow);
// The same without hidden columns, which only other columns read.
std::vector<sal_Int32> visibleColumns(const Area& area);
struct TableView {
    std::vector<sal_Int32> columns;  // of the sheet
    std::vector<std::string> headings;
    std::vector<std::vector<Value>> rows;  // all between thin and closing row, blank ones too
};
TableView viewOf(const FoundPart& table);
// Rows that hold anything, their cells by heading.
std::vector<Row> rowsOf(const FoundPart& table);
// What was typed into cells of the area's sheet: a formula's cell counts as blank.
std::vector<std::vector<Value>> typedValues(const Area& area, sal_Int32 column, sal_Int32 row,
                                            sal_Int32 lastColumn, sal_Int32 lastRow);
bool isVisible(const Reference<css::uno::XInterface>& sheetOrColumn);

// A field's value by its defined name, as text; empty when there is no such name.
std::string namedText(const Document& document, const std::string& name);

}  // namespace trenchbook::sheets
