// Bin packing on whole numbers: the fewest bins of one capacity that take all items.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#pragma GCC visibility push(hidden)
namespace trenchbook {

struct Packing {
    std::vector<std::vector<std::size_t>> bins;  // indexes of the items in each bin
    std::size_t fewest = 0;                      // proved lower bound
};

// Every item is above 0 and at most the capacity. `effort` limits the search: steps of about five nanoseconds.
// `quickSearch` of them go to the plain search before the programme in fractions (fractional.h) is set up.
Packing packBins(const std::vector<std::int64_t>& items, std::int64_t capacity, std::int64_t effort,
                 std::int64_t quickSearch = 500'000);

}  // namespace trenchbook
#pragma GCC visibility pop
