// CalcAddIns.xcu. Parameters are matched by their names in the interface; the order comes from there. Names
// stay the same in every language, so that a formula in a manual or an answer works everywhere; the help is
// translated. There is no CompatibilityName: newer offices would write it into .xlsx in place of the service's own
// name, which is the only one that older offices read there.
#include "catalog/listing.h"
#include "generate/outputs.h"
#include "generate/signature.h"
#include "generate/xcu.h"

namespace trenchbook::addin {
namespace {

Text withUnit(const Text& says, const Text& unit) {
    return unit.empty() ? says : says + Text::same(", ") + unit;
}

Text helpOf(const ListedFunction& function) {
    Text text = withUnit(function.says, function.unit);
    if (!function.columns.empty()) text += Text::same(": ") + Text::same(function.columns);
    if (function.block) text += Text{". Enter as an array formula", ". Se introduce como fórmula matricial"};
    return text + Text{". Example: =", ". Ejemplo: ="} + Text::same(function.example);
}

// Calc takes every argument of a free type for optional and says so: the text tells which must be given.
Text helpOf(const ListedArgument& argument) {
    Text text = withUnit(withUnit(argument.says, argument.unit), argument.range);
    if (!argument.fallback.empty())
        text += Text{". Left out: ", ". Si se omite: "} + Text::same(argument.fallback);
    else if (argument.optional)
        text += Text{". May be left out", ". Puede omitirse"};
    else
        text = Text{"Required: ", "Obligatorio: "} + text;
    return text;
}

}  // namespace

std::string registrationText() {
    std::string text = xcuHead("CalcAddIns") + "<node oor:name=\"AddInInfo\">\n<node oor:name=\"" +
                       std::string(serviceName) +
                       "\" oor:op=\"replace\">\n<node oor:name=\"AddInFunctions\">\n";
    for (const ListedFunction& function : listing()) {
        text += "<node oor:name=\"" + methodName(function.name) + "\" oor:op=\"replace\">\n";
        text += property("DisplayName", function.name);
        text += property("Description", helpOf(function));
        text += setting("Category", "Add-In");
        text += "<node oor:name=\"Parameters\">\n";
        for (const ListedArgument& argument : function.arguments)
            text += "<node oor:name=\"" + parameterName(argument.name) + "\" oor:op=\"replace\">\n" +
                    property("DisplayName", argument.name) + property("Description", helpOf(argument)) +
                    "</node>\n";
        text += "</node>\n</node>\n";
    }
    return text + "</node>\n</node>\n</node>\n</oor:component-data>\n";
}

}  // namespace trenchbook::addin
