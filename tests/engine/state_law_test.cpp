// What states ask, against the rows that were read.
#include "trenchbook/money/state_law.h"

#include <gtest/gtest.h>

#include <string>

#include "reference.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

TEST(StateLaw, DepositsAreThoseRead) {
    const double price = 6000;
    std::size_t seen = 0;
    for (const reference::Row& row : reference::rows("30j_contract_money_law.csv")) {
        if (!row.item.starts_with("Deposit, ")) continue;
        const std::string state = row.item.substr(9, row.item.find(", ", 9) - 9);
        const StateLaw* law = stateLaw(state);
        ASSERT_NE(law, nullptr) << row.id;
        ++seen;
        if (row.unit == "USD") {
            reference::check("DEPOSIT.LIMIT", row, depositLimit(*law, 1e6, 0));
        } else if (row.unit == "percent") {
            reference::check("DEPOSIT.LIMIT", row, 100 * depositLimit(*law, price, 0) / price);
        } else {
            // Printed as one third; the collection writes 0.3333.
            reference::check("DEPOSIT.LIMIT", row.item.c_str(), depositLimit(*law, price, 0) / price, 1.0 / 3,
                             1e-12, row.source.c_str(), "read");
        }
    }
    EXPECT_EQ(seen, 6u);
}

TEST(StateLaw, WhatIsOrderedForTheJobAloneCountsAsTheLawSays) {
    EXPECT_EQ(depositLimit(*stateLaw("pa"), 6000, 500), 2500);
    EXPECT_EQ(depositLimit(*stateLaw("Massachusetts"), 6000, 500), 2000);
    EXPECT_EQ(depositLimit(*stateLaw("MA"), 6000, 2600), 2600);
    EXPECT_EQ(depositLimit(*stateLaw("CA"), 9000, 5000), 900) << "California has no such word";
    EXPECT_EQ(depositLimit(*stateLaw("MD"), 100, 0), 33.33) << "down to the cent";
    EXPECT_EQ(depositLimit(*stateLaw("MD"), 300, 0), 100);
}

TEST(StateLaw, WhatWasNotReadIsAsked) {
    EXPECT_EQ(stateLaw("OH"), nullptr);
    EXPECT_EQ(stateLaw(""), nullptr);
    EXPECT_EQ(depositLaw(nullptr).en, "ask the state's contractor board: no law of it was read");
    EXPECT_THROW(depositLimit(*stateLaw("AZ"), 6000, 0), Error);
    EXPECT_THROW(depositLimit(*stateLaw("PA"), 5000, 0), Error);
    EXPECT_THROW(depositLimit(*stateLaw("CA"), -1, 0), Error);
    EXPECT_EQ(depositLaw(stateLaw("AL")).en, depositLaw(nullptr).en)
        << "Alabama's ticket was read, no deposit";
    for (const StateLaw& law : stateLaws()) {
        EXPECT_TRUE(!(law.depositShare || law.depositAmount) || *law.depositSource != '\0') << law.state;
        EXPECT_TRUE(!(law.ticketWait || law.ticketLife) || *law.ticketSource != '\0') << law.state;
    }
}

// Those from memory alone are left out of the table: Texas, and California's, Pennsylvania's and Tennessee's tickets.
TEST(StateLaw, TicketsAreThoseRead) {
    std::size_t seen = 0;
    for (const reference::Row& row : reference::rows("30j_contract_money_law.csv")) {
        if (!row.item.starts_with("One-call, ")) continue;
        const StateLaw* law = stateLaw(row.item.substr(10, row.item.find(':') - 10));
        const bool life = row.output.starts_with("ticket life");
        if (row.provenance == "memory") {
            EXPECT_TRUE(law == nullptr || !(life ? law->ticketLife : law->ticketWait)) << row.id;
            continue;
        }
        if (law == nullptr || row.output.ends_with("most") || row.output.starts_with("renewal") ||
            row.output == "ticket life, older rule")
            continue;  // hours, ranges and a superseded rule are no number of days that the table could hold
        const std::optional<int> ours = life ? law->ticketLife : law->ticketWait;
        ASSERT_TRUE(ours) << row.id;
        reference::check("DEPOSIT.LAW", row, *ours);
        ++seen;
    }
    EXPECT_EQ(seen, 9u);
}

}  // namespace
}  // namespace trenchbook
