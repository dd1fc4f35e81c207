// The UNO interface. Every argument is `any`, so that text in a number's place and gaps reach us and get an
// error of our own; an array answer is all numbers or all text, because Calc cannot compare text that sits in
// an any[][].
#include <set>
#include <stdexcept>

#include "generate/outputs.h"
#include "generate/signature.h"

namespace trenchbook::addin {
namespace {

const char* typeName(Returns returns) {
    switch (returns) {
        case Returns::Number:
            return "double";
        case Returns::Words:
            return "string";
        case Returns::NumberBlock:
            return "sequence< sequence< any > >";
        case Returns::WordBlock:
            return "sequence< sequence< string > >";
    }
    throw std::logic_error("no such kind of answer");
}

std::string method(const Signature& function) {
    std::string text = std::string("    ") + typeName(function.returns) + " " + function.method + "(";
    const char* separator = "";
    for (const Parameter& parameter : function.parameters) {
        text += std::string(separator) + "[in] " + (parameter.variadic ? "sequence< any > " : "any ") +
                parameter.name;
        separator = ", ";
    }
    return text +
           ")\n        raises (com::sun::star::lang::IllegalArgumentException, "
           "com::sun::star::sheet::NoConvergenceException);\n";
}

}  // namespace

std::string interfaceText() {
    std::string text =
        "// Made from the catalog of functions.\nmodule trenchbook {\n\ninterface XFunctions {\n";
    std::set<std::string> seen;
    for (const Function& function : catalog()) {
        const Signature known = signature(function);
        if (!seen.insert(known.method).second)
            throw std::runtime_error("two functions would be called " + known.method);
        text += method(known);
    }
    return text + "};\n\nservice Functions : XFunctions;\n\n};\n";
}

std::string frozenNamesText() {
    std::string text = std::string("service ") + serviceName + "\n";
    for (const Function& function : catalog()) {
        const Signature known = signature(function);
        text += function.name + " " + known.method + "(";
        const char* separator = "";
        for (const Parameter& parameter : known.parameters) {
            text += separator + parameter.name + (parameter.variadic ? "..." : "");
            separator = ", ";
        }
        text += ")\n";
    }
    return text;
}

}  // namespace trenchbook::addin
