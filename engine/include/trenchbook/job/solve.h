// The whole job worked out: levels, flows, water, what is asked for, and every finding.
//
//     Job job;
//     SolvedJob solved = solve(job);
//     solved.of(Part::Runs, 3);      // the findings of the fourth run
//
// One pass a subject over the tree, linear in time and memory. A row that cannot be worked out spoils itself and what
// depends on it, with a finding that says which row it waits for; nothing else.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "trenchbook/job/job.h"
#include "trenchbook/lines/cleanouts.h"
#include "trenchbook/lines/network.h"
#include "trenchbook/lines/stations.h"
#include "trenchbook/lines/water_levels.h"
#include "trenchbook/rules/finding.h"
#include "trenchbook/water/stone_apron.h"

namespace trenchbook {

// Ground over a run between its ends, and how the pipe lies under it.
struct GroundPoint {
    Length at, ground;  // from the upper end; level
    std::optional<CoverSurface> surface = {};
    std::optional<Length> cover = {}, cut = {};  // as at the ends
};

struct SolvedRun {
    std::size_t upper = Network::none, lower = Network::none;  // rows of Nodes at its ends
    Fault fault = {};                                          // of its names, length and pipe
    Fault invertFault = {}, flowFault = {}, waterFault = {};   // why it has no such number
    std::optional<Length> groundUp = {}, groundDown = {};
    std::optional<Length> invertUp = {}, invertDown = {};
    std::optional<Slope> slope = {};
    std::optional<Length> coverUp = {}, coverDown = {};            // ground to outside top
    std::optional<Length> coverAskedUp = {}, coverAskedDown = {};  // none: exempt, or not known
    std::optional<Length> cutUp = {}, cutDown = {};  // ground to trench bottom, bedding included
    std::vector<GroundPoint> between = {};           // shots on Ground, from the upper end down
    // Where an end is daylight: cover as far from it as the exemption reaches (cover.daylight.within).
    std::optional<Length> coverNearUp = {}, coverNearDown = {};
    std::optional<Flow> flow = {};
    std::optional<Peak> peak = {};          // where travel time is counted
    std::optional<Flow> capacity = {};      // full
    std::optional<double> depthShare = {};  // normal depth over bore
    std::optional<Velocity> velocity = {}, velocityFull = {};
    std::optional<ReachWater> water = {};
    std::optional<Length> standsUp = {};   // where the water stands in the box or at the head of this run
    double lossK = 0;                      // of its upper node
    std::optional<Length> spareFall = {};  // drop beyond what the least slope asks
    std::optional<SinceOpening> since = {};
    std::optional<AskedCleanouts> asked = {};
    std::optional<RunStation> station = {};
};

struct SolvedNode {
    std::optional<Length> water = {};       // the highest of the runs that meet here
    std::optional<Length> freeboard = {};   // rim over the water; none where the line ends
    std::size_t entering = 0, leaving = 0;  // runs
};

struct SolvedInlet {
    std::optional<Area> areaTimesC = {};
    std::optional<Flow> flow = {};
    std::optional<Flow> inletTakes = {}, outletTakes = {};
    std::optional<Flow> takes() const;
};

struct SolvedShot {
    std::size_t run = Network::none;
    std::optional<CoverSurface> surface = {};
    std::optional<Length> invert = {}, cover = {}, coverAsked = {}, cut = {};
};

struct SolvedCrossing {
    std::size_t run = Network::none;
    std::optional<Length> ground = {}, ourInvert = {}, ourTop = {}, ourBottom = {}, itsTop = {},
                          itsBottom = {};
    std::optional<Length> clearance = {}, handDig = {};
    std::optional<Length> keptLevel = {};  // our pipe's outside keeps below it, or above
};

struct SolvedOutlet {
    std::optional<Flow> lineFlow = {}, flow = {};                 // of the line; with what the swale brings
    std::optional<Length> depth = {}, critical = {}, spare = {};  // in the swale
    std::optional<Velocity> velocity = {};
    std::optional<Length> overFlowLine = {};  // invert, or the rim it bubbles over, over the flow line
    std::optional<Length> head = {};          // of the water over that rim, part of its grate blocked
    std::optional<Length> headClean = {};     // nothing of it blocked
    std::optional<Length> water = {};         // level that the line ends in; none: free outfall, or not known
    std::optional<Velocity> endVelocity = {};  // in the pipe's end
    std::optional<Volume> stays = {};          // in the lines below the rim when the rain is over
    std::optional<Duration> empties = {};  // through the weep hole, or with the pit that the tee stands in
    std::optional<StoneApron> apron = {};  // where stone is laid
};

struct SolvedPump {
    std::optional<Flow> inflow = {};          // of the lines that end in the basin
    std::optional<Length> lift = {};          // from the pump's stop up to the end of the discharge
    std::optional<Length> headAtInflow = {};  // that the discharge pipe asks for at the inflow
    std::optional<Flow> gives = {};           // where the pump's curve meets the discharge pipe
    std::optional<Length> head = {};          // there
    std::optional<Velocity> speed = {};       // in the discharge pipe
    std::optional<Volume> between = {};       // between the pump's start and stop
    std::optional<double> starts = {};        // most in an hour at any inflow up to the storm's
    std::optional<Duration> runs = {};        // the shortest time that it runs
    std::optional<Volume> runsBack = {};      // what the discharge pipe holds
    std::optional<Length> underInvert = {};   // the pump's start under the lowest line's end
    std::optional<Length> lowestGrate = {};   // level of the lowest opening over the basin and its lines
    std::string grateAt = {};                 // and its node
    std::optional<Duration> outage = {};      // until water stands there when the pump does not run
    std::optional<double> held = {};  // what holds the empty basin down over what lifts it; none: dry ground

    // Whether what comes goes out again; none while it is not known.
    std::optional<bool> keepsUp() const;
};

struct SolvedPit {
    std::optional<Area> areaTimesC = {};  // of all inlets upstream, whatever the rain
    std::optional<Flow> flow = {};
    std::optional<Length> rimHead = {}, bubbleLevel = {};  // of the outlet that its tee is
    std::optional<Volume> storage = {}, rock = {};
    std::optional<Duration> drains = {};
    std::optional<Length> held = {};  // rain that fills it
};

struct SolvedJob {
    Network lines;
    std::vector<SolvedRun> runs = {};
    std::vector<SolvedNode> nodes = {};
    std::vector<SolvedInlet> inlets = {};
    std::vector<SolvedShot> shots = {};
    std::vector<SolvedCrossing> crossings = {};
    std::vector<SolvedOutlet> outlets = {};
    std::vector<SolvedPump> pumps = {};
    SolvedPit pit = {};
    std::vector<Finding> findings = {};  // sorted: part, row, then worst first

    // Those of one row.
    std::span<const Finding> of(Part part, std::size_t row) const;
};

SolvedJob solve(const Job& job);

// Ground over a run, straight from point to point: the nodes at its ends and the shots between them. None where one of
// the two levels around `fromUpperEnd` is not known, and beyond the ends.
std::optional<Length> groundOver(const Run& run, const SolvedRun& solved, Length fromUpperEnd);

}  // namespace trenchbook
