// Ground between the nodes: what each shot makes of the cover and cut of its run, and the cover near daylight.
#include <algorithm>
#include <iterator>
#include <unordered_map>

#include "job/solve_parts.h"
#include "job/solve_runs.h"
#include "trenchbook/lines/cover.h"

namespace trenchbook {
namespace {

Length between(Length up, Length down, double share) { return up + (down - up) * share; }

bool isDaylight(std::optional<CoverSurface> surface) { return surface == CoverSurface::Daylight; }

// What lies over a place between the ends. An end in daylight exempts its last feet alone: before them the pipe lies
// under the end of a lawn.
std::optional<CoverSurface> surfaceAt(const Run& run, Length at, std::optional<CoverSurface> given,
                                      Length exempt) {
    const bool nearUp = at * 2 < *run.length;
    const std::optional<CoverSurface> end = nearUp ? run.surfaceUp : run.surfaceDown;
    const std::optional<CoverSurface> surface = given ? given : end;
    if (!isDaylight(surface)) return surface;
    const Length away = nearUp ? at : *run.length - at;
    // 40 ft less 37 ft are 3 ft to a hair.
    return isDaylight(end) && away.si() < exempt.si() - 1e-9 ? CoverSurface::Daylight : CoverSurface::LawnEnd;
}

std::optional<Length> invertAt(const Run& run, const SolvedRun& solved, Length at) {
    if (!solved.invertUp || !solved.invertDown) return std::nullopt;
    return between(*solved.invertUp, *solved.invertDown, at / *run.length);
}

SolvedShot worked(const GroundShot& shot, const Run& run, const SolvedRun& at, std::size_t row,
                  const Ruleset& rules) {
    SolvedShot answer{.run = row};
    if (!shot.at || !run.length || *shot.at > *run.length) return answer;
    answer.surface = surfaceAt(run, *shot.at, shot.surface, rules.length("cover.daylight.within"));
    answer.invert = invertAt(run, at, *shot.at);
    if (!run.pipe || !run.pipe->outside) return answer;
    if (answer.surface) answer.coverAsked = leastCover(*answer.surface, *run.pipe, rules);
    if (!answer.invert || !shot.ground) return answer;
    answer.cover = coverOver(*shot.ground, *answer.invert, *run.pipe);
    answer.cut = trenchCut(*shot.ground, *answer.invert, *run.pipe, rules.length("bedding.depth"));
    return answer;
}

// Cover as far from an end in daylight as the exemption reaches; none on a shorter run.
std::optional<Length> coverNear(const Run& run, const SolvedRun& solved, bool upper, Length exempt) {
    if (!isDaylight(upper ? run.surfaceUp : run.surfaceDown) || !run.length || !(exempt < *run.length) ||
        !run.pipe || !run.pipe->outside)
        return std::nullopt;
    const Length at = upper ? exempt : *run.length - exempt;
    const std::optional<Length> ground = groundOver(run, solved, at), invert = invertAt(run, solved, at);
    if (!ground || !invert) return std::nullopt;
    return coverOver(*ground, *invert, *run.pipe);
}

}  // namespace

std::optional<Length> groundOver(const Run& run, const SolvedRun& solved, Length fromUpperEnd) {
    if (!run.length || fromUpperEnd < Length() || fromUpperEnd > *run.length) return std::nullopt;
    struct Known {
        Length at;
        std::optional<Length> ground;
    };
    Known before{Length(), solved.groundUp}, after{*run.length, solved.groundDown};
    for (const GroundPoint& point : solved.between) {
        if (point.at > fromUpperEnd) {
            after = {point.at, point.ground};
            break;
        }
        before = {point.at, point.ground};
    }
    if (!before.ground || !after.ground) return std::nullopt;
    if (!(before.at < after.at)) return after.ground;
    return between(*before.ground, *after.ground, (fromUpperEnd - before.at) / (after.at - before.at));
}

void solveShots(const Job& job, SolvedJob& solved) {
    const auto pair = [](const std::string& from, const std::string& to) {
        return nameKey(from) + '\n' + nameKey(to);
    };
    std::unordered_map<std::string, std::size_t> runs;
    for (std::size_t row = 0; row < job.runs.size(); ++row)
        if (!job.runs[row].blank) runs.emplace(pair(job.runs[row].from, job.runs[row].to), row);
    solved.shots.assign(job.shots.size(), {});
    for (std::size_t row = 0; row < job.shots.size(); ++row) {
        const GroundShot& shot = job.shots[row];
        if (shot.blank) continue;
        const auto found = runs.find(pair(shot.from, shot.to));
        if (found == runs.end()) continue;
        SolvedRun& run = solved.runs[found->second];
        SolvedShot& answer = solved.shots[row];
        answer = worked(shot, job.runs[found->second], run, found->second, job.rules);
        if (!shot.at || !shot.ground || !job.runs[answer.run].length ||
            *shot.at > *job.runs[answer.run].length)
            continue;
        const GroundPoint point{.at = *shot.at,
                                .ground = *shot.ground,
                                .surface = answer.surface,
                                .cover = answer.cover,
                                .cut = answer.cut};
        run.between.insert(
            std::upper_bound(run.between.begin(), run.between.end(), point,
                             [](const GroundPoint& a, const GroundPoint& b) { return a.at < b.at; }),
            point);
    }
    const Length exempt = job.rules.length("cover.daylight.within");
    for (std::size_t row = 0; row < job.runs.size(); ++row) {
        SolvedRun& run = solved.runs[row];
        run.coverNearUp = coverNear(job.runs[row], run, true, exempt);
        run.coverNearDown = coverNear(job.runs[row], run, false, exempt);
    }
}

}  // namespace trenchbook
