// The pumps: what comes, where the pump works on its curve, how often it starts, how long the basin and the lines hold
// out without it, and whether the empty basin floats.
#include <algorithm>
#include <numbers>

#include "job/outlet_ends.h"
#include "job/say.h"
#include "job/solve_parts.h"
#include "trenchbook/core/error.h"
#include "trenchbook/ground/flotation.h"
#include "trenchbook/pipe/circular.h"
#include "trenchbook/pipe/equivalent_length.h"

namespace trenchbook {
namespace {

void works(const Pump& pump, SolvedPump& answer) {
    if (pump.off && pump.end) answer.lift = *pump.end - *pump.off;
    if (pump.inside && pump.on && pump.off && *pump.on > *pump.off)
        answer.between = fullArea(*pump.inside) * (*pump.on - *pump.off);
    if (pump.pipe && pump.length) answer.runsBack = fullArea(pump.pipe->bore) * *pump.length;
    try {
        const std::optional<DischargePipe> pipe = dischargeOf(pump);
        if (!pipe) return;
        if (answer.inflow) answer.headAtInflow = totalHead(*pipe, *answer.inflow);
        if (pump.curve.empty()) return;
        const PumpPoint duty = dutyPoint(*pipe, pump.curve);
        answer.speed = dischargeSpeed(pipe->bore, duty.flow);
        answer.gives = duty.flow;
        answer.head = duty.head;
    } catch (const Error&) {
        return;  // judgePumps() asks again and tells why
    }
}

// It starts most often at an inflow of half of what it gives; where less comes, at what comes. It runs shortest when
// hardly anything comes.
void cycles(SolvedPump& answer) {
    if (!answer.gives || !(*answer.gives > Flow{}) || !answer.between) return;
    answer.runs = *answer.between / *answer.gives;
    if (answer.inflow)
        answer.starts =
            cyclesPerHour(*answer.gives, *answer.between, std::min(*answer.inflow, *answer.gives / 2));
}

// The water rises from the pump's start to the lowest opening: room in the basin and in the pipes, taken as empty.
void withoutPower(const Job& job, const SolvedJob& solved, const Pump& pump, const OutletEnd& end,
                  SolvedPump& answer) {
    const auto above = runsAbove(job, solved, end);
    if (!above || above->empty() || end.node == nullptr) return;
    std::vector<const Node*> open = {end.node};
    for (const std::size_t run : *above) {
        const std::size_t upper = solved.runs[run].upper;
        if (upper == Network::none) return;
        if (job.nodes[upper].kinds.open()) open.push_back(&job.nodes[upper]);
    }
    for (const Node* node : open)
        if (!node->rim()) return;
    const Node& lowest = **std::min_element(
        open.begin(), open.end(), [](const Node* a, const Node* b) { return *a->rim() < *b->rim(); });
    answer.lowestGrate = lowest.rim();
    answer.grateAt = lowest.name;
    if (!pump.on || !pump.inside || !answer.inflow || !(*answer.inflow > Flow{})) return;
    const Length rises = *answer.lowestGrate - *pump.on;
    if (!(rises > Length{})) {
        answer.outage = Duration{};
        return;
    }
    const Volume room = fullArea(*pump.inside) * rises + heldBelow(job, solved, *above, *answer.lowestGrate) -
                        heldBelow(job, solved, *above, *pump.on);
    answer.outage = room / *answer.inflow;
}

// The basin when it is empty, in ground whose water stands as high as it ever does.
void floats(const Pump& pump, const OutletEnd& end, SolvedPump& answer) {
    if (!pump.groundwater || !pump.floor || !(*pump.groundwater > *pump.floor)) return;
    if (!pump.outside || !pump.weight) return;
    Length top = *pump.groundwater;
    if (end.node != nullptr && end.node->rim()) top = std::min(top, *end.node->rim());
    if (!(top > *pump.floor)) return;
    try {
        answer.held = flotationFactor({.outside = basinVolume(*pump.outside, Length{}, top - *pump.floor),
                                       .weight = *pump.weight,
                                       .concrete = pump.concrete.value_or(Volume{})});
    } catch (const Error&) {
        return;
    }
}

}  // namespace

std::optional<bool> SolvedPump::keepsUp() const {
    if (!inflow || !gives) return std::nullopt;
    return !isOver(inflow->si(), gives->si());
}

std::optional<DischargePipe> dischargeOf(const Pump& pump) {
    if (!pump.pipe || !pump.length || !pump.elbows || !pump.checkValve || !pump.off || !pump.end)
        return std::nullopt;
    const auto lengthOf = [&](const char* fitting) { return equivalentLength(fitting, pump.pipe->nominal); };
    Length fittings{};
    if (*pump.elbows > 0) fittings += lengthOf("90 elbow") * *pump.elbows;
    if (*pump.checkValve) fittings += lengthOf("check valve");
    return DischargePipe{
        .bore = pump.pipe->bore, .length = *pump.length, .fittings = fittings, .lift = *pump.end - *pump.off};
}

void solvePumps(const Job& job, SolvedJob& solved) {
    solved.pumps.assign(job.pumps.size(), {});
    for (std::size_t row = 0; row < job.pumps.size(); ++row) {
        const Pump& pump = job.pumps[row];
        if (pump.blank) continue;
        SolvedPump& answer = solved.pumps[row];
        const OutletEnd end = outletEnd(job, solved, pump.node);
        answer.inflow = flowInto(solved, end.ending);
        if (const auto invert = end.ending.empty() ? std::nullopt : lowestInvert(solved, end.ending);
            invert && pump.on)
            answer.underInvert = *invert - *pump.on;
        works(pump, answer);
        cycles(answer);
        withoutPower(job, solved, pump, end, answer);
        floats(pump, end, answer);
    }
}

}  // namespace trenchbook
