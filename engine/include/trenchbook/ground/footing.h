// A trench beside a footing: does its bottom stay above the line that falls 1:1 from the footing's bottom
// outer edge?
//
//     footingClearance(Length::feet(98), Length::feet(97), Length::feet(2.5)).feet();    // 1.5 over the line
//     footingDistance(Length::feet(98), Length::feet(96)).feet();                        // at least 2 ft away
//
// Below that line of 45 degrees a trench takes the ground that carries the footing (Uniform Plumbing Code,
// 314.1; footings may not lose their lateral support, International Building Code, 1803.1). Counted to the
// near edge of the trench's bottom; soils that stand flatter than 1:1 need more. What lies below is an
// engineer's matter.
#pragma once

#include "trenchbook/core/units.h"

namespace trenchbook {

// Height of the trench bottom over the line; negative below it. `distance` is level, from the footing's
// outer edge to the near edge of the trench bottom. Errors: BadArgument "distance" below 0.
Length footingClearance(Length footingBottom, Length trenchBottom, Length distance);
// Least distance that keeps the trench bottom on the line; 0 where it lies no deeper than the footing.
Length footingDistance(Length footingBottom, Length trenchBottom);

}  // namespace trenchbook
