// docs/functions.md: every function with its arguments, units, defaults, an example and where its method
// comes from.
#include "catalog/listing.h"
#include "generate/outputs.h"

namespace trenchbook::addin {
namespace {

std::string cell(std::string text) {
    for (std::size_t at = 0; (at = text.find('|', at)) != std::string::npos; at += 2) text.insert(at, "\\");
    return text;
}

std::string gives(const ListedFunction& function) {
    if (!function.columns.empty()) return "Array: " + function.columns;
    return function.unit.empty() ? "" : function.unit.en;
}

std::string section(const ListedFunction& function) {
    std::string text =
        "### " + function.name + "\n\n" + function.says.en + ".\n\n    " + function.call + "\n\n";
    if (!function.arguments.empty()) {
        text += "| argument | what it is | unit | range | left out |\n|---|---|---|---|---|\n";
        for (const ListedArgument& argument : function.arguments) {
            const std::string leftOut = !argument.fallback.empty() ? argument.fallback
                                        : argument.optional        ? "allowed"
                                                                   : "";
            text += "| " + cell(argument.name) + " | " + cell(argument.says.en) + " | " +
                    cell(argument.unit.en) + " | " + argument.range.en + " | " + cell(leftOut) + " |\n";
        }
        text += "\n";
    }
    if (const std::string answer = gives(function); !answer.empty()) text += "Gives: " + answer + ".  \n";
    text += "Example: `=" + function.example + "`  \nSource: " + function.source + ".\n\n";
    return text;
}

}  // namespace

std::string referenceText() {
    std::string text =
        "# Functions\n\nMade from the catalog in `addin/catalog`; do not edit. Arguments in brackets may be "
        "left out. Between arguments\nstands `;` or `,`, whichever your language setting uses. The last "
        "arguments of every function are `units`\n(\"US\" or \"metric\") where it has units, then `language` "
        "(\"en\" or \"es\") where it answers in words. Array\nfunctions are entered over a range with "
        "Ctrl+Shift+Enter. A bad argument shows Err:502, and\n`TRENCHBOOK.WHY(\"NAME\"; same arguments)` "
        "says which one, what it is, and what is allowed.\n\n";
    std::string family;
    for (const ListedFunction& function : listing()) {
        if (function.family.en != family) {
            family = function.family.en;
            text += "## " + family + "\n\n";
        }
        text += section(function);
    }
    return text.substr(0, text.size() - 1);
}

}  // namespace trenchbook::addin
