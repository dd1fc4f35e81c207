#include "trenchbook/job/as_built.h"

#include <algorithm>
#include <cstdio>
#include <map>

#include "trenchbook/job/draw_lot.h"

namespace trenchbook {
namespace {

bool isTied(const LaidNode& laid) {
    return !laid.blank && !(trimmed(laid.ties[0]).empty() && trimmed(laid.ties[1]).empty());
}

// Every tape, length and turn that was planned for the node.
void forget(Job& job, const std::string& node) {
    const auto is = [&](const std::string& name) { return nameKey(name) == node; };
    for (LotPoint& point : job.lotPoints)
        if (is(point.name) && !point.east) {
            point.ties = {};
            point.turns = Hand::NotSaid;
        }
    for (LotTape& tape : job.lotTapes)
        if (is(tape.from) || is(tape.to) || is(tape.wallEnd)) tape = {};
    for (Run& run : job.runs)
        if (is(run.from) || is(run.to)) run.length.reset();
}

std::string levelText(Length level, UnitSystem units) {
    char text[32];
    std::snprintf(text, sizeof text, "%.*f", units == UnitSystem::Metric ? 3 : 2,
                  level.si() / info(Unit::Feet).si(units));
    return text;
}

std::map<std::string, std::size_t> rowsByName(const Job& job) {
    std::map<std::string, std::size_t> rows;
    for (std::size_t row = 0; row < job.nodes.size(); ++row)
        if (!job.nodes[row].blank) rows.emplace(nameKey(job.nodes[row].name), row);
    return rows;
}

}  // namespace

AsBuilt asBuilt(const Job& planned, const std::vector<LaidNode>& laid) {
    AsBuilt built{.job = planned};
    const std::map<std::string, std::size_t> rows = rowsByName(planned);
    for (const LaidNode& one : laid) {
        const auto node = rows.find(nameKey(one.node));
        if (!isTied(one) || node == rows.end()) continue;
        forget(built.job, node->first);
        Node& is = built.job.nodes[node->second];
        is.tie1 = one.ties[0];
        is.tie2 = one.ties[1];
        is.turn.reset();
    }
    // What was not measured again stays where the plan has it.
    for (const auto& node : rows) {
        const std::string& name = node.first;
        const std::size_t row = node.second;
        const bool again = std::any_of(laid.begin(), laid.end(), [&](const LaidNode& one) {
            return isTied(one) && nameKey(one.node) == name;
        });
        if (again || row >= planned.drawn.nodes.size() || !planned.drawn.nodes[row].place.placed()) continue;
        const PlanPoint& at = *planned.drawn.nodes[row].place.at;
        const auto listed = std::find_if(built.job.lotPoints.begin(), built.job.lotPoints.end(),
                                         [&](const LotPoint& point) { return nameKey(point.name) == name; });
        forget(built.job, name);
        built.job.nodes[row].tie1.clear();
        built.job.nodes[row].tie2.clear();
        if (listed != built.job.lotPoints.end())
            listed->east = at.east, listed->north = at.north, listed->ties = {};
        else
            built.job.lotPoints.push_back(
                {.name = planned.nodes[row].name, .east = at.east, .north = at.north, .blank = false});
    }
    drawLot(built.job);
    built.tags.resize(built.job.nodes.size());
    for (const LaidNode& one : laid) {
        built.at.emplace_back();
        built.moved.emplace_back();
        const auto node = rows.find(nameKey(one.node));
        if (one.blank || node == rows.end() || node->second >= built.job.drawn.nodes.size()) continue;
        const std::size_t row = node->second;
        const PlacedPoint& place = built.job.drawn.nodes[row].place;
        std::string& tag = built.tags[row];
        if (built.job.nodes[row].kinds.has(NodeKind::Cleanout)) tag = "CO";
        if (one.invert) tag += (tag.empty() ? "" : " ") + levelText(*one.invert, built.job.units);
        if (!isTied(one) || !place.placed()) continue;
        built.at.back() = *place.at;
        if (row < planned.drawn.nodes.size() && planned.drawn.nodes[row].place.placed())
            built.moved.back() = distance(*planned.drawn.nodes[row].place.at, *place.at);
    }
    return built;
}

std::vector<RunEnds> laidInverts(const Job& job, const std::vector<LaidNode>& laid) {
    std::map<std::string, Length> inverts;
    for (const LaidNode& one : laid)
        if (!one.blank && one.invert) inverts.emplace(nameKey(one.node), *one.invert);
    std::vector<RunEnds> ends(job.runs.size());
    for (std::size_t row = 0; row < ends.size(); ++row) {
        const auto end = [&](const std::string& node) -> std::optional<Length> {
            const auto found = inverts.find(nameKey(node));
            return found == inverts.end() ? std::nullopt : std::optional(found->second);
        };
        if (!job.runs[row].blank) ends[row] = {end(job.runs[row].from), end(job.runs[row].to)};
    }
    return ends;
}

}  // namespace trenchbook
