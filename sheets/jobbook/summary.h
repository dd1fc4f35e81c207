// What a contractor wants to know first of a computed job, in a few lines.
#pragma once

#include "jobbook/parts.h"

namespace trenchbook::sheets {

// Name, rows counted by verdict, each NO and CHECK in words with its row, the tightest fall, the flow at each
// lower end, the price. Read from the cells, so it says what the sheets say.
std::string summaryOf(const Document& document);

}  // namespace trenchbook::sheets
