// How high every end can lie: from the heads down, as high as the rules and the fall allow.
//
// The rules only tie neighbouring levels together ("not above", "at least so much lower"), so one number a
// run and pipe, the highest reachable level, decides whether what lies upstream can be built: whatever is
// lower at the join is possible too. A plan exists exactly when no run comes too low. One pass, linear,
// whatever the grid.
#pragma once

#include <vector>

#include "grade/model.h"

#pragma GCC visibility push(hidden)
namespace trenchbook::grade {

struct Range {
    Step first, last;  // empty when first > last

    bool empty() const { return first > last; }
};

// The levels that the two ends of a run may take on their own, by End.
using Window = std::array<Range, 2>;
Window windowOf(const Run& run, const Option& option);

// The levels in the window that go with a level of the other end, by fall and crossings.
Range otherEnds(const Option& option, const Window& window, End known, Step level);

// The highest lower end of a straight run inside the window; farBelow when it cannot be laid.
Step highestLowerEnd(const Option& option, const Window& window);

struct RunReach {
    Step arriving = farAbove;  // the upper end may not lie above this, for what comes from upstream
    Step down = farBelow;      // highest lower end

    bool operator==(const RunReach&) const = default;
};

struct Reaches {
    std::vector<std::vector<RunReach>> at;  // by run, option
    // Runs that come too low with every pipe. Below them the pass goes on as if only the rules that say "not
    // above" counted in them, so that further places are found.
    std::vector<bool> isTooLow;
    std::size_t tooLow = 0;  // how many

    bool fits() const { return tooLow == 0; }
};
Reaches reachOf(const Model& model);
// Brings the reaches up to date after a change in one run: from there down, as far as anything changes.
void update(Reaches& reaches, const Model& model, std::size_t run);

// The run upstream, and its option, that keeps the upper end of `run` down.
struct Arrival {
    std::size_t run, option;
};
Arrival arrivalAt(const Model& model, const Reaches& reaches, std::size_t run, std::size_t option);

// By run and option, the windows outside which a level can have no part in any plan: not above what is
// reachable, not below what leaves enough fall down to the outlet. Empty where the option has no part.
std::vector<std::vector<Window>> usefulWindows(const Model& model, const Reaches& reaches);

}  // namespace trenchbook::grade
#pragma GCC visibility pop
