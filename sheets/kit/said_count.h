// A count in a sentence, singular or plural as the count asks.
#pragma once

#include <string>

namespace trenchbook::sheets {

// saidCount("count_no", "row has", "rows have") shows "1 row has", "3 rows have".
inline std::string saidCount(const std::string& count, const std::string& one, const std::string& many) {
    return count + "&IF(" + count + "=1;\" " + one + "\";\" " + many + "\")";
}

}  // namespace trenchbook::sheets
