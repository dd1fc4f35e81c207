#include "job/outlet_kind.h"

#include "trenchbook/lines/network.h"

namespace trenchbook {
namespace {

OutletAsked ofDitch(std::string_view whose) {
    const std::string key = nameKey(whose);
    if (key == "roadside ditch" || key == "cuneta") return {.flowLine = true};
    if (key == "easement swale" || key == "zanja de servidumbre")
        return {.flowLine = true, .walk = true, .foundation = true};
    return {.flowLine = true, .lotLine = true, .walk = true, .foundation = true};
}

// Where the discharge pipe of a pump leaves the water. What goes to curb, ditch or inlet of the public asks for none.
OutletAsked ofDischarge(std::string_view whose) {
    const std::string key = nameKey(whose);
    for (const char* others :
         {"roadside ditch", "cuneta", "curb", "bordillo", "public inlet", "sumidero público"})
        if (key == others) return {};
    return {.lotLine = true, .walk = true, .foundation = true};
}

}  // namespace

OutletAsked asked(const Job& job, const NodeKinds& kinds) {
    if (kinds.has(NodeKind::Ditch)) return ofDitch(job.facts.outlet);
    if (kinds.has(NodeKind::Bank))
        return {.flowLine = true, .lotLine = true, .walk = true, .foundation = true};
    if (kinds.bubbles()) return {.lotLine = true, .walk = true, .foundation = true, .groundFalls = true};
    if (kinds.has(NodeKind::PumpBasin)) return ofDischarge(job.facts.outlet);
    return {.flowLine = kinds.has(NodeKind::Curb) || kinds.has(NodeKind::ExistingPipe)};
}

}  // namespace trenchbook
