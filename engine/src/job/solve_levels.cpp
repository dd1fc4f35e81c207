#include <unordered_map>

#include "job/solve_runs.h"
#include "trenchbook/lines/cover.h"
#include "trenchbook/lines/inverts.h"
#include "trenchbook/pipe/size_class.h"

namespace trenchbook {
namespace {

std::optional<Length> groundOf(const Job& job, std::size_t node) {
    return node == Network::none ? std::nullopt : job.nodes[node].ground;
}

// Drop beyond what the least slope asks. Two equal falls differ by what is left of subtracting levels: that is none.
Length spareFall(Length drop, Length asked) {
    constexpr Length nothing = Length::feet(1e-9);
    const Length spare = drop - asked;
    return spare < nothing && -spare < nothing ? Length() : spare;
}

// What one end of a run lies under: cover, cut, and the cover that the surface asks.
struct End {
    std::optional<Length> cover, cut, asked;
};
End endOf(const Run& run, const Ruleset& rules, std::optional<Length> ground, std::optional<Length> invert,
          std::optional<CoverSurface> surface) {
    End end;
    if (!run.pipe) return end;
    if (surface) end.asked = leastCover(*surface, *run.pipe, rules);
    // A bare bore has no outside.
    if (!ground || !invert || !run.pipe->outside) return end;
    end.cover = coverOver(*ground, *invert, *run.pipe);
    end.cut = trenchCut(*ground, *invert, *run.pipe, rules.length("bedding.depth"));
    return end;
}

}  // namespace

void findNodes(const Job& job, SolvedJob& solved) {
    std::vector<std::size_t> rowOf(solved.lines.nodes(), Network::none);
    for (std::size_t row = 0; row < job.nodes.size(); ++row) {
        const std::size_t node = solved.lines.node(job.nodes[row].name);
        if (node != Network::none && rowOf[node] == Network::none) rowOf[node] = row;
    }
    const auto at = [&](std::size_t node) { return node == Network::none ? Network::none : rowOf[node]; };
    for (std::size_t row = 0; row < solved.runs.size(); ++row) {
        solved.runs[row].upper = at(solved.lines.fromNode(row));
        solved.runs[row].lower = at(solved.lines.toNode(row));
    }
}

void solveLevels(const Job& job, SolvedJob& solved) {
    const std::vector<Fault> faults = lineFaults(solved.lines, job.runs);
    const std::vector<Worked<Inverts>> inverts = lineInverts(solved.lines, job.runs, Join::Crown);
    for (std::size_t row = 0; row < job.runs.size(); ++row) {
        const Run& run = job.runs[row];
        SolvedRun& answer = solved.runs[row];
        answer.fault = faults[row];
        answer.invertFault = inverts[row].fault;
        answer.groundUp = groundOf(job, answer.upper);
        answer.groundDown = groundOf(job, answer.lower);
        if (inverts[row].value) {
            answer.invertUp = inverts[row].value->up;
            answer.invertDown = inverts[row].value->down;
            answer.slope = runSlope(*run.length, *answer.invertUp, *answer.invertDown);
            const Slope least = job.rules.slope(leastSlopeRule(*run.pipe));
            answer.spareFall = spareFall(*answer.invertUp - *answer.invertDown, least * *run.length);
        }
        const End up = endOf(run, job.rules, answer.groundUp, answer.invertUp, run.surfaceUp);
        const End down = endOf(run, job.rules, answer.groundDown, answer.invertDown, run.surfaceDown);
        answer.coverUp = up.cover, answer.cutUp = up.cut, answer.coverAskedUp = up.asked;
        answer.coverDown = down.cover, answer.cutDown = down.cut, answer.coverAskedDown = down.asked;
    }
}

}  // namespace trenchbook
