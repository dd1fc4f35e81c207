// The pens of the drawings and where their points stand in a drawing's block: strokes of one look stand together, each
// pen in cells of its own, so that a chart's series has a fixed range. Used by the functions and by the sheets with the
// charts.
//
//     const Pen& walls = drawingPens().pens.front();
//     walls.strips.front().rows;      // how many points its first strip has room for, gaps counted
//
// A block is no longer than it must be, since each of its rows costs every opening of a workbook: x and y of short pens
// stand below each other, a long pen has several strips beside each other. x of its last row, which no pen has, counts
// the points that had no room.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "catalog/value.h"
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
struct Pens {
    std::size_t pairs, rows;  // of the block, without its last row
    std::vector<Pen> pens;
};
const Pens& drawingPens();
const Pens& profilePens();
const Pens& pitPens();

// What the columns of such a block hold, in words.
std::string penColumns(const Pens& pens);
// Millimeters from the left and from below, whatever the units of the job; a pair without numbers ends a stroke.
Numbers penned(const std::vector<PlanStroke>& strokes, const Pens& pens);

}  // namespace trenchbook::addin
