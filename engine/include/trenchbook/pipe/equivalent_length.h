// Fittings of a pressure pipe as feet of straight pipe that lose as much: what a pump's discharge pipe is made of.
//
//     equivalentLength("90 elbow", 2).feet();        // 9
//     equivalentLength("check valve", 1.5).feet();   // 13
//
// For plastic fittings by the nominal size of the pipe in inches, as a pump maker's worksheet prints them. Another
// maker prints about half for elbows; the larger are the careful ones. Sizes that the worksheet lacks, and one entry
// that is misprinted there, are refused.
//
// Errors: BadArgument "fitting" for an unknown one; OutsideValidity "size" where no length is printed.
#pragma once

#include <span>
#include <string_view>

#include "trenchbook/core/units.h"

namespace trenchbook {

struct PressureFitting {
    std::string_view name, spanish;
    Length lengths[6];  // for 1-1/4, 1-1/2, 2, 2-1/2, 3 and 4 in; 0 where none is printed
};
std::span<const PressureFitting> pressureFittings();

Length equivalentLength(std::string_view fitting, double nominalInches);

}  // namespace trenchbook
