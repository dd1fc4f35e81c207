#include "jobbook/parts.h"

#include <algorithm>
#include <com/sun/star/beans/XPropertySet.hpp>
#include <com/sun/star/container/XIndexAccess.hpp>
#include <com/sun/star/container/XNamed.hpp>
#include <com/sun/star/sheet/XCalculatable.hpp>
#include <com/sun/star/sheet/XCellRangeAddressable.hpp>
#include <com/sun/star/sheet/XCellRangeData.hpp>
#include <com/sun/star/sheet/XCellRangeFormula.hpp>
#include <com/sun/star/sheet/XCellRangeReferrer.hpp>
#include <com/sun/star/sheet/XCellRangesQuery.hpp>
#include <com/sun/star/sheet/XNamedRanges.hpp>
#include <com/sun/star/sheet/XSheetCellCursor.hpp>
#include <com/sun/star/sheet/XSheetCellRange.hpp>
#include <com/sun/star/sheet/XSheetCellRanges.hpp>
#include <com/sun/star/sheet/XUsedAreaCursor.hpp>
#include <com/sun/star/table/XColumnRowRange.hpp>
#include <com/sun/star/text/XTextRange.hpp>

#include "kit/writer.h"

namespace trenchbook::sheets {
namespace {

using css::table::XCellRange;
using css::uno::Any;
using css::uno::Sequence;

Reference<css::sheet::XNamedRanges> namesOf(const Document& document) {
    const Reference<css::beans::XPropertySet> properties(document, UNO_QUERY_THROW);
    return Reference<css::sheet::XNamedRanges>(properties->getPropertyValue("NamedRanges"), UNO_QUERY_THROW);
}

}  // namespace

Rect rectOf(const css::table::CellRangeAddress& at) {
    return {at.Sheet, at.StartColumn, at.StartRow, at.EndColumn, at.EndRow};
}

void calculate(const Document& document) {
    Reference<css::sheet::XCalculatable>(document, UNO_QUERY_THROW)->calculateAll();
}

std::optional<Area> namedArea(const Document& document, const std::string& name) {
    const auto names = namesOf(document);
    if (!names->hasByName(wide(name))) return std::nullopt;
    const Reference<css::sheet::XCellRangeReferrer> referrer(names->getByName(wide(name)), UNO_QUERY);
    if (!referrer.is()) return std::nullopt;
    const Reference<XCellRange> cells = referrer->getReferredCells();
    if (!cells.is()) return std::nullopt;
    return Area{Reference<css::sheet::XSheetCellRange>(cells, UNO_QUERY_THROW)->getSpreadsheet(),
                Reference<css::sheet::XCellRangeAddressable>(cells, UNO_QUERY_THROW)->getRangeAddress()};
}

Area usedArea(const Reference<css::sheet::XSpreadsheet>& sheet) {
    const Reference<css::sheet::XSheetCellCursor> cursor = sheet->createCursor();
    Reference<css::sheet::XUsedAreaCursor>(cursor, UNO_QUERY_THROW)->gotoEndOfUsedArea(false);
    css::table::CellRangeAddress at =
        Reference<css::sheet::XCellRangeAddressable>(cursor, UNO_QUERY_THROW)->getRangeAddress();
    at.StartColumn = at.StartRow = 0;
    return {sheet, at};
}

std::vector<FoundPart> partsOf(const Document& document) {
    const Reference<css::container::XIndexAccess> sheets(document->getSheets(), UNO_QUERY_THROW);
    std::vector<std::string> sheetNames;
    for (const rtl::OUString& name : document->getSheets()->getElementNames())
        sheetNames.push_back(narrow(name));
    std::map<std::string, Rect> ranges;
    for (const rtl::OUString& defined : namesOf(document)->getElementNames()) {
        const std::string name = narrow(defined);
        if (!isPartName(name)) continue;
        if (const std::optional<Area> area = namedArea(document, name)) ranges[name] = rectOf(area->at);
    }
    std::vector<FoundPart> found;
    for (const BookPart& part : partsAmong(ranges, sheetNames)) {
        const Reference<css::sheet::XSpreadsheet> sheet(sheets->getByIndex(part.at.sheet), UNO_QUERY_THROW);
        found.push_back({part.name,
                         part.is,
                         {sheet,
                          {static_cast<sal_Int16>(part.at.sheet), part.at.column, part.at.row,
                           part.at.lastColumn, part.at.lastRow}}});
    }
    return found;
}

std::vector<FoundPart> shownPartsOf(const Document& document) {
    std::vector<FoundPart> parts = partsOf(document);
    parts.erase(
        std::remove_if(
            parts.begin(), parts.end(),
            [](const FoundPart& part) {
                return Reference<css::container::XNamed>(part.area.sheet, UNO_QUERY_THROW)->getName() ==
                       sheetOfWorkings;
            }),
        parts.end());
    return parts;
}

const FoundPart* findPart(const std::vector<FoundPart>& parts, const std::string& name, bool isForm) {
    for (const FoundPart& part : parts)
        if (part.name == name && part.isForm() == isForm) return &part;
    return nullptr;
}

std::vector<std::string> headingsOf(const FoundPart& table) {
    const css::table::CellRangeAddress& at = table.area.at;
    const auto rows = valuesOf(table.area, at.StartColumn, at.StartRow, at.EndColumn, at.StartRow);
    std::vector<std::string> headings;
    for (const Value& heading : rows.at(0)) headings.push_back(textOf(heading));
    return headings;
}

std::vector<std::vector<Value>> valuesOf(const Area& area, sal_Int32 column, sal_Int32 row,
                                         sal_Int32 lastColumn, sal_Int32 lastRow) {
    if (lastRow < row || lastColumn < column) return {};
    const Sequence<Sequence<Any>> data =
        Reference<css::sheet::XCellRangeData>(area.range(column, row, lastColumn, lastRow), UNO_QUERY_THROW)
            ->getDataArray();
    std::vector<std::vector<Value>> values;
    for (sal_Int32 r = 0; r < data.getLength(); ++r) {
        std::vector<Value>& line = values.emplace_back();
        for (sal_Int32 c = 0; c < data[r].getLength(); ++c) {
            const Any& cell = data[r][c];
            rtl::OUString text;
            double number = 0;
            if (cell >>= text) {
                line.push_back(text.isEmpty() ? Value() : Value(narrow(text)));
            } else if (cell >>= number) {
                line.emplace_back(number);
            } else {
                // An error arrives as nothing; what the cell shows is its code.
                const Reference<css::text::XTextRange> shown(
                    area.sheet->getCellByPosition(column + c, row + r), UNO_QUERY_THROW);
                line.emplace_back(narrow(shown->getString()));
            }
        }
    }
    return values;
}

std::vector<std::vector<Value>> valuesOf(const Area& area) {
    return valuesOf(area, area.at.StartColumn, area.at.StartRow, area.at.EndColumn, area.at.EndRow);
}

bool isVisible(const Reference<css::uno::XInterface>& sheetOrColumn) {
    bool visible = true;
    Reference<css::beans::XPropertySet>(sheetOrColumn, UNO_QUERY_THROW)->getPropertyValue("IsVisible") >>=
        visible;
    return visible;
}

std::vector<sal_Int32> visibleColumns(const Area& area) {
    std::vector<sal_Int32> visible;
    // One question for all: a chain of calls for each column takes far longer.
    const Reference<css::sheet::XCellRangesQuery> cells(area.range(), UNO_QUERY_THROW);
    for (const css::table::CellRangeAddress& range : cells->queryVisibleCells()->getRangeAddresses())
        for (sal_Int32 column = range.StartColumn; column <= range.EndColumn; ++column)
            visible.push_back(column);
    std::sort(visible.begin(), visible.end());
    visible.erase(std::unique(visible.begin(), visible.end()), visible.end());
    return visible;
}

TableView viewOf(const FoundPart& table) {
    const css::table::CellRangeAddress& at = table.area.at;
    TableView view;
    const std::vector<std::string> headings = headingsOf(table);
    const auto place = [&](sal_Int32 column) { return static_cast<std::size_t>(column - at.StartColumn); };
    // Between a narrow table and its hidden columns lie columns of the sheet that are none of the table's.
    for (const sal_Int32 column : visibleColumns(table.area)) {
        if (headings[place(column)].empty()) continue;
        view.columns.push_back(column);
        view.headings.push_back(headings[place(column)]);
    }
    for (const auto& cells :
         valuesOf(table.area, at.StartColumn, table.firstReady(), at.EndColumn, table.lastReady())) {
        auto& row = view.rows.emplace_back();
        for (const sal_Int32 column : view.columns) row.push_back(cells[place(column)]);
    }
    return view;
}

std::vector<Row> rowsOf(const FoundPart& table) {
    const TableView view = viewOf(table);
    std::vector<Row> rows;
    for (std::size_t r = 0; r < view.rows.size(); ++r) {
        if (isBlankRow(view.rows[r])) continue;
        Row& row = rows.emplace_back();
        row.ready = static_cast<sal_Int32>(r);
        for (std::size_t c = 0; c < view.headings.size(); ++c) row.cells[view.headings[c]] = view.rows[r][c];
    }
    return rows;
}

std::vector<std::vector<Value>> typedValues(const Area& area, sal_Int32 column, sal_Int32 row,
                                            sal_Int32 lastColumn, sal_Int32 lastRow) {
    if (lastRow < row || lastColumn < column) return {};
    const auto formulas = Reference<css::sheet::XCellRangeFormula>(
                              area.range(column, row, lastColumn, lastRow), UNO_QUERY_THROW)
                              ->getFormulaArray();
    auto values = valuesOf(area, column, row, lastColumn, lastRow);
    for (std::size_t r = 0; r < values.size(); ++r)
        for (std::size_t c = 0; c < values[r].size(); ++c)
            if (formulas[static_cast<sal_Int32>(r)][static_cast<sal_Int32>(c)].startsWith("="))
                values[r][c] = Value();
    return values;
}

std::string namedText(const Document& document, const std::string& name) {
    const std::optional<Area> area = namedArea(document, name);
    return area ? textOf(valuesOf(*area).at(0).at(0)) : "";
}

}  // namespace trenchbook::sheets
