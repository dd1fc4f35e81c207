#include "commands/shots.h"

#include <algorithm>
#include <set>

#include "jobbook/csv.h"
#include "jobbook/refused.h"
#include "jobbook/value_text.h"

namespace trenchbook::sheets {
namespace {

constexpr const char* rememberedAs = "Trenchbook shots: ";

// Headings that collectors and phones write, in lower case.
const std::map<std::string, std::set<std::string>>& usual() {
    static const std::map<std::string, std::set<std::string>> all = {
        {"Point", {"point", "name", "pt", "id", "point name", "point id", "number", "no", "punto", "nombre"}},
        {"Level",
         {"level", "elevation", "elev", "z", "height", "altitude", "known level", "cota", "elevación",
          "nivel"}},
        {"Rod", {"rod", "reading", "rod reading", "foresight", "fs", "lectura", "estadal"}},
        {"Backsight", {"backsight", "bs", "lectura atrás", "atrás"}},
        {"Note", {"note", "notes", "code", "description", "desc", "remark", "comment", "nota", "código"}},
    };
    return all;
}

std::vector<csv::Row> rowsIn(std::string_view csv, const std::string& file) {
    try {
        return csv::read(csv);
    } catch (const csv::Fault& fault) {
        throw Refused(file + " line " + std::to_string(fault.line) + ", column " +
                      std::to_string(fault.column) + ": " + fault.what());
    }
}

// The place of a file's column by its heading or its number; none when there is no such column.
std::optional<std::size_t> placeOf(const csv::Row& first, const std::string& column) {
    for (std::size_t c = 0; c < first.size(); ++c)
        if (nameKey(first[c].text) == nameKey(column)) return c;
    const bool number = !column.empty() && column.find_first_not_of("0123456789") == std::string::npos;
    if (number && column.size() < 4 && std::stoul(column) >= 1 && std::stoul(column) <= first.size())
        return std::stoul(column) - 1;
    return std::nullopt;
}

bool isNumber(const std::string& field) { return field == "Level" || field == "Rod" || field == "Backsight"; }

Value readNumber(const std::string& text, const std::string& field, bool metric) {
    Validity limits;
    // As Levels itself takes them, in feet.
    limits.least = field == "Level" ? -1000 : 0;
    limits.greatest = field == "Level" ? 15000 : 25;
    return readValue(text, {show::number(2), limits, Measure::Feet}, metric);
}

struct Shot {
    std::map<std::string, Value> fields;  // by argument
};

class Shots {
  public:
    Shots(const Book& book, const std::vector<csv::Row>& rows, const ShotColumns& columns,
          const std::string& file)
        : metric_(book.text("units") == "metric"), file_(file) {
        if (rows.empty()) throw Refused(file + " holds no line");
        for (const auto& [field, column] : columns)
            if (const auto place = placeOf(rows.front(), column)) {
                places_[field] = *place;
            } else {
                throw Refused(file + " has no column " + column + "; it has " + headings(rows.front()));
            }
        if (places_.count("Point") == 0 || (places_.count("Level") == 0 && places_.count("Rod") == 0))
            throw Refused(file + ": which columns hold the point and its level or rod? It has " +
                          headings(rows.front()));
        for (std::size_t r = isHeadings(rows.front()) ? 1 : 0; r < rows.size(); ++r) read(rows[r]);
        if (faults_.empty()) return;
        std::string all;
        for (const std::string& fault : faults_) all += (all.empty() ? "" : "\n") + fault;
        throw Refused(all);
    }
    const std::vector<Shot>& all() const { return shots_; }

  private:
    static std::string headings(const csv::Row& first) {
        std::string all;
        for (const csv::Field& field : first) all += (all.empty() ? "" : ", ") + field.text;
        return all;
    }

    // The first line is a shot where its numbers are numbers.
    bool isHeadings(const csv::Row& first) const {
        for (const auto& [field, place] : places_) {
            if (!isNumber(field) || place >= first.size() || first[place].text.empty()) continue;
            try {
                readNumber(first[place].text, field, metric_);
                return false;
            } catch (const std::invalid_argument&) {
                return true;
            }
        }
        return true;
    }

    void read(const csv::Row& row) {
        Shot shot;
        for (const auto& [field, place] : places_) {
            if (place >= row.size() || row[place].text.empty()) continue;
            const csv::Field& cell = row[place];
            try {
                shot.fields[field] =
                    isNumber(field) ? readNumber(cell.text, field, metric_) : Value(cell.text);
            } catch (const std::invalid_argument& wrong) {
                faults_.push_back(file_ + " line " + std::to_string(cell.line) + ", column " +
                                  std::to_string(cell.column) + " (" + field + "): \"" + cell.text + "\" " +
                                  wrong.what());
            }
        }
        if (shot.fields.empty()) return;
        if (shot.fields.count("Point") == 0)
            faults_.push_back(file_ + " line " + std::to_string(row.front().line) + ": no point is named");
        shots_.push_back(std::move(shot));
    }

    bool metric_;
    std::string file_;
    std::map<std::string, std::size_t> places_;
    std::vector<Shot> shots_;
    std::vector<std::string> faults_;
};

// What stands on Levels, one a ready row.
std::vector<Shot> typedShots(const Book& book, const BookPart& levels) {
    std::vector<Shot> shots(static_cast<std::size_t>(levels.lastReady() - levels.firstReady() + 1));
    for (const ShotField& field : shotFields()) {
        const std::vector<Value> typed = book.typed(levels, field.heading);
        for (std::size_t r = 0; r < typed.size(); ++r)
            if (!isBlank(typed[r])) shots[r].fields[field.argument] = typed[r];
    }
    return shots;
}

// A note may have been written since.
bool sameReadings(const Shot& one, const Shot& other) {
    const auto value = [](const Shot& shot, const char* field) {
        const auto found = shot.fields.find(field);
        return found == shot.fields.end() ? std::string() : nameKey(textOf(found->second));
    };
    for (const char* field : {"Point", "Level", "Rod", "Backsight"})
        if (value(one, field) != value(other, field)) return false;
    return true;
}

}  // namespace

const std::vector<ShotField>& shotFields() {
    static const std::vector<ShotField> all = {{"Point", "Point", {"Point", "Punto"}},
                                               {"Level", "Known level", {"Level", "Cota"}},
                                               {"Rod", "Rod", {"Rod", "Estadal"}},
                                               {"Backsight", "Backsight", {"Backsight", "Lectura atrás"}},
                                               {"Note", "Note", {"Note", "Nota"}}};
    return all;
}

ShotColumns shotColumns(const Book& book, std::string_view csv, const ShotColumns& given) {
    if (!given.empty()) return given;
    const std::vector<csv::Row> rows = rowsIn(csv, "The file");
    ShotColumns columns;
    if (rows.empty()) return columns;
    for (const ShotField& field : shotFields())
        if (const auto before = book.remembered.find(rememberedAs + std::string(field.argument));
            before != book.remembered.end() && placeOf(rows.front(), before->second))
            columns[field.argument] = before->second;
    if (columns.count("Point") != 0) return columns;
    columns.clear();
    for (const csv::Field& heading : rows.front())
        for (const auto& [field, words] : usual())
            if (words.count(nameKey(heading.text)) != 0) columns.try_emplace(field, heading.text);
    return columns;
}

Planned bringShots(const Book& book, std::string_view csv, const ShotColumns& columns,
                   const std::string& file) {
    const Shots read(book, rowsIn(csv, file), columns, file);
    const BookPart& levels = book.tableFor("Levels");
    std::vector<Shot> standing = typedShots(book, levels);
    const std::size_t ready = standing.size();
    while (!standing.empty() && standing.back().fields.empty()) standing.pop_back();

    std::vector<Shot> added;
    std::size_t there = 0, again = 0;
    for (const Shot& shot : read.all()) {
        const auto same = [&](const Shot& one) { return sameReadings(one, shot); };
        if (std::any_of(standing.begin(), standing.end(), same)) {
            ++there;
            continue;
        }
        again += std::any_of(standing.begin(), standing.end(), [&](const Shot& one) {
            const auto point = one.fields.find("Point");
            return point != one.fields.end() &&
                   nameKey(textOf(point->second)) == nameKey(textOf(shot.fields.at("Point")));
        });
        added.push_back(shot);
    }

    Planned planned;
    for (const auto& [field, column] : columns) {
        const auto before = book.remembered.find(rememberedAs + field);
        if (before == book.remembered.end() || before->second != column)
            planned.steps.list.emplace_back(Remember{rememberedAs + field, column});
    }
    if (!added.empty()) {
        std::size_t first = standing.size();
        if (first + added.size() > ready) {
            planned.steps.list.emplace_back(
                AddRows{levels.at, levels.lastReady(), static_cast<int>(first + added.size() - ready)});
            // Rows come in above the last ready one: what stood in it goes back to its place among the others.
            if (first == ready) added.insert(added.begin(), standing[--first]);
        }
        for (const ShotField& field : shotFields()) {
            // Blanks, too: a new row holds what stood in the one above.
            std::vector<Value> values;
            for (const Shot& shot : added) {
                const auto found = shot.fields.find(field.argument);
                values.push_back(found == shot.fields.end() ? Value() : found->second);
            }
            planned.steps.putColumn({levels.at.sheet, book.column(levels, field.heading),
                                     levels.firstReady() + static_cast<int>(first)},
                                    values);
        }
        if (first < standing.size()) added.erase(added.begin());
    }
    planned.says = counted(added.size(), {"shot", "punto"}, {"shots", "puntos"}) +
                   Text(" brought in from ", " traídos de ") + Text::same(file) + Text::same(".");
    if (there > 0)
        planned.says += Text::same(" ") + counted(there, {"line", "línea"}, {"lines", "líneas"}) +
                        Text(" stood on Levels already.", " ya estaban en Levels.");
    if (again > 0)
        planned.says += Text::same(" ") + counted(again, {"point", "punto"}, {"points", "puntos"}) +
                        Text(" shot before, with another reading: see Closing error.",
                             " ya medidos, con otra lectura: vea Closing error.");
    return planned;
}

}  // namespace trenchbook::sheets
