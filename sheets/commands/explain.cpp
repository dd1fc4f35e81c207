#include "commands/explain.h"

#include <algorithm>
#include <cctype>
#include <set>

#include "catalog/listing.h"
#include "kit/names.h"

namespace trenchbook::sheets {
namespace {

bool isWordLetter(char c) {
    const auto byte = static_cast<unsigned char>(c);
    return byte >= 0x80 || std::isalnum(byte) != 0 || c == '_' || c == '.';
}

// Formulas name a function by the service and its method when they come from a file.
std::string displayName(std::string word) {
    const std::string service = "trenchbook.functions.";
    std::string lower = word;
    std::transform(lower.begin(), lower.end(), lower.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    if (lower.rfind(service, 0) == 0) word.erase(0, service.size());
    const addin::Function* function = addin::findFunction(word);
    return function == nullptr ? "" : function->name;
}

// Steps through a formula and knows what is inside quotes.
class Scanner {
  public:
    explicit Scanner(const std::string& formula) : formula_(formula) {}

    // The words outside quotes, each with the place behind it.
    template <class Work>
    void words(const Work& work) const {
        for (std::size_t at = 0; at < formula_.size();) {
            if (formula_[at] == '"' || formula_[at] == '\'') {
                at = behindQuote(at);
            } else if (isWordLetter(formula_[at])) {
                const std::size_t start = at;
                while (at < formula_.size() && isWordLetter(formula_[at])) ++at;
                work(formula_.substr(start, at - start), at);
            } else {
                ++at;
            }
        }
    }

    // The arguments between the parenthesis at `open` and its partner.
    std::vector<std::string> arguments(std::size_t open) const {
        std::vector<std::string> parts(1);
        int depth = 0;
        for (std::size_t at = open; at < formula_.size();) {
            const char c = formula_[at];
            if (c == '"' || c == '\'') {
                const std::size_t end = behindQuote(at);
                parts.back() += formula_.substr(at, end - at);
                at = end;
                continue;
            }
            const bool opens = c == '(' || c == '{', closes = c == ')' || c == '}';
            if (closes && --depth == 0) break;
            if (depth == 1 && c == ';') {
                parts.emplace_back();
            } else if (depth > 0) {
                parts.back() += c;
            }
            depth += opens;
            ++at;
        }
        for (std::string& part : parts) part = trimmed(part);
        if (parts.size() == 1 && parts[0].empty()) parts.clear();
        return parts;
    }

  private:
    std::size_t behindQuote(std::size_t at) const {
        const std::size_t end = formula_.find(formula_[at], at + 1);
        return end == std::string::npos ? formula_.size() : end + 1;
    }

    const std::string& formula_;
};

// Nothing is asked about ranges: they are named with their size.
const Rect* rangeNamed(const Book& book, const std::string& argument) {
    const auto found = book.names.find(argument);
    if (found == book.names.end()) return nullptr;
    const Rect& at = found->second;
    return at.row == at.lastRow && at.column == at.lastColumn ? nullptr : &at;
}

// Tables are handed to a function whole, by a name that ends like this (kit/names.h).
bool isHanded(const std::string& argument) {
    return argument.ends_with("_in") && std::all_of(argument.begin(), argument.end(), isWordLetter);
}

std::string shown(const Value& value, Language language) {
    if (isBlank(value)) return language == Language::Spanish ? "(vacío)" : "(blank)";
    if (const double* number = std::get_if<double>(&value)) return plain(*number, 6);
    return "\"" + textOf(value) + "\"";
}

const addin::ListedFunction* listed(const std::string& name) {
    static const std::vector<addin::ListedFunction> all = addin::listing();
    for (const addin::ListedFunction& function : all)
        if (function.name == name) return &function;
    return nullptr;
}

// The calls that are told of: of the cell's own formula, and of the blocks it looks up.
std::vector<FunctionCall> toldCalls(const CellToExplain& cell) {
    std::vector<FunctionCall> calls = callsIn(cell.formula);
    for (const auto& [name, formula] : cell.blocks)
        for (const FunctionCall& call : callsIn(formula)) calls.push_back(call);
    std::vector<FunctionCall> once;
    for (const FunctionCall& call : calls)
        if (std::find(once.begin(), once.end(), call) == once.end()) once.push_back(call);
    return once;
}

class Explanation {
  public:
    Explanation(const Book& book, const CellToExplain& cell, const std::vector<Value>& answers,
                Language language)
        : book_(book), cell_(cell), answers_(answers), language_(language) {}

    std::string text() {
        head();
        if (cell_.formula.empty() || cell_.formula[0] != '=') {
            line(in({"It is typed, not worked out.", "Está escrito, no calculado."}));
        } else {
            line(in({"Formula: ", "Fórmula: "}) + readable(cell_.formula));
            for (const auto& [name, formula] : cell_.blocks) block(name, formula);
            for (const FunctionCall& call : toldCalls(cell_)) function(call);
            if (toldCalls(cell_).empty())
                line(in({"Calc's own functions alone: it is right without the add-in, too.",
                         "Solo funciones propias de Calc: vale también sin el complemento."}));
        }
        findings();
        verdict();
        return said_;
    }

  private:
    std::string in(const Text& text) const { return text.in(language_); }
    void line(const std::string& words) { said_ += words + "\n"; }

    const BookPart* part() const {
        for (const BookPart& one : book_.parts)
            if (one.at.holds(cell_.at)) return &one;
        return nullptr;
    }
    // What stands in the row or column that names the cell.
    std::string heading(const Place& at, const BookPart& part) const {
        return part.is == BookPart::Is::Form ? textOf(book_.cell({at.sheet, part.at.column, at.row}))
                                             : textOf(book_.cell({at.sheet, at.column, part.at.row}));
    }

    void head() {
        const std::string& sheet = book_.sheets.at(static_cast<std::size_t>(cell_.at.sheet)).name;
        std::string words = addressOf(sheet, cell_.at);
        std::string unit;
        if (const BookPart* found = part()) {
            if (const std::string name = heading(cell_.at, *found); !name.empty()) words += ", " + name;
            unit = found->is == BookPart::Is::Form
                       ? textOf(book_.cell({cell_.at.sheet, found->at.column + 2, cell_.at.row}))
                       : textOf(book_.cell({cell_.at.sheet, cell_.at.column, found->at.row + 1}));
        }
        const Value& value = book_.cell(cell_.at);
        line(words + ": " + (isBlank(value) ? shown(value, language_) : textOf(value)) +
             (unit.empty() || !std::holds_alternative<double>(value) ? "" : " " + unit));
    }

    // The names that people see in place of those that files carry.
    static std::string readable(const std::string& formula) {
        std::string words;
        std::size_t from = 0;
        Scanner(formula).words([&](const std::string& word, std::size_t behind) {
            const bool call = behind < formula.size() && formula[behind] == '(';
            const std::string name = call ? displayName(word) : "";
            if (name.empty()) return;
            words += formula.substr(from, behind - word.size() - from) + name;
            from = behind;
        });
        return words + formula.substr(from);
    }

    void block(const std::string& name, const std::string& formula) {
        line(in({"It is looked up in the block ", "Se busca en el bloque "}) + name +
             in({" on Workings: ", " de Workings: "}) + readable(formula));
    }

    void function(const FunctionCall& call) {
        const addin::ListedFunction* about = listed(call.name);
        if (about == nullptr) return;
        line("");
        line(call.name + ": " + in(about->says));
        line(in({"  Method and source: ", "  Método y fuente: "}) + about->source);
        for (std::size_t n = 0; n < call.arguments.size(); ++n) {
            // The last one may take any number.
            const std::size_t place = std::min(n, about->arguments.size() - 1);
            const addin::ListedArgument* argument =
                about->arguments.empty() ? nullptr : &about->arguments[place];
            argumentLine(argument, call.arguments[n]);
        }
        line(in({"  Reason: ", "  Motivo: "}) + textOf(nextAnswer()));
    }

    void argumentLine(const addin::ListedArgument* argument, const std::string& written) {
        std::string words = "  " + (argument == nullptr ? std::string("…") : argument->name) + " = ";
        const Value& answer = nextAnswer();
        if (isHanded(written)) {
            const std::string table = tableHanded(written);
            words += table.empty() ? written : in({"the table ", "la tabla "}) + table;
        } else if (const Rect* range = rangeNamed(book_, written)) {
            words += written + in({", a range of ", ", un rango de "}) +
                     std::to_string(range->lastRow - range->row + 1) + " × " +
                     std::to_string(range->lastColumn - range->column + 1);
        } else if (written.empty()) {
            words += in({"left out", "omitido"}) +
                     (argument == nullptr || argument->fallback.empty() ? "" : ": " + argument->fallback);
        } else {
            const std::string value = shown(answer, language_);
            words += value + (value == written ? "" : "   (" + readable(written) + ")");
        }
        if (argument != nullptr && !in(argument->unit).empty() && std::holds_alternative<double>(answer))
            words += "   [" + in(argument->unit) + "]";
        line(words);
    }

    // "runs_in" is Runs, "pit_facts_in" Pit facts; nothing where several tables are behind it.
    std::string tableHanded(const std::string& name) const {
        for (const BookPart& one : book_.parts)
            if (handedName(one.name) == name) return one.name;
        return "";
    }

    const Value& nextAnswer() {
        static const Value none;
        return next_ < answers_.size() ? answers_[next_++] : none;
    }

    // What the rules say of the cell's row, with what was measured and what is allowed.
    void findings() {
        const BookPart* table = part();
        if (table == nullptr || table->is != BookPart::Is::Table || cell_.at.row < table->firstReady())
            return;
        const auto words = book_.names.find("findings_words"), numbers = book_.names.find("findings_numbers");
        if (words == book_.names.end() || numbers == book_.names.end()) return;
        const auto of = [&](const Rect& block, const char* name, int row) -> const Value& {
            static const Value none;
            for (int column = block.column; column <= block.lastColumn; ++column)
                if (textOf(book_.cell({block.sheet, column, block.row - 1})) == name)
                    return book_.cell({block.sheet, column, block.row + row});
            return none;
        };
        const int counted = cell_.at.row - table->firstReady() + 2;  // the thin row is the first
        bool first = true;
        for (int row = 0; row <= words->second.lastRow - words->second.row; ++row) {
            if (textOf(of(words->second, "Sheet", row)) != table->name ||
                of(numbers->second, "Row", row) != Value(static_cast<double>(counted)))
                continue;
            if (first)
                line("\n" + in({"What the rules say of this row:", "Lo que dicen las reglas de esta fila:"}));
            first = false;
            std::string said = "  " + textOf(of(words->second, "Severity", row)) + ", " +
                               textOf(of(words->second, "Rule", row)) + ": " +
                               textOf(of(words->second, "Says", row));
            line(said);
        }
    }

    void verdict() {
        const BookPart* table = part();
        if (table == nullptr || table->is != BookPart::Is::Table || cell_.at.row < table->firstReady())
            return;
        const auto column = book_.findColumn(*table, "Check");
        if (!column || *column == cell_.at.column) return;
        const std::string check = textOf(book_.cell({cell_.at.sheet, *column, cell_.at.row}));
        if (!check.empty()) line("\nCheck: " + check);
    }

    const Book& book_;
    const CellToExplain& cell_;
    const std::vector<Value>& answers_;
    Language language_;
    std::size_t next_ = 0;
    std::string said_;
};

}  // namespace

std::vector<FunctionCall> callsIn(const std::string& formula) {
    const Scanner scanner(formula);
    std::vector<FunctionCall> calls;
    scanner.words([&](const std::string& word, std::size_t behind) {
        if (behind >= formula.size() || formula[behind] != '(') return;
        if (const std::string name = displayName(word); !name.empty())
            calls.push_back({name, scanner.arguments(behind)});
    });
    return calls;
}

std::vector<std::string> blocksIn(const Book& book, const std::string& formula) {
    std::vector<std::string> blocks;
    Scanner(formula).words([&](const std::string& word, std::size_t) {
        const Rect* range = rangeNamed(book, word);
        if (range == nullptr || !book.isFormula({range->sheet, range->column, range->row})) return;
        const std::string& sheet = book.sheets.at(static_cast<std::size_t>(range->sheet)).name;
        if (sheet == sheetOfWorkings && std::find(blocks.begin(), blocks.end(), word) == blocks.end())
            blocks.push_back(word);
    });
    return blocks;
}

std::vector<std::string> questions(const CellToExplain& cell, Language language) {
    std::vector<std::string> asked;
    for (const FunctionCall& call : toldCalls(cell)) {
        std::string all;
        for (const std::string& argument : call.arguments) {
            asked.push_back(argument.empty() || isHanded(argument) ? "" : "=" + argument);
            all += ";" + argument;
        }
        // A function that answers in words has its language among its arguments already.
        if (language == Language::Spanish && !addin::takesLanguage(*addin::findFunction(call.name)))
            all += ";\"es\"";
        asked.push_back("=TRENCHBOOK.WHY(\"" + call.name + "\"" + all + ")");
    }
    return asked;
}

std::string explainCell(const Book& book, const CellToExplain& cell, const std::vector<Value>& answers,
                        Language language) {
    return Explanation(book, cell, answers, language).text();
}

}  // namespace trenchbook::sheets
