// Soil: what the ground takes.
#include "catalog/arguments.h"
#include "catalog/families.h"
#include "trenchbook/ground/soil.h"

namespace trenchbook::addin {

std::vector<Function> soilFunctions() {
    return {
        {.name = "SOIL.RATE",
         .says = {"Design infiltration rate from one reading of a soak hole",
                  "Tasa de infiltración de diseño a partir de una lectura en un hoyo de prueba"},
         .arguments = {{.name = "drop",
                        .measure = Measure::Inches,
                        .says = {"fall of the water in the reading", "descenso del agua en la lectura"},
                        .limits = Limits{.above = true,
                                         .also = {"at most the start depth", "como máximo la altura inicial"},
                                         .toldByFunction = true}},
                       {.name = "minutes",
                        .measure = Measure::Minutes,
                        .says = {"time of the reading", "duración de la lectura"},
                        .limits = aboveZero},
                       {.name = "hole diameter",
                        .measure = Measure::Inches,
                        .says = {"diameter of the hole", "diámetro del hoyo"},
                        .limits = aboveZero},
                       {.name = "start depth",
                        .measure = Measure::Inches,
                        .says = {"water over the hole's bottom, or over the mark, at the start",
                                 "agua sobre el fondo del hoyo, o sobre la marca, al inicio"},
                        .limits = aboveZero},
                       {.name = "safety",
                        .says = {"the tested rate is divided by this",
                                 "la tasa medida se divide entre este factor"},
                        .fallback = "2",
                        .optional = true,
                        .limits = Limits{.least = 1, .greatest = 20}},
                       {.name = "gravel",
                        .measure = Measure::Inches,
                        .says = {"gravel under the mark, added to the start depth",
                                 "grava bajo la marca, se suma a la altura inicial"},
                        .fallback = "0",
                        .optional = true,
                        .limits = zeroOrMore}},
         .measure = Measure::InchesPerHour,
         .source =
             "Inverse borehole (Porchet) with the mean depth: drop x r / (time x (r + 2 x mean depth)), then "
             "divided by the safety factor",
         .example = "SOIL.RATE(1.5; 30; 8; 12)",
         .call = [](const Arguments& in) -> Result {
             const SoakTest test{.drop = in.quantity<Length>(0),
                                 .time = in.quantity<Duration>(1),
                                 .holeDiameter = in.quantity<Length>(2),
                                 .startDepth = in.quantity<Length>(3),
                                 .gravel = in.quantity<Length>(5, Length{})};
             return in.answer(designRate(test, in.number(4, 2)));
         }},
    };
}

}  // namespace trenchbook::addin
