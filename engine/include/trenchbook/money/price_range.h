// What a job may cost, from the range of each part and the chance of what may go wrong: the chance that a price loses money.
//
//     #include "trenchbook/money/price_range.h"
//     using namespace trenchbook;
//     const std::vector<CostPart> parts = {{.likely = 1000, .low = 900, .high = 1400},
//                                          {.likely = 600, .low = 200, .high = 1500, .chance = 0.1}};
//     PriceRange range(parts);
//     range.lossAt(1300);    // share of the draws in which the parts cost more than 1300
//     range.cost(0.9);       // more than this in one draw out of ten
//
// Each part is triangular between low and high with its top at likely (the usual three-point estimate), and is there with its
// chance; parts are independent of each other. The sum is drawn 20,000 times from a fixed seed, so that the same parts give the
// same answer on every machine and day: uniform numbers by SplitMix64 (Steele, Lea and Flood 2014), triangular ones by the
// inverse of their distribution. The standard error of a chance p is root(p (1 - p) / 20,000), 0.0035 at most. The mean needs no
// drawing: chance (low + likely + high) / 3, summed.
// Money in dollars. Errors: BadArgument "likely", "low", "high", "chance", "share".
#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace trenchbook {

struct CostPart {
    double likely = 0;  // dollars, 0 or more
    double low = 0, high = 0;
    double chance = 1;  // that it is there, 0 to 1
};

// chance (low + likely + high) / 3.
double expectedCost(const CostPart& part);

class PriceRange {
  public:
    static constexpr std::size_t draws = 20000;

    explicit PriceRange(std::span<const CostPart> parts);

    double mean() const { return mean_; }
    // Cost that a share of the draws does not pass, 0 to 1.
    double cost(double share) const;
    // Chance that the parts cost more than this.
    double lossAt(double price) const;
    // Standard error of that chance.
    static double standardError(double chance);

  private:
    double mean_ = 0;
    std::vector<double> sums_;  // sorted
};

}  // namespace trenchbook
