// Sums over the job: glue, sand, rock, fabric, sod, and what is hauled off.
#include "takeoff/parts.h"
#include "trenchbook/core/error.h"
#include "trenchbook/ground/earthwork.h"

namespace trenchbook::counting {
namespace {

// The sum of one member over all rows in use; none where a row's is not known.
template <class Value>
std::optional<Value> total(const Job& job, const Takeoff& takeoff, std::optional<Value> RunTakeoff::*member) {
    Value sum{};
    for (std::size_t row = 0; row < job.runs.size(); ++row) {
        if (job.runs[row].blank) continue;
        const std::optional<Value>& one = takeoff.runs[row].*member;
        if (!one) return std::nullopt;
        sum += *one;
    }
    return sum;
}

template <class Value>
std::optional<Value> added(std::optional<Value> first, std::optional<Value> second) {
    if (!first || !second) return std::nullopt;
    return *first + *second;
}

std::size_t glued(const std::vector<Sockets>& sockets) {
    std::size_t count = 0;
    for (const Sockets& at : sockets)
        if (at.pipe.joint == Joint::SolventWeld) count += at.count;
    return count;
}

void glue(const Job& job, const Network& lines, const Takeoff& takeoff, Bulk& bulk) {
    bulk.cementPints = total(job, takeoff, &RunTakeoff::cementPints);
    for (std::size_t row = 0; row < job.runs.size(); ++row) {
        const RunTakeoff& run = takeoff.runs[row];
        if (run.bells) bulk.glued += glued({{*job.runs[row].pipe, *run.bells}});
        if (run.adapter) bulk.glued += glued(run.adapter->sockets);
    }
    std::size_t counted = 0;
    for (const NodeTakeoff& node : takeoff.nodes) {
        counted += node.counted ? 1 : 0;
        for (const Piece& piece : node.pieces) bulk.glued += piece.count * glued(piece.sockets);
        if (bulk.cementPints) *bulk.cementPints += node.cementPints;
        if (!node.discharge) continue;
        if (node.discharge->bells)
            bulk.glued += glued({{node.discharge->pipe, *node.discharge->bells}});
        else
            bulk.cementPints.reset();
    }
    // A point of the lines that is not counted leaves the sum open.
    if (counted != lines.nodes()) bulk.cementPints.reset();
    if (bulk.cementPints) bulk.primerPints = *bulk.cementPints * job.rules.number("glue.primer");
}

// A pit that is not there takes nothing; one without a size leaves its sums unknown.
struct PitPlan {
    std::optional<Area> plan = Area();
    std::optional<Volume> rock = Volume(), earth = Volume();
    std::optional<Area> fabric = Area();
};
PitPlan pitOf(const Job& job, std::vector<Finding>& findings) {
    const Pit& pit = job.pit;
    const auto unknown = [&](Text says) {
        findings.push_back(notCounted(Part::Pit, Finding::whole, Standing::InputMissing, std::move(says)));
    };
    if (pit.node.empty()) {
        if (pit.length || pit.width || pit.rockDepth)
            unknown({"the pit has a size but no node: its earth, rock and fabric are not counted",
                     "el pozo tiene medidas pero no nodo: tierra, roca y geotextil no se cuentan"});
        return {};
    }
    PitPlan counted{.plan = {}, .rock = {}, .earth = {}, .fabric = {}};
    if (!pit.length || !pit.width || !pit.rockDepth) {
        unknown({"a size of the pit is missing: its earth, rock and fabric are not counted",
                 "falta una medida del pozo: tierra, roca y geotextil no se cuentan"});
        return counted;
    }
    const Length around = (*pit.length + *pit.width) * 2;
    counted.plan = *pit.length * *pit.width;
    counted.rock = *counted.plan * *pit.rockDepth;
    counted.fabric = *counted.plan * 2 + around * (*pit.rockDepth + job.rules.length("fabric.overlap"));
    if (pit.soilOver)
        counted.earth = *counted.plan * (*pit.rockDepth + *pit.soilOver);
    else
        unknown({"the soil over the rock is not known: digging the pit is not counted",
                 "no se sabe cuánta tierra va sobre la roca: excavar el pozo no se cuenta"});
    return counted;
}

// Stone at the ends of the lines; not known where stone is laid and its apron has no size.
std::optional<Weight> apronsOf(const Job& job, const SolvedJob& solved, BulkDensity density) {
    Volume stone{};
    for (std::size_t row = 0; row < job.outlets.size(); ++row) {
        if (job.outlets[row].blank || !job.outlets[row].apronStone) continue;
        if (!solved.outlets[row].apron) return std::nullopt;
        stone += solved.outlets[row].apron->volume;
    }
    return bulkWeight(stone, density);
}

// Trench drains by the lengths on Water. A channel on Nodes that no row of Water gives a length is not counted, and said.
std::optional<Length> channelsOf(const Job& job, const Takeoff& takeoff, std::vector<Finding>& findings) {
    std::optional<Length> sum = Length();
    for (std::size_t row = 0; row < job.nodes.size(); ++row) {
        if (!takeoff.nodes[row].counted || !job.nodes[row].kinds.has(NodeKind::Channel)) continue;
        std::optional<Length> here;
        for (const JobInlet& inlet : job.inlets)
            if (!inlet.blank && inlet.length && nameKey(inlet.node) == nameKey(job.nodes[row].name) &&
                inlet.entersBy != EntersBy::Downspout && inlet.entersBy != EntersBy::Grate)
                here = here.value_or(Length()) + *inlet.length;
        if (here && sum) *sum += *here;
        if (here) continue;
        sum.reset();
        findings.push_back(
            notCounted(Part::Nodes, row, Standing::InputMissing,
                       {"no row of Water gives the length of this channel drain: it is not counted",
                        "ninguna fila de Water da el largo de este canal: no se cuenta"}));
    }
    return sum;
}

}  // namespace

Bulk sumUp(const Job& job, const SolvedJob& solved, const TakeoffTerms& terms, const Takeoff& takeoff,
           std::vector<Finding>& findings) {
    const Ruleset& rules = job.rules;
    const auto density = [&](const char* key) {
        return BulkDensity::shortTonsPerCubicYard(rules.in(key, UnitSystem::US));
    };
    Bulk bulk;
    glue(job, solved.lines, takeoff, bulk);
    bulk.bank = total(job, takeoff, &RunTakeoff::bank);
    bulk.deepBank = total(job, takeoff, &RunTakeoff::deepBank);
    bulk.bedding = total(job, takeoff, &RunTakeoff::bedding);
    bulk.pipeRoom = total(job, takeoff, &RunTakeoff::pipeRoom);
    if (bulk.bedding) bulk.beddingWeight = bulkWeight(*bulk.bedding, density("sand.density"));
    const PitPlan pit = pitOf(job, findings);
    bulk.protect = total(job, takeoff, &RunTakeoff::protect);
    bulk.trenchRock = total(job, takeoff, &RunTakeoff::rock);
    bulk.rock = added(pit.rock, bulk.trenchRock);
    bulk.pitEarth = pit.earth;
    bulk.fabric = pit.fabric;
    if (bulk.rock) bulk.rockWeight = bulkWeight(*bulk.rock, density("rock.density"));
    bulk.apronWeight = apronsOf(job, solved, density("rock.density"));
    for (const Pump& pump : job.pumps)
        if (!pump.blank) bulk.concrete += pump.concrete.value_or(Volume{});
    bulk.channel = channelsOf(job, takeoff, findings);
    bulk.lawn = added(total(job, takeoff, &RunTakeoff::lawn), pit.plan);
    if (bulk.lawn) bulk.sod = *bulk.lawn * terms.sodShare;
    bulk.surplus = added(added(bulk.bedding, bulk.pipeRoom), bulk.rock);
    if (bulk.surplus) {
        bulk.haulLoose = looseVolume(*bulk.surplus, swellOf(job.facts.soil, rules));
        bulk.haulLoads = *bulk.haulLoose / Volume::cubicYards(rules.in("truck.load", UnitSystem::US));
    }
    return bulk;
}

}  // namespace trenchbook::counting

namespace trenchbook {

double swellOf(std::string_view soil, const Ruleset& rules) {
    const std::string words = nameKey(soil);
    const auto says = [&](const char* word) { return words.find(word) != std::string::npos; };
    if (says("clay") || says("arcill")) return rules.number("swell.clay");
    // Sandy loam and loamy sand swell like loam.
    const bool loam = says("loam") || says("franc");
    return rules.number((says("sand") || says("aren")) && !loam ? "swell.sand" : "swell.loam");
}

}  // namespace trenchbook
