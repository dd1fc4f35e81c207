#include "jobbook/held.h"

#include <com/sun/star/beans/XPropertySet.hpp>
#include <com/sun/star/document/XUndoManagerSupplier.hpp>

namespace trenchbook::sheets {
namespace {

const char heightsFollow[] = "IsAdjustHeightEnabled";

}  // namespace

Unseen::Unseen(const Document& document)
    : model_(document, UNO_QUERY_THROW),
      undo_(Reference<css::document::XUndoManagerSupplier>(document, UNO_QUERY_THROW)->getUndoManager()) {
    model_->lockControllers();
    undo_->lock();
}

Unseen::~Unseen() {
    undo_->unlock();
    model_->unlockControllers();
}

HeightsKept::HeightsKept(const Document& document)
    : document_(document, UNO_QUERY_THROW), before_(document_->getPropertyValue(heightsFollow)) {
    document_->setPropertyValue(heightsFollow, css::uno::Any(false));
}

HeightsKept::~HeightsKept() { document_->setPropertyValue(heightsFollow, before_); }

}  // namespace trenchbook::sheets
