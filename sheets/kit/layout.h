// Where each part of a workbook stands, and formulas with addresses in place of headings. No office needed.
#pragma once

#include <stdexcept>
#include <string>
#include <vector>

#include "kit/model.h"

namespace trenchbook::sheets {

// Zero-based, as the office counts.
struct Cell {
    int column = 0;
    int row = 0;
};

struct Placed {
    const Part* part = nullptr;
    Cell at;           // upper left cell of the part, heading line included
    int firstRow = 0;  // tables: the thin blank row; forms: the first field; blocks: the first row of cells
    int lastRow = 0;   // tables: the closing row; forms: the last field; blocks: the last row of cells
};

// "C", "AB"
std::string columnName(int column);

class Layout {
  public:
    // Throws std::logic_error naming sheet and formula when a heading or table is unknown: a fault of the workbook's
    // description, found by the tests.
    explicit Layout(const Workbook& workbook);

    const Workbook& workbook() const { return workbook_; }
    const std::vector<Placed>& parts(std::size_t sheet) const { return placed_[sheet]; }

    struct TablePlace {
        std::string sheet;
        const Table* table = nullptr;
        int headingRow = 0, firstRow = 0, lastRow = 0, firstColumn = 0;
    };
    const TablePlace& table(const std::string& name) const;
    // "$Runs.$D$6:$D$207"
    std::string columnRange(const std::string& table, const std::string& first,
                            const std::string& last) const;

    std::string headingCell(const std::string& table, const std::string& heading) const;

    // A formula for one cell: of `table` at `row` (zero-based sheet row), or of no table (null).
    std::string expand(const std::string& formula, const TablePlace* table, int row) const;

  private:
    const Workbook& workbook_;
    std::vector<std::vector<Placed>> placed_;
    std::map<std::string, TablePlace> tables_;
};

}  // namespace trenchbook::sheets
