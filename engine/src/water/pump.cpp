#include "trenchbook/water/pump.h"

#include <boost/math/tools/toms748_solve.hpp>
#include <cstdint>
#include <numbers>
#include <string>

#include "trenchbook/core/error.h"
#include "trenchbook/pipe/circular.h"
#include "trenchbook/pipe/fittings.h"

namespace trenchbook {
namespace {

std::string feetAndMetres(Length length) {
    return plain(length.feet(), 2) + " ft (" + plain(length.metres(), 2) + " m)";
}
std::string gpmAndLitres(Flow flow) {
    return plain(flow.gpm(), 1) + " gpm (" + plain(flow.litresPerSecond(), 2) + " L/s)";
}

Area basinArea(Length diameter) { return diameter * diameter * (std::numbers::pi / 4); }

void requireCurve(std::span<const PumpPoint> curve) {
    if (curve.size() < 2)
        throw Error(Error::Kind::BadArgument, "curve flow", curve.empty() ? "blank" : "a single point",
                    {"two points of the pump curve or more", "dos puntos de la curva de la bomba o más"});
    for (std::size_t i = 0; i < curve.size(); ++i) {
        requireNotNegative(curve[i].flow, "curve flow");
        requireNotNegative(curve[i].head, "curve head");
        if (i == 0) continue;
        const std::string point = std::to_string(i + 1);
        if (!(curve[i].flow > curve[i - 1].flow))
            throw Error(Error::Kind::BadArgument, "curve flow",
                        Text{"curve flow: point " + point +
                                 " is not more than the point before it; flows must rise down the list.",
                             "caudal de la curva: el punto " + point +
                                 " no es mayor que el anterior; los caudales deben crecer en la lista."});
        if (curve[i].head > curve[i - 1].head)
            throw Error(Error::Kind::BadArgument, "curve head",
                        Text{"curve head: point " + point +
                                 " is higher than the point before it; the head falls as the flow grows.",
                             "carga de la curva: el punto " + point +
                                 " es más alto que el anterior; la carga baja al crecer el caudal."});
    }
}

// Flow at which the line from one point to the next meets the pipe's head: what the pump has over the pipe falls all
// the way, from 0 or more to less than 0.
Flow crossing(const DischargePipe& pipe, const PumpPoint& from, const PumpPoint& to) {
    const auto flowAt = [&](double way) { return from.flow + (to.flow - from.flow) * way; };
    const auto over = [&](double way) {
        return (from.head + (to.head - from.head) * way - totalHead(pipe, flowAt(way))).si();
    };
    const double atFrom = over(0);
    if (atFrom == 0) return from.flow;
    std::uintmax_t steps = 100;
    const auto found = boost::math::tools::toms748_solve(
        over, 0.0, 1.0, atFrom, over(1), boost::math::tools::eps_tolerance<double>(50), steps);
    return flowAt((found.first + found.second) / 2);
}

}  // namespace

Volume betweenStarts(Flow pump, Duration leastCycle) {
    requirePositive(pump, "pump flow");
    requirePositive(leastCycle, "cycle");
    return pump * leastCycle / 4;
}

Length floatDistance(Volume betweenStarts, Length basinDiameter) {
    requirePositive(betweenStarts, "volume");
    requirePositive(basinDiameter, "diameter");
    return betweenStarts / basinArea(basinDiameter);
}

double cyclesPerHour(Flow pump, Volume betweenStarts, Flow inflow) {
    requirePositive(pump, "pump flow");
    requirePositive(betweenStarts, "volume");
    requireNotNegative(inflow, "inflow");
    if (inflow >= pump)
        throw Error(Error::Kind::NoSolution, "inflow", gpmAndLitres(inflow),
                    {"less than the pump's " + gpmAndLitres(pump) + ", or it never stops",
                     "menos que los " + gpmAndLitres(pump) + " de la bomba, o nunca se detiene"});
    if (inflow.si() == 0) return 0;
    return Duration::hours(1) / (betweenStarts / inflow + betweenStarts / (pump - inflow));
}

Velocity dischargeSpeed(Length bore, Flow flow) {
    requirePositive(bore, "pipe");
    requireNotNegative(flow, "flow");
    return flow / fullArea(bore);
}

Length totalHead(const DischargePipe& pipe, Flow flow) {
    requireNotNegative(pipe.length, "length");
    requireNotNegative(pipe.fittings, "fittings length");
    return pipe.lift + hazenWilliamsLoss(pipe.bore, flow, pipe.length + pipe.fittings, pipe.c) +
           fittingLoss(pipe.bore, flow, pipe.k);
}

PumpPoint dutyPoint(const DischargePipe& pipe, std::span<const PumpPoint> curve) {
    requireCurve(curve);
    const auto reaches = [&](const PumpPoint& point) { return point.head >= totalHead(pipe, point.flow); };
    const PumpPoint &first = curve.front(), &last = curve.back();
    if (first.flow.si() == 0 && !(first.head > pipe.lift))
        throw Error(Error::Kind::NoSolution, "static lift", feetAndMetres(pipe.lift),
                    {"less than the pump's most, " + feetAndMetres(first.head),
                     "menos que lo más que da la bomba, " + feetAndMetres(first.head)});
    if (!reaches(first))
        throw Error(Error::Kind::OutsideValidity, "curve flow",
                    Text{"curve flow: the pump works before the first point, below " +
                             gpmAndLitres(first.flow) + "; type the curve from 0 on.",
                         "caudal de la curva: la bomba trabaja antes del primer punto, por debajo de " +
                             gpmAndLitres(first.flow) + "; escriba la curva desde 0."});
    for (std::size_t i = 1; i < curve.size(); ++i)
        if (!reaches(curve[i])) {
            const Flow flow = crossing(pipe, curve[i - 1], curve[i]);
            return {flow, totalHead(pipe, flow)};
        }
    throw Error(Error::Kind::OutsideValidity, "curve flow",
                Text{"curve flow: the pump works beyond the last point, above " + gpmAndLitres(last.flow) +
                         "; type more of the curve, or a smaller pump will do.",
                     "caudal de la curva: la bomba trabaja más allá del último punto, por encima de " +
                         gpmAndLitres(last.flow) + "; escriba más de la curva, o basta una bomba menor."});
}

PumpWorks pumpWorks(const PumpPlan& plan) {
    requirePositive(plan.basinDiameter, "basin diameter");
    requirePositive(plan.betweenFloats, "between floats");
    requireNotNegative(plan.inflow, "inflow");
    PumpWorks works;
    works.duty = dutyPoint(plan.discharge, plan.curve);
    const Flow pump = works.duty.flow;
    works.speed = dischargeSpeed(plan.discharge.bore, pump);
    works.betweenStarts = basinArea(plan.basinDiameter) * plan.betweenFloats;
    works.mostCycles = cyclesPerHour(pump, works.betweenStarts, pump / 2);
    works.pipeHolds = fullArea(plan.discharge.bore) * plan.discharge.length;
    works.reserve = pump - plan.inflow;
    if (works.reserve > Flow{}) {
        works.runs = works.betweenStarts / works.reserve;
        if (plan.inflow > Flow{}) {
            works.rests = works.betweenStarts / plan.inflow;
            works.cycles = cyclesPerHour(pump, works.betweenStarts, plan.inflow);
        }
    }
    return works;
}

}  // namespace trenchbook
