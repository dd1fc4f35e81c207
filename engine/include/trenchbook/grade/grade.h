// The grade plan: inverts, drops and pipe sizes of least cost for one tree of pipe runs, before the trench is
// open; and, when nothing fits, the two places that make it impossible and the feet that are missing.
//
//     GradeJob job;                                     // one run, the ground level at 0
//     job.pipes = {{stockPipe("4 SDR35"), PricePerLength::dollarsPerFoot(2.1), Slope::percent(1)}};
//     job.runs = {{.length = Length::feet(60), .pipes = {0}, .outletLowest = Length::feet(-3)}};
//     GradePlan plan = planGrade(job);
//     plan.fits; plan.runs[0].invertUp; plan.cost; plan.reason.spare();
//
// What is chosen, per run: the invert at its upper and at its lower end, both on the rod's grid, and one of
// the pipes that it lists. What it costs: length x price of the pipe, and length x mean of the digging prices
// at its two ends, which are read off a table by the cut there (ground to trench bottom), and for each run
// that enters a node higher than the next one leaves it the feet of that drop x the price of a drop (its pipe
// and bends).
//
// What is kept:
//   cover        ground to the pipe's outside top, where an end has a least cover: cover + the pipe's extra
//   ground       an end without least cover (daylight) has its trench bottom not above the ground; the
//                outlet's own end is free of this rule
//   deepest cut  ground to trench bottom at every end
//   slope        the pipe's least slope, and the slope at which the flow is the largest share of the
//                capacity of the full pipe (Manning)
//   outlet       the outlet's invert lies in its window
//   crossings    anywhere along a straight run the pipe's outside passes below or above a level
//   joins        a pipe never enters a node lower than the pipe that leaves it: inverts are compared, or
//                with Join::Crown both inverts and inside tops (crowns). Entering higher is a drop.
//   sizes        no pipe gets smaller downstream (nominal size)
//   fixed        an invert set by hand is kept to the last digit, on the grid or not, under all the rules
//
// Accuracy: the plan is an exact optimum (dynamic programme along the tree); costs are counted in units of
// 1e-6 dollar per end, so that equal plans are equal and the order of runs cannot matter. At equal cost the
// line lies as high as it can. A limit that is met within 1e-6 of a grid step counts as met. Time and memory
// grow in proportion to runs x levels in a window x pairs of pipes listed.
//
// Method and proof: docs/methods/grade.md.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "trenchbook/core/text.h"
#include "trenchbook/core/unit.h"
#include "trenchbook/core/units.h"
#include "trenchbook/lines/inverts.h"
#include "trenchbook/pipe/stock.h"

namespace trenchbook {

struct GradePipe {
    Pipe pipe;  // must have an outside diameter
    PricePerLength price;
    Slope leastSlope;
    Length extraCover = {};     // more cover than the surface asks for
    double roughness = 0;       // Manning n; 0: the pipe's own
    double largestShare = 0.8;  // flow over capacity of the full pipe, above 0
};

// Digging and backfilling a foot of trench of this cut. Linear between rows; above the first row its price
// holds, below the last one the last slope goes on, though not below 0.
struct DigPrice {
    Length cut;
    PricePerLength price;
};

struct GradeCrossing {
    enum class Side { Below, Above };  // where our pipe passes
    Length fromUpperEnd;
    Side side = Side::Below;
    Length level;        // our pipe's outside keeps below, or above, this level
    bool cover = false;  // nothing is crossed: the level is what the cover under the ground there leaves
};

struct GradeRun {
    std::optional<std::size_t> below = {};  // the run that carries its water on; none for the outlet run
    Length length;
    Length groundUp, groundDown;
    std::vector<std::size_t> pipes;  // rows of GradeJob::pipes it may be built of; in order of preference
    std::optional<Length> coverUp = {}, coverDown = {};  // none: exempt
    Flow flow = {};
    std::optional<Length> fixedUp = {}, fixedDown = {};
    std::vector<GradeCrossing> crossings = {};
    std::optional<Length> outletLowest = {}, outletHighest = {};  // outlet run only; lowest must be given
    // No lower outlet than this is advised: what the line ends in, and how far over it the pipe must end. None: not
    // known, and the advice says so.
    std::optional<Length> outletFloor = {};
};

struct GradeJob {
    std::vector<GradePipe> pipes;
    std::vector<DigPrice> digging;  // by rising cut; empty: digging costs nothing
    PricePerLength dropPrice = {};  // of a drop at a node, between the two inverts
    Length deepestCut = Length::feet(6);
    Length bedding = {};
    Join join = Join::Crown;
    Length grid = Length::feet(0.01);
    std::vector<GradeRun> runs;  // one tree, in any order
};

struct GradedRun {
    Length invertUp, invertDown;
    Slope slope;
    Length cutUp, cutDown;
    std::size_t pipe = 0;  // row of GradeJob::pipes
    Money cost;            // with the drop at its lower end
};

// A rule that holds the line at one place, as a level of the invert there.
struct GradeLimit {
    enum class Rule {
        Cover,          // not above
        Ground,         // not above
        OutletHighest,  // not above
        CrossingBelow,  // not above
        DeepestCut,     // not below
        OutletLowest,   // not below
        CrossingAbove,  // not below
        Fixed,          // either
    };
    Rule rule = Rule::Cover;
    std::size_t run = 0;
    bool upperEnd = true;      // of the run; unused for a crossing
    std::size_t crossing = 0;  // of the run's crossings
    std::size_t pipe = 0;      // row of GradeJob::pipes for which the level is meant
    Length level;
};

// One change that makes everything fit, alone, with the least amount on the grid.
struct GradeCure {
    enum class Kind {
        LessCover,     // at the higher place, by `amount`
        HigherOutlet,  // highest outlet level, by `amount`
        LowerOutlet,   // lowest outlet level, by `amount`
        DeeperCut,     // deepest cut, everywhere, by `amount`
        MoveFixedUp,   // the invert set by hand, by `amount`
        MoveFixedDown,
        MoveCrossingUp,  // the level kept at the crossing, by `amount`
        MoveCrossingDown,
        OtherPipe,   // `pipe` allowed from `run` down to the outlet; `amount` is then to spare
        ShorterRun,  // `run`, by `amount`
    };
    Kind kind = Kind::LessCover;
    std::size_t run = 0;
    std::size_t pipe = 0;
    Length amount;
};

// Why it fits or not: the tightest pair of places. From the higher limit (upstream, "not above") the line
// needs `needed` of fall down to the lower limit ("not below"), and there is `available`.
struct GradeReason {
    enum class Kind {
        Fits,         // needed <= available everywhere; this pair has the least to spare
        ShortOfFall,  // needed > available: no plan exists
        Shrinks,  // `low.run` lists only pipes smaller than `high.pipe`, the least that `high.run` upstream
                  // can have: no plan exists
    };
    Kind kind = Kind::Fits;
    GradeLimit high, low;
    std::vector<GradeLimit> also;        // further limits without which the pair would fit (crossings)
    std::vector<std::size_t> path;       // runs from the higher to the lower limit, downstream
    std::vector<std::size_t> pathPipes;  // for each, the row of GradeJob::pipes that gets furthest
    Length needed, available;
    std::size_t otherConflicts = 0;  // further places, apart from `low`, where the line comes too low
    std::vector<GradeCure> cures;    // each verified by solving again; empty when no single change is enough

    Length missing() const { return needed - available; }
    Length spare() const { return available - needed; }
};

struct GradePlan {
    bool fits = false;
    std::vector<GradedRun> runs;  // as in the job; empty when nothing fits
    Money cost;
    GradeReason reason;
};

// Errors: BadArgument naming the argument of GRADE.PLAN for a value that cannot be used (length not above 0,
// a pipe without outside diameter, a cut table not rising, more than 60000 levels in a window…) or runs that
// are not one tree.
GradePlan planGrade(const GradeJob& job);

// A run as it is laid, or typed: pipe is a row of GradeJob::pipes.
struct LaidRun {
    Length invertUp, invertDown;
    std::size_t pipe = 0;
};
// What each run costs as laid: pipe, digging, and the drop at its lower end, counted as the plan counts them, so
// that plan and what is typed compare to the cent. Rules are not looked at; a run that comes in lower than the one
// below leaves pays no drop. Errors: as planGrade() for values that all runs share; BadArgument "pipe table" for a
// pipe that is not in it, "length" when `laid` differs in number from the job's runs.
std::vector<Money> laidCost(const GradeJob& job, std::span<const LaidRun> laid);

// Refuses what is wrong with the values that all runs share: pipes, digging, deepest cut, bedding, grid.
void checkGradeRules(const GradeJob& job);

// Whether any plan exists; what planGrade() finds, without looking for the best.
bool gradeFits(const GradeJob& job);

// The reason in words. `names` gives each run's two nodes as the user calls them.
struct GradeNames {
    std::vector<std::string> from, to;
};
Text gradeText(const GradeJob& job, const GradePlan& plan, const GradeNames& names,
               UnitSystem units = UnitSystem::US);

// The chance that a pipe whose two ends were read by rod truly has at least this slope:
//
//     gradeConfidence(Length::feet(40), Length::feet(98.00), Length::feet(97.58), Slope::percent(1),
//                     Length::feet(0.01))   // 0.92: the fall read is 0.42, needed 0.40, its error 0.0141 ft
//
// Each reading carries an independent normal error of standard deviation `rodError`, so the fall between two
// levels carries rodError x sqrt(2), and the chance is the normal distribution function of (fall read - fall
// needed) / that. The length counts as exact. Accuracy 1e-15. Errors: BadArgument "length", "rod error" (not
// above 0).
double gradeConfidence(Length length, Length levelUp, Length levelDown, Slope leastSlope,
                       Length rodError = Length::feet(0.01));

}  // namespace trenchbook
