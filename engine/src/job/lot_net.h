// The tables of a drawing as a net of numbered points, and which cell each tape of it comes from.
#pragma once

#include <string>
#include <vector>

#include "trenchbook/job/job.h"
#include "trenchbook/layout/plan_net.h"
#include "trenchbook/lines/network.h"

#pragma GCC visibility push(hidden)
namespace trenchbook {

struct LotNet {
    static constexpr std::size_t none = static_cast<std::size_t>(-1);

    struct Source {
        enum class Kind { PointTie, NodeTie, Tape, Run } kind;
        std::size_t row = 0, tie = 0;
    };
    PlanNet net = {};
    std::vector<std::string> names = {};  // by point
    std::vector<std::size_t> ofRow = {},
                             ofNode = {};  // the point of a row of Layout, of Nodes; none of a blank row
    std::vector<Source> sources = {};      // by tape

    // A line that goes through a node, by the row of Nodes: the turn of the net that stands for it; none
    // without.
    std::vector<std::size_t> turnOfNode = {};
    std::vector<std::size_t> turnNode = {};  // by turn
    std::vector<bool> assumed = {};          // by turn: Turn is blank, taken as straight on
};

// The net; `drawn` takes what is typed of each tape, and why one is not used.
LotNet lotNet(const Job& job, DrawnLot& drawn);

}  // namespace trenchbook
#pragma GCC visibility pop
