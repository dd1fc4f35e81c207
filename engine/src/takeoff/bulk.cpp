// Sums over the job: glue, sand, rock, fabric, sod, and what is hauled off.
#include <numbers>

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
        // Pipe that lies there has no bells of ours, and need not be known.
        if (const std::optional<Pipe>& pipe = job.runs[row].pipe; pipe && run.bells)
            bulk.glued += glued({{*pipe, *run.bells}});
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

// Stone at the ends of the lines and the ground under it; not known where stone is laid and its apron has no size.
struct Aprons {
    Volume stone;
    Area bed;
};
std::optional<Aprons> apronsOf(const Job& job, const SolvedJob& solved) {
    Aprons all;
    for (std::size_t row = 0; row < job.outlets.size(); ++row) {
        if (job.outlets[row].blank || !job.outlets[row].apronStone) continue;
        if (!solved.outlets[row].apron) return std::nullopt;
        const StoneApron& apron = *solved.outlets[row].apron;
        all.stone += apron.volume;
        all.bed += apron.length * (apron.widthAtPipe + apron.widthAtEnd) * 0.5;
    }
    return all;
}

// Holes that pump basins stand in.
struct Holes {
    Volume dug, basins;
};
std::optional<Holes> pumpHoles(const Job& job, const Takeoff& takeoff, std::vector<Finding>& findings) {
    Holes all;
    bool known = true;
    for (const Pump& pump : job.pumps) {
        if (pump.blank) continue;
        for (std::size_t row = 0; row < job.nodes.size(); ++row) {
            const Node& node = job.nodes[row];
            if (!takeoff.nodes[row].counted || !node.kinds.has(NodeKind::PumpBasin) ||
                nameKey(node.name) != nameKey(pump.node))
                continue;
            const std::optional<Length> across = pump.outside ? pump.outside : pump.inside;
            if (!across || !pump.floor || !node.ground || !(*node.ground > *pump.floor)) {
                known = false;
                findings.push_back(
                    notCounted(Part::Nodes, row, Standing::InputMissing,
                               {"diameter or floor of the pump basin is not known: its hole is not counted",
                                "falta diámetro o fondo del cárcamo: su hoyo no se cuenta"}));
                continue;
            }
            const Length deep = *node.ground - *pump.floor,
                         hole = *across + 2 * job.rules.length("pump.basin.room");
            all.dug += hole * hole * (std::numbers::pi / 4) * deep;
            all.basins += *across * *across * (std::numbers::pi / 4) * deep;
        }
    }
    return known ? std::optional(all) : std::nullopt;
}

// Pipe that lies in trenches: runs and discharges, all of them known or none.
std::optional<Length> laidOf(const Job& job, const Takeoff& takeoff) {
    Length sum;
    for (const Run& run : job.runs) {
        if (run.blank || run.existing) continue;
        if (!run.length) return std::nullopt;
        sum += *run.length;
    }
    for (const NodeTakeoff& node : takeoff.nodes) {
        if (!node.discharge) continue;
        if (!node.discharge->length) return std::nullopt;
        sum += *node.discharge->length;
    }
    return sum;
}

std::optional<Paving> pavingOf(const Job& job, const Takeoff& takeoff) {
    Paving sum;
    for (std::size_t row = 0; row < job.runs.size(); ++row) {
        if (job.runs[row].blank) continue;
        const std::optional<Paving>& one = takeoff.runs[row].paving;
        if (!one) return std::nullopt;
        sum.walk += one->walk;
        sum.drive += one->drive;
        sum.street += one->street;
    }
    return sum;
}

// Around channel drains, and cast to pump basins.
std::optional<double> concreteBags(const Job& job, std::optional<Length> channel) {
    if (!channel) return std::nullopt;
    Volume sum = *channel * Area::squareFeet(job.rules.in("channel.concrete", UnitSystem::US));
    for (const Pump& pump : job.pumps)
        if (!pump.blank) sum += pump.concrete.value_or(Volume{});
    return sum / Volume::cubicFeet(job.rules.in("concrete.bag", UnitSystem::US));
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
    const std::optional<Aprons> aprons = apronsOf(job, solved);
    const std::optional<Holes> holes = pumpHoles(job, takeoff, findings);
    if (aprons) {
        bulk.apron = aprons->stone;
        bulk.apronWeight = bulkWeight(aprons->stone, density("rock.density"));
        bulk.fabric = added(pit.fabric, std::optional(aprons->bed));
    }
    if (pit.earth && aprons && holes) {
        bulk.pitEarth = *pit.earth + aprons->stone + holes->dug;
        bulk.soilBack = *pit.earth - *pit.rock + holes->dug - holes->basins;
        bulk.pumpRoom = holes->basins;
    }
    if (bulk.rock) bulk.rockWeight = bulkWeight(*bulk.rock, density("rock.density"));
    bulk.channel = channelsOf(job, takeoff, findings);
    bulk.concreteBags = concreteBags(job, bulk.channel);
    bulk.laid = laidOf(job, takeoff);
    bulk.paving = pavingOf(job, takeoff);
    bulk.lawn = added(total(job, takeoff, &RunTakeoff::lawn), pit.plan);
    if (bulk.lawn) bulk.sod = *bulk.lawn * terms.sodShare;
    bulk.surplus = added(added(added(bulk.bedding, bulk.pipeRoom), bulk.rock),
                         added(bulk.apron, bulk.pitEarth ? std::optional(bulk.pumpRoom) : std::nullopt));
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
