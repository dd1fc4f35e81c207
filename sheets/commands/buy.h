// Suppliers side by side: what the job's list costs from each alone, and from several with their deliveries counted.
#pragma once

#include <optional>

#include "commands/steps.h"

namespace trenchbook::sheets {

struct Buying {
    Steps
        steps{};  // the prices of the cheapest way onto the job's Prices, with supplier, their number and date
    std::string list{};    // lines to print
    std::size_t rows = 0;  // prices that would change
    double cost = 0;       // goods and deliveries of the cheapest way
    std::string taken{};   // when the prices are in
    std::string asks{};    // whether they are to come in
    std::string left{};    // when they are not; for notTaken()
};
// That nothing was changed, and by which word the prices come in: "Take".
std::string notTaken(const Buying& buying, const std::string& word);

// The goods of Takeoff and Additions against the table Offers of a price book, each supplier's delivery from its table
// Suppliers. A code that nobody offers stays with its price on Prices. `most`: buy from so many at most. Throws Refused where
// the takeoff is not complete, an offer that is needed cannot be read (its unit or pack is another than on Prices, its
// supplier is unknown), or no such few suppliers sell all.
Buying buyFrom(const Book& job, const Book& book, std::size_t most);

}  // namespace trenchbook::sheets
