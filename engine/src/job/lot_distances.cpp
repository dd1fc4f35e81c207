#include "job/lot_distances.h"

#include <algorithm>
#include <map>
#include <utility>

#include "trenchbook/pipe/size_class.h"

namespace trenchbook {
namespace {

constexpr std::size_t none = LotNet::none;

std::optional<PlanPoint> placeOf(const DrawnLot& drawn, std::size_t point) {
    if (point == none || !drawn.plan.points[point].placed()) return std::nullopt;
    return drawn.plan.points[point].at;
}

// What of a kind stands alone; the corners of the others without an object's name are one.
bool single(LotThing thing) {
    return thing == LotThing::Tree || thing == LotThing::Well || thing == LotThing::Mark;
}
bool isFilled(LotThing thing) {
    return thing == LotThing::Building || thing == LotThing::Walk || thing == LotThing::Drive ||
           thing == LotThing::Pool || thing == LotThing::Septic || thing == LotThing::Pit;
}

void findShapes(Job& job, const LotNet& lot) {
    DrawnLot& drawn = job.drawn;
    std::map<std::string, LotThing> byObject;
    std::map<std::pair<LotThing, std::string>, std::size_t> placed;
    for (std::size_t row = 0; row < job.lotPoints.size(); ++row) {
        const LotPoint& point = job.lotPoints[row];
        const std::string object = nameKey(point.object);
        LotThing thing = point.what;
        if (!object.empty()) {
            if (thing == LotThing::NotSaid)
                thing = byObject[object];
            else
                byObject[object] = thing;
        }
        if (lot.ofRow[row] == none || thing == LotThing::NotSaid) continue;
        const std::string key = object.empty() && single(thing) ? nameKey(point.name) : object;
        const auto [found, fresh] = placed.emplace(std::pair{thing, key}, drawn.shapes.size());
        if (fresh)
            drawn.shapes.push_back({.thing = thing,
                                    .name = point.object.empty() ? point.name : point.object,
                                    .shape = {.filled = isFilled(thing), .open = thing == LotThing::Fence}});
        LotShape& shape = drawn.shapes[found->second];
        if (const std::optional<PlanPoint> at = placeOf(drawn, lot.ofRow[row]))
            shape.shape.corners.push_back(*at);
        else
            shape.complete = false;
    }
    std::erase_if(drawn.shapes,
                  [](const LotShape& shape) { return shape.shape.corners.empty() && shape.complete; });
}

// As its corners are given; else a rectangle at its tee, its length along the run that ends there.
void placePit(Job& job) {
    DrawnLot& drawn = job.drawn;
    for (const LotShape& shape : drawn.shapes)
        if (shape.thing == LotThing::Pit) {
            drawn.pit = shape;
            return;
        }
    if (nameKey(job.pit.node).empty() || !job.pit.length || !job.pit.width) return;
    for (std::size_t row = 0; row < job.runs.size(); ++row) {
        if (job.runs[row].blank || nameKey(job.runs[row].to) != nameKey(job.pit.node)) continue;
        const DrawnRun& run = drawn.runs[row];
        if (!run.from || !run.to) continue;
        const Angle along = azimuth(*run.from, *run.to), across = along + Angle::degrees(90);
        LotShape pit{.thing = LotThing::Pit, .name = job.pit.node, .shape = {.filled = true}};
        for (const auto& [far, wide] : {std::pair{0.5, 0.5}, {0.5, -0.5}, {-0.5, -0.5}, {-0.5, 0.5}})
            pit.shape.corners.push_back(
                ahead(ahead(*run.to, along, *job.pit.length * far), across, *job.pit.width * wide));
        drawn.pit = std::move(pit);
        return;
    }
}

LotNear nearTo(const DrawnLot& drawn, const PlanShape& thing) {
    LotNear near;
    const std::pair<LotThing, std::optional<Length> LotNear::*> kinds[] = {
        {LotThing::Building, &LotNear::building}, {LotThing::LotLine, &LotNear::lotLine},
        {LotThing::Walk, &LotNear::walk},         {LotThing::Pool, &LotNear::pool},
        {LotThing::Septic, &LotNear::septic},     {LotThing::Well, &LotNear::well},
        {LotThing::Tree, &LotNear::tree}};
    for (const auto& [kind, to] : kinds) {
        bool complete = true;
        for (const LotShape& shape : drawn.shapes) {
            if (shape.thing != kind) continue;
            complete = complete && shape.complete;
            if (shape.shape.corners.empty()) continue;
            const Length far = gap(shape.shape, thing);
            if (!(near.*to) || far < *(near.*to)) near.*to = far;
        }
        // The part that has no place may be the nearer one.
        if (!complete) (near.*to).reset();
    }
    return near;
}

// From the footing's outer edge to the near edge of the widest trench that meets the node.
std::optional<Length> toFooting(const Job& job, std::size_t row) {
    const std::optional<Length>& wall = job.drawn.nodesNear[row].building;
    if (!wall) return std::nullopt;
    std::optional<Length> half;
    const std::string key = nameKey(job.nodes[row].name);
    for (const Run& run : job.runs)
        if (!run.blank && (nameKey(run.from) == key || nameKey(run.to) == key))
            half = std::max(half.value_or(Length{}), halfTrench(job, run));
    if (!half) return std::nullopt;
    return std::max(Length{}, *wall - job.rules.length("footing.beyond.wall") - *half);
}

bool stands(const std::vector<Unusable>& cells, std::string_view heading) {
    return std::any_of(cells.begin(), cells.end(),
                       [&](const Unusable& cell) { return cell.heading == heading; });
}
// True when the drawing's distance is taken.
bool fill(std::optional<Length>& cell, const std::optional<Length>& drawn,
          const std::vector<Unusable>& unusable, const char* heading) {
    if (cell || !drawn || stands(unusable, heading)) return false;
    cell = drawn;
    return true;
}

}  // namespace

Length halfTrench(const Job& job, const Run& run) {
    if (run.trenchWidth) return *run.trenchWidth / 2;
    return job.rules.length(trenchWidthKey(run.pipe ? run.pipe->nominal : 0)) / 2;
}

void measureLot(Job& job, const LotNet& lot) {
    DrawnLot& drawn = job.drawn;
    drawn.runs.resize(job.runs.size());
    drawn.nodesNear.resize(job.nodes.size());
    std::map<std::string, std::size_t> nodes;
    for (std::size_t row = 0; row < job.nodes.size(); ++row)
        if (!job.nodes[row].blank) nodes.emplace(nameKey(job.nodes[row].name), lot.ofNode[row]);
    const auto placeNamed = [&](const std::string& name) {
        const auto found = nodes.find(nameKey(name));
        return found == nodes.end() ? std::nullopt : placeOf(drawn, found->second);
    };
    findShapes(job, lot);
    for (std::size_t row = 0; row < job.runs.size(); ++row) {
        DrawnRun& run = drawn.runs[row];
        if (job.runs[row].blank) continue;
        run.from = placeNamed(job.runs[row].from);
        run.to = placeNamed(job.runs[row].to);
        if (!run.from || !run.to) continue;
        const PlanShape line{.corners = {*run.from, *run.to}};
        run.near = nearTo(drawn, line);
        const LotShape* nearest = nullptr;
        for (const LotShape& shape : drawn.shapes)
            if (shape.thing == LotThing::Building && !shape.shape.corners.empty() && run.near.building &&
                gap(shape.shape, line) == *run.near.building)
                nearest = &shape;
        if (nearest != nullptr) run.nearestBuilding = nearestShare(*run.from, *run.to, nearest->shape);
    }
    for (std::size_t row = 0; row < job.nodes.size(); ++row)
        if (const std::optional<PlanPoint> at = placeOf(drawn, lot.ofNode[row]))
            drawn.nodesNear[row] = nearTo(drawn, {.corners = {*at}});
    placePit(job);
    if (drawn.pit && drawn.pit->complete) drawn.pitNear = nearTo(drawn, drawn.pit->shape);
}

void fillDistances(Job& job) {
    const DrawnLot& drawn = job.drawn;
    for (std::size_t row = 0; row < job.nodes.size(); ++row) {
        Node& node = job.nodes[row];
        if (node.blank) continue;
        const LotNear& near = drawn.nodesNear[row];
        node.drawn = {.fromHouse = fill(node.fromHouse, near.building, node.unusable, "From house"),
                      .footing = fill(node.toFooting, toFooting(job, row), node.unusable, "To footing"),
                      .tree = fill(node.toTree, near.tree, node.unusable, "To tree"),
                      .septic = fill(node.toSeptic, near.septic, node.unusable, "To septic"),
                      .well = fill(node.toWell, near.well, node.unusable, "To well")};
    }
    for (Outlet& outlet : job.outlets) {
        if (outlet.blank) continue;
        for (std::size_t row = 0; row < job.nodes.size(); ++row) {
            if (job.nodes[row].blank || nameKey(job.nodes[row].name) != nameKey(outlet.node)) continue;
            const LotNear& near = drawn.nodesNear[row];
            outlet.drawn = {
                .lotLine = fill(outlet.lotLine, near.lotLine, outlet.unusable, "To lot line"),
                .walk = fill(outlet.walk, near.walk, outlet.unusable, "To walk"),
                .foundation = fill(outlet.foundation, near.building, outlet.unusable, "To foundation")};
            break;
        }
    }
    if (nameKey(job.pit.node).empty()) return;
    const std::pair<PitFact, std::optional<Length>> facts[] = {{PitFact::Foundation, drawn.pitNear.building},
                                                               {PitFact::LotLine, drawn.pitNear.lotLine},
                                                               {PitFact::Well, drawn.pitNear.well},
                                                               {PitFact::Septic, drawn.pitNear.septic},
                                                               {PitFact::Pool, drawn.pitNear.pool}};
    for (const auto& [fact, far] : facts) {
        const char* const key = pitFactTable()[static_cast<std::size_t>(fact)].key;
        if (job.pit.facts[fact] || !far || stands(job.pit.unusable, key)) continue;
        job.pit.facts.set(key, far->metres(), UnitSystem::Metric);
        job.pit.drawn = true;
    }
}

}  // namespace trenchbook
