// Rain from a pasted frequency table: depths, intensities and design storms.
#include "catalog/rain_table.h"
#include "trenchbook/water/storm.h"

namespace trenchbook::addin {
namespace {

constexpr const char* logLog =
    "Log-log interpolation of the pasted table (FHWA HDS-2, section 2.2); below the shortest duration its "
    "intensity holds";

Argument durationArgument() {
    return {.name = "duration",
            .measure = Measure::Minutes,
            .says = {"how long it rains", "cuánto dura la lluvia"},
            .limits = Limits{.least = 1, .toldByFunction = true}};
}

// Under a minute is no rain that anyone designs for: hours or days were typed.
Duration duration(const Arguments& in, std::size_t index) {
    const Duration given = in.quantity<Duration>(index);
    if (given > Duration{} && given < Duration::minutes(1)) {
        const std::string typed = plain(given.minutes());
        const std::string meant = plain(given.minutes() * 60);
        throw Error(
            Error::Kind::BadArgument, "duration",
            Text{"duration is " + typed + " minutes, under one minute: durations are in minutes; for " +
                     typed + " hours type " + meant + ".",
                 "duration es " + typed +
                     " minutos, menos de un minuto: las duraciones van en minutos; para " + typed +
                     " horas escriba " + meant + "."});
    }
    if (!(given > Duration{})) in.refuse(index, {"1 or more", "1 o más"});
    return given;
}

}  // namespace

std::vector<Function> rainFunctions() {
    // Invented figures in the shape of a published table.
    constexpr const char* exampleTable = "{\"\";2;10|\"5-min\";0.4;0.6|\"60-min\";1.2;1.8|\"24-hr\";2.6;4}";
    const auto example = [&](const std::string& name, const std::string& rest) {
        return name + "(" + exampleTable + "; " + rest + ")";
    };
    return {
        {.name = "RAIN.DEPTH",
         .says = {"Depth of rain of a duration and return period",
                  "Altura de lluvia de una duración y un período"},
         .arguments = {rainTableArgument("table"), durationArgument(), returnArgument()},
         .measure = Measure::Inches,
         .source = logLog,
         .example = example("RAIN.DEPTH", "30; 10"),
         .call = [](const Arguments& in) -> Result {
             return in.answer(rainTable(in, 0).depth(duration(in, 1), in.number(2)));
         }},
        {.name = "RAIN.INTENSITY",
         .says = {"Rain intensity of a duration and return period",
                  "Intensidad de una duración y un período"},
         .arguments = {rainTableArgument("table"), durationArgument(), returnArgument()},
         .measure = Measure::InchesPerHour,
         .source = logLog,
         .example = example("RAIN.INTENSITY", "5; 10"),
         .call = [](const Arguments& in) -> Result {
             return in.answer(rainTable(in, 0).intensity(duration(in, 1), in.number(2)));
         }},
        {.name = "RAIN.FORMULA",
         .says = {"Rain intensity by a formula a/(t + b)^c, as counties print it",
                  "Intensidad por una fórmula a/(t + b)^c, como la publican los condados"},
         .arguments = {durationArgument(),
                       {.name = "a",
                        .measure = Measure::InchesPerHour,
                        .says = {"as printed, for t in minutes and this intensity",
                                 "como se publica, con t en minutos y esta intensidad"},
                        .limits = aboveZero},
                       {.name = "b",
                        .measure = Measure::Minutes,
                        .says = {"added to the duration, as printed",
                                 "se suma a la duración, como se publica"},
                        .limits = zeroOrMore},
                       {.name = "c",
                        .says = {"exponent, as printed", "exponente, como se publica"},
                        .limits = Limits{.greatest = 2}}},
         .measure = Measure::InchesPerHour,
         .source = "The formula itself; its constants hold for the place, return period and durations that "
                   "their source names",
         .example = "RAIN.FORMULA(17; 56.6; 8.6; 0.823)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(formulaIntensity(in.quantity<RainRate>(1), in.quantity<Duration>(2).minutes(),
                                               in.number(3), duration(in, 0)));
         }},
        {.name = "RAIN.STORM",
         .says = {"Design storm in steps: minute at which each step ends, depth in the step",
                  "Tormenta de diseño por pasos: minuto en que termina cada paso, altura del paso"},
         .arguments =
             {rainTableArgument("table"),
              durationArgument(),
              returnArgument(),
              {.name = "step",
               .measure = Measure::Minutes,
               .says = {"length of a step", "largo del paso"},
               .limits = Limits{.above = true,
                                .also = {"an even part of the duration", "una parte exacta de la duración"}}},
              {.name = "shape",
               .measure = Measure::Words,
               .says = {"\"centered\" (alternating blocks), or NRCS 24 hours: \"type I\", \"type IA\", "
                        "\"type II\", \"type III\"",
                        "\"centered\" (bloques alternos), o NRCS de 24 horas: \"type I\", \"type IA\", "
                        "\"type II\", \"type III\""},
               .fallback = "\"centered\"",
               .optional = true}},
         .returns = Returns::NumberBlock,
         .measure = Measure::Inches,
         .columns = "minute, depth (in)",
         .source =
             "Alternating blocks (FHWA HDS-2, example 6.6); NRCS 24-hour distributions (HDS-2, table 6.5)",
         .example = example("RAIN.STORM", "60; 10; 15"),
         .call = [](const Arguments& in) -> Result {
             const Storm storm = designStorm(rainTable(in, 0), duration(in, 1), in.number(2),
                                             in.quantity<Duration>(3), in.text(4, "centered"));
             Numbers block{.columns = 2, .items = {}};
             for (const StormStep& step : storm) {
                 block.items.push_back(in.in(Measure::Minutes, step.end));
                 block.items.push_back(in.in(Measure::Inches, step.depth));
             }
             return block;
         }},
    };
}

}  // namespace trenchbook::addin
