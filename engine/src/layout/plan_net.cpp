#include "trenchbook/layout/plan_net.h"

#include <string>

#include "layout/plan_parts.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

void check(const PlanNet& net) {
    const auto refuse = [](std::size_t tape, const Text& what) {
        throw Error(Error::Kind::BadArgument, "tapes",
                    Text{"tape ", "la cinta "} + Text::same(std::to_string(tape + 1) + " ") + what);
    };
    for (std::size_t i = 0; i < net.tapes.size(); ++i) {
        const PlanTape& tape = net.tapes[i];
        const std::size_t end = tape.wallEnd.value_or(tape.from);
        if (tape.from >= net.points.size() || tape.to >= net.points.size() || end >= net.points.size())
            refuse(i, {"names a point that is not listed", "nombra un punto que no está en la lista"});
        if (tape.from == tape.to || tape.to == end || (tape.wallEnd && end == tape.from))
            refuse(i, {"goes from a point to itself", "va de un punto a sí mismo"});
        const double length = tape.length.si();
        if (!(tape.wallEnd ? length >= 0 : length > 0) || !(tape.error > Length{}))
            refuse(i, {"must be above 0, and its error too", "debe ser mayor que 0, y su error también"});
    }
}

}  // namespace

PlacedPlan placePoints(const PlanNet& net) {
    check(net);
    PlacedPlan plan;
    plan.points.resize(net.points.size());
    plan.residuals.resize(net.tapes.size());
    layout::placeFirst(net, plan);
    layout::adjust(net, plan);
    return plan;
}

}  // namespace trenchbook
