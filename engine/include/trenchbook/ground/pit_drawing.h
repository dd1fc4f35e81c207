// A rock pit cut open, on its paper: ground, rock, soil, the tee, the water at its highest, seasonal high water, with
// levels; beside it how the water stood and where it went through the storm.
//
//     const PitDrawing seen = pitDrawing({.length = Length::feet(10),
//                                         .rockDepth = Length::feet(3),
//                                         .soilOver = Length::feet(1),
//                                         .ground = Length::feet(97),
//                                         .highest = Length::feet(2.5)});
//     seen.up;                                            // 12: heights are drawn 1 in = 1 ft
//     seen.high(Length::feet(93)).millimetres();          // where the pit's bottom lies on the paper, from below
//
// Lengths and heights have a usual scale each, named on the paper. Names of levels stand beside the section, none on
// another. The storm's curves have axes of their own, each with its unit.
#pragma once

#include <optional>
#include <vector>

#include "trenchbook/core/unit.h"
#include "trenchbook/core/units.h"
#include "trenchbook/layout/drawing.h"

namespace trenchbook {

struct PitMoment {
    Duration at = {};  // from the beginning of the storm
    Length water = {};
    Volume soaked = {}, over = {};
};

struct PitSection {
    Length length = {}, rockDepth = {}, soilOver = {};
    Length ground = {};                                         // level at the tee
    std::optional<Length> rim = {}, invert = {}, outside = {};  // of the tee, of the pipe that comes in
    std::optional<Length> highWater = {};                       // level of seasonal high water
    std::optional<Length> highest = {};                         // water in the storm, over the bottom
    std::vector<PitMoment> course = {};
    Length width = Length::millimetres(252), height = Length::millimetres(130);
    UnitSystem units = UnitSystem::US;
    Language language = Language::English;
};

struct PitDrawing {
    std::vector<PlanStroke> strokes = {};  // on paper, from its lower left; letters have their word as name
    double along = 0, up = 0;              // scales: lengths over lengths on paper
    PlanPoint origin = {};                 // where on paper the pit's left side and the level `low` lie
    Length low = {};

    Length high(Length level) const { return origin.north + (level - low) / up; }
};

// Errors: BadArgument "length", "rock depth" not above 0, "soil over" below 0, "width" or "height" for a paper over
// largestPaper or too small for its margins.
PitDrawing pitDrawing(const PitSection& pit);

}  // namespace trenchbook
