// What a lot's drawing is made of, as noted: points with their ties, tapes between them; and what comes of
// it.
//
//     LotPoint corner{.name = "house N", .what = LotThing::Building, .object = "house",
//                     .east = Length::feet(0), .north = Length::feet(30), .blank = false};
//     lotThingWord(corner.what).en;    // "building"
//
// Filled by readJob() (job/read.h); drawn by drawLot() (job/draw_lot.h).
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "trenchbook/core/text.h"
#include "trenchbook/layout/plan_distance.h"
#include "trenchbook/layout/plan_net.h"
#include "trenchbook/lines/run.h"

namespace trenchbook {

// In the order of the words that the sheet offers.
enum class LotThing { NotSaid, Building, LotLine, Walk, Drive, Pool, Septic, Well, Tree, Fence, Pit, Mark };
inline constexpr std::size_t lotThingCount = 12;
const Text& lotThingWord(LotThing thing);  // "lot line"; empty where nothing is said

enum class Hand { NotSaid, Left, Right };

// A corner, a tree, a mark; or a node again, with more ties. Corners of one object are joined in their order.
struct LotPoint {
    std::string name = {};
    LotThing what = LotThing::NotSaid;
    std::string object = {};  // that it is a corner of
    std::optional<Length> east = {}, north = {};
    std::array<std::string, 3> ties = {};  // "house N 31.5": a point and the distance to it
    Hand side = Hand::NotSaid;             // of the line from its first tie's point to its second's
    Hand turns = Hand::NotSaid;            // which way the line turns here
    std::optional<Angle> longitude = {}, latitude = {};
    bool blank = true;
    std::vector<Unusable> unusable = {};
};

// A distance between two points; with `wallEnd`, square from `to` to the wall from `from` to there.
struct LotTape {
    std::string from = {}, to = {}, wallEnd = {};
    std::optional<Length> length = {};
    bool blank = true;
    std::vector<Unusable> unusable = {};
};

// Standard error beyond which a place is called weak.
inline constexpr Length weakPlace = Length::feet(1);

// A tape as it is noted and as it is drawn.
struct DrawnTape {
    std::optional<Length> typed = {}, residual = {};  // typed less drawn
    bool slip = false;                                // it is one, or may be
    Text trouble = {};                                // why it is not used
};

struct DrawnPlace {
    PlacedPoint place;
    std::size_t tapes = 0;  // that lead to a point with a place
    Text says = {};         // how it is known; what to tape next
};

// The nearest of each kind; none where no such thing is drawn, or not all of it.
struct LotNear {
    std::optional<Length> building = {}, lotLine = {}, walk = {}, pool = {}, septic = {}, well = {},
                          tree = {};
};

struct LotShape {
    LotThing thing = LotThing::NotSaid;
    std::string name = {};
    PlanShape shape;       // of the corners that have a place
    bool complete = true;  // all of them have
};

struct DrawnRun {
    std::optional<PlanPoint> from = {}, to = {};
    std::optional<Length> residual = {};  // length typed less drawn
    LotNear near = {};
    std::optional<double> nearestBuilding = {};  // where along it, 0 to 1
};

// By row of the tables.
struct DrawnLot {
    std::vector<DrawnPlace> points = {}, nodes = {};
    std::vector<std::array<DrawnTape, 3>> pointTies = {};
    std::vector<std::array<DrawnTape, 2>> nodeTies = {};
    std::vector<DrawnTape> tapes = {};
    std::vector<DrawnRun> runs = {};
    std::vector<LotNear> nodesNear = {};
    std::vector<std::optional<Angle>> turns = {};  // of the line at a node as drawn, above 0 to the right
    std::vector<LotShape> shapes = {};
    std::optional<LotShape> pit = {};
    LotNear pitNear = {};
    PlacedPlan plan = {};
    // Slips, with the row that they are told on; none where a sentence stands for the whole drawing.
    struct Slip {
        enum class On { Drawing, Node, Run } on = On::Drawing;
        std::size_t row = 0;
        Length off = {};
        Text says = {};
    };
    std::vector<Slip> slips = {};
    std::vector<Slip> turnsOff = {};  // nodes at which the line turns otherwise than typed

    // Something has a place.
    bool any() const;
};

}  // namespace trenchbook
