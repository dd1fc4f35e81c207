#include "jobbook/held.h"

#include <com/sun/star/beans/XPropertySet.hpp>
#include <com/sun/star/document/XUndoManagerSupplier.hpp>

namespace trenchbook::sheets {
namespace {

const char heightsFollow[] = "IsAdjustHeightEnabled";

}  // namespace

Undrawn::Undrawn(const Document& document) : model_(document, UNO_QUERY_THROW) { model_->lockControllers(); }

Undrawn::~Undrawn() { model_->unlockControllers(); }

Unseen::Unseen(const Document& document)
    : undrawn_(document),
      undo_(Reference<css::document::XUndoManagerSupplier>(document, UNO_QUERY_THROW)->getUndoManager()) {
    undo_->lock();
}

Unseen::~Unseen() { undo_->unlock(); }

CalculationHeld::CalculationHeld(const Document& document)
    : formulas_(document, UNO_QUERY_THROW), before_(formulas_->isAutomaticCalculationEnabled()) {
    formulas_->enableAutomaticCalculation(false);
}

CalculationHeld::~CalculationHeld() { formulas_->enableAutomaticCalculation(before_); }

HeightsKept::HeightsKept(const Document& document)
    : document_(document, UNO_QUERY_THROW), before_(document_->getPropertyValue(heightsFollow)) {
    document_->setPropertyValue(heightsFollow, css::uno::Any(false));
}

HeightsKept::~HeightsKept() { document_->setPropertyValue(heightsFollow, before_); }

}  // namespace trenchbook::sheets
