// Pit: every reason against it. The mound of groundwater under it stays on its sheet: it is a second opinion.

#include "job/say.h"
#include "job/solve_parts.h"
#include "trenchbook/core/error.h"
#include "trenchbook/ground/pit.h"
#include "trenchbook/job/judge.h"

namespace trenchbook {
namespace {

// True when the sizes are there and are taken.
bool sized(const Job& job, RowFindings& told) {
    const Pit& pit = job.pit;
    bool known = told.needs(pit.length, pit.unusable, "Length");
    known = told.needs(pit.width, pit.unusable, "Width") && known;
    known = told.needs(pit.rockDepth, pit.unusable, "Rock depth") && known;
    if (!known) return false;
    try {
        require(*pitAsBuilt(job));
        if (pit.rate) drainTime(*pitAsBuilt(job), *pit.rate);
        return true;
    } catch (const Error& error) {
        told.tell(Severity::No, Standing::InputUnusable, sentenceOf(error));
        return false;
    }
}

void soakTest(const Pit& pit, RowFindings& told) {
    if (pit.soakRefused)
        told.tell(Severity::No, Standing::PitSoak,
                  {"a soak reading is refused", "una lectura de absorción no sirve"});
    if (pit.soakOpen)
        told.tell(Severity::Check, Standing::PitSoak,
                  {"the soak test is not settled", "la prueba de absorción no está concluida"});
}

// A well or a septic field that is there keeps a distance that somebody must measure.
void distances(const Job& job, const PitFacts& facts, RowFindings& told) {
    if (job.facts.well == Answer::Yes && !facts[PitFact::Well])
        told.tell(Severity::NotJudged, "pit.setback.well.min",
                  {"how far is the well?", "¿a qué distancia está el pozo de agua?"});
    if (job.facts.septic == Answer::Yes && !facts[PitFact::Septic])
        told.tell(
            Severity::NotJudged, "pit.setback.septic.min",
            {"how far is the septic tank or field?", "¿a qué distancia está la fosa o el campo séptico?"});
}

void check(const Job& job, const PitFacts& facts, RowFindings& told) {
    const PitVerdict verdict = checkPit(facts, job.rules, job.units);
    for (const PitFinding& reason : verdict.reasons) {
        if (reason.rule.empty())
            told.tell(Severity::NotJudged, Standing::InputMissing, reason.says);
        else if (reason.measured)
            told.tell(Severity::No, reason.rule.c_str(), *reason.measured, reason.says);
        else
            told.tell(Severity::No, reason.rule.c_str(), reason.says);
    }
    for (const PitFinding& caution : verdict.cautions)
        told.tell(Severity::Caution, caution.rule.c_str(), *caution.measured, caution.says);
}

// The pipe brings its water into the rock.
void pipeInTheRock(const Job& job, const SolvedJob& solved, RowFindings& told) {
    const Node* node = nodeNamed(job, job.pit.node);
    if (node == nullptr || !node->ground || !job.pit.rockDepth || !job.pit.soilOver) return;
    const Length bottom = *node->ground - *job.pit.rockDepth - *job.pit.soilOver;
    for (std::size_t row = 0; row < job.runs.size(); ++row) {
        if (job.runs[row].blank || nameKey(job.runs[row].to) != nameKey(job.pit.node)) continue;
        const std::optional<Length> invert = solved.runs[row].invertDown;
        if (!invert || !isUnder(invert->si(), bottom.si())) continue;
        const Text far = amountText({(bottom - *invert).si(), Unit::Feet}, job.units);
        told.tell(Severity::No, Standing::PitPipe,
                  Text{"the pipe from " + job.runs[row].from + " comes in ",
                       "el tubo de " + job.runs[row].from + " llega "} +
                      far + Text{" under the pit's bottom", " bajo el fondo del pozo"});
    }
}

void waterComes(const Job& job, const SolvedJob& solved, RowFindings& told) {
    const Text node = Text::same(job.pit.node);
    if (!solved.pit.areaTimesC)
        told.tell(Severity::NotJudged, Standing::InputWaits,
                  Text{"area x C into ", "área x C hacia "} + node +
                      Text{" is not known: no run ends there, or an inlet upstream is not known (see Water)",
                           " no se sabe: ningún tramo termina ahí, o falta una entrada (vea Water)"});
    else if (!(*solved.pit.areaTimesC > Area{}))
        told.tell(Severity::NotJudged, Standing::WaterComes,
                  Text{"no roof or paving drains to ", "ningún techo ni piso drena a "} + node +
                      Text{" yet: see Water", " todavía: vea Water"});
}

// What the drawing knows beside the hole, and the rules of a pit have no distance for.
void drawnBeside(const Job& job, RowFindings& told) {
    const LotNear& near = job.drawn.pitNear;
    const auto far = [&](Length length) { return amountText({length.si(), Unit::Feet}, job.units); };
    const Length roots = job.rules.length("tree.roots");
    if (near.tree && isUnder(near.tree->si(), roots.si()))
        told.tell(Severity::Caution, "tree.roots", near.tree->si(),
                  Text{"by the drawing a tree is ", "según el plano hay un árbol a "} + far(*near.tree) +
                      Text{" from the pit: its roots grow into the rock, and the hole cuts them",
                           " del pozo: sus raíces entran en la piedra, y el hoyo las corta"});
    const Length deep = job.pit.rockDepth.value_or(Length{}) + job.pit.soilOver.value_or(Length{});
    if (near.walk && isUnder(near.walk->si(), deep.si()))
        told.tell(Severity::Caution, Standing::DigUnder,
                  Text{"by the drawing a walk is ", "según el plano hay un andador a "} + far(*near.walk) +
                      Text{" from the pit, which is ", " del pozo, que tiene "} + far(deep) +
                      Text{" deep: hold it or take it up (29 CFR 1926.651(i))",
                           " de hondo: sosténgalo o levántelo (29 CFR 1926.651(i))"});
}

}  // namespace

void judgePit(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings) {
    const Pit& pit = job.pit;
    RowFindings told(job, Part::Pit, Finding::whole, findings);
    if (nameKey(pit.node).empty()) {
        if (RowFindings::stands(pit.unusable, "Tee at node")) told.unusable(pit.unusable);
        return;
    }
    told.unusable(pit.unusable);
    if (nodeNamed(job, pit.node) == nullptr)
        told.tell(Severity::No, Standing::NameKnown,
                  {"no node " + pit.node + " on Nodes", "no hay nodo " + pit.node + " en Nodes"});
    sized(job, told);
    soakTest(pit, told);
    const PitFacts facts = pitFacts(job, solved.pit);
    check(job, facts, told);
    distances(job, facts, told);
    pipeInTheRock(job, solved, told);
    waterComes(job, solved, told);
    drawnBeside(job, told);
}

}  // namespace trenchbook
