#include "formula/check.h"

#include <algorithm>
#include <cctype>
#include <cstdlib>
#include <regex>
#include <stdexcept>

#include "catalog/function.h"
#include "formula/native.h"

namespace trenchbook::sheets {
namespace {

using addin::Argument;
using addin::Measure;

std::string counted(std::size_t least, std::size_t most) {
    if (least == most) return std::to_string(least);
    return std::to_string(least) + " to " + std::to_string(most);
}

// Measures that are also typed as the trade writes them, or by a word.
bool readsText(Measure measure) {
    switch (measure) {
        case Measure::Plain:  // runoff surfaces, materials and the like have names
        case Measure::Words:
        case Measure::Table:
        case Measure::Pipe:
        case Measure::Slope:
        case Measure::Share:
        case Measure::Feet:
        case Measure::Inches:
        case Measure::ByKey:
            return true;
        default:
            return false;
    }
}

bool isNumberText(const std::string& text) {
    char* rest = nullptr;
    std::strtod(text.c_str(), &rest);
    return !text.empty() && *rest == '\0';
}

bool isOneValue(const Node& node) {
    return node.is == Node::Is::Number || node.is == Node::Is::Text || node.is == Node::Is::Rule ||
           (node.is == Node::Is::Table && node.text.find('.') == std::string::npos);
}

bool isColumn(const Node& node) {
    if (node.is == Node::Is::Call && node.text == "IFERROR") return isColumn(node.parts.at(0));
    return node.is == Node::Is::Table && node.text.find('.') != std::string::npos;
}

// `columns`: the call is handed whole columns. Without any it works on one row, and single cells are columns of one.
void checkKind(const std::string& function, const Argument& argument, const Node& given, bool columns) {
    const std::string where = function + ", argument " + argument.name + ": ";
    const bool literal = given.is == Node::Is::Number || given.is == Node::Is::Text;
    if (argument.column && columns && isOneValue(given))
        throw std::logic_error(where + "asks for a column, not for one value");
    if (argument.measure == Measure::Table && literal) throw std::logic_error(where + "asks for a range");
    if (given.is == Node::Is::Text && !given.text.empty() && !readsText(argument.measure) &&
        !isNumberText(given.text))
        throw std::logic_error(where + "asks for a number, not for \"" + given.text + "\"");
    if (given.is == Node::Is::Number && argument.measure == Measure::Words)
        throw std::logic_error(where + "asks for words, not for " + given.text);
}

void checkCatalogCall(const addin::Function& function, const Node& call) {
    const std::vector<Argument> all = addin::allArguments(function);
    const auto least = static_cast<std::size_t>(std::count_if(
        all.begin(), all.end(), [](const Argument& one) { return !one.optional && !one.variadic; }));
    const bool any = !all.empty() && all.back().variadic;
    const std::size_t most = any ? 255 : all.size();
    if (call.parts.size() < least || call.parts.size() > most)
        throw std::logic_error(function.name + " takes " + counted(least, most) + " arguments, not " +
                               std::to_string(call.parts.size()));
    const bool columns = std::any_of(call.parts.begin(), call.parts.end(), isColumn);
    // One left out between semicolons is the function's to judge: for some it has a meaning, a round grate's width.
    for (std::size_t i = 0; i < call.parts.size(); ++i) {
        const Argument& argument = all[std::min(i, all.size() - 1)];
        checkKind(function.name, argument, call.parts[i], columns);
    }
}

void checkCall(const Node& call) {
    if (const NativeFunction* native = nativeFunction(call.text)) {
        const int given = static_cast<int>(call.parts.size());
        if (given < native->least || given > native->most)
            throw std::logic_error(
                call.text + " takes " +
                counted(static_cast<std::size_t>(native->least), static_cast<std::size_t>(native->most)) +
                " arguments, not " + std::to_string(given));
    } else if (const addin::Function* function = addin::findFunction(call.text);
               function != nullptr && function->name == call.text) {
        checkCatalogCall(*function, call);
    } else {
        throw std::logic_error("there is no function " + call.text);
    }
}

}  // namespace

void checkFormula(const Node& formula, const std::set<std::string>& names) {
    static const std::regex address(
        R"((?:\$?'?[A-Za-z -]+'?\.)?\$?[A-Z]{1,3}\$?[0-9]+(?::\$?[A-Z]{1,3}\$?[0-9]+)?)");
    if (formula.is == Node::Is::Call) checkCall(formula);
    if (formula.is == Node::Is::Name && names.count(formula.text) == 0 &&
        !std::regex_match(formula.text, address))
        throw std::logic_error("nothing is named " + formula.text);
    for (const Node& part : formula.parts) checkFormula(part, names);
}

}  // namespace trenchbook::sheets
