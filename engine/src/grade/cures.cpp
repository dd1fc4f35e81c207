// Single changes that make a job fit. Each is tried on a copy of the job, so that what is said to cure does;
// the amount is the least whole number of grid steps that does.
#include <algorithm>
#include <cmath>
#include <functional>
#include <numeric>

#include "grade/reason.h"

namespace trenchbook::grade {
namespace {

using Kind = GradeCure::Kind;
using Rule = GradeLimit::Rule;

// A job in which one run at a time is changed, to see whether it then fits. Only what lies downstream of the
// run is looked at again.
class Trial {
  public:
    using Change = std::function<void(GradeRun&, Length by)>;

    explicit Trial(GradeJob job) : job_(std::move(job)), model_(job_) {
        if (!model_.shrink) reaches_ = reachOf(model_);
    }
    Trial(const Trial&) = delete;

    bool fits() const { return !model_.shrink && reaches_.fits(); }
    bool fitsWith(std::size_t run, const Change& change, Length by) {
        const GradeRun before = job_.runs[run];
        change(job_.runs[run], by);
        look(run);
        const bool fits = reaches_.fits();
        job_.runs[run] = before;
        look(run);
        return fits;
    }
    const GradeJob& job() const { return job_; }

  private:
    void look(std::size_t run) {
        model_.readAgain(run);
        update(reaches_, model_, run);
    }

    GradeJob job_;
    Model model_;
    Reaches reaches_;
};

class Cures {
  public:
    Cures(const GradeJob& job, const GradeReason& reason) : job_(job), reason_(reason) {}

    std::vector<GradeCure> find() {
        if (reason_.kind == GradeReason::Kind::ShortOfFall) {
            Trial trial(job_);
            higherPlace(trial);
            lowerPlace(trial);
            otherPipes();
            shorterRuns(trial);
        } else {
            otherPipes();
        }
        return std::move(cures_);
    }

  private:
    void higherPlace(Trial& trial) {
        const GradeLimit& high = reason_.high;
        const auto add = [&](Kind kind, const Trial::Change& change, Length most) {
            addLeast(kind, high.run, most, [&](Length by) { return trial.fitsWith(high.run, change, by); });
        };
        switch (high.rule) {
            case Rule::Cover: {
                const auto cover = [high](auto& run) -> auto& {
                    return high.upperEnd ? *run.coverUp : *run.coverDown;
                };
                const auto lessen = [=](GradeRun& run, Length by) {
                    cover(run) = std::max(cover(run) - by, Length());
                };
                add(Kind::LessCover, lessen, cover(job_.runs[high.run]));
                break;
            }
            case Rule::OutletHighest:
                add(
                    Kind::HigherOutlet, [](GradeRun& run, Length by) { *run.outletHighest += by; },
                    farEnough);
                break;
            case Rule::CrossingBelow:
                add(Kind::MoveCrossingUp, crossingMoves(high, 1), farEnough);
                break;
            case Rule::Fixed:
                add(Kind::MoveFixedUp, fixedMoves(high, 1), farEnough);
                break;
            default:
                break;
        }
    }

    void lowerPlace(Trial& trial) {
        const auto passes = [&](Length by) { return fitsLower(trial, by); };
        switch (reason_.low.rule) {
            case Rule::OutletLowest:
                addLeast(Kind::LowerOutlet, reason_.low.run, roomUnder(job_.runs[reason_.low.run]), passes);
                break;
            case Rule::DeepestCut:
                addLeast(Kind::DeeperCut, reason_.low.run, farEnough, passes);
                break;
            case Rule::CrossingAbove:
                addLeast(Kind::MoveCrossingDown, reason_.low.run, farEnough, passes);
                break;
            default:
                addLeast(Kind::MoveFixedDown, reason_.low.run, farEnough, passes);
                break;
        }
    }

    // How much lower the outlet may be said to end.
    static Length roomUnder(const GradeRun& outlet) {
        if (!outlet.outletFloor) return farEnough;
        return std::max(*outlet.outletLowest - *outlet.outletFloor, Length());
    }

    // With the rule at the lower place asking for so much less.
    bool fitsLower(Trial& trial, Length by) const {
        const GradeLimit& low = reason_.low;
        switch (low.rule) {
            case Rule::OutletLowest:
                return trial.fitsWith(
                    low.run, [](GradeRun& run, Length less) { *run.outletLowest += -less; }, by);
            case Rule::CrossingAbove:
                return trial.fitsWith(low.run, crossingMoves(low, -1), by);
            case Rule::Fixed:
                return trial.fitsWith(low.run, fixedMoves(low, -1), by);
            default: {
                GradeJob deeper = trial.job();
                deeper.deepestCut += by;
                return deeper.deepestCut.metres() > 0 && gradeFits(deeper);
            }
        }
    }

    static Trial::Change crossingMoves(const GradeLimit& at, double sign) {
        return [=](GradeRun& run, Length by) { run.crossings[at.crossing].level += sign * by; };
    }
    static Trial::Change fixedMoves(const GradeLimit& at, double sign) {
        return [=](GradeRun& run, Length by) { *(at.upperEnd ? run.fixedUp : run.fixedDown) += sign * by; };
    }

    // Another pipe of the table, from the first run on the way down to the outlet; the cheapest first.
    void otherPipes() {
        const std::size_t first = reason_.path.empty() ? reason_.low.run : reason_.path.front();
        std::vector<std::size_t> pipes(job_.pipes.size());
        std::iota(pipes.begin(), pipes.end(), std::size_t{0});
        std::stable_sort(pipes.begin(), pipes.end(), [&](std::size_t a, std::size_t b) {
            return job_.pipes[a].price < job_.pipes[b].price;
        });
        for (std::size_t pipe : pipes) {
            GradeJob job = job_;
            bool isNew = false;
            for (std::optional<std::size_t> run = first; run; run = job.runs[*run].below) {
                std::vector<std::size_t>& listed = job.runs[*run].pipes;
                if (std::find(listed.begin(), listed.end(), pipe) != listed.end()) continue;
                listed.push_back(pipe);
                isNew = true;
            }
            if (!isNew) continue;
            Trial trial(std::move(job));
            if (!trial.fits()) continue;
            Length spare;
            if (reason_.kind == GradeReason::Kind::ShortOfFall)
                spare = largest([&](Length by) { return fitsLower(trial, -by); });
            cures_.push_back({Kind::OtherPipe, first, pipe, spare});
        }
    }

    // The longest run on the way that can be shortened enough, to a tenth of its length at least.
    void shorterRuns(Trial& trial) {
        std::vector<std::size_t> runs = reason_.path;
        std::stable_sort(runs.begin(), runs.end(), [&](std::size_t a, std::size_t b) {
            return job_.runs[a].length > job_.runs[b].length;
        });
        if (runs.size() > 3) runs.resize(3);
        for (std::size_t run : runs) {
            // Where it meets other lines would move with its length: not for us to say.
            if (!job_.runs[run].crossings.empty()) continue;
            const std::size_t before = cures_.size();
            const auto shorten = [](GradeRun& shorter, Length by) { shorter.length += -by; };
            addLeast(Kind::ShorterRun, run, 0.9 * job_.runs[run].length,
                     [&](Length by) { return trial.fitsWith(run, shorten, by); });
            if (cures_.size() > before) return;
        }
    }

    // Adds the change with the least amount that cures, if one up to `most` does.
    template <class Passes>
    void addLeast(Kind kind, std::size_t run, Length most, const Passes& passes) {
        const auto cures = [&](Step steps) { return passes(static_cast<double>(steps) * job_.grid); };
        const Step limit = static_cast<Step>(most / job_.grid + slack);
        if (limit < 1) return;
        Step enough = std::clamp<Step>(std::llround(reason_.missing() / job_.grid), 1, limit);
        Step tooLittle = 0;
        while (!cures(enough)) {
            if (enough == limit) return;
            tooLittle = enough;
            enough = std::min(2 * enough, limit);
        }
        // Most often the missing feet are just enough.
        if (tooLittle == 0 && enough > 1 && !cures(enough - 1)) tooLittle = enough - 1;
        while (enough - tooLittle > 1) {
            const Step middle = tooLittle + (enough - tooLittle) / 2;
            (cures(middle) ? enough : tooLittle) = middle;
        }
        cures_.push_back({kind, run, 0, static_cast<double>(enough) * job_.grid});
    }

    // The largest amount, in whole steps, that still passes.
    template <class Passes>
    Length largest(const Passes& passes) const {
        const auto good = [&](Step steps) { return passes(static_cast<double>(steps) * job_.grid); };
        Step most = 0;
        Step tooMuch = 1;
        while (static_cast<double>(tooMuch) * job_.grid < farEnough && good(tooMuch)) {
            most = tooMuch;
            tooMuch *= 2;
        }
        while (tooMuch - most > 1) {
            const Step middle = most + (tooMuch - most) / 2;
            (good(middle) ? most : tooMuch) = middle;
        }
        return static_cast<double>(most) * job_.grid;
    }

    static constexpr Length farEnough = Length::metres(30);

    const GradeJob& job_;
    const GradeReason& reason_;
    std::vector<GradeCure> cures_;
};

}  // namespace

std::vector<GradeCure> curesOf(const GradeJob& job, const GradeReason& reason) {
    return Cures(job, reason).find();
}

}  // namespace trenchbook::grade
