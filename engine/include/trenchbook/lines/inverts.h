// Inverts of whole lines, from each outlet uphill at the slopes given.
//
//     const std::vector<Run> runs = {{.from = "A", .to = "Out", .length = Length::feet(60),
//                                     .pipe = stockPipe("4 SDR35"), .slope = Slope::percent(1),
//                                     .outletLevel = Length::feet(97)}};
//     lineInverts(Network(runs), runs, Join::Crown)[0].value->up.feet();    // 97.6
//
// A row whose inverts are both known keeps them. Else a row's lower invert is, in this order: the level set by hand; at an outlet row the outlet invert; else it
// joins the row downstream by crown (inside tops on one level, so that the larger pipe does not back water up
// into the smaller) or by invert. It never joins below the invert of the pipe that carries it on. The upper
// invert is the lower one + slope x length. Exact arithmetic; each row depends on the rows downstream of it
// alone.
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "trenchbook/core/units.h"
#include "trenchbook/lines/network.h"

namespace trenchbook {

enum class Join { Crown, Invert };
// "crown" or "invert". Errors: BadArgument "join".
Join joinNamed(std::string_view name);

struct Inverts {
    Length up, down;
};

// One answer a row. A row that cannot be computed spoils those upstream of it, up to the next level set by
// hand. Errors: BadArgument "length" when `runs` differ in number from the network's.
std::vector<Worked<Inverts>> lineInverts(const Network& lines, std::span<const Run> runs, Join join);

}  // namespace trenchbook
