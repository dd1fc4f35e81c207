// The columns that the functions over lines share: names, lengths, pipes, slopes, one row a segment. One cell
// that cannot be used spoils its own row and is told in words; columns of different height are refused.
#pragma once

#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include "catalog/arguments.h"
#include "catalog/common.h"
#include "trenchbook/lines/network.h"
#include "trenchbook/lines/run.h"

namespace trenchbook::addin {

inline Argument fromArgument() {
    return {.name = "from",
            .measure = Measure::Words,
            .says = {"upper node of each run", "nodo de arriba de cada tramo"},
            .column = true};
}
inline Argument toArgument() {
    return {.name = "to",
            .measure = Measure::Words,
            .says = {"lower node of each run", "nodo de abajo de cada tramo"},
            .column = true};
}
inline Argument columnOf(Argument argument) {
    argument.column = true;
    return argument;
}
inline Argument optionally(Argument argument) {
    argument.optional = true;
    return argument;
}
inline Argument lengthColumn() {
    return {.name = "length",
            .measure = Measure::Feet,
            .says = {"length along the trench", "longitud a lo largo de la zanja"},
            .column = true,
            .limits = aboveZero};
}

// The sheet row of the first row given, the first of the later arguments: texts name other rows as the sheet
// counts them.
Argument firstRowArgument();
std::size_t firstRow(const Arguments& arguments);

// Whether an argument is a column here, and not one value for all rows nor left out.
inline bool isColumn(const Arguments& arguments, std::size_t index) {
    return arguments.range(index) != nullptr;
}

// The tree of the columns `from` and `to`: one for all functions that are given the same, while it is among the last few.
// Errors: a column of this function that is left out, different heights.
std::shared_ptr<const Network> readNetwork(const Arguments& arguments, std::size_t from, std::size_t to);

// Reads columns of one height into runs and gathers, row by row, what cannot be used.
class LineRows {
  public:
    LineRows(const Arguments& arguments, std::size_t rows) : arguments_(arguments), runs_(rows) {}

    // Blank cells are nullopt; text in a number's place and values outside the argument's limits cannot be used, and
    // are told under the heading that the column has on the sheets.
    template <class Kind>
    std::vector<std::optional<Kind>> quantities(std::size_t index, const char* heading = "") {
        std::vector<std::optional<Kind>> out(runs_.size());
        const std::vector<std::optional<double>> si = numbers(index, heading);
        for (std::size_t row = 0; row < si.size(); ++row)
            if (si[row]) out[row] = Kind::fromSi(*si[row]);
        return out;
    }
    // A column or one value for all rows; blank cells take `fallback`.
    std::vector<double> numbersOr(std::size_t index, double fallback, const char* heading = "");

    // The same into the runs.
    template <class Kind>
    void read(std::size_t index, std::optional<Kind> Run::*where, const char* heading) {
        const std::vector<std::optional<Kind>> cells = quantities<Kind>(index, heading);
        for (std::size_t row = 0; row < cells.size(); ++row) runs_[row].*where = cells[row];
    }
    void lengths(std::size_t index) { read(index, &Run::length, "Length"); }
    void pipes(std::size_t index);
    // Manning n by row: the cell, or the one value given; blank, the pipe's own holds.
    void roughness(std::size_t index);

    // What was read so far.
    const std::vector<Run>& runs() const& { return runs_; }
    std::vector<Run> runs() && { return std::move(runs_); }
    // What is wrong with a row's cells, the first found; empty when nothing is.
    std::vector<Text> trouble() const;

  private:
    std::vector<std::optional<double>> numbers(std::size_t index, const char* heading);

    const Arguments& arguments_;
    std::vector<Run> runs_;
};

}  // namespace trenchbook::addin
