#include "takeoff/fractional.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace trenchbook {
namespace {

using Size = std::int64_t;

constexpr double hair = 1e-9;
constexpr Size patience = 2'000;            // steps for better fillings, once one is found
constexpr Size wholePrice = 1'000'000'000;  // one bin, in the whole prices
constexpr Size margin = 20'000;             // a filling that is worth this little more is not worth finding

// The most valuable filling of one bin, by depth first over sizes in order of price by size; each better one
// on the way is kept too.
class Knapsack {
  public:
    Knapsack(const std::vector<Size>& sizes, const std::vector<int>& counts, const std::vector<Size>& prices,
             Size capacity, Size& effort)
        : sizes_(sizes), counts_(counts), prices_(prices), effort_(effort), room_(capacity) {
        for (std::size_t i = 0; i < sizes.size(); ++i)
            if (counts[i] > 0 && prices[i] > 0) order_.push_back(i);
        const auto rate = [&](std::size_t i) {
            return static_cast<double>(prices[i]) / static_cast<double>(sizes[i]);
        };
        std::stable_sort(order_.begin(), order_.end(),
                         [&](std::size_t a, std::size_t b) { return rate(a) > rate(b); });
        for (const std::size_t i : order_) rates_.push_back(rate(i));
        // The smallest size from here on: where it does not fit, nothing does.
        smallest_.assign(order_.size(), 0);
        for (std::size_t k = order_.size(); k-- > 0;)
            smallest_[k] =
                k + 1 == order_.size() ? sizes[order_[k]] : std::min(sizes[order_[k]], smallest_[k + 1]);
    }

    // Fillings worth more than `least`, each worth more than the one before; empty only if there is none, or
    // the effort ended.
    std::vector<Pattern> better(Size least) {
        best_ = least;
        enough_ = effort_ - patience;
        fill(0, 0);
        for (Pattern& pattern : found_) std::sort(pattern.begin(), pattern.end());
        return std::move(found_);
    }

  private:
    void fill(std::size_t k, Size worth) {
        --effort_;
        if (stopped()) return;
        if (worth > best_) {
            best_ = worth;
            found_.push_back(pattern_);
        }
        for (; k < order_.size(); ++k) {
            if (room_ < smallest_[k]) return;
            // What is left of the bin, filled at the best rate left; the margin is far above its rounding.
            if (static_cast<double>(worth) + static_cast<double>(room_) * rates_[k] <=
                static_cast<double>(best_) + 1)
                return;
            const std::size_t i = order_[k];
            if (sizes_[i] > room_) continue;
            int count = static_cast<int>(std::min<Size>(counts_[i], room_ / sizes_[i]));
            for (; count > 0 && !stopped(); --count) {
                room_ -= count * sizes_[i];
                pattern_.emplace_back(i, count);
                fill(k + 1, worth + count * prices_[i]);
                pattern_.pop_back();
                room_ += count * sizes_[i];
            }
            if (stopped()) return;
        }
    }

    bool stopped() const { return effort_ <= 0 || (effort_ < enough_ && !found_.empty()); }

    const std::vector<Size>& sizes_;
    const std::vector<int>& counts_;
    const std::vector<Size>& prices_;
    Size& effort_;
    Size room_;
    Size best_ = 0;
    Size enough_ = 0;
    std::vector<std::size_t> order_;
    std::vector<double> rates_;
    std::vector<Size> smallest_;
    Pattern pattern_;
    std::vector<Pattern> found_;
};

}  // namespace

// The simplex method, with the inverse of the basis as a dense matrix: one row per size, one column per
// filling, and two to spare per row: one gives away what is covered too often, one covers an item that is no
// longer wanted. Both are free.
class FractionalPacker::Programme {
  public:
    explicit Programme(std::size_t rows)
        : size_(rows), inverse_(rows * rows, 0), basis_(rows), cost_(rows), use_(rows) {}

    // Starts from bins of one size each, the first columns of the packer.
    void begin(const std::vector<Pattern>& columns) {
        for (std::size_t row = 0; row < size_; ++row) {
            basis_[row] = row;
            inverse_[row * size_ + row] = 1.0 / columns[row].front().second;
        }
    }

    // Goes on from where another stock left the basis. A filling that needs more than is left, or is used
    // less than never, costs more than its items alone: the method drives it out.
    void demand(const std::vector<Pattern>& columns, const std::vector<int>& counts) {
        wanted_ = counts;
        whole_.clear();
        for (const Pattern& column : columns) whole_.push_back(fits(column, counts));
        std::fill(use_.begin(), use_.end(), 0);
        for (std::size_t column = 0; column < size_; ++column) {
            if (counts[column] == 0) continue;
            // Demands that are moved apart by a hair keep the method from going round in circles; the
            // prices, which alone prove anything, do not know of it.
            const double apart = 1e-4 * std::fmod(0.618033988749895 * static_cast<double>(column + 1), 1.0);
            const double* const from = &inverse_[column * size_];
            for (std::size_t row = 0; row < size_; ++row) use_[row] += (counts[column] + apart) * from[row];
        }
        for (std::size_t row = 0; row < size_; ++row) {
            if (use_[row] < 0) {
                use_[row] = -use_[row];
                for (std::size_t column = 0; column < size_; ++column) inverse_[column * size_ + row] *= -1;
                basis_[row] ^= reversed;
            }
            const std::size_t entry = basis_[row];
            if (entry & reversed)
                cost_[row] = dear(columns, entry & ~reversed);
            else if (entry >= spare)
                cost_[row] = entry < cover(0) || counts[entry - cover(0)] == 0 ? 0 : dear(columns, entry);
            else
                cost_[row] = whole_[entry] ? 1 : dear(columns, entry);
        }
    }

    // Pivots until no column that is there betters the sum.
    void improve(const std::vector<Pattern>& columns, Size& effort) {
        while (whole_.size() < columns.size()) whole_.push_back(true);
        takePrices();
        while (effort > 0) {
            std::size_t enter = none;
            double most = 1e-7;
            for (std::size_t row = 0; row < size_; ++row) {
                if (-price_[row] > most) most = -price_[row], enter = giveAway(row);
                if (wanted_[row] == 0 && price_[row] > most) most = price_[row], enter = cover(row);
            }
            for (std::size_t c = 0; c < columns.size(); ++c) {
                if (!whole_[c]) continue;
                double worth = -1;
                for (const auto& [kind, count] : columns[c]) worth += price_[kind] * count;
                if (worth > most) most = worth, enter = c;
            }
            effort -= static_cast<Size>(columns.size() + size_ * size_ / 12);
            if (enter == none || !pivot(columns, enter, most)) return;
        }
    }

    // Prices of the sizes, whole and never negative, rounded down.
    std::vector<Size> wholePrices() const {
        std::vector<Size> prices(size_, 0);
        for (std::size_t row = 0; row < size_; ++row)
            prices[row] = static_cast<Size>(std::clamp(price_[row], 0.0, 1.0) * wholePrice);
        return prices;
    }

    std::vector<FractionalPacking::Use> uses(const std::vector<Pattern>& columns) const {
        std::vector<FractionalPacking::Use> result;
        for (std::size_t row = 0; row < size_; ++row)
            if (basis_[row] < spare && whole_[basis_[row]] && use_[row] > 1e-2)
                result.push_back({columns[basis_[row]], use_[row]});
        return result;
    }

  private:
    // What is in the basis: a column of the packer, one of those to spare, or any of these backwards.
    static constexpr std::size_t none = static_cast<std::size_t>(-1);
    static constexpr std::size_t spare = std::size_t{1} << 29;
    static constexpr std::size_t reversed = std::size_t{1} << 31;
    static std::size_t giveAway(std::size_t row) { return spare + row; }
    static std::size_t cover(std::size_t row) { return 2 * spare + row; }

    static bool fits(const Pattern& pattern, const std::vector<int>& counts) {
        return std::all_of(pattern.begin(), pattern.end(),
                           [&](const auto& part) { return part.second <= counts[part.first]; });
    }

    static double dear(const std::vector<Pattern>& columns, std::size_t entry) {
        double cost = 2;
        if (entry < spare)
            for (const auto& part : columns[entry]) cost += part.second;
        return cost;
    }

    void takePrices() {
        price_.assign(size_, 0);
        for (std::size_t column = 0; column < size_; ++column) {
            const double* const from = &inverse_[column * size_];
            double sum = 0;
            for (std::size_t row = 0; row < size_; ++row) sum += cost_[row] * from[row];
            price_[column] = sum;
        }
    }

    // `worth` is what the column betters the sum by, a bin of it.
    bool pivot(const std::vector<Pattern>& columns, std::size_t enter, double worth) {
        step_.assign(size_, 0);
        const auto addColumn = [&](std::size_t row, double times) {
            const double* const from = &inverse_[row * size_];
            for (std::size_t i = 0; i < size_; ++i) step_[i] += times * from[i];
        };
        if (enter >= cover(0))
            addColumn(enter - cover(0), 1);
        else if (enter >= spare)
            addColumn(enter - spare, -1);
        else
            for (const auto& [kind, count] : columns[enter]) addColumn(kind, count);

        std::size_t leave = none;
        double least = 0;
        for (std::size_t row = 0; row < size_; ++row) {
            if (step_[row] <= hair) continue;
            const double ratio = std::max(use_[row], 0.0) / step_[row];
            if (leave == none || ratio < least) least = ratio, leave = row;
        }
        if (leave == none) return false;
        for (std::size_t row = 0; row < size_; ++row) use_[row] -= least * step_[row];
        use_[leave] = least;
        const double share = 1 / step_[leave];
        for (std::size_t column = 0; column < size_; ++column) {
            double* const to = &inverse_[column * size_];
            const double times = to[leave] * share;
            if (times == 0) continue;
            for (std::size_t row = 0; row < size_; ++row) to[row] -= times * step_[row];
            to[leave] = times;
            price_[column] -= worth * times;
        }
        basis_[leave] = enter;
        cost_[leave] = enter < spare ? 1 : 0;
        return true;
    }

    std::size_t size_;
    std::vector<double> inverse_;  // by columns
    std::vector<std::size_t> basis_;
    std::vector<double> cost_;  // of what is in the basis
    std::vector<double> use_;
    std::vector<double> price_;
    std::vector<double> step_;
    std::vector<int> wanted_;
    std::vector<char> whole_;  // the columns that need no more than is left
};

FractionalPacker::FractionalPacker(std::vector<Size> sizes, std::vector<int> counts, Size capacity)
    : sizes_(std::move(sizes)), capacity_(capacity) {
    for (std::size_t kind = 0; kind < sizes_.size(); ++kind)
        columns_.push_back({{kind, static_cast<int>(std::min<Size>(counts[kind], capacity / sizes_[kind]))}});
}

FractionalPacking FractionalPacker::solve(const std::vector<int>& counts, Size& effort,
                                          const FractionalPacking* from) {
    FractionalPacking packing;
    if (from == nullptr || from->programme == nullptr) {
        packing.programme = std::make_shared<Programme>(sizes_.size());
        packing.programme->begin(columns_);
    } else {
        packing.programme = std::make_shared<Programme>(*from->programme);
    }
    Programme& programme = *packing.programme;
    programme.demand(columns_, counts);
    while (effort > 0) {
        programme.improve(columns_, effort);
        if (effort <= 0) break;
        packing.prices = programme.wholePrices();
        const std::vector<Pattern> better =
            Knapsack(sizes_, counts, packing.prices, capacity_, effort).better(wholePrice + margin);
        if (better.empty()) {
            packing.known = effort > 0;
            break;
        }
        columns_.insert(columns_.end(), better.begin(), better.end());
    }
    packing.bin = wholePrice + margin;
    for (std::size_t i = 0; i < packing.prices.size(); ++i) packing.worth += packing.prices[i] * counts[i];
    packing.uses = programme.uses(columns_);
    return packing;
}

}  // namespace trenchbook
