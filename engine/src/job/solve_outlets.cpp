// How the lines end: the swale's depth, the water over a rim, the level that each line ends in, and what stays behind
// a rim when the rain is over.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "job/outlet_ends.h"
#include "job/solve_parts.h"
#include "trenchbook/core/error.h"
#include "trenchbook/pipe/circular.h"
#include "trenchbook/pipe/fittings.h"
#include "trenchbook/water/outlet_opening.h"
#include "trenchbook/water/swale.h"

namespace trenchbook {
namespace {

void inTheSwale(const Outlet& outlet, SolvedOutlet& answer) {
    if (!outlet.bottom || !outlet.sideSlope) return;
    const Swale swale{.bottom = *outlet.bottom, .sideSlope = *outlet.sideSlope};
    try {
        answer.critical = swaleCriticalDepth(swale, *answer.flow);
        if (!outlet.slope || !outlet.roughness) return;
        answer.depth = swaleDepth(swale, *answer.flow, *outlet.slope, *outlet.roughness);
        answer.velocity = swaleVelocity(swale, *answer.flow, *outlet.slope, *outlet.roughness);
    } catch (const Error&) {
        return;  // judgeOutlets() asks again and tells why
    }
    if (outlet.deep && *outlet.deep > Length{}) answer.spare = *outlet.deep - *answer.depth;
}

// Where released water stands: the rim that it bubbles over, else the lowest invert of the runs that end there.
std::optional<Length> releaseLevel(const SolvedJob& solved, const OutletEnd& end) {
    if (end.node != nullptr && end.node->kinds.bubbles()) return end.node->rim();
    return lowestInvert(solved, end.ending);
}

// Water over the rim, its grate blocked as the rules say and clean.
void overTheRim(const Job& job, const Outlet& outlet, const OutletEnd& end, SolvedOutlet& answer) {
    if (!answer.lineFlow || !outlet.openShare) return;
    const std::optional<Length> across = outlet.across ? outlet.across : widestBore(job, end);
    if (!across) return;
    try {
        const double open = *outlet.openShare;
        const Length outside = swaleOverRim(outlet, end, answer).value_or(Length{});
        // Without a grate there is nothing that leaves could block.
        const double blocked = open < 1 ? job.rules.number("grate.blocked") : 0;
        answer.headClean = outletHead(roundGrate(*across, open, 0), *answer.lineFlow, outside);
        answer.head = outletHead(roundGrate(*across, open, blocked), *answer.lineFlow, outside);
    } catch (const Error&) {
        return;  // judgeOutlets() asks again and tells why
    }
}

// Integral of the wet area over the depth, from 0, in a pipe of this bore: with x over its center, r the radius,
// s = (r2 - x2)^0.5: r2 (pi x / 2 + x asin(x / r) + s) - s3 / 3.
double areaUpTo(double bore, double depth) {
    const double r = bore / 2, x = std::clamp(depth - r, -r, r), s = std::sqrt(std::max(0.0, r * r - x * x));
    const double below = r * r * (std::numbers::pi / 2 * x + x * std::asin(x / r) + s) - s * s * s / 3;
    return below + std::numbers::pi * r * r * std::max(0.0, depth - bore);
}

// The lines stand full to the rim when the rain is over; a weep hole at the foot of the riser lets it out as an
// orifice, Q = 0.6 A (2 g h)^0.5 (HEC-22 8.4.4.1), h over the invert, the water falling in 100 steps.
void standsBehind(const Job& job, const SolvedJob& solved, const Outlet& outlet, const OutletEnd& end,
                  SolvedOutlet& answer) {
    if (end.node == nullptr || !end.node->kinds.bubbles() || !end.node->rim()) return;
    const auto above = runsAbove(job, solved, end);
    if (!above || above->empty()) return;
    Length foot = *solved.runs[above->front()].invertDown;
    for (const std::size_t row : end.ending) foot = std::min(foot, *solved.runs[row].invertDown);
    const Length deep = *end.node->rim() - foot;
    if (deep <= Length{}) return;
    answer.stays = heldBelow(job, solved, *above, *end.node->rim());
    if (!outlet.weepHole || *outlet.weepHole <= Length{}) return;
    const double hole = std::numbers::pi / 4 * outlet.weepHole->si() * outlet.weepHole->si();
    constexpr int steps = 100;
    double seconds = 0;
    Volume upper = *answer.stays;
    for (int i = steps - 1; i >= 0; --i) {
        const Volume lower = heldBelow(job, solved, *above, foot + deep * (static_cast<double>(i) / steps));
        const double head = deep.si() * (i + 0.5) / steps;
        seconds += (upper - lower).si() / (0.6 * hole * std::sqrt(2 * gravity * head));
        upper = lower;
    }
    answer.empties = Duration::fromSi(seconds);
}

}  // namespace

const Node* nodeNamed(const Job& job, std::string_view name) {
    const std::string key = nameKey(name);
    const auto found = std::find_if(job.nodes.begin(), job.nodes.end(), [&](const Node& node) {
        return !node.blank && nameKey(node.name) == key;
    });
    return key.empty() || found == job.nodes.end() ? nullptr : &*found;
}

OutletEnd outletEnd(const Job& job, const SolvedJob& solved, const std::string& node) {
    OutletEnd end{.node = nodeNamed(job, node), .place = solved.lines.node(node)};
    for (std::size_t row = 0; end.place != Network::none && row < job.runs.size(); ++row)
        if (!job.runs[row].blank && solved.lines.toNode(row) == end.place) end.ending.push_back(row);
    return end;
}

std::optional<Flow> flowInto(const SolvedJob& solved, const std::vector<std::size_t>& ending) {
    std::vector<double> flows;
    for (const std::size_t row : ending) {
        if (!solved.runs[row].flow) return std::nullopt;
        flows.push_back(solved.runs[row].flow->si());
    }
    if (flows.empty()) return std::nullopt;
    return Flow::fromSi(orderlessSum(flows));
}

std::optional<Length> lowestInvert(const SolvedJob& solved, const std::vector<std::size_t>& ending) {
    std::optional<Length> lowest;
    for (const std::size_t row : ending) {
        const std::optional<Length> invert = solved.runs[row].invertDown;
        if (!invert) return std::nullopt;
        if (!lowest || *invert < *lowest) lowest = invert;
    }
    return lowest;
}

std::optional<std::vector<std::size_t>> runsAbove(const Job& job, const SolvedJob& solved,
                                                  const OutletEnd& end) {
    std::vector<std::size_t> above(end.ending);
    for (std::size_t i = 0; i < above.size(); ++i) {
        const SolvedRun& run = solved.runs[above[i]];
        if (!run.invertUp || !run.invertDown || !job.runs[above[i]].pipe || !job.runs[above[i]].length)
            return std::nullopt;
        for (const std::size_t next : solved.lines.upstream(above[i])) above.push_back(next);
    }
    return above;
}

Volume heldBelow(const Job& job, const SolvedJob& solved, const std::vector<std::size_t>& runs,
                 Length level) {
    Volume held{};
    for (const std::size_t row : runs) {
        const SolvedRun& run = solved.runs[row];
        const Length bore = job.runs[row].pipe->bore, length = *job.runs[row].length;
        const double drop = (*run.invertUp - *run.invertDown).si();
        const double down = std::max(0.0, (level - *run.invertDown).si());
        const double up = std::max(0.0, (level - *run.invertUp).si());
        if (down <= 0 && up <= 0) continue;
        const double mean = drop == 0 ? segmentAt(bore, std::min(Length::fromSi(down), bore)).area.si()
                                      : (areaUpTo(bore.si(), down) - areaUpTo(bore.si(), up)) / drop;
        held += Area::fromSi(mean) * length;
    }
    return held;
}

std::optional<Length> swaleOverRim(const Outlet& outlet, const OutletEnd& end, const SolvedOutlet& solved) {
    if (end.node == nullptr || !end.node->rim() || !outlet.flowLine || !solved.depth) return std::nullopt;
    const Length over = *outlet.flowLine + *solved.depth - *end.node->rim();
    return over > Length{} ? std::optional(over) : std::nullopt;
}

std::optional<Length> widestBore(const Job& job, const OutletEnd& end) {
    std::optional<Length> widest;
    for (const std::size_t row : end.ending)
        if (job.runs[row].pipe && (!widest || job.runs[row].pipe->bore > *widest))
            widest = job.runs[row].pipe->bore;
    return widest;
}

void solveOutlets(const Job& job, SolvedJob& solved) {
    solved.outlets.assign(job.outlets.size(), {});
    for (std::size_t row = 0; row < job.outlets.size(); ++row) {
        const Outlet& outlet = job.outlets[row];
        if (outlet.blank) continue;
        SolvedOutlet& answer = solved.outlets[row];
        const OutletEnd end = outletEnd(job, solved, outlet.node);
        answer.lineFlow = flowInto(solved, end.ending);
        if (answer.lineFlow && troubleIn(outlet.unusable, {"Other flow"}).empty())
            answer.flow = *answer.lineFlow + outlet.otherFlow.value_or(Flow{});
        if (answer.flow && *answer.flow > Flow{}) inTheSwale(outlet, answer);
        if (const std::optional<Length> level = releaseLevel(solved, end); level && outlet.flowLine)
            answer.overFlowLine = *level - *outlet.flowLine;
        for (const std::size_t run : end.ending)
            if (const std::optional<Velocity>& fast = solved.runs[run].velocity;
                fast && (!answer.endVelocity || *fast > *answer.endVelocity))
                answer.endVelocity = fast;
        if (end.node != nullptr && end.node->kinds.bubbles()) overTheRim(job, outlet, end, answer);
        standsBehind(job, solved, outlet, end, answer);
    }
    for (std::size_t run = 0; run < job.runs.size(); ++run)
        if (const WaterBelow below = waterBelow(job, solved, run); below.outlet != Network::none)
            solved.outlets[below.outlet].water = below.level;
    for (std::size_t row = 0; row < job.outlets.size(); ++row) {
        if (job.outlets[row].blank || !job.outlets[row].apronStone) continue;
        try {
            solved.outlets[row].apron =
                apronAt(job, solved, row, outletEnd(job, solved, job.outlets[row].node));
        } catch (const Error&) {
            // judgeOutlets() asks again and tells why
        }
    }
}

std::optional<StoneApron> apronAt(const Job& job, const SolvedJob& solved, std::size_t row,
                                  const OutletEnd& end) {
    const SolvedOutlet& is = solved.outlets[row];
    const std::optional<Length> bore = widestBore(job, end), invert = releaseLevel(solved, end);
    if (!bore || !invert || !is.lineFlow || !(*is.lineFlow > Flow{})) return std::nullopt;
    std::optional<Length> tailwater;
    if (is.water) tailwater = std::max(*is.water - *invert, Length{});
    return stoneApron(*bore, *is.lineFlow, tailwater, std::nullopt, job.outlets[row].apronStone);
}

// The level that an outlet run ends in. A rim is the higher by the velocity head lost in the turn upwards.
WaterBelow waterBelow(const Job& job, const SolvedJob& solved, std::size_t row) {
    const Run& run = job.runs[row];
    WaterBelow below{.level = run.outletWater};
    const std::size_t lower = solved.runs[row].lower;
    if (!solved.lines.outlet(row)) return below;
    const NodeKinds kinds = lower == Network::none ? NodeKinds{} : job.nodes[lower].kinds;
    for (std::size_t place = 0; place < job.outlets.size(); ++place)
        if (!job.outlets[place].blank && nameKey(job.outlets[place].node) == nameKey(run.to)) {
            below.outlet = place;
            break;
        }
    const bool known = below.outlet != Network::none;
    const auto raise = [&](Length level) {
        below.level = below.level ? std::max(*below.level, level) : level;
    };
    if (kinds.bubbles()) {
        const SolvedOutlet answer = known ? solved.outlets[below.outlet] : SolvedOutlet{};
        const std::optional<Length> rim = job.nodes[lower].rim();
        if (answer.head && rim && run.pipe && solved.runs[row].flow) {
            static const double turnUp = fitting("tee branch").k;
            const double velocity = (*solved.runs[row].flow / fullArea(run.pipe->bore)).si();
            raise(*rim + *answer.head + Length::fromSi(turnUp * velocity * velocity / (2 * gravity)));
        } else if (!below.level) {
            below.unknown = {
                "how high the water stands over the rim of " + run.to + " is not known (see Outlets)",
                "no se sabe a qué altura queda el agua sobre el borde de " + run.to + " (vea Outlets)"};
        }
        return below;
    }
    const bool seen =
        kinds.has(NodeKind::Ditch) || kinds.has(NodeKind::Curb) || kinds.has(NodeKind::ExistingPipe);
    if (kinds.has(NodeKind::Ditch) && known && job.outlets[below.outlet].flowLine &&
        solved.outlets[below.outlet].depth)
        raise(*job.outlets[below.outlet].flowLine + *solved.outlets[below.outlet].depth);
    if (kinds.has(NodeKind::PumpBasin)) {
        // While it keeps up the water stands no higher than where it starts.
        for (std::size_t place = 0; place < job.pumps.size(); ++place)
            if (!job.pumps[place].blank && nameKey(job.pumps[place].node) == nameKey(run.to) &&
                job.pumps[place].on && solved.pumps[place].keepsUp().value_or(false))
                raise(*job.pumps[place].on);
        if (!below.level)
            below.unknown = {"the level of the water that " + run.to + " ends in is not known (see Pump)",
                             "no se sabe el nivel del agua en que termina " + run.to + " (vea Pump)"};
        return below;
    }
    if (!below.level && seen)
        below.unknown = {"the level of the water that " + run.to + " ends in is not known (see Outlets)",
                         "no se sabe el nivel del agua en que termina " + run.to + " (vea Outlets)"};
    if (!below.level && !seen && !kinds.has(NodeKind::Bank))
        below.unknown = {"how the line ends at " + run.to + " is not said (see Nodes)",
                         "no se dice cómo termina la línea en " + run.to + " (vea Nodes)"};
    return below;
}

}  // namespace trenchbook
