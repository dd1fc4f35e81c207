// A workbook for somebody without the add-in: every formula gives way to what it shows, so that nothing in it can be
// computed anew, or wrong. What is typed, formats, print ranges and charts stay.
#pragma once

#include "commands/steps.h"

namespace trenchbook::sheets {

// To be carried out on a copy. Job says what the copy is; `day` as the office counts days.
Steps valuesCopy(const Book& book, double day, Language language);

}  // namespace trenchbook::sheets
