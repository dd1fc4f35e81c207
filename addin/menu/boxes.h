// Boxes that talk to a person at the window.
#pragma once

#include "menu/call.h"

namespace trenchbook::addin {

enum class Box { Done, Refused };
void show(const Call& call, Box kind, const std::string& says);

}  // namespace trenchbook::addin
