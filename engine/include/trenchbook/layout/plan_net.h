// Points of a lot from tapes between them: placed one after the other, then adjusted all at once by least
// squares.
//
//     PlanNet net;
//     net.points = {{.at = PlanPoint{}, .fixed = true},
//                   {.at = PlanPoint{Length::feet(40), {}}, .fixed = true}, {}};
//     net.tapes = {{.from = 0, .to = 2, .length = Length::feet(30)}, {.from = 1, .to = 2, .length = Length::feet(30)}};
//     net.points[2].side = {0, 1, true};    // left of the line from point 0 to point 1
//     placePoints(net).points[2].at->north.feet();    // 22.36
//
// Placed: a point needs two tapes to points that are placed, or one and a turn. Two tapes leave two places,
// mirrored; which of them it is is settled by, together: more tapes, turns, tapes that would go through a
// building, and the side that is told. What stays open is given back as two places, never guessed; so is what
// hangs on it.
//
// Adjusted: the sum of squares of all misfits, each over its usual error, is least (Gauss-Newton on sparse
// normal equations). Typed points are held. A turn counts only for a point that has no more than one tape.
//
// Slips: a tape whose misfit is too large for its usual error, by Baarda's test of residuals (3.29 standard
// deviations, one honest tape in a thousand), is put aside where the others say which one it is; else all that
// may be it are named.
//
// Time and memory grow with the number of tapes where lines are long and lots small: 200 points from 600 tapes
// take a few milliseconds.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "trenchbook/layout/plan_point.h"

namespace trenchbook {

// Which side of the line from `from` to `to` a point lies on, looking that way.
struct PlanSide {
    std::size_t from = 0, to = 0;
    bool left = false;
};

struct PlanStation {
    std::optional<PlanPoint> at = {};  // where it is fixed; ignored else
    bool fixed = false;
    std::optional<PlanSide> side = {};
};

// A level distance between two points or, with `wallEnd`, square from the point `to` to the line through
// `from` and `wallEnd`.
struct PlanTape {
    std::size_t from = 0, to = 0;
    std::optional<std::size_t> wallEnd = {};
    Length length = {};
    Length error = Length::feet(0.1);  // usual error, one standard deviation
    bool sight = false;                // was held in a straight line over ground: not through a building
};

// How a line that comes from `before` turns at `at` towards `after`.
struct PlanTurn {
    std::size_t before = 0, at = 0, after = 0;
    Angle turn = {};                  // 0 straight on
    std::optional<bool> left = {};    // none: to either side
    Angle error = Angle::degrees(5);  // a fitting and a trench are no better
};

struct PlanNet {
    std::vector<PlanStation> points = {};
    std::vector<PlanTape> tapes = {};
    std::vector<PlanTurn> turns = {};
    std::vector<std::vector<std::size_t>> buildings = {};  // corners in order
};

enum class PlacedBy {
    Nothing,    // too little is known
    Hand,       // typed
    Tapes,      // two or more
    Turn,       // one tape and the way the line goes
    TwoPlaces,  // `at` or `other`
};

struct PlacedPoint {
    PlacedBy by = PlacedBy::Nothing;
    std::optional<PlanPoint> at = {}, other = {};
    Length uncertain = {};  // standard error along the worse direction, from the usual errors of the tapes
    bool asked = false;     // of two places: it does not only hang on another such point
    std::size_t known = 0;  // tapes to points that have a place
    bool placed() const { return by == PlacedBy::Hand || by == PlacedBy::Tapes || by == PlacedBy::Turn; }
};

// A tape that does not fit. Where the others do not tell which of several it is, `among` holds them all.
struct PlanSlip {
    std::size_t tape = 0;
    Length off = {};  // typed less drawn: of a tape put aside, by all others; else its residual
    std::vector<std::size_t> among = {};
};

struct PlacedPlan {
    std::vector<PlacedPoint> points = {};
    std::vector<std::optional<Length>> residuals = {};  // a tape's length less that of the drawing
    std::vector<PlanSlip> slips = {};
    std::size_t redundant = 0;  // tapes beyond what places need
    std::optional<double> scatter =
        {};  // of residuals over their usual errors: about 1; none without redundant tapes
};

// Errors: BadArgument "tapes" for a point that is not listed, a tape between a point and itself, or one that
// is not above 0 (a wall's may be 0).
PlacedPlan placePoints(const PlanNet& net);

}  // namespace trenchbook
