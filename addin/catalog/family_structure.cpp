// Where pipes meet and change: boxes, sizes, bends, wyes.
#include "catalog/common.h"
#include "trenchbook/lines/structure_loss.h"
#include "trenchbook/pipe/transition.h"

namespace trenchbook::addin {
namespace {

constexpr const char* accessHole =
    "FHWA access hole method, HEC-22, 3rd edition (2009), 7.1.6.7, checked against its example 7-3";

std::vector<Argument> structureArguments() {
    return {
        pipeArgument(),
        {.name = "flow",
         .measure = Measure::Gpm,
         .says = {"all that leaves the box by this pipe", "todo lo que sale de la caja por este tubo"},
         .limits = aboveZero},
        {.name = "water",
         .measure = Measure::Feet,
         .says = {"water at the upper end of that pipe, over its invert (the pressure line above the crown)",
                  "agua en el extremo de arriba de ese tubo, sobre su fondo (la línea de presión si va "
                  "lleno)"},
         .limits = aboveZero},
        {.name = "inflows",
         .measure = Measure::Gpm,
         .says = {"flow of each pipe that comes in; left out: all comes straight on",
                  "caudal de cada tubo que entra; si se omite, todo llega recto"},
         .optional = true,
         .column = true,
         .limits = Limits{.also = {"together at most the flow", "juntos como máximo el caudal"}}},
        {.name = "turns",
         .measure = Measure::Degrees,
         .says = {"turn of each, 0 straight on, 90 a right angle",
                  "giro de cada uno, 0 recto, 90 ángulo recto"},
         .fallback = "0",
         .optional = true,
         .column = true,
         .limits = anyTurn},
        {.name = "drops",
         .measure = Measure::Feet,
         .says = {"height of each one's invert over the invert of the pipe that leaves",
                  "altura del fondo de cada uno sobre el fondo del tubo que sale"},
         .fallback = "0",
         .optional = true,
         .column = true,
         .limits = zeroOrMore},
        {.name = "floor",
         .measure = Measure::Words,
         .says = {"flat, depressed (a sump), half bench, full bench, improved",
                  "plano, deprimido (con sumidero), media banqueta, banqueta completa, mejorado"},
         .fallback = "\"flat\"",
         .optional = true}};
}

StructureEnergy structureOf(const Arguments& in) {
    const StructureOutlet outlet =
        structureOutlet(in.pipe(0).bore, in.quantity<Flow>(1), in.quantity<Length>(2));
    const std::size_t rows = in.rows(3);
    const auto flows = in.entries(3, rows);
    // A column, or one value for all pipes.
    const auto ofEach = [&](std::size_t index) {
        if (in.range(index) != nullptr) in.requireSameRows({3, index});
        std::vector<Arguments::Entry> entries = in.entries(index, rows);
        if (in.range(index) == nullptr && rows > 0) entries.assign(rows, entries.front());
        return entries;
    };
    const auto turns = ofEach(4), drops = ofEach(5);
    std::vector<StructureInflow> inflows;
    for (std::size_t row = 0; row < rows; ++row) {
        using State = Arguments::Entry::State;
        const auto orNone = [&](std::size_t index, const Arguments::Entry& entry) {
            return entry.state == State::Empty ? 0.0 : in.required(index, row, entry);
        };
        const double turn = orNone(4, turns[row]);
        const double drop = orNone(5, drops[row]);
        if (flows[row].state == State::Empty && turn == 0 && drop == 0) continue;  // a blank row
        inflows.push_back({.flow = Flow::fromSi(in.required(3, row, flows[row])),
                           .turn = Angle::fromSi(turn),
                           .drop = Length::fromSi(drop)});
    }
    return structureEnergy(outlet, inflows, structureFloor(in.text(6, "flat")));
}

Argument named(Argument argument, const char* name, Text says) {
    argument.name = name;
    argument.says = std::move(says);
    return argument;
}

// A pipe by another name than "pipe": the refusal says which.
Length boreOf(const Arguments& in, std::size_t index) {
    try {
        return in.pipe(index).bore;
    } catch (const Error& error) {
        throw error.about(in.function().arguments[index].name);
    }
}

}  // namespace

std::vector<Function> structureFunctions() {
    return {
        {.name = "STRUCTURE.LEVEL",
         .says =
             {"How high water stands in a box where pipes meet, over the invert of the pipe that leaves",
              "Qué tan alta queda el agua en una caja donde se juntan tubos, sobre el fondo del que sale"},
         .arguments = structureArguments(),
         .measure = Measure::Feet,
         .source = accessHole,
         .example = "STRUCTURE.LEVEL(\"6 SDR35\"; 200; 0.6; {120|80}; {0|90})",
         .call = [](const Arguments& in) -> Result { return in.answer(structureOf(in).energy); }},
        {.name = "STRUCTURE.LOSS",
         .says = {"Head lost in a box where pipes meet: turn, plunge and shape of its floor",
                  "Carga perdida en una caja donde se juntan tubos: giro, caída y forma del fondo"},
         .arguments = structureArguments(),
         .measure = Measure::Feet,
         .source = accessHole,
         .example = "STRUCTURE.LOSS(\"6 SDR35\"; 200; 0.6; {120|80}; {0|90})",
         .call = [](const Arguments& in) -> Result { return in.answer(structureOf(in).loss); }},
        {.name = "TRANSITION.LOSS",
         .says = {"Head lost where full pipe changes its size",
                  "Carga perdida donde el tubo lleno cambia de tamaño"},
         .arguments = {pipeArgument(),
                       named(pipeArgument(), "next pipe",
                             {"pipe that follows, in the water's direction", "tubo que sigue, aguas abajo"}),
                       {.name = "flow",
                        .measure = Measure::Gpm,
                        .says = {"water in the pipe", "agua en el tubo"},
                        .limits = aboveZero},
                       {.name = "cone angle",
                        .measure = Measure::Degrees,
                        .says = {"whole angle of a gradual increaser; left out, the change is sudden",
                                 "ángulo total de un cono gradual; si se omite, el cambio es súbito"},
                        .optional = true,
                        .limits = Limits{.least = 2, .greatest = 60, .toldByFunction = true}}},
         .measure = Measure::Feet,
         .source = "K V2/2g, FHWA HEC-22, 3rd edition (2009), tables 7-4c to 7-4e (some values from memory)",
         .example = "TRANSITION.LOSS(\"3 SCH40\"; \"4 SDR35\"; 60)",
         .call = [](const Arguments& in) -> Result {
             const std::optional<Angle> cone =
                 in.given(3) ? std::optional(in.quantity<Angle>(3)) : std::nullopt;
             return in.answer(transitionLoss(in.pipe(0).bore, boreOf(in, 1), in.quantity<Flow>(2), cone));
         }},
        {.name = "BEND.LOSS",
         .says = {"Head lost where a full line turns in a smooth bend",
                  "Carga perdida donde una línea llena gira en curva suave"},
         .arguments = {pipeArgument(),
                       {.name = "flow",
                        .measure = Measure::Gpm,
                        .says = {"water in the pipe", "agua en el tubo"},
                        .limits = aboveZero},
                       {.name = "turn",
                        .measure = Measure::Degrees,
                        .says = {"angle of the turn", "ángulo del giro"},
                        .limits = Limits{.greatest = 90}}},
         .measure = Measure::Feet,
         .source =
             "0.0033 x degrees x V2/2g, FHWA HEC-22, 3rd edition (2009), Eq. 7-5; a glued short elbow loses "
             "several times as much: FITTING.LOSS",
         .example = "BEND.LOSS(\"4 SDR35\"; 100; 45)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(bendLoss(in.pipe(0).bore, in.quantity<Flow>(1), in.quantity<Angle>(2)));
         }},
        {.name = "JUNCTION.LOSS",
         .says = {"Head lost where a pipe joins a full line without a box",
                  "Carga perdida donde un tubo se une a una línea llena sin caja"},
         .arguments = {pipeArgument(),
                       {.name = "flow",
                        .measure = Measure::Gpm,
                        .says = {"water in the line above", "agua en la línea aguas arriba"},
                        .limits = zeroOrMore},
                       named(pipeArgument(), "side pipe", {"pipe that joins", "tubo que se une"}),
                       {.name = "side flow",
                        .measure = Measure::Gpm,
                        .says = {"water in the pipe that joins", "agua en el tubo que se une"},
                        .limits = aboveZero},
                       {.name = "angle",
                        .measure = Measure::Degrees,
                        .says = {"between both, 45 in a wye, 90 in a tee",
                                 "entre ambos, 45 en una yee, 90 en una te"},
                        .limits = Limits{.greatest = 90}},
                       {.name = "pipe below",
                        .measure = Measure::Pipe,
                        .says = {"the line below", "la línea aguas abajo"},
                        .fallback = "as above",
                        .optional = true,
                        .limits = stockOrBore}},
         .measure = Measure::Feet,
         .source =
             "Momentum, FHWA HEC-22, 3rd edition (2009), Eq. 7-10; Texas DOT, Hydraulic Design Manual, Eq. "
             "10-36",
         .example = "JUNCTION.LOSS(\"4 SDR35\"; 67; \"4 SDR35\"; 45; 45)",
         .call = [](const Arguments& in) -> Result {
             const Length above = in.pipe(0).bore;
             return in.answer(junctionLoss({above, in.quantity<Flow>(1)},
                                           {boreOf(in, 2), in.quantity<Flow>(3)}, in.quantity<Angle>(4),
                                           in.given(5) ? boreOf(in, 5) : above));
         }},
    };
}

}  // namespace trenchbook::addin
