// A job under storms of many lengths, from a cloudburst to a day of rain: what fails first and when, what the pit holds,
// how long water wells up and how much.
//
//     const Job job;  // as readJob() fills it
//     const RainTable table = RainTable::parse("duration,2,10\n5-min,0.4,0.6\n60-min,1.2,1.8", Length::inches(1));
//     for (const StormTried& storm : storms(job, solve(job), table))
//         stormSays(job, storm).en;
//     // "In a 10-minute cloudburst of 1 in, the pit is full after 5 minutes; then water wells up at T, ..."
//
// Tried are 5, 10, 15, 30 and 60 minutes, 2, 6 and 24 hours as blocks of even rain of the table's depth for the job's
// return period, and one centered storm (alternating blocks, water/storm.h) of the longest of them that the table has, in
// steps of the shortest. A duration that is no row of the table is not tried: nothing is read between its rows.
//
// All inlets run at once and in full, whatever their grates take: a block is longer than the water is on its way, or the
// lines get more than they would. Levels, flows and losses are those of solve(). While the pit is not full its tee is a
// free end; once it is full the tee wells up. The pit is empty at the beginning, its model is ground/pit_storm.h. An end
// of a line that wells up without a pit does so as long as it rains. Grates are tried clean and with half of them blocked.
// What a pump does not lift fills its basin and pipes from its start up, as room is worked out for a power cut; the level in
// the lines above it is then not known.
// In a block what is too small fails at once, that is as soon as the water has come down the lines.
//
// One solution of flows and water a storm, two where a rim is flooded: linear in the job. Errors: of RainTable::depth, the
// return period outside the table.
#pragma once

#include <optional>
#include <vector>

#include "trenchbook/job/solve.h"
#include "trenchbook/water/rain.h"

namespace trenchbook {

enum class FailsFirst { Nothing, Inlet, Node, Pit, Pump };

struct StormTried {
    Duration duration;
    bool centered = false;  // else a block of even rain
    bool inTable = true;    // else nothing below is known
    Length depth = {};
    RainRate intensity = {};  // of a centered storm the greatest

    std::optional<double> share = {};  // greatest flow over full capacity
    std::size_t shareRun = Network::none;
    std::optional<Length> freeboard =
        {};  // least height of an opening over the water; below 0 it stands over the rim
    std::size_t freeboardNode = Network::none;
    std::size_t overClean = 0, overHalfBlocked = 0;  // inlets that more comes to than they take
    std::size_t worstInlet = Network::none;          // of the greatest share, half blocked
    std::size_t notKnown = 0;                        // open nodes and inlets that lack what it takes to tell

    std::optional<double> pitFilled = {};       // share of the pit at its fullest
    std::optional<Duration> pitFullAfter = {};  // none: it takes the whole storm, or there is no pit
    Volume wellsUp = {};                        // at the pit's tee and at ends that well up without a pit
    Duration wellsUpFor = {};

    std::size_t pump = Network::none;  // that gets more than it lifts: its row
    std::optional<Duration> pumpAfter =
        {};  // until water stands at the lowest opening over it; none: its room does

    FailsFirst first = FailsFirst::Nothing;
    Duration firstAfter = {};
};

// `rain` none: no table was pasted, and nothing is tried.
std::vector<StormTried> storms(const Job& job, const SolvedJob& solved, const std::optional<RainTable>& rain);

// "5 min", "2 h"; of a centered storm with the pattern's name.
Text stormName(const StormTried& storm);
// What an owner understands: one sentence, two where something else fails first.
Text stormSays(const Job& job, const StormTried& storm);
// What fails first, and where: "nothing", "pit full", "water over the rim at B", "inlet Patio too small".
Text failsFirstText(const Job& job, const StormTried& storm);

}  // namespace trenchbook
