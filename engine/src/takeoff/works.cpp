// Amounts by kind of work, for Labor.
#include <algorithm>

#include "takeoff/parts.h"
#include "trenchbook/ground/earthwork.h"

namespace trenchbook::counting {
namespace {

// Pipe that is laid, smaller than 6 in and larger.
struct Lengths {
    Length small, large;

    Length all() const { return small + large; }
    void add(const std::optional<Pipe>& pipe, Length length) {
        (pipe && pipe->nominal >= 6 ? large : small) += length;
    }
};
std::optional<Lengths> allLengths(const Job& job, const Takeoff& takeoff) {
    Lengths sum;
    for (const NodeTakeoff& node : takeoff.nodes) {
        if (!node.discharge) continue;
        if (!node.discharge->length) return std::nullopt;
        sum.add(node.discharge->pipe, *node.discharge->length);
    }
    for (const Run& run : job.runs) {
        if (run.blank || run.existing) continue;
        if (!run.length) return std::nullopt;
        sum.add(run.pipe, *run.length);
    }
    return sum;
}

// Soil of the trenches in place: all of it, and what lies deeper than shovelThrow.
struct Earth {
    Volume bank, deep;

    Volume shallow() const { return bank - deep; }
};
// The trench of a pump's discharge has the least cover under lawn.
Volume dischargeTrench(const Job& job, const Discharge& discharge) {
    const Length cut = job.rules.length("cover.lawn") + discharge.pipe.outside.value_or(Length());
    return trenchVolume(*discharge.length, job.rules.length("trench.width.4in"), cut, cut);
}

std::optional<Earth> allEarth(const Job& job, const Takeoff& takeoff) {
    if (!takeoff.bulk.bank || !takeoff.bulk.deepBank) return std::nullopt;
    Earth sum{*takeoff.bulk.bank, *takeoff.bulk.deepBank};
    for (const NodeTakeoff& node : takeoff.nodes) {
        if (!node.discharge) continue;
        if (!node.discharge->length) return std::nullopt;
        sum.bank += dischargeTrench(job, *node.discharge);
    }
    return sum;
}

struct HandDigging {
    Length length;
    Earth earth;
};

// Stretches of one run, from its upper end.
struct Stretch {
    Length from, to;
};
// Feet that they cover together: a foot that two of them share is dug once.
Length covered(std::vector<Stretch> stretches) {
    std::sort(stretches.begin(), stretches.end(),
              [](const Stretch& a, const Stretch& b) { return a.from < b.from; });
    Length sum, reached;
    for (const Stretch& one : stretches) {
        const Length from = std::max(one.from, reached);
        if (one.to <= from) continue;
        sum += one.to - from;
        reached = one.to;
    }
    return sum;
}

// Around crossings, and what is typed, at the mean cut of the run or of the job. None where a part is not known.
class HandDug {
  public:
    HandDug(const Job& job, const SolvedJob& solved, const Takeoff& takeoff, std::vector<Finding>& findings)
        : job_(job), solved_(solved), takeoff_(takeoff), findings_(findings), dug_(job.runs.size()) {}

    std::optional<HandDigging> all(Length more) {
        for (std::size_t row = 0; row < job_.crossings.size(); ++row)
            if (!job_.crossings[row].blank) crossing(row, more);
        for (std::size_t run = 0; run < dug_.size(); ++run)
            if (!dug_[run].empty()) add(covered(dug_[run]), run);
        typed(more);
        return known_ ? std::optional(sum_) : std::nullopt;
    }

  private:
    void crossing(std::size_t row, Length& more) {
        const std::size_t run = solved_.crossings[row].run;
        if (run != Network::none && job_.runs[run].existing) return;
        const std::optional<Length>& asked = solved_.crossings[row].handDig;
        if (!asked || (run != Network::none && !job_.runs[run].length)) {
            known_ = false;
            findings_.push_back(notCounted(Part::Crossings, row, Standing::InputMissing,
                                           {"digging by hand is not known here: it is not counted",
                                            "no se sabe cuánto excavar a mano aquí: no se cuenta"}));
            return;
        }
        if (run == Network::none) {
            more += *asked;
            return;
        }
        // Half to each side; near an end, and where the place is not known, as much of the run.
        const Length length = *job_.runs[run].length, here = std::min(*asked, length);
        const Length middle = job_.crossings[row].at.value_or(here * 0.5);
        const Length from = std::clamp(middle - here * 0.5, Length(), length - here);
        const Length before = covered(dug_[run]);
        dug_[run].push_back({from, from + here});
        const Length again = *asked - (covered(dug_[run]) - before);
        if (again > Length::feet(0.005))
            findings_.push_back(notCounted(
                Part::Crossings, row, Standing::TakeoffLeavesOut,
                Text::same(said(again, job_.units, 1)) +
                    Text{" of it is dug by hand for another crossing, or lies beyond the run: counted once",
                         " se excava a mano por otro cruce, o queda fuera del tramo: se cuenta una vez"},
                Severity::Caution));
    }

    void add(Length length, std::size_t run) {
        const RunTakeoff& dug = takeoff_.runs[run];
        sum_.length += length;
        if (!dug.bank || !dug.deepBank) {
            known_ = false;
            return;
        }
        const double share = length / *job_.runs[run].length;
        sum_.earth.bank += *dug.bank * share;
        sum_.earth.deep += *dug.deepBank * share;
    }

    // Of what is left of the trench.
    void typed(Length more) {
        if (more <= Length()) return;
        const std::optional<Lengths> lengths = allLengths(job_, takeoff_);
        const std::optional<Earth> earth = allEarth(job_, takeoff_);
        if (!lengths || !earth || !known_) {
            known_ = false;
            return;
        }
        const Length left = std::max(Length(), lengths->all() - sum_.length), here = std::min(more, left);
        if (more > left)
            findings_.push_back(notCounted(Part::Runs, Finding::whole, Standing::TakeoffLeavesOut,
                                           Text{"more digging by hand is typed than trench is left: ",
                                                "se pide excavar a mano más que lo que queda de zanja: "} +
                                               Text::same(said(more - left, job_.units, 1)) +
                                               Text{" are not counted", " no se cuentan"},
                                           Severity::Check));
        if (here <= Length()) return;
        const double share = here / left;
        sum_.length += here;
        sum_.earth.bank += (earth->bank - sum_.earth.bank) * share;
        sum_.earth.deep += (earth->deep - sum_.earth.deep) * share;
    }

    const Job& job_;
    const SolvedJob& solved_;
    const Takeoff& takeoff_;
    std::vector<Finding>& findings_;
    std::vector<std::vector<Stretch>> dug_;  // by run
    HandDigging sum_;
    bool known_ = true;
};

// Nodes on the lines that are one of these kinds.
double nodesOf(const Job& job, const Takeoff& takeoff, std::initializer_list<NodeKind> kinds) {
    double count = 0;
    for (std::size_t row = 0; row < job.nodes.size(); ++row)
        for (const NodeKind kind : kinds)
            count += takeoff.nodes[row].counted && job.nodes[row].kinds.has(kind) ? 1 : 0;
    return count;
}

double wyesOf(const Takeoff& takeoff) {
    double count = 0;
    for (const NodeTakeoff& node : takeoff.nodes)
        for (const Piece& piece : node.pieces)
            if (piece.kind == PieceKind::Wye) count += static_cast<double>(piece.count);
    return count;
}
double downspoutsOf(const Takeoff& takeoff) {
    double count = 0;
    for (const NodeTakeoff& node : takeoff.nodes)
        for (const Riser& riser : node.risers) count += riser.kind == NodeKind::Downspout ? 1 : 0;
    return count;
}
// What is set beside wyes, cleanouts, downspouts and the first box or end of each node.
double fittingsOf(const Job& job, const Takeoff& takeoff) {
    double count = 0;
    for (const RunTakeoff& run : takeoff.runs)
        if (run.adapter) count += static_cast<double>(run.adapter->count);
    for (std::size_t row = 0; row < takeoff.nodes.size(); ++row) {
        double devices = 0, ownWork = 0;  // devices, and those of them that stand in a line of their own
        for (const Piece& piece : takeoff.nodes[row].pieces) {
            const auto many = static_cast<double>(piece.count);
            const bool hub =
                piece.kind == PieceKind::Body && piece.code.starts_with(info(NodeKind::Basin).body);
            if (piece.kind == PieceKind::Bend || piece.kind == PieceKind::Coupling ||
                piece.kind == PieceKind::Reducer || hub)
                count += many;
            if (piece.kind == PieceKind::Device) devices += many;
        }
        for (const NodeKindInfo& kind : nodeKindTable())
            if (job.nodes[row].kinds.has(kind.kind) && kind.kind != NodeKind::Cap && kind.device != nullptr)
                ownWork += kind.kind == NodeKind::Downspout ? 0 : 1;
        for (const Riser& riser : takeoff.nodes[row].risers)
            ownWork += riser.kind == NodeKind::Downspout ? 1 : 0;
        count += std::max(0.0, devices - ownWork);
    }
    return count;
}

}  // namespace

std::vector<WorkAmount> worksOf(const Job& job, const SolvedJob& solved, const TakeoffTerms& terms,
                                const Takeoff& takeoff, std::vector<Finding>& findings) {
    const Bulk& bulk = takeoff.bulk;
    const std::optional<Lengths> lengths = allLengths(job, takeoff);
    const std::optional<Earth> earth = allEarth(job, takeoff);
    const std::optional<HandDigging> hand = HandDug(job, solved, takeoff, findings).all(terms.handDigMore);
    const auto byMachine = [&](Volume (*part)(const Earth&)) {
        return earth && hand ? std::optional(std::max(Volume(), part(*earth) - part(hand->earth)))
                             : std::nullopt;
    };
    const auto shallow = [](const Earth& of) { return of.shallow(); };
    const auto deep = [](const Earth& of) { return of.deep; };
    std::optional<Volume> backfill;
    if (earth && bulk.bedding && bulk.pipeRoom && bulk.trenchRock && bulk.pitEarth)
        backfill = std::max(Volume(), earth->bank - *bulk.bedding - *bulk.pipeRoom - *bulk.trenchRock) +
                   bulk.soilBack;
    const bool anyRun =
        std::any_of(job.runs.begin(), job.runs.end(), [](const Run& run) { return !run.blank; });
    double asked = 0;
    if (terms.buyAsked)
        for (const AskedHere& here : takeoff.asked) asked += static_cast<double>(here.count);

    std::vector<WorkAmount> works;
    const auto add = [&](Work work, Text name, const auto& amount, Text from) {
        WorkAmount made{.work = work, .name = std::move(name), .from = std::move(from)};
        if (amount) made.amount = NetAmount{*amount};
        works.push_back(std::move(made));
    };
    const auto count = [&](Work work, Text name, double amount, Text from) {
        add(work, std::move(name), std::optional(amount), std::move(from));
    };
    const bool pumped = std::any_of(takeoff.nodes.begin(), takeoff.nodes.end(),
                                    [](const NodeTakeoff& node) { return node.discharge.has_value(); });
    const Text allRuns = pumped ? Text{"Runs and Pump: all lengths", "Runs y Pump: todos los largos"}
                                : Text{"Runs: all lengths", "Runs: todos los largos"};
    const Text oneJob{"one for the job", "uno por obra"},
        lawn{"trench and pit under lawn", "zanja y pozo bajo césped"};
    count(Work::SetUp, {"Layout and set-up", "Trazo y preparación"}, anyRun ? 1 : 0, oneJob);
    add(Work::CutSod, {"Cut and lay aside sod", "Cortar y apartar pasto"}, bulk.lawn, lawn);
    const Text cuts{"Runs and Pump: width x cut", "Runs y Pump: ancho x corte"};
    const std::string limit = said(shovelThrow, job.units, job.units == UnitSystem::Metric ? 1 : 0);
    const Text to{"down to " + limit, "hasta " + limit}, below{"below " + limit, "bajo " + limit};
    const Text lessHand{", less what is dug by hand", ", menos lo excavado a mano"};
    const Text handFrom{"Crossings, and what is typed: feet by hand x width x mean cut",
                        "Crossings y lo escrito: largo a mano x ancho x corte medio"};
    add(Work::DigByMachine, Text{"Dig trench by machine, ", "Excavar zanja con máquina, "} + to,
        byMachine(shallow), cuts + lessHand);
    add(Work::DigByMachineDeep, Text{"Dig trench by machine, ", "Excavar zanja con máquina, "} + below,
        byMachine(deep), cuts + lessHand);
    const auto handEarth = [&](Volume (*part)(const Earth&)) {
        return hand ? std::optional(part(hand->earth)) : std::nullopt;
    };
    add(Work::DigByHand, Text{"Dig trench by hand, ", "Excavar zanja a mano, "} + to, handEarth(shallow),
        handFrom);
    add(Work::DigByHandDeep, Text{"Dig trench by hand, ", "Excavar zanja a mano, "} + below, handEarth(deep),
        handFrom);
    add(Work::ProtectTrench, {"Shore or slope the trench", "Ademar o ataludar la zanja"},
        job.facts.protection == Protection::StableRock ? std::optional(Length()) : bulk.protect,
        {"Runs: trench as deep as cut.protect", "Runs: zanja tan honda como cut.protect"});
    add(Work::LayPipe, {"Bed, lay, join, grade: small pipe", "Cama, tender, unir, nivelar: tubo chico"},
        lengths ? std::optional(lengths->small) : std::nullopt, allRuns);
    add(Work::LayLargePipe, {"Bed, lay, join, grade: large pipe", "Cama, tender, unir, nivelar: tubo grande"},
        lengths ? std::optional(lengths->large) : std::nullopt, allRuns);
    count(Work::CleanoutsAndWyes, {"Cleanouts and wyes", "Registros y yes"},
          wyesOf(takeoff) + nodesOf(job, takeoff, {NodeKind::Cleanout}) + 2 * asked, Text::same("Nodes"));
    count(Work::SetFittings,
          {"Bends, couplings, adapters, hubs, valves", "Codos, coples, adaptadores, boquillas, válvulas"},
          fittingsOf(job, takeoff), {"Nodes and Runs: one each", "Nodes y Runs: uno por pieza"});
    count(Work::Downspouts, {"Downspout connections", "Conexiones de bajantes"}, downspoutsOf(takeoff),
          {"Nodes, as many as on Water", "Nodes, tantas como en Water"});
    count(Work::BasinsChannelsOutlets, {"Basins, channels, outlets", "Cajas, canales, salidas"},
          nodesOf(job, takeoff,
                  {NodeKind::Basin, NodeKind::Channel, NodeKind::Riser, NodeKind::PopUp, NodeKind::Bank,
                   NodeKind::Ditch, NodeKind::Tee, NodeKind::Curb, NodeKind::ExistingPipe,
                   NodeKind::PumpBasin, NodeKind::Outlet}),
          Text::same("Nodes"));
    add(Work::SetChannel, {"Set channel drain in concrete", "Colocar canal en concreto"}, bulk.channel,
        {"Water: lengths of the trench drains", "Water: largos de los canales"});
    add(Work::DigPit, {"Dig pit", "Excavar pozo"}, bulk.pitEarth,
        {"Pit: its plan x (rock + soil over it); pump basins, aprons",
         "Pozo: su planta x (roca + tierra encima); cárcamos, zampeados"});
    add(Work::RockAndFabric, {"Rock and fabric", "Roca y geotextil"}, bulk.rock, {"Pit: rock", "Pozo: roca"});
    add(Work::LayApron, {"Lay apron stone", "Colocar piedra de zampeado"}, bulk.apron,
        {"Outlets: stone aprons", "Outlets: zampeados"});
    add(Work::Backfill, {"Backfill and tamp", "Rellenar y apisonar"}, backfill,
        {"trench less bedding, pipe and rock; soil over the pit",
         "zanja menos cama, tubo y roca; tierra sobre el pozo"});
    add(Work::LaySod, {"Lay sod", "Colocar pasto"}, bulk.lawn, lawn);
    add(Work::RestorePaving, {"Cut and make good paving", "Cortar y reponer pavimento"},
        bulk.paving ? std::optional(bulk.paving->all()) : std::nullopt,
        {"Runs: length x trench width under walk, drive, street",
         "Runs: largo x ancho de zanja bajo andador, entrada, calle"});
    add(Work::HaulSpoil, {"Load and haul spoil", "Cargar y retirar tierra"}, bulk.haulLoose,
        {"room of bedding, pipe, rock and boxes, loose", "lugar de cama, tubo, roca y cajas, suelto"});
    count(Work::FlushTest, {"Flush test and as-built", "Prueba de lavado y medidas"}, anyRun ? 1 : 0, oneJob);
    add(Work::HandDigLength, {"Feet dug by hand", "Largo excavado a mano"},
        hand ? std::optional(hand->length) : std::nullopt, handFrom);
    return works;
}

}  // namespace trenchbook::counting
