#include "takeoff/bins.h"

#include <algorithm>
#include <limits>
#include <map>
#include <numeric>
#include <string>
#include <unordered_map>

namespace trenchbook {
namespace {

using Size = std::int64_t;

// What is still to be packed: distinct sizes, largest first, and how many of each.
struct Stock {
    std::vector<Size> sizes;
    std::vector<int> counts;
};
using Pattern = std::vector<std::pair<std::size_t, int>>;  // index of the size, how many

// Martello and Toth's L2: for each threshold t, items above capacity - t sit alone, items above half sit one
// to a bin, and what does not fit beside those needs bins of its own.
std::size_t lowerBound(const Stock& stock, Size capacity) {
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

std::vector<Pattern> firstFitDecreasing(const Stock& stock, Size capacity) {
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

// Bin completion: can all items go into `bins` bins? The largest item left opens the next bin; every way to
// fill it that no better way dominates is tried, least waste first.
class Completion {
  public:
    Completion(Stock stock, Size capacity, Size& effort)
        : left_(std::move(stock)), capacity_(capacity), effort_(effort) {}

    enum class Answer { Yes, No, GaveUp };

    Answer fits(std::size_t bins) {
        Size total = 0;
        for (std::size_t i = 0; i < left_.sizes.size(); ++i) total += left_.sizes[i] * left_.counts[i];
        const Size waste = static_cast<Size>(bins) * capacity_ - total;
        // A third of the effort goes deep from the way that wastes least. Where that gets lost, the rest
        // tries the plans that stray little from it first.
        const Size deep = effort_ / 3, rest = effort_ - deep;
        effort_ = deep;
        Answer answer = fill(bins, waste, std::numeric_limits<int>::max());
        effort_ = std::max<Size>(effort_, 0) + rest;
        for (int strays = 0; answer == Answer::GaveUp && effort_ > 0; strays = 2 * strays + 1)
            answer = fill(bins, waste, strays);
        return answer;
    }
    const std::vector<Pattern>& packed() const { return filled_; }

  private:
    struct Way {
        Pattern pattern;
        Size waste;
    };

    Answer fill(std::size_t bins, Size waste, int strays) {
        std::size_t first = 0;
        while (first < left_.sizes.size() && left_.counts[first] == 0) ++first;
        if (first == left_.sizes.size()) return Answer::Yes;
        effort_ -= static_cast<Size>(left_.sizes.size());
        if (waste < 0 || lowerBound(left_, capacity_) > bins) return Answer::No;

        const std::u16string key(left_.counts.begin(), left_.counts.end());
        if (const auto known = failed_.find(key); known != failed_.end() && waste <= known->second)
            return Answer::No;

        std::vector<Way> ways;
        Pattern pattern = {{first, 1}};
        --left_.counts[first];
        enumerate(first, capacity_ - left_.sizes[first], waste, pattern, ways);
        ++left_.counts[first];
        if (effort_ <= 0) return Answer::GaveUp;
        std::stable_sort(ways.begin(), ways.end(),
                         [](const Way& a, const Way& b) { return a.waste < b.waste; });

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
            const Answer answer = fill(bins - 1, waste - way.waste, strays - rank);
            for (const auto& [kind, count] : way.pattern) left_.counts[kind] += count;
            if (answer == Answer::Yes) return answer;
            filled_.pop_back();
            if (effort_ <= 0) return Answer::GaveUp;
            if (answer == Answer::GaveUp) all = false;
        }
        if (!all) return Answer::GaveUp;
        if (failed_.size() < rememberedStates) {
            Size& most = failed_.try_emplace(key, waste).first->second;
            most = std::max(most, waste);
        }
        return Answer::No;
    }

    // All fillings of a bin with this room from kinds `from` on. Larger items first.
    void enumerate(std::size_t from, Size room, Size waste, Pattern& pattern, std::vector<Way>& ways) {
        std::size_t kind = from;
        while (kind < left_.sizes.size() && (left_.counts[kind] == 0 || left_.sizes[kind] > room)) ++kind;
        effort_ -= static_cast<Size>(1 + kind - from + pattern.size());
        if (effort_ <= 0) return;
        if (kind == left_.sizes.size()) {
            if (room <= waste && !dominated(pattern, room)) ways.push_back({pattern, room});
            return;
        }
        const int most = static_cast<int>(std::min<Size>(left_.counts[kind], room / left_.sizes[kind]));
        for (int count = most; count >= 0; --count) {
            left_.counts[kind] -= count;
            if (count > 0) pattern.emplace_back(kind, count);
            enumerate(kind + 1, room - count * left_.sizes[kind], waste, pattern, ways);
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

    Stock left_;
    Size capacity_;
    Size& effort_;
    std::vector<Pattern> filled_;
    std::unordered_map<std::u16string, Size> failed_;  // states known not to fit, with the most waste tried
};

}  // namespace

Packing packBins(const std::vector<std::int64_t>& items, std::int64_t capacity, std::int64_t effort) {
    std::map<Size, std::vector<std::size_t>, std::greater<>> bySize;
    for (std::size_t i = 0; i < items.size(); ++i) bySize[items[i]].push_back(i);
    Stock stock;
    for (const auto& [size, indexes] : bySize) {
        stock.sizes.push_back(size);
        stock.counts.push_back(static_cast<int>(indexes.size()));
    }

    // From the lower bound up: the first count that works is the fewest, as long as each one below was
    // refuted. Half of what is left of the effort goes to each count, so that a hard one does not starve the
    // rest.
    std::size_t fewest = lowerBound(stock, capacity);
    std::vector<Pattern> best = firstFitDecreasing(stock, capacity);
    for (std::size_t bins = fewest; bins < best.size(); ++bins) {
        Size share = effort / 2;
        effort -= share;
        Completion search(stock, capacity, share);
        const Completion::Answer answer = search.fits(bins);
        effort += std::max<Size>(share, 0);
        if (answer == Completion::Answer::No && bins == fewest) ++fewest;
        if (answer == Completion::Answer::Yes) best = search.packed();
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
