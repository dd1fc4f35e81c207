// What of each sheet is printed, and on which paper.
#pragma once

#include "jobbook/parts.h"
#include "kit/look.h"

namespace trenchbook::sheets {

// Where a sheet is given, only that one is looked at.
using OneSheet = std::optional<sal_Int32>;

// Ends each sheet's print area with the last row that shows anything, charts included.
void trimPrintAreas(const Document& document);
// Hides the ready rows of all tables that hold nothing, for printing only: nobody could type into them.
void hideBlankRows(const Document& document, OneSheet sheet = {});
// Gives paragraphs the height that their text takes, which the office does by itself only for cells that are not merged.
enum class ProseHeight {
    AtLeast,  // in a workbook that goes on changing: no row shrinks
    Exact,    // for printing only: paragraphs without text are hidden
};
void fitProse(const Document& document, ProseHeight height, OneSheet sheet = {});
// Verdicts in as many lines as they take, for printing only: unprotects the sheets.
void wrapVerdicts(const Document& document);
// Every table row as high as its text takes on paper, for printing only.
void fitRows(const Document& document, OneSheet sheet = {});
// Every row of a form as high as its verdict and its note take, for printing only: the office does not do so where cells are
// merged. No row shrinks.
void fitForms(const Document& document);
// The filled rows of the lists on papers as high as their text; nothing is typed there, so that the rest may stay low.
void fitLists(const Document& document);
// No last page with hardly anything on it: a sheet that would end so gives its last two pages half each. Of sheets that are
// printed at 100 %, for printing only.
void evenLastPages(const Document& document, sal_Int32 sheet);
void setPaper(const Document& document, Paper paper);

}  // namespace trenchbook::sheets
