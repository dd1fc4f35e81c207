#include "jobbook/pages.h"

#include <algorithm>
#include <com/sun/star/beans/XPropertySet.hpp>
#include <com/sun/star/container/XIndexAccess.hpp>
#include <com/sun/star/sheet/XCellRangeData.hpp>
#include <com/sun/star/sheet/XPrintAreas.hpp>
#include <com/sun/star/sheet/XSheetCellCursor.hpp>
#include <com/sun/star/sheet/XSheetCellRanges.hpp>
#include <com/sun/star/sheet/XSheetPageBreak.hpp>
#include <com/sun/star/sheet/XUniqueCellFormatRangesSupplier.hpp>
#include <com/sun/star/style/XStyleFamiliesSupplier.hpp>
#include <com/sun/star/table/XColumnRowRange.hpp>
#include <com/sun/star/text/XTextRange.hpp>
#include <com/sun/star/util/XProtectable.hpp>
#include <map>
#include <set>
#include <tuple>

#include "commands/print_ranges.h"
#include "jobbook/carry_out.h"
#include "jobbook/held.h"
#include "jobbook/read_book.h"

namespace trenchbook::sheets {
namespace {

using css::beans::XPropertySet;
using css::container::XIndexAccess;
using css::container::XNameAccess;
using css::sheet::XSpreadsheet;
using css::uno::Any;

// Letters on paper are spaced a little wider than in the window: text that just fits there takes another line here.
constexpr double printedNarrower = 0.95;

bool isPrinted(const Reference<css::uno::XInterface>& sheet) {
    return isVisible(sheet) &&
           Reference<css::sheet::XPrintAreas>(sheet, UNO_QUERY_THROW)->getPrintAreas().hasElements();
}

struct Paragraph {
    Reference<XPropertySet> row;
    std::string text;
    sal_Int32 width = 0;  // of the cells merged for it
    const char* style = style::prose;
};

// Rows of a sheet's first column that have the style of prose, in stretches: one question a stretch and not a cell.
struct Stretch {
    css::table::CellRangeAddress at;
    const char* style;
};
std::vector<Stretch> proseRows(const Reference<XSpreadsheet>& sheet) {
    std::vector<Stretch> rows;
    const Reference<css::sheet::XUniqueCellFormatRangesSupplier> column(
        sheet->getCellRangeByPosition(0, 0, 0, usedArea(sheet).at.EndRow), UNO_QUERY_THROW);
    const Reference<XIndexAccess> formats(column->getUniqueCellFormatRanges(), UNO_QUERY_THROW);
    for (sal_Int32 f = 0; f < formats->getCount(); ++f) {
        const Reference<css::sheet::XSheetCellRanges> ranges(formats->getByIndex(f), UNO_QUERY_THROW);
        rtl::OUString name;
        Reference<XPropertySet>(ranges, UNO_QUERY_THROW)->getPropertyValue("CellStyle") >>= name;
        for (const char* text : {style::prose, style::large, style::notice, style::outdoorsText})
            if (name == wide(text))
                for (const css::table::CellRangeAddress& range : ranges->getRangeAddresses())
                    rows.push_back({range, text});
    }
    return rows;
}

sal_Int32 mergedWidth(const Reference<XSpreadsheet>& sheet, sal_Int32 row, sal_Int32 column = 0) {
    const Reference<css::sheet::XSheetCellCursor> merged =
        sheet->createCursorByRange(Reference<css::sheet::XSheetCellRange>(
            sheet->getCellRangeByPosition(column, row, column, row), UNO_QUERY_THROW));
    merged->collapseToMergedArea();
    const Reference<XIndexAccess> columns(
        Reference<css::table::XColumnRowRange>(merged, UNO_QUERY_THROW)->getColumns(), UNO_QUERY_THROW);
    sal_Int32 all = 0;
    for (sal_Int32 c = 0; c < columns->getCount(); ++c) {
        const Reference<XPropertySet> one(columns->getByIndex(c), UNO_QUERY_THROW);
        sal_Int32 width = 0;
        one->getPropertyValue("Width") >>= width;
        if (isVisible(one)) all += width;
    }
    return all;
}

// Rows without text need no more than they have, and are asked for only where they are to be hidden.
void addParagraphs(const Reference<XSpreadsheet>& sheet, ProseHeight height,
                   std::vector<Paragraph>& paragraphs) {
    const Reference<XIndexAccess> rows(
        Reference<css::table::XColumnRowRange>(sheet, UNO_QUERY_THROW)->getRows(), UNO_QUERY_THROW);
    for (const auto& [stretch, style] : proseRows(sheet)) {
        sal_Int32 row = stretch.StartRow;
        for (const auto& cells : valuesOf({sheet, stretch}, 0, stretch.StartRow, 0, stretch.EndRow)) {
            const std::string text = textOf(cells[0]);
            if (!text.empty() || height == ProseHeight::Exact)
                paragraphs.push_back({{rows->getByIndex(row), UNO_QUERY_THROW},
                                      text,
                                      text.empty() ? 0 : mergedWidth(sheet, row),
                                      style});
            ++row;
        }
    }
}

// The office measures them: each in a single cell as wide as its merged ones, on a sheet that is taken out again.
std::vector<sal_Int32> heightsOf(const Document& document, const std::vector<Paragraph>& paragraphs) {
    std::vector<sal_Int32> widths;
    for (const Paragraph& paragraph : paragraphs)
        if (std::find(widths.begin(), widths.end(), paragraph.width) == widths.end())
            widths.push_back(paragraph.width);
    const auto columns = static_cast<sal_Int32>(widths.size());
    const auto lines = static_cast<sal_Int32>(paragraphs.size());
    css::uno::Sequence<css::uno::Sequence<Any>> cells(lines);
    for (sal_Int32 p = 0; p < lines; ++p) {
        const Paragraph& paragraph = paragraphs[static_cast<std::size_t>(p)];
        css::uno::Sequence<Any> line(columns);
        for (sal_Int32 c = 0; c < columns; ++c)
            line.getArray()[c] =
                Any(wide(widths[static_cast<std::size_t>(c)] == paragraph.width ? paragraph.text : ""));
        cells.getArray()[p] = line;
    }

    const rtl::OUString name = "Heights of paragraphs";
    const auto sheets = document->getSheets();
    sheets->insertNewByName(name, static_cast<sal_Int16>(sheets->getElementNames().getLength()));
    const Reference<XSpreadsheet> scratch(sheets->getByName(name), UNO_QUERY_THROW);
    const Reference<css::table::XColumnRowRange> all(scratch, UNO_QUERY_THROW);
    for (sal_Int32 c = 0; c < columns; ++c)
        Reference<XPropertySet>(all->getColumns()->getByIndex(c), UNO_QUERY_THROW)
            ->setPropertyValue(
                "Width", Any(static_cast<sal_Int32>(widths[static_cast<std::size_t>(c)] * printedNarrower)));
    const auto range = scratch->getCellRangeByPosition(0, 0, columns - 1, lines - 1);
    Reference<XPropertySet>(range, UNO_QUERY_THROW)->setPropertyValue("CellStyle", Any(wide(style::prose)));
    Reference<css::sheet::XCellRangeData>(range, UNO_QUERY_THROW)->setDataArray(cells);
    for (sal_Int32 p = 0; p < lines; ++p)
        if (const char* own = paragraphs[static_cast<std::size_t>(p)].style; own != style::prose)
            Reference<XPropertySet>(scratch->getCellRangeByPosition(0, p, columns - 1, p), UNO_QUERY_THROW)
                ->setPropertyValue("CellStyle", Any(wide(own)));
    const auto rows = Reference<css::table::XColumnRowRange>(range, UNO_QUERY_THROW)->getRows();
    Reference<XPropertySet>(rows, UNO_QUERY_THROW)->setPropertyValue("OptimalHeight", Any(true));
    std::vector<sal_Int32> heights;
    for (sal_Int32 p = 0; p < lines; ++p)
        Reference<XPropertySet>(rows->getByIndex(p), UNO_QUERY_THROW)->getPropertyValue("Height") >>=
            heights.emplace_back();
    sheets->removeByName(name);
    return heights;
}

sal_Int32 heightOf(const Reference<css::uno::XInterface>& row) {
    sal_Int32 height = 0;
    Reference<XPropertySet>(row, UNO_QUERY_THROW)->getPropertyValue("Height") >>= height;
    return height;
}

// The rows of a list keep the height that the workbook gave them where their text needs less: somebody writes into them.
void fit(const FoundPart& part, sal_Int32 first, sal_Int32 last) {
    const sal_Int32 column = part.area.at.StartColumn;
    const auto rowsOf = [&](sal_Int32 from, sal_Int32 to) {
        return Reference<css::table::XColumnRowRange>(part.area.range(column, from, column, to),
                                                      UNO_QUERY_THROW)
            ->getRows();
    };
    const bool list = part.is == FoundPart::Is::List && first >= part.firstReady();
    const sal_Int32 least =
        list ? heightOf(
                   rowsOf(part.lastReady(), part.lastReady())->getByIndex(0).get<Reference<XPropertySet>>())
             : 0;
    const auto rows = rowsOf(first, last);
    Reference<XPropertySet>(rows, UNO_QUERY_THROW)->setPropertyValue("OptimalHeight", Any(true));
    for (sal_Int32 row = 0; list && row <= last - first; ++row) {
        const Reference<XPropertySet> one(rows->getByIndex(row), UNO_QUERY_THROW);
        if (heightOf(one) < least) one->setPropertyValue("Height", Any(least));
    }
}

// A sheet's columns as narrow as its letters are on paper, until its rows are fitted; the fitted rows stay.
class Narrowed {
  public:
    Narrowed(const Document& document, const Reference<XSpreadsheet>& sheet, sal_Int32 last)
        : document_(document),
          columns_(Reference<css::table::XColumnRowRange>(sheet->getCellRangeByPosition(0, 0, last, 0),
                                                          UNO_QUERY_THROW)
                       ->getColumns(),
                   UNO_QUERY_THROW) {
        const HeightsKept kept(document_);
        for (sal_Int32 c = 0; c <= last; ++c) {
            column(c)->getPropertyValue("Width") >>= widths_.emplace_back();
            column(c)->setPropertyValue("Width",
                                        Any(static_cast<sal_Int32>(widths_.back() * printedNarrower)));
        }
    }
    ~Narrowed() {
        const HeightsKept kept(document_);
        for (std::size_t c = 0; c < widths_.size(); ++c)
            column(static_cast<sal_Int32>(c))->setPropertyValue("Width", Any(widths_[c]));
    }
    Narrowed(const Narrowed&) = delete;
    Narrowed& operator=(const Narrowed&) = delete;

  private:
    Reference<XPropertySet> column(sal_Int32 number) const {
        return {columns_->getByIndex(number), UNO_QUERY_THROW};
    }

    Document document_;
    Reference<XIndexAccess> columns_;
    std::vector<sal_Int32> widths_;
};

// Tables and lists that somebody may hold in his hand.
std::vector<FoundPart> printedRows(const Document& document, OneSheet one) {
    std::map<sal_Int32, bool> printed;
    std::vector<FoundPart> parts = partsOf(document);
    const auto isLeftOut = [&](const FoundPart& part) {
        const sal_Int32 sheet = part.area.at.Sheet;
        if (part.isForm() || sheet != one.value_or(sheet)) return true;
        const auto [known, isNew] = printed.try_emplace(sheet);
        if (isNew) known->second = isPrinted(part.area.sheet);
        return !known->second;
    };
    parts.erase(std::remove_if(parts.begin(), parts.end(), isLeftOut), parts.end());
    return parts;
}

}  // namespace

void trimPrintAreas(const Document& document) {
    std::set<std::string> printed;
    for (const rtl::OUString& name : document->getSheets()->getElementNames())
        if (Reference<css::sheet::XPrintAreas>(document->getSheets()->getByName(name), UNO_QUERY_THROW)
                ->getPrintAreas()
                .getLength() == 1)
            printed.insert(narrow(name));
    if (!printed.empty()) carryOut(document, printRanges(readBook(document, {printed, false, false})).steps);
}

void hideBlankRows(const Document& document, OneSheet sheet) {
    for (const FoundPart& part : printedRows(document, sheet)) {
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

void fitProse(const Document& document, ProseHeight height, OneSheet one) {
    std::vector<Paragraph> paragraphs;
    const Reference<XIndexAccess> sheets(document->getSheets(), UNO_QUERY_THROW);
    for (sal_Int32 s = 0; s < sheets->getCount(); ++s) {
        const Reference<XSpreadsheet> sheet(sheets->getByIndex(s), UNO_QUERY_THROW);
        if (s == one.value_or(s) && isPrinted(sheet)) addParagraphs(sheet, height, paragraphs);
    }
    if (paragraphs.empty()) return;

    const std::vector<sal_Int32> needed = heightsOf(document, paragraphs);
    for (std::size_t p = 0; p < paragraphs.size(); ++p) {
        const Paragraph& paragraph = paragraphs[p];
        if (height == ProseHeight::Exact && paragraph.text.empty()) {
            paragraph.row->setPropertyValue("IsVisible", Any(false));
            continue;
        }
        sal_Int32 now = 0;
        if (height == ProseHeight::AtLeast) paragraph.row->getPropertyValue("Height") >>= now;
        if (needed[p] > now) paragraph.row->setPropertyValue("Height", Any(needed[p]));
    }
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
    // The colored ones inherit it. Each change of a style takes the office a look at every row.
    if (const rtl::OUString name = wide(styleName(Kind::Verdict)); styles->hasByName(name))
        Reference<XPropertySet>(styles->getByName(name), UNO_QUERY_THROW)
            ->setPropertyValue("IsTextWrapped", Any(true));
}

void fitRows(const Document& document, OneSheet sheet) {
    const std::vector<FoundPart> parts = printedRows(document, sheet);
    for (auto first = parts.begin(); first != parts.end();) {
        const auto next = std::find_if(first, parts.end(), [&](const FoundPart& part) {
            return part.area.at.Sheet != first->area.at.Sheet;
        });
        const auto widest = std::max_element(first, next, [](const FoundPart& a, const FoundPart& b) {
            return a.area.at.EndColumn < b.area.at.EndColumn;
        });
        const Narrowed asPrinted(document, first->area.sheet, widest->area.at.EndColumn);
        for (; first != next; ++first) {
            fit(*first, first->area.at.StartRow, first->area.at.StartRow);  // headings follow the language
            fit(*first, first->firstReady(), first->lastReady());
        }
    }
}

void fitForms(const Document& document) {
    std::vector<Paragraph> paragraphs;
    for (const FoundPart& part : partsOf(document)) {
        if (!part.isForm() || !isPrinted(part.area.sheet)) continue;
        const css::table::CellRangeAddress& at = part.area.at;
        const Reference<XIndexAccess> rows(
            Reference<css::table::XColumnRowRange>(part.area.sheet, UNO_QUERY_THROW)->getRows(),
            UNO_QUERY_THROW);
        const sal_Int32 value = at.StartColumn + 1, note = at.StartColumn + 3;
        sal_Int32 row = at.StartRow;
        for (const auto& cells : valuesOf(part.area, value, at.StartRow, note, at.EndRow)) {
            const Reference<XPropertySet> line(rows->getByIndex(row), UNO_QUERY_THROW);
            const bool judged = std::holds_alternative<std::string>(cells.front());
            const bool shown = isVisible(line);
            for (const auto& [column, text, style] :
                 {std::tuple(value, judged ? textOf(cells.front()) : "", styleName(Kind::Verdict)),
                  std::tuple(note, textOf(cells.back()), style::fieldNote)})
                if (shown && !text.empty())
                    paragraphs.push_back({line, text, mergedWidth(part.area.sheet, row, column), style});
            ++row;
        }
    }
    if (paragraphs.empty()) return;
    const std::vector<sal_Int32> needed = heightsOf(document, paragraphs);
    for (std::size_t p = 0; p < paragraphs.size(); ++p) {
        sal_Int32 now = 0;
        paragraphs[p].row->getPropertyValue("Height") >>= now;
        if (needed[p] > now) paragraphs[p].row->setPropertyValue("Height", Any(needed[p]));
    }
}

void fitLists(const Document& document) {
    for (const FoundPart& part : partsOf(document)) {
        if (part.is != FoundPart::Is::List) continue;
        const css::table::CellRangeAddress& at = part.area.at;
        const auto rows =
            valuesOf(part.area, at.StartColumn, part.firstReady(), at.EndColumn, part.lastReady());
        const auto last = std::find_if_not(rows.rbegin(), rows.rend(), isBlankRow);
        if (const auto filled = static_cast<sal_Int32>(rows.rend() - last); filled > 0)
            fit(part, part.firstReady(), part.firstReady() + filled - 1);
    }
}

void evenLastPages(const Document& document, sal_Int32 number) {
    constexpr double nearlyEmpty = 0.3;
    const Reference<XSpreadsheet> sheet(
        Reference<XIndexAccess>(document->getSheets(), UNO_QUERY_THROW)->getByIndex(number), UNO_QUERY_THROW);
    const auto areas = Reference<css::sheet::XPrintAreas>(sheet, UNO_QUERY_THROW)->getPrintAreas();
    if (areas.getLength() != 1 || !isPrinted(sheet)) return;
    const Reference<css::sheet::XSheetPageBreak> paged(sheet, UNO_QUERY_THROW);
    const Reference<css::table::XColumnRowRange> all(sheet, UNO_QUERY_THROW);
    const Reference<XIndexAccess> rows(all->getRows(), UNO_QUERY_THROW);
    const auto row = [&](sal_Int32 at) {
        return Reference<XPropertySet>(rows->getByIndex(at), UNO_QUERY_THROW);
    };
    Reference<XPropertySet>(
        Reference<css::table::XColumnRowRange>(
            sheet->getCellRangeByPosition(0, areas[0].StartRow, 0, areas[0].EndRow), UNO_QUERY_THROW)
            ->getRows(),
        UNO_QUERY_THROW)
        ->setPropertyValue("IsStartOfNewPage", Any(false));
    std::vector<sal_Int32> begins = {areas[0].StartRow};
    // The office's own list of pages, which it has nowhere else.
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wdeprecated-declarations"
    const css::uno::Sequence<css::sheet::TablePageBreakData> breaks = paged->getRowPageBreaks();
#pragma GCC diagnostic pop
    for (const css::sheet::TablePageBreakData& found : breaks)
        if (found.Position > begins.back() && found.Position <= areas[0].EndRow)
            begins.push_back(found.Position);
    if (begins.size() < 2) return;
    const auto high = [&](sal_Int32 from, sal_Int32 to) {
        sal_Int32 sum = 0;
        for (sal_Int32 at = from; at < to; ++at)
            if (isVisible(row(at))) sum += heightOf(row(at));
        return sum;
    };
    const sal_Int32 before = begins[begins.size() - 2], last = begins.back(), end = areas[0].EndRow + 1;
    const sal_Int32 full = high(before, last), left = high(last, end);
    if (left >= full * nearlyEmpty) return;
    sal_Int32 half = last, moved = 0;
    while (half > before + 1 && moved + left < (full + left) / 2) {
        --half;
        if (isVisible(row(half))) moved += heightOf(row(half));
    }
    row(half)->setPropertyValue("IsStartOfNewPage", Any(true));
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
