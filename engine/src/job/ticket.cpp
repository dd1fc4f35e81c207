#include "job/ticket.h"

#include "trenchbook/money/calendar.h"

namespace trenchbook {
namespace {

int workingDays(Date from, Date to) { return daysBetween(from, to, {}); }

Text on(Date day) { return Text::same(dateText(day)); }

// Good today, and for how long.
void today(const Ticket& ticket, const Text& name, const Job& job, RowFindings& told) {
    if (!job.facts.today) {
        told.tell(Severity::NotJudged, Standing::InputMissing,
                  name + Text{" is not judged: today's date is not known",
                              " sin juzgar: no se sabe la fecha de hoy"});
        return;
    }
    const Date day = *job.facts.today;
    const double warn = job.rules.number("ticket.warn");
    if (ticket.until && day > *ticket.until)
        told.tell(Severity::No, Standing::TicketValid,
                  name + Text{" ran out on ", " venció el "} + on(*ticket.until));
    else if (ticket.from && day < *ticket.from)
        told.tell(Severity::Check, Standing::TicketValid,
                  name + Text{" is good from ", " vale desde el "} + on(*ticket.from));
    else if (ticket.until && !isOver(*ticket.until - day, warn))
        told.tell(Severity::Check, "ticket.warn", *ticket.until - day,
                  name + Text{" runs out on ", " vence el "} + on(*ticket.until));
}

// The first day against the day of the call; a ticket that has no number yet can be called today at the earliest.
void waited(const Ticket& ticket, const Text& name, const Job& job, RowFindings& told) {
    const std::optional<Date> called = ticket.called           ? ticket.called
                                       : ticket.number.empty() ? job.facts.today
                                                               : std::nullopt;
    if (!ticket.from || !called) return;
    const int wait = workingDays(*called, *ticket.from);
    told.atLeast(Severity::Check, "ticket.wait", wait,
                 name + (ticket.called ? Text{": working days from the call to the first day",
                                              ": días hábiles de la llamada al primer día"}
                                       : Text{": working days from today to the first day",
                                              ": días hábiles de hoy al primer día"}));
}

void lasts(const Ticket& ticket, const Text& name, RowFindings& told) {
    if (!ticket.from || !ticket.until) return;
    if (*ticket.until < *ticket.from) {
        told.tell(Severity::No, Standing::TicketValid,
                  name + Text{" ends before it begins", " termina antes de empezar"});
        return;
    }
    told.atMost(
        Severity::Check, "ticket.life", workingDays(*ticket.from, *ticket.until),
        name + Text{": working days from the first to the last", ": días hábiles del primero al último"});
}

}  // namespace

void judgeTicket(const Ticket& ticket, const Text& name, const Job& job, RowFindings& told) {
    if (!ticket.from || !ticket.until)
        told.tell(Severity::NotJudged, Standing::InputMissing,
                  name + Text{": its first and last day are not both known",
                              ": no se saben su primer y su último día"});
    if (ticket.from || ticket.until) today(ticket, name, job, told);
    waited(ticket, name, job, told);
    lasts(ticket, name, told);
}

}  // namespace trenchbook
