#include "grade/model.h"

#include <algorithm>
#include <cmath>

#include "trenchbook/core/error.h"
#include "trenchbook/pipe/manning.h"

namespace trenchbook::grade {
namespace {

Step within(double steps) {
    return static_cast<Step>(std::clamp(steps, static_cast<double>(farBelow), static_cast<double>(farAbove)));
}

// Keeps every count of steps within whole numbers; no yard comes near.
void requireCountable(Length length, const char* argument) {
    if (!(std::fabs(length.metres()) < 1e4))
        throw Error(Error::Kind::BadArgument, argument, plain(length.feet()) + " ft",
                    {"less than 32800 ft (10000 m)", "menos de 32800 ft (10000 m)"});
}
constexpr Slope steepest = Slope::fraction(100);

void requireThickness(Length length, const char* argument) {
    requireNotNegative(length, argument);
    requireCountable(length, argument);
}

void check(const GradeJob& job, const GradeRun& run, bool outlet) {
    requirePositive(run.length, "length");
    requireCountable(run.length, "length");
    requireCountable(run.groundUp, "ground up");
    requireCountable(run.groundDown, "ground down");
    requireNotNegative(run.flow, "flow");
    if (run.coverUp) requireThickness(*run.coverUp, "cover up");
    if (run.coverDown) requireThickness(*run.coverDown, "cover down");
    if (run.fixedUp) requireCountable(*run.fixedUp, "fixed up");
    if (run.fixedDown) requireCountable(*run.fixedDown, "fixed down");
    if (run.pipes.empty() || run.pipes.size() > 255)
        throw Error(
            Error::Kind::BadArgument, "pipe",
            Text{"", "una lista de "} + counted(run.pipes.size(), {"pipe", "tubo"}, {"pipes", "tubos"}),
            {"1 to 255 names with bars between", "de 1 a 255 nombres con barras entre ellos"});
    for (std::size_t pipe : run.pipes)
        if (pipe >= job.pipes.size())
            throw Error(Error::Kind::BadArgument, "pipe", std::to_string(pipe),
                        {"rows of the pipe table", "filas de la tabla de tubos"});
    for (const GradeCrossing& crossing : run.crossings) {
        requireCountable(crossing.level, "crossings");
        requireBetween(crossing.fromUpperEnd / run.length, 0, 1 + 1e-9, "crossings");
    }
    if (!outlet) return;
    if (!run.outletLowest)
        throw Error(Error::Kind::BadArgument, "outlet lowest",
                    {"outlet lowest is missing: the lowest invert that the outlet may have.",
                     "falta outlet lowest: la cota de fondo más baja que la salida puede tener."});
    requireCountable(*run.outletLowest, "outlet lowest");
    if (run.outletHighest) requireCountable(*run.outletHighest, "outlet highest");
}

}  // namespace

Step floorStep(double steps) { return within(std::floor(steps + slack)); }
Step ceilStep(double steps) { return within(std::ceil(steps - slack)); }

Model::Model(const GradeJob& given) : job(given), step(given.grid.metres()) {
    checkRules(job);
    std::vector<std::vector<std::size_t>> upstream = arrange();
    sections.reserve(job.pipes.size());
    for (const GradePipe& row : job.pipes)
        sections.push_back({invertToOutsideTop(row.pipe) / job.grid, wallOf(row.pipe) / job.grid,
                            row.pipe.bore / job.grid, row.pipe.nominal});
    runs.reserve(job.runs.size());
    for (std::size_t run = 0; run < job.runs.size(); ++run) {
        check(job, job.runs[run], !job.runs[run].below);
        runs.push_back(onGrid(job.runs[run]));
        runs.back().upstream = std::move(upstream[run]);
    }
    dropSizesThatCannotBe();
}

std::vector<std::vector<std::size_t>> Model::arrange() {
    const auto notATree = [] {
        return Error(
            Error::Kind::BadArgument, "to",
            {"The runs are not one tree: each but the outlet run flows into another, without a loop.",
             "Los tramos no forman un solo árbol: cada uno menos el de salida entra en otro, sin vueltas."});
    };
    const std::size_t count = job.runs.size();
    std::vector<std::vector<std::size_t>> upstream(count);
    std::vector<std::size_t> open;
    for (std::size_t run = 0; run < count; ++run) {
        const std::optional<std::size_t> below = job.runs[run].below;
        if (below && *below >= count) throw notATree();
        (below ? upstream[*below] : open).push_back(run);
    }
    if (open.size() != 1) throw notATree();
    // From the outlet uphill, one branch after the other, then turned round: whatever is worked out of a
    // branch is soon used by the run below it.
    order.reserve(count);
    while (!open.empty()) {
        const std::size_t run = open.back();
        open.pop_back();
        order.push_back(run);
        open.insert(open.end(), upstream[run].begin(), upstream[run].end());
    }
    std::reverse(order.begin(), order.end());
    if (order.size() != count) throw notATree();
    return upstream;
}

Run Model::onGrid(const GradeRun& given) const {
    Run run;
    const std::array<std::optional<Length>, 2> fixed = {given.fixedUp, given.fixedDown};
    for (End end : {Up, Down}) {
        if (!fixed[end]) continue;
        const double level = *fixed[end] / job.grid;
        run.fixed[end] = floorStep(level);
        const double over = level - static_cast<double>(*run.fixed[end]);
        run.fraction[end] = std::fabs(over) <= slack ? 0 : over;
    }
    run.options.reserve(given.pipes.size());
    for (std::size_t pipe : given.pipes) run.options.push_back(optionOf(given, run, pipe));
    return run;
}

void Model::readAgain(std::size_t run) {
    check(job, job.runs[run], !job.runs[run].below);
    Run again = onGrid(job.runs[run]);
    const std::vector<Option>& possible = runs[run].options;
    std::erase_if(again.options, [&](const Option& option) {
        return std::none_of(possible.begin(), possible.end(),
                            [&](const Option& kept) { return kept.pipe == option.pipe; });
    });
    again.upstream = std::move(runs[run].upstream);
    runs[run] = std::move(again);
}

Option Model::optionOf(const GradeRun& given, const Run& run, std::size_t pipe) const {
    using Rule = GradeLimit::Rule;
    const Section& section = sections[pipe];
    const GradePipe& row = job.pipes[pipe];
    const std::array<Length, 2> ground = {given.groundUp, given.groundDown};
    const std::array<std::optional<Length>, 2> cover = {given.coverUp, given.coverDown};

    Option option{};
    option.pipe = pipe;
    for (End end : {Up, Down}) {
        const double surface = ground[end] / job.grid - run.fraction[end];
        const double bedding = section.bottom + job.bedding / job.grid;
        const bool outletEnd = end == Down && !given.below;
        Bound& high = option.high[end];
        Bound& low = option.low[end];
        if (cover[end]) {
            high = {floorStep(surface - section.top - (*cover[end] + row.extraCover) / job.grid),
                    Rule::Cover};
        } else {
            high = {outletEnd ? farAbove : floorStep(surface + bedding), Rule::Ground};
        }
        low = {ceilStep(surface + bedding - job.deepestCut / job.grid), Rule::DeepestCut};
        if (!outletEnd) continue;
        const Step lowest = ceilStep(*given.outletLowest / job.grid - run.fraction[end]);
        if (lowest >= low.level) low = {lowest, Rule::OutletLowest};
        if (!given.outletHighest) continue;
        const Step highest = floorStep(*given.outletHighest / job.grid - run.fraction[end]);
        if (highest <= high.level) high = {highest, Rule::OutletHighest};
    }
    const double n = row.roughness > 0 ? row.roughness : row.pipe.roughness;
    const Slope needed =
        std::max(row.leastSlope, slopeNeeded(row.pipe.bore, given.flow / row.largestShare, n));
    option.fall = ceilStep(std::min(needed, steepest) * given.length / job.grid + run.fraction[Down] -
                           run.fraction[Up]);
    for (const GradeCrossing& crossing : given.crossings) {
        const bool below = crossing.side == GradeCrossing::Side::Below;
        const double share = std::min(crossing.fromUpperEnd / given.length, 1.0);
        const double invert = crossing.level / job.grid + (below ? -section.top : section.bottom);
        option.crossings.push_back(
            {share, below, invert - (1 - share) * run.fraction[Up] - share * run.fraction[Down]});
    }
    return option;
}

// A pipe is of no use where a larger one must come from upstream, or only smaller ones may follow. With these
// gone, every pipe that is left has a partner in each neighbouring run.
void Model::dropSizesThatCannotBe() {
    // The least pipe that each run can have, and the run whose list makes it so.
    struct Least {
        double nominal = 0;
        std::size_t pipe = 0;
        std::size_t run = 0;
    };
    std::vector<Least> least(runs.size());
    for (std::size_t run : order) {
        Least& here = least[run];
        for (std::size_t above : runs[run].upstream)
            if (least[above].nominal > here.nominal) here = least[above];
        Least own{std::numeric_limits<double>::infinity(), 0, run};
        for (const Option& option : runs[run].options)
            if (nominal(option) >= here.nominal && nominal(option) < own.nominal)
                own = {nominal(option), option.pipe, run};
        if (std::isinf(own.nominal)) {
            shrink = Shrink{here.run, here.pipe, run};
            return;
        }
        if (own.nominal > here.nominal) here = own;
    }
    std::vector<double> most(runs.size(), std::numeric_limits<double>::infinity());
    for (auto run = order.rbegin(); run != order.rend(); ++run) {
        std::vector<Option>& options = runs[*run].options;
        const std::optional<std::size_t> below = job.runs[*run].below;
        const double limit = below ? most[*below] : most[*run];
        std::erase_if(options, [&](const Option& option) {
            return nominal(option) < least[*run].nominal || nominal(option) > limit;
        });
        most[*run] = 0;
        for (const Option& option : options) most[*run] = std::max(most[*run], nominal(option));
    }
}

Step Model::joinStep(std::size_t upper, const Option& upperOption, std::size_t lower,
                     const Option& lowerOption) const {
    const double crown = sections[lowerOption.pipe].bore - sections[upperOption.pipe].bore;
    const double above = job.join == Join::Crown ? std::max(crown, 0.0) : 0.0;
    return ceilStep(above + runs[lower].fraction[Up] - runs[upper].fraction[Down]);
}

void checkRules(const GradeJob& job) {
    if (!(job.grid >= Length::metres(1e-5) && job.grid <= Length::metres(10)))
        throw Error(Error::Kind::BadArgument, "grid", plain(job.grid.feet(), 8) + " ft",
                    {"from 0.00004 to 32 ft (0.00001 to 10 m)", "de 0.00004 a 32 ft (0.00001 a 10 m)"});
    requirePositive(job.deepestCut, "deepest cut");
    requireCountable(job.deepestCut, "deepest cut");
    requireThickness(job.bedding, "bedding");
    requireNotNegative(job.dropPrice, "drop price");
    for (const GradePipe& pipe : job.pipes) {
        requireNotNegative(pipe.price, "pipe table");
        requireBetween(pipe.leastSlope.fraction(), 0, 1, "pipe table");
        requireThickness(pipe.extraCover, "pipe table");
        requireNotNegative(pipe.roughness, "pipe table");
        requirePositive(pipe.largestShare, "pipe table");
    }
    for (std::size_t row = 0; row < job.digging.size(); ++row) {
        const Length cut = job.digging[row].cut;
        requireNotNegative(job.digging[row].price, "dig cost");
        requireCountable(cut, "dig cost");
        if (row > 0 && cut <= job.digging[row - 1].cut)
            throw Error(Error::Kind::BadArgument, "dig cost",
                        plain(cut.feet()) + " ft in row " + std::to_string(row + 1),
                        {"cuts that rise from row to row", "profundidades que crecen de fila en fila"});
    }
}

}  // namespace trenchbook::grade

namespace trenchbook {

void checkGradeRules(const GradeJob& job) { grade::checkRules(job); }

}  // namespace trenchbook
