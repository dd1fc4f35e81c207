// The cheapest way to buy a list, against every way there is.
#include "trenchbook/money/purchase.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <set>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

// Quantities in tenths, prices in cents: half a cent goes up.
long long centsFor(const Purchase& line, std::size_t supplier) {
    return (std::llround(10 * line.quantity) * std::llround(100 * *line.prices[supplier]) + 5) / 10;
}

using Amounts = std::vector<std::optional<double>>;

// Each line from each supplier, all combinations; -1 where none sells all.
long long bruteForce(const std::vector<Purchase>& list, const std::vector<double>& deliveries,
                     std::size_t most, const Amounts& freeFrom) {
    long long best = -1;
    std::vector<std::size_t> from(list.size(), 0);
    for (;;) {
        long long sum = 0;
        bool sold = true;
        std::set<std::size_t> used(from.begin(), from.end());
        std::vector<long long> goods(deliveries.size(), 0);
        for (std::size_t line = 0; line < list.size(); ++line) {
            const auto& price = list[line].prices[from[line]];
            sold = sold && price;
            if (price) goods[from[line]] += centsFor(list[line], from[line]);
        }
        for (const std::size_t supplier : used) {
            sum += goods[supplier];
            if (!freeFrom[supplier] || goods[supplier] < std::llround(100 * *freeFrom[supplier]))
                sum += std::llround(100 * deliveries[supplier]);
        }
        if (sold && used.size() <= most && (best < 0 || sum < best)) best = sum;
        std::size_t place = 0;
        while (place < from.size() && ++from[place] == deliveries.size()) from[place++] = 0;
        if (place == from.size()) return best;
    }
}

TEST(Purchase, IsTheCheapestOfAllWays) {
    const bool cheapest = rc::check("against every assignment", [] {
        const auto suppliers = *rc::gen::inRange<std::size_t>(1, 5),
                   lines = *rc::gen::inRange<std::size_t>(1, 6);
        std::vector<double> deliveries;
        for (std::size_t s = 0; s < suppliers; ++s) deliveries.push_back(*rc::gen::inRange(0, 20000) / 100.0);
        std::vector<Purchase> list(lines);
        for (Purchase& line : list) {
            line.quantity = *rc::gen::inRange(0, 200) / 10.0;
            for (std::size_t s = 0; s < suppliers; ++s)
                line.prices.push_back(*rc::gen::inRange(0, 4) == 0
                                          ? std::nullopt
                                          : std::optional(*rc::gen::inRange(0, 9000) / 100.0));
        }
        const auto most = *rc::gen::inRange<std::size_t>(1, suppliers + 1);
        Amounts freeFrom;
        for (std::size_t s = 0; s < suppliers; ++s)
            freeFrom.push_back(*rc::gen::inRange(0, 2) == 0
                                   ? std::nullopt
                                   : std::optional(*rc::gen::inRange(0, 80000) / 100.0));
        const long long best = bruteForce(list, deliveries, most, freeFrom);
        if (best < 0) {
            RC_ASSERT_THROWS_AS(cheapestSplit(list, deliveries, most, freeFrom), Error);
            return;
        }
        const Split split = cheapestSplit(list, deliveries, most, freeFrom);
        RC_ASSERT(std::llround(100 * split.cost) == best);
        long long told = 0;
        std::size_t used = 0;
        for (std::size_t line = 0; line < lines; ++line) told += centsFor(list[line], split.supplier[line]);
        for (std::size_t s = 0; s < suppliers; ++s) {
            told += std::llround(100 * split.delivery[s]);
            if (split.used[s]) ++used;
        }
        RC_ASSERT(told == best);
        RC_ASSERT(used <= most);
    });
    EXPECT_TRUE(cheapest);
}

TEST(Purchase, DeliveryKeepsAListTogether) {
    std::vector<Purchase> list = {{.quantity = 12, .prices = {46.20, 44.90}},
                                  {.quantity = 7, .prices = {43.00, {}}}};
    const double deliveries[] = {95, 120};
    EXPECT_EQ(cheapestSplit(list, deliveries, 2).cost, 950.40);
    EXPECT_EQ(cheapestSplit(list, deliveries, 2).used, (std::vector<bool>{true, false}));
    list[0].quantity = 120;  // 156.00 saved pay the second delivery
    EXPECT_EQ(cheapestSplit(list, deliveries, 2).supplier, (std::vector<std::size_t>{1, 0}));
    EXPECT_EQ(cheapestSplit(list, deliveries, 1).supplier, (std::vector<std::size_t>{0, 0}));
}

TEST(Purchase, ADearerLineMayBringAFreeDelivery) {
    // By hand: 500 and 110 at the first are 610 with his delivery of 60 free from 600; the second sells the small line for 100
    // and brings it for 20: 500 + 60 + 100 + 20 = 680.
    const std::vector<Purchase> list = {{.quantity = 10, .prices = {50, 55}},
                                        {.quantity = 1, .prices = {110, 100}}};
    const std::vector<double> deliveries = {60, 20};
    EXPECT_EQ(cheapestSplit(list, deliveries, 2).cost, 670) << "550 + 100 + 20, all from the second";
    const Split free = cheapestSplit(list, deliveries, 2, Amounts{600, {}});
    EXPECT_EQ(free.cost, 610);
    EXPECT_EQ(free.delivery, (std::vector<double>{0, 0}));
    EXPECT_EQ(cheapestSplit(list, deliveries, 2, Amounts{610, {}}).cost, 610) << "from the amount on";
    EXPECT_EQ(cheapestSplit(list, deliveries, 2, Amounts{610.01, {}}).cost, 670);
    EXPECT_EQ(cheapestSplit(list, deliveries, 2, Amounts{610.01, 0}).cost, 650);
    EXPECT_THROW(cheapestSplit(list, deliveries, 2, Amounts{-1, {}}), Error);
    EXPECT_THROW(cheapestSplit(list, deliveries, 2, Amounts{600}), Error);
}

TEST(Purchase, WhatNobodySellsIsASentence) {
    const double deliveries[] = {10, 10};
    const auto says = [&](std::vector<Purchase> list, std::size_t most) {
        try {
            return std::to_string(cheapestSplit(list, deliveries, most).cost);
        } catch (const Error& error) {
            return error.sentence(Language::English);
        }
    };
    EXPECT_EQ(says({{.quantity = 1, .prices = {1.0, 2.0}}, {.quantity = 1, .prices = {{}, {}}}}, 2),
              "Nobody sells line 2.");
    EXPECT_EQ(says({{.quantity = 1, .prices = {1.0, {}}}, {.quantity = 1, .prices = {{}, 2.0}}}, 1),
              "No 1 of the suppliers sell all lines.");
    EXPECT_NE(says({{.quantity = -1, .prices = {1.0, 1.0}}}, 2).find("quantities"), std::string::npos);
    EXPECT_NE(says({{.quantity = 1, .prices = {1.0}}}, 2).find("prices"), std::string::npos);
    EXPECT_NE(says({}, 2).find("quantities"), std::string::npos);
}

}  // namespace
}  // namespace trenchbook
