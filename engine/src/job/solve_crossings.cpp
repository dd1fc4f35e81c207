// Where our pipe and the other line lie at each crossing.
#include <unordered_map>

#include "job/solve_parts.h"

namespace trenchbook {
namespace {

// Two names, neither of which can hold the character between them.
std::string pairKey(const std::string& from, const std::string& to) {
    return nameKey(from) + '\n' + nameKey(to);
}

Length between(Length up, Length down, double share) { return up + (down - up) * share; }

// Levels at the crossing, straight between the ends of the run.
void levels(const Crossing& crossing, const Run& run, const SolvedRun& at, SolvedCrossing& answer) {
    if (!crossing.at || !run.length || !(*run.length > Length{})) return;
    if (*crossing.at < Length{} || *crossing.at > *run.length) return;
    const double share = *crossing.at / *run.length;
    if (at.groundUp && at.groundDown) answer.ground = between(*at.groundUp, *at.groundDown, share);
    if (at.invertUp && at.invertDown) answer.ourInvert = between(*at.invertUp, *at.invertDown, share);
    if (answer.ourInvert && run.pipe && run.pipe->outside) {
        answer.ourTop = *answer.ourInvert + invertToOutsideTop(*run.pipe);
        answer.ourBottom = *answer.ourInvert - wallOf(*run.pipe);
    }
    if (answer.ground && crossing.depth) answer.itsTop = *answer.ground - *crossing.depth;
    if (answer.itsTop && crossing.diameter) answer.itsBottom = *answer.itsTop - *crossing.diameter;
}

}  // namespace

const char* clearanceRule(const Crossing& crossing) {
    const std::string what = nameKey(crossing.what);
    return what == "irrigation" || what == "riego" ? "crossing.clearance.irrigation" : "crossing.clearance";
}

void solveCrossings(const Job& job, SolvedJob& solved) {
    std::unordered_map<std::string, std::size_t> runs;
    for (std::size_t row = 0; row < job.runs.size(); ++row)
        if (!job.runs[row].blank) runs.emplace(pairKey(job.runs[row].from, job.runs[row].to), row);

    solved.crossings.assign(job.crossings.size(), {});
    for (std::size_t row = 0; row < job.crossings.size(); ++row) {
        const Crossing& crossing = job.crossings[row];
        if (crossing.blank) continue;
        SolvedCrossing& answer = solved.crossings[row];
        if (crossing.diameter)
            answer.handDig = *crossing.diameter + 2 * job.rules.length("handdig.tolerance");
        const auto found = runs.find(pairKey(crossing.from, crossing.to));
        if (found == runs.end()) continue;
        answer.run = found->second;
        levels(crossing, job.runs[answer.run], solved.runs[answer.run], answer);
        if (!answer.itsTop || !answer.itsBottom || !crossing.passesAbove) continue;
        const Length asked = job.rules.length(clearanceRule(crossing));
        answer.keptLevel = *crossing.passesAbove ? *answer.itsBottom - asked : *answer.itsTop + asked;
        if (answer.ourTop)
            answer.clearance = *crossing.passesAbove ? *answer.itsBottom - *answer.ourTop
                                                     : *answer.ourBottom - *answer.itsTop;
    }
}

}  // namespace trenchbook
