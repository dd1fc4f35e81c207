#include "kit/judged.h"

#include "spanish/spanish.h"

#include <algorithm>
#include <functional>
#include <regex>
#include <stdexcept>

namespace trenchbook::sheets {
namespace {

const std::string onward = "\"-\"";  // what a link shows when none of its cases holds

// The formulas of the links; `before` names the cell of the link with that number, from 1.
std::vector<std::string> links(const Cases& cases, const std::string& otherwise,
                               const std::function<std::string(std::size_t)>& before) {
    std::vector<std::string> made;
    const std::string& last = onward.size() > otherwise.size() ? onward : otherwise;
    std::string opened, closing;
    int held = 0;  // cases in the link that is being made
    const auto start = [&] {
        opened = closing = "";
        held = 0;
        if (made.empty()) return;
        const std::string above = before(made.size());
        opened = "IF(" + above + "<>" + onward + ";" + above + ";";
        closing = ")";
    };
    start();
    for (const auto& [condition, answer] : cases) {
        const std::string more = "IF(" + condition + ";" + answer + ";";
        const auto fits = [&] {
            const std::string whole = opened + more + last + closing + ")";
            return lengthAtMost(whole) <= longestFormula && depthOf(whole) <= deepestFormula;
        };
        if (!fits() && held > 0) {
            made.push_back(opened + onward + closing);
            start();
        }
        if (!fits()) throw std::logic_error("one case alone is too long a formula: " + more);
        opened += more;
        closing += ")";
        ++held;
    }
    made.push_back(opened + otherwise + closing);
    return made;
}

Field& fieldOf(Form& form, const std::string& name) {
    for (Field& field : form.fields)
        if (field.name == name) return field;
    throw std::logic_error("form " + form.name + " has no field named " + name);
}

void addBefore(Form& form, const std::string& name, const std::vector<std::string>& formulas) {
    const Field& last = fieldOf(form, name);
    std::vector<Field> added;
    for (std::size_t n = 0; n < formulas.size(); ++n)
        added.push_back({.label = last.label + " " + std::to_string(n + 1),
                         .name = name + "_" + std::to_string(n + 1),
                         .kind = Kind::Computed,
                         .format = show::general,
                         .value = "=" + formulas[n],
                         .helper = true});
    const auto place = std::find_if(form.fields.begin(), form.fields.end(),
                                    [&](const Field& field) { return field.name == name; });
    form.fields.insert(place, added.begin(), added.end());
}

}  // namespace

std::size_t lengthAtMost(const std::string& formula) {
    static const std::regex marks(R"(\[([^\]\[]+)\]|\{([a-z][a-z0-9]*(?:\.[a-z0-9]+)*)\}|"[^"]*")");
    std::size_t length = formula.size() + std::string("of:=").size();
    for (std::sregex_iterator match(formula.begin(), formula.end(), marks), end; match != end; ++match) {
        const std::string mark = (*match)[1], rule = (*match)[2];
        std::size_t cell = 0;
        if (!rule.empty()) {
            cell = std::string("rule_").size() + rule.size();
        } else if (mark.empty()) {
            // A text with a name of its own stands by that (spanish/spanish.h).
            const std::string text = match->str(), english = text.substr(1, text.size() - 2);
            if (inSpanish(english)) length = length + sayName(english).size() - text.size();
            continue;
        } else if (mark == "#") {
            cell = std::string("a_long_tables_name_row").size();
        } else if (const auto dot = mark.find('.'); dot != std::string::npos) {
            cell = dot + std::string("$''.$AB$160:$AB$160").size();
        } else {
            cell = std::string("$AB160").size();
        }
        if (rule.empty() && mark != "#") cell += std::string("[.]").size();
        length = length + cell - static_cast<std::size_t>(match->length());
    }
    return length;
}

int depthOf(const std::string& formula) {
    int depth = 0, deepest = 0;
    bool quoted = false;
    for (const char c : formula) {
        if (c == '"') quoted = !quoted;
        if (quoted) continue;
        if (c == '(') deepest = std::max(deepest, ++depth);
        if (c == ')') --depth;
    }
    return deepest;
}

void judge(Table& table, const std::string& heading, const Cases& cases, const std::string& otherwise) {
    const auto link = [&](std::size_t number) { return heading + " " + std::to_string(number); };
    const std::vector<std::string> made =
        links(cases, otherwise, [&](std::size_t number) { return "[" + link(number) + "]"; });
    const auto column = std::find_if(table.columns.begin(), table.columns.end(),
                                     [&](const Column& one) { return one.heading == heading; });
    if (column == table.columns.end())
        throw std::logic_error("table " + table.name + " has no column " + heading);
    column->formula = made.back();
    for (std::size_t number = 1; number < made.size(); ++number)
        table.columns.push_back({.heading = link(number),
                                 .format = show::general,
                                 .width = 20,
                                 .formula = made[number - 1],
                                 .helper = true});
}

void judge(Form& form, const std::string& name, const Cases& cases, const std::string& otherwise) {
    std::vector<std::string> made =
        links(cases, otherwise, [&](std::size_t number) { return name + "_" + std::to_string(number); });
    fieldOf(form, name).value = "=" + made.back();
    made.pop_back();
    addBefore(form, name, made);
}

void join(Form& form, const std::string& name, const std::string& between,
          const std::vector<std::string>& texts) {
    std::string list;
    for (std::size_t n = 1; n <= texts.size(); ++n) list += ";" + name + "_" + std::to_string(n);
    fieldOf(form, name).value = "=TEXTJOIN(" + between + ";1" + list + ")";
    addBefore(form, name, texts);
}

}  // namespace trenchbook::sheets
