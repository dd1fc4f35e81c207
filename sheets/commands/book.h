// A workbook as the commands see it: what its sheets hold, read once, as plain data. A command works its steps out
// from this alone (steps.h), so that any shell that can fill a Book can offer the commands.
//
//     #include "commands/book.h"
//     using namespace trenchbook::sheets;
//     std::size_t runs(const Book& book) {
//         const BookPart* table = book.table("Runs");
//         return table == nullptr ? 0 : book.rows(*table).size();
//     }
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "commands/value.h"
#include "trenchbook/core/text.h"

namespace trenchbook::sheets {

// Zero-based, as the office counts; `sheet` is the sheet's place among the tabs.
struct Place {
    int sheet = 0, column = 0, row = 0;
    bool operator==(const Place&) const = default;
};
struct Rect {
    int sheet = 0, column = 0, row = 0, lastColumn = 0, lastRow = 0;
    bool operator==(const Rect&) const = default;
    bool holds(const Place& place) const {
        return place.sheet == sheet && place.column >= column && place.column <= lastColumn &&
               place.row >= row && place.row <= lastRow;
    }
};

// The sheet of a job that only formulas read: blocks of the solved job, helper fields.
inline constexpr char sheetOfWorkings[] = "Workings";

// "$Runs.$E$7" as people write it: "Runs.E7".
std::string addressOf(const std::string& sheet, const Place& place);

struct BookSheet {
    std::string name;
    bool visible = true;
    // Cells from A1 to the last used one, row by row; none for a sheet that was not asked for.
    int columns = 0, rows = 0;
    std::vector<Value> cells;
    std::vector<bool> formulas;   // likewise: the cell is worked out, not typed
    std::vector<bool> hidden;     // by column
    std::optional<Rect> printed;  // the one print area; none where there are none or several
    int drawnTo = -1;             // row in which the lowest chart or picture ends
};

// A table, form or list, found by the defined names that the kit makes: where it stands now, rows inserted since
// included.
struct BookPart {
    enum class Is { Table, Form, List } is = Is::Table;  // a list is a block of a solved job on a paper
    std::string name;  // as the workbook's description has it: "Runs", "Close-out"
    Rect at;  // tables: headings, units, thin row, ready rows, closing row; forms: labels and values;
              // lists: headings, units, rows

    int firstReady() const { return at.row + (is == Is::Table ? 3 : 2); }
    int lastReady() const { return at.lastRow - (is == Is::Table ? 1 : 0); }
};

// The parts among a workbook's defined names of cells, in the order of the sheets, from top to bottom.
bool isPartName(const std::string& name);
std::vector<BookPart> partsAmong(const std::map<std::string, Rect>& names,
                                 const std::vector<std::string>& sheetNames);

struct Book {
    std::vector<BookSheet> sheets;
    std::vector<BookPart> parts;                    // in the order of the sheets, from top to bottom
    std::map<std::string, Rect> names;              // defined names of cells
    std::map<std::string, std::string> remembered;  // what commands keep with the workbook
    std::optional<Place> selected;                  // where the cursor stands

    // What a cell holds; nothing beyond the used cells.
    const Value& cell(const Place& place) const;
    bool isFormula(const Place& place) const;
    bool isHidden(int sheet, int column) const;

    const BookPart* part(BookPart::Is is, const std::string& name) const;
    const BookPart* table(const std::string& name) const { return part(BookPart::Is::Table, name); }
    const BookPart* form(const std::string& name) const { return part(BookPart::Is::Form, name); }
    // The table or form of this name. Throw std::runtime_error when the workbook has none.
    const BookPart& tableFor(const std::string& name) const;
    const BookPart& formFor(const std::string& name) const;

    std::vector<std::string> headings(const BookPart& table) const;  // hidden ones, too
    // The sheet's column of a heading. The second throws std::runtime_error where there is none.
    std::optional<int> findColumn(const BookPart& table, const std::string& heading) const;
    int column(const BookPart& table, const std::string& heading) const;
    // The sheet's row of a field, likewise.
    std::optional<int> findRow(const BookPart& form, const std::string& label) const;
    int row(const BookPart& form, const std::string& label) const;
    // Rows that hold anything in a column that is not hidden, their cells by heading.
    std::vector<Row> rows(const BookPart& table) const;
    // What was typed into the ready cells of a column; a formula's cell counts as blank. Empty without such a column.
    std::vector<Value> typed(const BookPart& table, const std::string& heading) const;

    // A field by its defined name; blank when there is none.
    const Value& value(const std::string& name) const;
    std::string text(const std::string& name) const { return textOf(value(name)); }
};

// The language that the job speaks, by its switch on Job; English where it has none.
Language languageOf(const Book& book);
// A sentence of a command in that language.
std::string said(const Book& job, const Text& sentence);

}  // namespace trenchbook::sheets
