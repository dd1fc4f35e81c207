// Whether a formula's calls and names are right, before any office sees it.
//
//     checkFormula(parseFormula("PIPE.BORE([Pipe];units)"), {"units"});
//
// Calls: functions of the catalog and of formula/native.h, their number of arguments; of the catalog's also what is
// plainly of the wrong kind: a literal or a single cell among whole columns, text where only a number is read, a
// number where words are asked. Names: one of `names`, or an address. Marks for cells are the layout's to check.
// Throws std::logic_error in words.
#pragma once

#include <set>
#include <string>

#include "formula/parse.h"

namespace trenchbook::sheets {

void checkFormula(const Node& formula, const std::set<std::string>& names);

}  // namespace trenchbook::sheets
