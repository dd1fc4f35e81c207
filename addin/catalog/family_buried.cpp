// What stays in the ground: does it float, and does its trench undermine a footing?
#include "catalog/common.h"
#include "trenchbook/ground/flotation.h"
#include "trenchbook/ground/footing.h"

namespace trenchbook::addin {
namespace {

constexpr const char* floatSource =
    "Weight of the water displaced; own weight, concrete (150 lb/cu ft, American Concrete Pipe Association, "
    "Design Data 41) and the soil straight above by their weight under water; no friction";
constexpr const char* footingSource =
    "Line of 45 degrees from the footing's bottom outer edge: Uniform Plumbing Code, 314.1";

Argument inches(const char* name, Text says, Limits limits) {
    return {.name = name, .measure = Measure::Inches, .says = std::move(says), .limits = limits};
}
Argument withDefault(Argument argument, const char* fallback) {
    argument.fallback = fallback;
    argument.optional = true;
    return argument;
}

Argument lengthArgument() {
    return inches("length",
                  {"outside diameter, or one side of a rectangular one",
                   "diámetro exterior, o un lado si es rectangular"},
                  aboveZero);
}
Argument depthArgument() {
    return inches("depth", {"from the ground to the underside", "del terreno a la cara de abajo"}, aboveZero);
}
Argument widthArgument() {
    return withDefault(inches("width",
                              {"other side of a rectangular one; blank for a round one",
                               "otro lado si es rectangular; en blanco si es redonda"},
                              zeroOrMore),
                       "");
}
Argument weightArgument() {
    return {.name = "weight",
            .measure = Measure::Pounds,
            .says = {"its own weight, empty", "su propio peso, vacía"},
            .limits = zeroOrMore};
}
Argument waterDepthArgument() {
    return withDefault(
        inches("water depth", {"ground water over the underside", "agua del suelo sobre la cara de abajo"},
               aboveZero),
        "the depth");
}
Argument soilWeightArgument() {
    return {.name = "soil weight",
            .measure = Measure::PoundsPerCubicFoot,
            .says = {"of soaked soil, with its water", "de la tierra empapada, con su agua"},
            .fallback = "115 lb/cu ft",
            .optional = true,
            .limits = Limits{.least = 62.42796, .greatest = 200, .above = true, .toldByFunction = true}};
}
Argument pipeWeightArgument() {
    return {.name = "pipe weight",
            .measure = Measure::PoundsPerFoot,
            .says = {"weight of the empty pipe", "peso del tubo vacío"},
            .fallback = "0",
            .optional = true,
            .limits = zeroOrMore};
}

// Arguments 0 to 2 are length, depth and weight; the other indexes are told.
Buried basinOf(const Arguments& in, std::size_t width, std::size_t water) {
    const Length length = in.quantity<Length>(0);
    const Length depth = in.quantity<Length>(1);
    const Length across = in.quantity(width, Length{});
    Buried basin{.outside = basinVolume(length, across, depth), .weight = in.quantity<Weight>(2)};
    if (in.given(water)) {
        const Length stands = in.quantity<Length>(water);
        basin.outside = basinVolume(length, across, std::min(stands, depth));
    }
    return basin;
}

Argument level(const char* name, Text says) {
    return {.name = name, .measure = Measure::Feet, .says = std::move(says), .limits = anyLevel};
}

}  // namespace

std::vector<Function> buriedFunctions() {
    return {
        {.name = "FLOAT.UPLIFT",
         .says = {"Force that lifts an empty basin or tank in flooded ground",
                  "Fuerza que levanta un registro o tanque vacío en suelo inundado"},
         .arguments = {lengthArgument(), depthArgument(), widthArgument()},
         .measure = Measure::Pounds,
         .source = floatSource,
         .example = "FLOAT.UPLIFT(18; 30)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(upliftOn(
                 basinVolume(in.quantity<Length>(0), in.quantity(2, Length{}), in.quantity<Length>(1))));
         }},
        {.name = "FLOAT.BASIN",
         .says = {"What holds an empty basin or tank down over what lifts it; below 1 it floats",
                  "Lo que sujeta un registro o tanque vacío entre lo que lo levanta; menos de 1 flota"},
         .arguments = {lengthArgument(), depthArgument(), weightArgument(), widthArgument(),
                       waterDepthArgument(),
                       withDefault(inches("collar",
                                          {"how far a concrete collar stands out around the base",
                                           "cuánto sobresale un collar de concreto alrededor de la base"},
                                          zeroOrMore),
                                   "0"),
                       withDefault(inches("collar thickness",
                                          {"thickness of the collar", "espesor del collar"}, zeroOrMore),
                                   "0"),
                       soilWeightArgument()},
         .source = floatSource,
         .example = "FLOAT.BASIN(18; 30; 40; 0; 30; 6; 6)",
         .call = [](const Arguments& in) -> Result {
             Buried basin = basinOf(in, 3, 4);
             const Collar collar =
                 collarAround(in.quantity<Length>(0), in.quantity(3, Length{}), in.quantity<Length>(1),
                              in.quantity(5, Length{}), in.quantity(6, Length{}));
             basin.concrete = collar.concrete;
             basin.soil = collar.soil;
             basin.soilDensity = in.quantity(7, soakedSoil);
             return flotationFactor(basin);
         }},
        {.name = "FLOAT.CONCRETE",
         .says = {"Concrete cast to an empty basin or tank that keeps it from floating",
                  "Concreto unido a un registro o tanque vacío para que no flote"},
         .arguments = {lengthArgument(),
                       depthArgument(),
                       weightArgument(),
                       widthArgument(),
                       waterDepthArgument(),
                       {.name = "factor",
                        .says = {"what holds down over what lifts, as asked for",
                                 "lo que sujeta entre lo que levanta, según se pida"},
                        .fallback = "1.5",
                        .optional = true,
                        .limits = aboveZero}},
         .measure = Measure::CubicFeet,
         .source = floatSource,
         .example = "FLOAT.CONCRETE(18; 30; 40)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(concreteNeeded(basinOf(in, 3, 4), in.number(5, 1.5)));
         }},
        {.name = "FLOAT.PIPE",
         .says = {"What holds an empty pipe down over what lifts it, in flooded ground; below 1 it floats",
                  "Lo que sujeta un tubo vacío entre lo que lo levanta, en suelo inundado; menos de 1 flota"},
         .arguments = {within(pipeArgument(), stockAlone),
                       inches("cover",
                              {"ground over the outside top of the pipe",
                               "tierra sobre el lomo exterior del tubo"},
                              zeroOrMore),
                       pipeWeightArgument(), soilWeightArgument()},
         .source = floatSource,
         .example = "FLOAT.PIPE(\"6 SDR35\"; 6)",
         .call = [](const Arguments& in) -> Result {
             return pipeFlotationFactor(outsideOf(in.pipe(0)), in.quantity<Length>(1),
                                        in.quantity(2, WeightPerLength{}), in.quantity(3, soakedSoil));
         }},
        {.name = "FLOAT.COVER",
         .says = {"Least cover that keeps an empty pipe from floating in flooded ground",
                  "Menor cobertura con la que un tubo vacío no flota en suelo inundado"},
         .arguments = {within(pipeArgument(), stockAlone),
                       {.name = "factor",
                        .says = {"what holds down over what lifts, as asked for",
                                 "lo que sujeta entre lo que levanta, según se pida"},
                        .fallback = "1.5",
                        .optional = true,
                        .limits = aboveZero},
                       pipeWeightArgument(),
                       soilWeightArgument()},
         .measure = Measure::Inches,
         .source = floatSource,
         .example = "FLOAT.COVER(\"6 SDR35\")",
         .call = [](const Arguments& in) -> Result {
             return in.answer(coverAgainstFloating(outsideOf(in.pipe(0)), in.number(1, 1.5),
                                                   in.quantity(2, WeightPerLength{}),
                                                   in.quantity(3, soakedSoil)));
         }},
        {.name = "FOOTING.CLEARANCE",
         .says =
             {"Trench bottom over the 1:1 line from a footing's bottom outer edge; negative lies below it",
              "Fondo de zanja sobre la línea 1:1 desde el borde inferior exterior de un cimiento; negativo "
              "queda debajo"},
         .arguments =
             {level("footing bottom", {"level of the footing's bottom", "cota del fondo del cimiento"}),
              level("trench bottom", {"level of the trench bottom", "cota del fondo de la zanja"}),
              {.name = "distance",
               .measure = Measure::Feet,
               .says = {"from the footing's outer edge to the near edge of the trench bottom, level",
                        "del borde exterior del cimiento al borde cercano del fondo de zanja, a nivel"},
               .limits = zeroOrMore}},
         .measure = Measure::Feet,
         .source = footingSource,
         .example = "FOOTING.CLEARANCE(98; 97; 2.5)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(
                 footingClearance(in.quantity<Length>(0), in.quantity<Length>(1), in.quantity<Length>(2)));
         }},
        {.name = "FOOTING.DISTANCE",
         .says = {"Least distance from a footing that keeps the trench bottom on its 1:1 line",
                  "Menor distancia a un cimiento con la que el fondo de zanja queda en su línea 1:1"},
         .arguments = {level("footing bottom",
                             {"level of the footing's bottom", "cota del fondo del cimiento"}),
                       level("trench bottom", {"level of the trench bottom", "cota del fondo de la zanja"})},
         .measure = Measure::Feet,
         .source = footingSource,
         .example = "FOOTING.DISTANCE(98; 96)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(footingDistance(in.quantity<Length>(0), in.quantity<Length>(1)));
         }},
    };
}

}  // namespace trenchbook::addin
