// The methods of the component: each hands its arguments, and its place in the catalog, to the answering
// functions of shell/answer.h.
#include <stdexcept>

#include "generate/outputs.h"
#include "generate/signature.h"

namespace trenchbook::addin {
namespace {

struct Answer {
    const char* type;
    const char* function;
};

Answer answer(Returns returns) {
    switch (returns) {
        case Returns::Number:
            return {"double", "number"};
        case Returns::Words:
            return {"rtl::OUString", "words"};
        case Returns::NumberBlock:
            return {"NumberCells", "numberBlock"};
        case Returns::WordBlock:
            return {"TextCells", "wordBlock"};
    }
    throw std::logic_error("no such kind of answer");
}

std::string method(const Function& function, std::size_t place) {
    const Signature known = signature(function);
    const Answer given = answer(known.returns);
    std::string taken;
    std::string handed = std::to_string(place);
    for (std::size_t i = 0; i < known.parameters.size(); ++i) {
        const std::string name = "a" + std::to_string(i);
        taken += std::string(i == 0 ? "" : ", ") +
                 (known.parameters[i].variadic ? "const Anys& " : "const Any& ") + name;
        handed += ", " + name;
    }
    return std::string("    ") + given.type + " SAL_CALL " + known.method + "(" + taken +
           ") override {\n        return " + given.function + "(" + handed + ");\n    }\n";
}

}  // namespace

std::string forwardingText() {
    std::string text =
        "// Made from the catalog of functions.\n#pragma once\n\n#include "
        "<trenchbook/XFunctions.hpp>\n\n#include \"shell/answer.h\"\n\nnamespace trenchbook::addin "
        "{\n\nclass Forwarding : public "
        "Implements<::trenchbook::XFunctions, css::lang::XServiceInfo> {\n  public:\n";
    std::size_t place = 0;
    for (const Function& function : catalog()) text += method(function, place++);
    return text + "};\n\n}  // namespace trenchbook::addin\n";
}

}  // namespace trenchbook::addin
