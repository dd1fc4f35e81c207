// A new lot from an old job: what is kept from job to job goes along, what belongs to the old lot stays
// behind.
#pragma once

#include "jobbook/parts.h"

namespace trenchbook::sheets {

// What the kinds of the cells say is carried over: rules, rates, wording and prices, as typed. Cells with a
// formula have nothing of their own and are left to the new workbook. Throws std::runtime_error for a file
// that is no job.
SiteNotes carriedOver(const Document& old, const Workbook& workbook);

// A number measured on the old lot, where the new lot's is to be typed.
struct OldReading {
    std::string part;
    bool isForm = false;
    std::string heading;  // of the column, or the field's label
    sal_Int32 row = 0;    // of the table's ready rows, from 0
    std::string number;   // as it was typed
};
std::vector<OldReading> oldReadings(const Document& old, const Workbook& workbook);

// A note on each of these cells, so that a slip is noticed when the new number is typed. Numbers alone: no
// name, no date, no words of the old lot.
void noteOldReadings(const Document& document, const std::vector<OldReading>& readings);

// What is to be measured and asked again, in lines to print.
std::string againList(const Document& document, const std::vector<OldReading>& readings);

}  // namespace trenchbook::sheets
