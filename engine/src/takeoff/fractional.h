// Bin packing in fractions: how many bins are needed when each filling may be used any fraction of a time.
//
// The linear programme of P. C. Gilmore and R. E. Gomory (A linear programming approach to the cutting-stock
// problem, Operations Research 9, 1961): least sum of uses such that every item is covered, over all
// fillings; fillings are found as they are wanted, by a knapsack over the programme's prices of items.
// It is a bound from below that is nearly always the answer itself when rounded up, and what it uses
// most is a good guess of what to fill next.
//
// The bound is proved in whole numbers, whatever the rounding of the programme: items have whole prices,
// no filling is worth more than `bin`, so all items need at least (worth of all) / bin bins.
#pragma once

#include <cstdint>
#include <memory>
#include <vector>

#include "takeoff/patterns.h"

#pragma GCC visibility push(hidden)
namespace trenchbook {

struct FractionalPacking;

// Keeps the fillings it found, so that another stock of the same sizes is answered sooner.
class FractionalPacker {
  public:
    class Programme;

    // Of these sizes there are never more than `counts`.
    FractionalPacker(std::vector<std::int64_t> sizes, std::vector<int> counts, std::int64_t capacity);

    // `counts` of the sizes, some above 0. Much sooner `from` the answer for a stock that is a little larger.
    // Steps are taken from `effort`, about five nanoseconds each.
    FractionalPacking solve(const std::vector<int>& counts, std::int64_t& effort,
                            const FractionalPacking* from = nullptr);

  private:
    std::vector<std::int64_t> sizes_;
    std::int64_t capacity_;
    std::vector<Pattern> columns_;
};

struct FractionalPacking {
    bool known = false;                // false: the effort ended before a bound was proved
    std::vector<std::int64_t> prices;  // of an item of each size
    std::int64_t bin = 0;              // no filling is worth more
    std::int64_t worth = 0;            // of all items
    std::size_t fewest() const { return known ? static_cast<std::size_t>((worth + bin - 1) / bin) : 0; }

    struct Use {
        Pattern pattern;
        double times;
    };
    std::vector<Use> uses;
    std::shared_ptr<FractionalPacker::Programme> programme;
};

}  // namespace trenchbook
#pragma GCC visibility pop
