#include "kit/layout.h"

#include <regex>

namespace trenchbook::sheets {
namespace {

constexpr int titleRows = 3;  // title, purpose, one blank row

bool startsPart(const Part& part) { return !std::holds_alternative<Break>(part); }

int chartRows(const Chart& chart) { return static_cast<int>(chart.height / 4.9) + 2; }

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
    for (std::size_t s = 0; s < workbook.sheets.size(); ++s) {
        const Sheet& sheet = workbook.sheets[s];
        int row = titleRows;
        for (const Part& part : sheet.parts) {
            if (!startsPart(part)) {
                placed_[s].push_back({&part, {0, row}, row, row});
                continue;
            }
            Placed place{&part, {0, row}, row, row};
            if (const Form* form = std::get_if<Form>(&part)) {
                place.firstRow = row + (form->heading.empty() ? 0 : 1);
                place.lastRow = place.firstRow + static_cast<int>(form->fields.size()) - 1;
            } else if (const Table* table = std::get_if<Table>(&part)) {
                place.firstRow = row + 2;
                place.lastRow = place.firstRow + table->rows + 1;
                if (!tables_
                         .emplace(table->name,
                                  TablePlace{sheet.name, table, row, place.firstRow, place.lastRow, 0})
                         .second)
                    throw std::logic_error("two tables are named " + table->name);
            } else if (const Paragraphs* text = std::get_if<Paragraphs>(&part)) {
                place.firstRow = row + (text->heading.empty() ? 0 : 1);
                place.lastRow = place.firstRow + static_cast<int>(text->lines.size()) - 1;
            } else if (const Chart* chart = std::get_if<Chart>(&part)) {
                place.lastRow = row + chartRows(*chart) - 1;
            }
            row = place.lastRow + 2;
            if (const Table* table = std::get_if<Table>(&part); table != nullptr && table->total) ++row;
            placed_[s].push_back(place);
        }
    }
    // Blocks stand side by side, all from the same row, in the order given; their height follows their table.
    for (std::size_t s = 0; s < workbook.sheets.size(); ++s) {
        int column = 0;
        for (Placed& place : placed_[s]) {
            const Block* block = std::get_if<Block>(place.part);
            if (block == nullptr) continue;
            const TablePlace& source = table(block->table);
            place.at = {column, titleRows};
            place.firstRow = titleRows + 3;
            place.lastRow = place.firstRow + (source.lastRow - source.firstRow) + workbook.blockSpare;
            column += block->columns + 1;
        }
    }
}

const Layout::TablePlace& Layout::table(const std::string& name) const {
    const auto found = tables_.find(name);
    if (found == tables_.end()) throw std::logic_error("no table is named " + name);
    return found->second;
}

namespace {

int columnOf(const Layout::TablePlace& place, const std::string& heading) {
    for (std::size_t c = 0; c < place.table->columns.size(); ++c)
        if (place.table->columns[c].heading == heading) return place.firstColumn + static_cast<int>(c);
    throw std::logic_error("table " + place.table->name + " has no column " + heading);
}

}  // namespace

std::string Layout::columnRange(const std::string& name, const std::string& first,
                                const std::string& last) const {
    const TablePlace& place = table(name);
    const std::string from =
        "$" + columnName(columnOf(place, first)) + "$" + std::to_string(place.firstRow + 1);
    const std::string to = "$" + columnName(columnOf(place, last)) + "$" + std::to_string(place.lastRow + 1);
    return sheetRef(place.sheet) + from + ":" + to;
}

std::string Layout::headingCell(const std::string& name, const std::string& heading) const {
    const TablePlace& place = table(name);
    return sheetRef(place.sheet) + "$" + columnName(columnOf(place, heading)) + "$" +
           std::to_string(place.headingRow + 1);
}

std::string Layout::expand(const std::string& formula, const TablePlace* own, int row) const {
    static const std::regex marks(R"(\[([^\]\[]+)\]|\{([a-z][a-z0-9]*(?:\.[a-z0-9]+)*)\}|"[^"]*")");
    std::string out;
    auto next = formula.begin();
    for (std::sregex_iterator match(formula.begin(), formula.end(), marks), end; match != end; ++match) {
        out.append(next, (*match)[0].first);
        next = (*match)[0].second;
        const std::string mark = (*match)[1];
        const std::string rule = (*match)[2];
        if (!rule.empty()) {
            out += "VLOOKUP(\"" + rule + "\";" + columnRange("Rules", "Key", "Value") + ";2;0)";
        } else if (mark.empty()) {
            out += (*match)[0];  // quoted text stays as it is
        } else if (mark == "#") {
            if (own == nullptr) throw std::logic_error("[#] outside a table: " + formula);
            out += "(ROW()-ROW($A$" + std::to_string(own->firstRow + 1) + ")+1)";
        } else if (const auto dot = mark.find('.');
                   dot != std::string::npos && tables_.count(mark.substr(0, dot))) {
            const std::string name = mark.substr(0, dot);
            const std::string columns = mark.substr(dot + 1);
            const auto colon = columns.find(':');
            if (columns == "*") {
                out += columnRange(name, table(name).table->columns.front().heading,
                                   table(name).table->columns.back().heading);
            } else {
                out += columnRange(name, columns.substr(0, colon),
                                   colon == std::string::npos ? columns : columns.substr(colon + 1));
            }
        } else {
            if (own == nullptr) throw std::logic_error("[" + mark + "] is not a table's column: " + formula);
            const bool above = mark[0] == '^';
            out += "$" + columnName(columnOf(*own, above ? mark.substr(1) : mark)) +
                   std::to_string(row + (above ? 0 : 1));
        }
    }
    out.append(next, formula.end());
    return out;
}

}  // namespace trenchbook::sheets
