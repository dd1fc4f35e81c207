// What a job may cost and what work took before: price range, learned rates.
#include "catalog/arguments.h"
#include "catalog/families.h"
#include "catalog/recent.h"
#include "trenchbook/lines/network.h"
#include "trenchbook/money/learned_rate.h"
#include "trenchbook/money/price_range.h"
#include "trenchbook/takeoff/hand_output.h"

namespace trenchbook::addin {
namespace {

using State = Arguments::Entry::State;

// Rows that are blank in all columns are passed over; a chance left blank is certain, one alone holds for every row.
std::vector<CostPart> partsOf(const Arguments& in) {
    in.requireSameRows({1, 2, 3});
    const std::size_t rows = in.rows(1);
    if (in.range(4) != nullptr) in.requireSameRows({1, 4});
    const auto likely = in.entries(1, rows), low = in.entries(2, rows), high = in.entries(3, rows);
    const auto chance = in.range(4) != nullptr ? in.entries(4, rows) : std::vector<Arguments::Entry>(rows);
    const double certain = in.range(4) == nullptr ? in.number(4, 1) : 1;
    std::vector<CostPart> parts;
    for (std::size_t row = 0; row < rows; ++row) {
        if (likely[row].state == State::Empty && low[row].state == State::Empty &&
            high[row].state == State::Empty)
            continue;
        parts.push_back(
            {.likely = in.required(1, row, likely[row]),
             .low = in.required(2, row, low[row]),
             .high = in.required(3, row, high[row]),
             .chance = chance[row].state == State::Empty ? certain : in.required(4, row, chance[row])});
    }
    return parts;
}

// Cells of a Quote ask about the same parts one after the other.
std::shared_ptr<const PriceRange> rangeOf(const Arguments& in) {
    static Recent<PriceRange> recent(4);
    std::string question;
    for (std::size_t i = 1; i < 5; ++i) addToQuestion(question, in.raw(i));
    return recent.get(question, [&] { return PriceRange(partsOf(in)); });
}

// Rows of the work that is asked for.
std::vector<WorkDone> jobsOf(const Arguments& in) {
    in.requireSameRows({1, 2, 3});
    const std::string asked = nameKey(in.text(0));
    const std::vector<std::string> works = in.words(1);
    const auto amounts = in.entries(2, works.size()), hours = in.entries(3, works.size());
    std::vector<WorkDone> jobs;
    for (std::size_t row = 0; row < works.size(); ++row)
        if (!works[row].empty() && nameKey(works[row]) == asked)
            jobs.push_back(
                {.quantity = in.required(2, row, amounts[row]), .hours = in.required(3, row, hours[row])});
    if (jobs.empty())
        in.refuse(0, {"a kind of work that a row of works has", "una clase de trabajo que esté en una fila"});
    return jobs;
}
LearnedRate learnedRate(const Arguments& in) { return learnRate(jobsOf(in), in.number(4), in.number(5, 4)); }

Result learnedError(const Arguments& in) {
    const LearnedRate learned = learnedRate(in);
    if (!learned.leftOutError)
        throw Error(Error::Kind::NoSolution, "works",
                    {"One job says nothing of its own error: two are needed.",
                     "Una sola obra no dice nada de su propio error: hacen falta dos."});
    return *learned.leftOutError;
}

Argument money(const char* name, Text says) {
    return {.name = name, .says = std::move(says), .column = true, .limits = zeroOrMore};
}

std::vector<Argument> learnArguments() {
    return {{.name = "work",
             .measure = Measure::Words,
             .says = {"kind of work that is asked for", "clase de trabajo que se pregunta"}},
            {.name = "works",
             .measure = Measure::Words,
             .says = {"kind of work of each row: a row a job and kind",
                      "clase de trabajo de cada fila: una fila por obra y clase"},
             .column = true},
            {.name = "amounts",
             .says = {"how much of it was done, in the unit of the rate",
                      "cuánto se hizo, en la unidad del rendimiento"},
             .column = true,
             .limits = aboveZero},
            {.name = "hours",
             .says = {"man-hours that it took, as if in loam with good access",
                      "horas-hombre que tomó, como en tierra franca con buen acceso"},
             .column = true,
             .limits = zeroOrMore},
            {.name = "start",
             .says = {"hours for one that were thought before", "horas por unidad que se pensaban antes"},
             .limits = aboveZero},
            {.name = "start jobs",
             .says = {"as many jobs as the start is worth", "cuántas obras vale ese comienzo"},
             .fallback = "4",
             .optional = true,
             .limits = zeroOrMore}};
}

std::vector<Argument> partArguments(Argument first) {
    return {
        std::move(first),
        money("likely", {"likely cost of each part, in dollars", "costo probable de cada parte, en dólares"}),
        money("low", {"lowest cost of it", "su costo más bajo"}),
        money("high", {"highest cost of it", "su costo más alto"}),
        {.name = "chance",
         .measure = Measure::Share,
         .says = {"chance that the part comes, 0 to 1; blank: it is certain",
                  "probabilidad de que venga, 0 a 1; en blanco: es segura"},
         .fallback = "1",
         .optional = true,
         .column = true,
         .limits = anyShare}};
}

constexpr const char* rangeSource =
    "Three-point estimates, triangular, independent of each other; 20,000 draws from a fixed seed (SplitMix64)";
constexpr const char* learnSource =
    "Line through the origin held towards the start: (hours + K mean start) / (amounts + K mean); shrunken mean of Efron and "
    "Morris, Scientific American, May 1977; K is the estimator's";

}  // namespace

std::vector<Function> moneyFunctions() {
    return {
        {.name = "PRICE.CHANCE",
         .says = {"Chance that the parts of a job cost more than a price",
                  "Probabilidad de que las partes de una obra cuesten más que un precio"},
         .arguments = partArguments(
             {.name = "price", .says = {"price in dollars", "precio en dólares"}, .limits = zeroOrMore}),
         .measure = Measure::Share,
         .source = rangeSource,
         .example = "PRICE.CHANCE(1300; {1000|600}; {900|200}; {1400|1500}; {1|0.1})",
         .call = [](const Arguments& in) -> Result { return rangeOf(in)->lossAt(in.number(0)); }},
        {.name = "PRICE.COST",
         .says = {"Cost that the parts of a job do not pass in a share of all cases",
                  "Costo que las partes de una obra no pasan en una parte de los casos"},
         .arguments = partArguments({.name = "share",
                                     .measure = Measure::Share,
                                     .says = {"share of the cases: 0.9 for nine in ten",
                                              "parte de los casos: 0.9 para nueve de diez"},
                                     .limits = anyShare}),
         .source = rangeSource,
         .example = "PRICE.COST(0.9; {1000|600}; {900|200}; {1400|1500}; {1|0.1})",
         .call = [](const Arguments& in) -> Result { return rangeOf(in)->cost(in.number(0)); }},
        {.name = "HAND.HOURS",
         .says = {"Man-hours for a cubic yard (metric: m3) by hand, as printed output norms have them",
                  "Horas-hombre por yarda cúbica (métrico: m3) a mano, según normas de rendimiento impresas"},
         .arguments = {{.name = "work",
                        .measure = Measure::Words,
                        .says = {"trench, pit (at most 2 m2), fill (in layers, tamped) or carry",
                                 "zanja, pozo (hasta 2 m2), relleno (por capas, apisonado) o acarreo"}},
                       {.name = "size",
                        .measure = Measure::Feet,
                        .says = {"depth dug, thickness of a layer, way that is carried",
                                 "profundidad, espesor de la capa, distancia de acarreo"},
                        .limits = Limits{.above = true,
                                         .also = {"trench 14.8 ft (4.5 m), pit 9.8 ft (3 m), carry 65.6 ft "
                                                  "(20 m) at most",
                                                  "zanja 14.8 ft (4.5 m), pozo 9.8 ft (3 m), acarreo 65.6 ft "
                                                  "(20 m) como máximo"},
                                         .toldByFunction = true}},
                       {.name = "soil",
                        .measure = Measure::Words,
                        .says = {"loose, firm, clay, boulder clay, gravel (pits), hoggin, hardcore (fill)",
                                 "suelto, firme, arcilla, arcilla con bolos, grava (pozos), zahorra, cascote "
                                 "(relleno)"},
                        .fallback = "firm, for fill loose",
                        .optional = true}},
         .source =
             "Guild of Project Controls, wiki, output norms: excavate by hand, hand fill and compact, hand transport of spoil",
         .example = "HAND.HOURS(\"trench\"; 4; \"clay\")",
         .call = [](const Arguments& in) -> Result {
             const HandHours hours =
                 handHours(handOutput(handWorkNamed(in.text(0)), in.quantity<Length>(1), in.text(2, "")));
             return in.units() == UnitSystem::Metric ? hours.perCubicMetre : hours.perCubicYard;
         }},
        {.name = "LEARN.RATE",
         .says = {"Hours for one of a kind of work, learned from jobs",
                  "Horas por unidad de una clase de trabajo, aprendidas de obras"},
         .arguments = learnArguments(),
         .source = learnSource,
         .example = "LEARN.RATE(\"lay\"; {\"lay\"|\"dig\"|\"lay\"}; {120|30|80}; {11|20|9}; 0.08)",
         .call = [](const Arguments& in) -> Result { return learnedRate(in).manHours; }},
        {.name = "LEARN.ERROR",
         .says =
             {"How far hours miss that are told from the other jobs: leave one out, root mean square, as a share",
              "Cuánto fallan las horas dichas por las otras obras: dejando una fuera, media cuadrática, como proporción"},
         .arguments = learnArguments(),
         .measure = Measure::Share,
         .source = learnSource,
         .example = "LEARN.ERROR(\"lay\"; {\"lay\"|\"dig\"|\"lay\"}; {120|30|80}; {11|20|9}; 0.08)",
         .call = learnedError},
    };
}

}  // namespace trenchbook::addin
