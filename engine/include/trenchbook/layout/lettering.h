// Words as strokes of a pen, for drawings that are nothing but lines: a chart draws them as sharp as its
// lines.
//
//     const std::vector<PlanStroke> strokes = lettered("S7", {}, Length::millimetres(2));
//     strokes.size();                            // 2: a letter, a figure
//     letteredWidth("S7", Length::millimetres(2)).millimetres();    // 3.33
//
// Capitals and figures of equal width, two thirds of their height, with a third between them. Small letters
// are drawn as capitals, without accents but that of Ñ; a letter that is not known is a box.
#pragma once

#include <string_view>
#include <vector>

#include "trenchbook/layout/drawing.h"

namespace trenchbook {

// From the lower left corner of the first letter.
std::vector<PlanStroke> lettered(std::string_view text, const PlanPoint& at, Length height,
                                 DrawingLayer layer = DrawingLayer::Frame);
Length letteredWidth(std::string_view text, Length height);

}  // namespace trenchbook
