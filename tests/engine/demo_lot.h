// The tables of the demo lot (sheets/demo/corner-lot, all of it invented) as the engine's grids.
#pragma once

#include <cstdlib>
#include <string>
#include <vector>

#include "reference.h"
#include "trenchbook/core/cell.h"

namespace trenchbook {

// "runs": the whole table with its headings, numbers as numbers.
inline Grid demoTable(const std::string& name) {
    Grid grid;
    for (std::vector<std::string> fields :
         reference::records(std::string(TRENCHBOOK_DEMO_LOT) + "/" + name + ".csv")) {
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
