// Site notes into the cells of a document.
#pragma once

#include "jobbook/parts.h"

namespace trenchbook::sheets {

// Text stays text, whatever it looks like; a blank leaves an input's starting value. Throws
// std::runtime_error when the document lacks a table, a column or rows that the notes need.
void fill(const Document& document, const SiteNotes& notes);

}  // namespace trenchbook::sheets
