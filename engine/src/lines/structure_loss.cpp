#include "trenchbook/lines/structure_loss.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <numbers>
#include <string>

#include "trenchbook/core/error.h"
#include "trenchbook/core/text.h"
#include "trenchbook/pipe/circular.h"

namespace trenchbook {
namespace {

constexpr double entranceK = 0.2;

// HEC-22, table 7-6: of the bench drowned (Eai/D above 2.5) and free (below 1), straight between.
struct Bench {
    StructureFloor floor;
    double drowned, free;
    std::string_view english, spanish;
};
constexpr Bench benches[] = {
    {StructureFloor::Flat, -0.05, -0.05, "flat", "plano"},
    {StructureFloor::Depressed, 0.0, 0.0, "depressed", "deprimido"},
    {StructureFloor::HalfBench, -0.05, -0.85, "half bench", "media banqueta"},
    {StructureFloor::FullBench, -0.25, -0.93, "full bench", "banqueta completa"},
    {StructureFloor::Improved, -0.60, -0.98, "improved", "mejorado"},
};

double benchCoefficient(StructureFloor floor, double depthOverBore) {
    const auto row = std::find_if(std::begin(benches), std::end(benches),
                                  [&](const Bench& b) { return b.floor == floor; });
    const double share = std::clamp((depthOverBore - 1) / (2.5 - 1), 0.0, 1.0);
    return row->free + (row->drowned - row->free) * share;
}

void requireInflows(const StructureOutlet& outlet, std::span<const StructureInflow> inflows) {
    Flow sum;
    for (const StructureInflow& inflow : inflows) {
        requireNotNegative(inflow.flow, "inflows");
        requireBetween(inflow.turn.degrees(), 0, 180, "turns");
        requireNotNegative(inflow.drop, "drops");
        sum += inflow.flow;
    }
    // Inflows that were added up elsewhere may differ in the last places.
    if (sum > outlet.flow * (1 + 1e-9)) {
        const auto said = [](Flow flow) {
            return plain(flow.gpm(), 2) + " gpm (" + plain(flow.litresPerSecond(), 3) + " L/s)";
        };
        throw Error(Error::Kind::BadArgument, "inflows",
                    Text{"inflows together are " + said(sum) + ", but only " + said(outlet.flow) + " leave.",
                         "inflows suman " + said(sum) + ", pero solo salen " + said(outlet.flow) + "."});
    }
}

}  // namespace

StructureOutlet structureOutlet(Length bore, Flow flow, Length water) {
    requirePositive(bore, "pipe");
    requirePositive(flow, "flow");
    requirePositive(water, "water");
    const Segment wetted = segmentAt(bore, water);
    const double velocity = (flow / wetted.area).metresPerSecond();
    const Length head = Length::metres(velocity * velocity / (2 * gravity));
    return {.bore = bore,
            .flow = flow,
            .energy = water + head,
            .velocityHead = head,
            .shooting = froudeNumber(wetted, flow) > 1};
}

StructureFloor structureFloor(std::string_view name) {
    const std::string key = nameKey(name);
    for (const Bench& bench : benches)
        if (key == bench.english || key == bench.spanish) return bench.floor;
    throw Error(Error::Kind::BadArgument, "floor", "\"" + std::string(name) + "\"",
                {"flat, depressed, half bench, full bench or improved",
                 "plano, deprimido, media banqueta, banqueta completa o mejorado"});
}

StructureEnergy structureEnergy(const StructureOutlet& outlet, std::span<const StructureInflow> inflows,
                                StructureFloor floor) {
    requirePositive(outlet.bore, "pipe");
    requirePositive(outlet.flow, "flow");
    requireInflows(outlet, inflows);

    StructureEnergy found;
    found.dischargeIntensity =
        (outlet.flow / fullArea(outlet.bore)).si() / std::sqrt(gravity * outlet.bore.si());
    found.outletControl = outlet.shooting ? Length{} : outlet.energy + outlet.velocityHead * entranceK;
    found.drowned = outlet.bore * (found.dischargeIntensity * found.dischargeIntensity);
    found.free = outlet.bore * (1.6 * std::pow(found.dischargeIntensity, 0.67));
    found.initial = std::max({found.outletControl, found.drowned, found.free});

    Flow turning;
    double weighted = 0;
    for (const StructureInflow& inflow : inflows) {
        if (inflow.drop > found.initial) {
            const Length counted = std::min(inflow.drop, outlet.bore * 10);
            found.plunge +=
                inflow.flow / outlet.flow * std::max(0.0, (counted - found.initial) / outlet.bore);
        } else {
            turning += inflow.flow;
            weighted += inflow.flow.si() * (180 - inflow.turn.degrees());
        }
    }
    if (turning > Flow{}) {
        const double angle = weighted / turning.si() * std::numbers::pi / 180;
        // Straight on is exactly nothing: cos(pi/2) is not 0 in a double.
        found.turn = std::max(0.0, 4.5 * (turning / outlet.flow) * std::cos(angle / 2));
        if (found.turn < 1e-12) found.turn = 0;
    }
    found.floor = benchCoefficient(floor, found.initial / outlet.bore);

    const Length over = std::max(Length{}, found.initial - outlet.energy);
    found.additional = std::max(Length{}, over * (found.floor + found.turn + found.plunge));
    found.energy = std::max(outlet.energy, found.initial + found.additional);
    found.loss = found.energy - outlet.energy;
    return found;
}

}  // namespace trenchbook
