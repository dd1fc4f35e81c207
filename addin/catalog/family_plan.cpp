// The plan of a whole job from its tables: the cheapest grade that keeps every rule, beside what is typed.
#include <algorithm>

#include "catalog/families.h"
#include "catalog/plan_argument.h"
#include "catalog/printed.h"

namespace trenchbook::addin {
namespace {

// By place, behind the tables of the job.
constexpr PlanTables planAt{.pipes = 13, .digging = 14, .deepestCut = 15, .dropPrice = 16};

// What the tree costs as typed, a row a run; nothing where a run of it has no inverts, or a pipe without a price.
std::vector<std::optional<Money>> typedCosts(const SolvedTables& tables, const GradeTree& tree) {
    std::vector<LaidRun> laid;
    for (const std::size_t row : tree.rows) {
        const SolvedRun& run = tables.solved.runs[row];
        const std::optional<Pipe>& pipe = tables.job.runs[row].pipe;
        if (!run.invertUp || !run.invertDown || !pipe)
            return std::vector<std::optional<Money>>(tree.rows.size());
        std::size_t known = 0;
        while (known < tree.job.pipes.size() && tree.job.pipes[known].pipe.name != pipe->name) ++known;
        if (known == tree.job.pipes.size()) return std::vector<std::optional<Money>>(tree.rows.size());
        laid.push_back({*run.invertUp, *run.invertDown, known});
    }
    std::vector<std::optional<Money>> costs;
    for (const Money& cost : laidCost(tree.job, laid)) costs.emplace_back(cost);
    return costs;
}

Result planNumbers(const Arguments& a) {
    const auto [tables, grades] = planned(a);
    constexpr std::size_t columns = 9;
    Numbers block{.columns = columns, .items = {}};
    const std::size_t rows = grades->lines.rows();
    block.items.reserve(rows * columns);
    for (std::size_t row = 0; row < rows; ++row)
        block.items.insert(block.items.end(), columns,
                           grades->lines.blank(row) ? blankCell() : errorCell(badArgumentCode));
    for (const GradeTree& tree : grades->trees) {
        if (!tree.plan.fits) continue;
        const std::vector<std::optional<Money>> typed = typedCosts(*tables, tree);
        for (std::size_t i = 0; i < tree.rows.size(); ++i) {
            const GradedRun& run = tree.plan.runs[i];
            const auto& below = tree.job.runs[i].below;
            const Length drop = below ? run.invertDown - tree.plan.runs[*below].invertUp : Length();
            const double cells[columns] = {a.in(Measure::Feet, run.invertUp),
                                           a.in(Measure::Feet, run.invertDown),
                                           run.slope.fraction(),
                                           a.in(Measure::Feet, run.cutUp),
                                           a.in(Measure::Feet, run.cutDown),
                                           below ? a.in(Measure::Feet, drop) : blankCell(),
                                           run.cost.dollars(),
                                           typed[i] ? typed[i]->dollars() : blankCell(),
                                           typed[i] ? (*typed[i] - run.cost).dollars() : blankCell()};
            std::copy(std::begin(cells), std::end(cells),
                      block.items.begin() + static_cast<std::ptrdiff_t>(tree.rows[i] * columns));
        }
    }
    return block;
}

// Where the line as typed lies deeper than the plan, and where the next smaller pipe passes every rule too: what
// that wastes. Less than a dollar is not worth a word.
Text saving(const Arguments& a, const SolvedTables& tables, const GradeTree& tree, std::size_t index,
            const std::optional<Money>& typed) {
    const std::size_t row = tree.rows[index];
    const GradedRun& plan = tree.plan.runs[index];
    const SolvedRun& is = tables.solved.runs[row];
    const std::vector<GradePipe>& priced = tree.job.pipes;
    const auto named = [&](const std::string& name) {
        return std::find_if(priced.begin(), priced.end(),
                            [&](const GradePipe& each) { return each.pipe.name == name; });
    };
    Text said;
    if (typed && is.invertUp && is.invertDown) {
        const Length deeper = std::max(plan.invertUp - *is.invertUp, plan.invertDown - *is.invertDown);
        const double more = (*typed - plan.cost).dollars();
        if (more >= 1 && deeper > Length::feet(0.005)) {
            const char* unit = a.units() == UnitSystem::Metric ? " m" : " ft";
            said = Text::same(twoDecimals(a.in(Measure::Feet, deeper)) + unit) +
                   Text{" deeper than the plan: $ ", " más hondo que el plan: $ "} +
                   Text::same(twoDecimals(more));
        }
    }
    const std::optional<Pipe>& pipe = tables.job.runs[row].pipe;
    for (const Finding& finding : tables.solved.of(Part::Runs, row)) {
        if (finding.severity != Severity::Saving || finding.rule != "size.least") continue;
        const auto now = named(pipe->name), next = named(nextSmaller(*pipe)->name);
        if (now == priced.end() || next == priced.end()) continue;
        const double less = (now->price.si() - next->price.si()) * tables.job.runs[row].length->si();
        if (less < 1) continue;
        said += Text::same(said.empty() ? "" : "; ") + Text::same(next->pipe.name) +
                Text{" passes too: $ " + twoDecimals(less) + " less of pipe",
                     " también cumple: $ " + twoDecimals(less) + " menos de tubo"};
    }
    return said;
}

Result planWords(const Arguments& a) {
    const auto [tables, grades] = planned(a);
    constexpr std::size_t columns = 3;
    Texts block{.columns = columns, .items = std::vector<std::string>(grades->lines.rows() * columns)};
    for (std::size_t row = 0; row < grades->lines.rows(); ++row)
        block.items[row * columns + 1] = grades->stranded(row, tables->job.firstRunRow).in(a.language());
    for (const GradeTree& tree : grades->trees) {
        const std::vector<std::optional<Money>> typed =
            tree.plan.fits ? typedCosts(*tables, tree) : std::vector<std::optional<Money>>();
        for (std::size_t i = 0; i < tree.rows.size() && tree.plan.fits; ++i) {
            block.items[tree.rows[i] * columns] = tree.job.pipes[tree.plan.runs[i].pipe].pipe.name;
            block.items[tree.rows[i] * columns + 2] = saving(a, *tables, tree, i, typed[i]).in(a.language());
        }
        block.items[tree.outletRow * columns + 1] =
            grades->reason(tree, a.units(), tables->job.firstRunRow).in(a.language());
    }
    return block;
}

}  // namespace

std::vector<Argument> planArguments() {
    std::vector<Argument> all = jobArguments();
    all.push_back(
        {.name = "pipe table",
         .measure = Measure::Table,
         .says = {"name, $ per ft, least slope, extra cover in, n, largest share, as GRADE.PLAN takes it; "
                  "left out: the pipes of the runs at no price",
                  "nombre, $ por ft, pendiente mínima, tapado extra en in, n, proporción máxima, como en "
                  "GRADE.PLAN; sin ella: los tubos de los tramos, sin precio"},
         .optional = true});
    all.push_back({.name = "dig cost",
                   .measure = Measure::Table,
                   .says = {"cut ft, $ per ft", "profundidad en ft, $ por ft"},
                   .optional = true});
    all.push_back({.name = "deepest cut",
                   .measure = Measure::Feet,
                   .says = {"ground to trench bottom, at most", "del terreno al fondo de la zanja, a lo más"},
                   .fallback = "6 ft",
                   .optional = true,
                   .limits = countableFeet});
    all.push_back(dropPriceArgument());
    return all;
}

// The job of the other examples with one pipe to choose.
std::string planExample() {
    std::string example = jobExample();
    example.pop_back();
    return example + ";;;;;;;;;{\"4 SDR35\";2.1;\"1%\"})";
}

Planned planned(const Arguments& a) {
    const std::shared_ptr<const SolvedTables> tables = solvedTables(a);
    return {tables, gradesOf(a, tables, planAt)};
}

std::vector<Function> planFunctions() {
    constexpr const char* source =
        "as GRADE.PLAN, over the runs, crossings and rules of the solved job; docs/methods/grade.md";
    const auto block = [&](const char* name, Text says, Returns returns, const char* columns,
                           Result (*call)(const Arguments&)) {
        return Function{.name = name,
                        .says = std::move(says),
                        .arguments = planArguments(),
                        .later = jobLater(),
                        .returns = returns,
                        .measure = Measure::Feet,
                        .columns = columns,
                        .source = source,
                        .example = name + planExample(),
                        .call = call};
    };
    return {
        block(
            "JOB.PLAN",
            {"the cheapest grade of each run that keeps every rule, and what the levels typed cost; a row a row of runs",
             "la rasante más barata de cada tramo que cumple todas las reglas, y lo que cuestan las cotas escritas; una "
             "fila por fila de tramos"},
            Returns::NumberBlock,
            "Invert up (ft), Invert down (ft), Slope, Cut up (ft), Cut down (ft), Drop (ft), Plan costs ($), Typed costs "
            "($), More ($)",
            planNumbers),
        block(
            "JOB.PLAN.TEXT",
            {"the pipe of each planned run; on outlet rows why it fits or not; what a run as typed wastes in depth or size",
             "el tubo de cada tramo planeado; en las filas de salida por qué cabe o no; lo que un tramo escrito "
             "desperdicia en hondura o tamaño"},
            Returns::WordBlock, "Pipe, Reason, Saving", planWords),
    };
}

}  // namespace trenchbook::addin
