// Every formula of a workbook with the place where it stands, for those who check or count them.
#pragma once

#include <functional>
#include <string>

#include "kit/model.h"

namespace trenchbook::sheets {

struct FormulaPlace {
    enum class In { Column, Fixed, Choice, Field, Line, Heading, Block, Name } in = In::Column;
    const Sheet* sheet = nullptr;  // null for a defined name
    const Table* table = nullptr;  // for Column, Fixed and a table's Heading; [Length] means its cells
    const Block* block = nullptr;  // for Block and a block's Heading
    std::string where{};           // "Runs, column Flow"
    std::string name{};            // of the defined name
    std::string formula{};         // as described, without the = in front
};

// In the order of the sheets, the defined names last. A column's formula comes once, however many rows it fills.
void forEachFormula(const Workbook& workbook, const std::function<void(const FormulaPlace&)>& visit);

}  // namespace trenchbook::sheets
