#include "catalog/drawing_pens.h"

namespace trenchbook::addin {
namespace {

// As many whole pairs of columns.
std::vector<PenStrip> pairs(std::size_t first, std::size_t count) {
    std::vector<PenStrip> strips;
    for (std::size_t pair = first; pair < first + count; ++pair) strips.push_back({pair, 0, penRows});
    return strips;
}

}  // namespace

const std::vector<Pen>& drawingPens() {
    using enum DrawingLayer;
    static const std::vector<Pen> all = {{"Buildings", {Building}, {{0, 0, 90}}},
                                         {"Lot lines", {LotLine, Fence}, {{0, 90, 60}}},
                                         {"Grounds", {Walk, Drive, Pool, Septic}, {{0, 150, 100}}},
                                         {"Trees and wells", {Tree, Well, Mark}, {{1, 0, 150}}},
                                         {"Small pipe", {PipeSmall}, {{1, 150, 100}}},
                                         {"Middle pipe", {PipeMiddle}, {{2, 0, 110}}},
                                         {"Large pipe", {PipeLarge}, {{2, 110, 70}}},
                                         {"Pipe there", {PipeThere}, {{2, 180, 70}}},
                                         {"Signs", {Flow, Node, Crossing, Pit}, pairs(3, 2)},
                                         {"Words", {Frame}, pairs(5, 10)}};
    return all;
}

}  // namespace trenchbook::addin
