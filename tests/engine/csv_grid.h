// A CSV table as the engine's grid: numbers as numbers, the rest as text, blank fields as nothing.
#pragma once

#include <cstdlib>
#include <string>
#include <vector>

#include "trenchbook/core/cell.h"

namespace trenchbook {

inline Grid gridOf(const std::vector<std::vector<std::string>>& records) {
    Grid grid;
    for (std::vector<std::string> fields : records) {
        if (grid.rows++ == 0) grid.columns = fields.size();
        fields.resize(grid.columns);
        for (const std::string& field : fields) {
            char* end = nullptr;
            const double number = std::strtod(field.c_str(), &end);
            grid.cells.push_back(field.empty() ? Cell(Nothing{}) : *end == '\0' ? Cell(number) : Cell(field));
        }
    }
    return grid;
}

}  // namespace trenchbook
