#include "commands/next_missing.h"

#include <algorithm>
#include <cctype>
#include <set>

#include "commands/sheets_shown.h"

namespace trenchbook::sheets {
namespace {

// Where the answer to a question about the whole job is typed. The question is known by how it begins, in either
// language; of several fields the first that is blank or says "ask".
struct Asked {
    Text begins;
    const char* part;
    std::vector<const char*> labels;
};
const std::vector<Asked>& asked() {
    static const std::vector<Asked> all = {
        {{"Job: name", "Job: nombre"}, "Job", {"Job"}},
        {{"Job: owner", "Job: dueño"}, "Job", {"Owner"}},
        {{"Job: site", "Job: lugar"}, "Job", {"Site"}},
        {{"Job: date of the quote", "Job: fecha de la cotización"}, "Job", {"Quote date"}},
        {{"Job: rain", "Job: lluvia"}, "Job", {"Rain"}},
        {{"Job: do rules", "Job: ¿las reglas"}, "Job", {"Rules fit this county"}},
        {{"Job: soil", "Job: suelo"}, "Job", {"Soil"}},
        {{"Job: where the water goes", "Job: a dónde va el agua"}, "Job", {"Outlet"}},
        {{"Job: permission", "Job: permiso"}, "Job", {"Outlet permission"}},
        {{"Job: ask about septic", "Job: pregunte por fosa"}, "Job", {"Septic", "Well"}},
        {{"Job: ask about irrigation", "Job: pregunte por líneas"}, "Job", {"Irrigation or pool lines"}},
        {{"Job: ask about an owners", "Job: pregunte por la asociación"}, "Job", {"Owners' association"}},
        {{"Job: locate ticket", "Job: folio"}, "Job", {"Locate ticket"}},
        {{"ticket ", "el folio "}, "Job", {"Ticket good from", "Ticket good until"}},
        {{"Levels:", "Levels:"}, "Levels", {}},
        {{"Water:", "Water:"}, "Water", {}},
        {{"Runs:", "Runs:"}, "Runs", {}},
    };
    return all;
}

std::string lower(std::string text) {
    for (char& c : text)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return text;
}

bool isLetter(char c) {
    const auto byte = static_cast<unsigned char>(c);
    return byte >= 0x80 || std::isalnum(byte) != 0;
}

// Whether the sentence names this heading, as whole words.
bool names(const std::string& sentence, const std::string& heading) {
    const std::string in = lower(sentence), word = lower(heading);
    if (word.empty()) return false;
    for (std::size_t at = in.find(word); at != std::string::npos; at = in.find(word, at + 1)) {
        const std::size_t end = at + word.size();
        if ((at == 0 || !isLetter(in[at - 1])) && (end == in.size() || !isLetter(in[end]))) return true;
    }
    return false;
}

bool begins(const std::string& text, const std::string& with) { return text.rfind(with, 0) == 0; }

// "NO", "NOT JUDGED" and "NOT READY" keep a job from being finished, "CHECK" asks for a look.
enum class Weight { Stops, Look, None };
Weight weightOf(const std::string& verdict) {
    if (verdict == "NO" || begins(verdict, "NO:") || begins(verdict, "NOT ")) return Weight::Stops;
    return begins(verdict, "CHECK") ? Weight::Look : Weight::None;
}

class Search {
  public:
    explicit Search(const Book& book) : book_(book) {
        for (const Step& step : showSheets(book, SheetsShown::BackAgain).steps.list)
            if (const ShowSheet* show = std::get_if<ShowSheet>(&step)) comesBack_.insert(show->sheet);
    }

    std::vector<Missing> all() {
        for (const Weight weight : {Weight::Stops, Weight::Look}) {
            findings(weight);
            for (const BookPart& part : book_.parts) {
                if (!book_.sheets[static_cast<std::size_t>(part.at.sheet)].visible &&
                    comesBack_.count(part.at.sheet) == 0)
                    continue;
                if (part.is == BookPart::Is::Table) tableRows(part, weight);
                if (part.is == BookPart::Is::Form) formRows(part, weight);
            }
        }
        return std::move(found_);
    }

  private:
    // A cell is gone to once, for the first reason.
    void add(const Place& at, const std::string& says) {
        const bool there =
            std::any_of(found_.begin(), found_.end(), [&](const Missing& one) { return one.at == at; });
        if (!there) found_.push_back({at, says});
    }

    // The engine's own list, on Workings; its headings stand in the row above.
    void findings(Weight weight) {
        const auto words = book_.names.find("findings_words"), numbers = book_.names.find("findings_numbers");
        if (words == book_.names.end() || numbers == book_.names.end()) return;
        const auto columnOf = [&](const Rect& block, const char* heading) {
            for (int column = block.column; column <= block.lastColumn; ++column)
                if (textOf(book_.cell({block.sheet, column, block.row - 1})) == heading) return column;
            return -1;
        };
        const Rect& list = words->second;
        const int severity = columnOf(list, "Severity"), sheet = columnOf(list, "Sheet"),
                  said = columnOf(list, "Says"), listed = columnOf(list, "Listed"),
                  rowNumber = columnOf(numbers->second, "Row");
        if (severity < 0 || sheet < 0 || said < 0 || listed < 0 || rowNumber < 0) return;
        for (int row = list.row; row <= list.lastRow; ++row) {
            const auto word = [&](int column) { return textOf(book_.cell({list.sheet, column, row})); };
            const std::string verdict = word(severity);
            if (verdict.empty() || weightOf(verdict) != weight) continue;
            const Value& counted =
                book_.cell({numbers->second.sheet, rowNumber, numbers->second.row + row - list.row});
            const double* ofTable = std::get_if<double>(&counted);
            finding(word(sheet), word(said), verdict + ": " + word(listed),
                    ofTable == nullptr ? 0 : static_cast<int>(*ofTable));
        }
    }

    // `number` counts the table's rows from the thin one, 1; 0 is no row.
    void finding(const std::string& sheet, const std::string& said, const std::string& says, int number) {
        if (const BookPart* table = book_.table(sheet); table != nullptr && number > 1) {
            const int row = table->firstReady() + number - 2;
            judged_.insert({table->name, row});
            return add(cellOf(*table, row, said), says);
        }
        if (const auto answer = answerCell(said)) return add(*answer, says);
        if (const BookPart* table = book_.table(sheet)) return add(firstFree(*table), says);
        if (const BookPart* form = book_.form(sheet)) return add(fieldOf(*form, said), says);
    }

    std::optional<Place> answerCell(const std::string& said) const {
        for (const Asked& one : asked()) {
            if (!begins(said, one.begins.en) && !begins(said, one.begins.es)) continue;
            if (one.labels.empty()) {
                const BookPart* table = book_.table(one.part);
                return table == nullptr ? std::nullopt : std::optional(firstFree(*table));
            }
            const BookPart* form = book_.form(one.part);
            if (form == nullptr) return std::nullopt;
            std::optional<Place> first;
            for (const char* label : one.labels) {
                const auto row = book_.findRow(*form, label);
                if (!row) continue;
                const Place place{form->at.sheet, form->at.column + 1, *row};
                const std::string now = textOf(book_.cell(place));
                if (now.empty() || now == "ask") return place;
                if (!first) first = place;
            }
            return first;
        }
        return std::nullopt;
    }

    // The cell of the row that the sentence names: a blank one that is typed, else one that holds something; else its
    // Check; else its first.
    Place cellOf(const BookPart& table, int row, const std::string& said) const {
        std::optional<Place> check, typed, blank;
        std::size_t longest = 0;
        for (int column = table.at.column; column <= table.at.lastColumn; ++column) {
            const Place place{table.at.sheet, column, row};
            const std::string heading = textOf(book_.cell({table.at.sheet, column, table.at.row}));
            if (book_.isHidden(table.at.sheet, column) || heading.empty()) continue;
            if (heading == "Check") check = place;
            if (book_.isFormula(place) || !names(said, heading) || heading.size() < longest) continue;
            longest = heading.size();
            typed = place;
            if (isBlank(book_.cell(place))) blank = place;
        }
        if (blank) return *blank;
        if (typed) return *typed;
        return check.value_or(Place{table.at.sheet, table.at.column, row});
    }

    // The first ready cell for typing of a table's next blank row.
    Place firstFree(const BookPart& table) const {
        const std::vector<Row> used = book_.rows(table);
        const int row =
            std::min(table.firstReady() + (used.empty() ? 0 : used.back().ready + 1), table.lastReady());
        for (int column = table.at.column; column <= table.at.lastColumn; ++column) {
            const Place place{table.at.sheet, column, row};
            if (!book_.isFormula(place) && !book_.isHidden(table.at.sheet, column) &&
                !textOf(book_.cell({table.at.sheet, column, table.at.row})).empty())
                return place;
        }
        return {table.at.sheet, table.at.column, row};
    }

    Place fieldOf(const BookPart& form, const std::string& said) const {
        for (int row = form.at.row; row <= form.at.lastRow; ++row) {
            const Place place{form.at.sheet, form.at.column + 1, row};
            if (!book_.isFormula(place) &&
                names(said, textOf(book_.cell({form.at.sheet, form.at.column, row}))))
                return place;
        }
        return {form.at.sheet, form.at.column + 1, form.at.row};
    }

    // Rows that are judged without the engine, by their Check.
    void tableRows(const BookPart& table, Weight weight) {
        const auto column = book_.findColumn(table, "Check");
        if (!column) return;
        for (int row = table.firstReady(); row <= table.lastReady(); ++row) {
            const std::string verdict = textOf(book_.cell({table.at.sheet, *column, row}));
            if (weightOf(verdict) == weight && judged_.count({table.name, row}) == 0)
                add(cellOf(table, row, verdict), table.name + ": " + verdict);
        }
    }

    void formRows(const BookPart& form, Weight weight) {
        if (form.name == "Verdict") return;  // Job's own summary of all that is listed here
        for (int row = form.at.row; row <= form.at.lastRow; ++row) {
            const Place place{form.at.sheet, form.at.column + 1, row};
            const std::string verdict = textOf(book_.cell(place));
            if (book_.isFormula(place) && weightOf(verdict) == weight)
                add(place, book_.sheets[static_cast<std::size_t>(form.at.sheet)].name + ": " + verdict);
        }
    }

    const Book& book_;
    std::set<int> comesBack_;  // sheets that stepped aside and are needed now
    std::vector<Missing> found_;
    std::set<std::pair<std::string, int>> judged_;  // rows that the list of findings has told of
};

}  // namespace

std::vector<Missing> allMissing(const Book& book) { return Search(book).all(); }

Planned nextMissing(const Book& book) {
    const std::vector<Missing> all = allMissing(book);
    Planned planned;
    if (all.empty()) {
        planned.says = {"Nothing is missing: no row says NO, NOT JUDGED or CHECK.",
                        "No falta nada: ninguna fila dice NO, NOT JUDGED o CHECK."};
        return planned;
    }
    std::size_t next = 0;
    for (std::size_t n = 0; n < all.size(); ++n)
        if (book.selected == all[n].at) next = (n + 1) % all.size();
    const Place& at = all[next].at;
    if (!book.sheets[static_cast<std::size_t>(at.sheet)].visible) {
        planned.steps = showSheets(book, SheetsShown::BackAgain).steps;
        planned.steps.list.emplace_back(ShowSheet{at.sheet, true});
    }
    planned.steps.list.emplace_back(Select{at});
    planned.says = Text::same(std::to_string(next + 1)) + Text(" of ", " de ") +
                   Text::same(std::to_string(all.size()) + ", " +
                              addressOf(book.sheets[static_cast<std::size_t>(at.sheet)].name, at) + ": " +
                              all[next].says);
    return planned;
}

}  // namespace trenchbook::sheets
