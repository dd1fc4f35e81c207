// A point of the lines: what stands there, where its ground and its opening lie, how the pipe turns.
//
//     Node node{.name = "S7", .kinds = nodeKinds("bend"), .ground = Length::feet(98.3),
//               .turn = Angle::degrees(45), .kindGiven = true, .blank = false};
//     node.rim()->feet();     // 98.3: no opening of its own
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "trenchbook/core/units.h"
#include "trenchbook/lines/node_kind.h"
#include "trenchbook/lines/run.h"

namespace trenchbook {

struct Node {
    std::string name = {};
    NodeKinds kinds = {};
    std::optional<Length> ground = {};     // level
    std::optional<Length> opening = {};    // level of grate, cap, sill or rim; none: the ground
    std::optional<Angle> turn = {};        // none: straight on
    std::optional<Length> fromHouse = {};  // distance to the house's wall, "From house"; none: not measured
    // From a footing's outer edge to the near edge of the trench, and the footing's bottom below the ground there.
    std::optional<Length> toFooting = {}, footingDepth = {};
    std::string engineer = {};  // his word on a trench below the footing's line: who, when
    std::optional<Length> toTree = {}, toSeptic = {}, toWell = {};
    struct {
        bool fromHouse = false, footing = false, tree = false, septic = false, well = false;
    } drawn = {};                      // these distances are the drawing's, nobody typed them
    std::string tie1 = {}, tie2 = {};  // "house N 31.5": a corner and the distance to it
    std::string device = {};           // code of the piece on Prices; empty: by kind
    std::string shot = {};             // point on Levels that gives the ground; for sentences
    bool kindGiven = false;            // something stands in the cell, readable or not
    bool blank = true;
    std::vector<Unusable> unusable = {};

    std::optional<Length> rim() const { return opening ? opening : ground; }
    // 0 where the cell is empty; none where it cannot be used.
    std::optional<Angle> turns() const;
};

}  // namespace trenchbook
