#include "kit/layout.h"

#include <algorithm>
#include <regex>

#include "formula/check.h"
#include "kit/formulas.h"
#include "kit/names.h"
#include "spanish/spanish.h"

namespace trenchbook::sheets {
namespace {

constexpr int titleRows = 3;  // title, purpose, one blank row

bool startsPart(const Part& part) { return !std::holds_alternative<Break>(part); }

// A row is 4.52 mm high; most charts leave a little room in their frame.
int chartRows(const Chart& chart) {
    return static_cast<int>(chart.height / (chart.toScale ? 4.5 : 4.9)) + (chart.toScale ? 1 : 2);
}

// Columns of the table before the helpers that end it.
int columnsShown(const Table& table) {
    std::size_t shown = table.columns.size();
    while (shown > 0 && table.columns[shown - 1].helper) --shown;
    return static_cast<int>(shown);
}

// Columns that the sheet's parts take, without the helpers that end tables.
int columnsTaken(const Sheet& sheet) {
    int taken = 0;
    for (const Part& part : sheet.parts) {
        if (const Form* form = std::get_if<Form>(&part)) taken = std::max(taken, form->noteSpan + 3);
        if (const Paragraphs* text = std::get_if<Paragraphs>(&part)) taken = std::max(taken, text->span);
        if (const Table* table = std::get_if<Table>(&part)) {
            const int shown = columnsShown(*table);
            const int span = shown > 0 ? table->columns[static_cast<std::size_t>(shown - 1)].span : 1;
            taken = std::max(taken, shown + span - 1);
        }
    }
    return taken;
}

// Counted from 1; 0 when there is none.
std::size_t columnIn(const Block& block, const std::string& heading) {
    for (std::size_t c = 0; c < block.columns.size(); ++c)
        if (block.columns[c].heading == heading) return c + 1;
    return 0;
}

std::string sheetRef(const std::string& sheet) {
    return sheet.find_first_of(" -") == std::string::npos ? "$" + sheet + "." : "$'" + sheet + "'.";
}

}  // namespace

const char* styleName(Kind kind) {
    switch (kind) {
        case Kind::Measured:
            return "Measured on this lot";
        case Kind::Kept:
            return "Kept from job to job";
        case Kind::Price:
            return "From the price book";
        case Kind::Permit:
            return "Permission or ticket";
        case Kind::Computed:
            return "Computed";
        case Kind::Verdict:
            return "Verdict";
        case Kind::Label:
            return "Label";
    }
    return "";
}

bool isInput(Kind kind) {
    return kind == Kind::Measured || kind == Kind::Kept || kind == Kind::Price || kind == Kind::Permit;
}

std::string columnName(int column) {
    std::string name;
    for (int left = column + 1; left > 0; left = (left - 1) / 26)
        name.insert(name.begin(), static_cast<char>('A' + (left - 1) % 26));
    return name;
}

Layout::Layout(const Workbook& workbook) : workbook_(workbook) {
    placed_.resize(workbook.sheets.size());
    // Tables first: a block's height follows the table that it answers for, wherever that stands.
    for (std::size_t s = 0; s < workbook.sheets.size(); ++s)
        for (const Part& part : workbook.sheets[s].parts)
            if (const Table* table = std::get_if<Table>(&part);
                table != nullptr &&
                !tables_.emplace(table->name, TablePlace{.sheet = workbook.sheets[s].name, .table = table})
                     .second)
                throw std::logic_error("two tables are named " + table->name);
    for (std::size_t s = 0; s < workbook.sheets.size(); ++s) {
        for (const Part& part : workbook.sheets[s].parts)
            if (const Block* block = std::get_if<Block>(&part)) addBlock(*block);
        if (workbook.sheets[s].workings)
            placeSideBySide(s);
        else
            place(s);
    }
    if (const auto found = tables_.find("Rules"); found != tables_.end())
        for (const auto& row : found->second.table->content) rules_.insert(row.at(0));
    for (const auto& [name, place] : tables_)
        if (!place.table->handedFrom.empty()) names_[handedName(name)] = handed(place);
    for (const auto& [name, expression] : workbook.names) names_[name] = "";
    checkCharts();
    const std::set<std::string> known = knownNames();
    bilingual_ = known.count("language") != 0;
    forEachFormula(workbook, [&](const FormulaPlace& at) {
        try {
            checkFormula(parseFormula(at.formula), known);
            const bool inTable = at.in == FormulaPlace::In::Column || at.in == FormulaPlace::In::Fixed;
            const TablePlace* own = inTable ? &table(at.table->name) : nullptr;
            const std::string made = expand(at.formula, own, inTable ? own->firstRow + 1 : 0, &names_);
            if (at.in == FormulaPlace::In::Name) names_[at.name] = made;
        } catch (const std::logic_error& error) {
            throw std::logic_error(at.where + ": " + error.what() + " in " + at.formula);
        }
    });
}

void Layout::checkCharts() const {
    for (const Sheet& sheet : workbook_.sheets)
        for (const Part& part : sheet.parts)
            if (const Chart* chart = std::get_if<Chart>(&part))
                for (const Chart::Series& series : chart->series) try {
                        chartRange(series, series.x);
                        chartRange(series, series.y);
                    } catch (const std::logic_error& error) {
                        throw std::logic_error(sheet.name + ", chart " + chart->title + ": " + error.what());
                    }
}

std::set<std::string> Layout::knownNames() const {
    std::set<std::string> known;
    for (const Sheet& sheet : workbook_.sheets)
        for (const Part& part : sheet.parts)
            if (const Form* form = std::get_if<Form>(&part)) {
                known.insert(formRangeName(form->name));
                for (const Field& field : form->fields) known.insert(field.name);
            }
    for (const auto& [name, place] : tables_) known.insert(tableRangeName(name));
    for (const auto& [name, block] : blocks_) known.insert(name);
    for (const auto& [name, expression] : names_) known.insert(name);
    return known;
}

void Layout::addBlock(const Block& block) {
    if (!blocks_.emplace(block.name, &block).second)
        throw std::logic_error("two blocks are named " + block.name);
    std::set<std::string> headings;
    bool pens = false;
    for (const BlockColumn& column : block.columns) {
        if (pens && !column.pen)
            throw std::logic_error("block " + block.name + ": room to write comes behind all other columns");
        pens = column.pen;
    }
    for (const BlockColumn& column : block.columns)
        if (!headings.insert(column.heading).second)
            throw std::logic_error("block " + block.name + " has two columns " + column.heading);
    if (block.columns.empty() || (block.table.empty() && block.rows < 1))
        throw std::logic_error("block " + block.name + " has no cells");
}

int Layout::heightOf(const Block& block) const {
    if (block.table.empty()) return block.rows;
    return table(block.table).table->rows + 2 + workbook_.blockSpare;
}

void Layout::place(std::size_t s) {
    const Sheet& sheet = workbook_.sheets[s];
    const int taken = columnsTaken(sheet);
    int row = titleRows;
    for (const Part& part : sheet.parts) {
        Placed place{&part, {0, row}, row, row};
        if (!startsPart(part)) {
            placed_[s].push_back(place);
            continue;
        }
        if (const Form* form = std::get_if<Form>(&part)) {
            place.firstRow = row + (form->heading.empty() ? 0 : 1);
            place.lastRow = place.firstRow + static_cast<int>(form->fields.size()) - 1;
        } else if (const Table* table = std::get_if<Table>(&part)) {
            place.firstRow = row + 2;
            place.lastRow = place.firstRow + table->rows + 1;
            TablePlace& known = tables_.at(table->name);
            known.headingRow = row;
            known.firstRow = place.firstRow;
            known.lastRow = place.lastRow;
            known.firstHelper = columnsShown(*table);
            known.helperShift = taken - known.firstHelper;
        } else if (const Paragraphs* text = std::get_if<Paragraphs>(&part)) {
            place.firstRow = row + (text->heading.empty() ? 0 : 1);
            place.lastRow = place.firstRow + static_cast<int>(text->lines.size()) - 1;
        } else if (const Chart* chart = std::get_if<Chart>(&part)) {
            place.lastRow = row + chartRows(*chart) - 1;
        } else if (const Block* block = std::get_if<Block>(&part)) {
            place.firstRow = row + 2;
            place.lastRow = place.firstRow + heightOf(*block) - 1;
        }
        row = place.lastRow + 2;
        if (const Table* table = std::get_if<Table>(&part); table != nullptr && table->total) ++row;
        placed_[s].push_back(place);
    }
}

// In the order given: forms of what only formulas read, one under the other, and beside them the blocks.
void Layout::placeSideBySide(std::size_t s) {
    const int first = titleRows + 3;
    int column = 0, row = first;
    for (const Part& part : workbook_.sheets[s].parts) {
        if (const Form* form = std::get_if<Form>(&part); form != nullptr && (row > first || column == 0)) {
            const int next = row + static_cast<int>(form->fields.size());
            placed_[s].push_back({&part, {0, row}, row, next - 1});
            row = next + 1;
            column = form->noteSpan + 4;
            continue;
        }
        const Block* block = std::get_if<Block>(&part);
        if (block == nullptr)
            throw std::logic_error(workbook_.sheets[s].name +
                                   " holds workings: only forms and blocks stand there");
        placed_[s].push_back({&part, {column, titleRows}, first, first + heightOf(*block) - 1});
        column += static_cast<int>(block->columns.size()) + 1;
    }
}

int Layout::TablePlace::lastColumn() const { return columnAt(static_cast<int>(table->columns.size()) - 1); }

const Layout::TablePlace& Layout::table(const std::string& name) const {
    const auto found = tables_.find(name);
    if (found == tables_.end()) throw std::logic_error("no table is named " + name);
    return found->second;
}

int Layout::TablePlace::columnOf(const std::string& heading) const {
    for (std::size_t c = 0; c < table->columns.size(); ++c)
        if (table->columns[c].heading == heading) return columnAt(static_cast<int>(c));
    throw std::logic_error("table " + table->name + " has no column " + heading);
}

std::string Layout::columnRange(const std::string& name, const std::string& first,
                                const std::string& last) const {
    const TablePlace& place = table(name);
    const std::string from =
        "$" + columnName(place.columnOf(first)) + "$" + std::to_string(place.firstRow + 1);
    const std::string to = "$" + columnName(place.columnOf(last)) + "$" + std::to_string(place.lastRow + 1);
    return sheetRef(place.sheet) + from + ":" + to;
}

std::string Layout::headingCell(const std::string& name, const std::string& heading) const {
    const TablePlace& place = table(name);
    return sheetRef(place.sheet) + "$" + columnName(place.columnOf(heading)) + "$" +
           std::to_string(place.headingRow + 1);
}

std::string Layout::chartRange(const Chart::Series& series, const std::string& heading) const {
    return series.block.empty() ? columnRange(series.table, heading, heading)
                                : blockCells(series, heading, false);
}
std::string Layout::chartHeading(const Chart::Series& series) const {
    return series.block.empty() ? headingCell(series.table, series.y) : blockCells(series, series.y, true);
}

std::string Layout::blockCells(const Chart::Series& series, const std::string& heading,
                               bool headingAlone) const {
    const std::string& name = series.block;
    for (std::size_t s = 0; s < placed_.size(); ++s)
        for (const Placed& place : placed_[s]) {
            const Block* block = std::get_if<Block>(place.part);
            if (block == nullptr || block->name != name) continue;
            const std::size_t number = columnIn(*block, heading);
            if (number == 0) throw std::logic_error("block " + name + " has no column " + heading);
            const std::string column = "$" + columnName(place.at.column + static_cast<int>(number) - 1) + "$";
            const std::string sheet = sheetRef(workbook_.sheets[s].name);
            const int first = place.firstRow + 1 + series.firstRow;
            if (headingAlone) return sheet + column + std::to_string(place.firstRow);
            return sheet + column + std::to_string(first) + ":" + column +
                   std::to_string(series.rows > 0 ? first + series.rows - 1 : place.lastRow + 1);
        }
    throw std::logic_error("no block is named " + name);
}

std::string Layout::expand(const std::string& formula, const TablePlace* own, int row) const {
    return expand(formula, own, row, nullptr);
}

std::string Layout::expand(const std::string& formula, const TablePlace* own, int row, Names* used) const {
    // [column], {rule}, <block>, or quoted text, which stays as it is. A heading after < starts with a letter or % and
    // holds none of the signs of a formula, so that comparisons are never taken for one.
    static const std::regex marks(
        R"re(\[([^\]\[]+)\]|\{([a-z][a-z0-9]*(?:\.[a-z0-9]+)*)\}|<([A-Za-z%][^<>=()\[\]{}";&+*]*(?::(?:\*|[0-9]+))?)>|"[^"]*")re");
    // The crew's page chooses its language itself.
    const bool follows = bilingual_ && formula.find("paper_language") == std::string::npos;
    std::string out;
    auto next = formula.begin();
    std::ptrdiff_t braces = 0;  // of arrays that are open
    for (std::sregex_iterator match(formula.begin(), formula.end(), marks), end; match != end; ++match) {
        out.append(next, (*match)[0].first);
        braces += std::count(next, (*match)[0].first, '{') - std::count(next, (*match)[0].first, '}');
        next = (*match)[0].second;
        if ((*match)[1] == "#") {
            if (own == nullptr) throw std::logic_error("[#] outside a table");
            out += rowOf(*own, used);
        } else if ((*match)[1].matched) {
            out += ofTable((*match)[1], own, row);
        } else if ((*match)[2].matched) {
            out += rule((*match)[2], used);
        } else if ((*match)[3].matched) {
            out += ofBlock((*match)[3], own, used);
        } else {
            // An array in the formula takes no names.
            out += follows && braces == 0 ? quoted((*match)[0], used) : (*match)[0].str();
        }
    }
    out.append(next, formula.end());
    return out;
}

// By name, where the workbook speaks two languages and the text has its Spanish.
std::string Layout::quoted(const std::string& text, Names* used) const {
    const std::string english = text.substr(1, text.size() - 2);
    const std::optional<std::string> spanish = inSpanish(english);
    if (!spanish) return text;
    const std::string name = sayName(english), expression = sayExpression(english, *spanish);
    if (used != nullptr && used->emplace(name, expression).first->second != expression)
        throw std::logic_error("two texts have the name " + name);
    return name;
}

std::string Layout::blockFormula(const Sheet& sheet, const Block& block, int first, int last) const {
    const std::string formula = expand(block.formula, nullptr, first);
    if (sheet.workings) return formula;
    // An answer with fewer rows than the block leaves #N/A below it: a condition over all rows makes it as tall.
    return "IFERROR(IF(ROW($A$" + std::to_string(first + 1) + ":$A$" + std::to_string(last + 1) + ");" +
           formula + ");\"\")";
}

std::string Layout::ofTable(const std::string& mark, const TablePlace* own, int row) const {
    if (const auto dot = mark.find('.'); dot != std::string::npos && tables_.count(mark.substr(0, dot))) {
        const std::string name = mark.substr(0, dot);
        const std::string columns = mark.substr(dot + 1);
        const auto& all = table(name).table->columns;
        if (columns == "*") return columnRange(name, all.front().heading, all.back().heading);
        const auto colon = columns.find(':');
        return columnRange(name, columns.substr(0, colon),
                           colon == std::string::npos ? columns : columns.substr(colon + 1));
    }
    if (own == nullptr) throw std::logic_error("[" + mark + "] is not a table's column");
    const bool above = mark[0] == '^';
    return "$" + columnName(own->columnOf(above ? mark.substr(1) : mark)) +
           std::to_string(row + (above ? 0 : 1));
}

std::string Layout::ofBlock(const std::string& mark, const TablePlace* own, Names* used) const {
    const Block* block = nullptr;
    std::string heading = mark, row;
    if (const auto dot = mark.find('.'); dot != std::string::npos && blocks_.count(mark.substr(0, dot))) {
        block = blocks_.at(mark.substr(0, dot));
        heading = mark.substr(dot + 1);
        if (const auto colon = heading.find(':'); colon != std::string::npos) {
            row = heading.substr(colon + 1) == "*" ? "0" : heading.substr(colon + 1);
            heading.resize(colon);
        }
    } else if (own != nullptr) {
        for (const auto& [name, candidate] : blocks_) {
            if (candidate->table != own->table->name || columnIn(*candidate, heading) == 0) continue;
            if (block != nullptr)
                throw std::logic_error("<" + mark + "> stands in " + block->name + " and in " + name +
                                       ": name the block");
            block = candidate;
        }
    }
    const std::size_t column = block == nullptr ? 0 : columnIn(*block, heading);
    if (column == 0) throw std::logic_error("<" + mark + ">: no block of this table has such a column");
    if (row.empty()) {
        if (own == nullptr)
            throw std::logic_error("<" + mark + "> outside a table asks for a row behind a colon");
        row = rowOf(*own, used);
    }
    return "INDEX(" + block->name + ";" + row + ";" + std::to_string(column) + ")";
}

// A name, because it is shorter and reads better than what it stands for.
std::string Layout::rowOf(const TablePlace& own, Names* used) const {
    const std::string name = rowName(own.table->name);
    if (used != nullptr)
        (*used)[name] = "ROW()-ROW(" + sheetRef(own.sheet) + "$A$" + std::to_string(own.firstRow + 1) + ")+1";
    return name;
}

// By its key and not by its place, so that Rules may be sorted.
std::string Layout::rule(const std::string& key, Names* used) const {
    if (rules_.count(key) == 0) throw std::logic_error("no rule has the key " + key);
    const std::string name = ruleName(key);
    if (used != nullptr)
        (*used)[name] = "VLOOKUP(\"" + key + "\";" + columnRange("Rules", "Key", "Value") + ";2;0)";
    return name;
}

std::string Layout::handed(const TablePlace& place) const {
    const std::string range = columnRange(place.table->name, place.table->handedFrom, place.table->handedTo);
    // From the row of headings, two above the thin row.
    const auto first = range.find('.') + 1;
    const std::string column = "$" + columnName(place.columnOf(place.table->handedFrom)) + "$";
    return handedCells(range.substr(0, first) + column + std::to_string(place.headingRow + 1) +
                       range.substr(range.rfind(':')));
}

}  // namespace trenchbook::sheets
