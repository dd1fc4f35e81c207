// Ground: is the pipe deep enough under each shot between the nodes?
#include "job/run_rules.h"
#include "job/say.h"
#include "trenchbook/job/judge.h"

namespace trenchbook {
namespace {

void place(const Job& job, const GroundShot& shot, const SolvedShot& is, RowFindings& told) {
    const std::string segment = shot.from + "-" + shot.to;
    if (is.run == Network::none)
        told.tell(Severity::No, Standing::NameKnown,
                  Text{"no run goes from " + shot.from + " to " + shot.to + " on Runs",
                       "ningún tramo va de " + shot.from + " a " + shot.to + " en Runs"});
    const bool known =
        told.needs(shot.at, shot.unusable, "At",
                   {"how far from " + shot.from + "?", "¿a qué distancia de " + shot.from + "?"});
    if (known && is.run != Network::none) {
        const std::optional<Length>& length = job.runs[is.run].length;
        if (length && *shot.at > *length)
            told.tell(Severity::No, Standing::InputUnusable,
                      {"At lies beyond the end of run " + segment, "At queda más allá del tramo " + segment});
    }
    if (shot.ground || RowFindings::stands(shot.unusable, "Ground") ||
        RowFindings::stands(shot.unusable, "Ground level"))
        return;
    if (nameKey(shot.shot).empty())
        told.tell(Severity::NotJudged, Standing::InputMissing,
                  {"no level: name a shot of Levels, or type Ground",
                   "sin nivel: nombre una lectura de Levels, o escriba Ground"});
    else
        told.tell(Severity::NotJudged, Standing::InputMissing,
                  {"no level: shoot " + shot.shot + " on Levels, or type Ground",
                   "sin nivel: lea " + shot.shot + " en Levels, o escriba Ground"});
}

}  // namespace

void judgeShots(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings) {
    for (std::size_t row = 0; row < job.shots.size(); ++row) {
        const GroundShot& shot = job.shots[row];
        if (shot.blank) continue;
        const SolvedShot& is = solved.shots[row];
        RowFindings told(job, Part::Ground, row, findings);
        const std::size_t before = findings.size();
        told.unusable(shot.unusable);
        place(job, shot, is, told);
        if (!is.cover || !is.surface) {
            if (findings.size() == before)
                told.tell(Severity::NotJudged, Standing::InputWaits,
                          {"cover is not judged: the run has no levels, pipe or surface yet (see Runs)",
                           "cobertura sin juzgar: al tramo le faltan niveles, tubo o superficie (vea Runs)"});
            continue;
        }
        const RunNumbers numbers{.between = {{*is.cover, *is.surface, {"here", "aquí"}}},
                                 .protection = job.facts.protection};
        RunRules book(numbers, &*job.runs[is.run].pipe, job.rules, job.units, told);
        book.cover();
        book.wheels();
        book.cut();
    }
}

}  // namespace trenchbook
