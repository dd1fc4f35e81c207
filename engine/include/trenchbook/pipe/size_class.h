// Which sizes and kinds of pipe go by which row of Rules: sizes between two rows go by the smaller one.
//
//     leastSlopeKey(5);                  // "slope.min.4in"
//     trenchWidthKey(6);                 // "trench.width.6in"
//     glueJointsKey(10);                 // "glue.joints.8in"
//     pipeKindKey(stockPipe("4 SDR35")); // "sdr35"
//
// `nominal` is the number in front of the stock name, in inches; for a bare bore its inside diameter.
#pragma once

#include <string>

#include "trenchbook/pipe/stock.h"

namespace trenchbook {

// Least slope. Below 3: the row of 2 in.
const char* leastSlopeKey(double nominal);
// Of a pipe: that of its size; perforated pipe has its own.
const char* leastSlopeRule(const Pipe& pipe);
// Width of the trench. Below 6: the row of 4 in.
const char* trenchWidthKey(double nominal);
// Joints that a pint of cement makes. Below 4: the row of 3 in.
const char* glueJointsKey(double nominal);

// "sdr35" of "4 SDR35": what the rules for a kind of pipe are named by; empty for a bare bore.
std::string pipeKindKey(const Pipe& pipe);

}  // namespace trenchbook
