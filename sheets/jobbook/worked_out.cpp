#include "jobbook/worked_out.h"

#include <com/sun/star/container/XIndexAccess.hpp>
#include <com/sun/star/document/XUndoManagerSupplier.hpp>
#include <com/sun/star/frame/XModel.hpp>
#include <com/sun/star/table/XColumnRowRange.hpp>

#include "jobbook/rows.h"

namespace trenchbook::sheets {
namespace {

Reference<css::sheet::XSpreadsheet> sheetOf(const Document& document, int place) {
    return {
        Reference<css::container::XIndexAccess>(document->getSheets(), UNO_QUERY_THROW)->getByIndex(place),
        UNO_QUERY_THROW};
}

// Nothing is drawn, and nothing is kept for undoing. The office counts the document as changed all the same: its charts
// look at the cells anew.
class Unseen {
  public:
    explicit Unseen(const Document& document)
        : model_(document, UNO_QUERY_THROW),
          undo_(Reference<css::document::XUndoManagerSupplier>(document, UNO_QUERY_THROW)->getUndoManager()) {
        model_->lockControllers();
        undo_->lock();
    }
    ~Unseen() {
        undo_->unlock();
        model_->unlockControllers();
    }
    Unseen(const Unseen&) = delete;
    Unseen& operator=(const Unseen&) = delete;

  private:
    Reference<css::frame::XModel> model_;
    Reference<css::document::XUndoManager> undo_;
};

}  // namespace

std::vector<Value> workedOut(const Document& document, const Place& row,
                             const std::vector<std::string>& formulas) {
    const Reference<css::sheet::XSpreadsheet> sheet = sheetOf(document, row.sheet);
    const sal_Int32 last =
        Reference<css::table::XColumnRowRange>(sheet, UNO_QUERY_THROW)->getColumns()->getCount() - 1;
    const Area scratch{sheet, {static_cast<sal_Int16>(row.sheet), last, row.row, last, row.row}};
    const Unseen unseen(document);
    const Unprotected open(sheet);
    const Reference<css::table::XCell> cell = sheet->getCellByPosition(last, row.row);
    std::vector<Value> answers;
    for (const std::string& formula : formulas) {
        if (!formula.empty()) cell->setFormula(wide(formula));
        answers.push_back(formula.empty() ? Value() : valuesOf(scratch).at(0).at(0));
        cell->setFormula("");
    }
    return answers;
}

std::string formulaOf(const Document& document, const Place& at) {
    const std::string formula =
        narrow(sheetOf(document, at.sheet)->getCellByPosition(at.column, at.row)->getFormula());
    const bool block = formula.starts_with("{=") && formula.ends_with("}");
    return block ? formula.substr(1, formula.size() - 2) : formula;
}

}  // namespace trenchbook::sheets
