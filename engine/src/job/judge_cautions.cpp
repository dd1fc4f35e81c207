// Cautions: what the crew and the owner are warned of. They block nothing and are printed on their papers.
#include <algorithm>

#include "job/say.h"
#include "trenchbook/job/judge.h"

namespace trenchbook {
namespace {

std::optional<Length> deepestCut(const Job& job, const SolvedJob& solved) {
    std::optional<Length> deepest;
    const auto look = [&](const std::optional<Length>& cut) {
        if (cut && (!deepest || *cut > *deepest)) deepest = cut;
    };
    for (std::size_t row = 0; row < job.runs.size(); ++row) {
        if (job.runs[row].existing) continue;
        look(solved.runs[row].cutUp);
        look(solved.runs[row].cutDown);
        for (const GroundPoint& point : solved.runs[row].between) look(point.cut);
    }
    return deepest;
}

// Whether any of these lies over a run that is dug.
bool digsUnder(const Job& job, const SolvedJob& solved, std::initializer_list<CoverSurface> surfaces) {
    const auto is = [&](std::optional<CoverSurface> surface) {
        return surface && std::find(surfaces.begin(), surfaces.end(), *surface) != surfaces.end();
    };
    for (std::size_t row = 0; row < job.runs.size(); ++row) {
        const Run& run = job.runs[row];
        if (run.blank || run.existing) continue;
        if (is(run.surfaceUp) || is(run.surfaceDown)) return true;
        for (const GroundPoint& point : solved.runs[row].between)
            if (is(point.surface)) return true;
    }
    return false;
}

bool fuelNear(const Job& job) {
    return std::any_of(job.crossings.begin(), job.crossings.end(), [](const Crossing& crossing) {
        const std::string what = nameKey(crossing.what);
        for (const char* word : {"gas", "fuel", "sewer", "combustible", "sanitario"})
            if (what.find(word) != std::string::npos) return true;
        return false;
    });
}

// What is cut, and what stands beside the trench.
void besides(const Job& job, const SolvedJob& solved, RowFindings& told) {
    if (digsUnder(job, solved, {CoverSurface::Walk, CoverSurface::Drive, CoverSurface::Street})) {
        told.tell(
            Severity::Caution, Standing::Silica,
            {"Sawing concrete or pavers makes silica dust: wet saw or vacuum, and a mask (29 CFR 1926.1153, from "
             "memory). Saw on a GFCI.",
             "Cortar concreto o adoquín levanta polvo de sílice: sierra con agua o aspiradora, y mascarilla (29 "
             "CFR 1926.1153, de memoria). La sierra, con interruptor GFCI."});
        told.tell(
            Severity::Caution, Standing::DigUnder,
            {"Do not dig out under a walk, drive or slab that stays unless it is held (29 CFR 1926.651(i)).",
             "No excave por debajo de un andador, entrada o losa que se queda sin sostenerlos (29 CFR "
             "1926.651(i))."});
    }
    if (std::any_of(job.nodes.begin(), job.nodes.end(),
                    [](const Node& node) { return !node.blank && node.kinds.has(NodeKind::Basin); }))
        told.tell(Severity::Caution, Standing::BasinFloats,
                  {"An empty basin floats in wet ground: backfill it the same day, or fill it with water.",
                   "Una caja vacía flota en suelo mojado: rellénela el mismo día, o llénela de agua."});
    for (std::size_t row = 0; row < job.runs.size(); ++row) {
        const SolvedRun& run = solved.runs[row];
        if (!job.runs[row].outletWater || !run.invertDown || *job.runs[row].outletWater <= *run.invertDown)
            continue;
        told.tell(
            Severity::Caution, Standing::OutletUnderWater,
            {"An outlet stands in water: it can come back up the line. A check valve holds it.",
             "Una salida queda bajo el agua: puede regresar por la línea. Una válvula de retención la detiene."});
        break;
    }
}

void trench(const Job& job, const SolvedJob& solved, RowFindings& told) {
    const std::optional<Length> cut = deepestCut(job, solved);
    const auto limit = [&](const char* rule) { return amountText(limitOf(job.rules, rule), job.units); };
    const auto reached = [&](const char* rule) {
        return cut && !isUnder(cut->si(), limitOf(job.rules, rule).si);
    };
    if (reached("cut.exit"))
        told.tell(
            Severity::Caution, "cut.exit", cut->si(),
            Text{"Trench ", "Zanja de "} + limit("cut.exit") +
                Text{" or deeper: a safe way out within 25 ft (7.6 m) of anyone in it (29 CFR 1926.651).",
                     " o más: una salida segura a menos de 25 ft (7.6 m) de cualquiera dentro (29 CFR "
                     "1926.651)."});
    if (reached("cut.protect"))
        told.tell(Severity::Caution, "cut.protect", cut->si(),
                  Text{"Trench ", "Zanja de "} + limit("cut.protect") +
                      Text{" or deeper: protective system unless stable rock (29 CFR 1926.652).",
                           " o más: sistema de protección salvo en roca estable (29 CFR 1926.652)."});
    if (cut && isOver(cut->si(), limitOf(job.rules, "cut.air").si) &&
        (job.facts.septic == Answer::Yes || fuelNear(job)))
        told.tell(
            Severity::Caution, "cut.air", cut->si(),
            Text{"Trench deeper than ", "Zanja de más de "} + limit("cut.air") +
                Text{" near septic, sewer or fuel: test the air before anyone goes in (29 CFR 1926.651(g)).",
                     " cerca de fosa séptica, drenaje o combustible: pruebe el aire antes de entrar (29 CFR "
                     "1926.651(g))."});
    told.tell(
        Severity::Caution, "spoil.edge",
        Text{"A competent person looks at the trench every day and after rain. Spoil stays ",
             "Una persona competente revisa la zanja cada día y después de llover. La tierra queda a "} +
            limit("spoil.edge") + Text{" back from the edge.", " del borde."});
}

void pit(const Job& job, RowFindings& told) {
    if (nameKey(job.pit.node).empty()) return;
    told.tell(
        Severity::Caution, Standing::PitSoak,
        {"A soak test is no guarantee: groundwater moves with the season. Storms beyond the design overflow at "
         "the tee.",
         "Una prueba de absorción no es garantía: el agua subterránea cambia con la temporada. Las tormentas "
         "mayores a la de diseño brotan por la T."});
    told.tell(Severity::Caution, Standing::PitWell,
              {"A pit can count as a drainage well: ask the state's injection-well office.",
               "Un pozo de absorción puede contar como pozo de "
               "drenaje: pregunte a la oficina estatal de pozos de inyección."});
    if (job.facts.septic != Answer::No)
        told.tell(
            Severity::Caution, "pit.setback.septic.min",
            {"Keep the pit away from septic tank and field: ask the health department for the distance.",
             "Mantenga el pozo de absorción lejos de la fosa y el campo séptico: pregunte la distancia al "
             "departamento de salud."});
}

void pumps(const Job& job, RowFindings& told) {
    if (std::none_of(job.nodes.begin(), job.nodes.end(),
                     [](const Node& node) { return !node.blank && node.kinds.has(NodeKind::PumpBasin); }))
        return;
    told.tell(
        Severity::Caution, Standing::PumpWiring,
        {"An electrician connects the pump, on a circuit of its own with a GFCI where the code asks for it (NEC, "
         "from memory). Unplug it before anyone reaches into the basin.",
         "Un electricista conecta la bomba, en un circuito propio con GFCI donde lo pida el código (NEC, de "
         "memoria). Desconéctela antes de meter la mano al cárcamo."});
    told.tell(
        Severity::Caution, Standing::PumpPowerOut,
        {"A pump stops with the power, most often in a storm, and its discharge freezes where water stays in it: "
         "drain it or lay it under the frost. The owner tries pump and float each season.",
         "La bomba para cuando falla la luz, casi siempre en tormenta, y su descarga se congela donde queda "
         "agua: vacíela o entiérrela bajo la helada. El dueño prueba bomba y flotador cada temporada."});
}

}  // namespace

void judgeCautions(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings) {
    RowFindings told(job, Part::Job, Finding::whole, findings);
    told.tell(Severity::Caution, "handdig.tolerance",
              Text{"Call 811 before digging and wait for every answer. Within ",
                   "Llame al 811 antes de excavar y espere cada respuesta. A menos de "} +
                  amountText(limitOf(job.rules, "handdig.tolerance"), job.units) +
                  Text{" of a mark dig by hand.", " de una marca excave a mano."});
    trench(job, solved, told);
    besides(job, solved, told);
    if (job.facts.irrigation == Answer::Yes)
        told.tell(
            Severity::Caution, Standing::PoolBonding,
            {"By a pool the bonding wire stays whole: cut, it is an electrician's to mend (NEC 680.26, from memory).",
             "Junto a una alberca el cable de unión equipotencial queda entero: cortado, lo repara un "
             "electricista (NEC 680.26, de memoria)."});
    if (job.facts.irrigation != Answer::No)
        told.tell(Severity::Caution, Standing::LinesPrivate,
                  {"Irrigation and pool lines are private and not marked: run each zone and probe.",
                   "Las líneas de riego y alberca son privadas y no se marcan: pruebe cada zona y sondee."});
    pit(job, told);
    pumps(job, told);
    if (nameKey(job.facts.permission) != "got")
        told.tell(
            Severity::Caution, Standing::WaterPermission,
            {"Sending water onto a neighbor, a sidewalk or into a public ditch needs permission: ask first.",
             "Mandar agua al vecino, a la banqueta o a una cuneta pública requiere permiso: pregunte antes."});
    told.tell(
        Severity::Caution, Standing::WaterClean,
        {"Not for sanitary waste, sump, pool backwash or septic. Local codes and licensed practice decide.",
         "No es para aguas negras, cárcamo, retrolavado de alberca ni fosa séptica. Deciden el código local y "
         "la práctica con licencia."});
}

}  // namespace trenchbook
