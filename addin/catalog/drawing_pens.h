// The pens of LAYOUT.DRAWING and where their points stand in its block: strokes of one look stand together, each pen in
// cells of its own, so that a chart's series has a fixed range. Used by the function and by the sheet with the chart.
//
//     const Pen& walls = drawingPens().front();
//     walls.strips.front().rows;      // how many points its first strip has room for, gaps counted
//
// The block is no longer than it must be, since each of its rows costs every opening of a workbook: x and y of short pens
// stand below each other, a long pen has several strips beside each other.
#pragma once

#include <cstddef>
#include <vector>

#include "trenchbook/layout/drawing.h"

namespace trenchbook::addin {

// Rows first to first + rows - 1, from 0, of the columns 2 pair and 2 pair + 1.
struct PenStrip {
    std::size_t pair, first, rows;
};
struct Pen {
    const char* name;
    std::vector<DrawingLayer> layers;  // what it draws; the last pen draws words whatever they name
    std::vector<PenStrip> strips;
};
const std::vector<Pen>& drawingPens();

inline constexpr std::size_t penPairs = 15, penRows = 250;

}  // namespace trenchbook::addin
