// Price range and learned rates as Calc calls them.
#include "catalog_harness.h"
#include "trenchbook/money/learned_rate.h"
#include "trenchbook/money/price_range.h"

namespace trenchbook::addin {
namespace {

using namespace harness;

TEST(MoneyFunctions, PriceRangeIsTheEngines) {
    const Range likely = column({1000.0, Nothing{}, 600.0}), low = column({900.0, "", 200.0}),
                high = column({1400.0, Nothing{}, 1500.0}), chance = column({Nothing{}, Nothing{}, 0.1});
    const PriceRange range(std::vector<CostPart>{{.likely = 1000, .low = 900, .high = 1400},
                                                 {.likely = 600, .low = 200, .high = 1500, .chance = 0.1}});
    EXPECT_EQ(number("PRICE.CHANCE", {1300.0, likely, low, high, chance}), range.lossAt(1300));
    EXPECT_EQ(number("PRICE.COST", {0.9, likely, low, high, chance}), range.cost(0.9));
    const PriceRange certain(std::vector<CostPart>{{.likely = 1000, .low = 900, .high = 1400},
                                                   {.likely = 600, .low = 200, .high = 1500}});
    EXPECT_EQ(number("PRICE.COST", {0.5, likely, low, high}), certain.cost(0.5))
        << "no chance: all of it comes";
}

TEST(MoneyFunctions, WhatIsNoRangeIsASentence) {
    const auto why = [](const Cell& likely, const Cell& low, const Cell& high, const Cell& chance) {
        return whyNot("PRICE.CHANCE", {1300.0, column({1.0, likely}), column({1.0, low}), column({1.0, high}),
                                       column({1.0, chance})});
    };
    EXPECT_EQ(why(5.0, 1.0, 9.0, 0.5), "OK");
    EXPECT_NE(why(5.0, 6.0, 9.0, 0.5), "OK");
    EXPECT_NE(why(5.0, 1.0, 4.0, 0.5), "OK");
    EXPECT_NE(why(5.0, Nothing{}, 9.0, 0.5), "OK");
    EXPECT_NE(why(5.0, 1.0, 9.0, 50.0), "OK");
    EXPECT_NE(why("x", 1.0, 9.0, 0.5), "OK");
}

TEST(MoneyFunctions, RatesAreLearnedByWork) {
    const std::vector<Value> asked = {"Lay", column({"lay", "dig", "LAY ", Nothing{}}),
                                      column({120.0, 30.0, 80.0, Nothing{}}),
                                      column({11.0, 20.0, 9.0, Nothing{}}), 0.08};
    EXPECT_NEAR(number("LEARN.RATE", asked), (20 + 4 * 100 * 0.08) / 600, 1e-12);
    const LearnedRate engine = learnRate(std::vector<WorkDone>{{120, 11}, {80, 9}}, 0.08, 4);
    EXPECT_EQ(number("LEARN.ERROR", asked), *engine.leftOutError);
    std::vector<Value> other = asked;
    other.push_back(0.0);
    EXPECT_NEAR(number("LEARN.RATE", other), 20 / 200.0, 1e-12);
    other[0] = "haul";
    EXPECT_NE(whyNot("LEARN.RATE", other), "OK");
    other = asked;
    other[0] = "dig";
    EXPECT_EQ(whyNot("LEARN.ERROR", other), "One job says nothing of its own error: two are needed.");
    // A job without hours spoils the rate of its work, in words that name the row.
    other = asked;
    other[3] = column({11.0, 20.0, Nothing{}, Nothing{}});
    EXPECT_NE(whyNot("LEARN.RATE", other).find("3"), std::string::npos) << whyNot("LEARN.RATE", other);
    other[0] = "dig";
    EXPECT_EQ(whyNot("LEARN.RATE", other), "OK");
}

}  // namespace
}  // namespace trenchbook::addin
