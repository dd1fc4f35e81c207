// The functions for the shell in Python: their methods, and whether the last argument is a list of values.
#include "generate/outputs.h"
#include "generate/signature.h"

namespace trenchbook::addin {

std::string pythonText() {
    std::string text =
        "# Made from the catalog of functions: the method, and whether its last argument holds any number of values.\n"
        "FUNCTIONS = (\n";
    for (const Function& function : catalog()) {
        const Signature known = signature(function);
        const bool variadic = !known.parameters.empty() && known.parameters.back().variadic;
        text += "    (\"" + known.method + "\", " + (variadic ? "True" : "False") + "),\n";
    }
    return text + ")\n";
}

}  // namespace trenchbook::addin
