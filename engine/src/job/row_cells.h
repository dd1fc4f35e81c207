// The listed columns of one row, read all at once and asked for by heading.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "trenchbook/core/date.h"
#include "trenchbook/job/read.h"

#pragma GCC visibility push(hidden)
namespace trenchbook {

class RowCells {
  public:
    RowCells(InputTable table, UnitSystem units) : columns_(inputColumns(table)), units_(units) {}

    // `cells` by place in inputColumns(); null where the table has no such column.
    void read(const std::vector<const Cell*>& cells);

    // Nothing stands in the row.
    bool blank() const;
    // What could not be used, in the order of the columns.
    std::vector<Unusable> unusable() const;

    // By heading. A heading that is not listed is a fault of the program (std::logic_error).
    const CellReading& operator[](std::string_view heading) const;
    const std::string& text(std::string_view heading) const { return (*this)[heading].text; }
    const std::optional<double>& number(std::string_view heading) const { return (*this)[heading].number; }
    template <class Kind>
    std::optional<Kind> quantity(std::string_view heading) const {
        const std::optional<double>& si = number(heading);
        return si ? std::optional(Kind::fromSi(*si)) : std::nullopt;
    }
    std::optional<Pipe> pipe(std::string_view heading) const;
    std::optional<Date> date(std::string_view heading) const;
    // The place of a choice among its words, as an enum that counts from `first`.
    template <class Enum>
    Enum choice(std::string_view heading, Enum none, Enum first) const {
        const std::optional<double>& place = number(heading);
        return place ? static_cast<Enum>(static_cast<int>(first) + static_cast<int>(*place)) : none;
    }

  private:
    std::span<const InputColumn> columns_;
    UnitSystem units_;
    std::vector<CellReading> readings_;
    mutable std::size_t next_ = 0;  // where the next heading asked for is likely to stand
};

// A table with a row of headings: where its listed columns and its rows are.
class HeadedTable {
  public:
    // Errors: BadArgument of the table for a needed heading that is missing and a listed one that stands
    // twice.
    HeadedTable(InputTable table, const Grid& grid);

    std::size_t rows() const { return grid_.rows > first_ ? grid_.rows - first_ : 0; }
    // Rows of headings and units above the first.
    std::size_t headingRows() const { return first_; }
    // The cells of a row by place in inputColumns().
    const std::vector<const Cell*>& cells(std::size_t row);

  private:
    bool isUnitRow(std::size_t row) const;

    std::span<const InputColumn> columns_;
    const Grid& grid_;
    std::vector<std::size_t> places_;  // of the listed columns; none where there is no such heading
    std::size_t first_ = 1;            // row of the grid
    std::vector<const Cell*> cells_;
};

// The value cells of a form, by place in inputColumns(). Errors: BadArgument of the table for a label that
// stands twice, or no second column.
std::vector<const Cell*> formCells(InputTable table, const Grid& grid);

// The words of a cell, without blanks around them; empty for an empty one.
std::string wordsOf(const Cell& cell);

}  // namespace trenchbook
#pragma GCC visibility pop
