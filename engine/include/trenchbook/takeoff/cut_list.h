// The cut list: which piece of pipe comes out of which stick, several kinds of pipe at once.
//
//     std::vector<PieceToCut> pieces = {{"PIPE-4SDR35", Length::feet(21), Length::feet(10)},
//                                       {"PIPE-4SDR35", Length::feet(9), Length::feet(10)}};
//     CutList list = cutList(pieces, Length::inches(0.125));
//     list.rows[0].many;         // 2: whole sticks of the 21 ft run
//     list.sticks[0].count;      // 4
//
// Pieces of one kind share sticks; each kind is planned by cutSticks() (sticks.h, with its limits and its
// accuracy).
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "trenchbook/core/units.h"

namespace trenchbook {

struct PieceToCut {
    std::string kind;  // what it is cut from
    Length length;     // above 0
    Length stock;      // length of a stick; one for all pieces of a kind
};

// A piece of a stick; the whole sticks of one long piece share a row.
struct CutRow {
    std::size_t piece = 0;                // index in the list given
    std::size_t stick = 0;                // the first of them, numbered from 1 within its kind
    std::size_t many = 1;                 // sticks
    Length length;                        // of each
    std::optional<Length> leftOver = {};  // of the stick, on its last row
};

struct SticksOfKind {
    std::string kind;
    std::size_t count = 0;
    std::size_t fewest = 0;  // proved: no plan has fewer
};

struct CutList {
    std::vector<CutRow> rows = {};  // kinds in the order of their first piece
    std::vector<SticksOfKind> sticks = {};
};

// Errors: BadArgument "stock" where a kind is given two lengths, and those of cutSticks().
CutList cutList(std::span<const PieceToCut> pieces, Length kerf = Length::inches(0.125));

}  // namespace trenchbook
