// CalcAddIns.xcu. Parameters are matched by their names in the interface; the order comes from there. Names
// stay the same in every language, so that a formula in a manual or an answer works everywhere; the help is
// translated.
#include "catalog/listing.h"
#include "generate/outputs.h"
#include "generate/signature.h"

namespace trenchbook::addin {
namespace {

std::string escaped(const std::string& text) {
    std::string out;
    for (char c : text) {
        switch (c) {
            case '&':
                out += "&amp;";
                break;
            case '<':
                out += "&lt;";
                break;
            case '>':
                out += "&gt;";
                break;
            default:
                out += c;
        }
    }
    return out;
}

std::string property(const char* name, const std::string& english, const std::string& spanish = {}) {
    std::string text = std::string("<prop oor:name=\"") + name + "\"><value xml:lang=\"en\">" +
                       escaped(english) + "</value>";
    if (!spanish.empty()) text += "<value xml:lang=\"es\">" + escaped(spanish) + "</value>";
    return text + "</prop>\n";
}
std::string property(const char* name, const Text& text) { return property(name, text.en, text.es); }

Text withUnit(const Text& says, const Text& unit) {
    return unit.empty() ? says : says + Text::same(", ") + unit;
}

Text helpOf(const ListedFunction& function) {
    Text text = withUnit(function.says, function.unit);
    if (!function.columns.empty()) text += Text::same(": ") + Text::same(function.columns);
    if (function.block)
        text += Text{". Enter as an array formula.", ". Se introduce como fórmula matricial."};
    return text;
}

Text helpOf(const ListedArgument& argument) {
    Text text = withUnit(withUnit(argument.says, argument.unit), argument.range);
    if (!argument.fallback.empty())
        text += Text{". Left out: ", ". Si se omite: "} + Text::same(argument.fallback);
    else if (argument.optional)
        text += Text{". May be left out", ". Puede omitirse"};
    return text;
}

}  // namespace

std::string registrationText() {
    std::string text =
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
        "<oor:component-data xmlns:oor=\"http://openoffice.org/2001/registry\""
        " xmlns:xs=\"http://www.w3.org/2001/XMLSchema\""
        " oor:name=\"CalcAddIns\" oor:package=\"org.openoffice.Office\">\n"
        "<node oor:name=\"AddInInfo\">\n<node oor:name=\"" +
        std::string(serviceName) + "\" oor:op=\"replace\">\n<node oor:name=\"AddInFunctions\">\n";
    for (const ListedFunction& function : listing()) {
        text += "<node oor:name=\"" + methodName(function.name) + "\" oor:op=\"replace\">\n";
        text += property("DisplayName", function.name);
        text += property("Description", helpOf(function));
        text += "<prop oor:name=\"Category\"><value>Add-In</value></prop>\n";
        text += property("CompatibilityName", function.name);
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
