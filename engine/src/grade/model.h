// A grade job on the grid: every limit of a run as a whole number of steps, for each pipe it may be built of.
#pragma once

#include <array>
#include <cstdint>
#include <limits>
#include <optional>
#include <vector>

#include "trenchbook/grade/grade.h"

#pragma GCC visibility push(hidden)
namespace trenchbook::grade {

// Levels are counted in steps of the grid. Far below and above anything real, with room to add:
using Step = std::int64_t;
inline constexpr Step farBelow = std::numeric_limits<Step>::min() / 4;
inline constexpr Step farAbove = std::numeric_limits<Step>::max() / 4;

// What counts as met, in steps.
inline constexpr double slack = 1e-6;

// The last step not above, and the first not below, within far below and far above.
Step floorStep(double steps);
Step ceilStep(double steps);

enum End : std::size_t { Up = 0, Down = 1 };

struct Bound {
    Step level;
    GradeLimit::Rule rule;
};

// What a crossing asks of the two ends: (1 - share) x upper + share x lower end not above, or not below,
// `invert`.
struct Crossing {
    double share;  // of the length, from the upper end
    bool below;    // our pipe passes below: not above
    double invert;
};

// A run built of one of its pipes.
struct Option {
    std::size_t pipe;
    std::array<Bound, 2> high, low;  // by End
    Step fall;                       // the lower end lies at least this much lower
    std::vector<Crossing> crossings;
};

struct Run {
    std::vector<Option> options;
    std::array<std::optional<Step>, 2> fixed;
    // Levels of an end are (whole steps + fraction): not 0 only where an invert off the grid is fixed.
    std::array<double, 2> fraction{};
    std::vector<std::size_t> upstream;
};

// A pipe's measures in steps.
struct Section {
    double top;     // invert to outside top
    double bottom;  // invert to outside bottom
    double bore;
    double nominal;
};

struct Shrink {
    std::size_t upper, pipe;  // the run that needs the larger pipe, and the least one that it can have
    std::size_t lower;        // the run that lists only smaller ones
};

// Refuses values shared by all runs that cannot be used.
void checkRules(const GradeJob& job);

class Model {
  public:
    explicit Model(const GradeJob& job);
    // Reads one run of the job again, whose rules or length have changed; the pipes that it lists have not.
    void readAgain(std::size_t run);

    const GradeJob& job;
    double step;                    // m
    std::vector<Section> sections;  // by row of the pipe table
    std::vector<Run> runs;
    std::vector<std::size_t> order;  // every run after those upstream of it; the outlet run last
    std::optional<Shrink> shrink;    // sizes alone make a plan impossible; options are then as listed

    std::size_t outlet() const { return order.back(); }
    double nominal(const Option& option) const { return sections[option.pipe].nominal; }
    // How far the lower end of `upper` lies at least above the upper end of `lower` that it flows into.
    Step joinStep(std::size_t upper, const Option& upperOption, std::size_t lower,
                  const Option& lowerOption) const;
    Length level(std::size_t run, End end, Step steps) const {
        return Length::metres((static_cast<double>(steps) + runs[run].fraction[end]) * step);
    }

  private:
    std::vector<std::vector<std::size_t>> arrange();  // the runs upstream of each
    Run onGrid(const GradeRun& given) const;
    Option optionOf(const GradeRun& given, const Run& run, std::size_t pipe) const;
    void dropSizesThatCannotBe();
};

}  // namespace trenchbook::grade
#pragma GCC visibility pop
