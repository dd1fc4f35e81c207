// Site notes into the cells of a document.
#pragma once

#include <string_view>

#include "jobbook/parts.h"

namespace trenchbook::sheets {

// Text stays text, whatever it looks like; a blank leaves an input's starting value. Throws
// std::runtime_error when the document lacks a table, a column or rows that the notes need.
void fill(const Document& document, const SiteNotes& notes);

// Site notes into a job that is there already. What the notes give of rules, prices and wording takes the
// place of what stands there; what was measured or permitted is written over only where the cell holds
// what an earlier fill wrote (written.h): else throws Refused with the cells and changes nothing.
void fillIn(const Document& document, SiteNotes notes);

// Cells of a table's column one under the other from a ready row on, and a form's field.
void put(const FoundPart& table, const std::string& heading, sal_Int32 ready,
         const std::vector<Value>& values);
void put(const FoundPart& form, const std::string& label, const Value& value);
// The part of this name; throws std::runtime_error when the document has none.
const FoundPart& partFor(const std::vector<FoundPart>& parts, std::string_view name, bool isForm);

}  // namespace trenchbook::sheets
