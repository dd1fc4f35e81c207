// A drawing on the globe, where the longitude and latitude of two of its points are known: GeoJSON (RFC
// 7946).
//
//     const std::vector<GeoPoint> known = {
//         {{}, Angle::degrees(-93.1), Angle::degrees(45)},
//         {{Length::metres(30), {}}, Angle::degrees(-93.09962), Angle::degrees(45)}};
//     const GeoFit fit = geoFit(known);
//     fit.longitude({}).degrees();    // -93.1
//     fit.worst.metres();             // how far the points typed and the drawing disagree
//
// The drawing is turned and moved, never stretched, to lie best on the points (least squares); degrees are
// turned into metres by the radii of curvature of WGS 84 at their middle, right to a centimetre over a lot. A
// telephone's place is good to several metres: `worst` tells.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "trenchbook/layout/drawing.h"

namespace trenchbook {

struct GeoPoint {
    PlanPoint at = {};
    Angle longitude = {}, latitude = {};
};

struct GeoFit {
    PlanPoint middle = {};  // of the drawing
    Angle longitudeThere = {}, latitudeThere = {};
    Angle turned = {};  // of the drawing's north, clockwise from true north
    Length worst = {};  // largest distance between a point typed and the drawing laid on it

    Angle longitude(const PlanPoint& at) const;
    Angle latitude(const PlanPoint& at) const;
};

// Errors: BadArgument "points" for fewer than two, or all in one place.
GeoFit geoFit(std::span<const GeoPoint> points);

// One feature a stroke, with its layer and name: closed ones are polygons, counter-clockwise, open ones
// lines; labels are points. Degrees with 8 decimals, a millimetre.
std::string geoJson(const PlanDrawing& drawing, const GeoFit& fit);

}  // namespace trenchbook
