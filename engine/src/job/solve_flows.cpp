#include <unordered_set>

#include "job/solve_runs.h"
#include "trenchbook/core/error.h"
#include "trenchbook/pipe/circular.h"
#include "trenchbook/pipe/manning.h"

namespace trenchbook {
namespace {

// All inlets at once, at the design rain.
void atOnce(const Job& job, SolvedJob& solved) {
    std::vector<Inlet> inlets;
    for (std::size_t row = 0; row < job.inlets.size(); ++row)
        if (!job.inlets[row].blank) inlets.push_back({job.inlets[row].node, solved.inlets[row].flow});
    for (const std::string& node : unfedNodes(job)) inlets.push_back({node, std::nullopt});
    const std::vector<std::optional<Flow>> flows = lineFlows(solved.lines, inlets);
    const Text unknown{"an inlet upstream has a fault or no row (see Water)",
                       "una entrada aguas arriba tiene una falla o no tiene fila (vea Water)"};
    for (std::size_t row = 0; row < flows.size(); ++row) {
        SolvedRun& run = solved.runs[row];
        run.flow = flows[row];
        if (!run.flow && solved.lines.placed(row)) run.flowFault = {Fault::Kind::BadCell, row, unknown};
    }
}

// With the travel through the lines: water that is longer on its way meets a gentler rain.
void withTravel(const Job& job, SolvedJob& solved) {
    std::vector<PeakInlet> inlets;
    for (std::size_t row = 0; row < job.inlets.size(); ++row) {
        const JobInlet& inlet = job.inlets[row];
        if (inlet.blank) continue;
        std::optional<Duration> time = inlet.time ? inlet.time : job.facts.duration;
        if (!troubleIn(inlet.unusable, {"Minutes"}).empty()) time.reset();
        inlets.push_back({inlet.node, solved.inlets[row].areaTimesC, time});
    }
    for (const std::string& node : unfedNodes(job)) inlets.push_back({node, std::nullopt, std::nullopt});
    // A pipe of known inverts travels at the slope between them.
    std::vector<Run> runs = job.runs;
    for (std::size_t row = 0; row < runs.size(); ++row) {
        if (runs[row].known()) runs[row].slope = solved.runs[row].slope;
        if (runs[row].slope && runs[row].slope->si() <= 0) runs[row].slope.reset();
    }
    try {
        const auto peaks = linePeaks(solved.lines, runs, inlets, job.peak->rain, job.facts.returnYears,
                                     job.peak->travel, job.peak->roughness);
        for (std::size_t row = 0; row < peaks.size(); ++row) {
            SolvedRun& run = solved.runs[row];
            run.peak = peaks[row].value;
            if (run.peak) run.flow = run.peak->flow;
            run.flowFault = peaks[row].fault;
        }
    } catch (const Error& error) {
        // The rain table does not know the return period: no run has a flow.
        const Text why{error.sentence(Language::English), error.sentence(Language::Spanish)};
        for (std::size_t row = 0; row < solved.runs.size(); ++row)
            if (solved.lines.placed(row)) solved.runs[row].flowFault = {Fault::Kind::BadCell, row, why};
    }
}

void inThePipe(const Run& run, SolvedRun& answer) {
    if (!answer.slope || answer.slope->si() <= 0) return;
    const Length bore = run.pipe->bore;
    const Slope slope = *answer.slope;
    answer.capacity = capacity(bore, slope, run.manning());
    answer.velocityFull = *answer.capacity / fullArea(bore);
    if (!answer.flow) return;
    answer.velocity =
        answer.flow->si() > 0 ? uniformVelocity(bore, slope, *answer.flow, run.manning()) : Velocity();
    if (const auto depth = findNormalDepth(bore, slope, *answer.flow, run.manning()))
        answer.depthShare = *depth / bore;
}

}  // namespace

std::vector<std::string> unfedNodes(const Job& job) {
    std::unordered_set<std::string> fed;
    for (const JobInlet& inlet : job.inlets)
        if (!inlet.blank) fed.insert(nameKey(inlet.node));
    std::vector<std::string> unfed;
    for (const Node& node : job.nodes)
        if (std::string name = nameKey(node.name);
            !node.blank && node.kinds.takesWater() && !name.empty() && !fed.contains(name))
            unfed.push_back(std::move(name));
    return unfed;
}

void solveFlows(const Job& job, SolvedJob& solved) {
    if (job.peak) {
        withTravel(job, solved);
    } else {
        atOnce(job, solved);
    }
    for (std::size_t row = 0; row < job.runs.size(); ++row) inThePipe(job.runs[row], solved.runs[row]);
}

}  // namespace trenchbook
