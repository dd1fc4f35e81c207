// Another way to do the job, worked out in a file of its own: its price as it is today, beside this one's on
// Quote.
#pragma once

#include "commands/steps.h"

namespace trenchbook::sheets {

// Writes the snapshot into Options; the row of a file that stands there already is renewed. `day` as the office counts
// days. Throws Refused when the other job has no price to compare with.
Steps noteOption(const Book& job, const Book& other, const std::string& file, const std::string& name,
                 double day);
// What to print once the job is computed again.
std::string optionNoted(const Book& job, const std::string& file);

}  // namespace trenchbook::sheets
