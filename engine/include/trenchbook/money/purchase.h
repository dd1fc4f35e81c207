// What to buy where: prices of several suppliers, each with what a delivery of his costs, and the cheapest way to buy a list.
//
//     #include "trenchbook/money/purchase.h"
//     using namespace trenchbook;
//     const Purchase list[] = {{.quantity = 12, .prices = {46.20, 44.90}}, {.quantity = 7, .prices = {43.00, {}}}};
//     const double deliveries[] = {95, 120};
//     const Split cheapest = cheapestSplit(list, deliveries, 2);
//     cheapest.cost;                              // 950.40: all from the first; the second saves 15.60 and delivers for 120
//     cheapestSplit(list, deliveries, 1).cost;    // the same: the second does not sell the other line
//     const std::optional<double> freeFrom[] = {600, {}};  // the first delivers free from 600.00 of his goods on
//     cheapestSplit(list, deliveries, 2, freeFrom).cost;   // 855.40
//
// Exact: every set of suppliers is tried (uncapacitated facility location by enumeration, at most 12 suppliers); within a set
// each line goes to its cheapest. Lines are rounded to the cent as an invoice has them, a delivery is counted once for each
// supplier that anything is bought from. Of equal ways the one with fewer suppliers, then with the earlier ones.
//
// Where a delivery is free from some amount on, lines may be worth moving to reach it, dearer ones too: for every set and every
// choice of those that deliver free the lines are divided by dynamic programming over the amounts reached, bounded by Lagrange
// multipliers of the amounts. The list is bought as it stands: nothing is added to reach an amount.
// Errors: BadArgument "quantities" (none, below 0), "prices" (below 0, another number than suppliers), "deliveries" (none, more
// than 12, below 0), "most suppliers" (0), "free from" (below 0, another number than suppliers); NoSolution "prices" where nobody
// sells a line, or no set so small sells all; NoSolution "free from" where more ways reach the amounts than can be compared.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace trenchbook {

struct Purchase {
    double quantity = 0;
    std::vector<std::optional<double>> prices;  // for one, by supplier; none where he does not sell it
};

struct Split {
    double cost = 0;                    // lines and deliveries
    std::vector<std::size_t> supplier;  // of each line
    std::vector<bool> used;             // by supplier
    std::vector<double> delivery = {};  // by supplier: what his delivery costs, 0 where it is free
};

inline constexpr std::size_t mostSuppliersTried = 12;

Split cheapestSplit(std::span<const Purchase> list, std::span<const double> deliveries,
                    std::size_t mostSuppliers);
// `freeFrom`, by supplier: from so much of his goods on he delivers free; none: never.
Split cheapestSplit(std::span<const Purchase> list, std::span<const double> deliveries,
                    std::size_t mostSuppliers, std::span<const std::optional<double>> freeFrom);

}  // namespace trenchbook
