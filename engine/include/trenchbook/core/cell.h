// Cells of a sheet as the engine reads them: nothing, a number or text, in a grid row by row.
//
//     Grid grid{2, 2, {"Node", "Ground", "A1", 98.5}};
//     std::get<double>(grid.at(1, 1));    // 98.5
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace trenchbook {

struct Nothing {};  // an empty cell, or an argument left out

using Cell = std::variant<Nothing, double, std::string>;

// What a sheet hands over in place of a cell that holds an error of its own: no possible name or number.
inline constexpr std::string_view errorMark = "\u27E8error\u27E9";

struct Grid {
    std::size_t rows = 0;
    std::size_t columns = 0;
    std::vector<Cell> cells;  // row by row

    const Cell& at(std::size_t row, std::size_t column) const { return cells[row * columns + column]; }
};

}  // namespace trenchbook
