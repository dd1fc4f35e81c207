#include "jobbook/carry_out.h"

#include <com/sun/star/container/XIndexAccess.hpp>
#include <com/sun/star/frame/XModel.hpp>
#include <com/sun/star/sheet/XCellRangeData.hpp>
#include <com/sun/star/sheet/XPrintAreas.hpp>
#include <com/sun/star/sheet/XSheetAnnotation.hpp>
#include <com/sun/star/sheet/XSheetAnnotationsSupplier.hpp>
#include <com/sun/star/sheet/XSpreadsheetView.hpp>
#include <com/sun/star/text/XTextRange.hpp>
#include <com/sun/star/view/XSelectionSupplier.hpp>

#include "jobbook/remembered.h"
#include "jobbook/rows.h"

namespace trenchbook::sheets {
namespace {

using css::sheet::XSpreadsheet;
using css::uno::Any;
using css::uno::Sequence;

class Hand {
  public:
    explicit Hand(const Document& document) : document_(document) {}

    void operator()(const PutCells& step) const {
        if (step.rows.empty()) return;
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
        const auto notes = notesIn(sheet, area);
        Reference<css::sheet::XCellRangeData>(
            sheet->getCellRangeByPosition(area.column, area.row, area.lastColumn, area.lastRow),
            UNO_QUERY_THROW)
            ->setDataArray(data);
        for (const NoteCell& note : notes) (*this)(note);
    }

    void operator()(const NoteCell& step) const {
        Reference<css::sheet::XSheetAnnotationsSupplier>(sheetOf(step.at.sheet), UNO_QUERY_THROW)
            ->getAnnotations()
            ->insertNew(
                css::table::CellAddress(static_cast<sal_Int16>(step.at.sheet), step.at.column, step.at.row),
                wide(step.says));
    }

    void operator()(const AddRows& step) const {
        const Reference<XSpreadsheet> sheet = sheetOf(step.pattern.sheet);
        const Unprotected open(sheet);
        insertRows({sheet, addressOf(step.pattern)}, step.before, step.count);
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

    // Cells lose their notes when they are written.
    static std::vector<NoteCell> notesIn(const Reference<XSpreadsheet>& sheet, const Rect& area) {
        const auto all =
            Reference<css::sheet::XSheetAnnotationsSupplier>(sheet, UNO_QUERY_THROW)->getAnnotations();
        std::vector<NoteCell> found;
        for (sal_Int32 n = 0; n < all->getCount(); ++n) {
            const Reference<css::sheet::XSheetAnnotation> note(all->getByIndex(n), UNO_QUERY_THROW);
            const css::table::CellAddress at = note->getPosition();
            const Place place{area.sheet, at.Column, at.Row};
            if (area.holds(place))
                found.push_back(
                    {place, narrow(Reference<css::text::XTextRange>(note, UNO_QUERY_THROW)->getString())});
        }
        return found;
    }

    Document document_;
};

}  // namespace

void carryOut(const Document& document, const Steps& steps) {
    const Hand hand(document);
    for (const Step& step : steps.list) std::visit(hand, step);
}

}  // namespace trenchbook::sheets
