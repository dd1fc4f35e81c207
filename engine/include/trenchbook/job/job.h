// A drainage job as it is measured: what stands on the input columns of the sheets, read once, in units.
//
// Rows keep their place: the n-th Run is the n-th row of the table, blank rows included, so that a finding's row is
// the sheet's. A cell that cannot be used is kept with its reason (Unusable); its value is left out, never taken as 0.
//
//     Job job;
//     job.runs = {{.from = "A", .to = "B", .length = Length::feet(60), .pipe = stockPipe("4 SDR35")}};
//     // solve(job) works it out: job/solve.h
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "trenchbook/core/date.h"
#include "trenchbook/core/text.h"
#include "trenchbook/core/units.h"
#include "trenchbook/grade/grade.h"
#include "trenchbook/ground/pit_check.h"
#include "trenchbook/layout/lot.h"
#include "trenchbook/lines/node.h"
#include "trenchbook/lines/peak.h"
#include "trenchbook/lines/run.h"
#include "trenchbook/pipe/stock.h"
#include "trenchbook/rules/rules.h"
#include "trenchbook/water/pump.h"
#include "trenchbook/water/swale.h"

namespace trenchbook {

// One surface that drains to an inlet: area and share of the rain that runs off.
struct Drained {
    std::optional<Area> area = {};
    std::optional<double> coefficient = {};  // 0 to 1
};
enum class EntersBy { NotSaid, Downspout, Grate, TrenchDrain };
struct JobInlet {
    std::string name = {}, node = {};
    Drained roof = {}, paved = {}, yard = {};
    std::optional<Duration> time = {};  // none: the duration of the design rain
    EntersBy entersBy = EntersBy::NotSaid;
    std::string size = {};  // "3x4", "12x12", "9": in inches, in a metric job mm
    std::optional<double> openShare = {};
    std::optional<Length> ponding = {}, length = {};
    std::optional<Slope> floorSlope = {};
    std::optional<Pipe> outletPipe = {};
    std::optional<Length> outletHead = {};
    bool blank = true;
    std::vector<Unusable> unusable = {};
};

// Ground read between the ends of a run: a shot, or a level typed. No fitting stands there.
struct GroundShot {
    std::string from = {}, to = {};
    std::optional<Length> at = {};  // from the upper node
    std::string shot = {};          // point on Levels that gives the ground; for sentences
    std::optional<Length> ground = {};
    std::optional<CoverSurface> surface = {};  // none: as at the nearer end
    bool blank = true;
    std::vector<Unusable> unusable = {};
};

enum class Marked { NotSaid, Yes, No, Private };
struct Crossing {
    std::string what = {}, from = {}, to = {};
    std::optional<Length> at = {};         // from the upper node
    std::optional<Length> depth = {};      // ground to its top
    std::optional<Length> diameter = {};   // outside
    std::optional<bool> passesAbove = {};  // it passes over our pipe
    Marked marked = Marked::NotSaid;
    std::string ticket = {};
    std::optional<Date> goodFrom = {}, goodUntil = {};
    bool blank = true;
    std::vector<Unusable> unusable = {};
};

// How a line ends, beside what stands at its last node: the water it ends in, the opening it bubbles out of, its place.
struct Outlet {
    std::string node = {};
    // Where it bubbles over a rim.
    std::optional<Length> across = {};      // inside diameter of the rim; none: the pipe's bore
    std::optional<double> openShare = {};   // clear opening over area; 1 without a grate
    std::optional<Length> weepHole = {};    // diameter of the hole that lets the standing water out; 0: none
    std::optional<Slope> groundFalls = {};  // of the ground beyond the rim, away from the house
    // Where it runs out at its invert.
    std::optional<bool> checkValve = {};
    std::optional<Length> apronStone = {};  // middle size of the stone that is laid there; none: no apron
    // The swale or ditch.
    std::optional<Flow> otherFlow = {};
    std::optional<Length> bottom = {}, deep = {};
    std::optional<double> sideSlope = {};
    std::optional<Slope> slope = {};
    std::optional<double> roughness = {};
    std::optional<Length> flowLine =
        {};  // level of the bottom of ditch, gutter or existing pipe at the outlet
    std::optional<Length> lotLine = {}, walk = {}, foundation = {};
    struct {
        bool lotLine = false, walk = false, foundation = false;
    } drawn = {};  // these distances are the drawing's, nobody typed them
    bool blank = true;
    std::vector<Unusable> unusable = {};
};

enum class PowerOut { NotSaid, Nothing, Alarm, SecondPump, Battery, Generator, Overflow };
// The pump in the basin that a line ends in.
struct Pump {
    std::string node = {};
    std::optional<Length> inside = {}, outside = {};      // diameters of the basin, which is round
    std::optional<Length> floor = {}, on = {}, off = {};  // levels: inside bottom, pump's start and stop
    std::vector<PumpPoint> curve = {};
    std::optional<Pipe> pipe = {};  // the discharge
    std::optional<Length> length = {};
    std::optional<double> elbows = {};  // of 90 degrees
    std::optional<Length> end = {};     // level to which it lifts
    std::optional<bool> checkValve = {};
    PowerOut powerOut = PowerOut::NotSaid;
    std::optional<Length> groundwater = {};  // level
    std::optional<Weight> weight = {};       // of the empty basin
    std::optional<Volume> concrete = {};     // cast to it; none: none
    bool blank = true;
    std::vector<Unusable> unusable = {};
};

struct Pit {
    std::string node = {};  // empty: this job has no pit
    std::optional<Length> length = {}, width = {}, rockDepth = {}, soilOver = {};
    std::optional<double> voids = {}, sideShare = {};
    std::optional<SoilRate> rate = {};           // design rate, tested over safety factor
    bool soakRefused = false, soakOpen = false;  // a soak reading is refused; the test is not settled
    PitFacts facts = {};                         // what PIT.CHECK reads
    bool drawn = false;                          // some of its distances are the drawing's
    std::vector<Unusable> unusable = {};
};

enum class Answer { NotSaid, Yes, No, Ask };
struct Ticket {
    std::string number = {};
    std::optional<Date> called = {};  // day of the request; none: not noted
    std::optional<Date> from = {}, until = {};
};
// Stable rock needs none (29 CFR 1926.652(a)(1)(i)).
enum class Protection { NotSaid, Sloping, Shoring, TrenchBox, StableRock };
// "sloping", "shoring", "trench box", "stable rock"; empty where nothing is said.
Text protectionWord(Protection protection);
// What Job asks beside the tables.
struct JobFacts {
    std::string name = {}, owner = {}, site = {}, soil = {}, outlet = {}, permission = {};
    std::optional<Date> quoteDate = {}, today = {}, agreed = {};
    std::optional<RainRate> rain = {};  // of the design storm
    bool rainFromTable = false;         // of the table on Rain; else typed, and its usual range is asked
    std::optional<Duration> duration = {};
    double returnYears = 10;
    Ticket ticket = {};
    Answer septic = Answer::NotSaid, well = Answer::NotSaid, association = Answer::NotSaid,
           irrigation = Answer::NotSaid, rulesAsked = Answer::NotSaid;
    Protection protection = Protection::NotSaid;  // of a trench as deep as cut.protect
    std::size_t levels = 0;                       // shots with a level
    std::vector<Unusable> unusable = {};
};

// Travel time through the lines, where it is asked for.
struct PeakAsked {
    Travel travel = Travel::Flow;
    std::optional<double> roughness = {};  // of all pipes; none: each its own
    RainTable rain;
};

struct Job {
    UnitSystem units = UnitSystem::US;
    std::size_t firstRunRow = 1;  // the sheet's row of the first run: sentences name rows as the sheet counts
    Ruleset rules = {};
    JobFacts facts = {};
    std::vector<Node> nodes = {};
    std::vector<JobInlet> inlets = {};
    std::vector<Run> runs = {};
    std::vector<GroundShot> shots = {};
    std::vector<Crossing> crossings = {};
    std::vector<Outlet> outlets = {};
    std::vector<Pump> pumps = {};
    Pit pit = {};
    std::optional<PeakAsked> peak = {};
    std::vector<LotPoint> lotPoints = {};
    std::vector<LotTape> lotTapes = {};
    DrawnLot drawn = {};  // of drawLot()
};

}  // namespace trenchbook
