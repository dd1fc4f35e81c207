// How far a cable must reach along the lines: pipe and bends since the last opening upstream.
//
//     const std::vector<Run> runs = {{.from = "A", .to = "B", .length = Length::feet(30)},
//                                    {.from = "B", .to = "C", .length = Length::feet(20)},
//                                    {.from = "C", .to = "Out", .length = Length::feet(10)}};
//     const std::vector<Node> nodes = {{.name = "B", .turn = Angle::degrees(45)},
//                                      {.name = "C", .kinds = nodeKinds("cleanout")}};
//     sinceOpenings(Network(runs), runs, nodes, Angle::degrees(67.5));
//     // row 1: 50 ft and 45 degrees from the head A, which has no opening; row 2: 10 ft from the cleanout C
//
// Told at the lower end of each run: the longest way up to an opening (cleanout, basin, channel: anything
// that takes a cable) and the most degrees turned on a way, over all branches that join. A way without an
// opening starts at the head of its line, and that is told. A turn at an opening counts for neither side: the
// cable goes in there. Plain sums. That cables follow the flow, and which distances and turns are too much,
// is common practice and local code (rules cleanout.*).
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "trenchbook/core/units.h"
#include "trenchbook/lines/network.h"
#include "trenchbook/lines/node.h"
#include "trenchbook/rules/rules.h"

namespace trenchbook {

struct SinceOpening {
    Length length;
    Angle turned;
    std::size_t sharpTurns = 0;  // single turns above the limit
    bool fromHead = false;       // some way up ends at a head without an opening
};

// One entry a row; none for a blank row, a row at fault, and rows below one whose length or turn is not
// known, down to the next opening. A node that is not listed goes straight on and has no opening; of two
// entries for one node the first counts. A turn above `sharp` is a sharp one. Errors: BadArgument "length"
// when the lengths differ in number from the rows, "turn" below 0.
std::vector<std::optional<SinceOpening>> sinceOpenings(const Network& lines, std::span<const Run> runs,
                                                       std::span<const Node> nodes, Angle sharp);

// The limits of a code (rules cleanout.*).
struct CleanoutLimits {
    Length spacingSmall;  // longest way between cleanouts in pipe up to 4.5 in bore,
    Length spacingLarge;  // and in larger
    Angle turned;         // most turning between cleanouts
    Angle bend;           // a single turn above this wants one,
    Length group;         // unless the last is within this way
};
CleanoutLimits cleanoutLimits(const Ruleset& rules);
// The key of the longest way between cleanouts in this pipe: a cable reaches less far through a small one.
const char* cleanoutSpacingKey(const Pipe& pipe);

struct AskedCleanouts {
    bool atUpperNode = false;
    double along = 0;  // between the nodes; a whole number
    Length first;      // the first of those, from the upper node
};

// How many cleanouts the limits ask beyond the openings there are, each put as far down the line as they
// allow, and counted from there: the fewest along one line. One entry a row; none as in sinceOpenings, and
// where the pipe is not known. Errors: BadArgument "length" (another number of rows), "turn", "rules" (a limit of 0).
//
//     // 120 ft of 4 in pipe from a head without an opening, one every 50 ft: two, the first after 50 ft.
std::vector<std::optional<AskedCleanouts>> askedCleanouts(const Network& lines, std::span<const Run> runs,
                                                          std::span<const Node> nodes,
                                                          const CleanoutLimits& limits);

}  // namespace trenchbook
