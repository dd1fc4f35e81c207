// Takeoff: what every run and node of a job is made of, counted; what to buy, what to cut, how much work.
//
//     Job job;
//     Takeoff takeoff = takeOff(job, solve(job));
//     takeoff.lines;       // one a code, as it is bought; takeoff.nodes and .runs count it by place
//
// Net quantities: what goes into the ground, without waste, packs and spares. What cannot be counted is left
// out of its own row, leaves every sum that it belongs to unknown, and is a finding that names it; it is never
// counted as 0.
//
// How a node is built. Of the pipes that arrive, those of the leaving pipe's size join by a wye each, but one,
// which goes straight on; smaller ones by a wye with a smaller branch; where none has the size the largest goes on
// through a reducer. Every riser (downspout, cleanout) comes in by a wye and a 45, and at the head of a line the
// first of them ends the pipe with two 45s. Basins and channels take every pipe through a hub. A turn is made of
// 22.5s and 45s. Where two runs meet without a fitting there is a coupling; a wye that is cut into a pipe that lies
// there takes one too. Downspouts are as many as Water has at the node, each with the adapter of its leader's size; a
// basin is as large as its grate on Water, and deeper by rings (basin.depth, basin.riser). Common practice, no source.
//
// Earth: average end areas with the cuts of the solved job (earthwork.h). The room of bedding, pipe and pit rock
// is what has to be hauled off.
#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <variant>
#include <vector>

#include "trenchbook/core/text.h"
#include "trenchbook/core/units.h"
#include "trenchbook/job/job.h"
#include "trenchbook/job/solve.h"
#include "trenchbook/rules/finding.h"
#include "trenchbook/takeoff/codes.h"
#include "trenchbook/takeoff/cut_list.h"

namespace trenchbook {

// Codes that goods are bought by which are not counted in pieces.
struct BulkCodes {
    std::string cement = "CEMENT", primer = "PRIMER", bedding = "BEDDING", rock = "ROCK", fabric = "FABRIC",
                sod = "SOD", haul = "HAUL", sock = "SOCK-";  // of a sock with the size of its pipe: SOCK-4
    std::string apron = "APRON", concrete = "CONCRETE";
    std::string channel = "CHANNEL-LENGTH";  // channel drains with their grates, by length
    std::string warningTape = "TAPE-WARN", locateWire = "WIRE-LOCATE";  // by the length of the pipe laid
    // What makes good the paving that was cut, by its area.
    std::string walk = "RESTORE-WALK", drive = "RESTORE-DRIVE", street = "RESTORE-STREET";
    // Feet of trench to protect, by the way chosen on Job; none chosen: shoring.
    std::string shoring = "SHORING", trenchBox = "TRENCH-BOX", sloping = "TRENCH-SLOPING";
};

// What the estimator chose, and what his price list says. Codes are matched like node names.
struct TakeoffTerms {
    std::map<std::string, Length> sticks = {};      // length of a stick by the pipe's code as it is bought
    std::map<std::string, std::string> buyAs = {};  // a piece's code: the code to buy in its place
    BulkCodes bulk = {};
    double sodShare = 0.25;  // new sod, share of the lawn dug, 0 to 1
    bool buyAsked = false;   // buy the cleanouts that the rules ask beyond those on Nodes
    Length kerf = Length::inches(0.125);
    Length handDigMore = {};  // trench dug by hand beside the crossings
};

// An amount in its own unit: pieces, pints or loads (a plain count), or a quantity.
struct NetAmount {
    std::variant<double, Length, Area, Volume, Weight> value = 0.0;

    // As the sheets write it: ft, sq ft, cu yd, short tons; in a metric job m, m2, m3, t.
    double in(UnitSystem units) const;
    Text unit(UnitSystem units) const;  // "ft"; empty for a count
};

// Paving over a trench, which is cut and made good.
struct Paving {
    Area walk, drive, street;

    Area all() const { return walk + drive + street; }
};

struct RunTakeoff {
    std::optional<std::size_t> bells = {};  // joints between the sticks of the run
    std::optional<Piece> adapter = {};      // where the next pipe's make takes another size
    std::size_t sockets = 0;                // of bells and adapter
    std::optional<double> cementPints = {};
    std::optional<Length> trenchWidth = {};
    std::optional<Volume> bank = {};      // soil in place that comes out
    std::optional<Volume> deepBank = {};  // of it, what lies deeper than shovelThrow
    std::optional<Volume> bedding = {};   // under the pipe
    std::optional<Volume> pipeRoom = {};  // of the pipe, by its outside
    std::optional<Volume> rock =
        {};  // around perforated pipe, from the trench bottom up, in place of bedding
    std::optional<Length> protect = {};  // trench as deep as cut.protect
    std::optional<Area> lawn = {};       // trench under lawn; half of it where only one end is lawn
    std::optional<Paving> paving = {};   // trench under paving, by the same halves
};

struct Riser {
    NodeKind kind;  // downspout, cleanout, tee
    Pipe pipe;
    std::optional<Length> length = {};  // from the invert to ground, cap or rim
};

// The pipe that a pump lifts through.
struct Discharge {
    Pipe pipe;
    std::optional<Length> length = {};
    std::optional<std::size_t> bells = {};  // joints between its sticks
};

struct NodeTakeoff {
    bool counted = false;  // false: nothing is; a finding says why
    std::vector<Piece> pieces = {};
    std::vector<Riser> risers = {};
    std::optional<Discharge> discharge = {};  // of the pump that stands here
    std::size_t sockets = 0;
    double cementPints = 0;
    Text words = {};  // for the crew: "1 wye 6 x 4 SDR35, 1 bend 45 for the riser, riser 2.02 ft"
};

// One length of pipe: a run, a riser, a discharge.
struct PipeLength {
    Pipe pipe;
    std::string code;  // as it is bought
    Length length;
    Text piece;                           // "S1 to S2", "riser at S2"
    std::optional<Length> stick = {};     // none: no stick length is known, and the piece is on no cut list
    std::optional<std::size_t> run = {};  // row of Runs; none for the others
};

// One code to buy.
struct TakeoffLine {
    std::string code;
    std::optional<NetAmount> net = {};  // none: a part of it is not known
    Text from = {};                     // where it comes from
    std::size_t fewestSticks = 0;       // of pipe: sticks in the cutting plan; 0 for other goods
};

// Cleanouts that the rules ask on a run and Nodes does not have.
struct AskedHere {
    std::size_t run;
    std::size_t count;
    Text where;  // "at S4; on S4 to S5, 17 ft below S4"
};

// How deep a trench may be for a shovel to throw its soil out in one go: 5 ft, the depth at which printed outputs of hand
// digging end their first stage (quantity surveyors' stages of 1.5 m; planningplanet.com, output norms by hand). Below it
// soil is handled twice, and a machine reaches farther and stops for ladder and protection.
inline const Length shovelThrow = Length::feet(5);

// Workbooks find their lines by place in this order: once files are with users a new kind of work goes to the end.
enum class Work {
    SetUp,
    CutSod,
    DigByMachine,  // bank volume down to shovelThrow
    DigByMachineDeep,
    DigByHand,
    DigByHandDeep,
    ProtectTrench,  // length as deep as cut.protect, where no stable rock stands by itself
    LayPipe,        // length, smaller than 6 in
    LayLargePipe,
    CleanoutsAndWyes,
    SetFittings,  // bends, couplings, reducers, adapters, hubs, caps, valves, rings, what is named on Nodes on top
    Downspouts,
    BasinsChannelsOutlets,
    SetChannel,  // length of channel drains
    DigPit,      // the pit, holes of pump basins, beds of aprons
    RockAndFabric,
    LayApron,  // volume of the stone where lines end
    Backfill,  // bank volume that goes back in
    LaySod,
    RestorePaving,
    HaulSpoil,
    FlushTest,
    HandDigLength,  // the feet of DigByHand, for papers
};
struct WorkAmount {
    Work work;
    Text name;
    std::optional<NetAmount> amount = {};  // none: not known, and a finding says why
    Text from = {};
};

// Sums over the job; none where a part is not known.
struct Bulk {
    std::size_t glued = 0;  // sockets to cement
    std::optional<double> cementPints = {}, primerPints = {};
    std::optional<Volume> bank = {}, deepBank = {}, bedding = {}, pipeRoom = {};
    std::optional<Weight> beddingWeight = {};
    std::optional<Volume> rock = {};        // of the pit, and around perforated pipe
    std::optional<Volume> trenchRock = {};  // of it, around perforated pipe
    std::optional<Weight> rockWeight = {};
    std::optional<Volume> apron = {};         // stone where lines end
    std::optional<Weight> apronWeight = {};   // the same
    std::optional<double> concreteBags = {};  // around channel drains, cast to pump basins
    Volume pumpRoom = {};                     // of pump basins in the ground
    Volume soilBack = {};                     // over the pit's rock and around pump basins
    std::optional<Length> laid = {};          // pipe that lies in trenches of this job
    std::optional<Length> channel = {};       // of the channel drains on Nodes, by their lengths on Water
    std::optional<Volume> pitEarth = {};      // dug for the pit, pump basins and aprons
    std::optional<Area> fabric = {};          // around the pit's rock, lapped; under aprons
    std::optional<Length> protect = {};       // trench that a protective system has to hold
    std::optional<Area> lawn = {};            // under lawn, trench and pit
    std::optional<Paving> paving = {};        // cut and made good
    std::optional<Area> sod = {};             // new
    std::optional<Volume> surplus = {},
                          haulLoose = {};  // room of bedding, pipe, rock, aprons, basins; the same, dug
    std::optional<double> haulLoads = {};  // of the trucks on Rules
};

struct Takeoff {
    std::vector<RunTakeoff> runs = {};    // one a row of Runs
    std::vector<NodeTakeoff> nodes = {};  // one a row of Nodes
    std::vector<PipeLength> lengths = {};
    CutList cuts = {};  // CutRow::piece is the place in `lengths`
    std::vector<TakeoffLine> lines = {};
    std::vector<AskedHere> asked = {};
    Bulk bulk = {};
    std::vector<WorkAmount> works = {};  // one a Work, in its order
    std::vector<Finding> findings = {};  // sorted: part, row, then worst first

    std::span<const Finding> of(Part part, std::size_t row) const;
};

// Errors: BadArgument "sod share", "kerf", "hand digging".
Takeoff takeOff(const Job& job, const SolvedJob& solved, const TakeoffTerms& terms = {});

// Swell of a soil by its words: clay, sand, or loam (also where nothing is said), rules swell.*.
double swellOf(std::string_view soil, const Ruleset& rules);

}  // namespace trenchbook
