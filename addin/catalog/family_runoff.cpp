// What runs off: surfaces, flow and volume, roofs, and how long the water takes to arrive.
#include "catalog/arguments.h"
#include "catalog/families.h"
#include "trenchbook/runoff.h"

namespace trenchbook::addin {
namespace {

Argument areaArgument() {
    return {.name = "area",
            .measure = Measure::SquareFeet,
            .says = {"area that drains here, in plan", "área que drena aquí, en planta"}};
}
Argument coefficientArgument() {
    return {.name = "coefficient",
            .says = {"runoff coefficient, a share of the rain from 0 to 1",
                     "coeficiente de escorrentía, parte de la lluvia de 0 a 1"}};
}
Argument rainArgument() {
    return {.name = "rain", .measure = Measure::Inches, .says = {"depth of rain", "altura de lluvia"}};
}

}  // namespace

std::vector<Function> runoffFunctions() {
    return {
        {.name = "RUNOFF.FLOW",
         .says = {"Peak flow from an area in a steady rain", "Caudal máximo de un área con lluvia constante"},
         .arguments = {areaArgument(),
                       coefficientArgument(),
                       {.name = "intensity",
                        .measure = Measure::InchesPerHour,
                        .says = {"rain intensity", "intensidad de la lluvia"}}},
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
    };
}

}  // namespace trenchbook::addin
