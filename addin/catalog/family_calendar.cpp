// Money in time: days that count, the earliest start, deposits by state.
#include <cmath>

#include "catalog/arguments.h"
#include "catalog/families.h"
#include "trenchbook/money/calendar.h"
#include "trenchbook/money/state_law.h"

namespace trenchbook::addin {
namespace {

using State = Arguments::Entry::State;

constexpr Limits dayLimits = {.least = 1, .greatest = 2958465};
constexpr Limits dayCount = {.greatest = 3650, .whole = true};

Argument dateArgument(const char* name, Text says) {
    return {.name = name, .says = std::move(says), .limits = dayLimits};
}
Argument holidaysArgument() {
    return {.name = "holidays",
            .says = {"days that do not count, blank cells skipped",
                     "días que no cuentan; se saltan las celdas en blanco"},
            .optional = true,
            .column = true,
            .limits = dayLimits};
}

std::vector<Date> holidaysOf(const Arguments& in, std::size_t index) {
    std::vector<Date> days;
    if (!in.given(index)) return days;
    for (const double day : in.numbers(index)) days.push_back(Date::serial(day));
    return days;
}

Date dateOf(const Arguments& in, std::size_t index) { return Date::serial(in.number(index)); }

Week weekOf(const Arguments& in, std::size_t index) {
    const std::string week = nameKey(in.text(index, "5 days"));
    if (week == "5 days" || week == "5 días") return Week::MondayToFriday;
    if (week == "6 days" || week == "6 días") return Week::MondayToSaturday;
    in.refuse(index, {"5 days (Monday to Friday) or 6 days (Saturday, too)",
                      "5 días (de lunes a viernes) o 6 días (también el sábado)"});
}

std::optional<Date> dayIn(const Arguments& in, std::size_t index, std::size_t row,
                          const Arguments::Entry& entry) {
    if (entry.state == State::Empty) return std::nullopt;
    return Date::serial(in.required(index, row, entry));
}

// Rows without a name are passed over.
std::vector<Wait> waitsOf(const Arguments& in) {
    in.requireSameRows({0, 1, 2, 3, 4});
    const std::vector<std::string> names = in.words(0);
    const auto from = in.entries(1, names.size()), days = in.entries(2, names.size()),
               done = in.entries(4, names.size());
    const std::vector<std::string> counted =
        in.given(3) ? in.words(3) : std::vector<std::string>(names.size());
    std::vector<Wait> waits;
    for (std::size_t row = 0; row < names.size(); ++row) {
        if (names[row].empty()) continue;
        const std::string kind = nameKey(counted[row]);
        const bool working = kind.empty() || kind == "working" || kind == "hábiles";
        if (!working && kind != "calendar" && kind != "calendario")
            in.refuse(3, {"working or calendar", "hábiles o calendario"});
        Wait wait{.what = names[row],
                  .from = dayIn(in, 1, row, from[row]),
                  .working = working,
                  .done = dayIn(in, 4, row, done[row])};
        if (days[row].state != State::Empty)
            wait.days = static_cast<int>(in.required(2, row, days[row]));
        else if (!wait.done && wait.from)
            in.required(2, row, days[row]);  // how long it takes must be said
        waits.push_back(wait);
    }
    if (waits.empty())
        in.refuse(0, {"one thing at least that is waited for", "al menos una cosa que se espera"});
    return waits;
}

Start startOf(const Arguments& in, const std::vector<Wait>& waits) {
    const std::vector<Date> holidays = holidaysOf(in, 5);
    return earliestStart(waits, {.holidays = holidays});
}

std::vector<Argument> startArguments() {
    return {
        {.name = "waits",
         .measure = Measure::Words,
         .says = {"what must be over before the work starts", "lo que debe acabar antes de empezar"},
         .column = true},
        {.name = "from",
         .says = {"day on which each was asked for, called, ordered or signed",
                  "día en que se pidió, llamó, encargó o firmó cada cosa"},
         .column = true,
         .limits = dayLimits},
        {.name = "days", .says = {"days that it takes", "días que toma"}, .column = true, .limits = dayCount},
        {.name = "counted",
         .measure = Measure::Words,
         .says = {"working (Monday to Friday) or calendar days; blank: working",
                  "días hábiles (de lunes a viernes) o de calendario; en blanco: hábiles"},
         .optional = true,
         .column = true},
        {.name = "done",
         .says = {"day on which it was there, in place of the days",
                  "día en que ya estaba, en vez de los días"},
         .optional = true,
         .column = true,
         .limits = dayLimits},
        holidaysArgument()};
}

Argument stateArgument() {
    return {.name = "state",
            .measure = Measure::Words,
            .says = {"two letters or name of a state", "dos letras o nombre de un estado"}};
}

constexpr const char* daysSource = "Calendar; holidays are those that are given, none is known";
constexpr const char* cancelSource =
    "16 CFR 429.0(f) and 429.1(a), e-CFR of February 2021: midnight of the third business day, all but Sundays and federal "
    "holidays; states may give more days";
constexpr const char* lawSource =
    "Each state's section as docs/functions.md and DEPOSIT.LAW name it; what was not read is not told";

}  // namespace

std::vector<Function> calendarFunctions() {
    return {
        {.name = "DAYS.AFTER",
         .says = {"Day that is so many working days after another",
                  "Día que cae tantos días hábiles después de otro"},
         .arguments = {dateArgument("date", {"day that is counted from; it does not count itself",
                                             "día desde el que se cuenta; él mismo no cuenta"}),
                       {.name = "days", .says = {"days that count", "días que cuentan"}, .limits = dayCount},
                       holidaysArgument(),
                       {.name = "week",
                        .measure = Measure::Words,
                        .says = {"5 days, Monday to Friday; 6 days, Saturday, too",
                                 "5 días, de lunes a viernes; 6 días, también el sábado"},
                        .fallback = "5 days",
                        .optional = true}},
         .source = daysSource,
         .example = "DAYS.AFTER(46380; 3; {46381|46388})",
         .call = [](const Arguments& in) -> Result {
             const std::vector<Date> holidays = holidaysOf(in, 2);
             return static_cast<double>(afterDays(dateOf(in, 0), static_cast<int>(in.number(1)),
                                                  {.holidays = holidays, .week = weekOf(in, 3)})
                                            .days);
         }},
        {.name = "DAYS.CANCEL",
         .says = {"Last day on which an owner may cancel a contract signed at home",
                  "Último día en que el dueño puede cancelar un contrato firmado en casa"},
         .arguments = {dateArgument("signed on", {"day of the signature", "día de la firma"}),
                       {.name = "days",
                        .says = {"business days that the law gives", "días hábiles que da la ley"},
                        .fallback = "3",
                        .optional = true,
                        .limits = dayCount},
                       holidaysArgument()},
         .source = cancelSource,
         .example = "DAYS.CANCEL(46380; 3; {46381|46388})",
         .call = [](const Arguments& in) -> Result {
             const std::vector<Date> holidays = holidaysOf(in, 2);
             return static_cast<double>(
                 lastDayToCancel(dateOf(in, 0), static_cast<int>(in.number(1, 3)), holidays).days);
         }},
        {.name = "START.DATE",
         .says = {"First working day on which all that is waited for is over",
                  "Primer día hábil en que ha acabado todo lo que se espera"},
         .arguments = startArguments(),
         .source = daysSource,
         .example = "START.DATE({\"ticket\"|\"permit\"}; {46380|46370}; {3|21}; {\"working\"|\"calendar\"})",
         .call = [](const Arguments& in) -> Result {
             return static_cast<double>(startOf(in, waitsOf(in)).day.days);
         }},
        {.name = "START.HELD",
         .says = {"What holds the start: the wait that is over last",
                  "Qué detiene el comienzo: la espera que acaba al último"},
         .arguments = startArguments(),
         .returns = Returns::Words,
         .source = daysSource,
         .example = "START.HELD({\"ticket\"|\"permit\"}; {46380|46370}; {3|21}; {\"working\"|\"calendar\"})",
         .speaks = false,
         .call = [](const Arguments& in) -> Result {
             const std::vector<Wait> waits = waitsOf(in);
             return waits[startOf(in, waits).held].what;
         }},
        {.name = "DEPOSIT.LIMIT",
         .says = {"Most that a state lets a contractor ask before the work, as it was read",
                  "Lo más que un estado deja pedir antes de la obra, según lo leído"},
         .arguments = {stateArgument(),
                       {.name = "price",
                        .measure = Measure::Dollars,
                        .says = {"price of the contract", "precio del contrato"},
                        .limits = zeroOrMore},
                       {.name = "special orders",
                        .measure = Measure::Dollars,
                        .says = {"cost of goods made or ordered for this job alone",
                                 "costo de lo hecho o encargado solo para esta obra"},
                        .fallback = "0",
                        .optional = true,
                        .limits = zeroOrMore}},
         .measure = Measure::Dollars,
         .source = lawSource,
         .example = "DEPOSIT.LIMIT(\"CA\"; 12500)",
         .call = [](const Arguments& in) -> Result {
             const StateLaw* law = stateLaw(in.text(0));
             if (law == nullptr)
                 in.refuse(0,
                           {"a state whose law was read (DEPOSIT.LAW); for all others ask the state",
                            "un estado cuya ley se leyó (DEPOSIT.LAW); para los demás pregunte al estado"});
             return depositLimit(*law, in.number(1), in.number(2, 0));
         }},
        {.name = "DEPOSIT.LAW",
         .says = {"Section and text behind DEPOSIT.LIMIT, or whom to ask",
                  "Artículo y texto detrás de DEPOSIT.LIMIT, o a quién preguntar"},
         .arguments = {stateArgument()},
         .returns = Returns::Words,
         .source = lawSource,
         .example = "DEPOSIT.LAW(\"ME\")",
         .call = [](const Arguments& in) -> Result {
             return depositLaw(stateLaw(in.text(0))).in(in.language());
         }},
    };
}

}  // namespace trenchbook::addin
