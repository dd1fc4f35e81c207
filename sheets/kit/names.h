// Defined names that the kit makes from names of tables, forms and rules: all lower case but for the two that jobbook
// reads files by, every blank, dash and dot an underscore.
//
//     rowName("Bill lines");      // "bill_lines_row": the place in its table of the row that reads it
//     handedName("Runs");         // "runs_in": the input columns that a function takes as one range
//     ruleName("cover.lawn");     // "rule_cover_lawn": the rule's value
#pragma once

#include <string>

namespace trenchbook::sheets {

// Where a table and a form stand in a document, whatever rows were inserted since: headings, units, thin row, ready
// rows, closing row; fields' labels and values. jobbook finds them by these: "table_Runs", "form_Job".
std::string tableRangeName(const std::string& table);
std::string formRangeName(const std::string& form);
// A block on a paper: headings, units, rows: "list_crew_stations".
std::string listRangeName(const std::string& block);
// The other way round, for a range that begins with `prefix` and stands on `sheet`. A defined name has no blanks and
// dashes: where it begins with the sheet's own, the sheet's name tells which they were.
//
//     partName("table_Close_out", "table_", "Close-out");        // "Close-out"
//     partName("form_Close_out_sums", "form_", "Close-out");     // "Close-out sums"
std::string partName(const std::string& range, const std::string& prefix, const std::string& sheet);

std::string rowName(const std::string& table);
std::string handedName(const std::string& table);
// What a function is handed of a range, cells with an error of their own marked. IFERROR() looks at each cell in turn, which
// takes longer than all that the function does; so only a range that has such a cell goes through it.
std::string handedCells(const std::string& range);
std::string ruleName(const std::string& key);

}  // namespace trenchbook::sheets
