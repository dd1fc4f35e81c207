// Rock pits: what they hold, how long they take to empty, what a storm does to them.
#include "catalog/arguments.h"
#include "catalog/families.h"
#include "trenchbook/pit.h"

namespace trenchbook::addin {
namespace {

Argument lengthArgument() {
    return {.name = "length", .measure = Measure::Feet, .says = {"length of the pit", "largo del pozo"}};
}
Argument widthArgument() {
    return {.name = "width", .measure = Measure::Feet, .says = {"width of the pit", "ancho del pozo"}};
}
Argument rockDepthArgument() {
    return {.name = "rock depth",
            .measure = Measure::Feet,
            .says = {"rock from the bottom up to where it overflows",
                     "piedra desde el fondo hasta donde rebosa"}};
}
Argument voidsArgument() {
    return {.name = "voids",
            .measure = Measure::Share,
            .says = {"share of the rock's volume that takes water",
                     "parte del volumen de piedra que recibe agua"},
            .fallback = "0.4",
            .optional = true};
}
Argument rateArgument() {
    return {.name = "rate",
            .measure = Measure::InchesPerHour,
            .says = {"design infiltration rate of the soil", "tasa de infiltración de diseño del suelo"}};
}
Argument sideShareArgument() {
    return {.name = "side share",
            .measure = Measure::Share,
            .says = {"share of the wetted walls that counts", "parte de las paredes mojadas que cuenta"},
            .fallback = "0",
            .optional = true};
}
Argument areaTimesCArgument() {
    return {.name = "area x C",
            .measure = Measure::SquareFeet,
            .says = {"area that drains here times its runoff coefficient",
                     "área que drena aquí por su coeficiente de escorrentía"}};
}

constexpr double defaultVoids = RockPit{}.voids;
constexpr double defaultSideShare = RockPit{}.sideShare;

}  // namespace

std::vector<Function> pitFunctions() {
    return {
        {.name = "PIT.ROCK",
         .says = {"Rock that holds a volume of water", "Piedra que retiene un volumen de agua"},
         .arguments = {{.name = "hold",
                        .measure = Measure::CubicFeet,
                        .says = {"water to hold", "agua por retener"}},
                       voidsArgument(),
                       {.name = "pipe inside",
                        .measure = Measure::CubicFeet,
                        .says = {"water that the pipe in the rock holds itself",
                                 "agua que cabe en el tubo dentro de la piedra"},
                        .fallback = "0",
                        .optional = true}},
         .measure = Measure::CubicYards,
         .source = "(hold - pipe inside) / voids",
         .example = "PIT.ROCK(140; 0.4)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(rockToHold(in.quantity<Volume>(0), in.number(1, defaultVoids),
                                         in.quantity<Volume>(2, Volume{})));
         }},
        {.name = "PIT.STORAGE",
         .says = {"Water that a pit holds when full", "Agua que retiene un pozo lleno"},
         .arguments = {lengthArgument(), widthArgument(), rockDepthArgument(), voidsArgument()},
         .measure = Measure::CubicFeet,
         .source = "length x width x depth x voids",
         .example = "PIT.STORAGE(20; 6; 3)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(storage({.length = in.quantity<Length>(0),
                                       .width = in.quantity<Length>(1),
                                       .rockDepth = in.quantity<Length>(2),
                                       .voids = in.number(3, defaultVoids)}));
         }},
        {.name = "PIT.DRAINTIME",
         .says = {"Hours from full to empty", "Horas de lleno a vacío"},
         .arguments = {lengthArgument(), widthArgument(), rockDepthArgument(), rateArgument(),
                       voidsArgument(), sideShareArgument()},
         .measure = Measure::Hours,
         .source = "t = n A / (f s P) x ln(1 + s P h / A): bottom, and walls while they are wet; drainage "
                   "time with "
                   "side flow, LID guide of the Sustainable Technologies Evaluation Program",
         .example = "PIT.DRAINTIME(20; 6; 3; 0.5)",
         .call = [](const Arguments& in) -> Result {
             const RockPit pit{.length = in.quantity<Length>(0),
                               .width = in.quantity<Length>(1),
                               .rockDepth = in.quantity<Length>(2),
                               .voids = in.number(4, defaultVoids),
                               .sideShare = in.number(5, defaultSideShare)};
             return in.answer(drainTime(pit, in.quantity<SoilRate>(3)));
         }},
        {.name = "PIT.RAINHELD",
         .says = {"Rain that fills a storage", "Lluvia que llena un almacenamiento"},
         .arguments = {{.name = "storage",
                        .measure = Measure::CubicFeet,
                        .says = {"water that the pit holds", "agua que retiene el pozo"}},
                       areaTimesCArgument()},
         .measure = Measure::Inches,
         .source = "storage / (area x C)",
         .example = "PIT.RAINHELD(144; 1300)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(rainHeld(in.quantity<Volume>(0), in.quantity<Area>(1)));
         }},
    };
}

}  // namespace trenchbook::addin
