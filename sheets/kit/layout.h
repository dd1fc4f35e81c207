// Where each part of a workbook stands, and formulas with addresses in place of headings. No office needed.
#pragma once

#include <map>
#include <set>
#include <stdexcept>
#include <string>
#include <vector>

#include "kit/model.h"

namespace trenchbook::sheets {

// Zero-based, as the office counts.
struct CellPlace {
    int column = 0;
    int row = 0;
};

struct Placed {
    const Part* part = nullptr;
    CellPlace at;      // upper left cell of the part, heading line included
    int firstRow = 0;  // tables: the thin blank row; forms: the first field; blocks: the first row of cells
    int lastRow = 0;   // tables: the closing row; forms: the last field; blocks: the last row of cells
};

// "C", "AB"
std::string columnName(int column);

class Layout {
  public:
    // Throws std::logic_error naming sheet, column and formula when a heading, table, block or rule is unknown or a
    // heading could mean two: a fault of the workbook's description, found by the tests.
    explicit Layout(const Workbook& workbook);

    const Workbook& workbook() const { return workbook_; }
    const std::vector<Placed>& parts(std::size_t sheet) const { return placed_[sheet]; }

    struct TablePlace {
        std::string sheet;
        const Table* table = nullptr;
        int headingRow = 0, firstRow = 0, lastRow = 0, firstColumn = 0;
        // Helper columns that end a table stand behind everything else on its sheet, since a hidden column is hidden
        // for the whole sheet: from column number `firstHelper` of the table on, `helperShift` columns are left out.
        int firstHelper = 0, helperShift = 0;
        int columnAt(int column) const {
            return firstColumn + column + (column >= firstHelper ? helperShift : 0);
        }
        int lastColumn() const;
        int columnOf(const std::string& heading) const;  // throws where there is none
    };
    const TablePlace& table(const std::string& name) const;
    // "$Runs.$D$6:$D$207"
    std::string columnRange(const std::string& table, const std::string& first,
                            const std::string& last) const;

    std::string headingCell(const std::string& table, const std::string& heading) const;

    // Cells and heading of a chart's column, of a table or a block.
    std::string chartRange(const Chart::Series& series, const std::string& heading) const;
    std::string chartHeading(const Chart::Series& series) const;

    // A formula for one cell: of `table` at `row` (zero-based sheet row), or of no table (null).
    std::string expand(const std::string& formula, const TablePlace* table, int row) const;

    // A block's array formula, without the = in front, where its cells are the rows `first` to `last` of the sheet.
    std::string blockFormula(const Sheet& sheet, const Block& block, int first, int last) const;

    // Defined names beside those of fields, tables, forms and blocks: the workbook's own, and the row, rule and input
    // names (names.h) that some formula reads; all with addresses.
    const std::map<std::string, std::string>& names() const { return names_; }

  private:
    using Names = std::map<std::string, std::string>;
    void place(std::size_t sheet);
    void placeSideBySide(std::size_t sheet);
    void addBlock(const Block& block);
    void checkCharts() const;
    std::set<std::string> knownNames() const;
    int heightOf(const Block& block) const;
    std::string blockCells(const Chart::Series& series, const std::string& heading, bool headingAlone) const;
    std::string expand(const std::string& formula, const TablePlace* table, int row, Names* used) const;
    std::string ofTable(const std::string& mark, const TablePlace* own, int row) const;
    std::string ofBlock(const std::string& mark, const TablePlace* own, Names* used) const;
    std::string rowOf(const TablePlace& own, Names* used) const;
    std::string rule(const std::string& key, Names* used) const;
    std::string quoted(const std::string& text, Names* used) const;
    std::string handed(const TablePlace& place) const;

    const Workbook& workbook_;
    std::vector<std::vector<Placed>> placed_;
    std::map<std::string, TablePlace> tables_;
    std::map<std::string, const Block*> blocks_;
    std::set<std::string> rules_;
    bool bilingual_ = false;  // has a field "language": texts follow it (spanish/spanish.h)
    Names names_;
};

}  // namespace trenchbook::sheets
