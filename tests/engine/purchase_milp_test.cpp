// The cheapest way to buy a list as a mixed-integer programme, solved by another solver.
#include <glpk.h>
#include <gtest/gtest.h>

#include <memory>
#include <random>

#include "reference.h"
#include "trenchbook/money/purchase.h"

namespace trenchbook {
namespace {

using Amounts = std::vector<std::optional<double>>;

// Least cost: each line from one supplier, a delivery paid by whoever sells a line and less than brings it free, at most so
// many suppliers.
double byGlpk(const std::vector<Purchase>& list, const std::vector<double>& deliveries, std::size_t most,
              const Amounts& freeFrom) {
    const std::unique_ptr<glp_prob, void (*)(glp_prob*)> problem(glp_create_prob(), glp_delete_prob);
    const auto suppliers = static_cast<int>(deliveries.size());
    const auto yesOrNo = [&](double cost) {
        const int column = glp_add_cols(problem.get(), 1);
        glp_set_col_kind(problem.get(), column, GLP_BV);
        glp_set_obj_coef(problem.get(), column, cost);
        return column;
    };
    const auto row = [&](std::vector<int> columns, std::vector<double> weights, int bound, double least,
                         double greatest) {
        columns.insert(columns.begin(), 0);
        weights.insert(weights.begin(), 0);
        const int added = glp_add_rows(problem.get(), 1);
        glp_set_row_bnds(problem.get(), added, bound, least, greatest);
        glp_set_mat_row(problem.get(), added, static_cast<int>(columns.size()) - 1, columns.data(),
                        weights.data());
    };
    std::vector<int> all;
    for (std::size_t s = 0; s < deliveries.size(); ++s) all.push_back(yesOrNo(0));
    row(all, std::vector<double>(deliveries.size(), 1), GLP_UP, 0, static_cast<double>(most));
    // Paid where used and not free; free where his goods come to the amount.
    std::vector<std::vector<int>> goods(deliveries.size());
    std::vector<std::vector<double>> amounts(deliveries.size());
    for (std::size_t s = 0; s < deliveries.size(); ++s) {
        const int paid = yesOrNo(deliveries[s]);
        if (freeFrom[s]) {
            const int free = yesOrNo(0);
            row({paid, free, all[s]}, {1, 1, -1}, GLP_LO, 0, 0);
            goods[s] = {free};
            amounts[s] = {-*freeFrom[s]};
        } else {
            row({paid, all[s]}, {1, -1}, GLP_LO, 0, 0);
        }
    }
    for (const Purchase& line : list) {
        std::vector<int> from;
        for (int s = 0; s < suppliers; ++s)
            if (const auto& price = line.prices[static_cast<std::size_t>(s)]) {
                from.push_back(yesOrNo(line.quantity * *price));
                row({from.back(), s + 1}, {1, -1}, GLP_UP, 0, 0);
                goods[static_cast<std::size_t>(s)].push_back(from.back());
                amounts[static_cast<std::size_t>(s)].push_back(line.quantity * *price);
            }
        row(from, std::vector<double>(from.size(), 1), GLP_FX, 1, 1);
    }
    for (std::size_t s = 0; s < deliveries.size(); ++s)
        if (freeFrom[s]) row(goods[s], amounts[s], GLP_LO, 0, 0);
    glp_term_out(GLP_OFF);
    glp_iocp control;
    glp_init_iocp(&control);
    control.presolve = GLP_ON;
    EXPECT_EQ(glp_intopt(problem.get(), &control), 0);
    EXPECT_EQ(glp_mip_status(problem.get()), GLP_OPT);
    return glp_mip_obj_val(problem.get());
}

TEST(PurchaseMilp, IsAsCheapAsAnotherSolverFinds) {
    std::mt19937 random(16);
    const auto between = [&](int least, int most) {
        return std::uniform_int_distribution<int>(least, most)(random);
    };
    std::size_t split = 0, free = 0;
    for (int trial = 0; trial < 40; ++trial) {
        std::vector<double> deliveries(static_cast<std::size_t>(between(2, 6)));
        for (double& delivery : deliveries) delivery = between(0, 150);
        std::vector<Purchase> list(static_cast<std::size_t>(between(2, 30)));
        for (Purchase& line : list) {
            line.quantity = between(1, 40);
            // The first sells all, so that there is a way with one supplier.
            for (std::size_t s = 0; s < deliveries.size(); ++s)
                line.prices.push_back(s > 0 && between(0, 3) == 0 ? std::nullopt
                                                                  : std::optional(between(100, 900) / 100.0));
        }
        const auto most = static_cast<std::size_t>(between(1, static_cast<int>(deliveries.size())));
        // In every other trial some deliver free from an amount on.
        Amounts freeFrom(deliveries.size());
        if (trial % 2 != 0)
            for (auto& amount : freeFrom)
                if (between(0, 2) > 0) amount = between(1, 8) * 12.5 * static_cast<double>(list.size());
        const Split cheapest = cheapestSplit(list, deliveries, most, freeFrom);
        const double least = byGlpk(list, deliveries, most, freeFrom);
        const std::string what = std::to_string(list.size()) + " lines, at most " + std::to_string(most) +
                                 " of " + std::to_string(deliveries.size()) + " suppliers, no. " +
                                 std::to_string(trial) +
                                 (trial % 2 != 0 ? ", some free from an amount on" : "");
        reference::check("BUY.COST", what.c_str(), cheapest.cost, least, 1e-6,
                         "GLPK 5.0, glp_intopt, purchase and deliveries as a mixed-integer programme",
                         "library");
        // What BUY.FROM tells costs no more than that.
        double told = 0;
        for (std::size_t line = 0; line < list.size(); ++line)
            told += list[line].quantity * *list[line].prices[cheapest.supplier[line]];
        std::size_t used = 0;
        for (std::size_t s = 0; s < deliveries.size(); ++s)
            if (cheapest.used[s])
                told += cheapest.delivery[s], ++used, free += cheapest.delivery[s] < deliveries[s];
        split += used > 1;
        reference::check("BUY.FROM", (what + ": cost of the suppliers told").c_str(), told, least, 1e-6,
                         "GLPK 5.0, glp_intopt, purchase and deliveries as a mixed-integer programme",
                         "library");
    }
    EXPECT_GT(split, 10u);
    EXPECT_GT(free, 5u) << "deliveries that came free";
}

}  // namespace
}  // namespace trenchbook
