// The lot in plan: points from tapes, distances, the drawing; plats; levels of several set-ups.
#include <algorithm>

#include "catalog/common.h"
#include "catalog/drawing_pens.h"
#include "catalog/recent.h"
#include "catalog/rules_argument.h"
#include "trenchbook/job/as_built.h"
#include "trenchbook/job/draw_lot.h"
#include "trenchbook/job/lot_verdict.h"
#include "trenchbook/job/plan_drawing.h"
#include "trenchbook/job/read.h"
#include "trenchbook/layout/level_net.h"
#include "trenchbook/layout/ties.h"
#include "trenchbook/layout/traverse.h"

namespace trenchbook::addin {
namespace {

constexpr const char* netSource =
    "Intersection of tapes, then least squares by sparse normal equations; slips by W. Baarda's test of residuals "
    "(1968, from memory); checked against J. Mahun's open survey texts and independent computation";

// By place among the arguments of a lot.
enum Table : std::size_t { Points, Tapes, Nodes, RunRows, PitForm, Rules, Last };

std::vector<Argument> lotArguments() {
    const auto table = [](const char* name, Text says, bool optional) {
        return Argument{
            .name = name, .measure = Measure::Table, .says = std::move(says), .optional = optional};
    };
    Argument rules = rulesArgument();
    return {
        table("layout",
              {"points of the lot with their row of headings: Point, What, Object, X, Y, Tie 1…",
               "puntos del lote con su fila de encabezados: Point, What, Object, X, Y, Tie 1…"},
              false),
        table("tapes",
              {"distances between points: From, To, Wall to, Length",
               "distancias entre puntos: From, To, Wall to, Length"},
              true),
        table("nodes",
              {"points of the lines: Node, Turn, Tie 1, Tie 2…",
               "puntos de las líneas: Node, Turn, Tie 1, Tie 2…"},
              true),
        table("runs", {"pipe from node to node: From, To, Length…", "tubo de nodo a nodo: From, To, Length…"},
              true),
        table("pit",
              {"label and value: Tee at node, Length, Width…", "rótulo y valor: Tee at node, Length, Width…"},
              true),
        std::move(rules)};
}

constexpr const char* lotExample =
    "({\"Point\";\"What\";\"Object\";\"X\";\"Y\"|\"SW\";\"building\";\"house\";0;0|\"SE\";\"\";\"house\";40;0|"
    "\"NE\";\"\";\"house\";40;30}; ; "
    "{\"Node\";\"Tie 1\";\"Tie 2\"|\"A\";\"SW 5.4\";\"SE 35.1\"|\"B\";\"SE 14.1\";\"NE 41.2\"}; "
    "{\"From\";\"To\";\"Length\";\"Pipe\"|\"A\";\"B\";45.7;\"4 SDR35\"}";
std::string example(const char* name, const std::string& more = "") {
    return name + std::string(lotExample) + more + ")";
}

Grid gridOf(const Arguments& arguments, std::size_t index) {
    if (const Range* cells = arguments.range(index)) return *cells;
    const double* number =
        std::get_if<double>(&arguments.raw(index));  // a lone blank cell, as Calc delivers it
    if (!arguments.given(index) || (number != nullptr && *number == 0)) return {};
    arguments.refuse(index, {"a range with headings or labels", "un rango con encabezados o rótulos"});
}

// Calls with the same tables share one drawn lot while it is among the last few.
std::shared_ptr<const Job> lot(const Arguments& arguments, const Grid& crossings = {}) {
    if (!arguments.given(Points))
        arguments.refuse(Points, {"a range with headings", "un rango con encabezados"});
    static Recent<Job> recent(4);
    std::string question = questionOf(arguments, 0, Last);
    addToQuestion(question, crossings);
    return recent.get(question, [&] {
        JobTables tables;
        tables.crossings = crossings;
        tables.layout = gridOf(arguments, Points);
        tables.tapes = gridOf(arguments, Tapes);
        tables.nodes = gridOf(arguments, Nodes);
        tables.runs = gridOf(arguments, RunRows);
        tables.pit = gridOf(arguments, PitForm);
        tables.rules = gridOf(arguments, Rules);
        return readJob(tables, arguments.units());
    });
}

// Refusals of the engine about the argument that the caller knows.
template <class Do>
auto asked(std::initializer_list<std::pair<const char*, const char*>> names, const Do& make) {
    try {
        return make();
    } catch (const Error& error) {
        for (const auto& [engine, ours] : names)
            if (error.argument() == engine) throw error.about(ours);
        throw;
    }
}

// One column of a block: what it says of a row, in SI.
struct Column {
    const char* heading;
    Measure measure;
    std::optional<double> (*of)(const Job& job, std::size_t row);
};
struct WordColumn {
    const char* heading;
    Text (*of)(const Job& job, std::size_t row);
};

template <class Kind>
std::optional<double> si(const std::optional<Kind>& quantity) {
    return quantity ? std::optional(quantity->si()) : std::nullopt;
}

template <auto rows>
std::size_t count(const Job& job) {
    return (job.*rows).size();
}

// Of the places of points or nodes.
template <auto rows, auto part>
std::optional<double> placed(const Job& job, std::size_t row) {
    if (row >= (job.drawn.*rows).size()) return std::nullopt;
    const PlacedPoint& place = (job.drawn.*rows)[row].place;
    return place.placed() ? std::optional(((*place.at).*part).si()) : std::nullopt;
}
template <auto rows, bool second, auto part>
std::optional<double> possible(const Job& job, std::size_t row) {
    if (row >= (job.drawn.*rows).size()) return std::nullopt;
    const PlacedPoint& place = (job.drawn.*rows)[row].place;
    const std::optional<PlanPoint>& at = second ? place.other : place.at;
    return place.by == PlacedBy::TwoPlaces && at ? std::optional(((*at).*part).si()) : std::nullopt;
}
template <auto rows>
std::optional<double> uncertain(const Job& job, std::size_t row) {
    if (row >= (job.drawn.*rows).size()) return std::nullopt;
    const PlacedPoint& place = (job.drawn.*rows)[row].place;
    return place.placed() ? std::optional(place.uncertain.si()) : std::nullopt;
}
template <auto rows>
std::optional<double> tapesOf(const Job& job, std::size_t row) {
    if (row >= (job.drawn.*rows).size() || (job.drawn.*rows)[row].says.empty()) return std::nullopt;
    return static_cast<double>((job.drawn.*rows)[row].tapes);
}
template <auto ties, std::size_t which>
std::optional<double> tieOff(const Job& job, std::size_t row) {
    return row < (job.drawn.*ties).size() ? si((job.drawn.*ties)[row][which].residual) : std::nullopt;
}
template <auto rows>
Text said(const Job& job, std::size_t row) {
    return row < (job.drawn.*rows).size() ? (job.drawn.*rows)[row].says : Text{};
}
template <auto ties>
Text tiesSaid(const Job& job, std::size_t row) {
    Text all;
    if (row >= (job.drawn.*ties).size()) return all;
    for (std::size_t i = 0; i < (job.drawn.*ties)[row].size(); ++i) {
        const DrawnTape& tie = (job.drawn.*ties)[row][i];
        Text one = tie.trouble;
        if (tie.slip) one = Text{"does not fit", "no coincide"};
        if (!one.empty())
            all += Text::same(std::string(all.empty() ? "" : "; ") + "Tie " + std::to_string(i + 1) + ": ") +
                   one;
    }
    return all;
}
template <auto rows, auto kind>
std::optional<double> nearest(const Job& job, std::size_t row) {
    return row < (job.drawn.*rows).size() ? si((job.drawn.*rows)[row].*kind) : std::nullopt;
}
template <auto kind>
std::optional<double> besideRun(const Job& job, std::size_t row) {
    return row < job.drawn.runs.size() ? si(job.drawn.runs[row].near.*kind) : std::nullopt;
}
template <auto end, auto part>
std::optional<double> runEnd(const Job& job, std::size_t row) {
    if (row >= job.drawn.runs.size() || !(job.drawn.runs[row].*end)) return std::nullopt;
    return ((*(job.drawn.runs[row].*end)).*part).si();
}

const std::vector<Column>& pointColumns() {
    constexpr auto rows = &DrawnLot::points;
    static const std::vector<Column> columns = {
        {"X", Measure::Feet, placed<rows, &PlanPoint::east>},
        {"Y", Measure::Feet, placed<rows, &PlanPoint::north>},
        {"Uncertain", Measure::Feet, uncertain<rows>},
        {"Tapes", Measure::Plain, tapesOf<rows>},
        {"Here X", Measure::Feet, possible<rows, false, &PlanPoint::east>},
        {"Here Y", Measure::Feet, possible<rows, false, &PlanPoint::north>},
        {"Or X", Measure::Feet, possible<rows, true, &PlanPoint::east>},
        {"Or Y", Measure::Feet, possible<rows, true, &PlanPoint::north>},
        {"Tie 1 off", Measure::Feet, tieOff<&DrawnLot::pointTies, 0>},
        {"Tie 2 off", Measure::Feet, tieOff<&DrawnLot::pointTies, 1>},
        {"Tie 3 off", Measure::Feet, tieOff<&DrawnLot::pointTies, 2>}};
    return columns;
}
const std::vector<Column>& nodeColumns() {
    constexpr auto rows = &DrawnLot::nodes;
    constexpr auto near = &DrawnLot::nodesNear;
    static const std::vector<Column> columns = {
        {"X", Measure::Feet, placed<rows, &PlanPoint::east>},
        {"Y", Measure::Feet, placed<rows, &PlanPoint::north>},
        {"Uncertain", Measure::Feet, uncertain<rows>},
        {"Tapes", Measure::Plain, tapesOf<rows>},
        {"Here X", Measure::Feet, possible<rows, false, &PlanPoint::east>},
        {"Here Y", Measure::Feet, possible<rows, false, &PlanPoint::north>},
        {"Or X", Measure::Feet, possible<rows, true, &PlanPoint::east>},
        {"Or Y", Measure::Feet, possible<rows, true, &PlanPoint::north>},
        {"Tie 1 off", Measure::Feet, tieOff<&DrawnLot::nodeTies, 0>},
        {"Tie 2 off", Measure::Feet, tieOff<&DrawnLot::nodeTies, 1>},
        {"Turn drawn", Measure::Degrees,
         [](const Job& job, std::size_t row) {
             return row < job.drawn.turns.size() ? si(job.drawn.turns[row]) : std::nullopt;
         }},
        {"Building", Measure::Feet, nearest<near, &LotNear::building>},
        {"Lot line", Measure::Feet, nearest<near, &LotNear::lotLine>},
        {"Walk", Measure::Feet, nearest<near, &LotNear::walk>},
        {"Pool", Measure::Feet, nearest<near, &LotNear::pool>},
        {"Septic", Measure::Feet, nearest<near, &LotNear::septic>},
        {"Well", Measure::Feet, nearest<near, &LotNear::well>},
        {"Tree", Measure::Feet, nearest<near, &LotNear::tree>}};
    return columns;
}
const std::vector<Column>& runColumns() {
    static const std::vector<Column> columns = {
        {"From X", Measure::Feet, runEnd<&DrawnRun::from, &PlanPoint::east>},
        {"From Y", Measure::Feet, runEnd<&DrawnRun::from, &PlanPoint::north>},
        {"To X", Measure::Feet, runEnd<&DrawnRun::to, &PlanPoint::east>},
        {"To Y", Measure::Feet, runEnd<&DrawnRun::to, &PlanPoint::north>},
        {"Length drawn", Measure::Feet,
         [](const Job& job, std::size_t row) -> std::optional<double> {
             if (row >= job.drawn.runs.size() || !job.drawn.runs[row].from || !job.drawn.runs[row].to)
                 return std::nullopt;
             return distance(*job.drawn.runs[row].from, *job.drawn.runs[row].to).si();
         }},
        {"Length off", Measure::Feet,
         [](const Job& job, std::size_t row) {
             return row < job.drawn.runs.size() ? si(job.drawn.runs[row].residual) : std::nullopt;
         }},
        {"Azimuth", Measure::Degrees,
         [](const Job& job, std::size_t row) -> std::optional<double> {
             if (row >= job.drawn.runs.size() || !job.drawn.runs[row].from || !job.drawn.runs[row].to)
                 return std::nullopt;
             return azimuth(*job.drawn.runs[row].from, *job.drawn.runs[row].to).degrees();
         }},
        {"Building", Measure::Feet, besideRun<&LotNear::building>},
        {"Lot line", Measure::Feet, besideRun<&LotNear::lotLine>},
        {"Walk", Measure::Feet, besideRun<&LotNear::walk>},
        {"Pool", Measure::Feet, besideRun<&LotNear::pool>},
        {"Septic", Measure::Feet, besideRun<&LotNear::septic>},
        {"Well", Measure::Feet, besideRun<&LotNear::well>},
        {"Tree", Measure::Feet, besideRun<&LotNear::tree>}};
    return columns;
}
const std::vector<Column>& tapeColumns() {
    static const std::vector<Column> columns = {
        {"Drawn", Measure::Feet,
         [](const Job& job, std::size_t row) -> std::optional<double> {
             if (row >= job.drawn.tapes.size()) return std::nullopt;
             const DrawnTape& tape = job.drawn.tapes[row];
             return tape.residual ? std::optional((*tape.typed - *tape.residual).si()) : std::nullopt;
         }},
        {"Off", Measure::Feet, [](const Job& job, std::size_t row) {
             return row < job.drawn.tapes.size() ? si(job.drawn.tapes[row].residual) : std::nullopt;
         }}};
    return columns;
}
const std::vector<WordColumn>& pointWords() {
    static const std::vector<WordColumn> columns = {
        {"Verdict", [](const Job& job, std::size_t row) { return lotPointVerdict(job, row).verdict; }},
        {"Check", [](const Job& job, std::size_t row) { return lotPointVerdict(job, row).check; }}};
    return columns;
}
const std::vector<WordColumn>& nodeWords() {
    static const std::vector<WordColumn> columns = {{"Place", said<&DrawnLot::nodes>},
                                                    {"Ties", tiesSaid<&DrawnLot::nodeTies>}};
    return columns;
}
const std::vector<WordColumn>& tapeWords() {
    static const std::vector<WordColumn> columns = {
        {"Verdict", [](const Job& job, std::size_t row) { return lotTapeVerdict(job, row).verdict; }},
        {"Check", [](const Job& job, std::size_t row) { return lotTapeVerdict(job, row).check; }}};
    return columns;
}

std::string headings(const std::vector<Column>& columns) {
    std::string text;
    for (const Column& column : columns) {
        const std::string unit = hasUnit(column.measure) ? " (" + info(column.measure).us.en + ")" : "";
        text += (text.empty() ? "" : ", ") + std::string(column.heading) + unit;
    }
    return text;
}
std::string headings(const std::vector<WordColumn>& columns) {
    std::string text;
    for (const WordColumn& column : columns) text += (text.empty() ? "" : ", ") + std::string(column.heading);
    return text;
}

template <const std::vector<Column>& (*columns)(), std::size_t (*rows)(const Job&)>
Result numbersOf(const Arguments& a) {
    const std::shared_ptr<const Job> job = lot(a);
    Numbers block{.columns = columns().size(), .items = {}};
    for (std::size_t row = 0; row < rows(*job); ++row)
        for (const Column& column : columns()) {
            const std::optional<double> si = column.of(*job, row);
            block.items.push_back(si ? a.in(column.measure, *si) : blankCell());
        }
    return block;
}
template <const std::vector<WordColumn>& (*columns)(), std::size_t (*rows)(const Job&)>
Result wordsOf(const Arguments& a) {
    const std::shared_ptr<const Job> job = lot(a);
    Texts block{.columns = columns().size(), .items = {}};
    for (std::size_t row = 0; row < rows(*job); ++row)
        for (const WordColumn& column : columns())
            block.items.push_back(column.of(*job, row).in(a.language()));
    return block;
}

Function lotNumbers(const char* name, Text says, std::string columns, Result (*call)(const Arguments&)) {
    return {.name = name,
            .says = std::move(says),
            .arguments = lotArguments(),
            .returns = Returns::NumberBlock,
            .measure = Measure::Feet,
            .columns = std::move(columns),
            .source = netSource,
            .example = example(name),
            .call = call};
}
Result laidNodes(const Arguments& a) {
    if (!a.given(Last)) a.refuse(Last, {"a range with headings", "un rango con encabezados"});
    const AsBuilt built = asBuilt(*lot(a), readLaid(gridOf(a, Last), a.units()));
    Numbers block{.columns = 3, .items = {}};
    for (std::size_t row = 0; row < built.at.size(); ++row) {
        const std::optional<PlanPoint>& at = built.at[row];
        const std::optional<Length>& moved = built.moved[row];
        block.items.push_back(at ? a.in(Measure::Feet, at->east) : blankCell());
        block.items.push_back(at ? a.in(Measure::Feet, at->north) : blankCell());
        block.items.push_back(moved ? a.in(Measure::Feet, *moved) : blankCell());
    }
    return block;
}

Function lotWords(const char* name, Text says, std::string columns, Result (*call)(const Arguments&)) {
    Function function = lotNumbers(name, std::move(says), std::move(columns), call);
    function.returns = Returns::WordBlock;
    return function;
}

std::vector<Argument> paperArguments() {
    std::vector<Argument> all = lotArguments();
    const auto size = [](const char* name, const char* fallback, Text says) {
        return Argument{.name = name,
                        .measure = Measure::Inches,
                        .says = std::move(says),
                        .fallback = fallback,
                        .optional = true,
                        .limits = aboveZero};
    };
    all.push_back(size("width", "7.5 in",
                       {"of the paper that the drawing may take", "del papel que puede ocupar el plano"}));
    all.push_back(size("height", "7 in", {"of that paper", "de ese papel"}));
    all.push_back({.name = "crossings",
                   .measure = Measure::Table,
                   .says = {"other buried lines, as the JOB functions take them",
                            "otras líneas enterradas, como las toman las funciones JOB"},
                   .optional = true});
    return all;
}
enum Paper : std::size_t { Width = Last, Height, Crossings, North };
std::vector<Argument> drawingArguments() {
    std::vector<Argument> all = paperArguments();
    all.push_back(
        {.name = "north",
         .measure = Measure::Degrees,
         .says =
             {"where north is, clockwise from up on the drawing; blank: by the longitudes and latitudes",
              "dónde está el norte, en el sentido del reloj desde arriba; vacío: por longitudes y latitudes"},
         .optional = true,
         .limits = Limits{.least = -360, .greatest = 360}});
    return all;
}

Argument asBuiltArgument() {
    return {
        .name = "as built",
        .measure = Measure::Table,
        .says = {"nodes measured after the work, with their row of headings: Node, Invert, Tie 1, Tie 2",
                 "nodos medidos después de la obra, con su fila de encabezados: Node, Invert, Tie 1, Tie 2"},
        .optional = true};
}

// The drawn lot and the paper that it goes on; as built where the function's later table says how.
template <class Do>
auto onPaperOf(const Arguments& a, const Do& make) {
    const Grid laid = a.function().later.empty() ? Grid{} : a.laterTable(0);
    return asked({{"drawing", "layout"}}, [&] {
        const std::shared_ptr<const Job> plan = lot(a, gridOf(a, Crossings));
        const std::optional<AsBuilt> built =
            laid.rows > 0 ? std::optional(asBuilt(*plan, readLaid(laid, a.units()))) : std::nullopt;
        return make(built ? built->job : *plan, built ? built->tags : std::vector<std::string>(),
                    a.quantity(Width, Length::inches(7.5)), a.quantity(Height, Length::inches(7)));
    });
}
std::string paperExample(const char* name) { return example(name, "; ; ; 7.5; 7"); }

// The drawing has to be made to know how far it reaches: cells that ask for the same lot and paper share that.
Result scale(const Arguments& a) {
    static Recent<double> recent(4);
    std::string question = questionOf(a, 0, a.function().arguments.size());
    addToQuestion(question, a.laterTable(0));
    return *recent.get(question, [&] {
        return onPaperOf(a, [](const Job& job, const std::vector<std::string>&, Length width, Length height) {
            return paperOf(job, width, height).scale;
        });
    });
}

Result strokes(const Arguments& a) {
    const std::optional<Angle> north =
        a.given(North) ? std::optional(a.quantity(North, Angle{})) : std::nullopt;
    return penned(onPaperOf(a, [&](const Job& job, const std::vector<std::string>& tags, Length width,
                                   Length height) { return paperStrokes(job, width, height, north, tags); }),
                  drawingPens());
}

Argument column(const char* name, Measure measure, Text says, std::optional<Limits> limits,
                bool optional = false) {
    return {.name = name,
            .measure = measure,
            .says = std::move(says),
            .optional = optional,
            .column = true,
            .limits = limits};
}

std::vector<Leg> legs(const Arguments& a) {
    const std::vector<std::string> bearings = a.words(0);
    const std::vector<Arguments::Entry> lengths = a.entries(1, bearings.size());
    a.requireSameRows({0, 1});
    std::vector<Leg> all;
    for (std::size_t row = 0; row < bearings.size(); ++row) {
        if (bearings[row].empty() && lengths[row].state == Arguments::Entry::State::Empty) continue;
        const Angle azimuth = asked({{"bearing", "bearings"}}, [&] { return readBearing(bearings[row]); });
        all.push_back({azimuth, Length::fromSi(a.required(1, row, lengths[row]))});
    }
    return all;
}
std::vector<Argument> platArguments() {
    return {column("bearings", Measure::Words,
                   {"direction of each lot line as the plat prints it: S 68-05-35 W, or degrees from north",
                    "rumbo de cada lindero como lo dice el plano: S 68-05-35 W, o grados desde el norte"},
                   std::nullopt),
            column("lengths", Measure::Feet, {"length of each", "longitud de cada uno"}, aboveZero)};
}
constexpr const char* platSource =
    "Latitudes and departures, compass rule (Bowditch): J. Mahun, open-access survey texts, Traverse Computations, "
    "chapters F and I";

Result platCorners(const Arguments& a) {
    const PlanPoint start{a.quantity(2, Length{}), a.quantity(3, Length{})};
    Numbers block{.columns = 2, .items = {}};
    for (const PlanPoint& corner : asked({{"legs", "bearings"}}, [&] { return compassRule(start, legs(a)); }))
        block.items.insert(block.items.end(),
                           {a.in(Measure::Feet, corner.east), a.in(Measure::Feet, corner.north)});
    return block;
}

Result twoPlaces(const Arguments& a) {
    const auto point = [&](std::size_t at) {
        return PlanPoint{a.quantity<Length>(at), a.quantity<Length>(at + 1)};
    };
    const TwoPlaces places =
        asked({{"first tie", "tie 1"}, {"second tie", "tie 2"}, {"second point", "x2"}},
              [&] { return twoTies(point(0), a.quantity<Length>(2), point(3), a.quantity<Length>(5)); });
    const auto in = [&](Length length) { return a.in(Measure::Feet, length); };
    return Numbers{.columns = 3,
                   .items = {in(places.left.east), in(places.left.north), in(places.gap),
                             in(places.right.east), in(places.right.north), in(places.gap)}};
}

Result adjustedLevels(const Arguments& a) {
    const std::vector<std::string> names = a.words(0);
    const std::size_t count = names.size();
    a.requireSameRows({0, 1, 2, 3});
    std::vector<LevelRow> rows(count);
    const auto read = [&](std::size_t index, std::optional<Length> LevelRow::*to) {
        const std::vector<Arguments::Entry> entries = a.entries(index, count);
        for (std::size_t row = 0; row < count; ++row)
            if (entries[row].state != Arguments::Entry::State::Empty)
                rows[row].*to = Length::fromSi(a.required(index, row, entries[row]));
    };
    for (std::size_t row = 0; row < count; ++row) rows[row].point = names[row];
    read(1, &LevelRow::known);
    read(2, &LevelRow::backsight);
    read(3, &LevelRow::rod);
    const AdjustedLevels levels = adjustLevels(rows, a.quantity(4, Length::feet(0.01)));
    Numbers block{.columns = 5, .items = {}};
    for (const AdjustedLevelRow& row : levels.rows) {
        for (const std::optional<Length>& one : {row.level, row.uncertain, row.rodOff, row.backsightOff})
            block.items.push_back(one ? a.in(Measure::Feet, *one) : blankCell());
        block.items.push_back(row.rodOff || row.backsightOff ? (row.slip ? 1 : 0) : blankCell());
    }
    return block;
}

}  // namespace

std::vector<Function> layoutFunctions() {
    const Argument x1{.name = "x1",
                      .measure = Measure::Feet,
                      .says = {"of the first point, to the right", "del primer punto, a la derecha"},
                      .limits = anyLevel};
    const auto same = [&](const char* name, Text says) {
        Argument argument = x1;
        argument.name = name;
        argument.says = std::move(says);
        argument.limits->also = {"any place", "cualquier lugar"};
        return argument;
    };
    const auto tie = [](const char* name, Text says) {
        return Argument{.name = name, .measure = Measure::Feet, .says = std::move(says), .limits = aboveZero};
    };
    return {
        lotNumbers(
            "LAYOUT.POINTS",
            {"places of the points of a lot from their ties and tapes, adjusted, and what each tie is off; a row a row of layout",
             "lugares de los puntos de un lote por sus amarres y cintas, ajustados, y cuánto falla cada amarre; una fila por fila de layout"},
            headings(pointColumns()), numbersOf<pointColumns, count<&Job::lotPoints>>),
        lotWords("LAYOUT.POINTS.TEXT",
                 {"how each place is known, and what to tape next",
                  "cómo se sabe cada lugar, y qué medir después"},
                 headings(pointWords()), wordsOf<pointWords, count<&Job::lotPoints>>),
        lotNumbers(
            "LAYOUT.NODES",
            {"places of the nodes, and the distance of each to the nearest building, lot line and what else is drawn; a row a row of nodes",
             "lugares de los nodos, y la distancia de cada uno al edificio, lindero y demás más cercanos; una fila por fila de nodos"},
            headings(nodeColumns()), numbersOf<nodeColumns, count<&Job::nodes>>),
        lotWords("LAYOUT.NODES.TEXT",
                 {"how each node's place is known, and what to tape next",
                  "cómo se sabe el lugar de cada nodo, y qué medir después"},
                 headings(nodeWords()), wordsOf<nodeWords, count<&Job::nodes>>),
        lotNumbers(
            "LAYOUT.RUNS",
            {"ends of the runs in plan, what each length is off, and the distance of each to the nearest building, lot line and what else is drawn; a row a row of runs",
             "extremos de los tramos en planta, cuánto falla cada longitud, y la distancia al edificio, lindero y demás más cercanos; una fila por fila de tramos"},
            headings(runColumns()), numbersOf<runColumns, count<&Job::runs>>),
        lotNumbers("LAYOUT.TAPES",
                   {"each tape as drawn, and what it is off; a row a row of tapes",
                    "cada cinta como queda dibujada, y cuánto falla; una fila por fila de tapes"},
                   headings(tapeColumns()), numbersOf<tapeColumns, count<&Job::lotTapes>>),
        lotWords("LAYOUT.TAPES.TEXT",
                 {"whether each tape fits, and why one is not used",
                  "si cada cinta coincide, y por qué no se usa"},
                 headings(tapeWords()), wordsOf<tapeWords, count<&Job::lotTapes>>),
        {.name = "LAYOUT.SCALE",
         .says =
             {"The largest usual scale at which the drawing fits the paper: 120 is 1 in = 10 ft, in a metric job 100 is 1:100",
              "La mayor escala usual a la que el plano cabe en el papel: 120 es 1 in = 10 ft, en una obra métrica 100 es 1:100"},
         .arguments = paperArguments(),
         .later = {asBuiltArgument()},
         .source = "1 in = 5 to 100 ft, 1:50 to 1:1000; common practice, no source",
         .example = paperExample("LAYOUT.SCALE"),
         .call = scale},
        {.name = "LAYOUT.DRAWING",
         .says =
             {"the drawing at that scale on paper, for a chart of points joined by lines: millimeters from the left and from below, each pen in cells of its own; a pair without numbers ends a stroke",
              "el plano a esa escala en el papel, para una gráfica de puntos unidos por líneas: milímetros desde la izquierda y desde abajo, cada pluma en celdas propias; un par sin números termina un trazo"},
         .arguments = drawingArguments(),
         .later = {asBuiltArgument()},
         .returns = Returns::NumberBlock,
         .columns = penColumns(drawingPens()),
         .source = netSource,
         .example = paperExample("LAYOUT.DRAWING"),
         .call = strokes},
        {.name = "LAYOUT.LAID",
         .says =
             {"where nodes lie by the tapes taken after the work, and how far from where they were planned; a row a row of as built",
              "dónde están los nodos por las cintas tomadas después de la obra, y a qué distancia de lo planeado; una fila por fila de as built"},
         .arguments =
             [] {
                 std::vector<Argument> all = lotArguments();
                 all.push_back(asBuiltArgument());
                 return all;
             }(),
         .returns = Returns::NumberBlock,
         .measure = Measure::Feet,
         .columns = "X (ft), Y (ft), Moved (ft)",
         .source = netSource,
         .example =
             "LAYOUT.LAID({\"Point\";\"X\";\"Y\";\"Side\"|\"W\";0;0;\"\"|\"E\";40;0;\"\"|\"A\";\"\";\"\";\"left\"}; ; "
             "{\"Node\";\"Tie 1\";\"Tie 2\"|\"A\";\"W 30\";\"E 30\"}; ; ; ; "
             "{\"Node\";\"Tie 1\";\"Tie 2\"|\"A\";\"W 31\";\"E 30\"})",
         .call = laidNodes},
        {.name = "LAYOUT.TIES",
         .says =
             {"The two places where tapes from two known points meet: left, then right of the line from the first to the second",
              "Los dos lugares donde se cortan dos cintas desde puntos conocidos: a la izquierda y a la derecha de la línea del primero al segundo"},
         .arguments = {same("x1", {"of the first point, to the right", "del primer punto, a la derecha"}),
                       same("y1", {"of the first point, up", "del primer punto, hacia arriba"}),
                       tie("tie 1", {"distance to it", "distancia a él"}),
                       same("x2", {"of the second point", "del segundo punto"}),
                       same("y2", {"of the second point", "del segundo punto"}),
                       tie("tie 2", {"distance to it", "distancia a él"})},
         .returns = Returns::NumberBlock,
         .measure = Measure::Feet,
         .columns = "x (ft), y (ft), by how much the tapes do not meet (ft)",
         .source = "two circles; checked on points of J. Mahun's open survey texts",
         .example = "LAYOUT.TIES(0; 0; 30; 40; 10; 30)",
         .call = twoPlaces},
        {.name = "LAYOUT.PLAT",
         .says =
             {"Corners of a lot from the bearings and lengths of its plat, one a line, adjusted by the compass rule",
              "Esquinas de un lote por los rumbos y longitudes de su plano, una por lindero, ajustadas por la regla de la brújula"},
         .arguments =
             [] {
                 std::vector<Argument> all = platArguments();
                 for (const char* name : {"x", "y"})
                     all.push_back(
                         {.name = name,
                          .measure = Measure::Feet,
                          .says = {"of the first corner", "de la primera esquina"},
                          .fallback = "0",
                          .optional = true,
                          .limits = Limits{.least = -unlimited, .also = {"any place", "cualquier lugar"}}});
                 return all;
             }(),
         .returns = Returns::NumberBlock,
         .measure = Measure::Feet,
         .columns = "x (ft), y (ft)",
         .source = platSource,
         .example = "LAYOUT.PLAT({\"N 45 E\"|\"S 45 E\"|\"S 45 W\"|\"N 45 W\"}; {100|80|100|80})",
         .call = platCorners},
        {.name = "LAYOUT.CLOSURE",
         .says =
             {"By how much the lines of a plat miss their start: hundredths are usual, feet are a number copied wrong",
              "Por cuánto los linderos de un plano no regresan a su inicio: centésimas es lo usual, pies es un número mal copiado"},
         .arguments = platArguments(),
         .measure = Measure::Feet,
         .source = platSource,
         .example = "LAYOUT.CLOSURE({\"N 45 E\"|\"S 45 E\"|\"S 45 W\"|\"N 45 W\"}; {100|80|100|80})",
         .call = [](const Arguments& a) -> Result { return a.answer(closure(legs(a)).gap()); }},
        {.name = "LEVELS.ADJUST",
         .says =
             {"Levels from rod readings of several set-ups, adjusted by least squares, and what each reading is off",
              "Cotas por lecturas de estadal de varias estaciones, ajustadas por mínimos cuadrados, y cuánto falla cada lectura"},
         .arguments = {column("points", Measure::Words, {"name of the point", "nombre del punto"},
                              std::nullopt),
                       column("known", Measure::Feet,
                              {"its level where it is known", "su cota donde se conoce"}, anyLevel),
                       column("backsights", Measure::Feet,
                              {"reading that begins a set-up", "lectura que inicia una estación"}, anyLevel),
                       column("rods", Measure::Feet,
                              {"reading of the set-up before", "lectura de la estación anterior"}, anyLevel),
                       {.name = "error",
                        .measure = Measure::Feet,
                        .says = {"usual error of a reading", "error usual de una lectura"},
                        .fallback = "0.01 ft",
                        .optional = true,
                        .limits = aboveZero}},
         .returns = Returns::NumberBlock,
         .measure = Measure::Feet,
         .columns = "level (ft), uncertain (ft), rod off (ft), backsight off (ft), 1 where it may be a slip",
         .source =
             "Least squares, all readings alike; a plain circuit is spread evenly over its set-ups as in field books",
         .example =
             "LEVELS.ADJUST({\"BM\"|\"A\"|\"TP\"|\"A\"}; {100|\"\"|\"\"|\"\"}; {5|\"\"|4|\"\"}; {\"\"|6|5.5|4.48})",
         .call = adjustedLevels},
    };
}

}  // namespace trenchbook::addin
