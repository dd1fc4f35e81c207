// One run of pipe, from its upper to its lower node: a row of Runs.
//
//     Run run{.from = "A", .to = "B", .length = Length::feet(60), .pipe = stockPipe("4 SDR35"),
//             .slope = Slope::inchesPerFoot(0.125), .blank = false};
//
// What is missing is left out, never 0; a cell that cannot be used is kept with its reason.
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "trenchbook/core/text.h"
#include "trenchbook/core/units.h"
#include "trenchbook/lines/cover_surface.h"
#include "trenchbook/pipe/stock.h"

namespace trenchbook {

// A cell whose content is no value of its column, or out of its range.
struct Unusable {
    std::string heading;  // of the column, as the sheet has it: "Length", "Fixed level", "Turn"
    std::string typed;
    Text why;  // "Length is \"12 ff\"; allowed: …"
};

struct Run {
    std::string line = {}, from = {}, to = {};
    std::optional<Length> length = {};                           // along the trench, above 0
    std::optional<Pipe> pipe = {};                               // stock, or a bare bore
    std::optional<Slope> slope = {};                             // above 0
    std::optional<Length> fixedDown = {};                        // invert at the lower end, set by hand
    std::optional<Length> outletLevel = {}, outletHighest = {};  // on outlet runs: invert where the pipe ends
    std::optional<Length> outletWater = {};              // on outlet runs: level of the water that it ends in
    std::optional<Length> knownUp = {}, knownDown = {};  // inverts as measured, of a pipe that lies there
    bool existing = false;                               // it is there already: neither bought nor dug
    std::string approval = {};       // who let it be flatter or fuller than the rules, and when
    std::vector<Pipe> choices = {};  // pipes that the plan may take; none: the pipe given
    std::optional<CoverSurface> surfaceUp = {}, surfaceDown = {};  // what lies over the ends
    std::optional<Length> trenchWidth = {};                        // none: by the rules
    double roughness = 0;                                          // Manning n; 0: the pipe's own
    bool blank = true;                                             // nothing stands in its row
    std::vector<Unusable> unusable = {};

    // Both inverts are known: no slope is asked.
    bool known() const { return knownUp && knownDown; }
    // Manning n: its own, else the pipe's; 0 where there is neither.
    double manning() const { return roughness > 0 ? roughness : pipe ? pipe->roughness : 0; }
    // Why the first cell of these columns cannot be used; empty when all can.
    Text trouble(std::initializer_list<std::string_view> headings) const;
};

// Why the first of these cells under one of the headings cannot be used; empty when none is.
Text troubleIn(const std::vector<Unusable>& cells, std::initializer_list<std::string_view> headings);

}  // namespace trenchbook
