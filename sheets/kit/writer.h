// Puts a workbook described as data into an office document.
#pragma once

#include "kit/layout.h"
#include "kit/look.h"
#include "kit/names.h"
#include "office/office.h"

namespace trenchbook::sheets {

// Fills `document` (new, with its default sheet) with the workbook's sheets, styles, names, blocks and charts.
void write(const Layout& layout, const Office& office,
           const Reference<css::sheet::XSpreadsheetDocument>& document, Paper paper = Paper::Letter);

}  // namespace trenchbook::sheets
