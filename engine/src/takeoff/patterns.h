// Items of a bin packing problem by size, and what one bin takes of them.
#pragma once

#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

#pragma GCC visibility push(hidden)
namespace trenchbook {

// Distinct sizes, largest first, and how many of each.
struct ItemStock {
    std::vector<std::int64_t> sizes;
    std::vector<int> counts;
};

using Pattern = std::vector<std::pair<std::size_t, int>>;  // index of the size, how many

}  // namespace trenchbook
#pragma GCC visibility pop
