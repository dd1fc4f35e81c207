// Pieces of the office's configuration files.
#pragma once

#include <string>

#include "trenchbook/core/text.h"

namespace trenchbook::addin {

std::string xcuHead(const std::string& component);  // up to and with the opening of component-data
// A property that is no text for people.
std::string setting(const char* name, const std::string& value);
// A property in both languages, or in one for all.
std::string property(const char* name, const std::string& english, const std::string& spanish = {});
inline std::string property(const char* name, const Text& text) { return property(name, text.en, text.es); }

}  // namespace trenchbook::addin
