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
Earth operator*(const Earth& earth, double share) { return {earth.bank * share, earth.deep * share}; }

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
// Beside crossings at the mean cut of their run; what is typed, and where no run is known, at the mean cut of the job. None
// where a part is not known.
std::optional<HandDigging> byHand(const Job& job, const SolvedJob& solved, const Takeoff& takeoff,
                                  Length more, std::vector<Finding>& findings) {
    HandDigging sum;
    bool known = true;
    const auto add = [&](Length length, Length of, const std::optional<Earth>& earth) {
        sum.length += length;
        if (length <= Length()) return;
        if (!earth || of <= Length()) {
            known = false;
            return;
        }
        const Earth here = *earth * std::min(1.0, length / of);
        sum.earth.bank += here.bank;
        sum.earth.deep += here.deep;
    };
    for (std::size_t row = 0; row < job.crossings.size(); ++row) {
        if (job.crossings[row].blank) continue;
        const std::size_t run = solved.crossings[row].run;
        if (run != Network::none && job.runs[run].existing) continue;
        if (const std::optional<Length>& here = solved.crossings[row].handDig) {
            if (run == Network::none) {
                more += *here;
                continue;
            }
            const RunTakeoff& dug = takeoff.runs[run];
            add(*here, job.runs[run].length.value_or(Length()),
                dug.bank && dug.deepBank ? std::optional(Earth{*dug.bank, *dug.deepBank}) : std::nullopt);
            continue;
        }
        known = false;
        findings.push_back(notCounted(Part::Crossings, row, Standing::InputMissing,
                                      {"digging by hand is not known here: it is not counted",
                                       "no se sabe cuánto excavar a mano aquí: no se cuenta"}));
    }
    const std::optional<Lengths> lengths = allLengths(job, takeoff);
    add(more, lengths ? lengths->all() : Length(), allEarth(job, takeoff));
    return known ? std::optional(sum) : std::nullopt;
}

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

}  // namespace

std::vector<WorkAmount> worksOf(const Job& job, const SolvedJob& solved, const TakeoffTerms& terms,
                                const Takeoff& takeoff, std::vector<Finding>& findings) {
    const Bulk& bulk = takeoff.bulk;
    const std::optional<Lengths> lengths = allLengths(job, takeoff);
    const std::optional<Earth> earth = allEarth(job, takeoff);
    const std::optional<HandDigging> hand = byHand(job, solved, takeoff, terms.handDigMore, findings);
    const auto byMachine = [&](Volume (*part)(const Earth&)) {
        return earth && hand ? std::optional(std::max(Volume(), part(*earth) - part(hand->earth)))
                             : std::nullopt;
    };
    const auto shallow = [](const Earth& of) { return of.shallow(); };
    const auto deep = [](const Earth& of) { return of.deep; };
    std::optional<Volume> backfill;
    if (earth && bulk.bedding && bulk.pipeRoom && bulk.trenchRock)
        backfill = std::max(Volume(), earth->bank - *bulk.bedding - *bulk.pipeRoom - *bulk.trenchRock);
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
    count(Work::Downspouts, {"Downspout connections", "Conexiones de bajantes"},
          nodesOf(job, takeoff, {NodeKind::Downspout}), Text::same("Nodes"));
    count(Work::BasinsChannelsOutlets, {"Basins, channels, outlets", "Cajas, canales, salidas"},
          nodesOf(job, takeoff,
                  {NodeKind::Basin, NodeKind::Channel, NodeKind::Riser, NodeKind::PopUp, NodeKind::Bank,
                   NodeKind::Ditch, NodeKind::Curb, NodeKind::ExistingPipe, NodeKind::PumpBasin,
                   NodeKind::Outlet}),
          Text::same("Nodes"));
    add(Work::SetChannel, {"Set channel drain in concrete", "Colocar canal en concreto"}, bulk.channel,
        {"Water: lengths of the trench drains", "Water: largos de los canales"});
    add(Work::DigPit, {"Dig pit", "Excavar pozo"}, bulk.pitEarth,
        {"Pit: its plan x (rock + soil over it)", "Pozo: su planta x (roca + tierra encima)"});
    add(Work::RockAndFabric, {"Rock and fabric", "Roca y geotextil"}, bulk.rock, {"Pit: rock", "Pozo: roca"});
    add(Work::Backfill, {"Backfill and tamp", "Rellenar y apisonar"}, backfill,
        {"trench less bedding, pipe and rock", "zanja menos cama, tubo y roca"});
    add(Work::LaySod, {"Lay sod", "Colocar pasto"}, bulk.lawn, lawn);
    add(Work::HaulSpoil, {"Load and haul spoil", "Cargar y retirar tierra"}, bulk.haulLoose,
        {"room of bedding, pipe and rock, loose", "lugar de cama, tubo y roca, suelto"});
    count(Work::FlushTest, {"Flush test and as-built", "Prueba de lavado y medidas"}, anyRun ? 1 : 0, oneJob);
    add(Work::HandDigLength, {"Feet dug by hand", "Largo excavado a mano"},
        hand ? std::optional(hand->length) : std::nullopt, handFrom);
    return works;
}

}  // namespace trenchbook::counting
