// Issuing the order: what Takeoff and Additions ask for today, copied to Order as values that stay.
#pragma once

#include "jobbook/parts.h"

namespace trenchbook::sheets {

struct OrderHead {
    // Each left out keeps what the sheet says; without any, the date is today and the suppliers are those on
    // Prices.
    std::optional<std::string> number, supplier, place;
    std::optional<double> issued, deliver;
    bool replace = false;  // an order that stands there already
};

// Throws Refused, and changes nothing, when the takeoff is not complete, a line has no price, or an order is
// issued already. Returns what to print. The document must be computed; it is again afterwards.
std::string issueOrder(const Document& document, const OrderHead& head);

}  // namespace trenchbook::sheets
