// An open document as the plain data that commands work from.
#pragma once

#include <set>

#include "commands/book.h"
#include "jobbook/parts.h"

namespace trenchbook::sheets {

// What is read, for programs outside the office: there every question takes its time.
struct Wanted {
    std::set<std::string> sheets{};  // with their cells; none named: all
    bool parts = true;               // tables and forms, and which cells are formulas
    bool names = true;               // all defined names, what is remembered, where the cursor stands
    bool layout = true;              // print areas and drawings
};
Book readBook(const Document& document, const Wanted& wanted = {});

}  // namespace trenchbook::sheets
