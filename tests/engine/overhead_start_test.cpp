// The start of overhead is what the survey prints, turned from a share of sales into one of direct cost.
#include <gtest/gtest.h>

#include "reference.h"
#include "trenchbook/rules/rules.h"

namespace trenchbook {
namespace {

TEST(OverheadStart, IsTheSurveysShareOfSales) {
    const Ruleset rules;
    std::size_t seen = 0;
    for (const reference::Row& row : reference::rows("30j_contract_money_law.csv")) {
        if (row.item != "Remodelers, operating cost implied") continue;
        // Of 100 of sales the direct cost is what gross margin leaves.
        reference::check("RULES", row, rules.number("overhead") * (100 - row.input("gross_pct")));
        ++seen;
    }
    EXPECT_EQ(seen, 1u);
}

}  // namespace
}  // namespace trenchbook
