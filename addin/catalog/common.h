// Arguments that many functions share, described once.
#pragma once

#include "catalog/arguments.h"
#include "catalog/families.h"
#include "trenchbook/pipe/roughness.h"

namespace trenchbook::addin {

// A slope that pipe is laid at.
inline constexpr Limits laidSlope = {.greatest = 1, .above = true, .below = true};
inline Argument within(Argument argument, Limits limits) {
    argument.limits = limits;
    return argument;
}
inline constexpr Limits manningLimits = {.least = pipeRoughness.least, .greatest = pipeRoughness.most};

inline Argument pipeArgument() {
    return {.name = "pipe",
            .measure = Measure::Pipe,
            .says = {"stock name such as 4 SDR35, or a bare bore",
                     "nombre comercial como 4 SDR35, o un diámetro interior"}};
}
inline Argument slopeArgument() {
    return {.name = "slope",
            .measure = Measure::Slope,
            .says = {"fall over length: a fraction, or 1/8 in/ft, 1%, 1:96",
                     "desnivel entre longitud: fracción, o 1/8 in/ft, 1%, 1:96"}};
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
