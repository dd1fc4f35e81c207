#include "job/row_cells.h"

#include <set>
#include <stdexcept>
#include <unordered_map>

#include "job/cell_words.h"
#include "trenchbook/core/error.h"
#include "trenchbook/lines/network.h"

namespace trenchbook {
namespace {

constexpr std::size_t none = static_cast<std::size_t>(-1);

// The argument that a table goes by in errors: "runs".
std::string argumentOf(InputTable table) { return nameKey(tableWord(table).en); }

[[noreturn]] void refuseTable(InputTable table, const Text& says) {
    throw Error(Error::Kind::BadArgument, argumentOf(table), tableWord(table) + Text::same(": ") + says);
}

// Listed headings by the name they are matched by.
std::unordered_map<std::string, std::size_t> listed(std::span<const InputColumn> columns) {
    std::unordered_map<std::string, std::size_t> places;
    for (std::size_t i = 0; i < columns.size(); ++i) places.emplace(nameKey(columns[i].heading), i);
    return places;
}

// Whether the words are those of a unit row: "ft", "mm", "slope".
bool isUnit(const std::string& words) {
    static const std::set<std::string> known = [] {
        std::set<std::string> units = {"slope", "pendiente", "0 to 1", "0 a 1", "%"};
        for (int kind = 0; kind <= static_cast<int>(CellKind::Date); ++kind) {
            const UnitInfo& unit = info(unitOf(static_cast<CellKind>(kind)));
            for (const std::string& written : {unit.us.en, unit.us.es, unit.metric.en, unit.metric.es})
                if (!written.empty()) units.insert(nameKey(written));
        }
        return units;
    }();
    return known.contains(nameKey(words));
}

}  // namespace

std::string wordsOf(const Cell& cell) {
    if (const double* number = std::get_if<double>(&cell)) return plain(*number, 6);
    const std::string* text = std::get_if<std::string>(&cell);
    return text == nullptr ? "" : std::string(cells::trimmed(*text));
}

void RowCells::read(const std::vector<const Cell*>& cells) {
    readings_.clear();
    readings_.reserve(columns_.size());
    for (std::size_t i = 0; i < columns_.size(); ++i)
        readings_.push_back(cells[i] == nullptr ? CellReading{} : readCell(columns_[i], *cells[i], units_));
    next_ = 0;
}

bool RowCells::blank() const {
    for (const CellReading& reading : readings_)
        if (!reading.blank) return false;
    return true;
}

std::vector<Unusable> RowCells::unusable() const {
    std::vector<Unusable> all;
    for (const CellReading& reading : readings_)
        if (reading.unusable) all.push_back(*reading.unusable);
    return all;
}

const CellReading& RowCells::operator[](std::string_view heading) const {
    for (std::size_t tried = 0; tried < columns_.size(); ++tried) {
        const std::size_t place = (next_ + tried) % columns_.size();
        if (columns_[place].heading != heading) continue;
        next_ = place + 1;
        return readings_[place];
    }
    throw std::logic_error("no such column: " + std::string(heading));
}

std::optional<Pipe> RowCells::pipe(std::string_view heading) const {
    const std::vector<Pipe>& pipes = (*this)[heading].pipes;
    return pipes.empty() ? std::nullopt : std::optional(pipes.front());
}

std::optional<Date> RowCells::date(std::string_view heading) const {
    const std::optional<double>& days = number(heading);
    return days ? std::optional(Date{static_cast<int>(*days)}) : std::nullopt;
}

HeadedTable::HeadedTable(InputTable table, const Grid& grid)
    : columns_(inputColumns(table)), grid_(grid), places_(columns_.size(), none), cells_(columns_.size()) {
    if (grid.rows == 0) return;
    const std::unordered_map<std::string, std::size_t> headings = listed(columns_);
    for (std::size_t column = 0; column < grid.columns; ++column) {
        const auto found = headings.find(nameKey(wordsOf(grid.at(0, column))));
        if (found == headings.end()) continue;
        if (places_[found->second] != none) {
            const std::string heading = columns_[found->second].heading;
            refuseTable(table, {"two columns are headed " + heading, "dos columnas se llaman " + heading});
        }
        places_[found->second] = column;
    }
    for (std::size_t i = 0; i < columns_.size(); ++i)
        if (columns_[i].needed && places_[i] == none) {
            const std::string heading = columns_[i].heading;
            refuseTable(table, {"no column is headed " + heading + "; the first row holds the headings",
                                "ninguna columna se llama " + heading +
                                    "; la primera fila lleva los "
                                    "encabezados"});
        }
    if (isUnitRow(1)) first_ = 2;
}

bool HeadedTable::isUnitRow(std::size_t row) const {
    if (row >= grid_.rows) return false;
    bool any = false;
    for (std::size_t i = 0; i < columns_.size(); ++i) {
        if (places_[i] == none) continue;
        const std::string words = wordsOf(grid_.at(row, places_[i]));
        if (words.empty()) continue;
        // A name may be "in" or "m": then it is a row.
        if (columns_[i].kind == CellKind::Name || !isUnit(words)) return false;
        any = true;
    }
    return any;
}

const std::vector<const Cell*>& HeadedTable::cells(std::size_t row) {
    for (std::size_t i = 0; i < columns_.size(); ++i)
        cells_[i] = places_[i] == none ? nullptr : &grid_.at(first_ + row, places_[i]);
    return cells_;
}

std::vector<const Cell*> formCells(InputTable table, const Grid& grid) {
    const std::span<const InputColumn> columns = inputColumns(table);
    std::vector<const Cell*> cells(columns.size());
    if (grid.rows == 0) return cells;
    if (grid.columns < 2)
        refuseTable(table, {"two columns, label and value",
                            "dos columnas, rótulo y "
                            "valor"});
    const std::unordered_map<std::string, std::size_t> labels = listed(columns);
    for (std::size_t row = 0; row < grid.rows; ++row) {
        const auto found = labels.find(nameKey(wordsOf(grid.at(row, 0))));
        if (found == labels.end()) continue;
        if (cells[found->second] != nullptr) {
            const std::string label = columns[found->second].heading;
            refuseTable(table,
                        {"the label " + label + " stands twice", "el rótulo " + label + " está dos veces"});
        }
        cells[found->second] = &grid.at(row, 1);
    }
    return cells;
}

}  // namespace trenchbook
