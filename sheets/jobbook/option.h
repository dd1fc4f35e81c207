// Another way to do the job, worked out in a file of its own: its price as it is today, beside this one's on
// Quote.
#pragma once

#include "jobbook/parts.h"

namespace trenchbook::sheets {

// Writes the snapshot into Options; the row of a file that stands there already is renewed. Throws Refused
// when the other job has no price to compare with. Returns what to print; the job is computed again.
std::string noteOption(const Document& job, const Document& other, const std::string& file,
                       const std::string& name);

}  // namespace trenchbook::sheets
