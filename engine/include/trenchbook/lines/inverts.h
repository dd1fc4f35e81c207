// Inverts of whole lines, from each outlet uphill at the slopes given.
//
//     std::vector<std::string> from = {"A"}, to = {"Out"};
//     std::vector<InvertRow> rows = {{.length = Length::feet(60),
//                                     .bore = Length::inches(3.975),
//                                     .slope = Slope::percent(1),
//                                     .outletInvert = Length::feet(97)}};
//     lineInverts(Network(from, to), rows, Join::Crown)[0].inverts->up.feet();    // 97.6
//
// A row's lower invert is, in this order: the level set by hand; at an outlet row the outlet invert; else it
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

struct InvertRow {
    std::optional<Length> length;        // above 0
    std::optional<Length> bore;          // inside diameter
    std::optional<Slope> slope;          // above 0
    std::optional<Length> outletInvert;  // used on outlet rows
    std::optional<Length> fixedDown;     // set by hand, on any row
    Text trouble;                        // a cell that cannot be used, in words: spoils the row
};

struct InvertAnswer {
    struct Inverts {
        Length up, down;
    };
    std::optional<Inverts> inverts;  // none: blank row, or a fault
    Fault fault;  // of the names, a missing or unusable cell, or the row downstream waited on
};

// One answer a row. A row that cannot be computed spoils those upstream of it, up to the next level set by
// hand. Errors: BadArgument "length" when `rows` differ in number from the network's.
std::vector<InvertAnswer> lineInverts(const Network& lines, std::span<const InvertRow> rows, Join join);

}  // namespace trenchbook
