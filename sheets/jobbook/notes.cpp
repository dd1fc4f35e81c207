#include "jobbook/notes.h"

#include <algorithm>
#include <fstream>
#include <set>
#include <sstream>

#include "jobbook/csv.h"
#include "jobbook/value_text.h"

namespace trenchbook::sheets {
namespace {

namespace fs = std::filesystem;

std::string lower(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(), [](unsigned char c) { return std::tolower(c); });
    return text;
}

std::string quoted(const std::string& text) {
    constexpr std::size_t most = 60;
    return "\"" + (text.size() > most ? text.substr(0, most) + "..." : text) + "\"";
}

struct File {
    fs::path path;
    std::vector<csv::Row> rows;
};

class Reader {
  public:
    Reader(const fs::path& folder, const Workbook& workbook, const NotesFor& what)
        : folder_(folder), wholeJob_(what.wholeJob), metric_(what.metric) {
        for (const Sheet& sheet : workbook.sheets) {
            for (const Part& part : sheet.parts) {
                if (const Table* table = std::get_if<Table>(&part)) tables_[notesFile(table->name)] = table;
                if (const Form* form = std::get_if<Form>(&part)) forms_[notesFile(form->name)] = form;
            }
        }
    }

    SiteNotes read() {
        if (!fs::is_directory(folder_)) throw NotesError({folder_.string() + ": there is no such folder"});
        const std::map<std::string, File> files = readFiles();
        findUnits(files);
        SiteNotes notes;
        for (const auto& [name, file] : files) {
            if (file.rows.empty()) continue;
            if (const auto form = forms_.find(name); form != forms_.end()) {
                notes.forms.push_back(read(*form->second, file));
            } else {
                notes.tables.push_back(read(*tables_.at(name), file));
            }
        }
        if (!faults_.empty()) throw NotesError(faults_);
        return notes;
    }

  private:
    void fault(const fs::path& file, const std::string& what) { faults_.push_back(file.string() + what); }
    void fault(const File& file, int line, int column, const std::string& heading, const std::string& what) {
        fault(file.path, " line " + std::to_string(line) + ", column " + std::to_string(column) +
                             (heading.empty() ? "" : " (" + heading + ")") + ": " + what);
    }

    std::map<std::string, File> readFiles() {
        std::map<std::string, File> files;
        std::vector<fs::path> found;
        for (const auto& entry : fs::directory_iterator(folder_))
            if (lower(entry.path().extension().string()) == ".csv") found.push_back(entry.path());
        std::sort(found.begin(), found.end());
        for (const fs::path& path : found) {
            const std::string name = path.filename().string();
            if (!expected(path, name)) continue;
            std::ifstream stream(path, std::ios::binary);
            std::stringstream bytes;
            bytes << stream.rdbuf();
            if (!stream) {
                fault(path, ": cannot be read");
                continue;
            }
            File file{path, {}};
            try {
                file.rows = csv::read(bytes.str());
                if (file.rows.empty()) fault(path, ": is empty; its first line holds the headings");
            } catch (const csv::Fault& wrong) {
                fault(file, wrong.line, wrong.column, "", std::string("the field ") + wrong.what());
            }
            files.emplace(name, std::move(file));
        }
        for (const char* needed : {"job.csv", "runs.csv"})
            if (wholeJob_ && !fs::exists(folder_ / needed)) fault(folder_ / needed, ": this file is missing");
        return files;
    }

    bool expected(const fs::path& path, const std::string& name) {
        const auto table = tables_.find(name);
        const auto form = forms_.find(name);
        if ((table != tables_.end() && takesNotes(*table->second)) ||
            (form != forms_.end() && takesNotes(*form->second)))
            return true;
        if (table != tables_.end() || form != forms_.end()) {
            fault(path, ": everything there is computed, so there is nothing to bring in");
        } else if (tables_.count(lower(name)) != 0 || forms_.count(lower(name)) != 0) {
            fault(path, ": write the file name as " + lower(name));
        } else {
            std::string names;
            for (const auto& [known, at] : forms_)
                if (takesNotes(*at)) names += (names.empty() ? "" : ", ") + known;
            for (const auto& [known, at] : tables_)
                if (takesNotes(*at)) names += (names.empty() ? "" : ", ") + known;
            fault(path, ": no table has this name; known are " + names);
        }
        return false;
    }

    // The one field that decides how the limits of all others are meant.
    void findUnits(const std::map<std::string, File>& files) {
        for (const auto& [name, form] : forms_) {
            const auto file = files.find(name);
            if (file == files.end()) continue;
            for (const Field& field : form->fields)
                for (const csv::Row& row : file->second.rows)
                    if (field.name == "units" && row.size() > 1 && row[0].text == field.label)
                        metric_ = lower(row[1].text) == "metric";
        }
    }

    FormNotes read(const Form& form, const File& file) {
        FormNotes notes{&form, {}};
        const csv::Row& head = file.rows[0];
        if (head.size() < 2 || lower(head[0].text) != "field" || lower(head[1].text) != "value") {
            fault(file, head[0].line, 1, "", "the first line must be field,value");
            return notes;
        }
        std::set<std::string> seen;
        for (std::size_t r = 1; r < file.rows.size(); ++r) {
            const csv::Row& row = file.rows[r];
            const std::string& label = row[0].text;
            const auto found = std::find_if(form.fields.begin(), form.fields.end(),
                                            [&](const Field& field) { return field.label == label; });
            refuseSurplus(file, row, 2);
            if (found == form.fields.end()) {
                fault(file, row[0].line, 1, "field",
                      quoted(label) + " is not a field of " + form.name + hint(label, labels(form)));
            } else if (!isInput(found->kind)) {
                fault(file, row[0].line, 1, "field", quoted(label) + " is computed; leave it out");
            } else if (!seen.insert(label).second) {
                fault(file, row[0].line, 1, "field", quoted(label) + " is there twice");
            } else if (row.size() > 1) {
                const Value value =
                    readCell(file, row[1], label, {found->format, found->validity, found->measure});
                if (!std::holds_alternative<std::monostate>(value))
                    notes.fields.emplace_back(found - form.fields.begin(), value);
            }
        }
        return notes;
    }

    TableNotes read(const Table& table, const File& file) {
        TableNotes notes{&table, {}, {}, {}, {}};
        const csv::Row& head = file.rows[0];
        const bool fixed = hasFixedRows(table);
        std::vector<std::optional<std::size_t>> columns;  // of the file: place in the table
        std::set<std::string> seen;
        for (const csv::Field& field : head) {
            columns.push_back(columnOf(table, file, field, fixed));
            if (!field.text.empty() && !seen.insert(field.text).second)
                fault(file, field.line, field.column, "",
                      "the heading " + quoted(field.text) + " is there twice");
            if (columns.back() && !(fixed && *columns.back() == keyColumn(table)))
                notes.columns.push_back(*columns.back());
        }
        const std::string& key = table.columns[keyColumn(table)].heading;
        if (fixed && seen.count(key) == 0) {
            fault(file, head[0].line, 1, "",
                  "the column " + quoted(key) + " is missing: it says which row is meant");
            return notes;
        }
        for (std::size_t r = 1; r < file.rows.size(); ++r) {
            const csv::Row& row = file.rows[r];
            refuseSurplus(file, row, head.size());
            std::vector<Value> values;
            for (std::size_t c = 0; c < head.size(); ++c) {
                if (!columns[c]) continue;
                const csv::Field blank{"", row[0].line, static_cast<int>(c) + 1};
                const csv::Field& field = c < row.size() ? row[c] : blank;
                const Column& column = table.columns[*columns[c]];
                if (fixed && *columns[c] == keyColumn(table)) {
                    notes.places.push_back(placeOf(table, file, field, notes.places));
                } else {
                    values.push_back(readCell(file, field, column.heading,
                                              {column.format, column.validity, column.measure}));
                }
            }
            notes.rows.push_back(std::move(values));
        }
        return notes;
    }

    std::optional<std::size_t> columnOf(const Table& table, const File& file, const csv::Field& field,
                                        bool fixed) {
        if (field.text.empty()) return std::nullopt;  // values under it are refused with their row
        std::vector<std::string> inputs;
        for (std::size_t c = 0; c < table.columns.size(); ++c) {
            const Column& column = table.columns[c];
            const bool key = fixed && c == keyColumn(table);
            if (isInput(column.kind) || key) inputs.push_back(column.heading);
            if (column.heading != field.text) continue;
            if (isInput(column.kind) || key) return c;
            fault(file, field.line, field.column, "",
                  quoted(field.text) + " is computed; leave the column out");
            return std::nullopt;
        }
        fault(file, field.line, field.column, "",
              quoted(field.text) + " is not a heading of " + table.name + hint(field.text, inputs));
        return std::nullopt;
    }

    std::size_t placeOf(const Table& table, const File& file, const csv::Field& key,
                        const std::vector<std::size_t>& taken) {
        const std::string& heading = table.columns[keyColumn(table)].heading;
        for (std::size_t r = 0; r < table.content.size(); ++r) {
            if (table.content[r].empty() || table.content[r][0] != key.text) continue;
            if (std::find(taken.begin(), taken.end(), r) != taken.end())
                fault(file, key.line, key.column, heading, quoted(key.text) + " is there twice");
            return r;
        }
        fault(file, key.line, key.column, heading, quoted(key.text) + " is not a row of " + table.name);
        return table.content.size();  // no row
    }

    Value readCell(const File& file, const csv::Field& field, const std::string& heading,
                   const CellSpec& cell) {
        try {
            return readValue(field.text, cell, metric_);
        } catch (const std::invalid_argument& wrong) {
            fault(file, field.line, field.column, heading, quoted(field.text) + " " + wrong.what());
            return std::monostate();
        }
    }

    void refuseSurplus(const File& file, const csv::Row& row, std::size_t columns) {
        const csv::Row& head = file.rows[0];
        for (std::size_t c = 0; c < row.size(); ++c)
            if (!row[c].text.empty() && (c >= columns || (c < head.size() && head[c].text.empty())))
                fault(file, row[c].line, row[c].column, "", quoted(row[c].text) + " stands under no heading");
    }

    static std::vector<std::string> labels(const Form& form) {
        std::vector<std::string> all;
        for (const Field& field : form.fields)
            if (isInput(field.kind)) all.push_back(field.label);
        return all;
    }
    static std::string hint(const std::string& text, const std::vector<std::string>& known) {
        std::string all;
        for (const std::string& word : known) {
            if (lower(word) == lower(text)) return "; write it as " + quoted(word);
            all += (all.empty() ? "; known are " : ", ") + word;
        }
        return all;
    }

    fs::path folder_;
    std::map<std::string, const Table*> tables_;
    std::map<std::string, const Form*> forms_;
    bool wholeJob_;
    bool metric_;
    std::vector<std::string> faults_;
};

std::string joined(const std::vector<std::string>& lines) {
    std::string all;
    for (const std::string& line : lines) all += (all.empty() ? "" : "\n") + line;
    return all;
}

}  // namespace

NotesError::NotesError(std::vector<std::string> faults)
    : Refused(joined(faults)), faults_(std::move(faults)) {}

SiteNotes readNotes(const fs::path& folder, const Workbook& workbook, const NotesFor& what) {
    return Reader(folder, workbook, what).read();
}

std::string notesFile(const std::string& part) {
    std::string name = lower(part);
    std::replace(name.begin(), name.end(), ' ', '-');
    return name + ".csv";
}

bool takesNotes(const Table& table) {
    return std::any_of(table.columns.begin(), table.columns.end(),
                       [](const Column& column) { return isInput(column.kind); });
}
bool takesNotes(const Form& form) {
    return std::any_of(form.fields.begin(), form.fields.end(),
                       [](const Field& field) { return isInput(field.kind); });
}

bool hasFixedRows(const Table& table) {
    return !isInput(table.columns[keyColumn(table)].kind) && !table.content.empty();
}

}  // namespace trenchbook::sheets
