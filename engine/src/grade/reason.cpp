// The certificate: every level is bounded from above by places upstream (ground less cover less the fall on
// the way) and from below by its own rules. Where a bound from below lies above what is reachable, one can
// walk back up along the run that keeps the level down until a rule is met: that rule, the least falls on the
// way and the bound below prove by a plain sum that nothing fits.
#include "grade/reason.h"

#include <algorithm>

#include "trenchbook/core/error.h"

namespace trenchbook::grade {
namespace {

using Rule = GradeLimit::Rule;

// One side of one rule on a run built of one pipe.
struct Limit {
    enum class At { Up, Down, Crossing };
    enum class Origin {
        Own,
        Arriving,  // what comes from upstream keeps the upper end down
        Demand,    // asks for more than is reachable, to find out what stands in the way
    };
    bool high;  // not above; else not below
    At at;
    Step level = 0;            // of an end
    std::size_t crossing = 0;  // of the option
    Rule rule = Rule::Cover;
    Origin origin = Origin::Own;
};

std::vector<Limit> ownLimits(const Run& run, const Option& option) {
    std::vector<Limit> limits;
    for (std::size_t i = 0; i < option.crossings.size(); ++i) {
        const bool below = option.crossings[i].below;
        limits.push_back(
            {below, Limit::At::Crossing, 0, i, below ? Rule::CrossingBelow : Rule::CrossingAbove});
    }
    for (End end : {Up, Down}) {
        const Limit::At at = end == Up ? Limit::At::Up : Limit::At::Down;
        limits.push_back({true, at, option.high[end].level, 0, option.high[end].rule});
        limits.push_back({false, at, option.low[end].level, 0, option.low[end].rule});
        if (!run.fixed[end]) continue;
        limits.push_back({true, at, *run.fixed[end], 0, Rule::Fixed});
        limits.push_back({false, at, *run.fixed[end], 0, Rule::Fixed});
    }
    return limits;
}

// Whether a run can be laid under these limits alone. With `raise`, that limit asks for so much more.
bool canBeLaid(const Option& option, const std::vector<Limit>& limits, const Limit* raised = nullptr,
               Step raise = 0) {
    Option laid = option;
    laid.crossings.clear();
    Window window = {Range{farBelow, farAbove}, Range{farBelow, farAbove}};
    for (const Limit& limit : limits) {
        const Step more = &limit == raised ? raise : 0;
        if (limit.at == Limit::At::Crossing) {
            laid.crossings.push_back(option.crossings[limit.crossing]);
            laid.crossings.back().invert += static_cast<double>(more);
            continue;
        }
        Range& range = window[limit.at == Limit::At::Up ? Up : Down];
        if (limit.high) {
            range.last = std::min(range.last, limit.level + more);
        } else {
            range.first = std::max(range.first, limit.level + more);
        }
    }
    return highestLowerEnd(laid, window) != farBelow;
}

// Leaves out one limit after the other as long as the rest still contradict each other: what is left is
// needed, each of it. Crossings go first, then the looser of two limits on one end.
std::vector<Limit> contradiction(const Option& option, std::vector<Limit> limits) {
    std::stable_sort(limits.begin(), limits.end(), [](const Limit& a, const Limit& b) {
        if ((a.at == Limit::At::Crossing) != (b.at == Limit::At::Crossing))
            return a.at == Limit::At::Crossing;
        if (a.high != b.high) return a.high;
        return a.high ? a.level > b.level : a.level < b.level;
    });
    for (std::size_t i = 0; i < limits.size();) {
        std::vector<Limit> rest = limits;
        rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(i));
        if (canBeLaid(option, rest)) {
            ++i;
        } else {
            limits = std::move(rest);
        }
    }
    return limits;
}

// The largest raise of one limit with which the run can still be laid; negative: it must be lowered.
Step largestRaise(const Option& option, const std::vector<Limit>& limits, const Limit& raised) {
    const auto possible = [&](Step raise) { return canBeLaid(option, limits, &raised, raise); };
    Step good = -1;
    Step bad = 0;
    if (possible(0)) {
        for (good = 0, bad = 1; bad < farAbove / 4 && possible(bad); bad *= 2) good = bad;
    } else {
        for (; good > farBelow / 4 && !possible(good); good *= 2) bad = good;
    }
    while (bad - good > 1) {
        const Step middle = good + (bad - good) / 2;
        (possible(middle) ? good : bad) = middle;
    }
    return good;
}

// The highest upper end that upstream allows counts as a limit of the run.
std::vector<Limit> limitsWith(const Run& run, const Option& option, const RunReach& reach) {
    std::vector<Limit> limits = ownLimits(run, option);
    if (!run.upstream.empty())
        limits.push_back({true, Limit::At::Up, reach.arriving, 0, Rule::Cover, Limit::Origin::Arriving});
    return limits;
}

// How a rule that says "not below" stands against all that say "not above" in its run, and in a run that can be laid
// against the other rules that say "not below" too: at a crossing they bind together.
struct Standing {
    std::vector<Limit> limits;  // those that it stands against, and last the rule itself
    Step spare = farAbove;      // steps by which it could be raised; negative: that are missing
};

// The tightest one. A run that no single rule makes impossible, but several together do, has them all.
Standing tightest(const Run& run, const Option& option, const RunReach& reach) {
    const std::vector<Limit> all = limitsWith(run, option, reach);
    const bool fits = canBeLaid(option, all);
    Standing found;
    for (const Limit& low : all) {
        if (low.high) continue;
        std::vector<Limit> limits;
        for (const Limit& limit : all)
            // An invert set by hand is not to be weighed against itself.
            if ((limit.high || fits) && &limit != &low &&
                !(low.rule == Rule::Fixed && limit.rule == Rule::Fixed && limit.at == low.at))
                limits.push_back(limit);
        limits.push_back(low);
        if (found.spare < farAbove && canBeLaid(option, limits, &limits.back(), found.spare)) continue;
        found.spare = largestRaise(option, limits, limits.back());
        found.limits = std::move(limits);
    }
    if (found.spare < 0 || fits) return found;

    std::vector<Limit> limits = contradiction(option, all);
    const auto low =
        std::find_if(limits.begin(), limits.end(), [](const Limit& limit) { return !limit.high; });
    std::rotate(low, low + 1, limits.end());
    found.spare = largestRaise(option, limits, limits.back());
    found.limits = std::move(limits);
    return found;
}

// Walks from the lower place up to the rule that keeps it down.
class Walk {
  public:
    Walk(const Model& model, const Reaches& reaches) : model_(model), reaches_(reaches) {}

    GradeReason from(std::size_t run, std::size_t option, Standing standing) {
        Limit& low = standing.limits.back();
        reason_.low = place(run, option, low);
        // One step more than there is to spare (or one step less than is missing) just contradicts the other
        // limits: then only the tightest of them do.
        const Step raise = standing.spare + 1;
        Option asked = model_.runs[run].options[option];
        if (low.at == Limit::At::Crossing) {
            asked.crossings[low.crossing].invert += static_cast<double>(raise);
        } else {
            low.level += raise;
        }
        climb(run, option, contradiction(asked, standing.limits), low);
        std::reverse(reason_.path.begin(), reason_.path.end());
        std::reverse(reason_.pathPipes.begin(), reason_.pathPipes.end());
        reason_.available = reason_.high.level - reason_.low.level;
        reason_.needed =
            reason_.available - Length::metres(static_cast<double>(standing.spare) * model_.step);
        return std::move(reason_);
    }

  private:
    void climb(std::size_t run, std::size_t option, std::vector<Limit> contradicting, Limit from) {
        for (;;) {
            // The rule to follow: what arrives from upstream rather than one of the run's own.
            const Limit* high = nullptr;
            for (const Limit& limit : contradicting)
                if (limit.high && (high == nullptr || limit.origin == Limit::Origin::Arriving)) high = &limit;
            if (high == nullptr)
                throw Error(Error::Kind::NoConvergence, "crossings",
                            {"The crossings of one run lie too close together to be told apart.",
                             "Los cruces de un tramo están demasiado juntos para distinguirlos."});
            for (const Limit& limit : contradicting)
                if (&limit != high && limit.origin == Limit::Origin::Own && !isSame(limit, from))
                    reason_.also.push_back(place(run, option, limit));
            // The water passes from the one place to the other through this run, unless both are at one end
            // of it.
            if (high->at != from.at || high->at == Limit::At::Crossing) {
                reason_.path.push_back(run);
                reason_.pathPipes.push_back(model_.runs[run].options[option].pipe);
            }
            if (high->origin == Limit::Origin::Own) {
                reason_.high = place(run, option, *high);
                return;
            }
            const Arrival above = arrivalAt(model_, reaches_, run, option);
            run = above.run;
            option = above.option;
            from = {false, Limit::At::Down, reaches_.at[run][option].down + 1,
                    0,     Rule::Cover,     Limit::Origin::Demand};
            contradicting = contradiction(model_.runs[run].options[option], limitsAbove(run, option, from));
        }
    }

    std::vector<Limit> limitsAbove(std::size_t run, std::size_t option, const Limit& demand) const {
        std::vector<Limit> limits =
            limitsWith(model_.runs[run], model_.runs[run].options[option], reaches_.at[run][option]);
        if (reaches_.isTooLow[run]) std::erase_if(limits, [](const Limit& limit) { return !limit.high; });
        limits.push_back(demand);
        return limits;
    }

    static bool isSame(const Limit& a, const Limit& b) {
        return a.high == b.high && a.at == b.at && a.rule == b.rule && a.crossing == b.crossing;
    }

    GradeLimit place(std::size_t run, std::size_t option, const Limit& limit) const {
        GradeLimit out;
        out.rule = limit.rule;
        out.run = run;
        out.pipe = model_.runs[run].options[option].pipe;
        if (limit.at == Limit::At::Crossing) {
            const Section& section = model_.sections[out.pipe];
            out.crossing = limit.crossing;
            out.level = model_.job.runs[run].crossings[limit.crossing].level +
                        Length::metres((limit.high ? -section.top : section.bottom) * model_.step);
        } else {
            out.upperEnd = limit.at == Limit::At::Up;
            out.level = model_.level(run, out.upperEnd ? Up : Down, limit.level);
        }
        return out;
    }

    const Model& model_;
    const Reaches& reaches_;
    GradeReason reason_;
};

}  // namespace

GradeReason shrinkReason(const Model& model) {
    GradeReason reason;
    reason.kind = GradeReason::Kind::Shrinks;
    reason.high.run = model.shrink->upper;
    reason.high.pipe = model.shrink->pipe;
    reason.low.run = model.shrink->lower;
    reason.cures = curesOf(model.job, reason);
    return reason;
}

GradeReason conflictReason(const Model& model, const Reaches& reaches) {
    // In each run the pipe that comes closest; of the runs the one that misses most.
    Standing worst;
    std::size_t worstRun = 0;
    std::size_t worstOption = 0;
    for (std::size_t run : model.order) {
        if (!reaches.isTooLow[run]) continue;
        Standing best;
        std::size_t bestOption = 0;
        for (std::size_t i = 0; i < model.runs[run].options.size(); ++i) {
            Standing standing = tightest(model.runs[run], model.runs[run].options[i], reaches.at[run][i]);
            if (i > 0 && standing.spare <= best.spare) continue;
            best = std::move(standing);
            bestOption = i;
        }
        if (best.spare >= worst.spare) continue;
        worst = std::move(best);
        worstRun = run;
        worstOption = bestOption;
    }
    GradeReason reason = Walk(model, reaches).from(worstRun, worstOption, worst);
    reason.kind = GradeReason::Kind::ShortOfFall;
    reason.otherConflicts = reaches.tooLow - 1;
    reason.cures = curesOf(model.job, reason);
    return reason;
}

GradeReason spareReason(const Model& model, const std::vector<GradedRun>& plan) {
    Model built = model;
    for (std::size_t run = 0; run < plan.size(); ++run)
        std::erase_if(built.runs[run].options,
                      [&](const Option& option) { return option.pipe != plan[run].pipe; });
    const Reaches reaches = reachOf(built);
    Standing least;
    std::size_t leastRun = 0;
    for (std::size_t run : built.order) {
        Standing standing = tightest(built.runs[run], built.runs[run].options[0], reaches.at[run][0]);
        if (standing.spare >= least.spare || standing.limits.empty()) continue;
        least = std::move(standing);
        leastRun = run;
    }
    GradeReason reason = Walk(built, reaches).from(leastRun, 0, least);
    reason.kind = GradeReason::Kind::Fits;
    return reason;
}

}  // namespace trenchbook::grade
