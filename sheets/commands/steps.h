// What a command does to an open workbook, as plain data: worked out from a Book, carried out by a shell one after
// the other (jobbook/carry_out.h for C++). All places are those of the workbook at the time of the step: rows that an
// earlier step inserts are counted.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "commands/book.h"
#include "trenchbook/core/text.h"

namespace trenchbook::sheets {

// Values from a cell on, a row each; a blank empties its cell. Notes on the cells stay.
struct PutCells {
    Place at;
    std::vector<std::vector<Value>> rows;
};
// A sheet's protection comes off.
struct Unprotect {
    int sheet = 0;
};
// Formulas of an area go, whole blocks with them; what is typed stays.
struct ClearFormulas {
    Rect area;
};
// A note on a cell, in place of the one that is there.
struct NoteCell {
    Place at;
    std::string says;
};
// Rows inserted before row `before` of the sheet; in the pattern's columns they get what stands in the row above.
struct AddRows {
    Rect pattern;
    int before = 0, count = 0;
};
// What of the sheet is printed.
struct PrintArea {
    Rect area;
};
// Where the cursor goes.
struct Select {
    Place at;
};
// A sheet steps aside, or comes back.
struct ShowSheet {
    int sheet = 0;
    bool visible = true;
};
// Kept with the workbook under a name, for the command's next time.
struct Remember {
    std::string name, text;
};

using Step = std::variant<PutCells, Unprotect, ClearFormulas, NoteCell, AddRows, PrintArea, Select, ShowSheet,
                          Remember>;

struct Steps {
    std::vector<Step> list{};

    bool empty() const { return list.empty(); }
    void put(const Place& at, const Value& value) { list.emplace_back(PutCells{at, {{value}}}); }
    // Values one under the other.
    void putColumn(const Place& at, const std::vector<Value>& values) {
        PutCells step{at, {}};
        for (const Value& value : values) step.rows.push_back({value});
        if (!values.empty()) list.emplace_back(std::move(step));
    }
};

// A command's steps and what it has to say.
struct Planned {
    Steps steps{};
    Text says{};
};

}  // namespace trenchbook::sheets
