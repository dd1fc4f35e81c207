// What the pit holds, how long it takes to empty, what drains to it, and where its tee lets water out.
#include <algorithm>

#include "job/solve_parts.h"
#include "job/solve_runs.h"
#include "trenchbook/core/error.h"
#include "trenchbook/ground/pit.h"
#include "trenchbook/water/inlets.h"

namespace trenchbook {
namespace {

// The sum over the runs that end at the pit; none while one of them is not known, or none ends there.
std::optional<Flow> sumInto(const Job& job, const SolvedJob& solved, std::size_t at,
                            std::span<const std::optional<Flow>> flows) {
    if (at == Network::none) return std::nullopt;
    std::vector<double> terms;
    for (std::size_t row = 0; row < job.runs.size(); ++row) {
        if (job.runs[row].blank || solved.lines.toNode(row) != at) continue;
        if (!flows[row]) return std::nullopt;
        terms.push_back(flows[row]->si());
    }
    if (terms.empty()) return std::nullopt;
    return Flow::fromSi(orderlessSum(terms));
}

// Area x C is the flow in a rain of one meter a second: it adds up along the lines as flows do, whatever the rain and
// however long the water travels.
std::optional<Area> areaInto(const Job& job, const SolvedJob& solved, std::size_t at) {
    constexpr RainRate unit = RainRate::metresPerSecond(1);
    std::vector<Inlet> inlets;
    for (std::size_t row = 0; row < job.inlets.size(); ++row) {
        if (job.inlets[row].blank) continue;
        const std::optional<Area> area = solved.inlets[row].areaTimesC;
        inlets.push_back({job.inlets[row].node, area ? std::optional(*area * unit) : std::nullopt});
    }
    for (const std::string& node : unfedNodes(job)) inlets.push_back({node, std::nullopt});
    const std::optional<Flow> sum = sumInto(job, solved, at, lineFlows(solved.lines, inlets));
    return sum ? std::optional(Area::fromSi(*sum / (Area::squareMetres(1) * unit))) : std::nullopt;
}

}  // namespace

std::optional<RockPit> pitAsBuilt(const Job& job) {
    const Pit& pit = job.pit;
    if (!pit.length || !pit.width || !pit.rockDepth) return std::nullopt;
    return RockPit{.length = *pit.length,
                   .width = *pit.width,
                   .rockDepth = *pit.rockDepth,
                   .voids = pit.voids.value_or(job.rules.number("pit.voids")),
                   .sideShare = pit.sideShare.value_or(job.rules.number("pit.sideshare"))};
}

PitFacts pitFacts(const Job& job, const SolvedPit& solved) {
    constexpr UnitSystem metric = UnitSystem::Metric;
    const Pit& pit = job.pit;
    PitFacts facts = pit.facts;
    if (pit.rate) facts.set("rate", pit.rate->millimetresPerHour(), metric);
    if (solved.drains) facts.set("drain hours", solved.drains->hours(), metric);
    if (pit.rockDepth && *pit.rockDepth > Length{}) {
        facts.set("rock depth", pit.rockDepth->metres(), metric);
        facts.set("pit depth", (*pit.rockDepth + pit.soilOver.value_or(Length{})).metres(), metric);
    }
    if (pit.length && pit.width) facts.set("widest", std::max(*pit.length, *pit.width).metres(), metric);
    return facts;
}

void solvePit(const Job& job, SolvedJob& solved) {
    solved.pit = {};
    if (nameKey(job.pit.node).empty()) return;
    SolvedPit& answer = solved.pit;
    const std::size_t at = solved.lines.node(job.pit.node);
    answer.areaTimesC = areaInto(job, solved, at);
    std::vector<std::optional<Flow>> flows;
    for (const SolvedRun& run : solved.runs) flows.push_back(run.flow);
    answer.flow = sumInto(job, solved, at, flows);
    std::optional<std::size_t> tee;
    for (std::size_t row = 0; row < job.outlets.size(); ++row)
        if (!job.outlets[row].blank && nameKey(job.outlets[row].node) == nameKey(job.pit.node)) {
            answer.rimHead = solved.outlets[row].head;
            answer.bubbleLevel = solved.outlets[row].water;
            tee = row;
            break;
        }
    try {
        const std::optional<RockPit> pit = pitAsBuilt(job);
        if (!pit) return;
        answer.storage = storage(*pit);
        answer.rock = rockToHold(*answer.storage, pit->voids);
        if (answer.areaTimesC && *answer.areaTimesC > Area{})
            answer.held = rainHeld(*answer.storage, *answer.areaTimesC);
        if (job.pit.rate) answer.drains = drainTime(*pit, *job.pit.rate);
        // The line behind the tee goes down with the pit.
        if (tee && solved.outlets[*tee].stays) solved.outlets[*tee].empties = answer.drains;
    } catch (const Error&) {
        return;  // judgePit() asks again and tells why
    }
}

}  // namespace trenchbook
