// Head that full pipes lose where there is no box: by a change of size, a bend, a wye.
//
//     transitionLoss(Length::inches(3), Length::inches(4), Flow::gpm(60)).feet();    // increaser: 0.0239
//     bendLoss(Length::inches(4), Flow::gpm(100), Angle::degrees(45)).feet();        // 0.0150
//
// FHWA HEC-22, 3rd edition (2009), 7.1.6. `fittings.h` holds the K of single fittings from other books;
// where both know a piece the larger is the careful choice: HEC-22's bend loss is for long smooth curves of
// the line.
#pragma once

#include <optional>

#include "trenchbook/core/units.h"

namespace trenchbook {

// Sudden enlargement, K of the velocity head before it. `ratio`: diameter after over before, 1 to 3. Tables
// 7-4c and 7-4d, straight between their rows, K = 0 at ratio 1; some values are recalled, not read
// (transition.cpp). Velocity changes K little; outside 2 to 12 ft/s the table's end counts. Errors:
// BadArgument "velocity" (not above 0); OutsideValidity "ratio".
double enlargementK(double ratio, Velocity before);
// Gradual: by the whole angle of the cone, 2 to 60 degrees. Errors: OutsideValidity "cone angle", "ratio".
double enlargementK(double ratio, Angle cone);
// Sudden contraction, K of the velocity head in the smaller pipe, table 7-4e; `ratio` larger over smaller.
double contractionK(double ratio, Velocity smaller);

// From one pipe into the next in the direction of the water; without `cone` sudden. Pipes of equal bore lose
// nothing. Errors: BadArgument "pipe", "next pipe", "flow"; OutsideValidity "next pipe" where the ratio is
// above 3.
Length transitionLoss(Length bore, Length next, Flow flow, std::optional<Angle> cone = std::nullopt);

// Bend in the line, 0.0033 x degrees x V^2/2g (Eq. 7-5). Errors: BadArgument "pipe", "flow", "turn" (0 to
// 90).
Length bendLoss(Length bore, Flow flow, Angle turn);

// A pipe joins without a box (Eq. 7-10; Texas DOT, Hydraulic Design Manual, Eq. 10-36), all running full:
//     (Qo Vo - Qi Vi - Ql Vl cos angle) / (0.5 g (Ao + Ai)) + hi - ho
// `angle` of the side pipe against the line: 45 of a wye, 90 of a tee. Texas gives it for a line that is
// faster below than above the wye. Errors: BadArgument "pipe", "side pipe", "pipe below", "flow", "side
// flow", "angle" (0 to 90); OutsideValidity "side flow" where the sum says that the line gains head.
struct FullPipe {
    Length bore;
    Flow flow;
};
Length junctionLoss(const FullPipe& line, const FullPipe& side, Angle angle, Length boreBelow);

}  // namespace trenchbook
