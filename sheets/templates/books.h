// The workbooks beside the job: the price book and the ledger over many jobs. Native formulas only.
#pragma once

#include "kit/model.h"

namespace trenchbook::sheets {

Workbook priceBook();
Workbook ledgerBook();

}  // namespace trenchbook::sheets
