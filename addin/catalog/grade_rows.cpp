#include "catalog/grade_rows.h"

#include <algorithm>
#include <unordered_map>

#include "catalog/line_rows.h"
#include "catalog/recent.h"
#include "trenchbook/core/tape.h"
#include "trenchbook/pipe/roughness.h"
#include "trenchbook/pipe/size_class.h"

namespace trenchbook::addin {
namespace {

// The arguments in their order.
enum : std::size_t {
    From,
    To,
    RunLength,
    GroundUp,
    GroundDown,
    PipeCell,
    CoverUp,
    CoverDown,
    OutletLowest,
    OutletHighest,
    PipeTable,
    RunFlow,
    FixedUp,
    FixedDown,
    Crossings,
    DeepestCut,
    DigCost,
    Bedding,
    JoinBy,
    Grid,
    Last
};

// Levels are counted in steps of the grid: the engine takes none from 10,000 m on.
constexpr double farthest = 32800;
constexpr Limits countableLevel = {.least = -farthest, .greatest = farthest, .above = true, .below = true};
constexpr Limits countableInches = {.greatest = 12 * farthest, .below = true};

// A number in the cell of a table, in SI; lengths and slopes may be the trade's text. None for an empty cell;
// throws for one that is no number.
std::optional<double> cellIn(const Arguments& a, const Range& table, std::size_t row, std::size_t column,
                             Measure measure) {
    if (column >= table.columns) return std::nullopt;
    const Cell& cell = table.at(row, column);
    if (const double* number = std::get_if<double>(&cell)) return a.from(measure, *number);
    const std::string* text = std::get_if<std::string>(&cell);
    if (text == nullptr || text->find_first_not_of(" \t") == std::string::npos) return std::nullopt;
    if (measure == Measure::Slope) return readSlope(*text).si();
    if (measure == Measure::Feet)
        return readTape(*text, a.units() == UnitSystem::Metric ? BareNumber::Metres : BareNumber::Feet).si();
    throw Error(Error::Kind::BadArgument, "", "\"" + *text + "\"", {"a number", "un número"});
}

std::string wordIn(const Range& table, std::size_t row, std::size_t column) {
    if (column >= table.columns) return "";
    const Cell& cell = table.at(row, column);
    if (const double* number = std::get_if<double>(&cell)) return plain(*number, 6);
    const std::string* text = std::get_if<std::string>(&cell);
    if (text == nullptr) return "";
    const auto first = text->find_first_not_of(" \t");
    return first == std::string::npos ? "" : text->substr(first, text->find_last_not_of(" \t") + 1 - first);
}

const Range& tableOf(const Arguments& a, std::size_t index, std::size_t leastColumns) {
    const Range* table = a.range(index);
    if (table == nullptr || table->columns < leastColumns) {
        const std::string columns = std::to_string(leastColumns);
        a.refuse(index, {"a range of at least " + columns + " columns",
                         "un rango de al menos " + columns + " columnas"});
    }
    return *table;
}

Text rowOf(const char* argument, std::size_t row) {
    const std::string number = std::to_string(row + 1);
    return {std::string(argument) + " row " + number + ": ",
            std::string(argument) + " fila " + number + ": "};
}
Text missing(const char* what, const char* whatSpanish) {
    return {std::string(what) + " is missing", std::string("falta ") + whatSpanish};
}
Text said(const Error& error, const std::string& name) {
    return {error.sentence(Language::English, name), error.sentence(Language::Spanish, name)};
}

// The pipe table; a row that cannot be used is told to the runs that list its pipe.
struct Pipes {
    std::vector<GradePipe> usable;
    std::vector<std::size_t> tableRows;                   // from 1, by usable pipe
    std::unordered_map<std::string, std::size_t> byName;  // usable pipes, by stock name
    std::unordered_map<std::string, Text> troubles;       // by stock name
};

GradePipe pipeIn(const Arguments& a, const Range& table, std::size_t row, const Pipe& stocked) {
    const auto number = [&](std::size_t column, const char* name, Measure measure,
                            std::optional<double> fallback, double least, double most) {
        try {
            const std::optional<double> si = cellIn(a, table, row, column, measure);
            if (!si && !fallback)
                throw Error(Error::Kind::BadArgument, "", leftOut(), {"a number", "un número"});
            const double value = si.value_or(fallback.value_or(0));
            requireBetween(a.in(measure, value), least, most, name);
            return value;
        } catch (const Error& error) {
            throw Error(error.kind(), "pipe table", said(error, name));
        }
    };
    GradePipe pipe;
    pipe.pipe = stocked;
    pipe.price = PricePerLength::fromSi(number(1, "price", Measure::DollarsPerFoot, std::nullopt, 0, 1e6));
    pipe.leastSlope = Slope::fromSi(number(2, "least slope", Measure::Slope, std::nullopt, 0, 0.99));
    pipe.extraCover = Length::fromSi(number(3, "extra cover", Measure::Inches, 0, 0, 1e5));
    pipe.roughness =
        number(4, "n", Measure::Plain, stocked.roughness, pipeRoughness.least, pipeRoughness.most);
    pipe.largestShare = number(5, "largest share", Measure::Share, 0.8, 0.01, 1.1);
    return pipe;
}

Pipes readPipes(const Arguments& a, std::size_t index) {
    const Range& table = tableOf(a, index, 3);
    Pipes pipes;
    for (std::size_t row = 0; row < table.rows; ++row) {
        const std::string word = wordIn(table, row, 0);
        if (word.empty()) continue;
        std::string name = word;
        try {
            const Pipe stocked = stockPipe(word);
            name = stocked.name.empty() ? word : stocked.name;
            outsideOf(stocked);
            const GradePipe pipe = pipeIn(a, table, row, stocked);
            // Of two rows for one pipe the first counts.
            if (!pipes.byName.try_emplace(name, pipes.usable.size()).second) continue;
            pipes.usable.push_back(pipe);
            pipes.tableRows.push_back(row + 1);
        } catch (const Error& error) {
            pipes.troubles.try_emplace(name, rowOf("pipe table", row) + said(error, "pipe"));
        }
    }
    return pipes;
}

// The pipes of one cell, `4 SDR35|6 SDR35`; throws the sentence that says what is wrong.
std::vector<std::size_t> pipesIn(const std::string& cell, const Pipes& pipes) {
    std::vector<std::size_t> listed;
    for (std::size_t start = 0; start <= cell.size();) {
        const std::size_t end = std::min(cell.find('|', start), cell.size());
        const std::string word = cell.substr(start, end - start);
        start = end + 1;
        if (word.find_first_not_of(" \t") == std::string::npos) continue;
        const Pipe stocked = stockPipe(word);
        const auto found = pipes.byName.find(stocked.name);
        if (stocked.name.empty() || found == pipes.byName.end()) {
            const auto trouble = pipes.troubles.find(stocked.name);
            if (trouble != pipes.troubles.end())
                throw Error(Error::Kind::BadArgument, "pipe", trouble->second);
            throw Error(Error::Kind::BadArgument, "pipe", "\"" + word + "\"",
                        {"names that stand in the pipe table", "nombres que estén en la tabla de tubos"});
        }
        if (std::find(listed.begin(), listed.end(), found->second) == listed.end())
            listed.push_back(found->second);
    }
    return listed;
}

std::vector<DigPrice> readDigging(const Arguments& a, std::size_t index) {
    std::vector<DigPrice> prices;
    if (!a.given(index)) return prices;
    const Range& table = tableOf(a, index, 2);
    for (std::size_t row = 0; row < table.rows; ++row) {
        try {
            const std::optional<double> cut = cellIn(a, table, row, 0, Measure::Feet);
            const std::optional<double> price = cellIn(a, table, row, 1, Measure::DollarsPerFoot);
            if (!cut && !price) continue;
            if (!cut || !price)
                throw Error(Error::Kind::BadArgument, "", leftOut(), {"a number", "un número"});
            prices.push_back({Length::fromSi(*cut), PricePerLength::fromSi(*price)});
        } catch (const Error& error) {
            throw Error(error.kind(), "dig cost", said(error, "dig cost"));
        }
    }
    return prices;
}

// The rows of the sheet as runs, and what is wrong with each.
struct Runs {
    std::vector<GradeRun> runs;
    std::vector<Text> troubles;

    void blame(std::size_t row, Text words) {
        if (troubles[row].empty()) troubles[row] = std::move(words);
    }
};

void readCrossings(const Arguments& a, const Network& lines, Runs& rows) {
    if (!a.given(Crossings)) return;
    const Range& table = tableOf(a, Crossings, 5);
    for (std::size_t at = 0; at < table.rows; ++at) {
        const std::string from = wordIn(table, at, 0);
        const std::string to = wordIn(table, at, 1);
        std::string side = nameKey(wordIn(table, at, 3));
        // A crossing without a side and a level asks nothing.
        if (side.empty() && wordIn(table, at, 4).empty()) continue;
        const std::size_t node = lines.node(from);
        const std::size_t row = node == Network::none ? Network::none : lines.leaving(node);
        if (row == Network::none)
            throw Error(Error::Kind::BadArgument, "crossings",
                        rowOf("crossings", at) + Text{"no run leaves \"" + from + "\".",
                                                      "ningún tramo sale de \"" + from + "\"."});
        try {
            if (lines.node(to) == Network::none || lines.node(to) != lines.toNode(row))
                throw Error(Error::Kind::BadArgument, "", "\"" + to + "\"",
                            Text::same(lines.segmentName(row)));
            const std::optional<double> distance = cellIn(a, table, at, 2, Measure::Feet);
            const std::optional<double> level = cellIn(a, table, at, 4, Measure::Feet);
            if (!distance || !level)
                throw Error(Error::Kind::BadArgument, "", leftOut(), {"a number", "un número"});
            const bool below = side == "below" || side == "debajo";
            if (!below && side != "above" && side != "encima")
                throw Error(Error::Kind::BadArgument, "", "\"" + side + "\"",
                            Text::same("\"below\", \"above\""));
            const Length length = rows.runs[row].length;
            if (length.si() > 0 && !(*distance >= 0 && *distance <= length.si() * (1 + 1e-9)))
                throw Error(
                    Error::Kind::BadArgument, "", plain(a.in(Measure::Feet, *distance)),
                    Text{"from 0 to ", "de 0 a "} + Text::same(plain(a.in(Measure::Feet, length.si()))));
            rows.runs[row].crossings.push_back(
                {Length::fromSi(*distance), below ? GradeCrossing::Side::Below : GradeCrossing::Side::Above,
                 Length::fromSi(*level)});
        } catch (const Error& error) {
            rows.blame(row, rowOf("crossings", at) + said(error, "crossing"));
        }
    }
}

Runs readRuns(const Arguments& a, const Network& lines, const Pipes& pipes) {
    const std::size_t count = lines.rows();
    LineRows columns(a, count);
    const auto lengths = columns.quantities<Length>(RunLength);
    const auto groundUp = columns.quantities<Length>(GroundUp);
    const auto groundDown = columns.quantities<Length>(GroundDown);
    const auto coverUp = columns.quantities<Length>(CoverUp);
    const auto coverDown = columns.quantities<Length>(CoverDown);
    const auto lowest = columns.quantities<Length>(OutletLowest);
    const auto highest = columns.quantities<Length>(OutletHighest);
    const auto flows = columns.quantities<Flow>(RunFlow);
    const auto fixedUp = columns.quantities<Length>(FixedUp);
    const auto fixedDown = columns.quantities<Length>(FixedDown);
    std::vector<std::string> words = a.words(PipeCell);
    words.resize(count);

    Runs rows{std::vector<GradeRun>(count), columns.trouble()};
    std::unordered_map<std::string, std::vector<std::size_t>> known;  // a job has few different pipe cells
    for (std::size_t row = 0; row < count; ++row) {
        if (lines.blank(row)) continue;
        GradeRun& run = rows.runs[row];
        if (!lengths[row]) rows.blame(row, missing("length", "la longitud"));
        if (!groundUp[row]) rows.blame(row, missing("ground up", "el terreno arriba"));
        if (!groundDown[row]) rows.blame(row, missing("ground down", "el terreno abajo"));
        if (lines.outlet(row) && !lowest[row])
            rows.blame(row, missing("outlet lowest", "la cota más baja de la salida"));
        const std::string& cell = words[row];
        auto listed = known.find(cell);
        try {
            if (listed == known.end()) listed = known.emplace(cell, pipesIn(cell, pipes)).first;
            run.pipes = listed->second;
            if (run.pipes.empty()) rows.blame(row, missing("pipe", "el tubo"));
        } catch (const Error& error) {
            rows.blame(row, said(error, "pipe"));
        }
        run.length = lengths[row].value_or(Length());
        run.groundUp = groundUp[row].value_or(Length());
        run.groundDown = groundDown[row].value_or(Length());
        run.coverUp = coverUp[row];
        run.coverDown = coverDown[row];
        run.flow = flows[row].value_or(Flow());
        run.fixedUp = fixedUp[row];
        run.fixedDown = fixedDown[row];
        if (!lines.outlet(row)) continue;
        run.outletLowest = lowest[row];
        run.outletHighest = highest[row];
    }
    readCrossings(a, lines, rows);
    return rows;
}

// Plans every outlet's tree. From the outlets uphill: each row belongs to the tree of the row downstream.
Grades planTrees(Network lines, const Pipes& pipes, Runs rows, const GradeJob& shared,
                 const GradeNames& names) {
    checkGradeRules(shared);
    std::vector<GradeTree> trees;
    std::vector<bool> bad(lines.rows());
    for (std::size_t row = 0; row < lines.rows(); ++row)
        bad[row] = !rows.troubles[row].empty() && !lines.blank(row);
    const std::vector<std::size_t> spoiled = lines.spoiledByUpstream(bad);
    std::vector<std::size_t> treeOf(lines.rows(), Network::none);
    std::vector<std::size_t> runOf(lines.rows());
    const std::span<const std::size_t> order = lines.order();
    for (auto row = order.rbegin(); row != order.rend(); ++row) {
        if (!lines.placed(*row)) continue;
        if (lines.outlet(*row)) {
            treeOf[*row] = trees.size();
            GradeTree& tree = trees.emplace_back();
            tree.outletRow = *row;
            tree.job = shared;
            tree.tableRows = pipes.tableRows;
            tree.culprit = spoiled[*row];
        } else if (lines.downstream(*row) != Network::none) {
            treeOf[*row] = treeOf[lines.downstream(*row)];
        }
        if (treeOf[*row] == Network::none) continue;
        GradeTree& tree = trees[treeOf[*row]];
        runOf[*row] = tree.rows.size();
        tree.rows.push_back(*row);
        GradeRun run = rows.runs[*row];
        if (!lines.outlet(*row)) run.below = runOf[lines.downstream(*row)];
        tree.job.runs.push_back(std::move(run));
        tree.names.from.push_back(names.from[*row]);
        tree.names.to.push_back(names.to[*row]);
    }
    for (GradeTree& tree : trees) {
        if (tree.culprit != Network::none) continue;
        try {
            tree.plan = planGrade(tree.job);
        } catch (const Error& error) {
            tree.refused = {error.sentence(Language::English), error.sentence(Language::Spanish)};
        }
    }
    return {std::move(lines), std::move(rows.troubles), std::move(trees)};
}

Length usualGrid(UnitSystem units) {
    return units == UnitSystem::Metric ? Length::metres(0.005) : Length::feet(0.01);
}

Grades solve(const Arguments& a, PricePerLength dropPrice) {
    a.requireSameRows({From, To, RunLength, GroundUp, GroundDown, PipeCell, CoverUp, CoverDown, OutletLowest,
                       OutletHighest, RunFlow, FixedUp, FixedDown});
    Network lines = *readNetwork(a, From, To);
    const Pipes pipes = readPipes(a, PipeTable);
    GradeJob shared;
    shared.pipes = pipes.usable;
    shared.digging = readDigging(a, DigCost);
    shared.dropPrice = dropPrice;
    shared.deepestCut = a.quantity<Length>(DeepestCut, Length::feet(6));
    shared.bedding = a.quantity<Length>(Bedding, Length());
    shared.join = joinNamed(a.text(JoinBy, "crown"));
    shared.grid = a.quantity<Length>(Grid, usualGrid(a.units()));
    checkGradeRules(shared);
    Runs rows = readRuns(a, lines, pipes);
    return planTrees(std::move(lines), pipes, std::move(rows), shared, {a.words(From), a.words(To)});
}

// What the outlet of this row must stay over; none where no row of Outlets gives its flow line.
std::optional<Length> floorOf(const SolvedTables& tables, std::size_t row) {
    const Network& lines = tables.solved.lines;
    for (const Outlet& outlet : tables.job.outlets)
        if (!outlet.blank && outlet.flowLine && lines.node(outlet.node) == lines.toNode(row))
            return *outlet.flowLine + tables.job.rules.length("outlet.above.min");
    return std::nullopt;
}

// A run of the solved job as the plan takes it, or what it lacks.
GradeRun plannedRun(const SolvedTables& tables, std::size_t row, const Pipes& pipes, Text& trouble) {
    const Run& given = tables.job.runs[row];
    const SolvedRun& solved = tables.solved.runs[row];
    const auto blame = [&](Text words) {
        if (trouble.empty()) trouble = std::move(words);
    };
    for (const Unusable& cell : given.unusable) blame(cell.why);
    if (!given.length) blame(missing("length", "la longitud"));
    if (!solved.groundUp) blame(missing("ground up", "el terreno arriba"));
    if (!solved.groundDown) blame(missing("ground down", "el terreno abajo"));
    if (!solved.flow) blame(missing("flow", "el caudal"));
    if (!given.surfaceUp || !given.surfaceDown) blame(missing("surface", "la superficie"));
    const bool outlet = tables.solved.lines.outlet(row);
    if (outlet && !given.outletLevel && !given.known())
        blame(missing("outlet level", "la cota de la salida"));
    GradeRun run;
    std::vector<Pipe> choices = given.choices;
    if (choices.empty() && given.pipe) choices = {*given.pipe};
    std::string names;
    for (const Pipe& pipe : choices) names += (names.empty() ? "" : "|") + pipe.name;
    try {
        run.pipes = pipesIn(names, pipes);
        if (run.pipes.empty()) blame(missing("pipe", "el tubo"));
    } catch (const Error& error) {
        blame(said(error, "pipe"));
    }
    run.length = given.length.value_or(Length());
    run.groundUp = solved.groundUp.value_or(Length());
    run.groundDown = solved.groundDown.value_or(Length());
    run.coverUp = solved.coverAskedUp;
    run.coverDown = solved.coverAskedDown;
    run.flow = solved.flow.value_or(Flow());
    run.fixedDown = given.fixedDown;
    if (given.known()) {
        run.fixedUp = given.knownUp, run.fixedDown = given.knownDown;
        run.coverUp.reset(), run.coverDown.reset();
    }
    if (outlet) {
        run.outletLowest = given.known() ? given.knownDown : given.outletLevel;
        run.outletHighest = given.outletHighest;
        run.outletFloor = floorOf(tables, row);
    }
    return run;
}

// Where no table is handed over: the pipes that the runs name, at no price, by the rules.
Pipes pipesOfRuns(const SolvedTables& tables) {
    Pipes pipes;
    const auto add = [&](const Pipe& pipe) {
        if (pipe.name.empty() || !pipe.outside) return;
        if (!pipes.byName.try_emplace(pipe.name, pipes.usable.size()).second) return;
        GradePipe usable;
        usable.pipe = pipe;
        usable.leastSlope = tables.job.rules.slope(leastSlopeRule(pipe));
        usable.roughness = pipe.roughness;
        usable.largestShare = tables.job.rules.number("share.max");
        pipes.usable.push_back(usable);
        pipes.tableRows.push_back(pipes.usable.size());
    };
    for (const Run& run : tables.job.runs) {
        if (run.pipe) add(*run.pipe);
        for (const Pipe& choice : run.choices) add(choice);
    }
    return pipes;
}

// Cover that is asked between the ends: under the shots, and where an end in daylight begins to be exempt.
void coversBetween(const SolvedTables& tables, std::size_t row, GradeRun& planned) {
    const Run& run = tables.job.runs[row];
    const SolvedRun& solved = tables.solved.runs[row];
    if (!run.length || !run.pipe || run.known()) return;
    const auto below = [&](Length at, std::optional<Length> ground, CoverSurface surface) {
        const std::optional<Length> asked = leastCover(surface, *run.pipe, tables.job.rules);
        if (ground && asked)
            planned.crossings.push_back({.fromUpperEnd = at, .level = *ground - *asked, .cover = true});
    };
    for (const GroundPoint& point : solved.between)
        if (point.surface) below(point.at, point.ground, *point.surface);
    const Length exempt = tables.job.rules.length("cover.daylight.within");
    if (!(exempt < *run.length)) return;
    const Length last = *run.length - exempt;
    if (run.surfaceUp == CoverSurface::Daylight)
        below(exempt, groundOver(run, solved, exempt), CoverSurface::LawnEnd);
    if (run.surfaceDown == CoverSurface::Daylight)
        below(last, groundOver(run, solved, last), CoverSurface::LawnEnd);
}

Grades solveTables(const Arguments& a, const SolvedTables& tables, const PlanTables& at) {
    const Pipes pipes = a.given(at.pipes) ? readPipes(a, at.pipes) : pipesOfRuns(tables);
    GradeJob shared;
    shared.pipes = pipes.usable;
    shared.digging = readDigging(a, at.digging);
    shared.dropPrice = a.quantity<PricePerLength>(at.dropPrice, PricePerLength());
    shared.deepestCut = a.quantity<Length>(at.deepestCut, Length::feet(6));
    shared.bedding = tables.job.rules.length("bedding.depth");
    shared.join = Join::Crown;
    shared.grid = usualGrid(a.units());
    checkGradeRules(shared);
    const std::size_t count = tables.job.runs.size();
    Runs rows{std::vector<GradeRun>(count), std::vector<Text>(count)};
    GradeNames names;
    for (std::size_t row = 0; row < count; ++row) {
        const Run& run = tables.job.runs[row];
        names.from.push_back(run.from);
        names.to.push_back(run.to);
        if (!tables.solved.lines.blank(row))
            rows.runs[row] = plannedRun(tables, row, pipes, rows.troubles[row]);
    }
    for (std::size_t i = 0; i < tables.job.crossings.size(); ++i) {
        const Crossing& crossing = tables.job.crossings[i];
        const SolvedCrossing& solved = tables.solved.crossings[i];
        if (solved.run == Network::none || !solved.keptLevel || !crossing.at || !crossing.passesAbove)
            continue;
        const auto side = *crossing.passesAbove ? GradeCrossing::Side::Below : GradeCrossing::Side::Above;
        rows.runs[solved.run].crossings.push_back({*crossing.at, side, *solved.keptLevel});
    }
    for (std::size_t row = 0; row < count; ++row) coversBetween(tables, row, rows.runs[row]);
    return planTrees(tables.solved.lines, pipes, std::move(rows), shared, names);
}

}  // namespace

Text Grades::reason(const GradeTree& tree, UnitSystem units, std::size_t firstRow) const {
    if (!tree.refused.empty()) return tree.refused;
    if (tree.culprit == Network::none) return gradeText(tree.job, tree.plan, tree.names, units);
    const Text& trouble = troubles[tree.culprit];
    const std::string row =
        std::to_string(tree.culprit + firstRow) + " (" + lines.segmentName(tree.culprit) + "): ";
    return Text{"row ", "fila "} + Text::same(row) +
           (trouble.empty() ? stranded(tree.culprit, firstRow) : trouble);
}

Text Grades::stranded(std::size_t row, std::size_t firstRow) const {
    return lines.blank(row) ? Text() : faultText(lines, lines.fault(row), row, firstRow);
}

std::shared_ptr<const Grades> gradesOf(const Arguments& a) {
    const double price = a.later(a.function().later.size() - 1, 0);
    static Recent<Grades> recent(8);
    std::string question = questionOf(a, 0, Last);
    addToQuestion(question, price);
    return recent.get(
        question, [&] { return solve(a, PricePerLength::fromSi(a.from(Measure::DollarsPerFoot, price))); });
}

std::shared_ptr<const Grades> gradesOf(const Arguments& a, const std::shared_ptr<const SolvedTables>& tables,
                                       const PlanTables& at) {
    static Recent<Grades> recent(8);
    std::string question = a.units() == UnitSystem::Metric ? "m" : "u";
    for (const std::size_t index : {at.pipes, at.digging, at.deepestCut, at.dropPrice})
        addToQuestion(question, a.raw(index));
    question += tables->question;
    return recent.get(question, [&] { return solveTables(a, *tables, at); });
}

Argument dropPriceArgument() {
    return {.name = "drop price",
            .measure = Measure::DollarsPerFoot,
            .says = {"of a drop at a node, by the foot between the two inverts: its pipe and bends",
                     "de una caída en un nodo, por pie entre las dos cotas: su tubo y codos"},
            .fallback = "0",
            .optional = true,
            .limits = Limits{.greatest = 1e6}};
}

std::vector<Argument> gradeArguments() {
    const auto column = [](const char* name, Measure measure, Text says) {
        const bool limited = measure != Measure::Words;
        return Argument{.name = name,
                        .measure = measure,
                        .says = std::move(says),
                        .column = true,
                        .limits = !limited ? std::nullopt
                                           : std::optional(measure == Measure::Inches ? countableInches
                                                                                      : countableLevel)};
    };
    return {
        fromArgument(),
        toArgument(),
        within(lengthColumn(), countableFeet),
        column("ground up", Measure::Feet, {"ground at the upper end", "terreno en el extremo de arriba"}),
        column("ground down", Measure::Feet, {"ground at the lower end", "terreno en el extremo de abajo"}),
        column("pipe", Measure::Words,
               {"one stock name, or several with bars between: 4 SDR35|6 SDR35",
                "un nombre comercial, o varios con barras entre ellos: 4 SDR35|6 SDR35"}),
        column("cover up", Measure::Inches,
               {"least cover at the upper end; blank: exempt, as at daylight",
                "tapado mínimo en el extremo de arriba; vacío: sin mínimo, como a cielo abierto"}),
        column("cover down", Measure::Inches,
               {"least cover at the lower end; blank: exempt",
                "tapado mínimo en el extremo de abajo; vacío: sin mínimo"}),
        column("outlet lowest", Measure::Feet,
               {"lowest invert of the outlet, on outlet rows",
                "cota más baja de la salida, en las filas de salida"}),
        column("outlet highest", Measure::Feet,
               {"highest invert of the outlet, on outlet rows; blank: no limit",
                "cota más alta de la salida, en las filas de salida; vacío: sin límite"}),
        {.name = "pipe table",
         .measure = Measure::Table,
         .says = {"name, $ per ft, least slope, extra cover in, n, largest share; n blank: the stock's, "
                  "share blank: 0.8",
                  "nombre, $ por ft, pendiente mínima, tapado extra en in, n, proporción máxima; n vacío: la "
                  "del tubo, "
                  "proporción vacía: 0.8"}},
        optionally(columnOf(flowArgument())),
        optionally(
            column("fixed up", Measure::Feet, {"upper invert set by hand", "cota de arriba puesta a mano"})),
        optionally(
            column("fixed down", Measure::Feet, {"lower invert set by hand", "cota de abajo puesta a mano"})),
        {.name = "crossings",
         .measure = Measure::Table,
         .says = {"from, to, ft from the upper end, \"below\" or \"above\", level that the pipe's outside "
                  "keeps below "
                  "or above",
                  "de, a, ft desde el extremo de arriba, \"below\" (debajo) o \"above\" (encima), nivel del "
                  "que el "
                  "exterior del tubo queda debajo o encima"},
         .optional = true},
        {.name = "deepest cut",
         .measure = Measure::Feet,
         .says = {"ground to trench bottom, at most", "del terreno al fondo de la zanja, a lo más"},
         .fallback = "6 ft",
         .optional = true,
         .limits = countableFeet},
        {.name = "dig cost",
         .measure = Measure::Table,
         .says = {"cut ft, $ per ft: linear between rows, level above the first, going on below the last",
                  "profundidad en ft, $ por ft: lineal entre filas, constante antes de la primera, sigue "
                  "tras la última"},
         .optional = true},
        {.name = "bedding",
         .measure = Measure::Inches,
         .says = {"bedding under the pipe", "cama bajo el tubo"},
         .fallback = "0",
         .optional = true,
         .limits = countableInches},
        {.name = "join",
         .measure = Measure::Words,
         .says =
             {"what may not lie lower where pipes join: \"crown\" (inside tops and inverts) or \"invert\"",
              "qué no debe quedar más bajo donde se "
              "unen tubos: \"crown\" (claves y fondos) o \"invert\" (fondos)"},
         .fallback = "\"crown\"",
         .optional = true},
        {.name = "grid",
         .measure = Measure::Feet,
         .says = {"step of the levels", "paso de las cotas"},
         .fallback = "0.01 ft (0.005 m)",
         .optional = true,
         .limits = Limits{.least = 0.00003281, .greatest = 32.808, .toldByFunction = true}},
    };
}

}  // namespace trenchbook::addin
