#include "spanish/spanish.h"

#include <algorithm>
#include <cctype>
#include <map>
#include <stdexcept>

namespace trenchbook::sheets {
namespace {

constexpr std::size_t longestName = 64;
constexpr const char* gap = "{}";

struct Said {
    std::string spanish, name;
};

// Lower case, one underscore for all between the words.
std::string slug(const std::string& text) {
    std::string made = "say";
    bool between = true;
    for (const char c : text) {
        const auto letter = static_cast<unsigned char>(c);
        if (letter < 0x80 && std::isalnum(letter) != 0) {
            if (between) made += '_';
            made += static_cast<char>(std::tolower(letter));
            between = false;
        } else {
            between = true;
        }
    }
    return made.substr(0, longestName);
}

bool hasGap(const std::string& text) { return text.find(gap) != std::string::npos; }

struct Book {
    std::map<std::string, Said> whole;
    Phrases patterns;

    Book() {
        for (const Phrases* table : {&sitePhrases(), &purposePhrases(), &buyingPhrases(), &paperPhrases()})
            for (const auto& [english, spanish] : *table) {
                if (hasGap(english)) {
                    patterns.emplace_back(english, spanish);
                } else if (!whole.emplace(english, Said{spanish, ""}).second) {
                    throw std::logic_error("said twice in the tables of Spanish: " + english);
                }
            }
        // "CHECK" and "CHECK: " differ in signs that a name cannot hold.
        std::map<std::string, int> taken;
        for (auto& [english, said] : whole) {
            const std::string name = slug(english);
            const int times = ++taken[name];
            said.name = times == 1 ? name : name + "_" + std::to_string(times);
        }
    }
};
const Book& book() {
    static const Book made;
    return made;
}

// What stands in the gap of the pattern, where the text has its form.
std::optional<std::string> filling(const std::string& text, const std::string& pattern) {
    const std::size_t at = pattern.find(gap);
    const std::string front = pattern.substr(0, at), back = pattern.substr(at + 2);
    if (text.size() <= front.size() + back.size() || !text.starts_with(front) || !text.ends_with(back))
        return std::nullopt;
    return text.substr(front.size(), text.size() - front.size() - back.size());
}

bool isFormula(const std::string& text) { return text.starts_with('='); }

// The text as a formula, which the layout gives its name.
void speak(std::string& text) {
    if (!text.empty() && !isFormula(text) && inSpanish(text)) text = "=\"" + text + "\"";
}

void speak(Form& form, bool) { speak(form.heading); }
void speak(Paragraphs& text, bool) {
    speak(text.heading);
    for (std::string& line : text.lines) speak(line);
}
void speak(Table& table, bool paper) {
    if (!paper) return;
    for (Column& column : table.columns)
        if (column.shown.empty() && inSpanish(column.heading)) column.shown = "=\"" + column.heading + "\"";
    for (auto& row : table.content)
        for (std::string& cell : row) speak(cell);
}
template <class Part>
void speak(Part&, bool) {}

bool hasLanguage(const Workbook& workbook) {
    for (const Sheet& sheet : workbook.sheets)
        for (const Part& part : sheet.parts)
            if (const Form* form = std::get_if<Form>(&part))
                for (const Field& field : form->fields)
                    if (field.name == "language") return true;
    return false;
}

}  // namespace

std::optional<std::string> inSpanish(const std::string& english) {
    if (const auto found = book().whole.find(english); found != book().whole.end())
        return found->second.spanish;
    for (const auto& [pattern, spanish] : book().patterns)
        if (const auto inside = filling(english, pattern)) {
            std::string said = spanish;
            return said.replace(said.find(gap), 2, *inside);
        }
    return std::nullopt;
}

std::string sayName(const std::string& english) {
    const auto found = book().whole.find(english);
    return found == book().whole.end() ? slug(english) : found->second.name;
}

std::string sayExpression(const std::string& english, const std::string& spanish) {
    return "IF(language=\"es\";\"" + spanish + "\";\"" + english + "\")";
}

void inBothLanguages(Workbook& workbook, const std::vector<std::string>& papers) {
    if (!hasLanguage(workbook)) return;
    for (Sheet& sheet : workbook.sheets) {
        const bool paper = std::find(papers.begin(), papers.end(), sheet.name) != papers.end();
        speak(sheet.title);
        speak(sheet.purpose);
        for (Part& part : sheet.parts) std::visit([&](auto& one) { speak(one, paper); }, part);
    }
}

}  // namespace trenchbook::sheets
