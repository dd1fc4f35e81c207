// Reading and writing what people say: tape lengths and slopes.
#include "catalog/arguments.h"
#include "catalog/families.h"
#include "trenchbook/core/tape.h"

namespace trenchbook::addin {
namespace {

// Parts of an inch that tapes are marked in.
constexpr double inchParts[] = {1, 2, 4, 8, 16, 32, 64};

}  // namespace

std::vector<Function> tapeFunctions() {
    return {
        {.name = "TAPE.FEET",
         .says = {"A tape reading as a number of feet", "Una lectura de cinta como número de pies"},
         .arguments = {{.name = "text",
                        .measure = Measure::Feet,
                        .says = {"5' 6-1/2\", 5-6 1/2, 66 1/2 in, 12.4 ft, 3.5 m, or a number of feet",
                                 "5' 6-1/2\", 5-6 1/2, 66 1/2 in, 12.4 ft, 3.5 m, o un número de pies"},
                        .limits = Limits{.least = -unlimited, .also = {"any length", "cualquier longitud"}}}},
         .measure = Measure::Feet,
         .source = "Foot of 0.3048 m (international yard and pound agreement, 1959)",
         .example = "TAPE.FEET(\"5' 6-1/2\"\"\")",
         .call = [](const Arguments& in) -> Result { return in.answer(in.quantity<Length>(0)); }},
        {.name = "TAPE.TEXT",
         .says = {"A length as it is read on a tape, to the nearest part of an inch",
                  "Una longitud como se lee en la cinta, a la parte de pulgada más cercana"},
         .arguments = {{.name = "feet",
                        .measure = Measure::Feet,
                        .says = {"length", "longitud"},
                        .limits = Limits{.least = -1e9, .greatest = 1e9}},
                       {.name = "fraction",
                        .says = {"parts of an inch", "partes de pulgada"},
                        .fallback = "8",
                        .optional = true,
                        .limits = Limits{.oneOf = inchParts}}},
         .returns = Returns::Words,
         .source = "Foot of 0.3048 m (international yard and pound agreement, 1959)",
         .example = "TAPE.TEXT(5.55)",
         .speaks = false,
         .call = [](const Arguments& in) -> Result {
             return tapeText(in.quantity<Length>(0), static_cast<int>(in.number(1, 8)));
         }},
        {.name = "SLOPE.READ",
         .says = {"A slope, as the trade writes it, as a fraction",
                  "Una pendiente, como la escribe el oficio, en fracción"},
         .arguments = {{.name = "slope",
                        .measure = Measure::Slope,
                        .says = {"1/8 in/ft, 1%, 1:96, 1 in 96, 10 mm/m, or a fraction",
                                 "1/8 in/ft, 1%, 1:96, 1 en 96, 10 mm/m, o una fracción"},
                        .limits = Limits{.least = -unlimited, .also = {"any slope", "cualquier pendiente"}}}},
         .measure = Measure::Slope,
         .source = "Fall over length; 12 inches to the foot",
         .example = "SLOPE.READ(\"1/8 in/ft\")",
         .call = [](const Arguments& in) -> Result { return in.answer(in.slope(0)); }},
        {.name = "SLOPE.TEXT",
         .says = {"A slope as the trade writes it", "Una pendiente como la escribe el oficio"},
         .arguments = {{.name = "slope",
                        .measure = Measure::Slope,
                        .says = {"a fraction, or text such as 1%", "una fracción, o texto como 1%"},
                        .limits = Limits{.least = -1e6, .greatest = 1e6}},
                       {.name = "style",
                        .measure = Measure::Words,
                        .says = {"\"in/ft\" (nearest 1/16, ~ when not exact), \"%\" or \"1 in\"",
                                 "\"in/ft\" (al 1/16 más cercano, ~ si no es exacto), \"%\" o \"1 in\""},
                        .fallback = "\"in/ft\"",
                        .optional = true}},
         .returns = Returns::Words,
         .source = "Fall over length; 12 inches to the foot",
         .example = "SLOPE.TEXT(0.0104; \"1 in\")",
         .speaks = false,
         .call = [](const Arguments& in) -> Result {
             return slopeText(in.slope(0), slopeStyle(in.text(1, "in/ft")));
         }},
    };
}

}  // namespace trenchbook::addin
