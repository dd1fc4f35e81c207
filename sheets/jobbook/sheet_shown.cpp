#include "jobbook/sheet_shown.h"

#include <com/sun/star/beans/XPropertySet.hpp>
#include <com/sun/star/container/XIndexAccess.hpp>
#include <com/sun/star/container/XNamed.hpp>
#include <com/sun/star/document/XUndoAction.hpp>
#include <com/sun/star/document/XUndoManagerSupplier.hpp>
#include <com/sun/star/drawing/XDrawPagesSupplier.hpp>
#include <com/sun/star/sheet/XCellAddressable.hpp>
#include <cppuhelper/implbase1.hxx>
#include <cppuhelper/weakref.hxx>

namespace trenchbook::sheets {
namespace {

using css::beans::XPropertySet;
using css::container::XIndexAccess;
using css::uno::Any;

// The links that lead to this sheet, or lead there when it is shown: kit/links.h gives them its name as title.
void lead(const Document& document, const rtl::OUString& sheet, bool visible) {
    const auto list = namedArea(document, "sheets_aside");
    if (!list) return;
    const Reference<XIndexAccess> shapes(
        Reference<css::drawing::XDrawPagesSupplier>(document, UNO_QUERY_THROW)
            ->getDrawPages()
            ->getByIndex(list->at.Sheet),
        UNO_QUERY_THROW);
    for (sal_Int32 s = 0; s < shapes->getCount(); ++s) {
        const Reference<XPropertySet> shape(shapes->getByIndex(s), UNO_QUERY_THROW);
        rtl::OUString leadsTo, title;
        shape->getPropertyValue("Hyperlink") >>= leadsTo;
        shape->getPropertyValue("Title") >>= title;
        Reference<css::sheet::XCellAddressable> cell;
        if (title != sheet || !leadsTo.startsWith("#") || !(shape->getPropertyValue("Anchor") >>= cell))
            continue;
        const rtl::OUString own = Reference<css::container::XNamed>(list->sheet, UNO_QUERY_THROW)->getName();
        const rtl::OUString beside = own + ".B" + rtl::OUString::number(cell->getCellAddress().Row + 1);
        shape->setPropertyValue("Hyperlink", Any("#" + (visible ? sheet : beside)));
    }
}

Reference<css::document::XUndoManager> undoOf(const Document& document) {
    return Reference<css::document::XUndoManagerSupplier>(document, UNO_QUERY_THROW)->getUndoManager();
}

// What the office would record of it, or not, is left out.
class Unrecorded {
  public:
    explicit Unrecorded(const Document& document) : undo_(undoOf(document)) { undo_->lock(); }
    ~Unrecorded() {
        try {
            undo_->unlock();
        } catch (const css::uno::Exception&) {
            // The document is gone.
        }
    }
    Unrecorded(const Unrecorded&) = delete;
    Unrecorded& operator=(const Unrecorded&) = delete;

  private:
    Reference<css::document::XUndoManager> undo_;
};

class SheetShown final : public cppu::WeakImplHelper1<css::document::XUndoAction> {
  public:
    SheetShown(const Document& document, int place, bool visible)
        : document_(document), place_(place), visible_(visible) {}

    rtl::OUString SAL_CALL getTitle() override { return visible_ ? "Show Sheet" : "Hide Sheet"; }
    void SAL_CALL undo() override { show(!visible_); }
    void SAL_CALL redo() override { show(visible_); }

  private:
    void show(bool visible) {
        const Document document(document_);
        if (!document.is()) return;
        const Unrecorded unrecorded(document);
        showSheet(document, place_, visible);
    }

    css::uno::WeakReference<css::sheet::XSpreadsheetDocument> document_;  // which holds this
    int place_;
    bool visible_;
};

}  // namespace

void showSheet(const Document& document, int place, bool visible) {
    const Reference<XPropertySet> sheet(
        Reference<XIndexAccess>(document->getSheets(), UNO_QUERY_THROW)->getByIndex(place), UNO_QUERY_THROW);
    sheet->setPropertyValue("IsVisible", Any(visible));
    lead(document, Reference<css::container::XNamed>(sheet, UNO_QUERY_THROW)->getName(), visible);
}

void showSheetRecorded(const Document& document, int place, bool visible) {
    const Reference<css::document::XUndoAction> action(new SheetShown(document, place, visible));
    action->redo();
    undoOf(document)->addUndoAction(action);
}

}  // namespace trenchbook::sheets
