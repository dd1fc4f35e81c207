// The decoded arguments of one call: checks types and limits, applies defaults, turns the user's units into the
// engine's quantities. Every refusal is a trenchbook::Error that names the argument.
#pragma once

#include <algorithm>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "catalog/function.h"
#include "trenchbook/core/error.h"
#include "trenchbook/core/units.h"
#include "trenchbook/pipe/stock.h"

namespace trenchbook::addin {

class Arguments {
  public:
    Arguments(const Function& function, std::span<const Value> values);

    UnitSystem units() const { return units_; }
    Language language() const { return language_; }
    const Function& function() const { return function_; }

    // Left out, or empty text. A blank cell given alone counts as the number 0, as Calc delivers it.
    bool given(std::size_t index) const;
    std::size_t count() const { return values_.size(); }
    const Value& raw(std::size_t index) const;
    // The values of a variadic argument.
    std::span<const Value> rest(std::size_t first) const {
        return values_.subspan(std::min(first, values_.size()));
    }

    // Single values. Without a fallback a missing argument is an error.
    double number(std::size_t index) const;
    double number(std::size_t index, double fallback) const;
    double later(std::size_t index, double fallback) const;  // of the function's later arguments
    // One of them that is a table; empty where it is left out. Errors: BadArgument of it for a single value.
    Grid laterTable(std::size_t index) const;
    std::string text(std::size_t index) const;
    std::string text(std::size_t index, const std::string& fallback) const;
    Slope slope(std::size_t index) const;
    Pipe pipe(std::size_t index) const;
    std::vector<Pipe> pipes(std::size_t index) const;  // a column; empties skipped
    // A stock name, or a bare bore in the user's unit (in inches where the text has an inch mark).
    Pipe pipeNamed(const std::string& text) const;
    double roughness(std::size_t index, const Pipe& pipe) const;  // defaults to the pipe's own

    // A quantity in the unit that the catalog gives the argument: quantity<Length>(0), quantity<Flow>(2,
    // fallback).
    template <class Kind>
    Kind quantity(std::size_t index) const {
        return Kind::fromSi(si(index));
    }
    template <class Kind>
    Kind quantity(std::size_t index, Kind fallback) const {
        return given(index) ? Kind::fromSi(si(index)) : fallback;
    }

    // Columns, one entry a row; a single value counts as one row. Empty cells and empty text are nullopt.
    // A cell that is not what the argument asks for makes strict readers throw; rowwise readers keep it as a
    // Bad entry, so that one bad cell spoils only its own row.
    std::size_t rows(std::size_t index) const;
    void requireSameRows(std::initializer_list<std::size_t> indexes) const;  // columns left out are ignored
    std::vector<double> numbers(std::size_t index) const;                    // strict; empties skipped
    template <class Kind>
    std::vector<Kind> quantities(std::size_t index) const {  // strict; empties skipped
        std::vector<Kind> kept;
        for (double si : siNumbers(index)) kept.push_back(Kind::fromSi(si));
        return kept;
    }
    // Per row: the words in a cell (numbers are written out, "3"), empty for an empty cell.
    std::vector<std::string> words(std::size_t index) const;

    struct Entry {
        // Bad is no number at all, Outside one that the argument's limits refuse.
        enum class State { Empty, Good, Bad, Outside } state = State::Empty;
        double si = 0;  // Good
        Text typed;     // Bad, Outside: what stands in the cell
        Text allowed;   // and what may stand there
    };
    // Per row, in SI; slopes and lengths may be the trade's text. All Empty when the argument is left out.
    std::vector<Entry> entries(std::size_t index, std::size_t rowCount) const;
    // The value of an entry that must be there; refused in a sentence that names the row.
    double required(std::size_t index, std::size_t row, const Entry& entry) const;

    const Range* range(std::size_t index) const;  // null when a single value was given

    // The answer in the function's unit for this call.
    double answer(double si) const;
    template <class Kind>
    double answer(Quantity<Kind> quantity) const {
        return answer(quantity.si());
    }
    // An answer in another measure than the function's own (columns of a block).
    double in(Measure measure, double si) const;
    template <class Kind>
    double in(Measure measure, Quantity<Kind> quantity) const {
        return in(measure, quantity.si());
    }
    // A quantity from a number in the user's unit (cells of a table).
    double from(Measure measure, double number) const;

    [[noreturn]] void refuse(std::size_t index, Text allowed) const;  // with the value as typed

  private:
    bool here(std::size_t index) const;
    double si(std::size_t index) const;
    double readCell(const Argument& argument, const Cell& cell) const;
    double cellToSi(std::size_t index, const Cell& cell) const;
    Entry entryOf(std::size_t index, const Cell& cell) const;
    Pipe cellToPipe(const Cell& cell) const;
    std::vector<double> siNumbers(std::size_t index) const;
    [[noreturn]] void refuseRow(std::size_t index, std::size_t row, const Text& typed,
                                const Text& allowed) const;
    const std::string& name(std::size_t index) const;

    const Function& function_;
    std::span<const Value> values_;
    std::size_t firstLater_ = 0;
    UnitSystem units_ = UnitSystem::US;
    Language language_ = Language::English;
};

// A value as it was typed, for messages: 3.5, "4 SRD35", "a range of 3 x 1".
Text asTyped(const Value& value);
// "1 row", "3 rows".
Text rowCount(std::size_t rows);
// In place of a value that is not there.
Text leftOut();

}  // namespace trenchbook::addin
