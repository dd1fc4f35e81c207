// What a document holds back while it is worked on, so that many changes cost as little as one.
#pragma once

#include <com/sun/star/beans/XPropertySet.hpp>
#include <com/sun/star/document/XUndoManager.hpp>
#include <com/sun/star/frame/XModel.hpp>
#include <com/sun/star/sheet/XCalculatable.hpp>

#include "jobbook/parts.h"

namespace trenchbook::sheets {

// Nothing is drawn.
class Undrawn {
  public:
    explicit Undrawn(const Document& document);
    ~Undrawn();
    Undrawn(const Undrawn&) = delete;
    Undrawn& operator=(const Undrawn&) = delete;

  private:
    Reference<css::frame::XModel> model_;
};

// Nothing is drawn, and nothing is kept for undoing. The office counts the document as changed all the same: its charts look
// at the cells anew.
class Unseen {
  public:
    explicit Unseen(const Document& document);
    ~Unseen();
    Unseen(const Unseen&) = delete;
    Unseen& operator=(const Unseen&) = delete;

  private:
    Undrawn undrawn_;
    Reference<css::document::XUndoManager> undo_;
};

// Nothing is computed but when asked: every change, of a height even, would compute all that follows the day's date anew.
class CalculationHeld {
  public:
    explicit CalculationHeld(const Document& document);
    ~CalculationHeld();
    CalculationHeld(const CalculationHeld&) = delete;
    CalculationHeld& operator=(const CalculationHeld&) = delete;

  private:
    Reference<css::sheet::XCalculatable> formulas_;
    bool before_;
};

// Rows keep their heights, whatever becomes of styles and widths: the office would measure every row at each change. Rows
// cannot be fitted meanwhile.
class HeightsKept {
  public:
    explicit HeightsKept(const Document& document);
    ~HeightsKept();
    HeightsKept(const HeightsKept&) = delete;
    HeightsKept& operator=(const HeightsKept&) = delete;

  private:
    Reference<css::beans::XPropertySet> document_;
    css::uno::Any before_;
};

}  // namespace trenchbook::sheets
