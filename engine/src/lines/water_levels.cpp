#include "trenchbook/lines/water_levels.h"

#include <algorithm>
#include <cmath>

#include "lines/walk.h"
#include "trenchbook/core/error.h"
#include "trenchbook/pipe/circular.h"
#include "trenchbook/pipe/gradual_flow.h"
#include "trenchbook/pipe/manning.h"

namespace trenchbook {
namespace {

// The depths along one reach, walked upstream from its lower end.
class Upstream {
  public:
    Upstream(const PipeReach& reach, Slope slope)
        : reach_(reach),
          slope_(slope),
          fullFriction_(reach.flow.si() > 0
                            ? frictionSlope(reach.bore, reach.bore, reach.flow, reach.roughness)
                            : Slope()) {}

    struct End {
        Length depth;  // at the upper end, or at the stop
        Length full;   // length that runs full
        bool stopped = false;
    };
    // From `start`, which is calm or full, towards `normal` where the reach has one. Stops at the depth
    // `stop`, which lies between (the foot of a jump).
    End walk(Length start, std::optional<Length> normal, std::optional<Length> stop) const {
        End end{start, {}, false};
        Length left = reach_.length;
        if (start >= reach_.bore) {
            // Full: a straight line, down to the crown or to the stop above it.
            const double fall = (slope_ - fullFriction_).fraction();
            const Length lowest = stop ? std::max(*stop, reach_.bore) : reach_.bore;
            if (fall <= 0 || start - lowest >= left * fall) {
                return {start - left * fall, left, false};
            }
            end.full = (start - lowest) / fall;
            left = left - end.full;
            if (stop && *stop >= reach_.bore) return {*stop, end.full, true};
            start = reach_.bore;
        }
        return openWalk(start, normal, stop, left, end.full);
    }

  private:
    End openWalk(Length start, std::optional<Length> normal, std::optional<Length> stop, Length left,
                 Length full) const {
        const auto section = [bore = reach_.bore](Length depth) { return segmentAt(bore, depth); };
        const GradualFlow flow(section, reach_.flow, reach_.roughness, slope_);
        // At the normal depth itself it stays; which way it leans would be rounding.
        if (normal && std::fabs((start - *normal) / reach_.bore) < 1e-9) return {*normal, full, false};
        // Losing less than the bed falls, the water gets shallower upstream; losing more, deeper. At the
        // crown itself the full pipe decides.
        const bool shallower = start >= reach_.bore || flow.frictionSlope(start) < slope_;
        if (normal && (shallower || start < *normal)) {
            const auto walked = flow.upstream(start, stop.value_or(*normal), normal, left);
            return {walked.depth, full, stop && walked.length < left};
        }
        const auto walked = flow.upstream(start, reach_.bore, std::nullopt, left);
        if (walked.length >= left) return {walked.depth, full, false};
        const Length rest = left - walked.length;
        return {reach_.bore + rest * (fullFriction_ - slope_), full + rest, false};
    }

    const PipeReach& reach_;
    Slope slope_;
    Slope fullFriction_;
};

Length velocityHeadFull(const PipeReach& reach) {
    const double velocity = (reach.flow / fullArea(reach.bore)).si();
    return Length::fromSi(velocity * velocity / (2 * gravity));
}

// Water that stands still: level, full as far as the crown lies under it.
ReachWater standing(const PipeReach& reach, Length slopeDrop, std::optional<Length> levelBelow) {
    const Length level = std::max(levelBelow.value_or(reach.invertDown), reach.invertDown);
    ReachWater water{.levelUp = std::max(level, reach.invertUp), .levelDown = level};
    const Length overCrown = level - reach.invertDown - reach.bore;
    if (overCrown.si() >= 0) water.fullShare = overCrown >= slopeDrop ? 1 : overCrown / slopeDrop;
    water.state = water.fullShare >= 1                           ? WaterState::Full
                  : water.fullShare > 0                          ? WaterState::PartDrowned
                  : levelBelow && *levelBelow < reach.invertDown ? WaterState::DropsIn
                                                                 : WaterState::Free;
    return water;
}

}  // namespace

ReachWater reachWater(const PipeReach& reach, std::optional<Length> levelBelow) {
    requirePositive(reach.length, "length");
    requirePositive(reach.bore, "pipe");
    requirePositive(reach.roughness, "roughness");
    requireNotNegative(reach.flow, "flow");
    requireNotNegative(reach.lossK, "K");
    const Length drop = reach.invertUp - reach.invertDown;
    if (reach.flow.si() == 0) return standing(reach, drop, levelBelow);

    const Slope slope = Slope::fraction(drop / reach.length);
    const std::optional<Length> normal = findNormalDepth(reach.bore, slope, reach.flow, reach.roughness);
    const Length critical = criticalDepth(reach.bore, reach.flow);
    const std::optional<Length> below =
        levelBelow ? std::optional(*levelBelow - reach.invertDown) : std::nullopt;
    const bool drops = below && below->si() < 0;

    ReachWater water;
    const Upstream upstream(reach, slope);
    Upstream::End end;
    if (normal && *normal < critical) {
        // Steep. The water below must bring more momentum than the reach does.
        const bool drowned = below && *below > critical &&
                             momentum(segmentAt(reach.bore, *below), reach.flow) >
                                 momentum(segmentAt(reach.bore, *normal), reach.flow);
        if (!drowned) {
            water.levelUp = reach.invertUp + *normal;
            water.levelDown = reach.invertDown + *normal;
            water.state = drops ? WaterState::DropsIn : WaterState::Free;
            return water;
        }
        end = upstream.walk(*below, normal, sequentDepth(reach.bore, *normal, reach.flow));
        water.levelDown = reach.invertDown + *below;
        water.levelUp = reach.invertUp + (end.stopped ? *normal : end.depth);
        water.state = WaterState::PartDrowned;
    } else {
        const Length start = below ? std::max(*below, critical) : critical;
        end = upstream.walk(start, normal, std::nullopt);
        water.levelDown = reach.invertDown + start;
        water.levelUp = reach.invertUp + end.depth;
        water.state = end.full.si() > 0 ? WaterState::PartDrowned
                      : drops           ? WaterState::DropsIn
                                        : WaterState::Free;
    }
    water.fullShare = end.full / reach.length;
    if (end.full >= reach.length) {
        water.fullShare = 1;
        water.state = WaterState::Full;
    }
    if (!end.stopped && end.depth >= reach.bore) water.levelUp += reach.lossK * velocityHeadFull(reach);
    return water;
}

namespace {

Text missing(const Run& run, const Carried& carried) {
    if (Text why = run.trouble(
            {"Length", "Pipe", "Flow", "Invert up", "Invert down", "Outlet water", "K", "Roughness"});
        !why.empty())
        return why;
    if (!run.length) return {"length is missing", "falta la longitud"};
    if (!run.pipe) return {"pipe is missing", "falta el tubo"};
    if (!carried.flow) return {"flow is missing", "falta el caudal"};
    if (!carried.invertUp) return {"invert up is missing", "falta la cota de arriba"};
    if (!carried.invertDown) return {"invert down is missing", "falta la cota de abajo"};
    return carried.belowUnknown;
}

}  // namespace

std::vector<Worked<ReachWater>> lineWater(const Network& lines, std::span<const Run> runs,
                                          std::span<const Carried> carried) {
    requireRows(runs.size(), lines, "length");
    requireRows(carried.size(), lines, "flow");
    const auto lacks = [&](std::size_t row) { return missing(runs[row], carried[row]); };
    const auto waits = [](std::size_t) { return true; };
    return carryUp<ReachWater>(lines, lacks, waits, [&](std::size_t row, const ReachWater* below) {
        const Run& run = runs[row];
        const Carried& here = carried[row];
        try {
            const PipeReach reach{.length = *run.length,
                                  .bore = run.pipe->bore,
                                  .roughness = run.manning(),
                                  .flow = *here.flow,
                                  .invertUp = *here.invertUp,
                                  .invertDown = *here.invertDown,
                                  .lossK = here.lossK};
            return Worked<ReachWater>{
                reachWater(reach, below == nullptr ? here.levelBelow : std::optional(below->levelUp)), {}};
        } catch (const Error& error) {
            return cannot<ReachWater>(row,
                                      {error.sentence(Language::English), error.sentence(Language::Spanish)});
        }
    });
}

const Text& stateText(WaterState state) {
    static const Text words[] = {{"free", "libre"},
                                 {"free drop", "cae libre"},
                                 {"part drowned", "ahogado en parte"},
                                 {"full", "lleno"}};
    return words[static_cast<std::size_t>(state)];
}

}  // namespace trenchbook
