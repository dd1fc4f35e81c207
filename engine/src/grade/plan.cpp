// The plan of least cost: a dynamic programme along the tree.
//
// From the heads down, per run, pipe and lower end: the least cost of everything upstream with that lower
// end. A run above may end anywhere at or above the join, so only its cheapest level from there on upwards
// counts: one running minimum per run. Time is runs x levels x pairs of pipes.
#include <algorithm>
#include <cmath>

#include "grade/dig_prices.h"
#include "grade/model.h"
#include "grade/reach.h"
#include "grade/reason.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

using namespace grade;

// Whole units of 1e-6 dollar: sums are exact, so equal plans cost the same whatever the order of the runs.
using Cost = std::int64_t;
constexpr double unitsPerDollar = 1e6;
constexpr Cost impossible = std::numeric_limits<Cost>::max() / 4;

Cost costOf(double dollars) {
    return std::llround(std::clamp(dollars * unitsPerDollar, 0.0, static_cast<double>(impossible)));
}
Cost sum(Cost a, Cost b) { return std::min(a + b, impossible); }

using Index = std::uint16_t;  // of a level in a window
constexpr Step mostLevels = 60000;

// What is remembered of a run with one of its pipes.
struct Choice {
    Window window;
    std::vector<Cost> cheapest;   // by lower end: of all plans upstream with this lower end or a higher one
    std::vector<Index> at;        // the lower end of that plan
    std::vector<Index> upperEnd;  // by lower end: the best upper end
    // By run upstream, in the order of Run::upstream: its pipe, by upper end of this run.
    std::vector<std::vector<std::uint8_t>> pipeAbove;
};

// Replaces each cost by the least at its place or above; `at` says where. Of equal ones the highest.
void cheapestFromHereUp(std::vector<Cost>& costs, std::vector<Index>& at) {
    at.resize(costs.size());
    std::size_t best = costs.size() - 1;
    for (std::size_t i = costs.size(); i-- > 0;) {
        if (costs[i] < costs[best]) best = i;
        costs[i] = costs[best];
        at[i] = static_cast<Index>(best);
    }
}

// The least of any stretch of costs, the highest of equal ones: a table of stretches of 1, 2, 4, ... levels.
class CheapestOf {
  public:
    explicit CheapestOf(const std::vector<Cost>& costs) : costs_(costs), tables_(1) {
        tables_[0].resize(costs.size());
        for (std::size_t i = 0; i < costs.size(); ++i) tables_[0][i] = static_cast<Index>(i);
        for (std::size_t half = 1; 2 * half <= costs.size(); half *= 2) {
            const std::vector<Index>& shorter = tables_.back();
            std::vector<Index> longer(costs.size() - 2 * half + 1);
            for (std::size_t i = 0; i < longer.size(); ++i) longer[i] = better(shorter[i], shorter[i + half]);
            tables_.push_back(std::move(longer));
        }
    }
    Index operator()(std::size_t first, std::size_t last) const {
        std::size_t table = 0;
        while ((std::size_t{2} << table) <= last - first + 1) ++table;
        return better(tables_[table][first], tables_[table][last + 1 - (std::size_t{1} << table)]);
    }

  private:
    Index better(Index lower, Index higher) const { return costs_[lower] < costs_[higher] ? lower : higher; }

    const std::vector<Cost>& costs_;
    std::vector<std::vector<Index>> tables_;
};

class Planner {
  public:
    Planner(const Model& model, const Reaches& reaches)
        : model_(model),
          job_(model.job),
          prices_(model.job.digging),
          windows_(usefulWindows(model, reaches)),
          choices_(model.runs.size()),
          lowest_(*model.job.runs[model.outlet()].outletLowest - model.job.grid) {}

    void solve(std::vector<GradedRun>& runs, Money& total) {
        for (std::size_t run : model_.order) {
            for (std::size_t option = 0; option < model_.runs[run].options.size(); ++option)
                choices_[run].push_back(choose(run, option));
            for (std::size_t above : model_.runs[run].upstream)
                for (Choice& choice : choices_[above]) choice.cheapest = {};
        }
        const std::vector<Choice>& last = choices_[model_.outlet()];
        std::size_t best = last.size();
        for (std::size_t option = 0; option < last.size(); ++option)
            if (!last[option].cheapest.empty() && last[option].cheapest[0] < impossible &&
                (best == last.size() || last[option].cheapest[0] < last[best].cheapest[0]))
                best = option;
        if (best == last.size())
            throw Error(Error::Kind::OutsideValidity, "dig cost",
                        {"The cost of the line is beyond what can be counted.",
                         "El costo de la línea es mayor de lo que se puede contar."});
        runs.resize(model_.runs.size());
        readBack(best, runs, total);
    }

  private:
    // Length x half the digging price, by level of one end.
    std::vector<Cost> digging(std::size_t run, const Option& option, End end, const Range& range) const {
        std::vector<Cost> costs(static_cast<std::size_t>(range.last - range.first + 1), 0);
        if (prices_.none()) return costs;
        const Length half = job_.runs[run].length / 2;
        std::size_t piece = 0;
        for (std::size_t i = 0; i < costs.size(); ++i) {
            const Length depth = cut(run, option, end, range.first + static_cast<Step>(i));
            costs[i] = costOf((half * prices_.at(depth, piece)).dollars());
        }
        return costs;
    }
    Cost diggingAt(std::size_t run, const Option& option, End end, Step level) const {
        return digging(run, option, end, {level, level})[0];
    }

    Length cut(std::size_t run, const Option& option, End end, Step level) const {
        const Length ground = end == Up ? job_.runs[run].groundUp : job_.runs[run].groundDown;
        return ground - model_.level(run, end, level) +
               Length::metres(model_.sections[option.pipe].bottom * model_.step) + job_.bedding;
    }

    Cost pipeCost(std::size_t run, const Option& option) const {
        return costOf((job_.runs[run].length * job_.pipes[option.pipe].price).dollars());
    }

    // A drop costs the difference of two levels: its upper end is charged to the run that enters, its lower
    // end taken off again where the run below takes over, so that the sum stays one over single ends.
    Cost dropPart(std::size_t run, End end, Step level) const {
        return costOf(((model_.level(run, end, level) - lowest_) * job_.dropPrice).dollars());
    }
    bool dropsCost() const { return job_.dropPrice.si() > 0; }

    Choice choose(std::size_t index, std::size_t optionIndex) {
        const grade::Run& run = model_.runs[index];
        const Option& option = run.options[optionIndex];
        Choice choice;
        choice.window = windows_[index][optionIndex];
        const auto& [upper, lower] = choice.window;
        if (upper.empty()) return choice;
        for (const Range& range : choice.window)
            if (range.last - range.first >= mostLevels)
                throw Error(
                    Error::Kind::OutsideValidity, "grid", plain(job_.grid.feet()) + " ft",
                    {"a grid with at most 60000 steps between the highest and the lowest invert of an end",
                     "una cuadrícula con 60000 pasos como máximo entre la cota más alta y la más baja"});

        std::vector<Cost> up = digging(index, option, Up, upper);
        for (std::size_t above : run.upstream) addUpstream(index, option, above, upper.first, choice, up);
        choice.cheapest = digging(index, option, Down, lower);
        choice.upperEnd.resize(choice.cheapest.size());
        addUpperEnds(option, choice, up);
        const Cost pipe = pipeCost(index, option);
        for (Cost& cost : choice.cheapest) cost = sum(cost, pipe);
        if (job_.runs[index].below && dropsCost())
            for (std::size_t level = 0; level < choice.cheapest.size(); ++level)
                choice.cheapest[level] = sum(choice.cheapest[level],
                                             dropPart(index, Down, lower.first + static_cast<Step>(level)));
        cheapestFromHereUp(choice.cheapest, choice.at);
        return choice;
    }

    // Adds, to each upper end, the cheapest plan of one run upstream that enters at or above the join.
    void addUpstream(std::size_t index, const Option& option, std::size_t above, Step first, Choice& choice,
                     std::vector<Cost>& up) {
        std::vector<Cost> best(up.size(), impossible);
        std::vector<std::uint8_t>& pipes = choice.pipeAbove.emplace_back(up.size());
        const std::vector<Option>& options = model_.runs[above].options;
        for (std::size_t i = 0; i < options.size(); ++i) {
            const Choice& from = choices_[above][i];
            if (from.cheapest.empty() || model_.nominal(options[i]) > model_.nominal(option)) continue;
            const Step offset =
                first + model_.joinStep(above, options[i], index, option) - from.window[Down].first;
            const Step count = static_cast<Step>(from.cheapest.size());
            for (std::size_t level = 0; level < up.size(); ++level) {
                const Step at = std::max<Step>(offset + static_cast<Step>(level), 0);
                if (at >= count) break;
                const Cost cost = from.cheapest[static_cast<std::size_t>(at)];
                if (cost >= best[level]) continue;
                best[level] = cost;
                pipes[level] = static_cast<std::uint8_t>(i);
            }
        }
        for (std::size_t level = 0; level < up.size(); ++level) {
            if (best[level] < impossible && dropsCost())
                best[level] -= dropPart(index, Up, first + static_cast<Step>(level));
            up[level] = sum(up[level], best[level]);
        }
    }

    // Adds, to each lower end, the cheapest upper end that goes with it.
    void addUpperEnds(const Option& option, Choice& choice, std::vector<Cost>& up) const {
        const auto& [upper, lower] = choice.window;
        const auto take = [&](std::size_t level, bool any, std::size_t best) {
            choice.cheapest[level] = any ? sum(choice.cheapest[level], up[best]) : impossible;
            choice.upperEnd[level] = static_cast<Index>(best);
        };
        if (option.crossings.empty()) {
            std::vector<Index> at;
            cheapestFromHereUp(up, at);
            for (std::size_t level = 0; level < choice.cheapest.size(); ++level) {
                const Step first =
                    std::max<Step>(lower.first + static_cast<Step>(level) + option.fall - upper.first, 0);
                const bool any = first < static_cast<Step>(up.size());
                take(level, any, any ? at[static_cast<std::size_t>(first)] : 0);
            }
            return;
        }
        const CheapestOf cheapest(up);
        for (std::size_t level = 0; level < choice.cheapest.size(); ++level) {
            const Range ends = otherEnds(option, choice.window, Down, lower.first + static_cast<Step>(level));
            const bool any = !ends.empty();
            take(level, any,
                 any ? cheapest(static_cast<std::size_t>(ends.first - upper.first),
                                static_cast<std::size_t>(ends.last - upper.first))
                     : 0);
        }
    }

    // From the outlet uphill: what was chosen.
    void readBack(std::size_t best, std::vector<GradedRun>& runs, Money& total) const {
        struct Pick {
            std::size_t run, option;
            Step least;    // the lower end lies at or above this
            Cost dropsTo;  // the lower end of its drop
        };
        Cost all = 0;
        std::vector<Pick> open = {{model_.outlet(), best, farBelow, 0}};
        while (!open.empty()) {
            const auto [index, optionIndex, least, dropsTo] = open.back();
            open.pop_back();
            const grade::Run& run = model_.runs[index];
            const Option& option = run.options[optionIndex];
            const Choice& choice = choices_[index][optionIndex];
            const Step first = std::max<Step>(least - choice.window[Down].first, 0);
            const Index lower = choice.at[static_cast<std::size_t>(first)];
            const Index upper = choice.upperEnd[lower];
            const Step down = choice.window[Down].first + lower;
            const Step up = choice.window[Up].first + upper;

            GradedRun& graded = runs[index];
            graded.invertUp = model_.level(index, Up, up);
            graded.invertDown = model_.level(index, Down, down);
            graded.slope = Slope::fraction((graded.invertUp - graded.invertDown) / job_.runs[index].length);
            graded.cutUp = cut(index, option, Up, up);
            graded.cutDown = cut(index, option, Down, down);
            graded.pipe = option.pipe;
            const Cost drop = job_.runs[index].below ? dropPart(index, Down, down) - dropsTo : 0;
            const Cost cost = pipeCost(index, option) + diggingAt(index, option, Up, up) +
                              diggingAt(index, option, Down, down) + drop;
            graded.cost = Money::dollars(static_cast<double>(cost) / unitsPerDollar);
            all += cost;
            for (std::size_t i = 0; i < run.upstream.size(); ++i) {
                const std::size_t above = run.upstream[i];
                const std::size_t pipe = choice.pipeAbove[i][upper];
                open.push_back({above, pipe,
                                up + model_.joinStep(above, model_.runs[above].options[pipe], index, option),
                                dropPart(index, Up, up)});
            }
        }
        total = Money::dollars(static_cast<double>(all) / unitsPerDollar);
    }

    const Model& model_;
    const GradeJob& job_;
    DigPrices prices_;
    std::vector<std::vector<Window>> windows_;
    std::vector<std::vector<Choice>> choices_;  // by run, option
    Length lowest_;                             // no invert lies lower
};

}  // namespace

GradePlan planGrade(const GradeJob& job) {
    const Model model(job);
    GradePlan plan;
    if (model.shrink) {
        plan.reason = shrinkReason(model);
        return plan;
    }
    const Reaches reaches = reachOf(model);
    if (!reaches.fits()) {
        plan.reason = conflictReason(model, reaches);
        return plan;
    }
    plan.fits = true;
    Planner(model, reaches).solve(plan.runs, plan.cost);
    plan.reason = spareReason(model, plan.runs);
    return plan;
}

bool gradeFits(const GradeJob& job) {
    const Model model(job);
    return !model.shrink && reachOf(model).fits();
}

}  // namespace trenchbook
