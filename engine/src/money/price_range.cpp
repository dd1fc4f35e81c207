#include "trenchbook/money/price_range.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

// Uniform numbers of 53 bits, at least 0 and below 1.
class Uniform {
  public:
    explicit Uniform(std::uint64_t seed) : state_(seed) {}

    double next() {
        std::uint64_t z = state_ += 0x9e3779b97f4a7c15U;
        z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9U;
        z = (z ^ (z >> 27U)) * 0x94d049bb133111ebU;
        z ^= z >> 31U;
        return static_cast<double>(z >> 11U) * 0x1p-53;
    }

  private:
    std::uint64_t state_;
};

double triangular(const CostPart& part, double share) {
    const double width = part.high - part.low;
    if (width <= 0) return part.likely;
    const double rising = part.likely - part.low;
    return share * width < rising ? part.low + std::sqrt(share * width * rising)
                                  : part.high - std::sqrt((1 - share) * width * (part.high - part.likely));
}

void require(const CostPart& part) {
    requireNotNegative(part.low, "low");
    if (!(part.likely >= part.low))
        throw Error(Error::Kind::BadArgument, "likely", plain(part.likely, 2),
                    {"at least low, " + plain(part.low, 2), "al menos el bajo, " + plain(part.low, 2)});
    if (!(part.high >= part.likely) || !std::isfinite(part.high))
        throw Error(
            Error::Kind::BadArgument, "high", plain(part.high, 2),
            {"at least likely, " + plain(part.likely, 2), "al menos el probable, " + plain(part.likely, 2)});
    requireShare(part.chance, "chance");
}

}  // namespace

double expectedCost(const CostPart& part) {
    require(part);
    return part.chance * (part.low + part.likely + part.high) / 3;
}

PriceRange::PriceRange(std::span<const CostPart> parts) : sums_(draws) {
    for (const CostPart& part : parts) mean_ += expectedCost(part);
    // A part draws from a seed of its own, so that one that changes moves no other. Its one number says whether it comes
    // and, of those that say so, how much it costs.
    std::uint64_t seed = 20260101;
    for (const CostPart& part : parts) {
        Uniform uniform(seed += 1'000'003);
        for (double& sum : sums_) {
            const double share = uniform.next();
            if (share < part.chance) sum += triangular(part, share / part.chance);
        }
    }
    std::sort(sums_.begin(), sums_.end());
}

double PriceRange::cost(double share) const {
    requireShare(share, "share");
    const double place = share * static_cast<double>(draws - 1);
    const auto below = static_cast<std::size_t>(place);
    const std::size_t above = std::min(below + 1, draws - 1);
    return sums_[below] + (sums_[above] - sums_[below]) * (place - static_cast<double>(below));
}

double PriceRange::lossAt(double price) const {
    const auto dearer = std::upper_bound(sums_.begin(), sums_.end(), price);
    return static_cast<double>(sums_.end() - dearer) / static_cast<double>(draws);
}

double PriceRange::standardError(double chance) {
    requireShare(chance, "chance");
    return std::sqrt(chance * (1 - chance) / static_cast<double>(draws));
}

}  // namespace trenchbook
