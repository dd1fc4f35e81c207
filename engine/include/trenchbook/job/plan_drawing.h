// The plan of a job as a drawing: buildings, lot lines and what else stands there, lines by size with arrows
// the way the water flows, nodes, pit and crossings.
//
//     Job job;                        // as readJob() fills it
//     const PlanDrawing drawing = drawingOf(job, 120);    // signs in the size for 1 in = 10 ft
//     drawing.strokes.size();
//
// Only what has a place is drawn; an outline with a corner that has none is left open.
#pragma once

#include "trenchbook/job/job.h"
#include "trenchbook/layout/drawing.h"

namespace trenchbook {

// `tags`, by row of Nodes: written behind their names.
PlanDrawing drawingOf(const Job& job, double scale, const std::vector<std::string>& tags = {});
// At the largest usual scale at which it fits: signs have the size that this scale asks for.
struct ScaledDrawing {
    PlanDrawing drawing;
    PaperPlace paper;
};
// Errors: of onPaper().
ScaledDrawing drawingFor(const Job& job, Length width, Length height,
                         const std::vector<std::string>& tags = {});

// Where north is on the drawing, clockwise from up: what is typed, else by the longitude and latitude of two
// points; none where neither is known.
std::optional<Angle> northOnDrawing(const Job& job, std::optional<Angle> typed = {});

// Everything that stands on the paper, in places on the paper: the drawing, its words lettered 2 mm high (as
// 8 point) where they hide least, below it a scale bar with the scale, and an arrow where north is known.
//
// Errors: of onPaper(), for a height that leaves no room over the bar.
// The paper that they lie on, the strip of the bar taken off its height.
PaperPlace paperOf(const Job& job, Length width, Length height);
std::vector<PlanStroke> paperStrokes(const Job& job, Length width, Length height,
                                     std::optional<Angle> north = {},
                                     const std::vector<std::string>& tags = {});

}  // namespace trenchbook
