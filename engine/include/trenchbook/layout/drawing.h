// A drawing as lines and words in lot coordinates, and the usual scale at which it fits a sheet of paper.
//
//     PlanDrawing drawing;
//     drawing.strokes = {{DrawingLayer::Building, {{}, {Length::feet(70), {}}, {Length::feet(70), Length::feet(60)}}}};
//     const PaperPlace paper = onPaper(drawing, Length::inches(7.5), Length::inches(8), UnitSystem::US);
//     paper.scale;                                  // 120: 1 in = 10 ft
//     paper.name.en;                                // "1 in = 10 ft"
//     paper.of(drawing.strokes[0].points[1]).east.inches();    // where it lies on the paper, from the lower left
//
// What is drawn in the size of the paper (arrows, marks of nodes, words) is given in paper sizes and hangs on
// the scale: drawingOf() in job/plan_drawing.h makes it for one scale.
#pragma once

#include <string>
#include <vector>

#include "trenchbook/core/text.h"
#include "trenchbook/core/unit.h"
#include "trenchbook/layout/plan_point.h"

namespace trenchbook {

enum class DrawingLayer {
    Building,
    LotLine,
    Walk,
    Drive,
    Pool,
    Septic,
    Well,
    Tree,
    Fence,
    Mark,
    Pit,
    PipeSmall,   // below 6 in
    PipeMiddle,  // 6 in and 8 in
    PipeLarge,   // above
    PipeThere,   // lies there already
    Flow,        // arrows
    Node,
    Crossing,
    Ground,  // seen from the side, with what follows
    Water,
    Limit,    // least cover
    Planned,  // the cheapest plan
    Laid,     // as measured after the work
    Grid,
    Frame  // north arrow, scale bar, letters
};
inline constexpr std::size_t drawingLayerCount = 25;
// In capital letters without blanks, as drawing programs like it: "LOT-LINE".
const char* layerName(DrawingLayer layer);

struct PlanStroke {
    DrawingLayer layer = DrawingLayer::Mark;
    std::vector<PlanPoint> points = {};
    bool closed = false;
    std::string name = {};  // what it is: "house", "S1-S2"
};
struct PlanLabel {
    DrawingLayer layer = DrawingLayer::Mark;
    PlanPoint at = {};  // its lower left corner, where nothing is in the way
    std::string text = {};
    // What it names, so that it may move around it: a point, the middle of an outline, or a line, along which it is
    // then written.
    enum class Names { Point, Outline, Line } names = Names::Point;
    std::vector<PlanPoint> of = {};  // the point, the middle, both ends
};
struct PlanDrawing {
    std::vector<PlanStroke> strokes = {};
    std::vector<PlanLabel> labels = {};
};

struct PaperPlace {
    double scale = 0;  // lengths on the lot over lengths on paper
    Text name = {};    // "1 in = 10 ft", "1:100"
    Length width = {}, height = {};
    PlanPoint center = {};  // of the lot's drawing: lies in the middle of the paper

    PlanPoint of(const PlanPoint& onLot) const;
    PlanPoint back(const PlanPoint& onPaper) const;
};

// The longest side of printed sheets is 1,189 mm (A0, ISO 216) and 44 in (E, ASME Y14.1).
inline constexpr Length largestPaper = Length::metres(1.3);

// The largest of the usual scales at which all strokes lie on the paper: 1 in = 5, 10, 20, 30, 40, 50, 60, 80
// or 100 ft and hundreds more; 1:50, 100, 200, 250, 500, 1000 and thousands more. Errors: BadArgument "width"
// or "height" where the paper is not above 0 or over largestPaper; "drawing" where nothing is drawn.
PaperPlace onPaper(const PlanDrawing& drawing, Length width, Length height, UnitSystem units);
// The least of those scales that is no less than `needed`: usualScale(100, UnitSystem::US) is 120.
double usualScale(double needed, UnitSystem units);
// "1 in = 10 ft", "1:100".
std::string scaleName(double scale, UnitSystem units);

}  // namespace trenchbook
