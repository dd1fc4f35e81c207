// Head that a pipe under pressure loses to friction, by Hazen and Williams: the pump's discharge pipe.
//
//     hazenWilliamsLoss(Length::inches(2.067), Flow::gpm(40), Length::feet(100), 150).feet();    // 2.64
//
//     loss per 100 ft = 0.2083 (100/C)^1.85 Q^1.85 / d^4.87      Q in gpm, d in inches
// as friction tables of plastic pipe are printed (one filed with a city of Minnesota is reproduced in the tests to its
// last digit). Books round the two exponents differently; 1.852 and 4.8655 give up to 2 % more. C is an empirical
// coefficient of the pipe's inside for water of ordinary temperature: 150 for new plastic (Illinois Administrative
// Code, title 77, part 906), 140 the careful value (an engineering reference's table of schedule 40 plastic).
//
// Errors: BadArgument "pipe", "flow", "length"; "C" outside 60 to 160.
#pragma once

#include "trenchbook/core/units.h"

namespace trenchbook {

inline constexpr double carefulPlasticC = 140;

Length hazenWilliamsLoss(Length bore, Flow flow, Length length, double c = carefulPlasticC);

}  // namespace trenchbook
