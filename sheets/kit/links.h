// Ways from one sheet to another.
#pragma once

#include <com/sun/star/sheet/XSpreadsheet.hpp>
#include <com/sun/star/sheet/XSpreadsheetDocument.hpp>
#include <string>

#include "kit/layout.h"
#include "office/office.h"

namespace trenchbook::sheets {

// Makes the cell lead to the sheet named in it: a clear shape that moves and grows with the cell carries the link. A link
// of the cell's own would do without the shape, but with one the office refuses to export a workbook that was never
// saved as PDF. Links of shapes are kept in .ods only.
void addLink(const Reference<css::sheet::XSpreadsheetDocument>& workbook,
             const Reference<css::sheet::XSpreadsheet>& sheet, CellPlace at, const std::string& target);

}  // namespace trenchbook::sheets
