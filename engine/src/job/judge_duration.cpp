// The duration of the design rain against the time that the water is on its way. A rain of an hour is less than half as
// heavy as one of five minutes: a line that is tried with it passes where it should not.
#include <algorithm>

#include "job/say.h"
#include "trenchbook/job/judge.h"

namespace trenchbook {
namespace {

// The longest way of the water to the end of its line: over the ground to an inlet, where that is typed, then through the
// pipes at the speed of their flow.
Duration longestWay(const Job& job, const SolvedJob& solved) {
    std::vector<Duration> at(solved.lines.nodes());
    for (const JobInlet& inlet : job.inlets)
        if (const std::size_t node = solved.lines.node(inlet.node); !inlet.blank && node != Network::none)
            at[node] = std::max(at[node], inlet.time.value_or(Duration{}));
    Duration longest{};
    for (const std::size_t row : solved.lines.order()) {
        if (!solved.lines.placed(row)) continue;
        const SolvedRun& run = solved.runs[row];
        const std::size_t to = solved.lines.toNode(row);
        Duration way = at[solved.lines.fromNode(row)];
        if (run.velocity && *run.velocity > Velocity{} && job.runs[row].length)
            way += *job.runs[row].length / *run.velocity;
        at[to] = std::max(at[to], way);
        longest = std::max(longest, way);
    }
    return longest;
}

Text minutes(Duration time) { return Text::same(plain(time.minutes(), 1) + " min"); }

}  // namespace

void judgeDuration(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings) {
    if (!job.facts.duration || !job.facts.rain) return;
    const Duration rains = *job.facts.duration;
    const Duration way = std::max(longestWay(job, solved), job.rules.duration("duration.least"));
    if (!isOver(rains.si(), way.si())) return;
    RowFindings told(job, Part::Job, Finding::whole, findings);
    told.tell(Severity::Check, "duration.least", rains.si(),
              Text{"Duration ", "Duration: "} + minutes(rains) +
                  Text{" is longer than the water is on its way, ",
                       " es más que lo que el agua tarda en su camino, "} +
                  minutes(way) +
                  Text{"; a shorter rain is heavier, and the lines are tried too lightly",
                       "; una lluvia más corta es más fuerte, y las líneas se prueban con muy poca agua"});
}

}  // namespace trenchbook
