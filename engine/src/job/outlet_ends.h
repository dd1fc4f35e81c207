// Which runs end at an outlet, and the water they end in.
#pragma once

#include <vector>

#include "trenchbook/job/job.h"
#include "trenchbook/job/solve.h"

#pragma GCC visibility push(hidden)
namespace trenchbook {

struct OutletEnd {
    const Node* node = nullptr;            // on Nodes; null: not there
    std::size_t place = Network::none;     // in the network
    std::vector<std::size_t> ending = {};  // rows of the runs that end here
};
OutletEnd outletEnd(const Job& job, const SolvedJob& solved, const std::string& node);
// All runs that end there; none while one of them has no flow, or none ends there.
std::optional<Flow> flowInto(const SolvedJob& solved, const std::vector<std::size_t>& ending);
// The lowest invert of the runs that end there; none while one of them has none.
std::optional<Length> lowestInvert(const SolvedJob& solved, const std::vector<std::size_t>& ending);
// The runs that drain to it; none when one of them has no level.
std::optional<std::vector<std::size_t>> runsAbove(const Job& job, const SolvedJob& solved,
                                                  const OutletEnd& end);
// What these runs hold below a level, exactly.
Volume heldBelow(const Job& job, const SolvedJob& solved, const std::vector<std::size_t>& runs, Length level);
// Bore of the widest of them: what a riser is made of.
std::optional<Length> widestBore(const Job& job, const OutletEnd& end);
// How far the swale stands over the rim that a line bubbles over; none where it does not, or is not known.
std::optional<Length> swaleOverRim(const Outlet& outlet, const OutletEnd& end, const SolvedOutlet& solved);
// The apron of the stone laid at that row of Outlets; none while flow or level is not known. Errors: of stone_apron.h.
std::optional<StoneApron> apronAt(const Job& job, const SolvedJob& solved, std::size_t row,
                                  const OutletEnd& end);

// The level that the last run of a line ends in: as typed, in the swale, over the rim; the highest of them. None and no
// reason: it falls freely. Needs what solveOutlets() found.
struct WaterBelow {
    std::optional<Length> level = {};
    Text unknown = {};
    std::size_t outlet = Network::none;  // its row of Outlets
};
WaterBelow waterBelow(const Job& job, const SolvedJob& solved, std::size_t row);

}  // namespace trenchbook
#pragma GCC visibility pop
