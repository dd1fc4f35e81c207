#include "job/solve_runs.h"
#include "trenchbook/lines/cleanouts.h"
#include "trenchbook/lines/stations.h"

namespace trenchbook {

void solveDistances(const Job& job, SolvedJob& solved) {
    const Angle sharp = Angle::degrees(job.rules.number("bend.sharp"));
    const auto placed = stations(solved.lines, job.runs);
    const auto since = sinceOpenings(solved.lines, job.runs, job.nodes, sharp);
    const auto asked = askedCleanouts(solved.lines, job.runs, job.nodes, cleanoutLimits(job.rules));
    for (std::size_t row = 0; row < solved.runs.size(); ++row) {
        solved.runs[row].station = placed[row];
        solved.runs[row].since = since[row];
        solved.runs[row].asked = asked[row];
    }
}

}  // namespace trenchbook
