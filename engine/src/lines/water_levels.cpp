#include "trenchbook/lines/water_levels.h"

#include <algorithm>
#include <cmath>

#include "trenchbook/core/error.h"
#include "trenchbook/pipe/circular.h"
#include "trenchbook/pipe/gradual_flow.h"
#include "trenchbook/pipe/manning.h"

namespace trenchbook {
namespace {

// The depths along one reach, walked upstream from its lower end.
class Upstream {
  public:
    Upstream(const Reach& reach, Slope slope)
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

    const Reach& reach_;
    Slope slope_;
    Slope fullFriction_;
};

Length velocityHeadFull(const Reach& reach) {
    const double velocity = (reach.flow / fullArea(reach.bore)).si();
    return Length::fromSi(velocity * velocity / (2 * gravity));
}

// Water that stands still: level, full as far as the crown lies under it.
ReachWater standing(const Reach& reach, Length slopeDrop, std::optional<Length> levelBelow) {
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

ReachWater reachWater(const Reach& reach, std::optional<Length> levelBelow) {
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

Text missing(const WaterRow& row) {
    if (!row.trouble.empty()) return row.trouble;
    if (!row.length) return {"length is missing", "falta la longitud"};
    if (!row.bore) return {"pipe is missing", "falta el tubo"};
    if (!row.flow) return {"flow is missing", "falta el caudal"};
    if (!row.invertUp) return {"invert up is missing", "falta la cota de arriba"};
    if (!row.invertDown) return {"invert down is missing", "falta la cota de abajo"};
    return {};
}

}  // namespace

std::vector<WaterAnswer> lineWater(const Network& lines, std::span<const WaterRow> rows) {
    if (rows.size() != lines.rows())
        throw Error(Error::Kind::BadArgument, "length", std::to_string(rows.size()) + " rows",
                    {"as many rows as from", "tantas filas como from"});
    std::vector<WaterAnswer> answers(rows.size());
    for (std::size_t row = 0; row < rows.size(); ++row) answers[row].fault = lines.fault(row);
    for (auto at = lines.order().rbegin(); at != lines.order().rend(); ++at) {
        const std::size_t row = *at;
        WaterAnswer& answer = answers[row];
        if (answer.fault) continue;
        const WaterRow& given = rows[row];
        if (Text lacks = missing(given); !lacks.empty()) {
            answer.fault = {Fault::Kind::BadCell, row, std::move(lacks)};
            continue;
        }
        std::optional<Length> below = given.outletLevel;
        if (const std::size_t next = lines.wayOn(row); next != Network::none) {
            if (!answers[next].water) {
                const Fault& cause = answers[next].fault;
                answer.fault = {
                    Fault::Kind::Waiting, cause.kind == Fault::Kind::Waiting ? cause.other : next, {}};
                continue;
            }
            below = answers[next].water->levelUp;
        }
        try {
            answer.water = reachWater({.length = *given.length,
                                       .bore = *given.bore,
                                       .roughness = given.roughness,
                                       .flow = *given.flow,
                                       .invertUp = *given.invertUp,
                                       .invertDown = *given.invertDown,
                                       .lossK = given.lossK},
                                      below);
        } catch (const Error& error) {
            answer.fault = {Fault::Kind::BadCell,
                            row,
                            {error.sentence(Language::English), error.sentence(Language::Spanish)}};
        }
    }
    return answers;
}

const Text& stateText(WaterState state) {
    static const Text words[] = {{"free", "libre"},
                                 {"drops in", "cae libre"},
                                 {"part drowned", "ahogado en parte"},
                                 {"full", "lleno"}};
    return words[static_cast<std::size_t>(state)];
}

}  // namespace trenchbook
