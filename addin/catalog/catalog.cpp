#include <algorithm>
#include <cctype>
#include <unordered_map>

#include "catalog/arguments.h"
#include "catalog/families.h"

namespace trenchbook::addin {
namespace {

std::string camel(const std::string& words) {
    std::string joined;
    bool start = false;
    for (char c : words) {
        if (!std::isalnum(static_cast<unsigned char>(c))) {
            start = true;
            continue;
        }
        const int letter = static_cast<unsigned char>(c);
        joined += static_cast<char>(start && !joined.empty() ? std::toupper(letter) : std::tolower(letter));
        start = false;
    }
    return joined;
}

std::string lower(std::string_view text) {
    std::string out(text);
    std::transform(out.begin(), out.end(), out.begin(), [](unsigned char c) { return std::tolower(c); });
    return out;
}

}  // namespace

std::string methodName(const std::string& functionName) { return camel(functionName); }
std::string parameterName(const std::string& argumentName) { return camel(argumentName); }

bool takesUnits(const Function& function) {
    if (hasUnit(function.measure)) return true;
    return std::any_of(function.arguments.begin(), function.arguments.end(),
                       [](const Argument& argument) { return hasUnit(argument.measure); });
}

bool takesLanguage(const Function& function) {
    return function.returns == Returns::WordBlock || (function.returns == Returns::Words && function.speaks);
}

std::vector<Argument> allArguments(const Function& function) {
    std::vector<Argument> all = function.arguments;
    if (takesUnits(function))
        all.push_back({.name = "units",
                       .measure = Measure::Words,
                       .says = {"\"US\" or \"metric\"", "\"US\" o \"metric\""},
                       .fallback = "\"US\"",
                       .optional = true});
    if (takesLanguage(function))
        all.push_back({.name = "language",
                       .measure = Measure::Words,
                       .says = {"\"en\" or \"es\"", "\"en\" o \"es\""},
                       .fallback = "\"en\"",
                       .optional = true});
    return all;
}

const std::vector<Function>& catalog() {
    static const std::vector<Function> all = [] {
        std::vector<Function> joined;
        for (auto family : {tapeFunctions, rainFunctions, runoffFunctions, inletFunctions, pipeFunctions, runFunctions,
                            lineFunctions, gradeFunctions, soilFunctions, pitFunctions, swaleFunctions,
                            buyingFunctions, aboutFunctions}) {
            std::vector<Function> functions = family();
            joined.insert(joined.end(), functions.begin(), functions.end());
        }
        return joined;
    }();
    return all;
}

const Function* findFunction(std::string_view name) {
    static const std::unordered_map<std::string, const Function*> byName = [] {
        std::unordered_map<std::string, const Function*> known;
        for (const Function& function : catalog()) {
            known[lower(function.name)] = &function;
            known[lower(methodName(function.name))] = &function;
        }
        return known;
    }();
    const auto found = byName.find(lower(name));
    return found == byName.end() ? nullptr : found->second;
}

Result call(const Function& function, const std::vector<Value>& values) {
    return function.call(Arguments(function, values));
}

std::string why(const Function& function, const std::vector<Value>& values, Language language) {
    try {
        call(function, values);
        return "OK";
    } catch (const Error& error) {
        const std::vector<Argument> arguments = allArguments(function);
        for (std::size_t i = 0; i < arguments.size() && i < values.size(); ++i)
            if (arguments[i].name == error.argument() && !std::holds_alternative<Range>(values[i]))
                return error.sentence(language, arguments[i].name, asTyped(values[i]));
        return error.sentence(language);
    }
}

}  // namespace trenchbook::addin
