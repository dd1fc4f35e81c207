#include "trenchbook/job/storms.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "job/solve_parts.h"
#include "trenchbook/core/error.h"
#include "trenchbook/ground/pit_storm.h"
#include "trenchbook/water/storm.h"

namespace trenchbook {
namespace {

constexpr std::array durations = {Duration::minutes(5),  Duration::minutes(10), Duration::minutes(15),
                                  Duration::minutes(30), Duration::minutes(60), Duration::hours(2),
                                  Duration::hours(6),    Duration::hours(24)};

// As the table's rows are read: 2 hours and 120 minutes are the same row.
bool isRowOf(const RainTable& rain, Duration duration) {
    return std::any_of(rain.durations().begin(), rain.durations().end(),
                       [&](Duration row) { return std::fabs(row / duration - 1) < 1e-9; });
}

class Trial {
  public:
    Trial(const Job& job, const SolvedJob& solved) : solved_(solved), bubbling_(job), draining_(job) {
        solved_.findings.clear();
        // The lines' own travel is not counted: every storm is at its rain everywhere.
        bubbling_.peak.reset();
        findPit();
        measureInlets();
    }

    void fill(StormTried& tried, const Storm& storm) {
        const Duration start = atPeak(storm, tried.intensity);
        pit(tried, storm);
        const bool full = tried.pitFullAfter.has_value();
        const SolvedJob& wet = under(full || pitRuns_.empty() ? bubbling_ : draining_, tried.intensity);
        lines(tried, wet);
        inlets(tried);
        ends(tried, wet, storm);
        pumps(tried, wet, storm);
        failures(tried, storm, start);
    }

  private:
    // What the pit is, and the same job with its tee as a free end.
    void findPit() {
        draining_.peak.reset();
        const std::size_t at = solved_.lines.node(bubbling_.pit.node);
        if (nameKey(bubbling_.pit.node).empty() || at == Network::none) return;
        const std::optional<RockPit> built = pitAsBuilt(bubbling_);
        const std::optional<Area> area = solved_.pit.areaTimesC;
        if (!built || !area || !(*area > Area{}) || !bubbling_.pit.rate || !solved_.pit.storage) return;
        pit_ = built;
        pitArea_ = *area;
        for (std::size_t row = 0; row < bubbling_.runs.size(); ++row) {
            if (solved_.lines.toNode(row) != at || !solved_.runs[row].invertDown) continue;
            pitRuns_.push_back(row);
            draining_.runs[row].outletWater = solved_.runs[row].invertDown;
        }
        for (Node& node : draining_.nodes)
            if (nameKey(node.name) == nameKey(bubbling_.pit.node)) node.kinds = nodeKinds("bank");
    }

    // What each inlet takes, clean and half blocked, whatever the rain.
    void measureInlets() {
        for (const double blocked : {0.0, 0.5}) {
            Ruleset rules = bubbling_.rules;
            rules.set("grate.blocked", blocked, UnitSystem::US);
            std::vector<std::optional<Flow>>& takes = blocked > 0 ? takesHalf_ : takesClean_;
            for (std::size_t row = 0; row < bubbling_.inlets.size(); ++row) {
                const JobInlet& inlet = bubbling_.inlets[row];
                SolvedInlet answer = solved_.inlets[row];
                if (answer.inletTakes && inlet.entersBy == EntersBy::Grate)
                    answer.inletTakes = entryTakes(inlet, rules, bubbling_.units);
                takes.push_back(inlet.blank ? std::nullopt : answer.takes());
            }
        }
    }

    // The job at another rain. Numbers that it lacks it lacks at every rain: one job is solved over and over.
    const SolvedJob& under(Job& job, RainRate rain) {
        job.facts.rain = rain;
        solveRain(job, solved_);
        return solved_;
    }

    // When the greatest rain begins.
    static Duration atPeak(const Storm& storm, RainRate greatest) {
        Duration begins{};
        for (const StormStep& step : storm) {
            if (step.depth.si() >= greatest.si() * (step.end - begins).si() * (1 - 1e-9)) return begins;
            begins = step.end;
        }
        return begins;
    }

    void pit(StormTried& tried, const Storm& storm) const {
        if (!pit_) return;
        std::vector<PitState> course;
        const PitStorm result = runStorm(storm, pitArea_, *pit_, *bubbling_.pit.rate, Length{}, &course);
        tried.pitFilled = result.highest / pit_->rockDepth;
        if (!(result.overflow > Volume{})) return;
        tried.pitFullAfter = result.firstOverflow;
        tried.wellsUp = result.overflow;
        Duration begins{};
        Volume before{};
        for (const PitState& state : course) {
            if (state.overflow > before)
                tried.wellsUpFor += state.end - std::max(begins, *result.firstOverflow);
            before = state.overflow;
            begins = state.end;
        }
    }

    static void lines(StormTried& tried, const SolvedJob& wet) {
        for (std::size_t row = 0; row < wet.runs.size(); ++row) {
            const SolvedRun& run = wet.runs[row];
            if (!run.flow || !run.capacity || !(*run.capacity > Flow{})) continue;
            const double share = *run.flow / *run.capacity;
            if (tried.share && share <= *tried.share) continue;
            tried.share = share;
            tried.shareRun = row;
        }
    }

    // The least freeboard of the nodes where water can come out.
    void freeboard(StormTried& tried, const SolvedJob& wet) const {
        for (std::size_t row = 0; row < wet.nodes.size(); ++row) {
            const Node& node = bubbling_.nodes[row];
            if (!node.kinds.open() || node.kinds.endsLine()) continue;
            if (wet.nodes[row].entering + wet.nodes[row].leaving == 0) continue;
            const std::optional<Length> free = wet.nodes[row].freeboard;
            if (!free) {
                ++tried.notKnown;
            } else if (!tried.freeboard || *free < *tried.freeboard) {
                tried.freeboard = free;
                tried.freeboardNode = row;
            }
        }
    }

    void inlets(StormTried& tried) const {
        double worst = 0;
        for (std::size_t row = 0; row < bubbling_.inlets.size(); ++row) {
            if (bubbling_.inlets[row].blank) continue;
            const std::optional<Area> area = solved_.inlets[row].areaTimesC;
            if (!area || !takesHalf_[row] || !takesClean_[row]) {
                ++tried.notKnown;
                continue;
            }
            const Flow comes = *area * tried.intensity;
            tried.overClean += comes > *takesClean_[row];
            tried.overHalfBlocked += comes > *takesHalf_[row];
            const double share = comes / *takesHalf_[row];
            if (share <= worst) continue;
            worst = share;
            tried.worstInlet = row;
        }
    }

    // Ends that well up without a pit: all their water, as long as it rains.
    void ends(StormTried& tried, const SolvedJob& wet, const Storm& storm) {
        freeboard(tried, wet);
        for (std::size_t row = 0; row < wet.runs.size(); ++row) {
            const SolvedRun& run = wet.runs[row];
            if (!wet.lines.outlet(row) || run.lower == Network::none || !run.flow) continue;
            const Node& node = bubbling_.nodes[run.lower];
            if (!node.kinds.bubbles() || nameKey(node.name) == nameKey(bubbling_.pit.node)) continue;
            tried.wellsUp += *run.flow * (tried.depth / tried.intensity);
            tried.wellsUpFor = std::max(tried.wellsUpFor, storm.back().end);
        }
    }

    // Basins whose pump gets more than it lifts: of several the one that is full first.
    void pumps(StormTried& tried, const SolvedJob& wet, const Storm& storm) const {
        for (std::size_t at = 0; at < wet.nodes.size(); ++at) {
            const Node& node = bubbling_.nodes[at];
            if (node.blank || !node.kinds.has(NodeKind::PumpBasin) || wet.nodes[at].entering == 0) continue;
            const std::size_t row = pumpIn(node);
            if (row == Network::none || !wet.pumps[row].gives || !wet.pumps[row].outage) {
                ++tried.notKnown;
                continue;
            }
            const SolvedPump& pump = wet.pumps[row];
            if (pump.keepsUp().value_or(true)) continue;
            const std::optional<Duration> full = fullAfter(pump, tried.intensity, storm);
            if (tried.pump != Network::none && (!full || (tried.pumpAfter && *tried.pumpAfter <= *full)))
                continue;
            tried.pump = row;
            tried.pumpAfter = full;
        }
    }
    std::size_t pumpIn(const Node& node) const {
        for (std::size_t row = 0; row < bubbling_.pumps.size(); ++row)
            if (!bubbling_.pumps[row].blank && nameKey(bubbling_.pumps[row].node) == nameKey(node.name))
                return row;
        return Network::none;
    }
    // When the room between the pump's start and the lowest opening is full; none: it is not.
    static std::optional<Duration> fullAfter(const SolvedPump& pump, RainRate greatest, const Storm& storm) {
        const Volume room = *pump.inflow * *pump.outage;
        Volume stored{};
        Duration begins{};
        for (const StormStep& step : storm) {
            const Duration lasts = step.end - begins;
            const double share = step.depth.si() / lasts.si() / greatest.si();
            const Flow over = *pump.inflow * share - *pump.gives;
            if (over > Flow{} && stored + over * lasts >= room) return begins + (room - stored) / over;
            stored = std::max(Volume{}, stored + over * lasts);
            begins = step.end;
        }
        return std::nullopt;
    }

    void failures(StormTried& tried, const Storm& storm, Duration peak) {
        const auto candidate = [&](FailsFirst what, Duration after) {
            if (tried.first != FailsFirst::Nothing && after >= tried.firstAfter) return;
            tried.first = what;
            tried.firstAfter = after;
        };
        if (tried.overClean > 0) candidate(FailsFirst::Inlet, firstOver(storm));
        if (tried.pitFullAfter) candidate(FailsFirst::Pit, *tried.pitFullAfter);
        if (tried.pumpAfter) candidate(FailsFirst::Pump, *tried.pumpAfter);
        if (tried.freeboard && *tried.freeboard < Length{}) {
            bool before = !tried.pitFullAfter;  // flooded while the pit still takes it
            if (!before) {
                StormTried dry;
                freeboard(dry, under(draining_, tried.intensity));
                before = dry.freeboard && *dry.freeboard < Length{};
            }
            candidate(FailsFirst::Node, before ? peak : std::max(peak, *tried.pitFullAfter));
        }
    }

    // When the first inlet gets more than it takes clean.
    Duration firstOver(const Storm& storm) const {
        Duration begins{};
        for (const StormStep& step : storm) {
            const RainRate rain = RainRate::fromSi(step.depth.si() / (step.end - begins).si());
            for (std::size_t row = 0; row < takesClean_.size(); ++row)
                if (const auto area = solved_.inlets[row].areaTimesC;
                    area && takesClean_[row] && *area * rain > *takesClean_[row])
                    return begins;
            begins = step.end;
        }
        return begins;
    }

    SolvedJob solved_;
    Job bubbling_, draining_;
    std::optional<RockPit> pit_ = {};
    Area pitArea_ = {};
    std::vector<std::size_t> pitRuns_ = {};
    std::vector<std::optional<Flow>> takesClean_ = {}, takesHalf_ = {};
};

}  // namespace

std::vector<StormTried> storms(const Job& job, const SolvedJob& solved,
                               const std::optional<RainTable>& rain) {
    Trial trial(job, solved);
    std::vector<StormTried> all;
    Duration shortest{}, longest{};
    for (Duration duration : durations) {
        StormTried& tried = all.emplace_back(StormTried{.duration = duration});
        tried.inTable = rain && isRowOf(*rain, duration);
        if (!tried.inTable) continue;
        if (shortest.si() == 0) shortest = duration;
        longest = duration;
        tried.depth = rain->depth(duration, job.facts.returnYears);
        tried.intensity = RainRate::fromSi(tried.depth.si() / duration.si());
        trial.fill(tried, {{duration, tried.depth}});
    }
    StormTried& centered = all.emplace_back(StormTried{.duration = longest, .centered = true});
    centered.inTable = longest > shortest;
    if (!centered.inTable) return all;
    const Storm storm = alternatingBlocks(*rain, longest, job.facts.returnYears, shortest);
    Length greatest{};
    for (const StormStep& step : storm) {
        centered.depth += step.depth;
        greatest = std::max(greatest, step.depth);
    }
    centered.intensity = RainRate::fromSi(greatest.si() / shortest.si());
    trial.fill(centered, storm);
    return all;
}

}  // namespace trenchbook
