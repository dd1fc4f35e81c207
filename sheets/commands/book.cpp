#include "commands/book.h"

#include <algorithm>
#include <stdexcept>

#include "kit/names.h"

namespace trenchbook::sheets {

std::string addressOf(const std::string& sheet, const Place& place) {
    std::string column;
    for (int at = place.column; at >= 0; at = at / 26 - 1)
        column.insert(column.begin(), static_cast<char>('A' + at % 26));
    return sheet + "." + column + std::to_string(place.row + 1);
}

namespace {

std::optional<std::size_t> within(const Book& book, const Place& place) {
    if (place.sheet < 0 || static_cast<std::size_t>(place.sheet) >= book.sheets.size()) return std::nullopt;
    const BookSheet& sheet = book.sheets[static_cast<std::size_t>(place.sheet)];
    if (place.column < 0 || place.row < 0 || place.column >= sheet.columns || place.row >= sheet.rows)
        return std::nullopt;
    return static_cast<std::size_t>(place.row) * static_cast<std::size_t>(sheet.columns) +
           static_cast<std::size_t>(place.column);
}

using Is = BookPart::Is;

std::optional<std::pair<std::string, Is>> kindOf(const std::string& name) {
    for (const auto& kind : {std::pair(tableRangeName(""), Is::Table), std::pair(formRangeName(""), Is::Form),
                             std::pair(listRangeName(""), Is::List)})
        if (name.starts_with(kind.first)) return kind;
    return std::nullopt;
}

}  // namespace

bool isPartName(const std::string& name) { return kindOf(name).has_value(); }

std::vector<BookPart> partsAmong(const std::map<std::string, Rect>& names,
                                 const std::vector<std::string>& sheetNames) {
    std::vector<BookPart> parts;
    for (const auto& [name, at] : names)
        if (const auto kind = kindOf(name))
            parts.push_back({kind->second,
                             partName(name, kind->first, sheetNames.at(static_cast<std::size_t>(at.sheet))),
                             at});
    std::sort(parts.begin(), parts.end(), [](const BookPart& one, const BookPart& other) {
        return std::pair(one.at.sheet, one.at.row) < std::pair(other.at.sheet, other.at.row);
    });
    return parts;
}

const Value& Book::cell(const Place& place) const {
    static const Value blank;
    const auto at = within(*this, place);
    return at ? sheets[static_cast<std::size_t>(place.sheet)].cells[*at] : blank;
}

bool Book::isFormula(const Place& place) const {
    const auto at = within(*this, place);
    return at && sheets[static_cast<std::size_t>(place.sheet)].formulas[*at];
}

bool Book::isHidden(int sheet, int column) const {
    const std::vector<bool>& hidden = sheets.at(static_cast<std::size_t>(sheet)).hidden;
    return static_cast<std::size_t>(column) < hidden.size() && hidden[static_cast<std::size_t>(column)];
}

const BookPart* Book::part(BookPart::Is is, const std::string& name) const {
    for (const BookPart& one : parts)
        if (one.is == is && one.name == name) return &one;
    return nullptr;
}

const BookPart& Book::tableFor(const std::string& name) const {
    if (const BookPart* found = table(name)) return *found;
    throw std::runtime_error("the workbook has no " + name);
}

const BookPart& Book::formFor(const std::string& name) const {
    if (const BookPart* found = form(name)) return *found;
    throw std::runtime_error("the workbook has no " + name);
}

std::vector<std::string> Book::headings(const BookPart& table) const {
    std::vector<std::string> all;
    for (int column = table.at.column; column <= table.at.lastColumn; ++column)
        all.push_back(textOf(cell({table.at.sheet, column, table.at.row})));
    return all;
}

std::optional<int> Book::findColumn(const BookPart& table, const std::string& heading) const {
    for (int column = table.at.column; column <= table.at.lastColumn; ++column)
        if (textOf(cell({table.at.sheet, column, table.at.row})) == heading) return column;
    return std::nullopt;
}

int Book::column(const BookPart& table, const std::string& heading) const {
    if (const auto found = findColumn(table, heading)) return *found;
    throw std::runtime_error("the workbook's table " + table.name + " has no " + heading);
}

std::optional<int> Book::findRow(const BookPart& form, const std::string& label) const {
    for (int row = form.at.row; row <= form.at.lastRow; ++row)
        if (textOf(cell({form.at.sheet, form.at.column, row})) == label) return row;
    return std::nullopt;
}

int Book::row(const BookPart& form, const std::string& label) const {
    if (const auto found = findRow(form, label)) return *found;
    throw std::runtime_error("the workbook's form " + form.name + " has no " + label);
}

std::vector<Row> Book::rows(const BookPart& table) const {
    const std::vector<std::string> all = headings(table);
    std::vector<int> shown;  // between a narrow table and its hidden columns lie columns without a heading
    for (int column = table.at.column; column <= table.at.lastColumn; ++column)
        if (!isHidden(table.at.sheet, column) &&
            !all[static_cast<std::size_t>(column - table.at.column)].empty())
            shown.push_back(column);
    std::vector<Row> found;
    for (int row = table.firstReady(); row <= table.lastReady(); ++row) {
        std::vector<Value> values;
        for (const int column : shown) values.push_back(cell({table.at.sheet, column, row}));
        if (isBlankRow(values)) continue;
        Row& made = found.emplace_back();
        made.ready = row - table.firstReady();
        for (std::size_t c = 0; c < shown.size(); ++c)
            made.cells[all[static_cast<std::size_t>(shown[c] - table.at.column)]] = values[c];
    }
    return found;
}

std::vector<Value> Book::typed(const BookPart& table, const std::string& heading) const {
    const auto column = findColumn(table, heading);
    std::vector<Value> values;
    if (!column) return values;
    for (int row = table.firstReady(); row <= table.lastReady(); ++row) {
        const Place place{table.at.sheet, *column, row};
        values.push_back(isFormula(place) ? Value() : cell(place));
    }
    return values;
}

const Value& Book::value(const std::string& name) const {
    static const Value blank;
    const auto found = names.find(name);
    return found == names.end() ? blank
                                : cell({found->second.sheet, found->second.column, found->second.row});
}

Language languageOf(const Book& book) {
    for (const char* name : {"job_language", "language"})
        if (const std::string word = nameKey(book.text(name)); !word.empty())
            return word == "es" || word.rfind("esp", 0) == 0 || word == "spanish" ? Language::Spanish
                                                                                  : Language::English;
    return Language::English;
}
std::string said(const Book& job, const Text& sentence) { return sentence.in(languageOf(job)); }

}  // namespace trenchbook::sheets
