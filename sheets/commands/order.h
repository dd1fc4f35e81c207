// Issuing the order: what Takeoff and Additions ask for today, copied to Order as values that stay.
#pragma once

#include "commands/steps.h"

namespace trenchbook::sheets {

struct OrderHead {
    // Each left out keeps what the sheet says; without any, the date is `today` and the suppliers are those on
    // Prices.
    std::optional<std::string> number{}, supplier{}, place{};
    std::optional<double> issued{}, deliver{};
    std::optional<std::string> only{};  // the lines of this supplier on Prices, no others
    bool replace = false;               // an order that stands there already
    double today = 0;                   // as the office counts days
    // What whoever asks calls these two, for the sentences that ask for them.
    const char* numberWord = "--number";
    const char* replaceWord = "--replace";
};

bool orderStands(const Book& book);

// Throws Refused when the takeoff is not complete, a line has no price, or an order is issued already. The workbook
// must be computed, and be again afterwards.
Steps issueOrder(const Book& book, const OrderHead& head);
// What to print when it is.
std::string orderIssued(const Book& book);

}  // namespace trenchbook::sheets
