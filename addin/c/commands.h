// The menu's commands for a shell that is no C++: a workbook in as plain values, the steps out as JSON.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "catalog/value.h"

namespace trenchbook::addin {

// Whether there is a command of that name.
bool isCommand(std::string_view name);

// The answer of a command, as trenchbook_c.h lists them. Throws Malformed, sheets::Refused, std::runtime_error.
std::string command(std::string_view name, std::span<const Value> given);

}  // namespace trenchbook::addin
