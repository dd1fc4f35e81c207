#include "trenchbook/lines/network.h"

#include <algorithm>

#include "lines/walk.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

std::vector<std::string> upperNames(std::span<const Run> runs) {
    std::vector<std::string> names;
    names.reserve(runs.size());
    for (const Run& run : runs) names.push_back(run.from);
    return names;
}
std::vector<std::string> lowerNames(std::span<const Run> runs) {
    std::vector<std::string> names;
    names.reserve(runs.size());
    for (const Run& run : runs) names.push_back(run.to);
    return names;
}

}  // namespace

Network::Network(std::span<const Run> runs) : Network(upperNames(runs), lowerNames(runs)) {}

Network::Network(std::span<const std::string> from, std::span<const std::string> to)
    : from_(from.size(), none),
      to_(from.size(), none),
      downstream_(from.size(), none),
      blocker_(from.size(), none),
      faults_(from.size()) {
    requireRows(to.size(), *this, "to");
    nameNodes(from, to);
    joinRows(findWaysOut());
    sortDownhill();
}

void Network::nameNodes(std::span<const std::string> from, std::span<const std::string> to) {
    typedFrom_.reserve(rows());
    typedTo_.reserve(rows());
    nodeByName_.reserve(2 * rows());
    const auto nodeNumber = [&](const std::string& typed) {
        const std::string key = nameKey(typed);
        return key.empty() ? none : nodeByName_.try_emplace(key, nodeByName_.size()).first->second;
    };
    for (std::size_t row = 0; row < rows(); ++row) {
        from_[row] = nodeNumber(from[row]);
        to_[row] = nodeNumber(to[row]);
        typedFrom_.push_back(trimmed(from[row]));
        typedTo_.push_back(trimmed(to[row]));
    }
}

// Who leaves each node. A row without its lower node counts only where no complete row leaves: a row that is being
// typed does not spoil the one that is already there.
Network::WaysOut Network::findWaysOut() {
    const std::size_t nodeCount = nodeByName_.size();
    WaysOut ways{std::vector(nodeCount, none), std::vector(nodeCount, none)};
    std::vector<std::size_t> incomplete(nodeCount, none);
    for (std::size_t row = 0; row < rows(); ++row) {
        if (blank(row)) continue;
        const std::size_t node = from_[row];
        if (node == none) {
            faults_[row].kind = Fault::Kind::FromNowhere;
        } else if (to_[row] == none) {
            faults_[row].kind = Fault::Kind::NowhereToGo;
            if (incomplete[node] == none) incomplete[node] = row;
        } else if (node == to_[row]) {
            faults_[row].kind = Fault::Kind::JoinsItself;
        } else if (ways.first[node] == none) {
            ways.first[node] = row;
        } else {
            if (ways.second[node] == none) ways.second[node] = row;
            faults_[row] = {Fault::Kind::TwoWaysOut, ways.first[node], {}};
        }
    }
    leaving_.assign(nodeCount, none);
    for (std::size_t node = 0; node < nodeCount; ++node) {
        if (ways.second[node] != none) {
            faults_[ways.first[node]] = {Fault::Kind::TwoWaysOut, ways.second[node], {}};
        } else {
            leaving_[node] = ways.first[node] != none ? ways.first[node] : incomplete[node];
        }
    }
    return ways;
}

// Whom each row flows into, and who flows into each row.
void Network::joinRows(const WaysOut& ways) {
    firstUpstream_.assign(rows() + 1, 0);
    for (std::size_t row = 0; row < rows(); ++row) {
        if (to_[row] == none || faults_[row].kind == Fault::Kind::JoinsItself) continue;
        if (ways.second[to_[row]] != none) blocker_[row] = ways.first[to_[row]];
        downstream_[row] = leaving_[to_[row]];
        if (downstream_[row] != none) ++firstUpstream_[downstream_[row] + 1];
    }
    for (std::size_t row = 0; row < rows(); ++row) firstUpstream_[row + 1] += firstUpstream_[row];
    upstream_.resize(firstUpstream_[rows()]);
    std::vector<std::size_t> next(firstUpstream_.begin(), firstUpstream_.end() - 1);
    for (std::size_t row = 0; row < rows(); ++row)
        if (downstream_[row] != none) upstream_[next[downstream_[row]]++] = row;
}

// A row is ready when all rows that flow into it are done. What never gets ready is a loop, for with one way out of
// each node nothing lies downstream of a loop.
void Network::sortDownhill() {
    std::vector<std::size_t> pending(rows());
    order_.reserve(rows());
    for (std::size_t row = 0; row < rows(); ++row) {
        pending[row] = upstream(row).size();
        if (pending[row] == 0 && !blank(row)) order_.push_back(row);
    }
    for (std::size_t done = 0; done < order_.size(); ++done) {
        const std::size_t below = downstream_[order_[done]];
        if (below != none && --pending[below] == 0) order_.push_back(below);
    }
    for (std::size_t row = 0; row < rows(); ++row)
        if (pending[row] != 0) faults_[row].kind = Fault::Kind::Loop;
}

std::size_t Network::node(std::string_view name) const {
    const auto found = nodeByName_.find(nameKey(name));
    return found == nodeByName_.end() ? none : found->second;
}

std::vector<std::size_t> Network::spoiledByUpstream(const std::vector<bool>& bad) const {
    std::vector<std::size_t> culprit(rows(), none);
    std::vector<std::size_t> steps(rows(), 0);  // how far away it is, to name the nearest
    for (std::size_t row = 0; row < rows(); ++row)
        if (!blank(row) && (faults_[row] || bad[row])) culprit[row] = row;
    const auto pass = [&](std::size_t row, std::size_t below) {
        if (culprit[row] == none || culprit[below] == below) return;
        const bool nearer = culprit[below] == none || steps[row] + 1 < steps[below] ||
                            (steps[row] + 1 == steps[below] && culprit[row] < culprit[below]);
        if (!nearer) return;
        culprit[below] = culprit[row];
        steps[below] = steps[row] + 1;
    };
    // A row that joins itself comes before all others: its node's water is not known.
    for (std::size_t row = 0; row < rows(); ++row)
        if (faults_[row].kind == Fault::Kind::JoinsItself && leaving_[to_[row]] != none)
            pass(row, leaving_[to_[row]]);
    for (std::size_t row : order_)
        if (downstream_[row] != none) pass(row, downstream_[row]);
    return culprit;
}

std::vector<std::size_t> Network::spoiledByDownstream(const std::vector<bool>& bad) const {
    std::vector<std::size_t> culprit(rows(), none);
    for (std::size_t row = 0; row < rows(); ++row)
        if (!blank(row) && (faults_[row] || bad[row])) culprit[row] = row;
    for (auto at = order_.rbegin(); at != order_.rend(); ++at) {
        const std::size_t row = *at;
        if (culprit[row] != none) continue;
        culprit[row] = blocker_[row] != none      ? blocker_[row]
                       : downstream_[row] != none ? culprit[downstream_[row]]
                                                  : none;
    }
    return culprit;
}

namespace {

// What is wrong with a row apart from its names and its neighbours.
Fault ownFault(const Network& lines, const Run& run, std::size_t row) {
    Text trouble = run.trouble({"Length", "Pipe"});
    if (lines.blank(row)) {
        if (run.length || !trouble.empty()) return {Fault::Kind::Unnamed, 0, {}};
        return {};
    }
    if (!trouble.empty()) return {Fault::Kind::BadCell, row, std::move(trouble)};
    if (!run.length) return {Fault::Kind::BadCell, row, {"length is missing", "falta la longitud"}};
    if (!run.pipe) return {Fault::Kind::BadCell, row, {"pipe is missing", "falta el tubo"}};
    return {};
}

// The largest pipe that flows into this row and is larger than it; none where none is.
std::size_t largerAbove(const Network& lines, std::span<const Run> runs, std::size_t row) {
    std::size_t larger = Network::none;
    for (const std::size_t above : lines.upstream(row)) {
        const double nominal = runs[above].pipe->nominal;
        if (nominal > runs[row].pipe->nominal &&
            (larger == Network::none || nominal > runs[larger].pipe->nominal))
            larger = above;
    }
    return larger;
}

}  // namespace

std::vector<Fault> lineFaults(const Network& lines, std::span<const Run> runs) {
    if (!runs.empty()) requireRows(runs.size(), lines, "length");
    std::vector<Fault> faults(lines.rows());
    std::vector<bool> bad(lines.rows(), false);
    for (std::size_t row = 0; row < lines.rows(); ++row) {
        faults[row] = lines.fault(row);
        if (runs.empty() || faults[row]) continue;
        faults[row] = ownFault(lines, runs[row], row);
        bad[row] = faults[row].blocks();
    }
    const std::vector<std::size_t> water = lines.spoiledByUpstream(bad);
    const std::vector<std::size_t> level = lines.spoiledByDownstream(bad);
    for (std::size_t row = 0; row < lines.rows(); ++row) {
        if (faults[row] || lines.blank(row)) continue;
        const std::size_t culprit = water[row] != Network::none ? water[row] : level[row];
        if (culprit != Network::none) {
            faults[row] = {Fault::Kind::Waiting, culprit, {}};
        } else if (!runs.empty()) {
            if (const std::size_t larger = largerAbove(lines, runs, row); larger != Network::none)
                faults[row] = {Fault::Kind::GetsSmaller, larger, {}};
        }
    }
    return faults;
}

Text faultText(const Network& lines, const Fault& fault, std::size_t row, std::size_t firstRow) {
    const std::string other = std::to_string(fault.other + firstRow);
    const auto named = [&](std::size_t which) { return Text::same(" (" + lines.segmentName(which) + ")"); };
    switch (fault.kind) {
        case Fault::Kind::None:
            return {};
        case Fault::Kind::NowhereToGo:
            return {"nowhere to go: the lower node is missing", "sin salida: falta el nodo de abajo"};
        case Fault::Kind::FromNowhere:
            return {"comes from nowhere: the upper node is missing", "sin origen: falta el nodo de arriba"};
        case Fault::Kind::JoinsItself:
            return {"joins itself: both nodes are the same", "se une a sí mismo: los dos nodos son el mismo"};
        case Fault::Kind::TwoWaysOut:
            return Text{"two ways out: row " + other, "dos salidas: la fila " + other} + named(fault.other) +
                   Text{" leaves the same node", " sale del mismo nodo"};
        case Fault::Kind::Loop:
            return Text{"loop: the water comes back to", "circuito: el agua vuelve a"} +
                   Text::same(" " + lines.segmentName(row));
        case Fault::Kind::Unnamed:
            return {"nowhere to go: both nodes are missing", "sin salida: faltan los dos nodos"};
        case Fault::Kind::BadCell:
            return fault.words;
        case Fault::Kind::GetsSmaller:
            return Text{"pipe gets smaller downstream: row " + other,
                        "el tubo se hace más chico aguas abajo: la fila " + other} +
                   named(fault.other) + Text{" is larger", " es más grande"};
        case Fault::Kind::Waiting:
            return Text{"waiting on row " + other, "en espera de la fila " + other} + named(fault.other);
    }
    return {};
}

double orderlessSum(std::vector<double>& terms) {
    std::sort(terms.begin(), terms.end());
    double sum = 0;
    for (double term : terms) sum += term;
    return sum;
}

std::vector<std::optional<Flow>> lineFlows(const Network& lines, std::span<const Inlet> inlets) {
    std::vector<Entering<Flow>> entering;
    entering.reserve(inlets.size());
    for (const Inlet& inlet : inlets) entering.push_back({inlet.node, inlet.flow});
    return sumDown<Flow>(lines, entering);
}

std::vector<std::size_t> strayInlets(const Network& lines, std::span<const Inlet> inlets) {
    std::vector<std::size_t> stray;
    for (std::size_t i = 0; i < inlets.size(); ++i)
        if (!nameKey(inlets[i].node).empty() && lines.node(inlets[i].node) == Network::none)
            stray.push_back(i);
    return stray;
}

}  // namespace trenchbook
