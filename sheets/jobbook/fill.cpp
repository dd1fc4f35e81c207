#include "jobbook/fill.h"

#include <algorithm>
#include <com/sun/star/sheet/XCellRangeData.hpp>
#include <com/sun/star/sheet/XSheetAnnotation.hpp>
#include <com/sun/star/sheet/XSheetAnnotationsSupplier.hpp>
#include <com/sun/star/text/XTextRange.hpp>
#include <set>

#include "jobbook/written.h"
#include "spanish/spanish.h"

namespace trenchbook::sheets {
namespace {

using css::uno::Any;
using css::uno::Sequence;

Any cellOf(const Value& value) {
    if (const double* number = std::get_if<double>(&value)) return Any(*number);
    return Any(wide(textOf(value)));  // no text empties the cell; a void value would be #N/A
}

void put(const Area& area, sal_Int32 column, sal_Int32 row, const std::vector<Value>& values) {
    if (values.empty()) return;
    const auto count = static_cast<sal_Int32>(values.size());
    Sequence<Sequence<Any>> data(count);
    for (sal_Int32 r = 0; r < count; ++r) {
        Sequence<Any> line(1);
        line.getArray()[0] = cellOf(values[static_cast<std::size_t>(r)]);
        data.getArray()[r] = line;
    }
    Reference<css::sheet::XCellRangeData>(area.range(column, row, column, row + count - 1), UNO_QUERY_THROW)
        ->setDataArray(data);
}

sal_Int32 columnOf(const FoundPart& part, const std::vector<std::string>& headings,
                   const std::string& heading) {
    auto found = std::find(headings.begin(), headings.end(), heading);
    if (const auto spanish = inSpanish(heading); found == headings.end() && spanish)  // on a paper
        found = std::find(headings.begin(), headings.end(), *spanish);
    if (found == headings.end())
        throw std::runtime_error("the workbook's table " + part.name + " has no " + heading);
    return part.area.at.StartColumn + static_cast<sal_Int32>(found - headings.begin());
}

// What came with the workbook in columns that the notes do not give: it belongs to rows that make way.
void clearContent(const FoundPart& part, const std::vector<std::string>& headings, const TableNotes& notes) {
    const Table& table = *notes.table;
    for (std::size_t c = 0; c < table.columns.size(); ++c) {
        if (std::find(notes.columns.begin(), notes.columns.end(), c) != notes.columns.end()) continue;
        bool filled = false;
        for (std::size_t r = 0; r < table.content.size(); ++r)
            filled = filled || !contentAt(table, r, c).empty();
        if (filled && isInput(table.columns[c].kind))
            put(part.area, columnOf(part, headings, table.columns[c].heading), part.firstReady(),
                std::vector<Value>(table.content.size()));
    }
}

void fill(const FoundPart& part, const TableNotes& notes) {
    const auto ready =
        static_cast<std::size_t>(std::max(part.lastReady() - part.firstReady() + 1, sal_Int32(0)));
    const bool fixed = hasFixedRows(*notes.table);
    if (!fixed && notes.rows.size() > ready)
        throw std::runtime_error("the workbook's table " + part.name + " has only " + std::to_string(ready) +
                                 " rows");
    const std::vector<std::string> headings = headingsOf(part);
    if (!fixed) clearContent(part, headings, notes);
    // Rows that came with the workbook make way for the ones given.
    const std::size_t rows =
        fixed ? notes.rows.size() : std::max(notes.rows.size(), notes.table->content.size());
    for (std::size_t c = 0; c < notes.columns.size(); ++c) {
        const Column& column = notes.table->columns[notes.columns[c]];
        const sal_Int32 at = columnOf(part, headings, column.heading);
        std::vector<Value> stretch;  // values one under the other that can be written at once
        std::size_t first = 0;
        const auto write = [&] {
            put(part.area, at, part.firstReady() + static_cast<sal_Int32>(first), stretch);
            stretch.clear();
        };
        for (std::size_t r = 0; r < rows; ++r) {
            const Value value = r < notes.rows.size() ? notes.rows[r][c] : Value();
            const std::size_t place = fixed ? notes.places[r] : r;
            if (place != first + stretch.size()) write();
            if (isBlank(value) && (fixed || !column.formula.empty() || notes.own.count({r, c}) != 0)) {
                write();
                continue;
            }
            if (stretch.empty()) first = place;
            stretch.push_back(value);
        }
        write();
    }
}

// The sheet's rows of a form's fields; the labels are read once for all of them.
class FieldRows {
  public:
    explicit FieldRows(const FoundPart& form) : form_(form) {
        const css::table::CellRangeAddress& at = form.area.at;
        labels_ = valuesOf(form.area, at.StartColumn, at.StartRow, at.StartColumn, at.EndRow);
    }
    sal_Int32 of(const std::string& label) const {
        const auto found = std::find(labels_.begin(), labels_.end(), std::vector<Value>{Value(label)});
        if (found == labels_.end())
            throw std::runtime_error("the workbook's form " + form_.name + " has no " + label);
        return form_.area.at.StartRow + static_cast<sal_Int32>(found - labels_.begin());
    }

  private:
    const FoundPart& form_;
    std::vector<std::vector<Value>> labels_;
};

void fill(const FoundPart& part, const FormNotes& notes) {
    const FieldRows rows(part);
    for (const auto& [place, value] : notes.fields)
        put(part.area, part.area.at.StartColumn + 1, rows.of(notes.form->fields[place].label), {value});
}

// What was typed into the ready rows of a column.
std::vector<Value> typedIn(const FoundPart& part, sal_Int32 column) {
    std::vector<Value> values;
    for (const auto& cells : typedValues(part.area, column, part.firstReady(), column, part.lastReady()))
        values.push_back(cells.at(0));
    return values;
}

// Who and where: another name is another lot.
bool isName(const Field& field) { return field.kind == Kind::Permit && field.format.as == Format::As::Text; }

// "row 7 holds 5.32, row 9 holds 5.4 and 3 more"
std::string cellsSaid(const FoundPart& part, const std::vector<std::size_t>& rows,
                      const std::vector<Value>& typed) {
    constexpr std::size_t most = 3;
    std::string said;
    for (std::size_t n = 0; n < rows.size() && n < most; ++n)
        said += (n == 0 ? "row " : ", row ") +
                std::to_string(part.firstReady() + static_cast<sal_Int32>(rows[n]) + 1) + " holds " +
                textOf(typed[rows[n]]);
    return rows.size() > most ? said + " and " + std::to_string(rows.size() - most) + " more" : said;
}

// Whether the notes speak of the rows that stand there, with some left out or some more: by the names in the first
// column for typing. Notes of another lot correct nothing here.
bool sameRows(const FoundPart& part, const std::vector<std::string>& headings, const TableNotes& table) {
    const auto& columns = table.table->columns;
    const auto first = std::find_if(columns.begin(), columns.end(),
                                    [](const Column& column) { return ofTheLot(column.kind); });
    const auto place = static_cast<std::size_t>(first - columns.begin());
    const auto given = std::find(table.columns.begin(), table.columns.end(), place);
    if (first == columns.end() || given == table.columns.end()) return false;
    std::set<std::string> here, now;
    for (const Value& key : typedIn(part, columnOf(part, headings, first->heading)))
        if (!isBlank(key)) here.insert(textOf(key));
    for (const auto& row : table.rows)
        if (const Value& key = row[static_cast<std::size_t>(given - table.columns.begin())]; !isBlank(key))
            now.insert(textOf(key));
    return std::includes(here.begin(), here.end(), now.begin(), now.end()) ||
           std::includes(now.begin(), now.end(), here.begin(), here.end());
}

// A table that the notes give is theirs: what was typed in other columns and in rows below goes. What belongs
// to the lot is told instead, but for cells that hold what an earlier fill wrote or what the notes say themselves.
void takeThePlace(const FoundPart& part, TableNotes& table, const Written& written,
                  std::vector<std::string>& taken) {
    const std::vector<std::string> headings = headingsOf(part);
    std::size_t used = table.rows.size();
    const bool corrects = sameRows(part, headings, table);
    for (std::size_t c = 0; c < table.table->columns.size(); ++c) {
        const Column& column = table.table->columns[c];
        if (!isInput(column.kind)) continue;
        const std::vector<Value> typed = typedIn(part, columnOf(part, headings, column.heading));
        const auto given = std::find(table.columns.begin(), table.columns.end(), c);
        std::vector<std::size_t> filled, foreign;
        for (std::size_t r = 0; r < typed.size(); ++r) {
            if (isBlank(typed[r])) continue;
            filled.push_back(r);
            used = std::max(used, r + 1);
            const bool said =
                given != table.columns.end() && r < table.rows.size() &&
                table.rows[r][static_cast<std::size_t>(given - table.columns.begin())] == typed[r];
            if (!said && !(corrects && written.holds(part.name, column.heading, r, typed[r])))
                foreign.push_back(r);
        }
        if (filled.empty()) continue;
        if (ofTheLot(column.kind) && !foreign.empty()) {
            taken.push_back(part.name + ": " + column.heading + " is filled already, in " +
                            std::to_string(foreign.size()) + (foreign.size() == 1 ? " row: " : " rows: ") +
                            cellsSaid(part, foreign, typed));
        } else if (given == table.columns.end()) {
            table.columns.push_back(c);
            for (auto& row : table.rows) row.emplace_back();
        }
    }
    table.rows.resize(used, std::vector<Value>(table.columns.size()));
}

// Cells lose their notes when they are written; the old lot's numbers stand there.
struct CellNote {
    Reference<css::sheet::XSheetAnnotations> sheet;
    css::table::CellAddress cell;
    rtl::OUString text;
};

std::vector<CellNote> cellNotesOf(const std::vector<FoundPart>& parts, const SiteNotes& notes) {
    std::vector<CellNote> found;
    const auto add = [&](const FoundPart& part) {
        const css::table::CellRangeAddress& at = part.area.at;
        const auto all = Reference<css::sheet::XSheetAnnotationsSupplier>(part.area.sheet, UNO_QUERY_THROW)
                             ->getAnnotations();
        for (sal_Int32 n = 0; n < all->getCount(); ++n) {
            const Reference<css::sheet::XSheetAnnotation> note(all->getByIndex(n), UNO_QUERY_THROW);
            const css::table::CellAddress cell = note->getPosition();
            if (cell.Row >= at.StartRow && cell.Row <= at.EndRow && cell.Column >= at.StartColumn &&
                cell.Column <= at.EndColumn)
                found.push_back(
                    {all, cell, Reference<css::text::XTextRange>(note, UNO_QUERY_THROW)->getString()});
        }
    };
    for (const FormNotes& form : notes.forms) add(partFor(parts, form.form->name, true));
    for (const TableNotes& table : notes.tables) add(partFor(parts, table.table->name, false));
    return found;
}

void putBack(const std::vector<CellNote>& notes) {
    for (const CellNote& note : notes) note.sheet->insertNew(note.cell, note.text);
}

std::string listed(const std::vector<std::string>& lines) {
    std::string all;
    for (const std::string& line : lines) all += (all.empty() ? "" : "\n") + line;
    return all;
}

}  // namespace

void put(const FoundPart& table, const std::string& heading, sal_Int32 ready,
         const std::vector<Value>& values) {
    const sal_Int32 row = table.firstReady() + ready;
    if (row + static_cast<sal_Int32>(values.size()) - 1 > table.lastReady())
        throw std::runtime_error("the workbook's table " + table.name + " has only " +
                                 std::to_string(table.lastReady() - table.firstReady() + 1) + " rows");
    put(table.area, columnOf(table, headingsOf(table), heading), row, values);
}

void put(const FoundPart& form, const std::string& label, const Value& value) {
    put(form.area, form.area.at.StartColumn + 1, FieldRows(form).of(label), {value});
}

void fillIn(const Document& document, SiteNotes notes) {
    const std::vector<FoundPart> parts = partsOf(document);
    const Written written(document);
    std::vector<std::string> taken;
    for (const FormNotes& form : notes.forms) {
        const FoundPart& part = partFor(parts, form.form->name, true);
        const FieldRows rows(part);
        const sal_Int32 values = part.area.at.StartColumn + 1;
        for (const auto& [place, value] : form.fields) {
            const Field& field = form.form->fields[place];
            const sal_Int32 row = rows.of(field.label);
            const Value typed = typedValues(part.area, values, row, values, row).at(0).at(0);
            if (ofTheLot(field.kind) && !isBlank(typed) && typed != value && textOf(typed) != field.value &&
                (isName(field) || !written.holds(form.form->name, field.label, 0, typed)))
                taken.push_back(part.name + ": " + field.label + " is filled already: " + textOf(typed));
        }
    }
    for (TableNotes& table : notes.tables)
        if (!hasFixedRows(*table.table))
            takeThePlace(partFor(parts, table.table->name, false), table, written, taken);
    if (!taken.empty()) throw Refused(listed(taken));
    const std::vector<CellNote> cellNotes = cellNotesOf(parts, notes);
    fill(document, notes);
    putBack(cellNotes);
}

const FoundPart& partFor(const std::vector<FoundPart>& parts, std::string_view name, bool isForm) {
    const FoundPart* part = findPart(parts, std::string(name), isForm);
    if (part == nullptr) throw std::runtime_error("the workbook has no " + std::string(name));
    return *part;
}

void fill(const Document& document, const SiteNotes& notes) {
    const std::vector<FoundPart> parts = partsOf(document);
    for (const FormNotes& form : notes.forms) fill(partFor(parts, form.form->name, true), form);
    for (const TableNotes& table : notes.tables) fill(partFor(parts, table.table->name, false), table);
    Written(document).remember(notes, document);
}

}  // namespace trenchbook::sheets
