#include "catalog/arguments.h"
#include "catalog/common.h"
#include "catalog/families.h"
#include "trenchbook/rules.h"
#include "trenchbook/run.h"

namespace trenchbook::addin {
namespace {

Argument lengthArgument() {
    return {.name = "length",
            .measure = Measure::Feet,
            .says = {"length along the pipe", "longitud a lo largo del tubo"}};
}
Argument level(const char* name, const char* en, const char* es) {
    return {.name = name, .measure = Measure::Feet, .says = {en, es}};
}
Argument cover(const char* name, const char* en, const char* es) {
    return {.name = name, .measure = Measure::Inches, .says = {en, es}};
}
Argument surface(const char* name, const char* en, const char* es) {
    return {.name = name, .measure = Measure::Words, .says = {en, es}};
}

// Two columns, key and value, over the defaults. Rows without a key are passed over.
Ruleset readRules(const Arguments& arguments, std::size_t index) {
    const UnitSystem units = arguments.units() == Units::Metric ? UnitSystem::Metric : UnitSystem::US;
    Ruleset rules;
    if (!arguments.given(index)) return rules;
    const Range* cells = arguments.range(index);
    if (cells == nullptr || cells->columns != 2)
        arguments.refuse(index, {"two columns, key and value", "dos columnas, clave y valor"});
    for (std::size_t row = 0; row < cells->rows; ++row) {
        const std::string* key = std::get_if<std::string>(&cells->at(row, 0));
        if (key == nullptr || key->find_first_not_of(" \t") == std::string::npos) continue;
        const Cell& value = cells->at(row, 1);
        if (const double* number = std::get_if<double>(&value)) {
            rules.set(*key, *number, units);
        } else {
            const std::string* text = std::get_if<std::string>(&value);
            rules.set(*key, text == nullptr ? std::string_view() : std::string_view(*text), units);
        }
    }
    return rules;
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
                         .surfaceUp = surfaceNamed(a.text(6), "surface up"),
                         .surfaceDown = surfaceNamed(a.text(7), "surface down"),
                         .roughness = a.roughness(9, pipe)};
    const UnitSystem units = a.units() == Units::Metric ? UnitSystem::Metric : UnitSystem::US;
    return checkRun(facts, readRules(a, 8), units).in(a.language());
}

}  // namespace

std::vector<Function> runFunctions() {
    return {
        {.name = "RUN.DROP",
         .says = {"drop of a run at a slope", "desnivel de un tramo con una pendiente"},
         .arguments = {lengthArgument(),
                       slopeArgument(),
                       {.name = "fittings drop",
                        .measure = Measure::Feet,
                        .says = {"what the fittings need on top", "lo que piden además los accesorios"},
                        .fallback = "0",
                        .optional = true}},
         .measure = Measure::Feet,
         .source = "length x slope + drop of the fittings",
         .example = "RUN.DROP(42; \"1/8 in/ft\")",
         .call = [](const Arguments& a) -> Result {
             return a.answer(runDrop(a.quantity<Length>(0), a.slope(1), a.quantity<Length>(2, {})));
         }},
        {.name = "RUN.SLOPE",
         .says = {"slope of a run between two levels; negative runs uphill",
                  "pendiente de un tramo entre dos cotas; negativa si sube"},
         .arguments = {lengthArgument(),
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
                       pipeArgument()},
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
                       pipeArgument(),
                       {.name = "bedding",
                        .measure = Measure::Inches,
                        .says = {"bedding under the pipe", "cama bajo el tubo"},
                        .fallback = "0",
                        .optional = true}},
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
             {lengthArgument(),
              slopeArgument(),
              pipeArgument(),
              flowArgument(),
              cover("cover up", "cover at the upper end; empty text: exempt",
                    "cobertura en el extremo de arriba; texto vacío: exento"),
              cover("cover down", "cover at the lower end; empty text: exempt",
                    "cobertura en el extremo de abajo; texto vacío: exento"),
              surface("surface up", "lawn, lawn end, bed, walk, drive, street, daylight",
                      "césped, fin de césped, jardinera, andador, entrada de autos, calle, a cielo abierto"),
              surface("surface down", "the same, at the lower end", "lo mismo, en el extremo de abajo"),
              {.name = "rules",
               .measure = Measure::Table,
               .says = {"two columns, key and value, over the defaults",
                        "dos columnas, clave y valor, sobre los valores de fábrica"}},
              roughnessArgument()},
         .returns = Returns::Words,
         .source = "the rules and their sources; Manning's formula",
         .example = "RUN.CHECK(42; \"1%\"; \"4 SDR35\"; 60; 14; 11; \"lawn\"; \"lawn\"; {\"cover.lawn\";10})",
         .call = runCheck},
    };
}

}  // namespace trenchbook::addin
