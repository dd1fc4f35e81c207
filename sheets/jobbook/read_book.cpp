#include "jobbook/read_book.h"

#include <algorithm>
#include <com/sun/star/beans/XPropertySet.hpp>
#include <com/sun/star/container/XIndexAccess.hpp>
#include <com/sun/star/drawing/XDrawPagesSupplier.hpp>
#include <com/sun/star/drawing/XShape.hpp>
#include <com/sun/star/frame/XModel.hpp>
#include <com/sun/star/sheet/CellFlags.hpp>
#include <com/sun/star/sheet/XCellRangeAddressable.hpp>
#include <com/sun/star/sheet/XCellRangeReferrer.hpp>
#include <com/sun/star/sheet/XCellRangesQuery.hpp>
#include <com/sun/star/sheet/XNamedRanges.hpp>
#include <com/sun/star/sheet/XPrintAreas.hpp>
#include <com/sun/star/sheet/XSheetCellRanges.hpp>

#include "jobbook/remembered.h"

namespace trenchbook::sheets {
namespace {

using css::beans::XPropertySet;
using css::container::XIndexAccess;
using css::sheet::XSpreadsheet;
using css::table::CellRangeAddress;

void readCells(const Reference<XSpreadsheet>& from, BookSheet& sheet, bool formulas) {
    const Area used = usedArea(from);
    sheet.columns = used.at.EndColumn + 1;
    sheet.rows = used.at.EndRow + 1;
    const auto width = static_cast<std::size_t>(sheet.columns);
    sheet.cells.reserve(width * static_cast<std::size_t>(sheet.rows));
    for (std::vector<Value>& row : valuesOf(used))
        for (Value& cell : row) sheet.cells.push_back(std::move(cell));
    sheet.formulas.assign(sheet.cells.size(), false);
    sheet.hidden.assign(width, true);
    const Reference<css::sheet::XCellRangesQuery> query(used.range(), UNO_QUERY_THROW);
    for (const CellRangeAddress& at : query->queryVisibleCells()->getRangeAddresses())
        for (sal_Int32 column = at.StartColumn; column <= at.EndColumn; ++column)
            sheet.hidden[static_cast<std::size_t>(column)] = false;
    if (!formulas) return;
    for (const CellRangeAddress& at :
         query->queryContentCells(css::sheet::CellFlags::FORMULA)->getRangeAddresses())
        for (sal_Int32 row = at.StartRow; row <= at.EndRow; ++row)
            for (sal_Int32 column = at.StartColumn; column <= at.EndColumn; ++column)
                sheet.formulas[static_cast<std::size_t>(row) * width + static_cast<std::size_t>(column)] =
                    true;
}

// The row in which the lowest chart or picture of a sheet ends.
int drawnTo(const Document& document, const Reference<XSpreadsheet>& sheet, sal_Int32 place) {
    const Reference<XIndexAccess> shapes(
        Reference<css::drawing::XDrawPagesSupplier>(document, UNO_QUERY_THROW)
            ->getDrawPages()
            ->getByIndex(place),
        UNO_QUERY_THROW);
    sal_Int32 lowest = -1;
    for (sal_Int32 s = 0; s < shapes->getCount(); ++s) {
        const Reference<css::drawing::XShape> shape(shapes->getByIndex(s), UNO_QUERY_THROW);
        lowest = std::max(lowest, shape->getPosition().Y + shape->getSize().Height);
    }
    if (lowest < 0) return -1;
    const auto top = [&](sal_Int32 row) {
        css::awt::Point at;
        Reference<XPropertySet>(sheet->getCellByPosition(0, row), UNO_QUERY_THROW)
            ->getPropertyValue("Position") >>= at;
        return at.Y;
    };
    // The last row that begins above it: rows have many heights.
    sal_Int32 above = 0, below = 1;
    while (top(below) < lowest) below *= 2;
    while (below - above > 1) {
        const sal_Int32 middle = (above + below) / 2;
        (top(middle) < lowest ? above : below) = middle;
    }
    return above;
}

std::map<std::string, Rect> namedCells(const Document& document) {
    const Reference<XPropertySet> properties(document, UNO_QUERY_THROW);
    const Reference<css::sheet::XNamedRanges> names(properties->getPropertyValue("NamedRanges"),
                                                    UNO_QUERY_THROW);
    std::map<std::string, Rect> found;
    for (const rtl::OUString& name : names->getElementNames()) {
        const Reference<css::sheet::XCellRangeReferrer> referrer(names->getByName(name), UNO_QUERY);
        const Reference<css::sheet::XCellRangeAddressable> cells(
            referrer.is() ? referrer->getReferredCells() : nullptr, UNO_QUERY);
        if (cells.is()) found[narrow(name)] = rectOf(cells->getRangeAddress());
    }
    return found;
}

std::optional<Place> selectedCell(const Document& document) {
    const Reference<css::frame::XModel> model(document, UNO_QUERY_THROW);
    const Reference<css::sheet::XCellRangeAddressable> cells(model->getCurrentSelection(), UNO_QUERY);
    if (!cells.is()) return std::nullopt;
    const CellRangeAddress at = cells->getRangeAddress();
    return Place{at.Sheet, at.StartColumn, at.StartRow};
}

}  // namespace

Book readBook(const Document& document, const Wanted& wanted) {
    Book book;
    const Reference<XIndexAccess> sheets(document->getSheets(), UNO_QUERY_THROW);
    const css::uno::Sequence<rtl::OUString> names = document->getSheets()->getElementNames();
    for (sal_Int32 s = 0; s < sheets->getCount(); ++s) {
        const Reference<XSpreadsheet> from(sheets->getByIndex(s), UNO_QUERY_THROW);
        BookSheet& sheet = book.sheets.emplace_back();
        sheet.name = narrow(names[s]);
        sheet.visible = isVisible(from);
        if (!wanted.sheets.empty() && wanted.sheets.count(sheet.name) == 0) continue;
        readCells(from, sheet, wanted.parts);
        if (!wanted.layout) continue;
        const auto printed = Reference<css::sheet::XPrintAreas>(from, UNO_QUERY_THROW)->getPrintAreas();
        if (printed.getLength() == 1) sheet.printed = rectOf(printed[0]);
        sheet.drawnTo = drawnTo(document, from, s);
    }
    if (wanted.parts)
        for (const FoundPart& part : partsOf(document))
            book.parts.push_back({part.is, part.name, rectOf(part.area.at)});
    if (!wanted.names) return book;
    book.names = namedCells(document);
    book.remembered = remembered(document);
    book.selected = selectedCell(document);
    return book;
}

}  // namespace trenchbook::sheets
