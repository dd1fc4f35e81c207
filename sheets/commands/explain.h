// One cell in words: what it shows, which function works it out and by which method, from what source, with which
// arguments, and the reason where it shows an error. Works on the text of formulas, so that any shell can offer it:
// the shell reads the formula, asks the office what the questions give, and hands both back.
#pragma once

#include "commands/steps.h"

namespace trenchbook::sheets {

// A call of one of our functions inside a formula.
struct FunctionCall {
    std::string name;                    // as shown: "PIPE.CAPACITY"
    std::vector<std::string> arguments;  // as written
    bool operator==(const FunctionCall&) const = default;
};
// In the order in which they stand; calls inside an argument come after the one that they are an argument of.
std::vector<FunctionCall> callsIn(const std::string& formula);

// The names of blocks on Workings that the formula looks up.
std::vector<std::string> blocksIn(const Book& book, const std::string& formula);

struct CellToExplain {
    Place at;
    std::string formula;                        // "=PIPE.CAPACITY(…)"; without = in front the cell is typed
    std::map<std::string, std::string> blocks;  // array formulas of blocksIn(), by name
};
// Formulas whose answers explainCell() needs, to be worked out in the cell's own row.
std::vector<std::string> questions(const CellToExplain& cell, Language language);

// `answers` are those of questions(), in their order.
std::string explainCell(const Book& book, const CellToExplain& cell, const std::vector<Value>& answers,
                        Language language);

}  // namespace trenchbook::sheets
