// A pump in a basin that lifts water where a pipe has no fall: volume between starts, cycles, head, duty point.
//
//     betweenStarts(Flow::gpm(20), Duration::minutes(6)).gallons();                      // 30
//     cyclesPerHour(Flow::gpm(20), Volume::gallons(30), Flow::gpm(10));                  // 10
//     const DischargePipe pipe{.bore = Length::inches(2.067), .length = Length::feet(100), .lift = Length::feet(10)};
//     totalHead(pipe, Flow::gpm(40)).feet();                                             // 13.2
//     const PumpPoint curve[] = {{Flow(), Length::feet(24)}, {Flow::gpm(60), Length::feet(8)}};
//     dutyPoint(pipe, curve).flow.gpm();                                                 // 40.3
//
// Volume between starts V = Q t / 4, where t is the least time from one start to the next: a pump cycles fastest when
// half of its flow runs in (FHWA HEC-22, 3rd ed., 9.3.8, Eq. 9-2). At an inflow q one cycle is V/q + V/(Q - q).
// Total head = static lift + Hazen-Williams friction of pipe and fittings (as equivalent length) + K V2/2g, where K
// counts the exit with 1 (FHWA HEC-22, 9.3.3, Eq. 9-1; hazen_williams.h). The static lift is taken from the level at
// which the pump stops: the most that it lifts.
// A pump curve is what its maker prints, typed as points; between points it is a straight line. The duty point is where
// it crosses the head of the discharge pipe, right to 1e-12 of the flow for that broken line.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "trenchbook/core/units.h"
#include "trenchbook/pipe/hazen_williams.h"

namespace trenchbook {

// Errors: BadArgument "pump flow", "cycle".
Volume betweenStarts(Flow pump, Duration leastCycle);
// How far the water falls between the floats of a round basin. Errors: BadArgument "volume", "diameter".
Length floatDistance(Volume betweenStarts, Length basinDiameter);
// Starts in an hour; 0 with no inflow. Errors: BadArgument "pump flow", "volume", "inflow"; NoSolution "inflow" where
// as much runs in as the pump takes, so that it never stops.
double cyclesPerHour(Flow pump, Volume betweenStarts, Flow inflow);

struct DischargePipe {
    Length bore = {};
    Length length = {};
    Length fittings = {};  // as a length of straight pipe: equivalent_length.h
    double k = 1;          // loss coefficients in velocity heads; the exit alone is 1
    Length lift =
        {};  // from the level at which the pump stops to where the water leaves; below 0 where it falls
    double c = carefulPlasticC;  // Hazen-Williams
};
// Speed of the full pipe. Errors: BadArgument "pipe", "flow".
Velocity dischargeSpeed(Length bore, Flow flow);
// Errors: BadArgument "pipe", "flow", "length", "fittings length", "K", "static lift", "C".
Length totalHead(const DischargePipe& pipe, Flow flow);

struct PumpPoint {
    Flow flow;
    Length head;
};
// Errors: of totalHead; BadArgument "curve flow" (fewer than two points, below 0, not rising), "curve head" (below 0,
// rising); NoSolution "static lift" where the pump does not reach that high; OutsideValidity "curve flow" where the
// crossing lies before the first point or beyond the last.
PumpPoint dutyPoint(const DischargePipe& pipe, std::span<const PumpPoint> curve);

// A whole pump station as it is planned, and how it works.
struct PumpPlan {
    Length basinDiameter = {};
    Length betweenFloats = {};  // from start to stop
    std::vector<PumpPoint> curve = {};
    DischargePipe discharge = {};
    Flow inflow = {};  // of the design storm
};
struct PumpWorks {
    PumpPoint duty = {};
    Velocity speed = {};
    Volume betweenStarts = {};  // what the basin holds between the floats
    double mostCycles = 0;      // an hour, at the inflow of half the duty flow
    Volume pipeHolds = {};      // runs back at every stop where there is no check valve
    Flow reserve = {};          // duty flow over the inflow; below 0: the basin fills
    // At the inflow; none where the pump does not keep up, and no rest and cycles where nothing runs in.
    std::optional<Duration> runs = {}, rests = {};
    std::optional<double> cycles = {};
};
// Errors: of the functions above; BadArgument "basin diameter", "between floats", "inflow".
PumpWorks pumpWorks(const PumpPlan& plan);

}  // namespace trenchbook
