// Does to an open document what a command worked out.
#pragma once

#include "commands/steps.h"
#include "jobbook/parts.h"

namespace trenchbook::sheets {

// One step after the other. Nothing is computed: that is the caller's to do when all is there.
void carryOut(const Document& document, const Steps& steps);

}  // namespace trenchbook::sheets
