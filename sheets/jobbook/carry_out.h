// Does to an open document what a command worked out.
#pragma once

#include "commands/steps.h"
#include "jobbook/parts.h"

namespace trenchbook::sheets {

// Calc takes a range written at once back only where its cells held something before: an empty one keeps what was
// written. What a person may want to undo is written cell by cell.
enum class Writing { AtOnce, ToBeUndone };

// One step after the other. Nothing is computed: that is the caller's to do when all is there.
void carryOut(const Document& document, const Steps& steps, Writing writing = Writing::AtOnce);

}  // namespace trenchbook::sheets
