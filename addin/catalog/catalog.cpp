#include <algorithm>
#include <cctype>
#include <iterator>
#include <set>
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

struct Catalog {
    std::vector<Function> functions;
    std::vector<Family> families;
};

const Catalog& wholeCatalog() {
    static const Catalog whole = [] {
        struct Source {
            Text title;
            std::vector<Function> (*functions)();
        };
        const Source sources[] = {
            {{"Reading and writing what people say", "Leer y escribir lo que dice la gente"}, tapeFunctions},
            {{"Rain", "Lluvia"}, rainFunctions},
            {{"Runoff", "Escurrimiento"}, runoffFunctions},
            {{"Inlets", "Entradas de agua"}, inletFunctions},
            {{"Pipe", "Tubería"}, pipeFunctions},
            {{"Runs", "Tramos"}, runFunctions},
            {{"The whole job", "La obra entera"}, jobFunctions},
            {{"Storms on a job", "Tormentas sobre una obra"}, stormFunctions},
            {{"What a job is made of", "De qué se hace una obra"}, takeoffFunctions},
            {{"The plan of a job", "El plan de una obra"}, planFunctions},
            {{"Lines seen from the side", "Líneas vistas de lado"}, profileFunctions},
            {{"Lines", "Líneas"}, lineFunctions},
            {{"Boxes, bends and wyes", "Cajas, codos e yees"}, structureFunctions},
            {{"Stations", "Estaciones"}, stationFunctions},
            {{"The lot in plan", "El lote en planta"}, layoutFunctions},
            {{"Grade", "Rasante"}, gradeFunctions},
            {{"Soil", "Suelo"}, soilFunctions},
            {{"Pit", "Pozo de infiltración"}, pitFunctions},
            {{"Drains in the ground", "Drenes en el suelo"}, perforatedFunctions},
            {{"Swale", "Zanja abierta"}, swaleFunctions},
            {{"Outlets", "Salidas"}, outletFunctions},
            {{"Pump", "Bomba"}, pumpFunctions},
            {{"Floating and footings", "Flotación y cimientos"}, buriedFunctions},
            {{"Digging and buying", "Excavar y comprar"}, buyingFunctions},
            {{"Suppliers", "Proveedores"}, purchaseFunctions},
            {{"Money", "Dinero"}, moneyFunctions},
            {{"Money in time", "Dinero en el tiempo"}, calendarFunctions},
            {{"About", "Acerca de"}, aboutFunctions},
        };
        Catalog all;
        std::vector<std::size_t> starts;
        for (const Source& source : sources) {
            starts.push_back(all.functions.size());
            std::vector<Function> functions = source.functions();
            std::move(functions.begin(), functions.end(), std::back_inserter(all.functions));
        }
        starts.push_back(all.functions.size());
        // Only now do the functions stay where they are.
        const std::span<const Function> functions = all.functions;
        for (std::size_t i = 0; i < std::size(sources); ++i)
            all.families.push_back(
                {sources[i].title, functions.subspan(starts[i], starts[i + 1] - starts[i])});
        return all;
    }();
    return whole;
}

}  // namespace

std::string methodName(const std::string& functionName) { return camel(functionName); }

std::string parameterName(const std::string& argumentName) {
    // Words that the interface language or C++ keep for themselves.
    static const std::set<std::string> kept = {
        "any",       "auto",     "boolean",  "bool",    "break",     "byte",     "case",   "char",
        "class",     "const",    "default",  "delete",  "do",        "double",   "else",   "enum",
        "exception", "export",   "false",    "float",   "for",       "friend",   "get",    "goto",
        "hyper",     "if",       "in",       "int",     "interface", "long",     "module", "new",
        "operator",  "optional", "or",       "out",     "private",   "property", "public", "published",
        "raises",    "readonly", "register", "return",  "sequence",  "service",  "set",    "short",
        "signed",    "static",   "string",   "struct",  "switch",    "template", "this",   "throw",
        "true",      "try",      "type",     "typedef", "union",     "unsigned", "using",  "virtual",
        "void",      "volatile", "while"};
    const std::string name = camel(argumentName);
    return kept.contains(name) ? name + "Value" : name;
}

bool takesUnits(const Function& function) {
    if (hasUnit(function.measure)) return true;
    return std::any_of(function.arguments.begin(), function.arguments.end(),
                       [](const Argument& argument) { return hasUnit(argument.measure); });
}

bool takesLanguage(const Function& function) {
    return function.returns == Returns::WordBlock || function.letters ||
           (function.returns == Returns::Words && function.speaks);
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
    all.insert(all.end(), function.later.begin(), function.later.end());
    return all;
}

const std::vector<Function>& catalog() { return wholeCatalog().functions; }
const std::vector<Family>& families() { return wholeCatalog().families; }

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

Result call(const Function& function, std::span<const Value> values) {
    return function.call(Arguments(function, values));
}

std::string why(const Function& function, std::span<const Value> values, Language language) {
    try {
        call(function, values);
        return "OK";
    } catch (const Error& error) {
        const std::vector<Argument> arguments = allArguments(function);
        for (std::size_t i = 0; i < arguments.size() && i < values.size(); ++i)
            if (arguments[i].name == error.argument() && !std::holds_alternative<Range>(values[i]))
                return error.sentence(language, arguments[i].name, asTyped(values[i]).in(language));
        return error.sentence(language);
    }
}

}  // namespace trenchbook::addin
