// Nodes: does the ground fall away from the house? Near its walls water must not run back to them.
//
// Judged between two nodes that a run joins, where both are measured from the wall and the farther one is really
// farther: a row of downspouts along the wall asks nothing of the ground between them. Source of the limits: IRC 2006
// R401.3, swales within 10 ft of the house.
#include <string>
#include <unordered_map>

#include "job/say.h"
#include "trenchbook/job/judge.h"

namespace trenchbook {

void judgeGround(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings) {
    const Length near = job.rules.length("ground.away.within");
    std::unordered_map<std::string, const Node*> byName;
    for (const Node& node : job.nodes)
        if (!node.blank) byName.emplace(nameKey(node.name), &node);
    for (std::size_t row = 0; row < job.nodes.size(); ++row) {
        const Node& node = job.nodes[row];
        if (node.blank || !node.fromHouse || isOver(node.fromHouse->si(), near.si())) continue;
        RowFindings told(job, Part::Nodes, row, findings);
        const std::size_t at = solved.lines.node(node.name);
        const std::size_t run = at == Network::none ? Network::none : solved.lines.leaving(at);
        if (run == Network::none) continue;
        const auto found = byName.find(nameKey(job.runs[run].to));
        if (found == byName.end()) continue;
        const Node* next = found->second;
        if (!next->fromHouse || !(*next->fromHouse > *node.fromHouse)) continue;
        // Along a wall a drawing tells small differences that nobody measured.
        const bool drawn = node.drawn.fromHouse || next->drawn.fromHouse;
        if (drawn && *next->fromHouse - *node.fromHouse < Length::feet(5)) continue;
        if (!node.ground || !next->ground) continue;
        const double fall = (*node.ground - *next->ground) / (*next->fromHouse - *node.fromHouse);
        told.atLeast(Severity::Check, "ground.away.min", fall,
                     {"ground from " + node.name + " to " + next->name + " away from the house falls",
                      "el terreno de " + node.name + " a " + next->name + ", alejándose de la casa, baja"});
    }
}

}  // namespace trenchbook
