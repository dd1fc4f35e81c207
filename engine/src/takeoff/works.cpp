// Amounts by kind of work, for Labor.
#include <algorithm>

#include "takeoff/parts.h"

namespace trenchbook::counting {
namespace {

std::optional<Length> allLengths(const Job& job, const Takeoff& takeoff) {
    Length sum;
    for (const NodeTakeoff& node : takeoff.nodes) {
        if (!node.discharge) continue;
        if (!node.discharge->length) return std::nullopt;
        sum += *node.discharge->length;
    }
    for (const Run& run : job.runs) {
        if (run.blank || run.existing) continue;
        if (!run.length) return std::nullopt;
        sum += *run.length;
    }
    return sum;
}

std::optional<Length> byHand(const Job& job, const SolvedJob& solved, Length more,
                             std::vector<Finding>& findings) {
    std::optional<Length> sum = more;
    for (std::size_t row = 0; row < job.crossings.size(); ++row) {
        if (job.crossings[row].blank) continue;
        if (const std::size_t run = solved.crossings[row].run; run != Network::none && job.runs[run].existing)
            continue;
        if (const std::optional<Length>& here = solved.crossings[row].handDig) {
            if (sum) *sum += *here;
            continue;
        }
        sum.reset();
        findings.push_back(notCounted(Part::Crossings, row, Standing::InputMissing,
                                      {"digging by hand is not known here: it is not counted",
                                       "no se sabe cuánto excavar a mano aquí: no se cuenta"}));
    }
    return sum;
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
    const std::optional<Length> length = allLengths(job, takeoff);
    const std::optional<Length> hand = byHand(job, solved, terms.handDigMore, findings);
    const std::optional<Length> machine =
        length && hand ? std::optional(std::max(Length(), *length - *hand)) : std::nullopt;
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
    add(Work::DigByMachine, {"Dig trench by machine", "Excavar zanja con máquina"}, machine,
        allRuns + Text{" but those by hand", " menos los de a mano"});
    add(Work::DigByHand, {"Dig trench by hand", "Excavar zanja a mano"}, hand,
        {"Crossings: hand digging; and what is typed", "Crossings: excavación a mano; y lo escrito"});
    add(Work::LayPipe, {"Bed, lay, glue, grade", "Cama, tender, pegar, nivelar"}, length, allRuns);
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
    add(Work::DigPit, {"Dig pit", "Excavar pozo"}, bulk.pitEarth,
        {"Pit: its plan x (rock + soil over it)", "Pozo: su planta x (roca + tierra encima)"});
    add(Work::RockAndFabric, {"Rock and fabric", "Roca y geotextil"}, bulk.rock, {"Pit: rock", "Pozo: roca"});
    add(Work::Backfill, {"Backfill and tamp", "Rellenar y apisonar"}, length, allRuns);
    add(Work::LaySod, {"Lay sod", "Colocar pasto"}, bulk.lawn, lawn);
    add(Work::HaulSpoil, {"Load and haul spoil", "Cargar y retirar tierra"}, bulk.haulLoose,
        {"room of bedding, pipe and rock, loose", "lugar de cama, tubo y roca, suelto"});
    count(Work::FlushTest, {"Flush test and as-built", "Prueba de lavado y medidas"}, anyRun ? 1 : 0, oneJob);
    return works;
}

}  // namespace trenchbook::counting
