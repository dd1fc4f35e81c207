#include "trenchbook/money/purchase.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <limits>
#include <string>
#include <utility>

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

void requireFreeFrom(std::span<const std::optional<double>> freeFrom, std::size_t suppliers) {
    if (freeFrom.size() != suppliers)
        throw Error(Error::Kind::BadArgument, "free from", std::to_string(freeFrom.size()),
                    {"an amount or a blank for each supplier", "un monto o un blanco por proveedor"});
    for (const std::optional<double>& amount : freeFrom)
        if (amount) requireNotNegative(*amount, "free from");
}

constexpr long long none = std::numeric_limits<long long>::max();

// A line bought from somebody.
struct Way {
    std::size_t supplier = 0;
    long long cents = none;
};

// Which suppliers, as bits.
using Set = unsigned;
bool holds(Set set, std::size_t supplier) { return (set >> supplier & 1U) != 0; }

// Lines divided so that the goods of each supplier in `freed` come to his amount at least, as cheaply as that can be.
class Divided {
  public:
    // `ways` of each line; `least` by supplier, 0 for those whose amount does not matter.
    Divided(std::vector<std::vector<Way>> ways, std::vector<long long> least)
        : ways_(std::move(ways)), least_(std::move(least)) {
        for (std::size_t s = 0; s < least_.size(); ++s)
            if (least_[s] > 0) asked_.push_back(s);
    }

    // Suppliers by line; nothing where every way costs more than `most`.
    struct Found {
        long long cents = none;
        std::vector<std::size_t> supplier;
    };
    Found cheapest(long long most) {
        if (!reachable() || !findMultipliers(most)) return {};
        std::vector<std::vector<State>> layers = {
            {State{.reached = std::vector<long long>(asked_.size(), 0)}}};
        for (std::size_t line = 0; line < ways_.size(); ++line) {
            layers.push_back(next(layers.back(), line, most));
            if (layers.back().empty()) return {};
        }
        // All that is left meets the amounts: the rest of no lines reaches nothing.
        const auto best = std::min_element(layers.back().begin(), layers.back().end(),
                                           [](const State& a, const State& b) { return a.cents < b.cents; });
        Found found{.cents = best->cents, .supplier = std::vector<std::size_t>(ways_.size())};
        const State* state = &*best;
        for (std::size_t line = ways_.size(); line-- > 0; state = &layers[line][state->from])
            found.supplier[line] = state->supplier;
        return found;
    }

  private:
    struct State {
        long long cents = 0;
        std::vector<long long> reached;  // of each supplier asked, no further than his amount
        std::size_t from = 0, supplier = 0;
    };
    static constexpr std::size_t mostStates = 60000, compared = 200;

    // What lines from `line` on can bring to each supplier asked.
    bool reachable() {
        rest_.assign(ways_.size() + 1, std::vector<long long>(asked_.size(), 0));
        for (std::size_t line = ways_.size(); line-- > 0;) {
            rest_[line] = rest_[line + 1];
            for (const Way& way : ways_[line])
                for (std::size_t a = 0; a < asked_.size(); ++a)
                    if (asked_[a] == way.supplier) rest_[line][a] += way.cents;
        }
        for (std::size_t a = 0; a < asked_.size(); ++a)
            if (rest_[0][a] < least_[asked_[a]]) return false;
        return true;
    }

    double discounted(const Way& way, const std::vector<double>& multipliers) const {
        double share = 1;
        for (std::size_t a = 0; a < asked_.size(); ++a)
            if (asked_[a] == way.supplier) share -= multipliers[a];
        return static_cast<double>(way.cents) * share;
    }

    // Multipliers by subgradient steps; false where their bound is over `most` already. Any multipliers bound from below.
    bool findMultipliers(long long most) {
        constexpr int steps = 80;
        std::vector<double> tried(asked_.size(), 0);
        double best = -std::numeric_limits<double>::infinity(), pace = 1.5;
        for (int step = 0; step < steps; ++step) {
            double bound = 0;
            std::vector<double> missing(asked_.size());
            for (std::size_t a = 0; a < asked_.size(); ++a) {
                missing[a] = static_cast<double>(least_[asked_[a]]);
                bound += tried[a] * missing[a];
            }
            for (const std::vector<Way>& line : ways_) {
                const Way& taken =
                    *std::min_element(line.begin(), line.end(), [&](const Way& one, const Way& other) {
                        return discounted(one, tried) < discounted(other, tried);
                    });
                bound += discounted(taken, tried);
                for (std::size_t a = 0; a < asked_.size(); ++a)
                    if (asked_[a] == taken.supplier) missing[a] -= static_cast<double>(taken.cents);
            }
            if (bound > best) {
                best = bound, multipliers_ = tried;
                if (best > static_cast<double>(most) + 0.5) return false;
            } else {
                pace *= 0.9;
            }
            double square = 0;
            for (const double one : missing) square += one * one;
            if (square == 0) break;
            const double size = pace * std::max(1.0, static_cast<double>(most) - bound) / square;
            for (std::size_t a = 0; a < asked_.size(); ++a)
                tried[a] = std::max(0.0, tried[a] + size * missing[a]);
        }
        weighed_.assign(ways_.size() + 1, 0);
        plain_.assign(ways_.size() + 1, 0);
        for (std::size_t line = ways_.size(); line-- > 0;) {
            double least = std::numeric_limits<double>::infinity();
            long long cheapest = none;
            for (const Way& way : ways_[line]) {
                least = std::min(least, discounted(way, multipliers_));
                cheapest = std::min(cheapest, way.cents);
            }
            weighed_[line] = weighed_[line + 1] + least;
            plain_[line] = plain_[line + 1] + cheapest;
        }
        return true;
    }

    bool hopeless(const State& state, std::size_t line, long long most) const {
        if (state.cents + plain_[line] > most) return true;
        double bound = static_cast<double>(state.cents) + weighed_[line];
        for (std::size_t a = 0; a < asked_.size(); ++a) {
            const long long missing = least_[asked_[a]] - state.reached[a];
            if (missing > rest_[line][a]) return true;
            bound += multipliers_[a] * static_cast<double>(missing);
        }
        return bound > static_cast<double>(most) + 0.5;
    }

    std::vector<State> next(const std::vector<State>& before, std::size_t line, long long most) const {
        std::vector<State> made;
        for (std::size_t from = 0; from < before.size(); ++from)
            for (const Way& way : ways_[line]) {
                State state{.cents = before[from].cents + way.cents,
                            .reached = before[from].reached,
                            .from = from,
                            .supplier = way.supplier};
                for (std::size_t a = 0; a < asked_.size(); ++a)
                    if (asked_[a] == way.supplier)
                        state.reached[a] = std::min(least_[way.supplier], state.reached[a] + way.cents);
                if (!hopeless(state, line + 1, most)) made.push_back(std::move(state));
            }
        // What costs no more and reaches no less makes the other needless. Not all are compared: that would only cost time.
        std::sort(made.begin(), made.end(), [](const State& a, const State& b) {
            return a.cents != b.cents ? a.cents < b.cents : a.reached > b.reached;
        });
        std::vector<State> kept;
        for (State& state : made) {
            const std::size_t first = kept.size() > compared ? kept.size() - compared : 0;
            const auto better = [&](const State& other) {
                for (std::size_t a = 0; a < asked_.size(); ++a)
                    if (other.reached[a] < state.reached[a]) return false;
                return true;
            };
            if (std::none_of(kept.begin() + static_cast<std::ptrdiff_t>(first), kept.end(), better))
                kept.push_back(std::move(state));
        }
        if (kept.size() > mostStates)
            throw Error(
                Error::Kind::NoSolution, "free from",
                Text{"Too many ways reach the amounts for a free delivery to prove the cheapest: try "
                     "with fewer suppliers or amounts.",
                     "Demasiadas maneras llegan a los montos de entrega gratis para probar la más barata: "
                     "intente con menos proveedores o montos."});
        return kept;
    }

    std::vector<std::vector<Way>> ways_;
    std::vector<long long> least_;
    std::vector<std::size_t> asked_;
    std::vector<std::vector<long long>> rest_;
    std::vector<double> multipliers_, weighed_;
    std::vector<long long> plain_;
};

class Market {
  public:
    Market(std::span<const Purchase> list, std::span<const double> deliveries,
           std::span<const std::optional<double>> freeFrom)
        : suppliers_(deliveries.size()) {
        for (const double delivery : deliveries) deliveries_.push_back(centsOf(delivery));
        for (std::size_t s = 0; s < suppliers_; ++s)
            freeFrom_.push_back(!freeFrom.empty() && freeFrom[s] ? centsOf(*freeFrom[s]) : none);
        for (const Purchase& line : list) {
            std::vector<Way> ways;
            for (std::size_t s = 0; s < suppliers_; ++s)
                if (line.prices[s]) ways.push_back({s, centsOf(line.quantity * *line.prices[s])});
            lines_.push_back(std::move(ways));
        }
        // The big ones first: what is decided early bounds more.
        for (std::size_t line = 0; line < lines_.size(); ++line) order_.push_back(line);
        std::stable_sort(order_.begin(), order_.end(), [&](std::size_t a, std::size_t b) {
            return lines_[a].front().cents > lines_[b].front().cents;
        });
    }

    // Nothing bought where no set so small sells all.
    Split cheapest(std::size_t mostSuppliers) {
        for (Set set = 1; set < 1U << suppliers_; ++set)
            if (static_cast<std::size_t>(std::popcount(set)) <= mostSuppliers) lookAt(set);
        if (least_ == none) return {};
        Split split{.cost = static_cast<double>(least_) / 100,
                    .supplier = bought_,
                    .used = std::vector<bool>(suppliers_),
                    .delivery = std::vector<double>(suppliers_)};
        for (const std::size_t supplier : bought_) {
            split.used[supplier] = true;
            if (!holds(freed_, supplier))
                split.delivery[supplier] = static_cast<double>(deliveries_[supplier]) / 100;
        }
        return split;
    }

  private:
    // Each line from the cheapest of the set, the first of equal ones; then every choice of those whose amount is reached.
    void lookAt(Set set) {
        std::vector<std::size_t> from;
        std::vector<long long> goods(suppliers_, 0);
        long long sum = 0;
        for (const std::vector<Way>& line : lines_) {
            Way best;
            for (const Way& way : line)
                if (holds(set, way.supplier) && way.cents < best.cents) best = way;
            if (best.cents == none) return;
            from.push_back(best.supplier);
            goods[best.supplier] += best.cents;
            sum += best.cents;
        }
        Set mayBeFree = 0, reached = 0;
        for (std::size_t s = 0; s < suppliers_; ++s)
            if (holds(set, s) && freeFrom_[s] != none && deliveries_[s] > 0) {
                mayBeFree |= 1U << s;
                if (goods[s] >= freeFrom_[s]) reached |= 1U << s;
            }
        take(set, reached, sum + paid(set, reached), from);
        // All subsets of those that may deliver free, but for those that are reached as it is.
        for (Set freed = mayBeFree; freed != 0; freed = (freed - 1) & mayBeFree) {
            if ((freed & ~reached) == 0) continue;
            const long long delivered = paid(set, freed);
            if (!beats(sum + delivered, set)) continue;
            const Divided::Found found = divide(set, freed, least_ == none ? none : least_ - delivered);
            if (found.cents != none) take(set, freed, found.cents + delivered, found.supplier);
        }
    }

    Divided::Found divide(Set set, Set freed, long long most) const {
        std::vector<std::vector<Way>> ways;
        for (const std::size_t line : order_) {
            std::vector<Way> here;
            Way other;  // the cheapest of those whose amount does not matter
            for (const Way& way : lines_[line]) {
                if (!holds(set, way.supplier)) continue;
                if (holds(freed, way.supplier))
                    here.push_back(way);
                else if (way.cents < other.cents)
                    other = way;
            }
            if (other.cents != none) here.push_back(other);
            ways.push_back(std::move(here));
        }
        std::vector<long long> amounts(suppliers_, 0);
        for (std::size_t s = 0; s < suppliers_; ++s)
            if (holds(freed, s)) amounts[s] = freeFrom_[s];
        Divided::Found found = Divided(std::move(ways), std::move(amounts)).cheapest(most);
        if (found.cents == none) return found;
        std::vector<std::size_t> asListed(lines_.size());
        for (std::size_t place = 0; place < order_.size(); ++place)
            asListed[order_[place]] = found.supplier[place];
        found.supplier = std::move(asListed);
        return found;
    }

    long long paid(Set set, Set freed) const {
        long long sum = 0;
        for (std::size_t s = 0; s < suppliers_; ++s)
            if (holds(set, s) && !holds(freed, s)) sum += deliveries_[s];
        return sum;
    }
    bool beats(long long cents, Set set) const {
        return cents < least_ || (cents == least_ && std::popcount(set) < std::popcount(chosen_));
    }
    void take(Set set, Set freed, long long cents, const std::vector<std::size_t>& from) {
        if (!beats(cents, set)) return;
        least_ = cents, chosen_ = set, freed_ = freed, bought_ = from;
    }

    std::size_t suppliers_;
    std::vector<long long> deliveries_, freeFrom_;
    std::vector<std::vector<Way>> lines_;
    std::vector<std::size_t> order_;
    long long least_ = none;
    Set chosen_ = 0, freed_ = 0;
    std::vector<std::size_t> bought_;
};

}  // namespace

Split cheapestSplit(std::span<const Purchase> list, std::span<const double> deliveries,
                    std::size_t mostSuppliers, std::span<const std::optional<double>> freeFrom) {
    requireList(list, deliveries);
    requireFreeFrom(freeFrom, deliveries.size());
    if (mostSuppliers == 0)
        throw Error(Error::Kind::BadArgument, "most suppliers", "0", {"1 or more", "1 o más"});
    Split split = Market(list, deliveries, freeFrom).cheapest(mostSuppliers);
    if (split.supplier.empty())
        throw Error(Error::Kind::NoSolution, "prices",
                    Text{"No " + std::to_string(mostSuppliers) + " of the suppliers sell all lines.",
                         "Ningún grupo de " + std::to_string(mostSuppliers) + " vende todas las líneas."});
    return split;
}

Split cheapestSplit(std::span<const Purchase> list, std::span<const double> deliveries,
                    std::size_t mostSuppliers) {
    const std::vector<std::optional<double>> never(deliveries.size());
    return cheapestSplit(list, deliveries, mostSuppliers, never);
}

}  // namespace trenchbook
