// Line charts over columns of the workbook.
#pragma once

#include <com/sun/star/sheet/XSpreadsheet.hpp>
#include <com/sun/star/sheet/XSpreadsheetDocument.hpp>

#include "kit/layout.h"
#include "office/office.h"

namespace trenchbook::sheets {

// Puts the chart with its upper left corner on the cell; every series keeps its own x values.
void addChart(const Office& office, const Reference<css::sheet::XSpreadsheetDocument>& workbook,
              const Reference<css::sheet::XSpreadsheet>& sheet, const Chart& chart, const Layout& layout,
              CellPlace at, int number);

}  // namespace trenchbook::sheets
