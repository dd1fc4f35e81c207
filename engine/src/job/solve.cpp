#include "trenchbook/job/solve.h"

#include <algorithm>
#include <tuple>

#include "job/solve_parts.h"
#include "job/solve_runs.h"
#include "trenchbook/job/judge.h"

namespace trenchbook {
namespace {

auto place(const Finding& finding) { return std::tuple(finding.part, finding.row); }

std::vector<Finding> judge(const Job& job, const SolvedJob& solved) {
    std::vector<Finding> findings;
    judgeJob(job, solved, findings);
    judgeDuration(job, solved, findings);
    judgeCautions(job, solved, findings);
    judgeNodes(job, solved, findings);
    judgeGround(job, solved, findings);
    judgeNear(job, solved, findings);
    judgeDrawing(job, solved, findings);
    judgeInlets(job, solved, findings);
    judgeRuns(job, solved, findings);
    judgeShots(job, solved, findings);
    judgeCrossings(job, solved, findings);
    judgePumps(job, solved, findings);
    judgeOutlets(job, solved, findings);
    judgePit(job, solved, findings);
    std::stable_sort(findings.begin(), findings.end(), [](const Finding& a, const Finding& b) {
        return std::tuple(place(a), a.severity) < std::tuple(place(b), b.severity);
    });
    return findings;
}

}  // namespace

void solveRain(const Job& job, SolvedJob& solved) {
    solveInlets(job, solved);
    solveFlows(job, solved);
    solvePumps(job, solved);
    solveOutlets(job, solved);
    solvePit(job, solved);
    solveWater(job, solved);
    solveNodes(job, solved);
}

SolvedJob solve(const Job& job) {
    SolvedJob solved{Network(job.runs)};
    solved.runs.resize(job.runs.size());
    findNodes(job, solved);
    solveLevels(job, solved);
    solveShots(job, solved);
    solveRain(job, solved);
    solveDistances(job, solved);
    solveCrossings(job, solved);
    solved.findings = judge(job, solved);
    return solved;
}

std::span<const Finding> SolvedJob::of(Part part, std::size_t row) const {
    const auto [first, last] =
        std::equal_range(findings.begin(), findings.end(), Finding{.part = part, .row = row},
                         [](const Finding& a, const Finding& b) { return place(a) < place(b); });
    return {first, last};
}

}  // namespace trenchbook
