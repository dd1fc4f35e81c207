#include "catalog/arguments.h"
#include "catalog/common.h"
#include "catalog/families.h"
#include "catalog/rules_argument.h"
#include "trenchbook/job/judge_run.h"
#include "trenchbook/lines/cover.h"

namespace trenchbook::addin {
namespace {

Argument lengthArgument() {
    return {.name = "length",
            .measure = Measure::Feet,
            .says = {"length along the pipe", "longitud a lo largo del tubo"}};
}
Argument level(const char* name, const char* en, const char* es) {
    return {.name = name, .measure = Measure::Feet, .says = {en, es}, .limits = anyLevel};
}
Argument cover(const char* name, const char* en, const char* es) {
    return {.name = name,
            .measure = Measure::Inches,
            .says = {en, es},
            .limits = Limits{
                .least = -unlimited,
                .also = {"any; below 0 out of the ground", "cualquiera; menos de 0 fuera de la tierra"}}};
}
Argument surface(const char* name, const char* en, const char* es) {
    return {.name = name, .measure = Measure::Words, .says = {en, es}};
}

Result runCheck(const Arguments& a) {
    const Pipe pipe = a.pipe(2);
    const auto coverAt = [&](std::size_t index) {
        return a.given(index) ? std::optional(a.quantity<Length>(index)) : std::nullopt;
    };
    const RunFacts facts{.length = a.quantity<Length>(0),
                         .slope = a.slope(1),
                         .pipe = pipe,
                         .flow = a.quantity<Flow>(3),
                         .coverUp = coverAt(4),
                         .coverDown = coverAt(5),
                         .surfaceUp = coverSurface(a.text(6), "surface up"),
                         .surfaceDown = coverSurface(a.text(7), "surface down"),
                         .roughness = a.roughness(9, pipe)};
    return checkRun(facts, readRules(a, 8), a.units()).in(a.language());
}

}  // namespace

std::vector<Function> runFunctions() {
    return {
        {.name = "RUN.DROP",
         .says = {"drop of a run at a slope", "desnivel de un tramo con una pendiente"},
         .arguments = {within(lengthArgument(), zeroOrMore),
                       slopeArgument(),
                       {.name = "fittings drop",
                        .measure = Measure::Feet,
                        .says = {"what the fittings need on top", "lo que piden además los accesorios"},
                        .fallback = "0",
                        .optional = true,
                        .limits = zeroOrMore}},
         .measure = Measure::Feet,
         .source = "length x slope + drop of the fittings",
         .example = "RUN.DROP(42; \"1/8 in/ft\")",
         .call = [](const Arguments& a) -> Result {
             return a.answer(runDrop(a.quantity<Length>(0), a.slope(1), a.quantity<Length>(2, {})));
         }},
        {.name = "RUN.SLOPE",
         .says = {"slope of a run between two levels; negative runs uphill",
                  "pendiente de un tramo entre dos cotas; negativa si sube"},
         .arguments = {within(lengthArgument(), aboveZero),
                       level("level up", "level at the upper end", "cota en el extremo de arriba"),
                       level("level down", "level at the lower end", "cota en el extremo de abajo")},
         .measure = Measure::Slope,
         .source = "(level up - level down) / length",
         .example = "RUN.SLOPE(42; 98.60; 98.16)",
         .call = [](const Arguments& a) -> Result {
             return a.answer(runSlope(a.quantity<Length>(0), a.quantity<Length>(1), a.quantity<Length>(2)));
         }},
        {.name = "RUN.COVER",
         .says = {"ground over the outside top of the pipe", "tierra sobre el lomo exterior del tubo"},
         .arguments = {level("ground", "level of the ground", "cota del terreno"),
                       level("invert", "level of the inside bottom", "cota del fondo interior"),
                       within(pipeArgument(), stockAlone)},
         .measure = Measure::Inches,
         .source = "ground - invert - (outside - wall); dimensions of the stock pipe",
         .example = "RUN.COVER(100; 98.5; \"4 SDR35\")",
         .call = [](const Arguments& a) -> Result {
             return a.answer(coverOver(a.quantity<Length>(0), a.quantity<Length>(1), a.pipe(2)));
         }},
        {.name = "RUN.CUT",
         .says = {"ground to trench bottom", "del terreno al fondo de la zanja"},
         .arguments = {level("ground", "level of the ground", "cota del terreno"),
                       level("invert", "level of the inside bottom", "cota del fondo interior"),
                       within(pipeArgument(), stockAlone),
                       {.name = "bedding",
                        .measure = Measure::Inches,
                        .says = {"bedding under the pipe", "cama bajo el tubo"},
                        .fallback = "0",
                        .optional = true,
                        .limits = zeroOrMore}},
         .measure = Measure::Feet,
         .source = "ground - invert + wall + bedding; dimensions of the stock pipe",
         .example = "RUN.CUT(100; 98.5; \"4 SDR35\"; 3)",
         .call = [](const Arguments& a) -> Result {
             return a.answer(trenchCut(a.quantity<Length>(0), a.quantity<Length>(1), a.pipe(2),
                                       a.quantity<Length>(3, {})));
         }},
        {.name = "RUN.CHECK",
         .says = {"OK, or every reason why this run will not do",
                  "OK, o cada razón por la que este tramo no sirve"},
         .arguments =
             {within(lengthArgument(), aboveZero),
              within(slopeArgument(), {.least = -unlimited, .greatest = 1, .below = true}), pipeArgument(),
              flowArgument(),
              cover("cover up", "cover at the upper end; empty text: exempt",
                    "cobertura en el extremo de arriba; texto vacío: exento"),
              cover("cover down", "cover at the lower end; empty text: exempt",
                    "cobertura en el extremo de abajo; texto vacío: exento"),
              surface("surface up", "lawn, end of lawn, bed, walk, drive, street, daylight",
                      "césped, fin de césped, jardinera, andador, entrada de autos, calle, a cielo abierto"),
              surface("surface down", "the same, at the lower end", "lo mismo, en el extremo de abajo"),
              rulesArgument(), roughnessArgument()},
         .returns = Returns::Words,
         .source = "the rules and their sources; Manning's formula",
         .example = "RUN.CHECK(42; \"1%\"; \"4 SDR35\"; 60; 14; 11; \"lawn\"; \"lawn\"; {\"cover.lawn\";10})",
         .call = runCheck},
    };
}

}  // namespace trenchbook::addin
