// Room for a job that is longer than the ready rows of its workbook.
#pragma once

#include <com/sun/star/util/XProtectable.hpp>

#include "jobbook/parts.h"

namespace trenchbook::sheets {

// A protected sheet takes no rows: it is open as long as this lives.
class Unprotected {
  public:
    explicit Unprotected(const Reference<css::sheet::XSpreadsheet>& sheet)
        : sheet_(sheet, UNO_QUERY_THROW), was_(sheet_->isProtected()) {
        if (was_) sheet_->unprotect({});
    }
    ~Unprotected() {
        if (was_) sheet_->protect({});
    }
    Unprotected(const Unprotected&) = delete;
    Unprotected& operator=(const Unprotected&) = delete;

  private:
    Reference<css::util::XProtectable> sheet_;
    bool was_;
};

// Inserts rows before row `before` of the sheet and gives them, in the area's columns, what stands in the row above.
void insertRows(const Area& area, sal_Int32 before, sal_Int32 count);

// Gives each table of the document at least the rows that the description has: rows are inserted in the middle of a
// table, with the formulas, styles and rules of the row above, so that everything that reads the table reads them too.
// Computed tables whose rows each read a place of their own stay as they are: they are as long as what they list.
void makeRoom(const Document& document, const Workbook& description);

// The same for one table of that name.
void makeRoom(const Document& document, const std::string& name, int rows);

}  // namespace trenchbook::sheets
