// The commands behind the menu's entries. Each throws Refused with a sentence where it cannot be done as things stand.
#pragma once

#include "menu/call.h"

namespace trenchbook::addin {

Answer nextMissing(Call& call);
Answer printRanges(Call& call);
Answer about(Call& call);

// The command of this name; throws Refused when there is none.
Answer run(Call& call);

}  // namespace trenchbook::addin
