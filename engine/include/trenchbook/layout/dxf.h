// A drawing as a DXF file, in feet or metres of the lot, its unit said in the header.
//
//     PlanDrawing drawing;
//     drawing.strokes = {{DrawingLayer::Building, {{}, {Length::feet(40), {}}}}};
//     dxfText(drawing, UnitSystem::US).find("$INSUNITS") != std::string::npos;
//
// ASCII DXF of release 12 (AC1009), the oldest that every program reads: POLYLINE, TEXT, one layer a kind of
// thing. $INSUNITS is 2 for feet and 6 for metres, as in the DXF reference of 2000 and later. Letters beyond
// ASCII are written \U+XXXX. Words are as high as `textHeight`.
#pragma once

#include <string>

#include "trenchbook/layout/drawing.h"

namespace trenchbook {

std::string dxfText(const PlanDrawing& drawing, UnitSystem units, Length textHeight = Length::feet(1.5));

}  // namespace trenchbook
