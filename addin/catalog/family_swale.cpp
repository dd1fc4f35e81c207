// Swales: the open trapezoid or triangle below the outlet.
#include "catalog/common.h"
#include "trenchbook/water/swale.h"

namespace trenchbook::addin {
namespace {

Argument bottomArgument() {
    return {.name = "bottom",
            .measure = Measure::Feet,
            .says = {"width of the bottom; 0 is a V", "ancho del fondo; 0 es en V"},
            .limits = zeroOrMore};
}
Argument sideSlopeArgument() {
    return {.name = "side slope",
            .says = {"run over rise of the sides: 3 is 3 across to 1 up",
                     "horizontal entre vertical de los lados: 3 es 3 a lo ancho por 1 de alto"},
            .limits = zeroOrMore};
}
Argument swaleFlowArgument() {
    return {.name = "flow",
            .measure = Measure::Gpm,
            .says = {"water in the swale", "agua en la cuneta"},
            .limits = zeroOrMore};
}
Argument swaleRoughnessArgument() {
    return {.name = "roughness",
            .says = {"Manning n: mown grass some 0.035 to 0.05, tall grass more",
                     "n de Manning: pasto cortado unos 0.035 a 0.05, pasto alto más"},
            .limits = groundLimits};
}

Swale swaleOf(const Arguments& in, std::size_t bottom) {
    return {.bottom = in.quantity<Length>(bottom), .sideSlope = in.number(bottom + 1)};
}

}  // namespace

std::vector<Function> swaleFunctions() {
    return {
        {.name = "SWALE.CAPACITY",
         .says = {"Flow that a swale carries at a depth", "Caudal que lleva una cuneta a cierta profundidad"},
         .arguments = {bottomArgument(),
                       sideSlopeArgument(),
                       {.name = "depth",
                        .measure = Measure::Feet,
                        .says = {"depth of water", "profundidad del agua"},
                        .limits = aboveZero},
                       slopeArgument(),
                       swaleRoughnessArgument()},
         .measure = Measure::Gpm,
         .source = "Manning's formula, trapezoidal section; Chow, Open-Channel Hydraulics (1959)",
         .example = "SWALE.CAPACITY(2; 3; 0.5; \"1%\"; 0.035)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(
                 swaleCapacity(swaleOf(in, 0), in.quantity<Length>(2), in.slope(3), in.number(4)));
         }},
        {.name = "SWALE.DEPTH",
         .says = {"Depth of uniform flow in a swale", "Profundidad del flujo uniforme en una cuneta"},
         .arguments = {swaleFlowArgument(), bottomArgument(), sideSlopeArgument(), slopeArgument(),
                       swaleRoughnessArgument()},
         .measure = Measure::Feet,
         .source = "Manning's formula, trapezoidal section; Chow, Open-Channel Hydraulics (1959)",
         .example = "SWALE.DEPTH(450; 2; 3; \"1%\"; 0.035)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(swaleDepth(swaleOf(in, 1), in.quantity<Flow>(0), in.slope(3), in.number(4)));
         }},
        {.name = "SWALE.VELOCITY",
         .says = {"Velocity of uniform flow in a swale", "Velocidad del flujo uniforme en una cuneta"},
         .arguments = {swaleFlowArgument(), bottomArgument(), sideSlopeArgument(), slopeArgument(),
                       swaleRoughnessArgument()},
         .measure = Measure::FeetPerSecond,
         .source = "Manning's formula, trapezoidal section; Chow, Open-Channel Hydraulics (1959)",
         .example = "SWALE.VELOCITY(450; 2; 3; \"1%\"; 0.035)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(swaleVelocity(swaleOf(in, 1), in.quantity<Flow>(0), in.slope(3), in.number(4)));
         }},
        {.name = "SWALE.CRITICAL",
         .says = {"Critical depth in a swale: shallower water shoots and scours",
                  "Profundidad crítica en una cuneta: el agua más somera corre rápido y socava"},
         .arguments = {swaleFlowArgument(), bottomArgument(), sideSlopeArgument()},
         .measure = Measure::Feet,
         .source = "Least specific energy, Q2 T = g A3, trapezoidal section; Chow, Open-Channel Hydraulics "
                   "(1959), chapter 4",
         .example = "SWALE.CRITICAL(450; 2; 3)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(swaleCriticalDepth(swaleOf(in, 1), in.quantity<Flow>(0)));
         }},
    };
}

}  // namespace trenchbook::addin
