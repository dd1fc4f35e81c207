// Price range and learned rates as Calc calls them.
#include "catalog_harness.h"
#include "reference.h"
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

TEST(CalendarFunctions, AreTheEngines) {
    const double thursday = 46380;  // 2026-12-24
    const Range holidays = column({46381.0, Nothing{}, 46388.0});
    EXPECT_EQ(number("DAYS.AFTER", {thursday, 1.0, holidays}), 46384) << "Monday";
    EXPECT_EQ(number("DAYS.AFTER", {thursday, 1.0, holidays, "6 days"}), 46382) << "Saturday";
    EXPECT_EQ(number("DAYS.CANCEL", {thursday, 3.0, holidays}), 46385);
    const Range what = column({"ticket", Nothing{}, "permit"}), from = column({46358.0, Nothing{}, 46342.0}),
                days = column({3.0, Nothing{}, 26.0}), counted = column({Nothing{}, Nothing{}, "calendar"});
    EXPECT_EQ(number("START.DATE", {what, from, days, counted}), 46370) << "a Saturday gives way to Monday";
    EXPECT_EQ(words("START.HELD", {what, from, days, counted}), "permit");
    const Range there = column({Nothing{}, Nothing{}, 46350.0});
    EXPECT_EQ(words("START.HELD", {what, from, days, counted, there}), "ticket");
    EXPECT_EQ(whyNot("START.DATE", {what, column({46358.0, Nothing{}, Nothing{}}), days, counted}),
              "permit is not asked for yet: the start is not known.");
    EXPECT_NE(whyNot("START.DATE", {what, from, column({3.0, Nothing{}, Nothing{}}), counted}), "OK");
    EXPECT_NE(whyNot("START.DATE", {what, from, days, column({"weeks", Nothing{}, "calendar"})}), "OK");
    EXPECT_NE(whyNot("DAYS.AFTER", {thursday, 1.0, holidays, "7 days"}), "OK");
    EXPECT_NE(whyNot("DAYS.AFTER", {thursday, 1.5}), "OK");
}

// One wait of working days is what a spreadsheet's WORKDAY counts.
TEST(CalendarFunctions, AWaitIsThePublishedCountOfWorkingDays) {
    const Range what = column({"permit", "ticket"}), from = column({39722.0, 39722.0}),
                days = column({3.0, 151.0});
    const char* help = "help of the spreadsheet function WORKDAY";
    reference::check("START.DATE", "151 working days from 2008-10-01",
                     number("START.DATE", {what, from, days}), 39933, 0, help, "memory");
    reference::checkWords("START.HELD", "the longer of two waits from one day",
                          words("START.HELD", {what, from, days}), "ticket", help, "memory");
}

TEST(CalendarFunctions, AnUnknownStateIsAsked) {
    EXPECT_EQ(number("DEPOSIT.LIMIT", {"CA", 15931.60}), 1000);
    EXPECT_EQ(number("DEPOSIT.LIMIT", {"maine", 3000.0}), 1000);
    EXPECT_NE(whyNot("DEPOSIT.LIMIT", {"Ohio", 3000.0}).find("ask the state"), std::string::npos)
        << whyNot("DEPOSIT.LIMIT", {"Ohio", 3000.0});
    EXPECT_EQ(words("DEPOSIT.LAW", {"Ohio"}), "ask the state's contractor board: no law of it was read");
    EXPECT_EQ(words("DEPOSIT.LAW", {"ME"}),
              "10 M.R.S. 1487(5), PL 1987 c. 574; both may waive it in writing");
}

TEST(PurchaseFunctions, AreTheEngines) {
    const Range quantities = column({120.0, 7.0}), deliveries = column({95.0, 120.0});
    const Range prices{2, 2, {46.20, 44.90, 43.00, Nothing{}}};
    EXPECT_EQ(number("BUY.COST", {quantities, prices, deliveries}), 120 * 44.90 + 7 * 43 + 95 + 120);
    EXPECT_EQ(number("BUY.COST", {quantities, prices, deliveries, 1.0}), 120 * 46.20 + 7 * 43 + 95);
    EXPECT_EQ(numbers("BUY.FROM", {quantities, prices, deliveries}).items, (std::vector<double>{2, 1}));
    // 855.40 of goods at the first: free from 855.40 on, and no cent later.
    EXPECT_EQ(number("BUY.COST", {Range(column({12.0, 7.0})), prices, deliveries, 12.0,
                                  Range{2, 1, {855.40, Nothing{}}}}),
              855.40);
    EXPECT_EQ(number("BUY.COST", {Range(column({12.0, 7.0})), prices, deliveries, 12.0,
                                  Range{2, 1, {855.41, Nothing{}}}}),
              950.40);
    EXPECT_NE(whyNot("BUY.COST", {quantities, prices, deliveries, 12.0, Range{2, 1, {"soon", Nothing{}}}}),
              "OK");
    const Range wrong{2, 2, {46.20, "call", 43.00, Nothing{}}};
    EXPECT_NE(whyNot("BUY.COST", {quantities, wrong, deliveries}), "OK");
    EXPECT_NE(whyNot("BUY.COST", {quantities, prices, column({95.0})}), "OK");
}

}  // namespace
}  // namespace trenchbook::addin
