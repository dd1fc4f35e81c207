#include "grade/reach.h"

#include <algorithm>
#include <cmath>

namespace trenchbook::grade {
namespace {

// Levels of an upper end that are tried one by one between two crossings.
constexpr double mostTries = 100000;

}  // namespace

Window windowOf(const Run& run, const Option& option) {
    Window window{};
    for (End end : {Up, Down}) {
        window[end] = {option.low[end].level, option.high[end].level};
        if (!run.fixed[end]) continue;
        window[end].first = std::max(window[end].first, *run.fixed[end]);
        window[end].last = std::min(window[end].last, *run.fixed[end]);
    }
    return window;
}

Range otherEnds(const Option& option, const Window& window, End known, Step level) {
    Range range = window[known == Up ? Down : Up];
    if (known == Up) {
        range.last = std::min(range.last, level - option.fall);
    } else {
        range.first = std::max(range.first, level + option.fall);
    }
    for (const Crossing& crossing : option.crossings) {
        const double weight = known == Up ? crossing.share : 1 - crossing.share;
        const double rest = crossing.invert - (1 - weight) * static_cast<double>(level);
        if (weight < 1e-12) {
            // The crossing lies at the known end: it says yes or no.
            if (crossing.below ? rest < -slack : rest > slack) range.first = range.last + 1;
        } else if (crossing.below) {
            range.last = std::min(range.last, floorStep(rest / weight));
        } else {
            range.first = std::max(range.first, ceilStep(rest / weight));
        }
    }
    return range;
}

Step highestLowerEnd(const Option& option, const Window& window) {
    const double fall = static_cast<double>(option.fall);
    double first = static_cast<double>(window[Up].first);
    double last = static_cast<double>(window[Up].last);
    // Raising the upper end lets the lower one rise, up to where a crossing passed below begins to push it
    // down.
    double turn = last;
    for (const Crossing& a : option.crossings) {
        if (a.below) {
            turn = std::min(turn, a.invert + a.share * fall);
            continue;
        }
        // Passing above one crossing and below another takes a slope that is steep enough, or not too steep.
        // A step is left for the grid.
        for (const Crossing& b : option.crossings) {
            const double apart = b.share - a.share;
            if (!b.below || std::fabs(apart) < 1e-9) continue;
            const double upper = (a.invert * b.share - b.invert * a.share) / apart;
            if (apart > 0) {
                first = std::max(first, upper - 1);
            } else {
                last = std::min(last, upper + 1);
            }
        }
    }
    // From there on the lower end falls as the upper one rises: the first level that keeps all rules is the
    // best.
    const double start = std::max(first, std::min(last, std::floor(turn + slack)));
    if (!(start <= last)) return farBelow;
    const Step end = static_cast<Step>(std::min(last, start + mostTries));
    for (Step up = static_cast<Step>(std::ceil(start)); up <= end; ++up) {
        const Range range = otherEnds(option, window, Up, up);
        if (!range.empty()) return range.last;
        if (range.last < window[Down].first) return farBelow;
    }
    return farBelow;
}

namespace {

// The highest that the upper end of `run` may lie for one of the runs upstream, with the best of its pipes.
Step arrivingFrom(const Model& model, const Reaches& reaches, std::size_t above, std::size_t run,
                  const Option& option, std::size_t* bestOption = nullptr) {
    Step best = farBelow;
    const std::vector<Option>& options = model.runs[above].options;
    for (std::size_t i = 0; i < options.size(); ++i) {
        const Step down = reaches.at[above][i].down;
        if (down == farBelow || model.nominal(options[i]) > model.nominal(option)) continue;
        const Step arriving = down - model.joinStep(above, options[i], run, option);
        if (arriving <= best) continue;
        best = arriving;
        if (bestOption != nullptr) *bestOption = i;
    }
    return best;
}

// With the rules that say "not above" alone.
Step highestByHighRules(const Run& run, Option option, Step arriving) {
    std::erase_if(option.crossings, [](const Crossing& crossing) { return !crossing.below; });
    Window window;
    for (End end : {Up, Down})
        window[end].last = std::min(option.high[end].level, run.fixed[end].value_or(farAbove));
    window[Up].last = std::min(window[Up].last, arriving);
    for (End end : {Up, Down}) window[end].first = farBelow;
    return highestLowerEnd(option, window);
}

// From the runs upstream, whose reaches are known.
void reachAt(Reaches& reaches, const Model& model, std::size_t index) {
    const Run& run = model.runs[index];
    std::vector<RunReach>& at = reaches.at[index];
    at.assign(run.options.size(), {});
    bool possible = false;
    for (std::size_t i = 0; i < run.options.size(); ++i) {
        const Option& option = run.options[i];
        for (std::size_t above : run.upstream)
            at[i].arriving = std::min(at[i].arriving, arrivingFrom(model, reaches, above, index, option));
        Window window = windowOf(run, option);
        window[Up].last = std::min(window[Up].last, at[i].arriving);
        at[i].down = highestLowerEnd(option, window);
        possible |= at[i].down != farBelow;
    }
    reaches.tooLow += reaches.isTooLow[index] == possible ? (possible ? -1 : 1) : 0;
    reaches.isTooLow[index] = !possible;
    if (possible) return;
    for (std::size_t i = 0; i < run.options.size(); ++i)
        at[i].down = highestByHighRules(run, run.options[i], at[i].arriving);
}

}  // namespace

Reaches reachOf(const Model& model) {
    Reaches reaches;
    reaches.at.resize(model.runs.size());
    reaches.isTooLow.resize(model.runs.size(), false);
    for (std::size_t run : model.order) reachAt(reaches, model, run);
    return reaches;
}

void update(Reaches& reaches, const Model& model, std::size_t run) {
    for (std::optional<std::size_t> next = run; next; next = model.job.runs[*next].below) {
        const std::vector<RunReach> before = reaches.at[*next];
        reachAt(reaches, model, *next);
        if (reaches.at[*next] == before) return;
    }
}

Arrival arrivalAt(const Model& model, const Reaches& reaches, std::size_t run, std::size_t option) {
    for (std::size_t above : model.runs[run].upstream) {
        std::size_t best = 0;
        const Step arriving =
            arrivingFrom(model, reaches, above, run, model.runs[run].options[option], &best);
        if (arriving == reaches.at[run][option].arriving) return {above, best};
    }
    return {run, option};
}

std::vector<std::vector<Window>> usefulWindows(const Model& model, const Reaches& reaches) {
    std::vector<std::vector<Window>> windows(model.runs.size());
    for (auto index = model.order.rbegin(); index != model.order.rend(); ++index) {
        const Run& run = model.runs[*index];
        const std::optional<std::size_t> below = model.job.runs[*index].below;
        for (std::size_t i = 0; i < run.options.size(); ++i) {
            const Option& option = run.options[i];
            Window window = windowOf(run, option);
            if (below) {
                Step least = farAbove;
                const std::vector<Option>& lower = model.runs[*below].options;
                for (std::size_t j = 0; j < lower.size(); ++j) {
                    const Range& up = windows[*below][j][Up];
                    if (up.empty() || model.nominal(option) > model.nominal(lower[j])) continue;
                    least = std::min(least, up.first + model.joinStep(*index, option, *below, lower[j]));
                }
                window[Down].first = std::max(window[Down].first, least);
            }
            const RunReach& reach = reaches.at[*index][i];
            window[Down].last = std::min(window[Down].last, reach.down);
            window[Up].last = std::min(window[Up].last, reach.arriving);
            window[Up].first = std::max(window[Up].first, window[Down].first + option.fall);
            if (window[Down].empty() || window[Up].empty()) window = {Range{1, 0}, Range{1, 0}};
            windows[*index].push_back(window);
        }
    }
    return windows;
}

}  // namespace trenchbook::grade
