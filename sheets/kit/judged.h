// A verdict with many cases in short formulas. A chain of cases is cut into links, each a hidden cell of its own that
// takes over what the links before it found; the verdict is the last link. Cases are tried in their order and no
// further than the first that holds, exactly as in one long formula.
//
//     judge(table, "Check", {{"[Price]=\"\"", "\"NO: the price is missing\""}, {"[Price]<=0", "\"NO: …\""}}, "\"OK\"");
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "kit/model.h"

namespace trenchbook::sheets {

using Case = std::pair<std::string, std::string>;  // condition, answer
using Cases = std::vector<Case>;

inline Cases operator+(Cases first, const Cases& more) {
    first.insert(first.end(), more.begin(), more.end());
    return first;
}

// What a formula of any template is kept under, in characters with its addresses, as a file stores it (which is longer
// than the edit line shows: of:=IF([.$T6]<>…), and in parentheses.
inline constexpr std::size_t longestFormula = 300;
inline constexpr int deepestFormula = 8;

// Upper bound for the length of a formula as it is stored, once its headings are addresses, and its depth in parentheses.
std::size_t lengthAtMost(const std::string& formula);
int depthOf(const std::string& formula);

// Gives the column of that heading its formula and appends the hidden columns "<heading> 1", "<heading> 2"… to the
// table. Where no case holds the answer is `otherwise`. Throws std::logic_error when there is no such column or one
// case alone is too long.
void judge(Table& table, const std::string& heading, const Cases& cases, const std::string& otherwise);

// The same for the field of that name; the links are hidden fields "<name>_1"… in front of it.
void judge(Form& form, const std::string& name, const Cases& cases, const std::string& otherwise);

// Several texts in one cell by way of hidden fields in front of it, "<name>_1"…: the texts that are not empty, with
// `between` (a formula) between them.
void join(Form& form, const std::string& name, const std::string& between,
          const std::vector<std::string>& texts);

}  // namespace trenchbook::sheets
