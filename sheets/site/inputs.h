// The input columns and fields of the site sheets: heading, range, choices and note come from the engine's table of
// input cells (job/columns.h), which also reads them; a sheet says how wide they are and how numbers are shown.
//
//     inputs(InputTable::Runs, {{"Line", 18}, {"From", 16, show::text, "[Nodes.Node]"}, ...})
#pragma once

#include <initializer_list>
#include <string>
#include <vector>

#include "kit/model.h"
#include "trenchbook/job/columns.h"

namespace trenchbook::sheets {

struct Shown {
    const char* heading;
    double width = 20;           // mm, of columns
    Format format = show::text;  // text takes what is typed as it is: slopes, tape readings
    const char* list = "";       // a column of the workbook to choose from
    Kind kind = Kind::Measured;
};

// In the order listed. Throws std::logic_error for a heading that the table does not have, and for one that it has and
// the list does not: nothing typed may stay unread.
std::vector<Column> inputs(InputTable table, std::initializer_list<Shown> shown);

// One input of a form; its label is the heading.
Field input(InputTable table, const Shown& shown, const char* name, const char* value = "");

// Verdict and Check of a row, from the text block of its table: they stand left of the inputs, which are handed over
// whole to the functions that the two come from.
std::vector<Column> verdictColumns(double checkWidth = 70);

// A number of the solved job by its mark, "Flow" or "pit_numbers.Flow:1"; blank where there is none: Check says why.
std::string answered(const std::string& mark);

std::vector<Column> operator+(std::vector<Column> first, const std::vector<Column>& more);

}  // namespace trenchbook::sheets
