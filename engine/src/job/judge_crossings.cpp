// Crossings: is there room between our pipe and what else is buried, and may anybody dig there yet?

#include "job/say.h"
#include "job/solve_parts.h"
#include "job/ticket.h"
#include "trenchbook/job/judge.h"

namespace trenchbook {
namespace {

Text nameOf(const Crossing& crossing) { return Text::same(crossing.from + "-" + crossing.to); }

// Where on the run, and how the other line lies there. True when all of it is known.
bool measured(const Job& job, const Crossing& crossing, const SolvedCrossing& solved, RowFindings& told) {
    bool known = true;
    if (solved.run == Network::none) {
        told.tell(Severity::No, Standing::NameKnown,
                  Text{"no run goes from " + crossing.from + " to " + crossing.to + " on Runs",
                       "ningún tramo va de " + crossing.from + " a " + crossing.to + " en Runs"});
        known = false;
    }
    known =
        told.needs(crossing.at, crossing.unusable, "At",
                   {"how far from " + crossing.from + "?", "¿a qué distancia de " + crossing.from + "?"}) &&
        known;
    if (crossing.at && *crossing.at < Length{}) {
        told.tell(Severity::No, Standing::InputUnusable, {"At must be 0 or more", "At debe ser 0 o más"});
        known = false;
    }
    if (crossing.at && solved.run != Network::none) {
        const std::optional<Length> length = job.runs[solved.run].length;
        if (length && *crossing.at > *length) {
            told.tell(
                Severity::No, Standing::InputUnusable,
                Text{"At lies beyond the end of run ", "At queda más allá del tramo "} + nameOf(crossing));
            known = false;
        }
    }
    known = told.needs(crossing.depth, crossing.unusable, "Its depth",
                       {"dig by hand and measure", "excave a mano y mida"}) &&
            known;
    known = told.needs(crossing.diameter, crossing.unusable, "Its diameter") && known;
    if (crossing.diameter && !(*crossing.diameter > Length{})) {
        told.tell(Severity::No, Standing::InputUnusable,
                  {"Its diameter must be above 0", "Its diameter debe ser mayor que 0"});
        known = false;
    }
    if (crossing.depth && *crossing.depth < Length{}) {
        told.tell(Severity::No, Standing::InputUnusable,
                  {"Its depth must be 0 or more", "Its depth debe ser 0 o más"});
        known = false;
    }
    return told.needs(crossing.passesAbove, crossing.unusable, "Passes",
                      {"does it pass above or below?", "¿pasa por arriba o por abajo?"}) &&
           known;
}

void clearance(const Job& job, const Crossing& crossing, const SolvedCrossing& solved, RowFindings& told) {
    const std::optional<Pipe>& pipe = job.runs[solved.run].pipe;
    if (!solved.clearance) {
        if (pipe && !pipe->outside)
            told.tell(Severity::NotJudged, Standing::RunBareBore,
                      Text{"clearance is not judged: the outside of a bare bore is not known",
                           "separación sin juzgar: no se sabe el exterior de un tubo dado por su interior"});
        else
            told.tell(Severity::NotJudged, Standing::InputWaits,
                      Text{"run ", "el tramo "} + nameOf(crossing) +
                          Text{" has no levels here yet", " todavía no tiene niveles aquí"});
        return;
    }
    const char* rule = clearanceRule(crossing);
    const Text kept = amountText({solved.keptLevel->si(), Unit::Feet}, job.units);
    const Text side = *crossing.passesAbove ? Text{"below ", "debajo de "} : Text{"above ", "arriba de "};
    const Text cure =
        Text{"; our pipe's outside must stay ", "; el exterior del tubo debe quedar "} + side + kept;
    if (*solved.clearance < Length{})
        told.tell(Severity::No, rule, solved.clearance->si(),
                  Text{"they meet: short by ", "se tocan: faltan "} +
                      amountText({-solved.clearance->si(), Unit::Inches}, job.units) + cure);
    else
        told.atLeast(Severity::No, rule, solved.clearance->si(), {"clear distance", "separación"}, cure);
}

// A line that its owner marks is covered by a ticket; a private one is not.
void marks(const Job& job, const Crossing& crossing, RowFindings& told) {
    if (crossing.marked == Marked::Private)
        return told.tell(Severity::Caution, Standing::LinesPrivate,
                         {"private line: nobody marks it; find it by hand before the machine comes",
                          "línea privada: nadie la marca; encuéntrela a mano antes de la máquina"});
    if (RowFindings::stands(crossing.unusable, "Marked")) return;
    if (crossing.marked != Marked::Yes)
        return told.tell(Severity::Check, Standing::CrossingMarked, {"not marked yet", "sin marcar todavía"});
    if (crossing.ticket.empty()) {
        if (!RowFindings::stands(crossing.unusable, "Ticket")) told.missing("Ticket");
        return;
    }
    Ticket ticket{.number = crossing.ticket, .from = crossing.goodFrom, .until = crossing.goodUntil};
    if (nameKey(crossing.ticket) == nameKey(job.facts.ticket.number)) {
        ticket.called = job.facts.ticket.called;
        if (!ticket.from) ticket.from = job.facts.ticket.from;
        if (!ticket.until) ticket.until = job.facts.ticket.until;
    }
    judgeTicket(ticket, {"ticket " + crossing.ticket, "el folio " + crossing.ticket}, job, told);
}

}  // namespace

void judgeCrossings(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings) {
    for (std::size_t row = 0; row < job.crossings.size(); ++row) {
        const Crossing& crossing = job.crossings[row];
        if (crossing.blank) continue;
        RowFindings told(job, Part::Crossings, row, findings);
        told.unusable(crossing.unusable);
        if (measured(job, crossing, solved.crossings[row], told))
            clearance(job, crossing, solved.crossings[row], told);
        marks(job, crossing, told);
    }
}

}  // namespace trenchbook
