#include "jobbook/carry_out.h"

#include <com/sun/star/container/XIndexAccess.hpp>
#include <com/sun/star/frame/XModel.hpp>
#include <com/sun/star/sheet/CellFlags.hpp>
#include <com/sun/star/sheet/XCellRangeData.hpp>
#include <com/sun/star/sheet/XPrintAreas.hpp>
#include <com/sun/star/sheet/XSheetAnnotation.hpp>
#include <com/sun/star/sheet/XSheetAnnotationsSupplier.hpp>
#include <com/sun/star/sheet/XSheetOperation.hpp>
#include <com/sun/star/sheet/XSpreadsheetView.hpp>
#include <com/sun/star/text/XTextRange.hpp>
#include <com/sun/star/view/XSelectionSupplier.hpp>
#include <map>

#include "jobbook/remembered.h"
#include "jobbook/rows.h"
#include "jobbook/sheet_shown.h"

namespace trenchbook::sheets {
namespace {

using css::sheet::XSpreadsheet;
using css::uno::Any;
using css::uno::Sequence;

class Hand {
  public:
    Hand(const Document& document, Writing writing) : document_(document), writing_(writing) {}

    void operator()(const PutCells& step) {
        if (step.rows.empty()) return;
        if (writing_ == Writing::ToBeUndone) return putEach(step);
        const auto height = static_cast<sal_Int32>(step.rows.size());
        const auto width = static_cast<sal_Int32>(step.rows[0].size());
        Sequence<Sequence<Any>> data(height);
        for (sal_Int32 r = 0; r < height; ++r) {
            Sequence<Any> line(width);
            for (sal_Int32 c = 0; c < width; ++c)
                line.getArray()[c] =
                    cellOf(step.rows[static_cast<std::size_t>(r)][static_cast<std::size_t>(c)]);
            data.getArray()[r] = line;
        }
        const Reference<XSpreadsheet> sheet = sheetOf(step.at.sheet);
        const Rect area{step.at.sheet, step.at.column, step.at.row, step.at.column + width - 1,
                        step.at.row + height - 1};
        const std::vector<NoteCell>& notes = notesOn(sheet, area.sheet);
        Reference<css::sheet::XCellRangeData>(
            sheet->getCellRangeByPosition(area.column, area.row, area.lastColumn, area.lastRow),
            UNO_QUERY_THROW)
            ->setDataArray(data);
        for (const NoteCell& note : notes)
            if (area.holds(note.at)) insert(note);
    }

    void operator()(const Unprotect& step) const {
        Reference<css::util::XProtectable>(sheetOf(step.sheet), UNO_QUERY_THROW)->unprotect({});
    }

    void operator()(const ClearFormulas& step) const {
        const Reference<XSpreadsheet> sheet = sheetOf(step.area.sheet);
        Reference<css::sheet::XSheetOperation>(
            sheet->getCellRangeByPosition(step.area.column, step.area.row, step.area.lastColumn,
                                          step.area.lastRow),
            UNO_QUERY_THROW)
            ->clearContents(css::sheet::CellFlags::FORMULA);
    }

    void operator()(const NoteCell& step) {
        insert(step);
        notes_.clear();
    }

    void operator()(const AddRows& step) {
        const Reference<XSpreadsheet> sheet = sheetOf(step.pattern.sheet);
        const Unprotected open(sheet);
        insertRows({sheet, addressOf(step.pattern)}, step.before, step.count);
        notes_.clear();  // some have moved
    }

    void operator()(const PrintArea& step) const {
        const css::table::CellRangeAddress area = addressOf(step.area);
        Reference<css::sheet::XPrintAreas>(sheetOf(step.area.sheet), UNO_QUERY_THROW)
            ->setPrintAreas(Sequence<css::table::CellRangeAddress>(&area, 1));
    }

    void operator()(const Select& step) const {
        const Reference<css::frame::XController> view =
            Reference<css::frame::XModel>(document_, UNO_QUERY_THROW)->getCurrentController();
        const Reference<css::sheet::XSpreadsheetView> sheets(view, UNO_QUERY);
        if (!sheets.is()) return;  // a document without a view has no cursor
        const Reference<XSpreadsheet> sheet = sheetOf(step.at.sheet);
        sheets->setActiveSheet(sheet);
        Reference<css::view::XSelectionSupplier>(view, UNO_QUERY_THROW)
            ->select(Any(sheet->getCellByPosition(step.at.column, step.at.row)));
    }

    void operator()(const ShowSheet& step) const {
        (writing_ == Writing::ToBeUndone ? showSheetRecorded : showSheet)(document_, step.sheet,
                                                                          step.visible);
    }

    void operator()(const Remember& step) const { remember(document_, step.name, step.text); }

  private:
    static css::table::CellRangeAddress addressOf(const Rect& at) {
        return {static_cast<sal_Int16>(at.sheet), at.column, at.row, at.lastColumn, at.lastRow};
    }
    static Any cellOf(const Value& value) {
        if (const double* number = std::get_if<double>(&value)) return Any(*number);
        return Any(wide(textOf(value)));  // no text empties the cell; a void value would be #N/A
    }

    Reference<XSpreadsheet> sheetOf(int place) const {
        return {Reference<css::container::XIndexAccess>(document_->getSheets(), UNO_QUERY_THROW)
                    ->getByIndex(place),
                UNO_QUERY_THROW};
    }

    // Notes stay as they are.
    void putEach(const PutCells& step) const {
        const Reference<XSpreadsheet> sheet = sheetOf(step.at.sheet);
        sal_Int32 row = step.at.row;
        for (const auto& values : step.rows) {
            sal_Int32 column = step.at.column;
            for (const Value& value : values) {
                const Reference<css::table::XCell> cell = sheet->getCellByPosition(column++, row);
                if (const double* number = std::get_if<double>(&value)) {
                    cell->setValue(*number);
                } else if (!isBlank(value)) {
                    Reference<css::text::XTextRange>(cell, UNO_QUERY_THROW)->setString(wide(textOf(value)));
                } else if (cell->getType() != css::table::CellContentType_EMPTY) {
                    cell->setFormula("");
                }
            }
            ++row;
        }
    }

    void insert(const NoteCell& note) const {
        Reference<css::sheet::XSheetAnnotationsSupplier>(sheetOf(note.at.sheet), UNO_QUERY_THROW)
            ->getAnnotations()
            ->insertNew(
                css::table::CellAddress(static_cast<sal_Int16>(note.at.sheet), note.at.column, note.at.row),
                wide(note.says));
    }

    // Cells lose their notes when they are written. Asked for once a sheet: there may be many steps.
    const std::vector<NoteCell>& notesOn(const Reference<XSpreadsheet>& sheet, int place) {
        const auto [known, isNew] = notes_.try_emplace(place);
        if (!isNew) return known->second;
        const auto all =
            Reference<css::sheet::XSheetAnnotationsSupplier>(sheet, UNO_QUERY_THROW)->getAnnotations();
        for (sal_Int32 n = 0; n < all->getCount(); ++n) {
            const Reference<css::sheet::XSheetAnnotation> note(all->getByIndex(n), UNO_QUERY_THROW);
            const css::table::CellAddress at = note->getPosition();
            known->second.push_back(
                {{place, at.Column, at.Row},
                 narrow(Reference<css::text::XTextRange>(note, UNO_QUERY_THROW)->getString())});
        }
        return known->second;
    }

    Document document_;
    Writing writing_;
    std::map<int, std::vector<NoteCell>> notes_;  // by sheet
};

}  // namespace

void carryOut(const Document& document, const Steps& steps, Writing writing) {
    Hand hand(document, writing);
    for (const Step& step : steps.list) std::visit(hand, step);
}

}  // namespace trenchbook::sheets
