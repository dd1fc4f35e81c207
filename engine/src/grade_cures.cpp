// Single changes that make a job fit. Each is tried on a copy of the job and solved again, so that what is
// said to cure does; the amount is the least whole number of grid steps that does.
#include <algorithm>
#include <cmath>
#include <functional>
#include <numeric>

#include "grade_reason.h"

namespace trenchbook::grade {
namespace {

using Kind = GradeCure::Kind;
using Rule = GradeLimit::Rule;
using Change = std::function<void(GradeJob&, Length)>;

class Trials {
  public:
    Trials(const GradeJob& job, const GradeReason& reason) : job_(job), reason_(reason) {}

    std::vector<GradeCure> cures() {
        if (reason_.kind == GradeReason::Kind::ShortOfFall) {
            higherPlace();
            lowerPlace();
        }
        otherPipes();
        if (reason_.kind == GradeReason::Kind::ShortOfFall) shorterRuns();
        return std::move(cures_);
    }

  private:
    void higherPlace() {
        const GradeLimit& high = reason_.high;
        switch (high.rule) {
            case Rule::Cover: {
                const auto cover = [high](GradeJob& job) -> Length& {
                    GradeRun& run = job.runs[high.run];
                    return high.upperEnd ? *run.coverUp : *run.coverDown;
                };
                GradeJob copy = job_;
                add(
                    Kind::LessCover, high.run,
                    [=](GradeJob& job, Length by) { cover(job) = std::max(cover(job) - by, Length()); },
                    cover(copy));
                break;
            }
            case Rule::OutletHighest:
                add(Kind::HigherOutlet, high.run,
                    [=](GradeJob& job, Length by) { *job.runs[high.run].outletHighest += by; });
                break;
            case Rule::CrossingBelow:
                add(Kind::MoveCrossingUp, high.run, crossingMoves(high, 1));
                break;
            case Rule::Fixed:
                add(Kind::MoveFixedUp, high.run, fixedMoves(high, 1));
                break;
            default:
                break;
        }
    }

    void lowerPlace() {
        const Change change = lowering();
        switch (reason_.low.rule) {
            case Rule::OutletLowest:
                add(Kind::LowerOutlet, reason_.low.run, change);
                break;
            case Rule::DeepestCut:
                add(Kind::DeeperCut, reason_.low.run, change);
                break;
            case Rule::CrossingAbove:
                add(Kind::MoveCrossingDown, reason_.low.run, change);
                break;
            case Rule::Fixed:
                add(Kind::MoveFixedDown, reason_.low.run, change);
                break;
            default:
                break;
        }
    }

    // Lowers the rule at the lower place.
    Change lowering() const {
        const GradeLimit& low = reason_.low;
        switch (low.rule) {
            case Rule::OutletLowest:
                return [low](GradeJob& job, Length by) { *job.runs[low.run].outletLowest += -by; };
            case Rule::CrossingAbove:
                return crossingMoves(low, -1);
            case Rule::Fixed:
                return fixedMoves(low, -1);
            default:
                return [](GradeJob& job, Length by) { job.deepestCut += by; };
        }
    }

    static Change crossingMoves(const GradeLimit& at, double sign) {
        return [=](GradeJob& job, Length by) { job.runs[at.run].crossings[at.crossing].level += sign * by; };
    }
    static Change fixedMoves(const GradeLimit& at, double sign) {
        return [=](GradeJob& job, Length by) {
            GradeRun& run = job.runs[at.run];
            *(at.upperEnd ? run.fixedUp : run.fixedDown) += sign * by;
        };
    }

    // Another pipe of the table, from the first run on the way down to the outlet.
    void otherPipes() {
        const bool shortOfFall = reason_.kind == GradeReason::Kind::ShortOfFall;
        const std::size_t first = reason_.path.empty() ? reason_.low.run : reason_.path.front();
        std::vector<std::size_t> pipes(job_.pipes.size());
        std::iota(pipes.begin(), pipes.end(), std::size_t{0});
        std::stable_sort(pipes.begin(), pipes.end(), [&](std::size_t a, std::size_t b) {
            return job_.pipes[a].price < job_.pipes[b].price;
        });
        for (std::size_t pipe : pipes) {
            GradeJob trial = job_;
            for (std::optional<std::size_t> run = first; run; run = trial.runs[*run].below) {
                std::vector<std::size_t>& listed = trial.runs[*run].pipes;
                if (std::find(listed.begin(), listed.end(), pipe) == listed.end()) listed.push_back(pipe);
            }
            if (!gradeFits(trial)) continue;
            Length spare;
            if (shortOfFall) {
                const Change change = lowering();
                spare = lastThat([&](Length by) {
                    GradeJob higher = trial;
                    change(higher, -by);
                    return higher.deepestCut.metres() > 0 && gradeFits(higher);
                });
            }
            cures_.push_back({Kind::OtherPipe, first, pipe, spare});
        }
    }

    // The longest run on the way that can be shortened enough, to a tenth of its length at least.
    void shorterRuns() {
        std::vector<std::size_t> runs = reason_.path;
        std::stable_sort(runs.begin(), runs.end(), [&](std::size_t a, std::size_t b) {
            return job_.runs[a].length > job_.runs[b].length;
        });
        if (runs.size() > 3) runs.resize(3);
        for (std::size_t run : runs) {
            // Where it meets other lines would move with its length: not for us to say.
            if (!job_.runs[run].crossings.empty()) continue;
            const std::size_t before = cures_.size();
            add(
                Kind::ShorterRun, run, [run](GradeJob& job, Length by) { job.runs[run].length += -by; },
                0.9 * job_.runs[run].length);
            if (cures_.size() > before) return;
        }
    }

    // Adds the change with the least amount that cures, if one up to `most` does.
    void add(Kind kind, std::size_t run, const Change& change, Length most = Length::metres(30)) {
        const Step limit = static_cast<Step>(most / job_.grid + slack);
        const auto cures = [&](Step steps) {
            GradeJob trial = job_;
            change(trial, static_cast<double>(steps) * job_.grid);
            return gradeFits(trial);
        };
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
    Length lastThat(const Passes& passes) const {
        Step good = 0;
        Step bad = 1;
        while (bad < wide && passes(static_cast<double>(bad) * job_.grid)) {
            good = bad;
            bad *= 2;
        }
        while (bad - good > 1) {
            const Step middle = good + (bad - good) / 2;
            (passes(static_cast<double>(middle) * job_.grid) ? good : bad) = middle;
        }
        return static_cast<double>(good) * job_.grid;
    }

    const GradeJob& job_;
    const GradeReason& reason_;
    std::vector<GradeCure> cures_;
};

}  // namespace

std::vector<GradeCure> curesOf(const GradeJob& job, const GradeReason& reason) {
    return Trials(job, reason).cures();
}

}  // namespace trenchbook::grade
