// A drawing to scale as a chart: a series a strip of a pen, over the cells of the block that JOB.PROFILE or LAYOUT.DRAWING
// fills.
//
//     Chart plan = penChart("drawing_strokes", addin::drawingPens(), looks, 252, 136);
#pragma once

#include "catalog/drawing_pens.h"
#include "kit/model.h"

namespace trenchbook::sheets {

struct PenLook {
    unsigned colour = 0;
    double width = 0.2;  // mm
    Chart::Dash dash = Chart::Dash::None;
};

// `looks` in the order of the pens; width and height in mm on paper.
Chart penChart(const std::string& block, const addin::Pens& pens, const std::vector<PenLook>& looks,
               int width, int height);
// The block on Workings; its columns are x1, y1, x2, y2 and so on.
Block penBlock(const std::string& name, const std::string& formula, const addin::Pens& pens,
               const char* says);
// A formula: what is said under the chart where the block had no room for all points, else empty.
std::string penLeftOut(const std::string& block);

}  // namespace trenchbook::sheets
