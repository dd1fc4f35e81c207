#include "trenchbook/layout/lot.h"

#include <algorithm>

namespace trenchbook {

const Text& lotThingWord(LotThing thing) {
    static const std::array<Text, lotThingCount> words = {Text{},
                                                          Text{"building", "edificio"},
                                                          Text{"lot line", "lindero"},
                                                          Text{"walk", "banqueta"},
                                                          Text{"drive", "entrada"},
                                                          Text{"pool", "alberca"},
                                                          Text{"septic", "fosa séptica"},
                                                          Text{"well", "pozo de agua"},
                                                          Text{"tree", "árbol"},
                                                          Text{"fence", "cerca"},
                                                          Text{"pit", "pozo de piedra"},
                                                          Text{"mark", "marca"}};
    return words[static_cast<std::size_t>(thing)];
}

bool DrawnLot::any() const {
    return std::any_of(plan.points.begin(), plan.points.end(),
                       [](const PlacedPoint& one) { return one.placed(); });
}

}  // namespace trenchbook
