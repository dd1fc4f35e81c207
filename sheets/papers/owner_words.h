// Sentences about the job in plain words, for the papers that go to the owner. Each is a hidden field of its own that
// the papers name: said_pipes, said_inlets, said_pit, said_storm…
#pragma once

#include <string>
#include <vector>

#include "kit/model.h"
#include "kit/said_count.h"

namespace trenchbook::sheets {

// All of them, on no paper.
Form ownersWords();
// Hidden fields: the holidays that are no business days in the days after the agreement.
Form federalHolidays();

namespace words {

// The unit of lengths, with a blank in front.
const std::string length = "IF(units=\"metric\";\" m\";\" ft\")";

// "3 downspouts" from a count, nothing when there are none.
inline std::string counted(const std::string& count, const std::string& one, const std::string& many) {
    return "IF(" + count + "=0;\"\";" + saidCount(count, one, many) + ")";
}

}  // namespace words
}  // namespace trenchbook::sheets
