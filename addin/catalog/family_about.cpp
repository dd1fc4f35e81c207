// What the add-in says about itself: why a cell shows an error, where a method comes from, what is installed.
#include <sstream>

#include "catalog/arguments.h"
#include "catalog/families.h"
#include "catalog/host.h"
#include "catalog/self_test.h"
#include "trenchbook/core/version.h"

namespace trenchbook::addin {
namespace {

Argument functionArgument(Text says) {
    return {.name = "function", .measure = Measure::Words, .says = std::move(says)};
}

const Text knownFunction = {"a Trenchbook function such as PIPE.CAPACITY",
                            "una función de Trenchbook como PIPE.CAPACITY"};

const Function& named(const Arguments& in, const std::string& name) {
    const Function* function = findFunction(name);
    if (function == nullptr) in.refuse(0, knownFunction);
    return *function;
}

bool asks(const Value& value, const char* language) {
    const std::string* word = std::get_if<std::string>(&value);
    return word != nullptr && *word == language;
}

// Where a function that answers in words is told its language.
std::size_t languageIndex(const Function& function) {
    return function.arguments.size() + (takesUnits(function) ? 1 : 0);
}

// The language comes last, as in other functions. Those that answer in words have a place of their own for it, and
// keep it; for the others it is one argument more than they take.
std::string because(const Arguments& in) {
    std::span<const Value> given = in.rest(1);
    const std::string name = in.text(0);
    Language language = !given.empty() && asks(given.back(), "es") ? Language::Spanish : Language::English;
    // A name that is not known is answered in words, too: an error here would be the end of the road.
    try {
        const Function& function = named(in, name);
        if (takesLanguage(function)) {
            const std::size_t at = languageIndex(function);
            if (at < given.size() && asks(given[at], "es")) language = Language::Spanish;
        } else if (!given.empty() && (asks(given.back(), "es") || asks(given.back(), "en"))) {
            given = given.first(given.size() - 1);
        }
        return why(function, given, language);
    } catch (const Error& error) {
        return error.sentence(language);
    }
}

const char* platform() {
#if defined(__linux__) && defined(__x86_64__)
    return "Linux x86-64, GCC " __VERSION__;
#else
    return "compiler " __VERSION__;
#endif
}

std::string support(Language language) {
    const auto say = [language](const Text& text) { return text.in(language); };
    const SelfTest test = selfTest();
    std::ostringstream text;
    text << "Trenchbook " << version() << "; " << host() << "; " << platform() << "; " << catalog().size()
         << say({" functions; self-test: ", " funciones; autoprueba: "}) << test.right
         << say({" of ", " de "}) << test.made()
         << say({" printed values right", " valores impresos correctos"});
    for (const std::string& wrong : test.wrong) text << "; " << wrong;
    return text.str();
}

}  // namespace

std::vector<Function> aboutFunctions() {
    return {
        {.name = "TRENCHBOOK.WHY",
         .says = {"The sentence behind an error in a cell, or OK",
                  "La frase detrás de un error en una celda, u OK"},
         .arguments =
             {functionArgument({"the function's name in quotes", "el nombre de la función entre comillas"}),
              {.name = "arguments",
               .says = {"the arguments that the cell gives it; behind them \"es\" for an answer in Spanish",
                        "los argumentos que le da la celda; detrás \"es\" para que responda en español"},
               .optional = true,
               .variadic = true}},
         .returns = Returns::Words,
         .source = "Calc shows only a number for an error, never the reason",
         .example = "TRENCHBOOK.WHY(\"PIPE.CAPACITY\"; \"4 SDR35\"; -0.01)",
         .speaks = false,
         .call = [](const Arguments& in) -> Result { return because(in); }},
        {.name = "TRENCHBOOK.SOURCE",
         .says = {"Method and published source of a function", "Método y fuente publicada de una función"},
         .arguments = {functionArgument(
             {"the function's name in quotes", "el nombre de la función entre comillas"})},
         .returns = Returns::Words,
         .source = "The catalog of functions",
         .example = "TRENCHBOOK.SOURCE(\"PIPE.CAPACITY\")",
         .speaks = false,
         .call = [](const Arguments& in) -> Result { return named(in, in.text(0)).source; }},
        {.name = "TRENCHBOOK.VERSION",
         .says = {"Version of the engine, to stamp on a workbook", "Versión del motor, para sellar un libro"},
         .returns = Returns::Words,
         .source = "Results change only with a new major version or an entry in the list of changes",
         .example = "TRENCHBOOK.VERSION()",
         .speaks = false,
         .call = [](const Arguments&) -> Result { return std::string(version()); }},
        {.name = "TRENCHBOOK.SUPPORT",
         .says = {"What is installed and whether it computes right: one text to send with a question",
                  "Qué está instalado y si calcula bien: un texto para enviar con una pregunta"},
         .returns = Returns::Words,
         .source = "Self-test against printed values: ASTM D1785; TR-55, table 2-1; a printed table of "
                   "hydraulic elements",
         .example = "TRENCHBOOK.SUPPORT()",
         .call = [](const Arguments& in) -> Result { return support(in.language()); }},
    };
}

}  // namespace trenchbook::addin
