#include "generate/signature.h"

#include <cctype>
#include <set>
#include <stdexcept>

namespace trenchbook::addin {
namespace {

void requireName(const std::string& name, const std::string& function) {
    if (name.empty() || std::isdigit(static_cast<unsigned char>(name.front())))
        throw std::runtime_error(function + ": \"" + name + "\" cannot be a name in an interface");
}

}  // namespace

Signature signature(const Function& function) {
    Signature made{.method = methodName(function.name), .parameters = {}, .returns = function.returns};
    requireName(made.method, function.name);
    std::set<std::string> seen;
    for (const Argument& argument : allArguments(function)) {
        const std::string name = parameterName(argument.name);
        requireName(name, function.name);
        if (!seen.insert(name).second)
            throw std::runtime_error(function.name + ": two arguments are called " + name);
        made.parameters.push_back({name, argument.variadic});
    }
    return made;
}

}  // namespace trenchbook::addin
