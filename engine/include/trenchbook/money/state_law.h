// What states ask of a home contract and of a locate ticket, where it was read: how much may be asked before the work, how long
// to wait after the call, how long a ticket lives. No advice: each row names its section and which text was read, and a law may
// have changed since. What was not read is left out, and then the answer is: ask.
//
//     #include "trenchbook/money/state_law.h"
//     using namespace trenchbook;
//     depositLimit(*stateLaw("CA"), 12500, 0);    // 1000: the lesser of 10 % and 1,000
//     stateLaw("OH") == nullptr;                     // not read: ask
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "trenchbook/core/text.h"

namespace trenchbook {

// What goods that are made or ordered for this job alone do to the limit.
enum class SpecialOrders { Nothing, Added, IfGreater };

struct StateLaw {
    const char* state;  // two letters
    const char* name;
    // Of the price; not known where both are left out. Of the two the lesser holds.
    std::optional<double> depositShare = {}, depositAmount = {};
    SpecialOrders special = SpecialOrders::Nothing;
    double abovePrice = 0;               // the limit holds for prices above this
    const char* depositSource = "";      // section, and which text was read
    std::optional<int> ticketWait = {};  // working days from the call, its day not counted
    std::optional<int> ticketLife = {};  // days from the first day of digging
    bool lifeInWorkingDays = true;
    const char* ticketSource = "";
};

std::span<const StateLaw> stateLaws();
// By its two letters or its name, in any case; null where nothing of it was read.
const StateLaw* stateLaw(std::string_view state);

// The most that may be asked before the work, in dollars, down to the cent. Errors: BadArgument "price", "special orders" (below
// 0); NoSolution "state" where the row has no limit that was read, or where the price is not above what it holds for.
double depositLimit(const StateLaw& law, double price, double specialOrders);

// Section and text of the deposit's limit, or whom to ask.
Text depositLaw(const StateLaw* law);

}  // namespace trenchbook
