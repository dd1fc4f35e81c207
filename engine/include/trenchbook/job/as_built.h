// The lot as it was built: nodes where the tapes taken after the work have them, with the inverts measured then, and
// how far each lies from where it was planned.
//
//     Job planned;                 // as readJob() fills it
//     const std::vector<LaidNode> laid = {{.node = "S5", .invert = Length::feet(96.42), .blank = false}};
//     const AsBuilt built = asBuilt(planned, laid);
//     built.moved.size();          // 1: a row each; none where a place is not known twice
//
// A node with a tie as laid forgets every tape, length and turn that was planned for it: it lies where it was
// measured. The others stay where they are drawn in the plan. `built.tags` has one for each node, "CO 96.42", which
// drawingOf() writes behind its name: CO where there is a cleanout, and the invert measured.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "trenchbook/core/cell.h"
#include "trenchbook/job/job.h"
#include "trenchbook/job/profile_drawing.h"

namespace trenchbook {

struct LaidNode {
    std::string node = {};
    std::optional<Length> invert = {};     // of the pipe that leaves it; of the pipe that ends there
    std::array<std::string, 2> ties = {};  // "house N 31.5"
    bool blank = true;
    std::vector<Unusable> unusable = {};
};

// The table "As built" with its row of headings. Errors: as of readJob(), of the table "As built".
std::vector<LaidNode> readLaid(const Grid& table, UnitSystem units);

struct AsBuilt {
    Job job;
    std::vector<std::optional<PlanPoint>> at = {};  // by row of what was laid
    std::vector<std::optional<Length>> moved = {};  // from where it was planned
    std::vector<std::string> tags = {};             // by row of Nodes
};
AsBuilt asBuilt(const Job& planned, const std::vector<LaidNode>& laid);

// By row of Runs: inverts measured at both ends, for profileOf().
std::vector<RunEnds> laidInverts(const Job& job, const std::vector<LaidNode>& laid);

}  // namespace trenchbook
