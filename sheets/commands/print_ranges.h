// What of each sheet is printed: to the last row that shows anything, charts included, so that printing from Calc
// itself brings neither empty pages nor cut ones.
#pragma once

#include "commands/steps.h"

namespace trenchbook::sheets {

// A step for each sheet whose print area is not that already. Sheets without a print area, or with several, are left
// as they are.
Planned printRanges(const Book& book);

}  // namespace trenchbook::sheets
