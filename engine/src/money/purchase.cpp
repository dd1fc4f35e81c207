#include "trenchbook/money/purchase.h"

#include <bit>
#include <cmath>
#include <limits>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

// Whole cents, so that sums of different sets compare exactly. Half a cent goes up, whichever way the product of quantity and
// price was held.
long long centsOf(double dollars) { return std::llround(dollars * 100 + 1e-7); }

void requireList(std::span<const Purchase> list, std::span<const double> deliveries) {
    const std::size_t suppliers = deliveries.size();
    if (suppliers == 0 || suppliers > mostSuppliersTried)
        throw Error(Error::Kind::BadArgument, "deliveries", std::to_string(suppliers),
                    {"one for each of 1 to 12 suppliers", "una por cada uno de 1 a 12 proveedores"});
    for (const double delivery : deliveries) requireNotNegative(delivery, "deliveries");
    if (list.empty())
        throw Error(Error::Kind::BadArgument, "quantities", Text{"none", "ninguna"},
                    {"one line at least", "al menos una línea"});
    for (std::size_t line = 0; line < list.size(); ++line) {
        requireNotNegative(list[line].quantity, "quantities");
        if (list[line].prices.size() != suppliers)
            throw Error(Error::Kind::BadArgument, "prices", std::to_string(list[line].prices.size()),
                        {"a price or a blank for each supplier", "un precio o un blanco por proveedor"});
        bool sold = false;
        for (const std::optional<double>& price : list[line].prices) {
            if (price) requireNotNegative(*price, "prices");
            sold = sold || price;
        }
        if (!sold)
            throw Error(Error::Kind::NoSolution, "prices",
                        Text{"Nobody sells line " + std::to_string(line + 1) + ".",
                             "Nadie vende la línea " + std::to_string(line + 1) + "."});
    }
}

class Lines {
  public:
    Lines(std::span<const Purchase> list, std::size_t suppliers) : suppliers_(suppliers) {
        for (const Purchase& line : list)
            for (const std::optional<double>& price : line.prices)
                cents_.push_back(price ? centsOf(line.quantity * *price) : none);
    }
    // The cheapest of the set for a line; the first of equal ones. `none` cents where it sells nothing of it.
    std::pair<long long, std::size_t> cheapest(std::size_t line, unsigned set) const {
        std::pair<long long, std::size_t> best{none, 0};
        for (std::size_t s = 0; s < suppliers_; ++s)
            if ((set >> s & 1u) != 0 && cents_[line * suppliers_ + s] < best.first)
                best = {cents_[line * suppliers_ + s], s};
        return best;
    }

    static constexpr long long none = std::numeric_limits<long long>::max();

  private:
    std::size_t suppliers_;
    std::vector<long long> cents_;
};

}  // namespace

Split cheapestSplit(std::span<const Purchase> list, std::span<const double> deliveries,
                    std::size_t mostSuppliers) {
    requireList(list, deliveries);
    if (mostSuppliers == 0)
        throw Error(Error::Kind::BadArgument, "most suppliers", "0", {"1 or more", "1 o más"});
    const std::size_t suppliers = deliveries.size();
    const Lines lines(list, suppliers);
    long long least = Lines::none;
    unsigned chosen = 0;
    for (unsigned set = 1; set < 1u << suppliers; ++set) {
        const auto size = static_cast<std::size_t>(std::popcount(set));
        if (size > mostSuppliers) continue;
        long long sum = 0;
        for (std::size_t s = 0; s < suppliers; ++s)
            if ((set >> s & 1u) != 0) sum += centsOf(deliveries[s]);
        bool all = true;
        for (std::size_t line = 0; line < list.size() && all; ++line) {
            const long long cents = lines.cheapest(line, set).first;
            all = cents != Lines::none;
            if (all) sum += cents;
        }
        if (!all) continue;
        const auto fewer = static_cast<std::size_t>(std::popcount(chosen));
        if (sum < least || (sum == least && size < fewer)) least = sum, chosen = set;
    }
    if (chosen == 0)
        throw Error(Error::Kind::NoSolution, "prices",
                    Text{"No " + std::to_string(mostSuppliers) + " of the suppliers sell all lines.",
                         "Ningún grupo de " + std::to_string(mostSuppliers) + " vende todas las líneas."});
    Split split{
        .cost = static_cast<double>(least) / 100, .supplier = {}, .used = std::vector<bool>(suppliers)};
    for (std::size_t line = 0; line < list.size(); ++line) {
        split.supplier.push_back(lines.cheapest(line, chosen).second);
        split.used[split.supplier.back()] = true;
    }
    return split;
}

}  // namespace trenchbook
