// The tables of the demo lot (sheets/demo/corner-lot, all of it invented) as the engine's grids.
#pragma once

#include <string>

#include "csv_grid.h"
#include "reference.h"

namespace trenchbook {

// "runs": the whole table with its headings, numbers as numbers.
inline Grid demoTable(const std::string& name) {
    return gridOf(reference::records(std::string(TRENCHBOOK_DEMO_LOT) + "/" + name + ".csv"));
}

}  // namespace trenchbook
