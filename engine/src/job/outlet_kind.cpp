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

}  // namespace

OutletAsked asked(const Job& job, const NodeKinds& kinds) {
    if (kinds.has(NodeKind::Ditch)) return ofDitch(job.facts.outlet);
    if (kinds.has(NodeKind::Bank))
        return {.flowLine = true, .lotLine = true, .walk = true, .foundation = true};
    if (kinds.bubbles()) return {.lotLine = true, .walk = true, .foundation = true, .groundFalls = true};
    return {.flowLine = kinds.has(NodeKind::Curb) || kinds.has(NodeKind::ExistingPipe)};
}

}  // namespace trenchbook
