// A new lot from an old job: what is kept from job to job goes along, what belongs to the old lot stays
// behind.
#pragma once

#include "commands/steps.h"
#include "jobbook/notes.h"

namespace trenchbook::sheets {

// What the kinds of the cells say is carried over: rules, rates, wording and prices, as typed. Cells with a
// formula have nothing of their own and are left to the new workbook. Throws Refused for a file that is no job, for one
// that has lost what decides a price (a sheet or heading of Rules, Prices, Labor, Quote), and for a heading that is there
// twice.
SiteNotes carriedOver(const Book& old, const Workbook& workbook);

// A number measured on the old lot, where the new lot's is to be typed.
struct OldReading {
    std::string part;
    bool isForm = false;
    std::string heading;  // of the column, or the field's label
    int row = 0;          // of the table's ready rows, from 0
    std::string number;   // as it was typed
};
std::vector<OldReading> oldReadings(const Book& old, const Workbook& workbook);

// A note on each of these cells, so that a slip is noticed when the new number is typed. Numbers alone: no
// name, no date, no words of the old lot.
Steps noteOldReadings(const Book& book, const std::vector<OldReading>& readings);

// The sheets that these read of an old job: those that something is typed on.
std::set<std::string> typedSheets(const Workbook& workbook);

// What else of those cells the old workbook does not have, because it is older or somebody took it out, in lines to print;
// empty where all is there.
std::string notFound(const Book& old, const Workbook& workbook);

// What is to be measured and asked again, in lines to print.
std::string againList(const Book& book, const std::vector<OldReading>& readings);

}  // namespace trenchbook::sheets
