// Job: what is still to measure or to ask, the rain, and the locate ticket.
#include <algorithm>

#include "job/say.h"
#include "job/ticket.h"
#include "trenchbook/job/judge.h"
#include "trenchbook/money/calendar.h"

namespace trenchbook {
namespace {

template <class Row>
bool allBlank(const std::vector<Row>& rows) {
    return std::all_of(rows.begin(), rows.end(), [](const Row& row) { return row.blank; });
}
bool open(Answer answer) { return answer == Answer::NotSaid || answer == Answer::Ask; }

struct Question {
    bool open;
    Text says;
};

// In the order of the work.
std::vector<Question> questions(const Job& job) {
    const JobFacts& facts = job.facts;
    const std::string permission = nameKey(facts.permission);
    return {
        {facts.name.empty(), {"Job: name", "Job: nombre"}},
        {facts.owner.empty(), {"Job: owner", "Job: dueño"}},
        {facts.site.empty(), {"Job: site", "Job: lugar"}},
        {!facts.quoteDate, {"Job: date of the quote", "Job: fecha de la cotización"}},
        {!facts.rain, {"Job: rain", "Job: lluvia"}},
        {facts.rulesAsked != Answer::Yes,
         {"Job: do rules, tax rate and rain fit this county?",
          "Job: ¿las reglas, el impuesto y la lluvia son los de este condado?"}},
        {facts.soil.empty(), {"Job: soil", "Job: suelo"}},
        {facts.outlet.empty(), {"Job: where the water goes", "Job: a dónde va el agua"}},
        {permission.empty() || permission == "requested",
         {"Job: permission for the outlet", "Job: permiso para la salida"}},
        {open(facts.septic) || open(facts.well),
         {"Job: ask about septic and well", "Job: pregunte por fosa séptica y pozo de agua"}},
        {open(facts.irrigation),
         {"Job: ask about irrigation and pool lines", "Job: pregunte por líneas de riego y alberca"}},
        {open(facts.association),
         {"Job: ask about an owners' association", "Job: pregunte por la asociación de colonos"}},
        {facts.levels == 0, {"Levels: rod readings", "Levels: lecturas de estadal"}},
        {allBlank(job.inlets), {"Water: roofs and paving", "Water: techos y pisos"}},
        {allBlank(job.runs), {"Runs: the lines", "Runs: las líneas"}},
    };
}

// What a short rain brings in the United States; more or less is most often the other system's unit.
constexpr RainRate usualLeast = RainRate::inchesPerHour(0.5), usualMost = RainRate::inchesPerHour(15);

void rain(const Job& job, RowFindings& told) {
    if (!job.facts.rain) return;  // asked above
    const RainRate rain = *job.facts.rain;
    if (!(rain > RainRate{})) {
        told.tell(Severity::No, Standing::InputUnusable,
                  {"Rain must be above 0", "Rain debe ser mayor que 0"});
        return;
    }
    if (job.facts.rainFromTable) return;
    if (isUnder(rain.si(), usualLeast.si()) || isOver(rain.si(), usualMost.si()))
        told.tell(Severity::Check, Standing::InputUnit,
                  Text{"Rain is ", "Rain es "} + amountText({rain.si(), Unit::InchesPerHour}, job.units) +
                      Text{"; usual are 0.5 to 15 in/hr (13 to 380 mm/h): in the job's unit?",
                           "; lo usual es de 0.5 a 15 in/hr (13 a 380 mm/h): ¿en la unidad de la obra?"});
}

// Called today, digging may begin after the working days of the rules.
void ticket(const Job& job, RowFindings& told) {
    const Ticket& ticket = job.facts.ticket;
    if (!ticket.number.empty())
        return judgeTicket(ticket, {"ticket " + ticket.number, "el folio " + ticket.number}, job, told);
    Text says{"Job: locate ticket (call 811)", "Job: folio de localización (llame al 811)"};
    if (job.facts.today) {
        const int wait = static_cast<int>(job.rules.number("ticket.wait"));
        const std::string day = dateText(afterDays(*job.facts.today, wait, {}));
        says += {"; called today, digging may begin on " + day,
                 "; si llama hoy, se puede excavar desde el " + day};
    }
    told.tell(Severity::NotJudged, "ticket.wait", says);
    if (ticket.from || ticket.until) judgeTicket(ticket, {"the locate ticket", "el folio"}, job, told);
}

// An offer that nobody accepted ends on a day of its own; once the job is sold, Account tells what was agreed and when.
void offer(const Job& job, RowFindings& told) {
    if (!job.facts.quoteDate || !job.facts.today || job.facts.agreed) return;
    const int age = *job.facts.today - *job.facts.quoteDate;
    const double holds = job.rules.number("quote.days");
    if (!isOver(age, holds)) return;
    const std::string until = dateText(*job.facts.quoteDate + static_cast<int>(holds));
    told.tell(Severity::Check, "quote.days", age,
              Text{"the offer held until " + until + ": price it anew, with a new date",
                   "la oferta valía hasta el " + until + ": calcúlela de nuevo, con otra fecha"});
}

}  // namespace

void judgeJob(const Job& job, const SolvedJob&, std::vector<Finding>& findings) {
    RowFindings told(job, Part::Job, Finding::whole, findings);
    told.unusable(job.facts.unusable);
    for (const Question& question : questions(job))
        if (question.open) told.tell(Severity::NotJudged, Standing::InputMissing, question.says);
    rain(job, told);
    offer(job, told);
    ticket(job, told);
}

}  // namespace trenchbook
