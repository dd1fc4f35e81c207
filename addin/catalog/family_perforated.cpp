// Drains that take water from the ground: perforated pipe, underdrains, gravel trenches.
#include "catalog/common.h"
#include "trenchbook/water/perforated.h"

namespace trenchbook::addin {
namespace {

constexpr const char* openings =
    "Cd A sqrt(2 g h) of the free openings; 11.79 d^2 h^0.5 gpm of pressure-distribution tables is Cd 0.6";
constexpr double halfClogged = 0.5;  // of an old pipe: Toronto region's wiki of low impact development

Argument holeArgument(const char* english, const char* spanish) {
    return {.name = "hole", .measure = Measure::Inches, .says = {english, spanish}, .limits = aboveZero};
}
Argument headArgument() {
    return {.name = "head",
            .measure = Measure::Feet,
            .says = {"water over the openings", "agua sobre las aberturas"},
            .limits = zeroOrMore};
}
Argument coefficientArgument() {
    return {.name = "coefficient",
            .measure = Measure::Share,
            .says = {"discharge coefficient of an opening", "coeficiente de descarga de una abertura"},
            .fallback = "0.6",
            .optional = true,
            .limits = someShare};
}
// The openings of a perforated pipe: hole, holes, spacing, length; the slot width stands at the end.
std::vector<Argument> pipeArguments() {
    return {holeArgument("diameter of a hole, or length of a slot",
                         "diámetro de un agujero, o largo de una ranura"),
            {.name = "holes",
             .says = {"openings around the pipe at each place", "aberturas alrededor del tubo en cada lugar"},
             .limits = aboveZero},
            {.name = "spacing",
             .measure = Measure::Inches,
             .says = {"from one place to the next along the pipe",
                      "de un lugar al siguiente a lo largo del tubo"},
             .limits = aboveZero},
            {.name = "length",
             .measure = Measure::Feet,
             .says = {"length of perforated pipe", "longitud de tubo perforado"},
             .limits = zeroOrMore}};
}
Argument slotArgument() {
    return {.name = "slot width",
            .measure = Measure::Inches,
            .says = {"width of a slot; 0 for round holes", "ancho de una ranura; 0 si son agujeros"},
            .fallback = "0",
            .optional = true,
            .limits = zeroOrMore};
}
Perforations perforations(const Arguments& in, std::size_t slot) {
    return {.opening = in.quantity<Length>(0),
            .slotWidth = in.quantity<Length>(slot, Length{}),
            .around = in.number(1),
            .spacing = in.quantity<Length>(2)};
}
std::vector<Argument> with(std::vector<Argument> first, const std::vector<Argument>& rest) {
    first.insert(first.end(), rest.begin(), rest.end());
    return first;
}

}  // namespace

std::vector<Function> perforatedFunctions() {
    return {
        {.name = "PERFORATED.HOLE",
         .says = {"Flow through one round hole under a head", "Caudal por un agujero redondo bajo una carga"},
         .arguments = {holeArgument("diameter of the hole", "diámetro del agujero"), headArgument(),
                       coefficientArgument()},
         .measure = Measure::Gpm,
         .source = openings,
         .example = "PERFORATED.HOLE(0.25; 1)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(
                 holeFlow(in.quantity<Length>(0), in.quantity<Length>(1), in.number(2, openingCoefficient)));
         }},
        {.name = "PERFORATED.OPEN",
         .says = {"Open area of a length of perforated pipe",
                  "Área abierta de una longitud de tubo perforado"},
         .arguments = with(pipeArguments(), {slotArgument()}),
         .measure = Measure::SquareFeet,
         .source = "area of an opening x openings",
         .example = "PERFORATED.OPEN(0.5; 3; 4; 40)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(openArea(perforations(in, 4), in.quantity<Length>(3)));
         }},
        {.name = "PERFORATED.INFLOW",
         .says = {"Most that the openings of a perforated pipe take; the soil may bring less",
                  "Lo más que reciben las aberturas de un tubo perforado; el suelo puede traer menos"},
         .arguments = with(pipeArguments(), {headArgument(),
                                             {.name = "blocked share",
                                              .measure = Measure::Share,
                                              .says = {"share of the openings that is clogged",
                                                       "parte de las aberturas obstruida"},
                                              .fallback = "0.5",
                                              .optional = true,
                                              .limits = anyShare},
                                             coefficientArgument(),
                                             slotArgument()}),
         .measure = Measure::Gpm,
         .source = std::string(openings) +
                   "; half of an old pipe's openings count as clogged (Toronto region's wiki of low impact "
                   "development, flow through perforated pipe)",
         .example = "PERFORATED.INFLOW(0.5; 3; 4; 40; 1)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(perforatedInflow(perforations(in, 7), in.quantity<Length>(3),
                                               in.quantity<Length>(4), in.number(5, halfClogged),
                                               in.number(6, openingCoefficient)));
         }},
        {.name = "UNDERDRAIN.BORE",
         .says = {"Bore that carries an underdrain's flow, with its safety factor, running full",
                  "Diámetro interior que lleva lleno el caudal de un subdrén, con su factor de seguridad"},
         .arguments = {{.name = "flow",
                        .measure = Measure::Gpm,
                        .says = {"water that the soil or the bed brings",
                                 "agua que trae el suelo o el lecho"},
                        .limits = aboveZero},
                       {.name = "slope",
                        .measure = Measure::Slope,
                        .says = {"slope of the underdrain", "pendiente del subdrén"},
                        .fallback = "0.005",
                        .optional = true,
                        .limits = laidSlope},
                       {.name = "safety",
                        .says = {"the flow is multiplied by this, 2 to 10",
                                 "el caudal se multiplica por esto, de 2 a 10"},
                        .fallback = "2",
                        .optional = true,
                        .limits = Limits{.least = 1, .greatest = 100}},
                       {.name = "pipes",
                        .says = {"pipes that share the flow", "tubos que comparten el caudal"},
                        .fallback = "1",
                        .optional = true,
                        .limits = Limits{.least = 1, .greatest = 100, .whole = true}},
                       {.name = "roughness",
                        .says = {"Manning n", "n de Manning"},
                        .fallback = "0.011",
                        .optional = true,
                        .limits = manningLimits}},
         .measure = Measure::Inches,
         .source =
             "Manning, full, solved for the bore; NC State University, underdrains, which prints D = 16 "
             "(Q n / s^0.5)^(3/8), n 0.011, slope 0.5 %, a safety factor of 2 to 10 and at least two "
             "pipes",
         .example = "UNDERDRAIN.BORE(20)",
         .call = [](const Arguments& in) -> Result {
             const double safety = in.number(2, 2), pipes = in.number(3, 1);
             const double n = in.number(4, 0.011);
             const Slope slope = in.given(1) ? in.slope(1) : Slope::percent(0.5);
             return in.answer(underdrainBore(in.quantity<Flow>(0) * (safety / pipes), slope, n));
         }},
        {.name = "GRAVEL.FLOW",
         .says = {"Water that seeps along a trench of gravel without a pipe",
                  "Agua que corre por una zanja de grava sin tubo"},
         .arguments = {{.name = "width",
                        .measure = Measure::Feet,
                        .says = {"width of the gravel", "ancho de la grava"},
                        .limits = aboveZero},
                       {.name = "depth",
                        .measure = Measure::Feet,
                        .says = {"depth of water in the gravel", "altura de agua en la grava"},
                        .limits = aboveZero},
                       slopeArgument(),
                       {.name = "conductivity",
                        .measure = Measure::FeetPerDay,
                        .says = {"hydraulic conductivity of the gravel",
                                 "conductividad hidráulica de la grava"},
                        .limits = aboveZero}},
         .measure = Measure::Gpm,
         .source = "Darcy, K A S: laminar flow; coarse clean gravel carries less than this",
         .example = "GRAVEL.FLOW(1; 1; \"1%\"; 10000)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(gravelFlow(in.quantity<Length>(0), in.quantity<Length>(1), in.slope(2),
                                         in.quantity<Velocity>(3)));
         }},
    };
}

}  // namespace trenchbook::addin
