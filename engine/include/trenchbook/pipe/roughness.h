// Manning n that a job may give: the range of a pipe or channel, and of grass and ground under shallow water.
//
//     pipeRoughness.holds(0.011);                            // true
//     pipeRoughness.words().in(Language::English);           // "Manning n from 0.005 to 0.5"
//
// From half of the smoothest that tables print (glass and plastic, 0.009 to 0.010) to far beyond the roughest pipe or
// ditch; grass in water shallower than its blades goes up to 0.8 (TR-55, 1986, table 3-1). The formulas themselves
// take any n above 0: these limits catch a figure in the wrong cell.
#pragma once

#include "trenchbook/core/text.h"

namespace trenchbook {

struct RoughnessRange {
    double least, most;

    constexpr bool holds(double n) const { return n >= least && n <= most; }
    // What is allowed, for a refusal.
    Text words() const {
        return {"Manning n from " + plain(least) + " to " + plain(most),
                "n de Manning de " + plain(least) + " a " + plain(most)};
    }
};
inline constexpr RoughnessRange pipeRoughness{0.005, 0.5};
inline constexpr RoughnessRange groundRoughness{0.005, 1};

}  // namespace trenchbook
