// Swale: does the receiver carry what the line brings, does its grass hold, and is the outlet where it may be?

#include "job/outlet_kind.h"
#include "job/say.h"
#include "job/solve_parts.h"
#include "trenchbook/core/error.h"
#include "trenchbook/job/judge.h"
#include "trenchbook/water/swale.h"

namespace trenchbook {
namespace {

Text feet(Length length, UnitSystem units) { return amountText({length.si(), Unit::Feet}, units); }

// Whether water comes there at all. True when the depth of the water can be asked.
bool waterComes(const Job& job, const SolvedJob& solved, const Receiver& receiver,
                const SolvedReceiver& answer, RowFindings& told) {
    if (nameKey(receiver.node).empty()) {
        if (!RowFindings::stands(receiver.unusable, "Outlet"))
            told.missing("Outlet", {"which node empties here?", "¿qué nodo desagua aquí?"});
        return false;
    }
    const Text node = Text::same(receiver.node);
    const std::size_t at = solved.lines.node(receiver.node);
    bool ends = false, leaves = false;
    for (std::size_t row = 0; at != Network::none && row < job.runs.size(); ++row) {
        ends = ends || solved.lines.toNode(row) == at;
        leaves = leaves || solved.lines.fromNode(row) == at;
    }
    if (!ends)
        return told.tell(Severity::No, Text{"no run ends at ", "ningún tramo termina en "} + node), false;
    if (leaves)
        told.tell(Severity::No, Text{"a run leaves ", "un tramo sale de "} + node +
                                    Text{": the water goes on in the pipe", ": el agua sigue en el tubo"});
    if (!answer.flow) {
        if (!RowFindings::stands(receiver.unusable, "Other flow"))
            told.tell(Severity::NotJudged, Text{"no flow at ", "sin caudal en "} + node +
                                               Text{": an inlet upstream is not known (see Water)",
                                                    ": falta una entrada aguas arriba (vea Water)"});
        return false;
    }
    if (*answer.flow > Flow{}) return true;
    told.tell(Severity::No,
              Text{"no water comes to ", "no llega agua a "} + node + Text{": see Water", ": vea Water"});
    return false;
}

void carries(const Job& job, const Receiver& receiver, const SolvedReceiver& answer, RowFindings& told) {
    bool known = told.needs(receiver.bottom, receiver.unusable, "Bottom");
    known = told.needs(receiver.sideSlope, receiver.unusable, "Side slope") && known;
    known = told.needs(receiver.slope, receiver.unusable, "Slope") && known;
    known = told.needs(receiver.roughness, receiver.unusable, "Roughness") && known;
    if (told.needs(receiver.deep, receiver.unusable, "Deep",
                   {"how deep is the swale?", "¿qué tan honda es?"}) &&
        !(*receiver.deep > Length{}))
        told.tell(Severity::No, {"Deep must be above 0", "Deep debe ser mayor que 0"});
    if (!known) return;
    if (!answer.velocity) {
        try {
            const Swale swale{.bottom = *receiver.bottom, .sideSlope = *receiver.sideSlope};
            swaleVelocity(swale, *answer.flow, *receiver.slope, *receiver.roughness);
        } catch (const Error& error) {
            told.tell(Severity::No, sentenceOf(error));
        }
        return;
    }
    if (answer.spare && *answer.spare < Length{})
        told.tell(Severity::No, "freeboard.min", answer.spare->si(),
                  Text{"runs over: the water is ", "se desborda: el agua tiene "} +
                      feet(*answer.depth, job.units) + Text{" deep, the swale ", " de hondo, la cuneta "} +
                      feet(*receiver.deep, job.units));
    else if (answer.spare)
        told.atLeast(Severity::Check, "freeboard.min", answer.spare->si(), {"freeboard", "bordo libre"});
    told.atMost(Severity::No, "velocity.outlet.max", answer.velocity->si(),
                {"too fast for grass:", "muy rápida para el pasto:"},
                {"; stone, or a flatter and wider swale", "; piedra, o una cuneta más ancha y tendida"});
    if (isUnder(answer.depth->si(), answer.critical->si()))
        told.tell(Severity::Check,
                  Text{"the water shoots: shallower than its critical depth of ",
                       "el agua corre en régimen rápido: menos honda que su tirante crítico de "} +
                      feet(*answer.critical, job.units));
}

// A distance that is given is judged; one that is blank is told where the kind of outlet asks for it.
void keepsAway(const Receiver& receiver, const std::optional<Length>& distance, bool asked,
               const char* heading, Severity severity, const char* rule, const Text& what,
               RowFindings& told) {
    if (distance)
        told.atLeast(severity, rule, distance->si(), what);
    else if (asked && !RowFindings::stands(receiver.unusable, heading))
        told.tell(Severity::NotJudged, rule,
                  what + Text{std::string(" is not judged: ") + heading + " is blank",
                              std::string(" sin juzgar: falta ") + heading});
}

void lies(const Job& job, const Receiver& receiver, const SolvedReceiver& answer, RowFindings& told) {
    const OutletKind& kind = outletKind(job.facts.outlet);
    if (receiver.flowLine && !answer.overFlowLine)
        told.tell(Severity::NotJudged, "outlet.above.min",
                  {"height of the outlet over the flow line is not judged: the outlet has no level yet",
                   "altura de la salida sobre el fondo sin juzgar: la salida todavía no tiene nivel"});
    else
        keepsAway(receiver, answer.overFlowLine, kind.asksFlowLine, "Flow line", Severity::Check,
                  "outlet.above.min", {"outlet over the flow line", "salida sobre el fondo de la cuneta"},
                  told);
    keepsAway(receiver, receiver.lotLine, kind.asksLotLine, "To lot line", Severity::No, "outlet.line.min",
              {"outlet to the lot line", "salida al lindero"}, told);
    keepsAway(receiver, receiver.walk, kind.asksWalk, "To walk", Severity::No, "outlet.walk.min",
              {"outlet to the public walk", "salida a la banqueta pública"}, told);
    keepsAway(receiver, receiver.foundation, kind.asksFoundation, "To foundation", Severity::No,
              "outlet.foundation.min", {"outlet to the foundation", "salida al cimiento"}, told);
    if (receiver.foundation && receiver.slope &&
        !isOver(receiver.foundation->si(), job.rules.length("ground.away.within").si()))
        told.atLeast(Severity::Check, "ground.away.min", receiver.slope->si(),
                     {"the swale lies near the house and falls", "la cuneta está junto a la casa y baja"});
}

}  // namespace

void judgeReceivers(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings) {
    for (std::size_t row = 0; row < job.receivers.size(); ++row) {
        const Receiver& receiver = job.receivers[row];
        if (receiver.blank) continue;
        RowFindings told(job, Part::Swale, row, findings);
        told.unusable(receiver.unusable);
        if (waterComes(job, solved, receiver, solved.receivers[row], told))
            carries(job, receiver, solved.receivers[row], told);
        lies(job, receiver, solved.receivers[row], told);
    }
}

}  // namespace trenchbook
