// What goes into and comes out of a spreadsheet function, free of office types.
#pragma once

#include <bit>
#include <cstdint>
#include <string>
#include <variant>
#include <vector>

#include "trenchbook/core/cell.h"

namespace trenchbook::addin {

using trenchbook::Cell;
using trenchbook::Nothing;  // an argument left out, or an empty cell of a range
using Range = Grid;

// A single empty cell arrives as 0: Calc gives no way to tell.
using Value = std::variant<Nothing, double, std::string, Range>;

// The codes that Calc shows in a cell.
inline constexpr std::uint32_t badArgumentCode = 502;
inline constexpr std::uint32_t noConvergenceCode = 523;

// Rows of an array answer that have no number. Calc shows a quiet NaN whose low half is an error code as that
// error in its own cell; the blank marker is ours and becomes empty text on the way out.
inline double errorCell(std::uint32_t code) { return std::bit_cast<double>(0x7FF8000000000000ULL | code); }
inline double blankCell() { return std::bit_cast<double>(0x7FF80000FFFFFFFFULL); }
inline bool isBlankCell(double cell) { return std::bit_cast<std::uint64_t>(cell) == 0x7FF80000FFFFFFFFULL; }

// Array answers hold numbers or text, never both: Calc cannot compare text inside a block of numbers.
template <class Item>
struct Block {
    std::size_t columns = 1;
    std::vector<Item> items;  // row by row

    std::size_t rows() const { return columns == 0 ? 0 : items.size() / columns; }
};
using Numbers = Block<double>;
using Texts = Block<std::string>;

using Result = std::variant<double, std::string, Numbers, Texts>;

}  // namespace trenchbook::addin
