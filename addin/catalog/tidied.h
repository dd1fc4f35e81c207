// Numbers of a block as every shell hands them out.
#pragma once

namespace trenchbook::addin {

// With twelve digits. Half a hundredth with what a subtraction leaves behind it, 2.0649999999999964, is 2.06 in one
// office and 2.07 in another; twelve digits end before that. What is too small or too large for them stays as it is,
// and so does a NaN.
//
//     tidied(2.0649999999999964);    // 2.065
double tidied(double number);

}  // namespace trenchbook::addin
