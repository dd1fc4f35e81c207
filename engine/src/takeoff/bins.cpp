#include "takeoff/bins.h"

#include <algorithm>
#include <limits>
#include <map>
#include <numeric>
#include <string>
#include <unordered_map>

#include "takeoff/fractional.h"
#include "takeoff/patterns.h"

namespace trenchbook {
namespace {

using Size = std::int64_t;

// Martello and Toth's L2: for each threshold t, items above capacity - t sit alone, items above half sit one
// to a bin, and what does not fit beside those needs bins of its own.
std::size_t lowerBound(const ItemStock& stock, Size capacity) {
    const std::size_t kinds = stock.sizes.size();
    Size total = 0;
    Size large = 0;  // items above half the capacity
    Size largeSum = 0;
    for (std::size_t i = 0; i < kinds; ++i) {
        total += stock.sizes[i] * stock.counts[i];
        if (2 * stock.sizes[i] > capacity) {
            large += stock.counts[i];
            largeSum += stock.sizes[i] * stock.counts[i];
        }
    }
    Size best = std::max(large, (total + capacity - 1) / capacity);
    // Thresholds from half the capacity down; only sizes of items matter. As t falls, fewer sit alone.
    Size smallSum = 0;  // items from t up to half the capacity
    Size alone = large, aloneSum = largeSum;
    std::size_t end = 0;  // of the items that sit alone
    while (end < kinds && 2 * stock.sizes[end] > capacity) ++end;
    for (std::size_t i = end; i < kinds; ++i) {
        const Size t = stock.sizes[i];
        smallSum += t * stock.counts[i];
        for (; end > 0 && stock.sizes[end - 1] <= capacity - t; --end) {
            alone -= stock.counts[end - 1];
            aloneSum -= stock.sizes[end - 1] * stock.counts[end - 1];
        }
        const Size beside = (large - alone) * capacity - (largeSum - aloneSum);
        const Size excess = smallSum - beside;
        best = std::max(best, large + (excess > 0 ? (excess + capacity - 1) / capacity : 0));
    }
    return static_cast<std::size_t>(best);
}

std::vector<Pattern> firstFitDecreasing(const ItemStock& stock, Size capacity) {
    std::vector<Pattern> bins;
    std::vector<Size> room;
    for (std::size_t kind = 0; kind < stock.sizes.size(); ++kind)
        for (int n = 0; n < stock.counts[kind]; ++n) {
            std::size_t bin = 0;
            while (bin < bins.size() && room[bin] < stock.sizes[kind]) ++bin;
            if (bin == bins.size()) {
                bins.emplace_back();
                room.push_back(capacity);
            }
            room[bin] -= stock.sizes[kind];
            if (!bins[bin].empty() && bins[bin].back().first == kind)
                ++bins[bin].back().second;
            else
                bins[bin].emplace_back(kind, 1);
        }
    return bins;
}

// Bin completion: can all items go into `bins` bins? One item left opens the next bin; every way to fill it
// that no better way dominates is tried. Alone, the largest item opens, and the way that wastes least comes
// first. With a guide, the bin that the packing in fractions is surest of comes next, and its prices say
// which ways cannot be part of so few bins: what a bin is worth less than it could be is waste as well.
class Completion {
  public:
    Completion(ItemStock stock, Size capacity, Size& effort, FractionalPacker* guide = nullptr)
        : left_(std::move(stock)), capacity_(capacity), effort_(effort), guide_(guide) {}

    enum class Answer { Yes, No, GaveUp };

    Answer fits(std::size_t bins) {
        Size total = 0;
        for (std::size_t i = 0; i < left_.sizes.size(); ++i) total += left_.sizes[i] * left_.counts[i];
        const Size waste = static_cast<Size>(bins) * capacity_ - total;
        // A third of the effort goes deep from the way that wastes least, two thirds where a guide says which
        // way is best. Where that gets lost, the rest tries the plans that stray little from it first.
        const Size deep = effort_ / 3 * (guide_ ? 2 : 1), rest = effort_ - deep;
        effort_ = deep;
        Answer answer = fill(bins, waste, std::numeric_limits<int>::max(), nullptr);
        effort_ = std::max<Size>(effort_, 0) + rest;
        for (int strays = 0; answer == Answer::GaveUp && effort_ > 0; strays = 2 * strays + 1)
            answer = fill(bins, waste, strays, nullptr);
        return answer;
    }
    const std::vector<Pattern>& packed() const { return filled_; }

  private:
    struct Way {
        Pattern pattern;
        Size waste;
        double advice;  // how often the packing in fractions uses it
    };

    // What a bin may still hold and must still be worth, while it is being filled.
    struct Open {
        std::size_t first;
        Size waste;                // of the capacity, at most
        const Size* prices;        // null without a guide
        Size worth;                // at least
        std::vector<double> rate;  // the best price by size from each size on
    };

    Answer fill(std::size_t bins, Size waste, int strays, const FractionalPacking* parent) {
        std::size_t first = 0;
        while (first < left_.sizes.size() && left_.counts[first] == 0) ++first;
        if (first == left_.sizes.size()) return Answer::Yes;
        effort_ -= static_cast<Size>(left_.sizes.size());
        if (waste < 0 || lowerBound(left_, capacity_) > bins) return Answer::No;

        const std::u16string key(left_.counts.begin(), left_.counts.end());
        if (const auto known = failed_.find(key); known != failed_.end() && waste <= known->second)
            return Answer::No;

        std::vector<Way> ways;
        Open open{first, waste, nullptr, 0, {}};
        FractionalPacking advice;
        if (guide_ != nullptr) {
            advice = guide_->solve(left_.counts, effort_, parent);
            if (effort_ <= 0) return Answer::GaveUp;
            if (advice.fewest() > bins) return remember(key, waste);
            follow(advice, bins, open);
        }
        Pattern pattern = {{open.first, 1}};
        --left_.counts[open.first];
        enumerate(open, guide_ ? 0 : open.first, capacity_ - left_.sizes[open.first],
                  open.prices ? open.prices[open.first] : 0, pattern, ways);
        ++left_.counts[open.first];
        if (effort_ <= 0) return Answer::GaveUp;
        for (Way& way : ways) {
            tidy(way.pattern);
            for (const FractionalPacking::Use& use : advice.uses)
                if (use.pattern == way.pattern) way.advice = use.times;
        }
        std::stable_sort(ways.begin(), ways.end(), [](const Way& a, const Way& b) {
            return a.advice != b.advice ? a.advice > b.advice : a.waste < b.waste;
        });

        bool all = true;
        for (std::size_t i = 0; i < ways.size(); ++i) {
            const int rank = static_cast<int>(i);
            if (rank > strays) {
                all = false;
                break;
            }
            const Way& way = ways[i];
            for (const auto& [kind, count] : way.pattern) left_.counts[kind] -= count;
            filled_.push_back(way.pattern);
            const Answer answer = fill(bins - 1, waste - way.waste, strays - rank, &advice);
            for (const auto& [kind, count] : way.pattern) left_.counts[kind] += count;
            if (answer == Answer::Yes) return answer;
            filled_.pop_back();
            if (effort_ <= 0) return Answer::GaveUp;
            if (answer == Answer::GaveUp) all = false;
        }
        return all ? remember(key, waste) : Answer::GaveUp;
    }

    Answer remember(const std::u16string& key, Size waste) {
        if (failed_.size() < rememberedStates) {
            Size& most = failed_.try_emplace(key, waste).first->second;
            most = std::max(most, waste);
        }
        return Answer::No;
    }

    // By size, each size once.
    static void tidy(Pattern& pattern) {
        std::sort(pattern.begin(), pattern.end());
        for (std::size_t i = 1; i < pattern.size(); ++i)
            if (pattern[i].first == pattern[i - 1].first) {
                pattern[i - 1].second += pattern[i].second;
                pattern.erase(pattern.begin() + static_cast<std::ptrdiff_t>(i--));
            }
    }

    // The surest use opens the next bin with its largest item.
    void follow(const FractionalPacking& advice, std::size_t bins, Open& open) const {
        double surest = 0;
        for (const FractionalPacking::Use& use : advice.uses)
            if (use.times > surest + 1e-4 && left_.counts[use.pattern.front().first] > 0) {
                surest = use.times;
                open.first = use.pattern.front().first;
            }
        if (!advice.known) return;
        open.prices = advice.prices.data();
        open.worth = advice.bin - (static_cast<Size>(bins) * advice.bin - advice.worth);
        open.rate.assign(left_.sizes.size() + 1, 0);
        for (std::size_t kind = left_.sizes.size(); kind-- > 0;) {
            const double own = left_.counts[kind] == 0 ? 0
                                                       : static_cast<double>(advice.prices[kind]) /
                                                             static_cast<double>(left_.sizes[kind]);
            open.rate[kind] = std::max(open.rate[kind + 1], own);
        }
    }

    // All fillings of a bin with this room from kinds `from` on. Larger items first.
    void enumerate(const Open& open, std::size_t from, Size room, Size worth, Pattern& pattern,
                   std::vector<Way>& ways) {
        std::size_t kind = from;
        while (kind < left_.sizes.size() && (left_.counts[kind] == 0 || left_.sizes[kind] > room)) ++kind;
        effort_ -= static_cast<Size>(1 + kind - from + pattern.size());
        if (effort_ <= 0) return;
        // One more than what the best rate would give takes up the rounding.
        if (open.prices && static_cast<double>(worth) + static_cast<double>(room) * open.rate[kind] + 1 <
                               static_cast<double>(open.worth))
            return;
        if (kind == left_.sizes.size()) {
            if (room <= open.waste && !dominated(pattern, room)) ways.push_back({pattern, room, 0});
            return;
        }
        const int most = static_cast<int>(std::min<Size>(left_.counts[kind], room / left_.sizes[kind]));
        for (int count = most; count >= 0; --count) {
            left_.counts[kind] -= count;
            if (count > 0) pattern.emplace_back(kind, count);
            enumerate(open, kind + 1, room - count * left_.sizes[kind],
                      worth + (open.prices ? count * open.prices[kind] : 0), pattern, ways);
            if (count > 0) pattern.pop_back();
            left_.counts[kind] += count;
        }
    }

    // A filling is no better than one that puts an item left over in the free room, or in place of one or two
    // of its items that are together no larger: whatever else holds that item can take those instead.
    // `counts` is without the pattern here. The first item stays: it opens the bin.
    bool dominated(const Pattern& pattern, Size room) const {
        const std::size_t kinds = left_.sizes.size();
        for (std::size_t kind = kinds; kind-- > 0 && left_.sizes[kind] <= room;)
            if (left_.counts[kind] > 0) return true;
        // Is there an item left of at least `size`, or larger, that fits in size + room?
        const auto replaces = [&](Size size, bool strictly) {
            auto at = std::partition_point(left_.sizes.begin(), left_.sizes.end(),
                                           [&](Size s) { return strictly ? s > size : s >= size; }) -
                      left_.sizes.begin();
            for (; at > 0; --at) {
                if (left_.sizes[at - 1] > size + room) return false;
                if (left_.counts[at - 1] > 0) return true;
            }
            return false;
        };
        for (std::size_t a = 1; a < pattern.size(); ++a) {
            const Size size = left_.sizes[pattern[a].first];
            if (replaces(size, true)) return true;
            for (std::size_t b = a; b < pattern.size(); ++b) {
                if (b == a && pattern[a].second < 2) continue;
                if (replaces(size + left_.sizes[pattern[b].first], false)) return true;
            }
        }
        return false;
    }

    static constexpr std::size_t rememberedStates = 200'000;

    ItemStock left_;
    Size capacity_;
    Size& effort_;
    FractionalPacker* guide_;
    std::vector<Pattern> filled_;
    std::unordered_map<std::u16string, Size> failed_;  // states known not to fit, with the most waste tried
};

}  // namespace

constexpr std::size_t mostGuidedSizes = 250;
constexpr Size guidedSearch = 80'000'000;

Packing packBins(const std::vector<std::int64_t>& items, std::int64_t capacity, std::int64_t effort,
                 std::int64_t quickSearch) {
    std::map<Size, std::vector<std::size_t>, std::greater<>> bySize;
    for (std::size_t i = 0; i < items.size(); ++i) bySize[items[i]].push_back(i);
    ItemStock stock;
    for (const auto& [size, indexes] : bySize) {
        stock.sizes.push_back(size);
        stock.counts.push_back(static_cast<int>(indexes.size()));
    }

    // From the lower bound up: the first count that works is the fewest, as long as each one below was
    // refuted. Most lists are answered by a short search; the others get the packing in fractions, then that
    // as a guide, then a search again. Each leaves some effort to the next, so that one hard count does not
    // starve the rest.
    std::size_t fewest = lowerBound(stock, capacity);
    std::vector<Pattern> best = firstFitDecreasing(stock, capacity);
    FractionalPacker fractional(stock.sizes, stock.counts, capacity);
    const auto open = Completion::Answer::GaveUp;
    const auto tryCount = [&](std::size_t bins, Size share, FractionalPacker* guide) {
        Size left = share;
        Completion search(stock, capacity, left, guide);
        const Completion::Answer answer = search.fits(bins);
        effort -= share - std::max<Size>(left, 0);
        if (answer == Completion::Answer::No && bins == fewest) ++fewest;
        if (answer == Completion::Answer::Yes) best = search.packed();
        return answer;
    };
    for (std::size_t bins = fewest; bins < best.size(); ++bins) {
        if (tryCount(bins, std::min(effort / 2, quickSearch), nullptr) != open) continue;
        if (stock.sizes.size() <= mostGuidedSizes) {
            Size share = std::min(effort / 4, guidedSearch), left = share;
            fewest = std::max(fewest, fractional.solve(stock.counts, left).fewest());
            effort -= share - std::max<Size>(left, 0);
            if (fewest > bins) continue;
            share = std::min(effort / 5 * 4, guidedSearch);
            if (tryCount(bins, share, &fractional) != open) continue;
        }
        tryCount(bins, effort / 2, nullptr);
    }

    Packing packing;
    packing.fewest = fewest;
    for (const Pattern& pattern : best) {
        std::vector<std::size_t>& bin = packing.bins.emplace_back();
        for (const auto& [kind, count] : pattern)
            for (int n = 0; n < count; ++n) {
                std::vector<std::size_t>& same = bySize[stock.sizes[kind]];
                bin.push_back(same.back());
                same.pop_back();
            }
    }
    return packing;
}

}  // namespace trenchbook
