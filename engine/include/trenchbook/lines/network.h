// The lines as a tree: which segment flows into which, from the node names that each row gives.
//
//     std::vector<std::string> from = {"A", "B", "C"}, to = {"B", "Out", "B"};
//     Network lines(from, to);
//     lines.downstream(0);      // 1: A-B goes on in B-Out
//     lines.outlet(1);          // true: no row leaves "Out"
//     lines.order();            // every row after the rows that flow into it: upstream(1), that is 0 and 2, before 1
//
// One row is one pipe segment from an upper to a lower node. Names are matched without the blanks around them
// and without regard to case. A node has one way out; the row whose lower node nobody leaves is an outlet
// row. Blank rows (neither name given) are skipped. The order of the rows never matters.
//
// A row that cannot be placed has a fault; it spoils itself and what is worked out from it, nothing else:
//   nowhere to go    its lower node is not named. (A mistyped lower node makes an outlet row; it shows by the
//                    outlet level that is missing there.)
//   comes from nowhere    its upper node is not named
//   joins itself     both names are the same
//   two ways out     another row leaves the same upper node; all of them are at fault
//   loop             its water comes back to it; all rows of the loop are at fault
// Whether the length and the pipe of a row can be used is told by lineFaults(). Time and memory are linear.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "trenchbook/core/text.h"
#include "trenchbook/core/units.h"
#include "trenchbook/lines/run.h"

namespace trenchbook {

struct Fault {
    enum class Kind {
        None,
        NowhereToGo,
        FromNowhere,
        JoinsItself,
        TwoWaysOut,  // `other` is the other row that leaves the node
        Loop,
        Unnamed,      // a length or pipe is given, but neither name
        BadCell,      // `words` says what is wrong with the row's length or pipe
        GetsSmaller,  // `other` is the larger pipe that flows in; numbers can still be computed
        Waiting,      // on `other`, which has a fault of its own
    };
    Kind kind = Kind::None;
    std::size_t other = 0;
    Text words;

    explicit operator bool() const { return kind != Kind::None; }
    // Whether it keeps the row's numbers from being computed.
    bool blocks() const { return kind != Kind::None && kind != Kind::GetsSmaller; }
};

// What a walk over the lines finds for a row: its value, or why it has none. A blank row has neither.
template <class Value>
struct Worked {
    std::optional<Value> value = {};
    Fault fault = {};  // of the names, a missing or unusable cell, or the row waited on
};

class Network {
  public:
    static constexpr std::size_t none = static_cast<std::size_t>(-1);

    // One entry a row. Errors: BadArgument "to" when the two differ in number.
    Network(std::span<const std::string> from, std::span<const std::string> to);
    explicit Network(std::span<const Run> runs);

    std::size_t rows() const { return from_.size(); }
    bool blank(std::size_t row) const { return from_[row] == none && to_[row] == none; }
    // The fault of the names alone: None, NowhereToGo, FromNowhere, JoinsItself, TwoWaysOut or Loop.
    const Fault& fault(std::size_t row) const { return faults_[row]; }
    // A row that has its place in a tree.
    bool placed(std::size_t row) const { return !blank(row) && !faults_[row]; }
    bool outlet(std::size_t row) const {
        return placed(row) && downstream_[row] == none && blocker_[row] == none;
    }

    // The row that carries this row's water on; none for an outlet row and where the way on is at fault.
    std::size_t downstream(std::size_t row) const { return downstream_[row]; }
    // The row that this row's level is carried from: the same, or, where two ways leave its lower node, the
    // first of them.
    std::size_t wayOn(std::size_t row) const {
        return blocker_[row] != none ? blocker_[row] : downstream_[row];
    }
    // The rows that flow into this one, in no particular order.
    std::span<const std::size_t> upstream(std::size_t row) const {
        return std::span(upstream_).subspan(firstUpstream_[row],
                                            firstUpstream_[row + 1] - firstUpstream_[row]);
    }
    // Every row that is neither blank nor in a loop, each after all rows upstream of it. Backwards: each
    // after the row downstream of it.
    std::span<const std::size_t> order() const { return order_; }

    // Nodes are numbered from 0; none for a name that is missing (rows) or that no row uses (node()).
    std::size_t nodes() const { return leaving_.size(); }
    std::size_t fromNode(std::size_t row) const { return from_[row]; }
    std::size_t toNode(std::size_t row) const { return to_[row]; }
    std::size_t node(std::string_view name) const;
    // The row that leaves a node; none at an outlet and where two rows do.
    std::size_t leaving(std::size_t node) const { return leaving_[node]; }
    // The row that takes in what enters at this node; none where no row does.
    std::size_t entersAt(std::string_view name) const {
        const std::size_t at = node(name);
        return at == none ? none : leaving_[at];
    }

    // Which row spoils which. `bad` marks rows that cannot be computed for a reason of their own, in addition
    // to those with a fault here. The answer is, per row: itself when bad, the nearest bad row that it waits
    // on, or none. Blank rows: none. Flows, times: a bad row spoils all rows downstream of it.
    std::vector<std::size_t> spoiledByUpstream(const std::vector<bool>& bad) const;
    // Levels carried from the outlet uphill: a bad row spoils all rows upstream of it.
    std::vector<std::size_t> spoiledByDownstream(const std::vector<bool>& bad) const;

    // "A-B", as typed in the row.
    std::string segmentName(std::size_t row) const { return typedFrom_[row] + "-" + typedTo_[row]; }

  private:
    // Steps of the constructor, in this order. A node is split where two complete rows leave it.
    void nameNodes(std::span<const std::string> from, std::span<const std::string> to);
    struct WaysOut {
        std::vector<std::size_t> first, second;  // complete rows that leave each node
    };
    WaysOut findWaysOut();
    void joinRows(const WaysOut& ways);
    void sortDownhill();

    std::vector<std::string> typedFrom_, typedTo_;
    std::unordered_map<std::string, std::size_t> nodeByName_;
    std::vector<std::size_t> from_, to_;   // by row
    std::vector<std::size_t> leaving_;     // by node
    std::vector<std::size_t> downstream_;  // by row
    std::vector<std::size_t> blocker_;     // by row: a faulty row that the way on depends on
    std::vector<std::size_t> firstUpstream_, upstream_;
    std::vector<std::size_t> order_;
    std::vector<Fault> faults_;
};

// Per row all that keeps it from being computed, in this order: the names, the length, the pipe, a pipe that
// gets smaller downstream (by nominal size), and the row waited on: the nearest one at fault upstream, from
// which its water comes, or else downstream, from which its level is carried. `runs` may be empty: then the
// names alone are judged.
std::vector<Fault> lineFaults(const Network& lines, std::span<const Run> runs);

// The fault in words. Rows are counted from `firstRow`; empty when there is none.
Text faultText(const Network& lines, const Fault& fault, std::size_t row, std::size_t firstRow = 1);

// A sum that does not depend on the order of its terms: smallest first. Sorts `terms`.
double orderlessSum(std::vector<double>& terms);

// The flow that each segment carries: what its upper node takes in and all that flows in from upstream.
// `flow` is none where an inlet's flow cannot be read; that spoils its segment and what lies downstream. An
// inlet at an outlet node flows through no segment; so does one at a node that no row uses: strayInlets()
// lists these.
//
// Returns per row the flow, or none for a row that is blank or spoiled.
struct Inlet {
    std::string node;
    std::optional<Flow> flow;
};
std::vector<std::optional<Flow>> lineFlows(const Network& lines, std::span<const Inlet> inlets);
std::vector<std::size_t> strayInlets(const Network& lines, std::span<const Inlet> inlets);

}  // namespace trenchbook
