#include "trenchbook/money/price_range.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <numeric>

#include "reference.h"
#include "sentence.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

// Share of the sums of n numbers, uniform from 0 to 1, that stay at x or under it: Irwin and Hall 1927.
double irwinHall(int n, double x) {
    double sum = 0;
    for (int k = 0; k <= static_cast<int>(x); ++k) {
        double ways = 1;
        for (int i = 0; i < k; ++i) ways *= static_cast<double>(n - i) / (i + 1);
        sum += (k % 2 == 0 ? 1 : -1) * ways * std::pow(x - k, n);
    }
    return sum / std::tgamma(n + 1);
}

// Three parts from 0 to 2 with the top in the middle are six uniform numbers.
TEST(PriceRange, SumOfTriangularsIsTheSumOfUniformNumbers) {
    const std::vector<CostPart> parts(3, CostPart{.likely = 1, .low = 0, .high = 2});
    const PriceRange range(parts);
    EXPECT_DOUBLE_EQ(range.mean(), 3);
    for (const double price : {1.0, 2.0, 2.5, 3.0, 3.5, 4.0, 5.0}) {
        const double exact = 1 - irwinHall(6, price);
        const std::string item = "three triangular parts 0, 1, 2: chance of a cost above " + plain(price, 1);
        // Four standard errors of the drawing.
        reference::check("PRICE.CHANCE", item.c_str(), range.lossAt(price), exact,
                         4 * PriceRange::standardError(exact),
                         "Irwin and Hall 1927: closed form of the sum of uniform numbers", "computed");
    }
}

// One triangular part by its own closed form, and what may go wrong by its chance.
TEST(PriceRange, OnePartAndOneThatMayNotCome) {
    const CostPart part{.likely = 1000, .low = 900, .high = 1400};
    const PriceRange alone(std::vector{part});
    const double exact = (1400.0 - 1200) * (1400 - 1200) / (500.0 * 400);
    reference::check("PRICE.CHANCE", "triangular 900, 1000, 1400: chance of more than 1200",
                     alone.lossAt(1200), exact, 4 * PriceRange::standardError(exact),
                     "closed form of the triangular distribution", "computed");
    // The share p of all costs lies below b - sqrt((1 - p)(b - a)(b - c)), where the density is 2 (b - x)/((b - a)(b - c)).
    const double dearest = 1400 - std::sqrt(0.1 * 500 * 400);
    const double density = 2 * (1400 - dearest) / (500.0 * 400);
    reference::check("PRICE.COST", "triangular 900, 1000, 1400: nine tenths cost less", alone.cost(0.9),
                     dearest, 4 * PriceRange::standardError(0.9) / density,
                     "closed form of the triangular distribution", "computed");
    const PriceRange maybe(std::vector{CostPart{.likely = 100, .low = 100, .high = 100, .chance = 0.3}});
    EXPECT_NEAR(maybe.lossAt(50), 0.3, 4 * PriceRange::standardError(0.3));
    EXPECT_EQ(maybe.lossAt(100), 0);
    EXPECT_DOUBLE_EQ(maybe.mean(), 30);
}

TEST(PriceRange, LawsOfAnyParts) {
    const bool held =
        rc::check("chance falls with the price, cost rises with the share, within the bounds", [] {
            std::vector<CostPart> parts;
            double least = 0, most = 0;
            for (int i = 0, count = *rc::gen::inRange(1, 7); i < count; ++i) {
                CostPart part;
                part.low = *rc::gen::inRange(0, 1000);
                part.likely = part.low + *rc::gen::inRange(0, 1000);
                part.high = part.likely + *rc::gen::inRange(0, 1000);
                part.chance = *rc::gen::inRange(0, 101) / 100.0;
                least += part.chance == 1 ? part.low : 0;
                most += part.high;
                parts.push_back(part);
            }
            const PriceRange range(parts), again(parts);
            double before = range.cost(0), chance = 1;
            RC_ASSERT(before >= least - 1e-6);
            for (const double share : {0.1, 0.5, 0.9, 1.0}) {
                const double here = range.cost(share);
                RC_ASSERT(here >= before);
                RC_ASSERT(here <= most + 1e-6);
                RC_ASSERT(range.lossAt(here) <= chance);
                RC_ASSERT(here == again.cost(share));
                before = here, chance = range.lossAt(here);
            }
            RC_ASSERT(std::abs(range.lossAt(range.cost(0.9)) - 0.1) < 0.001 ||
                      range.cost(0.9) == range.cost(0.85));
        });
    EXPECT_TRUE(held);
}

TEST(PriceRange, RefusesWhatIsNoRange) {
    const auto refused = [](CostPart part) {
        try {
            expectedCost(part);
        } catch (const Error& error) {
            return error.sentence(Language::English);
        }
        return std::string();
    };
    EXPECT_EQ(refused({.likely = 5, .low = 10, .high = 20}), "likely is 5; allowed: at least low, 10.");
    EXPECT_EQ(refused({.likely = 5, .low = 1, .high = 4}), "high is 4; allowed: at least likely, 5.");
    EXPECT_NE(refused({.likely = 5, .low = -1, .high = 6}), "");
    EXPECT_NE(refused({.likely = 5, .low = 1, .high = 6, .chance = 10}), "");
    EXPECT_NE(refused({.likely = NAN, .low = 1, .high = 6}), "");
}

}  // namespace
}  // namespace trenchbook
