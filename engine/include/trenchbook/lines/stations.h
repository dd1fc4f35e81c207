// Where each run lies along its line, and the points at which the crew checks the trench.
//
//     std::vector<Run> runs = {{.line = "street", .from = "A", .to = "B", .length = Length::feet(30)},
//                              {.line = "street", .from = "B", .to = "Out", .length = Length::feet(20)}};
//     stations(Network(runs), runs);
//     // row 0: 50 ft and 20 ft from the outlet, second place; row 1: 20 ft and 0 ft, first place
//
// A station is the distance to the outlet along the pipe. A place counts the runs of one line name (matched
// like node names) from its lower end, 1, 2, 3…; runs without a name make a line of their own together. Plain
// sums.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "trenchbook/core/units.h"
#include "trenchbook/lines/network.h"

namespace trenchbook {

struct RunStation {
    Length up, down;
    std::size_t place = 0;
};

// One entry a row; none for a blank row, a row at fault, and rows upstream of one whose length is missing.
// Errors: BadArgument "length" when the number of runs differs from the network's.
std::vector<std::optional<RunStation>> stations(const Network& lines, std::span<const Run> runs);

// A point on a run: its row and the distance from the run's lower end.
struct Stake {
    std::size_t row = 0;
    Length station;
    Length fromLowerEnd;
};

// In the order of laying, line by line (lines in the order of their first rows) and from the lower end
// uphill: both ends of each run and every full `step` of station between them. Errors: step not above 0, or
// so small that a run would have more than 10,000 stakes.
std::vector<Stake> stakes(const Network& lines, std::span<const Run> runs, Length step);

}  // namespace trenchbook
