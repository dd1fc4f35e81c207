#include <algorithm>

#include "job/outlet_ends.h"
#include "job/solve_runs.h"
#include "trenchbook/lines/water_levels.h"
#include "trenchbook/pipe/fittings.h"

namespace trenchbook {
namespace {

// Loss into the pipe that leaves a node, in its velocity heads: of every piece that stands there. Where water comes to
// rest, in a box or at the head of a line, it is sped up anew. Turns are counted by their 45s.
class NodeLosses {
  public:
    NodeLosses()
        : entrance_(1 + fitting("entrance flush").k),
          bend45_(fitting("45 bend").k),
          wye_(fitting("wye run").k) {
        for (const NodeKindInfo& row : nodeKindTable())
            ofKind_.push_back(row.loss == nullptr ? 0 : fitting(row.loss).k);
    }

    double of(const Node& node, std::size_t entering) const {
        if (node.kinds.stillsWater() || entering == 0) return entrance_;
        double loss = node.turn.value_or(Angle()).degrees() / 45 * bend45_;
        for (const NodeKindInfo& row : nodeKindTable())
            if (node.kinds.has(row.kind)) loss += ofKind_[static_cast<std::size_t>(row.kind)];
        // Each run that joins another comes in through a wye, called one or not.
        const std::size_t counted = node.kinds.has(NodeKind::Wye) ? 2 : 1;
        if (entering > counted) loss += static_cast<double>(entering - counted) * wye_;
        return loss;
    }

  private:
    double entrance_, bend45_, wye_;
    std::vector<double> ofKind_;
};

// In a box or at the head the water stands at the energy of the pipe that leaves, and the loss into it; the level of a
// full pipe holds both already.
Length standsAt(const Run& run, const SolvedRun& answer) {
    const Length level = answer.water->levelUp;
    if (answer.lossK < 1 || level >= *answer.invertUp + run.pipe->bore) return level;
    const double velocity = answer.velocity.value_or(Velocity()).si();
    return level + Length::fromSi(answer.lossK * velocity * velocity / (2 * gravity));
}

std::vector<std::size_t> rowsInto(const Network& lines) {
    std::vector<std::size_t> entering(lines.nodes(), 0);
    for (std::size_t row = 0; row < lines.rows(); ++row)
        if (lines.toNode(row) != Network::none) ++entering[lines.toNode(row)];
    return entering;
}

}  // namespace

void solveWater(const Job& job, SolvedJob& solved) {
    const NodeLosses losses;
    const std::vector<std::size_t> entering = rowsInto(solved.lines);
    std::vector<Carried> carried(job.runs.size());
    for (std::size_t row = 0; row < job.runs.size(); ++row) {
        SolvedRun& run = solved.runs[row];
        if (run.upper != Network::none)
            run.lossK = losses.of(job.nodes[run.upper], entering[solved.lines.fromNode(row)]);
        WaterBelow below = waterBelow(job, solved, row);
        carried[row] = {run.flow,    run.invertUp, run.invertDown,
                        below.level, run.lossK,    std::move(below.unknown)};
    }
    const std::vector<Worked<ReachWater>> water = lineWater(solved.lines, job.runs, carried);
    for (std::size_t row = 0; row < water.size(); ++row) {
        SolvedRun& run = solved.runs[row];
        run.water = water[row].value;
        run.waterFault = water[row].fault;
        if (run.water) run.standsUp = standsAt(job.runs[row], run);
    }
}

void solveNodes(const Job& job, SolvedJob& solved) {
    const Network& lines = solved.lines;
    std::vector<SolvedNode> at(lines.nodes());
    const auto raise = [](SolvedNode& node, std::optional<Length> level) {
        if (level && (!node.water || *level > *node.water)) node.water = level;
    };
    for (std::size_t row = 0; row < lines.rows(); ++row) {
        const SolvedRun& run = solved.runs[row];
        if (const std::size_t from = lines.fromNode(row); from != Network::none) {
            ++at[from].leaving;
            raise(at[from], run.standsUp);
        }
        if (const std::size_t to = lines.toNode(row); to != Network::none) {
            ++at[to].entering;
            raise(at[to], run.water ? std::optional(run.water->levelDown) : std::nullopt);
        }
    }
    solved.nodes.assign(job.nodes.size(), {});
    for (std::size_t row = 0; row < job.nodes.size(); ++row) {
        const Node& node = job.nodes[row];
        const std::size_t place = lines.node(node.name);
        if (place == Network::none) continue;
        solved.nodes[row] = at[place];
        if (solved.nodes[row].water && node.rim() && !node.kinds.endsLine())
            solved.nodes[row].freeboard = *node.rim() - *solved.nodes[row].water;
    }
}

}  // namespace trenchbook
