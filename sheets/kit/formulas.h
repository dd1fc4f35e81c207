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

// What the writer puts in beside them, with the = in front: a unit that follows the units switch (plain text where it
// does not, empty where there is none), and a sheet's title with the job's name.
std::string unitFormula(Measure measure, const std::string& fixed);
std::string titleFormula(const Sheet& sheet);
// A limit in US units as a formula: in a metric job it is the same quantity there.
std::string limitFormula(double us, Measure measure);

// What the frames of a sheet's cells mean, in one line under its purpose; empty where nothing is typed but wording.
std::string legendFormula(const Sheet& sheet);

// First and last heading of each stretch of columns, side by side, that only hold formulas and show them. Verdicts end a
// stretch: they have a look of their own.
std::vector<std::pair<std::string, std::string>> workedOut(const Table& table);

// A column's heading as it stands in its cell. The office completes what is typed from fixed texts above it, so that "roof"
// would become the heading "Roof C"; it takes no texts of formulas. So headings over typed words are formulas.
std::string headingCell(const Column& column);

}  // namespace trenchbook::sheets
