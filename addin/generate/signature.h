// How a function of the catalog looks to the office: its method, its parameters, its type.
#pragma once

#include <string>
#include <vector>

#include "catalog/function.h"

namespace trenchbook::addin {

inline constexpr const char* serviceName = "trenchbook.Functions";

struct Parameter {
    std::string name;
    bool variadic = false;
};

struct Signature {
    std::string method;  // "pipeCapacity"
    std::vector<Parameter> parameters;
    Returns returns = Returns::Number;
};

// Throws std::runtime_error when a name cannot stand in an interface, or stands there twice.
Signature signature(const Function& function);

}  // namespace trenchbook::addin
