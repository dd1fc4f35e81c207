#include "jobbook/again.h"

#include <algorithm>
#include <com/sun/star/sheet/XSheetAnnotationsSupplier.hpp>
#include <map>

#include "trenchbook/core/error.h"
#include "trenchbook/core/tape.h"

namespace trenchbook::sheets {
namespace {

struct OldForm {
    const FoundPart& part;
    std::vector<Value> labels, values;

    explicit OldForm(const FoundPart& found) : part(found) {
        const css::table::CellRangeAddress& at = part.area.at;
        for (const auto& cells : valuesOf(part.area, at.StartColumn, at.StartRow, at.StartColumn, at.EndRow))
            labels.push_back(cells[0]);
        for (const auto& cells :
             typedValues(part.area, at.StartColumn + 1, at.StartRow, at.StartColumn + 1, at.EndRow))
            values.push_back(cells[0]);
    }
    Value value(const std::string& label) const {
        const auto found = std::find(labels.begin(), labels.end(), Value(label));
        return found == labels.end() ? Value() : values[static_cast<std::size_t>(found - labels.begin())];
    }
};

// What was typed into a table, read in two questions however many columns it has.
class OldTable {
  public:
    explicit OldTable(const FoundPart& found) : headings_(headingsOf(found)) {
        const css::table::CellRangeAddress& at = found.area.at;
        rows_ = typedValues(found.area, at.StartColumn, found.firstReady(), at.EndColumn, found.lastReady());
    }
    // The cells under a heading; none when the old workbook had no such column.
    std::vector<Value> column(const std::string& heading) const {
        const auto found = std::find(headings_.begin(), headings_.end(), heading);
        if (found == headings_.end()) return {};
        std::vector<Value> cells;
        for (const auto& row : rows_)
            cells.push_back(row[static_cast<std::size_t>(found - headings_.begin())]);
        return cells;
    }

  private:
    std::vector<std::string> headings_;
    std::vector<std::vector<Value>> rows_;
};

bool goesAlong(Kind kind) { return kind == Kind::Kept || kind == Kind::Price; }

template <class Work>
void forEachPart(const Document& old, const Workbook& workbook, const Work& work) {
    const std::vector<FoundPart> parts = partsOf(old);
    if (findPart(parts, "Runs", false) == nullptr) throw Refused("this is not a job workbook: no Runs");
    for (const Sheet& sheet : workbook.sheets) {
        for (const Part& part : sheet.parts) {
            if (const Form* form = std::get_if<Form>(&part))
                if (const FoundPart* found = findPart(parts, form->name, true)) work(*form, *found);
            if (const Table* table = std::get_if<Table>(&part))
                if (const FoundPart* found = findPart(parts, table->name, false)) work(*table, *found);
        }
    }
}

FormNotes carried(const Form& form, const FoundPart& found) {
    FormNotes notes{&form, {}};
    const OldForm old(found);
    for (std::size_t f = 0; f < form.fields.size(); ++f)
        if (const Value value = old.value(form.fields[f].label);
            goesAlong(form.fields[f].kind) && !isBlank(value))
            notes.fields.emplace_back(f, value);
    return notes;
}

// The place of a row that came with the workbook, by the words or number in its first cell.
std::size_t placeOf(const Table& table, const Value& key) {
    const auto row = std::find_if(table.content.begin(), table.content.end(), [&](const auto& cells) {
        return !cells.empty() && !cells[0].empty() && key == Value(cells[0]);
    });
    return static_cast<std::size_t>(row - table.content.begin());
}

bool comesWithFormula(const Table& table, std::size_t row, std::size_t column) {
    return row < table.content.size() && column < table.content[row].size() &&
           table.content[row][column].rfind('=', 0) == 0;
}

// Which old row goes where: to the place of the same row in the new workbook where that row has formulas of
// its own (an old formula's cell is blank here, and its row may have been moved), all others in their order
// to what is left.
std::vector<std::optional<std::size_t>> arranged(const Table& table, const std::vector<Value>& keys) {
    std::vector<std::optional<std::size_t>> from(std::max(keys.size(), table.content.size()));
    std::vector<bool> placed(keys.size());
    for (std::size_t r = 0; r < keys.size(); ++r) {
        const std::size_t place =
            isBlank(keys[r]) && comesWithFormula(table, r, 0) ? r : placeOf(table, keys[r]);
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

TableNotes carried(const Table& table, const FoundPart& found) {
    TableNotes notes{&table, {}, {}, {}, {}};
    const OldTable old(found);
    std::vector<std::vector<Value>> columns;
    for (std::size_t c = 0; c < table.columns.size(); ++c) {
        if (!goesAlong(table.columns[c].kind)) continue;
        std::vector<Value> values = old.column(table.columns[c].heading);
        if (values.empty()) continue;
        notes.columns.push_back(c);
        columns.push_back(std::move(values));
    }
    if (columns.empty()) return notes;
    std::vector<Value> keys = old.column(table.columns[0].heading);
    keys.resize(columns[0].size());
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
            from[r] && (placeOf(table, keys[*from[r]]) == r || comesWithFormula(table, r, 0));
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
std::string stillMissing(const Document& document) {
    const std::vector<FoundPart> parts = partsOf(document);
    const FoundPart* job = findPart(parts, "Job", true);
    if (job == nullptr) return "";
    constexpr sal_Int32 far = 200;
    const auto rows = valuesOf(job->area, 0, job->area.at.EndRow, 0, job->area.at.EndRow + far);
    const auto heading =
        std::find(rows.begin(), rows.end(), std::vector<Value>{Value(std::string("Still missing"))});
    return heading == rows.end() ? "" : textOf((heading + 1)->at(0));
}

}  // namespace

SiteNotes carriedOver(const Document& old, const Workbook& workbook) {
    SiteNotes notes;
    forEachPart(old, workbook, [&](const auto& part, const FoundPart& found) {
        if constexpr (std::is_same_v<decltype(part), const Form&>) {
            notes.forms.push_back(carried(part, found));
        } else {
            notes.tables.push_back(carried(part, found));
        }
    });
    return notes;
}

std::vector<OldReading> oldReadings(const Document& old, const Workbook& workbook) {
    std::vector<OldReading> readings;
    const auto add = [&](const std::string& part, bool isForm, const std::string& heading, std::size_t row,
                         const std::string& number) {
        if (!number.empty()) readings.push_back({part, isForm, heading, static_cast<sal_Int32>(row), number});
    };
    forEachPart(old, workbook, [&](const auto& part, const FoundPart& found) {
        if constexpr (std::is_same_v<decltype(part), const Form&>) {
            const OldForm form(found);
            for (const Field& field : part.fields)
                if (field.kind == Kind::Measured)
                    add(part.name, true, field.label, 0,
                        reading(form.value(field.label), field.format, field.measure));
        } else {
            const OldTable table(found);
            for (const Column& column : part.columns) {
                if (column.kind != Kind::Measured) continue;
                const std::vector<Value> values = table.column(column.heading);
                for (std::size_t r = 0; r < values.size(); ++r)
                    add(part.name, false, column.heading, r,
                        reading(values[r], column.format, column.measure));
            }
        }
    });
    return readings;
}

void noteOldReadings(const Document& document, const std::vector<OldReading>& readings) {
    const std::vector<FoundPart> parts = partsOf(document);
    std::map<const FoundPart*, std::vector<std::string>> headings;
    for (const OldReading& reading : readings) {
        const FoundPart* part = findPart(parts, reading.part, reading.isForm);
        if (part == nullptr) continue;
        const css::table::CellRangeAddress& at = part->area.at;
        css::table::CellAddress cell(at.Sheet, at.StartColumn + 1, at.StartRow);
        std::vector<std::string>& names = headings[part];
        if (names.empty() && reading.isForm) {
            for (const auto& cells : valuesOf(part->area)) names.push_back(textOf(cells[0]));
        } else if (names.empty()) {
            names = headingsOf(*part);
        }
        const auto found = std::find(names.begin(), names.end(), reading.heading);
        if (found == names.end()) continue;
        const auto place = static_cast<sal_Int32>(found - names.begin());
        if (reading.isForm) {
            cell.Row += place;
        } else {
            cell.Column = at.StartColumn + place;
            cell.Row = part->firstReady() + reading.row;
            if (cell.Row > part->lastReady()) continue;
        }
        const std::string where = reading.isForm ? reading.part + ", " + reading.heading
                                                 : reading.part + ", " + reading.heading + ", row " +
                                                       std::to_string(reading.row + 1);
        Reference<css::sheet::XSheetAnnotationsSupplier>(part->area.sheet, UNO_QUERY_THROW)
            ->getAnnotations()
            ->insertNew(cell, wide("The last lot had " + reading.number + " here (" + where +
                                   "). Measure it again."));
    }
}

std::string againList(const Document& document, const std::vector<OldReading>& readings) {
    std::string list = "To measure again:\n";
    std::vector<std::pair<std::string, int>> counts;
    for (const OldReading& reading : readings) {
        if (counts.empty() || counts.back().first != reading.part) counts.emplace_back(reading.part, 0);
        ++counts.back().second;
    }
    for (const auto& [part, count] : counts)
        list += "  " + part + ": " + std::to_string(count) + (count == 1 ? " number\n" : " numbers\n");
    if (const std::string missing = stillMissing(document); !missing.empty()) {
        list += "Still missing:\n  ";
        for (const char c : missing) list += c == '\n' ? std::string("\n  ") : std::string(1, c);
        list += '\n';
    }
    return list;
}

}  // namespace trenchbook::sheets
