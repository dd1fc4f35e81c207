#include "c/given_book.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace trenchbook::addin {
namespace {

using sheets::BookPart;
using sheets::Rect;

int whole(double number) {
    if (!(std::fabs(number) <= 1e9) || number != std::floor(number))
        throw Malformed("a place, a size or a count is a whole number");
    return static_cast<int>(number);
}

int whole(const Cell& cell) {
    const double* number = std::get_if<double>(&cell);
    if (number == nullptr) throw Malformed("a place has a number of each");
    return whole(*number);
}

std::string words(const Cell& cell) {
    const std::string* text = std::get_if<std::string>(&cell);
    return text == nullptr ? "" : *text;
}

Rect rectAt(const Range& range, std::size_t row, std::size_t first) {
    const auto at = [&](std::size_t n) { return whole(range.at(row, first + n)); };
    return {at(0), at(1), at(2), at(3), at(4)};
}

void requireColumns(const Range& range, std::size_t columns, const char* what) {
    if (range.rows != 0 && range.columns != columns) throw Malformed(what);
}

sheets::Value valueOf(const Cell& cell) {
    if (const double* number = std::get_if<double>(&cell)) return *number;
    if (const std::string* text = std::get_if<std::string>(&cell)) return *text;
    return {};
}

std::vector<bool> flags(const std::string& letters, std::size_t count, const char* what) {
    if (letters.size() != count) throw Malformed(what);
    std::vector<bool> read(count);
    std::transform(letters.begin(), letters.end(), read.begin(), [](char c) { return c == '1'; });
    return read;
}

// What the commands look up must lie in the workbook.
void requireInside(const sheets::Book& book, const Rect& at) {
    if (at.sheet < 0 || static_cast<std::size_t>(at.sheet) >= book.sheets.size() || at.column < 0 ||
        at.row < 0 || at.lastColumn < at.column || at.lastRow < at.row)
        throw Malformed("a place lies outside the workbook");
}

}  // namespace

const Value& GivenValues::next() {
    if (values_.empty()) throw Malformed("a value is missing");
    const Value& first = values_.front();
    values_ = values_.subspan(1);
    return first;
}

std::string GivenValues::text() {
    const std::string* given = std::get_if<std::string>(&next());
    if (given == nullptr) throw Malformed("a text is asked for");
    return *given;
}

std::optional<std::string> GivenValues::textIfAny() {
    if (!values_.empty() && std::holds_alternative<Nothing>(values_.front())) {
        next();
        return std::nullopt;
    }
    return text();
}

double GivenValues::number() {
    const double* given = std::get_if<double>(&next());
    if (given == nullptr) throw Malformed("a number is asked for");
    return *given;
}

sheets::Value GivenValues::cell() {
    const Value& given = next();
    if (const double* number = std::get_if<double>(&given)) return *number;
    if (const std::string* text = std::get_if<std::string>(&given)) return *text;
    return {};
}

Range GivenValues::range() {
    const Range* given = std::get_if<Range>(&next());
    if (given == nullptr) throw Malformed("a range is asked for");
    return *given;
}

sheets::Place GivenValues::place() {
    const Range at = range();
    if (at.cells.size() != 3) throw Malformed("a place has sheet, column and row");
    return {whole(at.cells[0]), whole(at.cells[1]), whole(at.cells[2])};
}

sheets::BookSheet GivenValues::sheet() {
    sheets::BookSheet made;
    made.name = text();
    made.visible = flag();
    const Range cells = range();
    made.columns = static_cast<int>(cells.columns);
    made.rows = static_cast<int>(cells.rows);
    made.cells.reserve(cells.cells.size());
    for (const Cell& cell : cells.cells) made.cells.push_back(valueOf(cell));
    made.formulas = flags(text(), cells.cells.size(), "a sheet has a mark for each cell");
    made.hidden = flags(text(), cells.columns, "a sheet has a mark for each column");
    const Range printed = range();
    requireColumns(printed, 5, "a print area has sheet, column, row, last column, last row");
    if (printed.rows == 1) made.printed = rectAt(printed, 0, 0);
    made.drawnTo = whole(number());
    return made;
}

sheets::Book GivenValues::book() {
    sheets::Book made;
    for (int left = whole(number()); left > 0; --left) made.sheets.push_back(sheet());
    const Range names = range();
    requireColumns(names, 6, "a name has sheet, column, row, last column, last row");
    for (std::size_t n = 0; n < names.rows; ++n) {
        const Rect at = rectAt(names, n, 1);
        requireInside(made, at);
        made.names[words(names.at(n, 0))] = at;
    }
    const Range remembered = range();
    requireColumns(remembered, 2, "what is remembered has a name and a text");
    for (std::size_t n = 0; n < remembered.rows; ++n)
        made.remembered[words(remembered.at(n, 0))] = words(remembered.at(n, 1));
    const Range selected = range();
    if (selected.cells.size() == 3) {
        made.selected =
            sheets::Place{whole(selected.cells[0]), whole(selected.cells[1]), whole(selected.cells[2])};
        requireInside(made, {made.selected->sheet, made.selected->column, made.selected->row,
                             made.selected->column, made.selected->row});
    }
    std::vector<std::string> sheetNames;
    for (const sheets::BookSheet& sheet : made.sheets) sheetNames.push_back(sheet.name);
    made.parts = sheets::partsAmong(made.names, sheetNames);
    return made;
}

void GivenValues::end() const {
    if (!values_.empty()) throw Malformed("there are more values than the command asks for");
}

}  // namespace trenchbook::addin
