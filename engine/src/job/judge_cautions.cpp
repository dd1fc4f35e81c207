// Cautions: what the crew and the owner are warned of. They block nothing and are printed on their papers.
#include <algorithm>

#include "job/say.h"
#include "trenchbook/job/judge.h"

namespace trenchbook {
namespace {

std::optional<Length> deepestCut(const SolvedJob& solved) {
    std::optional<Length> deepest;
    for (const SolvedRun& run : solved.runs)
        for (const std::optional<Length>& cut : {run.cutUp, run.cutDown})
            if (cut && (!deepest || *cut > *deepest)) deepest = cut;
    return deepest;
}

void trench(const Job& job, const SolvedJob& solved, RowFindings& told) {
    const std::optional<Length> cut = deepestCut(solved);
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
    told.tell(
        Severity::Caution, "spoil.edge",
        Text{"A competent person looks at the trench every day and after rain. Spoil stays ",
             "Una persona competente revisa la zanja cada día y después de llover. La tierra queda a "} +
            limit("spoil.edge") + Text{" back from the edge.", " del borde."});
}

void pit(const Job& job, RowFindings& told) {
    if (nameKey(job.pit.node).empty()) return;
    told.tell(
        Severity::Caution,
        {"A soak test is no guarantee: groundwater moves with the season. Storms beyond the design overflow at "
         "the tee.",
         "Una prueba de absorción no es garantía: el agua subterránea cambia con la temporada. Las tormentas "
         "mayores a la de diseño brotan por la T."});
    told.tell(Severity::Caution,
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

}  // namespace

void judgeCautions(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings) {
    RowFindings told(job, Part::Job, Finding::whole, findings);
    told.tell(Severity::Caution, "handdig.tolerance",
              Text{"Call 811 before digging and wait for every answer. Within ",
                   "Llame al 811 antes de excavar y espere cada respuesta. A menos de "} +
                  amountText(limitOf(job.rules, "handdig.tolerance"), job.units) +
                  Text{" of a mark dig by hand.", " de una marca excave a mano."});
    trench(job, solved, told);
    if (job.facts.irrigation != Answer::No)
        told.tell(Severity::Caution,
                  {"Irrigation and pool lines are private and not marked: run each zone and probe.",
                   "Las líneas de riego y alberca son privadas y no se marcan: pruebe cada zona y sondee."});
    pit(job, told);
    if (nameKey(job.facts.permission) != "got")
        told.tell(
            Severity::Caution,
            {"Sending water onto a neighbor, a sidewalk or into a public ditch needs permission: ask first.",
             "Mandar agua al vecino, a la banqueta o a una cuneta pública requiere permiso: pregunte antes."});
    told.tell(
        Severity::Caution,
        {"Not for sanitary waste, sump, pool backwash or septic. Local codes and licensed practice decide.",
         "No es para aguas negras, cárcamo, retrolavado de alberca ni fosa séptica. Deciden el código local y "
         "la práctica con licencia."});
}

}  // namespace trenchbook
