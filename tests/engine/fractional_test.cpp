#include "takeoff/fractional.h"

#include <glpk.h>
#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <numeric>
#include <random>
#include <sstream>

#include "takeoff/bins.h"

namespace trenchbook {
namespace {

using Size = std::int64_t;
constexpr Size plenty = 1'000'000'000;

struct Case {
    std::vector<Size> items;
    Size capacity;
};

Case drawn(std::mt19937& random, int most) {
    const auto between = [&](int least, int greatest) {
        return std::uniform_int_distribution<int>(least, greatest)(random);
    };
    Case result{{}, between(30, 200)};
    const int count = between(1, most);
    const int smallest = static_cast<int>(result.capacity) / between(3, 7) + 1;
    for (int i = 0; i < count; ++i)
        result.items.push_back(between(smallest, static_cast<int>(result.capacity) * 2 / 3));
    return result;
}

std::string show(const Case& drawn) {
    std::ostringstream out;
    out << "capacity " << drawn.capacity << ", items";
    for (const Size item : drawn.items) out << ' ' << item;
    return out.str();
}

ItemStock stockOf(const std::vector<Size>& items) {
    std::map<Size, int, std::greater<>> bySize;
    for (const Size item : items) ++bySize[item];
    ItemStock stock;
    for (const auto& [size, count] : bySize) {
        stock.sizes.push_back(size);
        stock.counts.push_back(count);
    }
    return stock;
}

// Every filling of one bin, counted out.
void everyFilling(const ItemStock& stock, Size room, std::size_t from, std::vector<int>& now,
                  std::vector<std::vector<int>>& all) {
    if (from == stock.sizes.size()) {
        all.push_back(now);
        return;
    }
    for (int n = 0; n <= stock.counts[from] && n * stock.sizes[from] <= room; ++n) {
        now[from] = n;
        everyFilling(stock, room - n * stock.sizes[from], from + 1, now, all);
    }
    now[from] = 0;
}

// The whole programme at once, solved by GLPK.
double byGlpk(const ItemStock& stock, Size capacity) {
    std::vector<std::vector<int>> all;
    std::vector<int> now(stock.sizes.size(), 0);
    everyFilling(stock, capacity, 0, now, all);
    glp_term_out(GLP_OFF);
    glp_prob* problem = glp_create_prob();
    glp_set_obj_dir(problem, GLP_MIN);
    glp_add_rows(problem, static_cast<int>(stock.sizes.size()));
    glp_add_cols(problem, static_cast<int>(all.size()));
    for (std::size_t i = 0; i < stock.sizes.size(); ++i)
        glp_set_row_bnds(problem, static_cast<int>(i) + 1, GLP_LO, stock.counts[i], 0);
    for (std::size_t c = 0; c < all.size(); ++c) {
        std::vector<int> index = {0};
        std::vector<double> value = {0};
        for (std::size_t i = 0; i < stock.sizes.size(); ++i)
            if (all[c][i] > 0) index.push_back(static_cast<int>(i) + 1), value.push_back(all[c][i]);
        const int column = static_cast<int>(c) + 1;
        glp_set_col_bnds(problem, column, GLP_LO, 0, 0);
        glp_set_obj_coef(problem, column, 1);
        glp_set_mat_col(problem, column, static_cast<int>(index.size()) - 1, index.data(), value.data());
    }
    const int failed = glp_simplex(problem, nullptr);
    const double least = failed ? -1 : glp_get_obj_val(problem);
    glp_delete_prob(problem);
    return least;
}

double valueOf(const FractionalPacking& packing) {
    return static_cast<double>(packing.worth) / static_cast<double>(packing.bin);
}

TEST(FractionalPacking, IsTheWholeProgramme) {
    std::mt19937 random(1961);
    for (int trial = 0; trial < 400; ++trial) {
        const Case drawnCase = drawn(random, 14);
        const ItemStock stock = stockOf(drawnCase.items);
        FractionalPacker packer(stock.sizes, stock.counts, drawnCase.capacity);
        Size effort = plenty;
        const FractionalPacking packing = packer.solve(stock.counts, effort);
        ASSERT_TRUE(packing.known) << show(drawnCase);
        const double theirs = byGlpk(stock, drawnCase.capacity);
        // Never above, and less by no more than the price that is not worth finding.
        EXPECT_LE(valueOf(packing), theirs * (1 + 1e-9)) << show(drawnCase);
        EXPECT_GE(valueOf(packing), theirs * (1 - 3e-5)) << show(drawnCase);
        // The prices alone prove it: no filling is worth more than a bin.
        std::vector<std::vector<int>> all;
        std::vector<int> now(stock.sizes.size(), 0);
        everyFilling(stock, drawnCase.capacity, 0, now, all);
        for (const std::vector<int>& filling : all)
            ASSERT_LE(std::inner_product(filling.begin(), filling.end(), packing.prices.begin(), Size{0}),
                      packing.bin)
                << show(drawnCase);
    }
}

TEST(FractionalPacking, GoesOnFromALargerStock) {
    std::mt19937 random(7);
    for (int trial = 0; trial < 300; ++trial) {
        const Case drawnCase = drawn(random, 14);
        ItemStock stock = stockOf(drawnCase.items);
        FractionalPacker packer(stock.sizes, stock.counts, drawnCase.capacity);
        Size effort = plenty;
        FractionalPacking packing = packer.solve(stock.counts, effort);
        // Takes what is used most until nothing is left, as the search does.
        while (!packing.uses.empty()) {
            for (const auto& [kind, count] : packing.uses.front().pattern) stock.counts[kind] -= count;
            if (std::accumulate(stock.counts.begin(), stock.counts.end(), 0) == 0) break;
            ItemStock left;
            for (std::size_t i = 0; i < stock.sizes.size(); ++i)
                if (stock.counts[i] > 0) {
                    left.sizes.push_back(stock.sizes[i]);
                    left.counts.push_back(stock.counts[i]);
                }
            packing = packer.solve(stock.counts, effort, &packing);
            const double theirs = byGlpk(left, drawnCase.capacity);
            ASSERT_TRUE(packing.known) << show(drawnCase);
            ASSERT_NEAR(valueOf(packing), theirs, theirs * 3e-5) << show(drawnCase);
        }
    }
}

TEST(FractionalPacking, SaysThatItsEffortEnded) {
    const ItemStock stock = stockOf({45, 41, 37, 36, 33, 31, 29, 28, 27, 26});
    FractionalPacker packer(stock.sizes, stock.counts, 100);
    Size effort = 5;
    const FractionalPacking packing = packer.solve(stock.counts, effort);
    EXPECT_FALSE(packing.known);
    EXPECT_EQ(packing.fewest(), 0u);
}

// With no short search the guide leads from the first bin on; without a guide the plain search goes on as long
// as it takes. Both must end at the same count.
TEST(Packing, WithAGuideIsAsGoodAsTheExhaustiveSearch) {
    std::mt19937 random(2002);
    for (int trial = 0; trial < 3000; ++trial) {
        const Case drawnCase = drawn(random, 18);
        const Packing plain = packBins(drawnCase.items, drawnCase.capacity, plenty * 1000, plenty * 500);
        const Packing led = packBins(drawnCase.items, drawnCase.capacity, plenty, 1);
        ASSERT_EQ(plain.fewest, plain.bins.size()) << show(drawnCase);
        ASSERT_EQ(led.bins.size(), plain.bins.size()) << show(drawnCase);
        ASSERT_EQ(led.fewest, plain.fewest) << show(drawnCase);
        std::size_t packed = 0;
        for (const std::vector<std::size_t>& bin : led.bins) {
            Size sum = 0;
            for (const std::size_t item : bin) sum += drawnCase.items[item];
            ASSERT_LE(sum, drawnCase.capacity) << show(drawnCase);
            packed += bin.size();
        }
        ASSERT_EQ(packed, drawnCase.items.size()) << show(drawnCase);
    }
}

}  // namespace
}  // namespace trenchbook
