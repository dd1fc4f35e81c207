// A sheet steps aside or comes back, and its link in the list of sheets on Job with it.
//
// A link to a hidden sheet shows the next one that is not: so the link of one that stepped aside leads to the words beside
// it, which say why, and how it comes back.
#pragma once

#include "jobbook/parts.h"

namespace trenchbook::sheets {

void showSheet(const Document& document, int place, bool visible);

// The same as a step to be undone, inside the one that is being recorded. Calc 25.2 records none of its own for it.
void showSheetRecorded(const Document& document, int place, bool visible);

}  // namespace trenchbook::sheets
