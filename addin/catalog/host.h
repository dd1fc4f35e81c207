// The program that the functions run in, for TRENCHBOOK.SUPPORT. The office's shell tells it when it loads.
#pragma once

#include <string>

namespace trenchbook::addin {

void setHost(std::string name);
std::string host();  // "no office" until told

}  // namespace trenchbook::addin
