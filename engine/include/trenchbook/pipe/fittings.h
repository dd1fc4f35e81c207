// Loss coefficients K of fittings, entrances and exits: head lost = K V2/2g, V the velocity of the full pipe.
//
//     fitting("45 elbow").k;                                                    // 0.5625
//     fittingLoss(Length::inches(3.975), Flow::gpm(100), 0.5625).feet();        // 0.058
//
// Where a source prints a range, K is its middle; `least` and `greatest` keep the range. Printed values of
// different books differ by a factor of two for the same elbow; a line with many bends should be tried with
// both ends. Names are read forgivingly: the words in any order, elbow or bend, "45 deg" or "45", English or
// Spanish.
#pragma once

#include <span>
#include <string_view>

#include "trenchbook/core/units.h"

namespace trenchbook {

struct Fitting {
    std::string_view name;
    double k = 0;
    double least = 0, greatest = 0;
    std::string_view source;
};

std::span<const Fitting> fittings();

// Errors: BadArgument "fitting", naming those that share a word with what was asked.
const Fitting& fitting(std::string_view name);

// Errors: BadArgument "pipe", "flow", "K" below 0.
Length fittingLoss(Length bore, Flow flow, double k);

}  // namespace trenchbook
