#include "jobbook/pages.h"

#include <algorithm>
#include <com/sun/star/awt/Point.hpp>
#include <com/sun/star/awt/Size.hpp>
#include <com/sun/star/beans/XPropertySet.hpp>
#include <com/sun/star/container/XIndexAccess.hpp>
#include <com/sun/star/drawing/XDrawPagesSupplier.hpp>
#include <com/sun/star/drawing/XShape.hpp>
#include <com/sun/star/sheet/XCellRangeAddressable.hpp>
#include <com/sun/star/sheet/XPrintAreas.hpp>
#include <com/sun/star/sheet/XSheetCellCursor.hpp>
#include <com/sun/star/sheet/XUsedAreaCursor.hpp>
#include <com/sun/star/style/XStyleFamiliesSupplier.hpp>
#include <com/sun/star/table/XColumnRowRange.hpp>
#include <com/sun/star/text/XTextRange.hpp>
#include <com/sun/star/util/XProtectable.hpp>

namespace trenchbook::sheets {
namespace {

using css::beans::XPropertySet;
using css::container::XIndexAccess;
using css::container::XNameAccess;
using css::sheet::XSpreadsheet;
using css::uno::Any;

sal_Int32 lastUsedRow(const Reference<XSpreadsheet>& sheet) {
    const Reference<css::sheet::XSheetCellCursor> cursor = sheet->createCursor();
    Reference<css::sheet::XUsedAreaCursor>(cursor, UNO_QUERY_THROW)->gotoEndOfUsedArea(false);
    return Reference<css::sheet::XCellRangeAddressable>(cursor, UNO_QUERY_THROW)->getRangeAddress().EndRow;
}

sal_Int32 lastShownRow(const Area& printed) {
    const std::vector<sal_Int32> columns = visibleColumns(printed);
    const auto rows = valuesOf(printed, printed.at.StartColumn, printed.at.StartRow, printed.at.EndColumn,
                               lastUsedRow(printed.sheet));
    const auto shown = std::find_if(rows.rbegin(), rows.rend(), [&](const std::vector<Value>& cells) {
        std::vector<Value> visible;
        for (const sal_Int32 column : columns)
            visible.push_back(cells[static_cast<std::size_t>(column - printed.at.StartColumn)]);
        return !isBlankRow(visible);
    });
    return printed.at.StartRow + static_cast<sal_Int32>(rows.rend() - shown) - 1;
}

// The row in which the lowest chart or picture ends.
sal_Int32 lastDrawnRow(const Document& document, const Area& printed, sal_Int32 from) {
    const Reference<css::sheet::XSpreadsheet>& sheet = printed.sheet;
    const Reference<XIndexAccess> shapes(
        Reference<css::drawing::XDrawPagesSupplier>(document, UNO_QUERY_THROW)
            ->getDrawPages()
            ->getByIndex(printed.at.Sheet),
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
    sal_Int32 row = from;
    while (top(row + 1) < lowest) ++row;
    return row;
}

}  // namespace

void trimPrintAreas(const Document& document) {
    const Reference<XIndexAccess> sheets(document->getSheets(), UNO_QUERY_THROW);
    for (sal_Int32 s = 0; s < sheets->getCount(); ++s) {
        const Reference<XSpreadsheet> sheet(sheets->getByIndex(s), UNO_QUERY_THROW);
        const Reference<css::sheet::XPrintAreas> areas(sheet, UNO_QUERY_THROW);
        css::uno::Sequence<css::table::CellRangeAddress> printed = areas->getPrintAreas();
        if (printed.getLength() != 1) continue;
        css::table::CellRangeAddress& area = printed.getArray()[0];
        const sal_Int32 shown = lastShownRow({sheet, area});
        area.EndRow = std::max({area.StartRow, shown, lastDrawnRow(document, {sheet, area}, shown)});
        areas->setPrintAreas(printed);
    }
}

void hideBlankRows(const Document& document) {
    for (const FoundPart& part : partsOf(document)) {
        if (part.isForm) continue;
        const css::table::CellRangeAddress& at = part.area.at;
        sal_Int32 row = part.firstReady();
        sal_Int32 blankFrom = -1;
        const auto hide = [&](sal_Int32 end) {
            if (blankFrom < 0) return;
            const Reference<css::table::XColumnRowRange> rows(
                part.area.range(at.StartColumn, blankFrom, at.StartColumn, end), UNO_QUERY_THROW);
            Reference<XPropertySet>(rows->getRows(), UNO_QUERY_THROW)
                ->setPropertyValue("IsVisible", Any(false));
            blankFrom = -1;
        };
        const TableView view = viewOf(part);
        for (const auto& cells : view.rows) {
            const bool blank = isBlankRow(cells);
            if (blank && blankFrom < 0) blankFrom = row;
            if (!blank) hide(row - 1);
            ++row;
        }
        hide(part.lastReady());
    }
}

void fitProse(const Document& document, ProseHeight height) {
    struct Paragraph {
        Reference<XPropertySet> row;
        std::string text;
        sal_Int32 width = 0;
    };
    std::vector<Paragraph> paragraphs;
    std::vector<sal_Int32> widths;
    const Reference<XIndexAccess> sheets(document->getSheets(), UNO_QUERY_THROW);
    for (sal_Int32 s = 0; s < sheets->getCount(); ++s) {
        const Reference<XSpreadsheet> sheet(sheets->getByIndex(s), UNO_QUERY_THROW);
        const sal_Int32 last = lastUsedRow(sheet);
        for (sal_Int32 row = 0; row <= last; ++row) {
            const auto cell = sheet->getCellRangeByPosition(0, row, 0, row);
            rtl::OUString style;
            Reference<XPropertySet>(cell, UNO_QUERY_THROW)->getPropertyValue("CellStyle") >>= style;
            if (style != wide(style::prose)) continue;
            const Reference<css::sheet::XSheetCellCursor> merged =
                sheet->createCursorByRange(Reference<css::sheet::XSheetCellRange>(cell, UNO_QUERY_THROW));
            merged->collapseToMergedArea();
            const Reference<css::table::XColumnRowRange> lines(merged, UNO_QUERY_THROW);
            const Reference<XIndexAccess> columns(lines->getColumns(), UNO_QUERY_THROW);
            Paragraph paragraph{
                {lines->getRows()->getByIndex(0), UNO_QUERY_THROW},
                narrow(Reference<css::text::XTextRange>(sheet->getCellByPosition(0, row), UNO_QUERY_THROW)
                           ->getString())};
            for (sal_Int32 c = 0; c < columns->getCount(); ++c) {
                const Reference<XPropertySet> column(columns->getByIndex(c), UNO_QUERY_THROW);
                sal_Int32 width = 0;
                column->getPropertyValue("Width") >>= width;
                if (isVisible(column)) paragraph.width += width;
            }
            if (std::find(widths.begin(), widths.end(), paragraph.width) == widths.end())
                widths.push_back(paragraph.width);
            paragraphs.push_back(std::move(paragraph));
        }
    }
    if (paragraphs.empty()) return;

    // The office measures them: each in a single cell as wide as its merged ones, on a sheet that is taken out again.
    const rtl::OUString scratchName = "Heights of paragraphs";
    document->getSheets()->insertNewByName(scratchName, static_cast<sal_Int16>(sheets->getCount()));
    const Reference<XSpreadsheet> scratch(document->getSheets()->getByName(scratchName), UNO_QUERY_THROW);
    const Reference<css::table::XColumnRowRange> all(scratch, UNO_QUERY_THROW);
    constexpr double printedNarrower = 0.97;  // letters on paper are spaced a little wider than in the window
    for (std::size_t w = 0; w < widths.size(); ++w)
        Reference<XPropertySet>(all->getColumns()->getByIndex(static_cast<sal_Int32>(w)), UNO_QUERY_THROW)
            ->setPropertyValue("Width", Any(static_cast<sal_Int32>(widths[w] * printedNarrower)));
    for (std::size_t p = 0; p < paragraphs.size(); ++p) {
        const Paragraph& paragraph = paragraphs[p];
        const auto row = static_cast<sal_Int32>(p);
        const auto column =
            static_cast<sal_Int32>(std::find(widths.begin(), widths.end(), paragraph.width) - widths.begin());
        const Reference<css::table::XCell> cell = scratch->getCellByPosition(column, row);
        Reference<XPropertySet>(cell, UNO_QUERY_THROW)
            ->setPropertyValue("CellStyle", Any(wide(style::prose)));
        Reference<css::text::XTextRange>(cell, UNO_QUERY_THROW)->setString(wide(paragraph.text));
        const Reference<XPropertySet> measured(all->getRows()->getByIndex(row), UNO_QUERY_THROW);
        measured->setPropertyValue("OptimalHeight", Any(true));
        sal_Int32 needed = 0, now = 0;
        measured->getPropertyValue("Height") >>= needed;
        paragraph.row->getPropertyValue("Height") >>= now;
        if (height == ProseHeight::Exact && paragraph.text.empty())
            paragraph.row->setPropertyValue("IsVisible", Any(false));
        else if (height == ProseHeight::Exact || needed > now)
            paragraph.row->setPropertyValue("Height", Any(needed));
    }
    document->getSheets()->removeByName(scratchName);
}

void wrapVerdicts(const Document& document) {
    // No style can change while a sheet is protected.
    for (const rtl::OUString& name : document->getSheets()->getElementNames())
        Reference<css::util::XProtectable>(document->getSheets()->getByName(name), UNO_QUERY_THROW)
            ->unprotect({});
    const Reference<XNameAccess> styles(
        Reference<css::style::XStyleFamiliesSupplier>(document, UNO_QUERY_THROW)
            ->getStyleFamilies()
            ->getByName("CellStyles"),
        UNO_QUERY_THROW);
    for (const char* name :
         {styleName(Kind::Verdict), style::verdictOk, style::verdictLook, style::verdictNo})
        if (styles->hasByName(wide(name)))
            Reference<XPropertySet>(styles->getByName(wide(name)), UNO_QUERY_THROW)
                ->setPropertyValue("IsTextWrapped", Any(true));
}

void fitRows(const Document& document) {
    for (const FoundPart& part : partsOf(document)) {
        if (part.isForm) continue;
        const css::table::CellRangeAddress& at = part.area.at;
        const Reference<css::table::XColumnRowRange> rows(
            part.area.range(at.StartColumn, part.firstReady(), at.StartColumn, part.lastReady()),
            UNO_QUERY_THROW);
        Reference<XPropertySet>(rows->getRows(), UNO_QUERY_THROW)
            ->setPropertyValue("OptimalHeight", Any(true));
    }
}

void setPaper(const Document& document, Paper paper) {
    const Reference<XNameAccess> pages(
        Reference<css::style::XStyleFamiliesSupplier>(document, UNO_QUERY_THROW)
            ->getStyleFamilies()
            ->getByName("PageStyles"),
        UNO_QUERY_THROW);
    for (const rtl::OUString& name : pages->getElementNames()) {
        const Reference<XPropertySet> page(pages->getByName(name), UNO_QUERY_THROW);
        bool landscape = false;
        page->getPropertyValue("IsLandscape") >>= landscape;
        const PaperSize size = paperSize(paper, landscape);
        page->setPropertyValue("Width", Any(size.width));
        page->setPropertyValue("Height", Any(size.height));
    }
}

}  // namespace trenchbook::sheets
