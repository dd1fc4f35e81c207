// Puts a workbook described as data into an office document.
#pragma once

#include "kit/layout.h"
#include "kit/look.h"
#include "office/office.h"

namespace trenchbook::sheets {

// Fills `document` (new, with its default sheet) with the workbook's sheets, styles, names, blocks and charts.
void write(const Layout& layout, const Office& office,
           const Reference<css::sheet::XSpreadsheetDocument>& document, Paper paper = Paper::Letter);

// The defined names that tell where a table and a form stand in a document, whatever rows were inserted since:
// headings, units, thin row, ready rows, closing row; fields' labels and values.
std::string tableRangeName(const std::string& table);  // "table_Runs"
std::string formRangeName(const std::string& form);    // "form_Job"

}  // namespace trenchbook::sheets
