#include "trenchbook/money/state_law.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

constexpr const char* listed =
    "a limit was in force in 2010 (Craftsman Book Company, note of October 2010); how much was not read";

constexpr double third = 1.0 / 3;

const StateLaw all[] = {
    {.state = "AL",
     .name = "Alabama",
     .ticketWait = 2,
     .ticketLife = 20,
     .ticketSource =
         "Alabama 811, life of a ticket (Code 37-15): at most 10 working days ahead; renew 2 before it ends"},
    {.state = "AZ", .name = "Arizona", .depositSource = listed},
    {.state = "CA",
     .name = "California",
     .depositShare = 0.1,
     .depositAmount = 1000,
     .depositSource =
         "Business and Professions Code 7159.5(a)(3), text as quoted in 2021; (a)(5): later payments not beyond "
         "the work done and the material delivered"},
    {.state = "IL",
     .name = "Illinois",
     .ticketWait = 2,
     .ticketLife = 25,
     .lifeInWorkingDays = false,
     .ticketSource =
         "JULIE, after the request: day of the call not counted, dig within 10 days, extend from day 20"},
    {.state = "IN",
     .name = "Indiana",
     .depositSource = listed,
     .ticketWait = 2,
     .ticketSource = "Indiana electric cooperative, digging safely"},
    {.state = "MA",
     .name = "Massachusetts",
     .depositShare = third,
     .special = SpecialOrders::IfGreater,
     .depositSource = "General Laws c. 142A s. 2(a)(6), 2018 Official Edition; contracts over 1,000"},
    {.state = "MD",
     .name = "Maryland",
     .depositShare = third,
     .depositSource =
         "Business Regulation 8-617(b), text of 2005; 8-617(a): nothing before the contract is signed"},
    {.state = "ME",
     .name = "Maine",
     .depositShare = third,
     .depositSource = "10 M.R.S. 1487(5), PL 1987 c. 574; both may waive it in writing"},
    {.state = "NC",
     .name = "North Carolina",
     .ticketWait = 3,
     .ticketSource = "North Carolina 811, ticket types: full working days"},
    {.state = "NE",
     .name = "Nebraska",
     .ticketLife = 17,
     .lifeInWorkingDays = false,
     .ticketSource = "Nebraska 811, ticket life: after the start; refresh by day 14"},
    {.state = "NV",
     .name = "Nevada",
     .depositSource = "for pools: a limit was in force in 2010; how much was not read"},
    {.state = "PA",
     .name = "Pennsylvania",
     .depositShare = third,
     .special = SpecialOrders::Added,
     .abovePrice = 5000,
     .depositSource = "73 P.S. 517.9, as a legal summary tells it"},
    {.state = "SC",
     .name = "South Carolina",
     .ticketWait = 3,
     .ticketLife = 15,
     .ticketSource = "South Carolina 811, life of a locate"},
    {.state = "TN",
     .name = "Tennessee",
     .depositShare = third,
     .depositSource =
         "Craftsman Book Company, note of October 2010, without its section; not where a bond stands for it"},
};

bool limited(const StateLaw& law) { return law.depositShare || law.depositAmount; }

}  // namespace

std::span<const StateLaw> stateLaws() { return all; }

const StateLaw* stateLaw(std::string_view state) {
    const std::string asked = nameKey(state);
    const auto found = std::find_if(std::begin(all), std::end(all), [&](const StateLaw& law) {
        return nameKey(law.state) == asked || nameKey(law.name) == asked;
    });
    return found == std::end(all) ? nullptr : found;
}

double depositLimit(const StateLaw& law, double price, double specialOrders) {
    requireNotNegative(price, "price");
    requireNotNegative(specialOrders, "special orders");
    if (!limited(law))
        throw Error(Error::Kind::NoSolution, "state",
                    Text{std::string("No limit of ") + law.name + " was read: ask the state.",
                         std::string("No se leyó ningún tope de ") + law.name + ": pregunte al estado."});
    if (law.abovePrice > 0 && price <= law.abovePrice)
        throw Error(Error::Kind::NoSolution, "price",
                    Text{std::string("The limit of ") + law.name + " holds above " +
                             plain(law.abovePrice, 2) + ": ask the state.",
                         std::string("El tope de ") + law.name + " vale por encima de " +
                             plain(law.abovePrice, 2) + ": pregunte al estado."});
    double limit = law.depositShare ? *law.depositShare * price : *law.depositAmount;
    if (law.depositAmount) limit = std::min(limit, *law.depositAmount);
    if (law.special == SpecialOrders::Added) limit += specialOrders;
    if (law.special == SpecialOrders::IfGreater) limit = std::max(limit, specialOrders);
    // A third of 300.00 is 100.00, and not a cent less for the way a third is held.
    return std::floor(limit * 100 + 1e-6) / 100;
}

Text depositLaw(const StateLaw* law) {
    if (law != nullptr && *law->depositSource != '\0') return Text::same(law->depositSource);
    return {"ask the state's contractor board: no law of it was read",
            "pregunte a la junta de contratistas del estado: no se leyó ninguna ley suya"};
}

}  // namespace trenchbook
