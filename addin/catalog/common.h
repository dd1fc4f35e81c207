// Arguments that many functions share, described once.
#pragma once

#include "catalog/arguments.h"
#include "catalog/families.h"
#include "trenchbook/pipe/roughness.h"

namespace trenchbook::addin {

inline Argument within(Argument argument, Limits limits) {
    argument.limits = limits;
    return argument;
}
// Limits whose refusal the function words itself.
constexpr Limits ownWords(Limits limits) {
    limits.toldByFunction = true;
    return limits;
}
inline constexpr Limits manningLimits = {
    .least = pipeRoughness.least, .greatest = pipeRoughness.most, .of = {"Manning n ", "n de Manning "}};

// Grass in shallow water goes far above a pipe's n.
inline constexpr Limits groundLimits = {
    .least = groundRoughness.least, .greatest = groundRoughness.most, .of = {"Manning n ", "n de Manning "}};

inline Argument pipeArgument() {
    return {.name = "pipe",
            .measure = Measure::Pipe,
            .says = {"stock name such as 4 SDR35, or a bare bore",
                     "nombre comercial como 4 SDR35, o un diámetro interior"},
            .limits = stockOrBore};
}
inline Argument slopeArgument() {
    return {.name = "slope",
            .measure = Measure::Slope,
            .says = {"fall over length: a fraction, or 1/8 in/ft, 1%, 1:96",
                     "desnivel entre longitud: fracción, o 1/8 in/ft, 1%, 1:96"},
            .limits = laidSlope};
}
inline Argument roughnessArgument() {
    return {.name = "roughness",
            .measure = Measure::Plain,
            .says = {"Manning n", "n de Manning"},
            .fallback = "the pipe's own",
            .optional = true,
            .limits = manningLimits};
}
inline Argument flowArgument() {
    return {.name = "flow",
            .measure = Measure::Gpm,
            .says = {"water in the pipe", "agua en el tubo"},
            .limits = zeroOrMore};
}

}  // namespace trenchbook::addin
