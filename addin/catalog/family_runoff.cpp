// What runs off: surfaces, flow and volume, roofs, and how long the water takes to arrive.
#include "catalog/common.h"
#include "trenchbook/water/runoff.h"
#include "trenchbook/water/surfaces.h"
#include "trenchbook/water/travel.h"

namespace trenchbook::addin {
namespace {

constexpr Limits curveNumbers = {.least = 10, .greatest = 100};

Argument areaArgument() {
    return {.name = "area",
            .measure = Measure::SquareFeet,
            .says = {"area that drains here, in plan", "área que drena aquí, en planta"},
            .limits = aboveZero};
}
Argument coefficientArgument() {
    return {
        .name = "coefficient",
        .says = {"runoff coefficient, a share of the rain", "coeficiente de escorrentía, parte de la lluvia"},
        .limits = someShare};
}
Argument surfaceArgument(const char* english, const char* spanish) {
    return {.name = "surface", .measure = Measure::Words, .says = {english, spanish}};
}
Argument pathArgument() {
    return {.name = "length",
            .measure = Measure::Feet,
            .says = {"length of the path", "largo del recorrido"},
            .limits = aboveZero};
}
Argument groundSlopeArgument() {
    return {.name = "slope",
            .measure = Measure::Slope,
            .says = {"slope of the ground: a fraction, or 2%, 1:50",
                     "pendiente del terreno: fracción, o 2%, 1:50"},
            .limits = laidSlope};
}
Argument rainArgument() {
    return {.name = "rain",
            .measure = Measure::Inches,
            .says = {"depth of rain", "altura de lluvia"},
            .limits = aboveZero};
}

}  // namespace

std::vector<Function> runoffFunctions() {
    return {
        {.name = "SURFACE.COEFFICIENT",
         .says = {"Runoff coefficient of a surface", "Coeficiente de escorrentía de una superficie"},
         .arguments = {surfaceArgument("a name of the surface list, such as roof or concrete",
                                       "un nombre de la lista de superficies, como techo o concreto"),
                       {.name = "which",
                        .measure = Measure::Words,
                        .says = {"\"low\", \"mid\" or \"high\" of the published range",
                                 "\"low\", \"mid\" o \"high\" (bajo, medio, alto) del rango publicado"},
                        .fallback = "\"mid\"",
                        .optional = true}},
         .source = "FHWA HDS-2, 2nd ed. (2002), runoff coefficients for the rational formula; other rows "
                   "name theirs",
         .example = "SURFACE.COEFFICIENT(\"roof\"; \"high\")",
         .call = [](const Arguments& in) -> Result {
             return runoffCoefficient(in.text(0), rangePart(in.text(1, "mid")));
         }},
        {.name = "SURFACE.CURVE",
         .says = {"NRCS curve number of a cover", "Número de curva NRCS de una cobertura"},
         .arguments = {{.name = "cover",
                        .measure = Measure::Words,
                        .says = {"a name of the cover list, such as lawn, good",
                                 "un nombre de la lista de coberturas, como césped bueno"}},
                       {.name = "soil group",
                        .measure = Measure::Words,
                        .says = {"hydrologic soil group A, B, C or D", "grupo hidrológico A, B, C o D"}}},
         .source = "NRCS TR-55 (1986), tables 2-2a and 2-2c",
         .example = "SURFACE.CURVE(\"lawn, good\"; \"B\")",
         .call = [](const Arguments& in) -> Result { return curveNumber(in.text(0), in.text(1)); }},
        {.name = "SURFACE.COMPOSITE",
         .says = {"Curve number of ground with hard surfaces on part of it",
                  "Número de curva de un terreno con superficies duras en una parte"},
         .arguments =
             {{.name = "curve number",
               .says = {"of the pervious part", "de la parte permeable"},
               .limits = curveNumbers},
              {.name = "impervious share",
               .measure = Measure::Share,
               .says = {"hard surfaces, share of the area", "superficies duras, parte del área"},
               .limits = anyShare},
              {.name = "unconnected share",
               .measure = Measure::Share,
               .says =
                   {"share of the hard surfaces that drains onto the pervious part first; counts while they "
                    "are under 30 %",
                    "parte de las superficies duras que drena primero a la parte permeable; cuenta "
                    "mientras sean menos de 30 %"},
               .fallback = "0",
               .optional = true,
               .limits = anyShare}},
         .source = "NRCS NEH 630, chapter 9, eq. 9-1 and 9-2",
         .example = "SURFACE.COMPOSITE(61; 0.2)",
         .call = [](const Arguments& in) -> Result {
             return compositeCurveNumber(in.number(0), in.number(1), in.number(2, 0));
         }},
        {.name = "RUNOFF.FLOW",
         .says = {"Peak flow from an area in a steady rain", "Caudal máximo de un área con lluvia constante"},
         .arguments = {areaArgument(),
                       coefficientArgument(),
                       {.name = "intensity",
                        .measure = Measure::InchesPerHour,
                        .says = {"rain intensity", "intensidad de la lluvia"},
                        .limits = aboveZero}},
         .measure = Measure::Gpm,
         .source =
             "Rational method, Q = C i A, exact (gpm = C x in/hr x sq ft / 96.25); FHWA HDS-2, section 5.2",
         .example = "RUNOFF.FLOW(1200; 0.95; 4)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(rationalFlow(in.quantity<Area>(0), in.number(1), in.quantity<RainRate>(2)));
         }},
        {.name = "RUNOFF.VOLUME",
         .says = {"Volume that runs off an area in a storm",
                  "Volumen que escurre de un área en una tormenta"},
         .arguments = {areaArgument(), coefficientArgument(), rainArgument()},
         .measure = Measure::CubicFeet,
         .source = "V = C x rain x area",
         .example = "RUNOFF.VOLUME(1200; 0.95; 1)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(runoffVolume(in.quantity<Area>(0), in.number(1), in.quantity<Length>(2)));
         }},
        {.name = "RUNOFF.DEPTH",
         .says = {"Depth that runs off, by curve number", "Altura que escurre, por número de curva"},
         .arguments = {rainArgument(),
                       {.name = "curve number",
                        .says = {"NRCS curve number", "número de curva"},
                        .limits = curveNumbers},
                       {.name = "initial share",
                        .says = {"what is held back first, as a share of the storage S",
                                 "lo que se retiene primero, como parte del almacenaje S"},
                        .fallback = "0.2",
                        .optional = true,
                        .limits = Limits{.greatest = 1}}},
         .measure = Measure::Inches,
         .source = "NRCS curve numbers, TR-55 (1986), eq. 2-1 to 2-4; NEH 630, chapter 10",
         .example = "RUNOFF.DEPTH(5; 80)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(runoffDepth(in.quantity<Length>(0), in.number(1), in.number(2, 0.2)));
         }},
        {.name = "ROOF.AREA",
         .says = {"Roof area that counts for its drains", "Área de techo que cuenta para sus bajadas"},
         .arguments = {{.name = "plan",
                        .measure = Measure::SquareFeet,
                        .says = {"roof area in plan", "área del techo en planta"},
                        .limits = aboveZero},
                       {.name = "wall",
                        .measure = Measure::SquareFeet,
                        .says = {"wall that sheds onto the roof", "pared que escurre sobre el techo"},
                        .fallback = "0",
                        .optional = true,
                        .limits = zeroOrMore},
                       {.name = "wall share",
                        .measure = Measure::Share,
                        .says = {"share of the wall that counts", "parte de la pared que cuenta"},
                        .fallback = "0.5",
                        .optional = true,
                        .limits = anyShare},
                       {.name = "pitch factor",
                        .says = {"1 for flat to 3:12, up to 1.3 for 12:12, for wind-driven rain",
                                 "1 para plano a 3:12, hasta 1.3 para 12:12, por lluvia con viento"},
                        .fallback = "1",
                        .optional = true,
                        .limits = Limits{.least = 1, .greatest = 1.5}}},
         .measure = Measure::SquareFeet,
         .source =
             "Plan area x pitch factor + share of wall; half the wall: International Plumbing Code 1106.4",
         .example = "ROOF.AREA(1200; 200)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(
                 roofArea(in.quantity<Area>(0), in.quantity(1, Area{}), in.number(2, 0.5), in.number(3, 1)));
         }},
        {.name = "TRAVEL.SHEET",
         .says = {"Time that sheet flow takes, at most 100 ft (30.48 m)",
                  "Tiempo del flujo en lámina, 100 ft (30.48 m) como máximo"},
         .arguments = {within(pathArgument(), {.greatest = 100, .above = true, .toldByFunction = true}),
                       groundSlopeArgument(),
                       {.name = "roughness",
                        .says = {"n of sheet flow, or a name of its list such as short grass",
                                 "n del flujo en lámina, o un nombre de su lista como césped"},
                        .limits = groundLimits},
                       {.name = "two-year day rain",
                        .measure = Measure::Inches,
                        .says = {"24-hour rain of 2 years", "lluvia de 24 horas de 2 años"},
                        .limits = aboveZero}},
         .measure = Measure::Minutes,
         .source = "TR-55 (1986), eq. 3-3; length limit NRCS NEH 630, chapter 15",
         .example = "TRAVEL.SHEET(60; \"2%\"; \"short grass\"; 3.5)",
         .call = [](const Arguments& in) -> Result {
             const bool named = std::holds_alternative<std::string>(in.raw(2)) && in.given(2);
             const double roughness = named ? sheetRoughness(in.text(2)) : in.number(2);
             return in.answer(
                 sheetTime(in.quantity<Length>(0), in.slope(1), roughness, in.quantity<Length>(3)));
         }},
        {.name = "TRAVEL.SHALLOW",
         .says = {"Time that shallow concentrated flow takes", "Tiempo del flujo concentrado somero"},
         .arguments =
             {pathArgument(),
              groundSlopeArgument(),
              {.name = "surface",
               .says = {"a name of its list such as paved, unpaved, lawn, or the velocity at slope 1 (ft/s, "
                        "metric m/s)",
                        "un nombre de su lista como pavimento, sin pavimento, césped, o la velocidad con "
                        "pendiente 1 (ft/s, métrico m/s)"},
               .limits = aboveZero}},
         .measure = Measure::Minutes,
         .source = "NRCS NEH 630, chapter 15 (2010), table 15-3; TR-55 (1986), figure 3-1",
         .example = "TRAVEL.SHALLOW(120; \"2%\"; \"lawn\")",
         .call = [](const Arguments& in) -> Result {
             const bool named = std::holds_alternative<std::string>(in.raw(2)) && in.given(2);
             const Velocity atUnitSlope =
                 named ? shallowSurface(in.text(2)).atUnitSlope
                       : Velocity::fromSi(in.from(Measure::FeetPerSecond, in.number(2)));
             return in.answer(shallowTime(in.quantity<Length>(0), in.slope(1), atUnitSlope));
         }},
        {.name = "TRAVEL.KIRPICH",
         .says = {"Travel time along a small channel", "Tiempo de recorrido por un cauce pequeño"},
         .arguments = {pathArgument(), groundSlopeArgument()},
         .measure = Measure::Minutes,
         .source = "Kirpich (1940), coefficient 0.0078 (NRCS prints 0.007)",
         .example = "TRAVEL.KIRPICH(500; \"2%\")",
         .call = [](const Arguments& in) -> Result {
             return in.answer(kirpichTime(in.quantity<Length>(0), in.slope(1)));
         }},
    };
}

}  // namespace trenchbook::addin
