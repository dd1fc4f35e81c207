#include "jobbook/again.h"

#include <algorithm>
#include <type_traits>

#include "spanish/spanish.h"
#include "trenchbook/core/error.h"
#include "trenchbook/core/tape.h"

namespace trenchbook::sheets {
namespace {

using Is = BookPart::Is;

// What was typed into a field; nothing when the old workbook had no such field.
Value typedField(const Book& old, const BookPart& form, const std::string& label) {
    const auto row = old.findRow(form, label);
    if (!row) return {};
    const Place place{form.at.sheet, form.at.column + 1, *row};
    return old.isFormula(place) ? Value() : old.cell(place);
}

bool goesAlong(Kind kind) { return kind == Kind::Kept || kind == Kind::Price; }

// Parts whose loss would change what a new lot costs or what it is held to, with nothing to be seen: limits and tax, prices,
// hours and wage, overhead.
bool decides(const std::string& part) {
    constexpr const char* deciding[] = {"Rules", "Prices", "Labor", "Labor terms", "Quote"};
    return std::find(std::begin(deciding), std::end(deciding), part) != std::end(deciding);
}

// A cell that goes along, and how often the old workbook has its heading or label.
struct Sought {
    std::string part, heading;  // no heading: the whole part is not there
    bool inTable = false;
    std::ptrdiff_t found = 0;
};

// An old job's sheets are read by their names.
void requireItsName(const Book& old, const BookPart& part, const std::string& name) {
    const BookSheet& sheet = old.sheets.at(static_cast<std::size_t>(part.at.sheet));
    if (sheet.rows > 0 || sheet.name == name) return;
    throw Refused(
        said(old, {"the sheet " + sheet.name + " was " + name + ": give it its name back, and it is read",
                   "la hoja " + sheet.name + " era " + name + ": devuélvale su nombre y se lee"}));
}

std::vector<Sought> soughtIn(const Book& old, const Workbook& workbook) {
    std::vector<Sought> all;
    for (const Sheet& sheet : workbook.sheets)
        for (const Part& part : sheet.parts) {
            const Form* form = std::get_if<Form>(&part);
            const Table* table = std::get_if<Table>(&part);
            if (form == nullptr && table == nullptr) continue;
            const std::string& name = form != nullptr ? form->name : table->name;
            const BookPart* there = form != nullptr ? old.form(name) : old.table(name);
            if (there != nullptr) requireItsName(old, *there, sheet.name);
            std::vector<std::string> has;
            if (there != nullptr && table != nullptr) has = old.headings(*there);
            for (int row = there != nullptr && form != nullptr ? there->at.row : 0;
                 there != nullptr && form != nullptr && row <= there->at.lastRow; ++row)
                has.push_back(textOf(old.cell({there->at.sheet, there->at.column, row})));
            const auto seek = [&](const std::string& heading) {
                if (there != nullptr)
                    all.push_back(
                        {name, heading, table != nullptr, std::count(has.begin(), has.end(), heading)});
                else if (all.empty() || all.back().part != name)
                    all.push_back({name, "", table != nullptr, 0});
            };
            if (form != nullptr)
                for (const Field& field : form->fields)
                    if (goesAlong(field.kind)) seek(field.label);
            if (table != nullptr)
                for (const Column& column : table->columns)
                    if (goesAlong(column.kind)) seek(column.heading);
        }
    return all;
}

// What decides a price is taken from the old job whole, or not at all.
void requireWhatDecides(const Book& old, const Workbook& workbook) {
    for (const Sought& sought : soughtIn(old, workbook)) {
        if (sought.found > 1)
            throw Refused(said(
                old, {sought.part + " has " + sought.heading + " twice: which of them goes along?",
                      sought.part + " tiene " + sought.heading + " dos veces: ¿cuál pasa a la obra nueva?"}));
        if (sought.found > 0 || !decides(sought.part)) continue;
        if (sought.heading.empty())
            throw Refused(
                said(old, {"the old job has no " + sought.part +
                               " any more: the new one would stand on the template's values in its place",
                           "la obra anterior ya no tiene " + sought.part +
                               ": la nueva tendría en su lugar los valores de la plantilla"}));
        if (sought.inTable)
            throw Refused(said(old, {sought.part + " of the old job has no " + sought.heading +
                                         ": a heading that has another name is not read",
                                     sought.part + " de la obra anterior no tiene " + sought.heading +
                                         ": un encabezado con otro nombre no se lee"}));
    }
}

template <class Work>
void forEachPart(const Book& old, const Workbook& workbook, const Work& work) {
    if (old.table("Runs") == nullptr) throw Refused("this is not a job workbook: no Runs");
    for (const Sheet& sheet : workbook.sheets) {
        for (const Part& part : sheet.parts) {
            if (const Form* form = std::get_if<Form>(&part))
                if (const BookPart* found = old.form(form->name)) work(*form, *found);
            if (const Table* table = std::get_if<Table>(&part))
                if (const BookPart* found = old.table(table->name)) work(*table, *found);
        }
    }
}

FormNotes carried(const Book& old, const Form& form, const BookPart& found) {
    FormNotes notes{&form, {}};
    for (std::size_t f = 0; f < form.fields.size(); ++f)
        if (const Value value = typedField(old, found, form.fields[f].label);
            goesAlong(form.fields[f].kind) && !isBlank(value))
            notes.fields.emplace_back(f, value);
    return notes;
}

// What a cell that comes with the workbook may show: its text, in both languages where it has them.
std::vector<std::string> shownAs(const std::string& cell) {
    const std::string quote = "\"";
    if (!cell.starts_with("=" + quote) || !cell.ends_with(quote)) return {cell};
    const std::string english = cell.substr(2, cell.size() - 3);
    return {english, inSpanish(english).value_or(english)};
}

// The place of a row that came with the workbook, by the words or number in its first cell.
std::size_t placeOf(const Table& table, const Value& key) {
    const auto row = std::find_if(table.content.begin(), table.content.end(), [&](const auto& cells) {
        if (cells.empty() || cells[0].empty()) return false;
        const std::vector<std::string> words = shownAs(cells[0]);
        return std::any_of(words.begin(), words.end(),
                           [&](const std::string& word) { return key == Value(word); });
    });
    return static_cast<std::size_t>(row - table.content.begin());
}

// What the first cells of the ready rows show.
std::vector<Value> keysOf(const Book& old, const Table& table, const BookPart& found, std::size_t rows) {
    std::vector<Value> keys(rows);
    const std::optional<int> column = old.findColumn(found, table.columns[keyColumn(table)].heading);
    for (std::size_t r = 0; column && r < rows; ++r) {
        keys[r] = old.cell({found.at.sheet, *column, found.firstReady() + static_cast<int>(r)});
        if (keys[r] == Value(std::string())) keys[r] = {};
    }
    return keys;
}

bool comesWithFormula(const Table& table, std::size_t row, std::size_t column) {
    return contentAt(table, row, column).starts_with('=');
}

// Which old row goes where: to the place of the same row in the new workbook where that row has formulas of
// its own (its row may have been moved), all others in their order to what is left.
std::vector<std::optional<std::size_t>> arranged(const Table& table, const std::vector<Value>& keys) {
    std::vector<std::optional<std::size_t>> from(std::max(keys.size(), table.content.size()));
    std::vector<bool> placed(keys.size());
    for (std::size_t r = 0; r < keys.size(); ++r) {
        const std::size_t place = placeOf(table, keys[r]);
        bool formulas = false;
        for (std::size_t c = 0; c < table.columns.size(); ++c)
            formulas = formulas || comesWithFormula(table, place, c);
        if (!formulas || from[place]) continue;
        from[place] = r;
        placed[r] = true;
    }
    std::size_t next = 0;
    for (auto& source : from) {
        while (next < placed.size() && placed[next]) ++next;
        if (!source && next < placed.size()) source = next++;
    }
    return from;
}

TableNotes carried(const Book& old, const Table& table, const BookPart& found) {
    TableNotes notes{&table, {}, {}, {}, {}};
    std::vector<std::vector<Value>> columns;
    for (std::size_t c = 0; c < table.columns.size(); ++c) {
        if (!goesAlong(table.columns[c].kind)) continue;
        std::vector<Value> values = old.typed(found, table.columns[c].heading);
        if (values.empty()) continue;
        notes.columns.push_back(c);
        columns.push_back(std::move(values));
    }
    if (columns.empty()) return notes;
    const std::vector<Value> keys = keysOf(old, table, found, columns[0].size());
    const auto cellsOf = [&](std::size_t row) {
        std::vector<Value> cells;
        for (const auto& column : columns) cells.push_back(column[row]);
        return cells;
    };
    if (hasFixedRows(table)) {
        for (std::size_t r = 0; r < keys.size(); ++r) {
            const std::size_t place = placeOf(table, keys[r]);
            if (place == table.content.size()) continue;
            notes.places.push_back(place);
            notes.rows.push_back(cellsOf(r));
        }
        return notes;
    }
    const auto from = arranged(table, keys);
    for (std::size_t r = 0; r < from.size(); ++r) {
        notes.rows.push_back(from[r] ? cellsOf(*from[r]) : std::vector<Value>(columns.size()));
        const bool sameRow =
            from[r] && (placeOf(table, keys[*from[r]]) == r || comesWithFormula(table, r, keyColumn(table)));
        for (std::size_t c = 0; c < columns.size(); ++c)
            if (sameRow && isBlank(notes.rows[r][c]) && comesWithFormula(table, r, notes.columns[c]))
                notes.own.emplace(r, c);
    }
    // Ready rows that were never used need no room.
    const auto unused = [](const std::vector<Value>& cells) {
        return std::all_of(cells.begin(), cells.end(), isBlank);
    };
    while (notes.rows.size() > table.content.size() && unused(notes.rows.back())) notes.rows.pop_back();
    return notes;
}

// What a note may tell: a length, level, area, angle, time or slope; never money or words.
std::string reading(const Value& value, const Format& format, Measure measure) {
    if (measure == Measure::Plain || measure == Measure::Dollars || measure == Measure::Share) return "";
    if (const double* number = std::get_if<double>(&value))
        return format.as != Format::As::Date ? plain(*number, 6) : "";
    const std::string* text = std::get_if<std::string>(&value);
    if (text == nullptr) return "";
    for (const auto& read :
         {+[](const std::string& as) { readTape(as); }, +[](const std::string& as) { readSlope(as); }}) {
        try {
            read(*text);
            return *text;
        } catch (const Error&) {
        }
    }
    return "";
}

// Job's own list, under its heading.
std::string stillMissing(const Book& book) {
    const BookPart* job = book.form("Job");
    if (job == nullptr) return "";
    const BookSheet& sheet = book.sheets[static_cast<std::size_t>(job->at.sheet)];
    const std::string english = "Still missing", spanish = inSpanish(english).value_or(english);
    for (int row = job->at.lastRow; row < sheet.rows; ++row)
        if (const std::string here = textOf(book.cell({job->at.sheet, 0, row}));
            here == english || here == spanish)
            return textOf(book.cell({job->at.sheet, 0, row + 1}));
    return "";
}

}  // namespace

std::set<std::string> typedSheets(const Workbook& workbook) {
    std::set<std::string> names;
    for (const Sheet& sheet : workbook.sheets)
        for (const Part& part : sheet.parts) {
            const Form* form = std::get_if<Form>(&part);
            const Table* table = std::get_if<Table>(&part);
            if ((form != nullptr && takesNotes(*form)) || (table != nullptr && takesNotes(*table)))
                names.insert(sheet.name);
        }
    return names;
}

SiteNotes carriedOver(const Book& old, const Workbook& workbook) {
    SiteNotes notes;
    if (old.table("Runs") != nullptr) requireWhatDecides(old, workbook);
    forEachPart(old, workbook, [&](const auto& part, const BookPart& found) {
        if constexpr (std::is_same_v<decltype(part), const Form&>) {
            notes.forms.push_back(carried(old, part, found));
        } else {
            notes.tables.push_back(carried(old, part, found));
        }
    });
    return notes;
}

std::vector<OldReading> oldReadings(const Book& old, const Workbook& workbook) {
    std::vector<OldReading> readings;
    const auto add = [&](const std::string& part, bool isForm, const std::string& heading, std::size_t row,
                         const std::string& number) {
        if (!number.empty()) readings.push_back({part, isForm, heading, static_cast<int>(row), number});
    };
    forEachPart(old, workbook, [&](const auto& part, const BookPart& found) {
        if constexpr (std::is_same_v<decltype(part), const Form&>) {
            for (const Field& field : part.fields)
                if (field.kind == Kind::Measured)
                    add(part.name, true, field.label, 0,
                        reading(typedField(old, found, field.label), field.format, field.measure));
        } else {
            for (const Column& column : part.columns) {
                if (column.kind != Kind::Measured) continue;
                const std::vector<Value> values = old.typed(found, column.heading);
                for (std::size_t r = 0; r < values.size(); ++r)
                    add(part.name, false, column.heading, r,
                        reading(values[r], column.format, column.measure));
            }
        }
    });
    return readings;
}

Steps noteOldReadings(const Book& book, const std::vector<OldReading>& readings) {
    Steps steps;
    for (const OldReading& reading : readings) {
        const BookPart* part = book.part(reading.isForm ? Is::Form : Is::Table, reading.part);
        if (part == nullptr) continue;
        std::string where = reading.part + ", " + reading.heading;
        Place cell{part->at.sheet, part->at.column + 1, 0};
        if (reading.isForm) {
            const auto row = book.findRow(*part, reading.heading);
            if (!row) continue;
            cell.row = *row;
        } else {
            const auto column = book.findColumn(*part, reading.heading);
            cell.row = part->firstReady() + reading.row;
            if (!column || cell.row > part->lastReady()) continue;
            cell.column = *column;
            where += ", row " + std::to_string(reading.row + 1);
        }
        steps.list.emplace_back(NoteCell{
            cell, "The last lot had " + reading.number + " here (" + where + "). Measure it again."});
    }
    return steps;
}

std::string notFound(const Book& old, const Workbook& workbook) {
    std::string list;
    for (const Sought& sought : soughtIn(old, workbook)) {
        if (sought.found > 0) continue;
        if (list.empty())
            list = said(old, {"Not in the old job; here stands what the template has:\n",
                              "No está en la obra anterior; aquí queda lo de la plantilla:\n"});
        list += "  " + sought.part + (sought.heading.empty() ? "" : ": " + sought.heading) + "\n";
    }
    return list;
}

std::string againList(const Book& book, const std::vector<OldReading>& readings) {
    std::string list = "To measure again:\n";
    std::vector<std::pair<std::string, int>> counts;
    for (const OldReading& reading : readings) {
        if (counts.empty() || counts.back().first != reading.part) counts.emplace_back(reading.part, 0);
        ++counts.back().second;
    }
    for (const auto& [part, count] : counts)
        list += "  " + part + ": " + std::to_string(count) + (count == 1 ? " number\n" : " numbers\n");
    if (const std::string missing = stillMissing(book); !missing.empty()) {
        list += "Still missing:\n  ";
        for (const char c : missing) list += c == '\n' ? std::string("\n  ") : std::string(1, c);
        list += '\n';
    }
    return list;
}

}  // namespace trenchbook::sheets
