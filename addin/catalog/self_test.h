// A handful of printed values, computed anew where the add-in runs: a damaged or mixed-up installation shows.
#pragma once

#include <string>
#include <vector>

namespace trenchbook::addin {

struct SelfTest {
    std::size_t right = 0;
    std::vector<std::string> wrong;  // "PIPE.OUTSIDE gives 4.6, printed 4.5 in ASTM D1785"

    std::size_t made() const { return right + wrong.size(); }
};

SelfTest selfTest();

}  // namespace trenchbook::addin
