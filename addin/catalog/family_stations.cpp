#include "catalog/families.h"
#include "catalog/line_rows.h"
#include "catalog/rules_argument.h"
#include "trenchbook/lines/cleanouts.h"
#include "trenchbook/lines/cover.h"
#include "trenchbook/lines/stations.h"

namespace trenchbook::addin {
namespace {

// A length that cannot be read is none; LINES.FAULTS tells why.
std::vector<Run> readLengths(const Arguments& a, std::size_t count) {
    LineRows rows(a, count);
    rows.lengths(2);
    return std::move(rows).runs();
}

struct Rows {
    std::shared_ptr<const Network> lines;
    std::vector<Run> runs;
};

// from, to, length and the line's name.
Rows readRows(const Arguments& a) {
    std::shared_ptr<const Network> lines = readNetwork(a, 0, 1);
    a.requireSameRows({0, 1, 2, 3});
    std::vector<Run> runs = readLengths(a, lines->rows());
    if (a.given(3)) {
        const std::vector<std::string> names = a.words(3);
        for (std::size_t row = 0; row < names.size(); ++row) runs[row].line = names[row];
    }
    return {std::move(lines), std::move(runs)};
}

// The nodes' names, turns and openings, from three columns that start at `first`.
std::vector<Node> readNodes(const Arguments& a, std::size_t first) {
    a.requireSameRows({first, first + 1, first + 2});
    const std::vector<std::string> names = a.words(first);
    LineRows columns(a, names.size());
    const auto turns = columns.quantities<Angle>(first + 1, "Turn");
    const std::vector<double> openings = columns.numbersOr(first + 2, 0, "Opening");
    std::vector<Node> nodes(names.size());
    for (std::size_t i = 0; i < names.size(); ++i) {
        nodes[i].name = names[i];
        nodes[i].turn = turns[i];
        if (openings[i] != 0) nodes[i].kinds.add(NodeKind::Cleanout);
        nodes[i].unusable = columns.runs()[i].unusable;
    }
    return nodes;
}

Result cleanouts(const Arguments& a) {
    const std::shared_ptr<const Network> shared = readNetwork(a, 0, 1);
    const Network& lines = *shared;
    a.requireSameRows({0, 1, 2});
    const std::vector<Node> nodes = readNodes(a, 3);
    const double sharp = a.later(0, Ruleset().number("bend.sharp"));
    Numbers block{4, {}};
    const auto told = sinceOpenings(lines, readLengths(a, lines.rows()), nodes, Angle::degrees(sharp));
    for (std::size_t row = 0; row < told.size(); ++row) {
        const double none = lines.blank(row) ? blankCell() : errorCell(badArgumentCode);
        const auto& since = told[row];
        block.items.push_back(since ? a.in(Measure::Feet, since->length) : none);
        block.items.push_back(since ? a.in(Measure::Degrees, since->turned) : none);
        block.items.push_back(since ? static_cast<double>(since->fromHead) : none);
        block.items.push_back(since ? static_cast<double>(since->sharpTurns) : none);
    }
    return block;
}

Result asked(const Arguments& a) {
    const std::shared_ptr<const Network> shared = readNetwork(a, 0, 1);
    const Network& lines = *shared;
    a.requireSameRows({0, 1, 2, 3});
    const std::vector<Node> nodes = readNodes(a, 4);
    const Ruleset rules = readRules(a, 7);
    Numbers block{3, {}};
    LineRows rows(a, lines.rows());
    rows.lengths(2);
    rows.pipes(3);
    const auto told = askedCleanouts(lines, rows.runs(), nodes, cleanoutLimits(rules));
    for (std::size_t row = 0; row < told.size(); ++row) {
        const double none = lines.blank(row) ? blankCell() : errorCell(badArgumentCode);
        const auto& more = told[row];
        block.items.push_back(more ? static_cast<double>(more->atUpperNode) : none);
        block.items.push_back(more ? more->along : none);
        block.items.push_back(!more             ? none
                              : more->along > 0 ? a.in(Measure::Feet, more->first)
                                                : blankCell());
    }
    return block;
}

Result covers(const Arguments& a) {
    a.requireSameRows({0, 1, 2});
    const std::vector<std::string> ends[] = {a.words(0), a.words(1)};
    const std::size_t count = ends[0].size();
    LineRows rows(a, count);
    rows.pipes(2);
    const Ruleset rules = readRules(a, 3);
    Numbers block{2, {}};
    const auto least = [&](const std::string& words, const Pipe& pipe) {
        const std::optional<Length> asked = leastCover(coverSurface(words, "surface"), pipe, rules);
        return asked ? a.answer(*asked) : blankCell();
    };
    for (std::size_t row = 0; row < count; ++row) {
        for (const std::vector<std::string>& surfaces : ends) {
            double cell = surfaces[row].empty() ? blankCell() : errorCell(badArgumentCode);
            try {
                const std::optional<Pipe>& pipe = rows.runs()[row].pipe;
                if (!surfaces[row].empty() && pipe) cell = least(surfaces[row], *pipe);
            } catch (const Error&) {
                // An unknown surface spoils its own cell; RUN.CHECK names it.
            }
            block.items.push_back(cell);
        }
    }
    return block;
}

std::vector<Argument> rowArguments() {
    return {{.name = "from",
             .measure = Measure::Words,
             .says = {"upper nodes", "nodos superiores"},
             .column = true},
            {.name = "to",
             .measure = Measure::Words,
             .says = {"lower nodes", "nodos inferiores"},
             .column = true},
            {.name = "length",
             .measure = Measure::Feet,
             .says = {"lengths of the runs", "longitudes de los tramos"},
             .column = true,
             .limits = aboveZero},
            {.name = "line",
             .measure = Measure::Words,
             .says = {"names of the lines", "nombres de las líneas"},
             .fallback = "one line",
             .optional = true,
             .column = true}};
}

// The columns of the nodes that readNodes reads.
std::vector<Argument> withNodes(std::vector<Argument> columns) {
    columns.insert(columns.end(),
                   {{.name = "node",
                     .measure = Measure::Words,
                     .says = {"names of the nodes", "nombres de los nodos"},
                     .column = true},
                    {.name = "turn",
                     .measure = Measure::Degrees,
                     .says = {"how far the line turns at each node; blank: straight on",
                              "cuánto gira la línea en cada nodo; vacío: sigue derecho"},
                     .column = true,
                     .limits = anyTurn},
                    {.name = "opening",
                     .measure = Measure::Plain,
                     .says = {"not 0 where a cable can go in: cleanout, basin, channel",
                              "distinto de 0 donde entra una sonda: registro, caja, canaleta"},
                     .column = true,
                     .limits = Limits{.least = -unlimited, .also = {"any number", "cualquier número"}}}});
    return columns;
}

}  // namespace

std::vector<Function> stationFunctions() {
    std::vector<Argument> askedArguments =
        withNodes({fromArgument(), toArgument(), lengthColumn(), columnOf(pipeArgument())});
    askedArguments.push_back(rulesArgument());
    std::vector<Argument> stakeArguments = rowArguments();
    stakeArguments.push_back(
        {.name = "step",
         .measure = Measure::Feet,
         .says = {"distance between stakes", "distancia entre estacas"},
         .fallback = "10 ft, 3 m",
         .optional = true,
         .limits =
             Limits{.above = true, .also = {"at most 10000 in a run", "como máximo 10000 en un tramo"}}});
    return {
        {.name = "LINES.STATIONS",
         .says =
             {"Per run the distance of both ends from the outlet along the "
              "pipe, and the run's place on its line.",
              "Por tramo, la distancia de ambos extremos a la salida por el tubo, y su lugar en la línea."},
         .arguments = rowArguments(),
         .returns = Returns::NumberBlock,
         .measure = Measure::Feet,
         .columns = "station up (ft), station down (ft), place from the lower end",
         .source = "sums of lengths along the tree, from the outlet uphill",
         .example = "LINES.STATIONS(\"A\"; \"Out\"; 42)",
         .call = [](const Arguments& a) -> Result {
             const Rows rows = readRows(a);
             Numbers block{3, {}};
             const auto placed = stations(*rows.lines, rows.runs);
             for (std::size_t row = 0; row < placed.size(); ++row) {
                 const double none = rows.lines->blank(row) ? blankCell() : errorCell(badArgumentCode);
                 const auto& at = placed[row];
                 block.items.push_back(at ? a.answer(at->up) : none);
                 block.items.push_back(at ? a.answer(at->down) : none);
                 block.items.push_back(at ? static_cast<double>(at->place) : none);
             }
             return block;
         }},
        {.name = "LINES.STAKES",
         .says = {"The points at which the crew checks the trench: both ends of each run and every full step "
                  "between, line by line from the lower end uphill.",
                  "Los puntos donde la cuadrilla revisa la zanja: ambos extremos de cada tramo y cada paso "
                  "entero entre ellos, línea por línea desde abajo."},
         .arguments = stakeArguments,
         .returns = Returns::NumberBlock,
         .measure = Measure::Feet,
         .columns = "row of the run, station (ft), distance from the run's lower end (ft)",
         .source = "sums of lengths along the tree, from the outlet uphill",
         .example = "LINES.STAKES(\"A\"; \"Out\"; 42)",
         .call = [](const Arguments& a) -> Result {
             const Rows rows = readRows(a);
             const Length usual = a.units() == UnitSystem::Metric ? Length::metres(3) : Length::feet(10);
             Numbers block{3, {}};
             for (const Stake& stake : stakes(*rows.lines, rows.runs, a.quantity<Length>(4, usual))) {
                 block.items.push_back(static_cast<double>(stake.row + 1));
                 block.items.push_back(a.answer(stake.station));
                 block.items.push_back(a.answer(stake.fromLowerEnd));
             }
             if (block.items.empty()) block.items.assign(3, blankCell());
             return block;
         }},
        {.name = "LINES.CLEANOUTS",
         .says = {"pipe and turns since the last opening that takes a cable, at the lower end of each run",
                  "tubo y giros desde el último registro o abertura, en el extremo de abajo de cada tramo"},
         .arguments = withNodes({fromArgument(), toArgument(), lengthColumn()}),
         .later = {{.name = "sharp",
                    .measure = Measure::Degrees,
                    .says = {"a single turn above this is sharp", "un giro mayor que este es brusco"},
                    .fallback = "67.5",
                    .optional = true,
                    .limits = anyTurn}},
         .returns = Returns::NumberBlock,
         .measure = Measure::Feet,
         .columns = "pipe since the last opening (ft), degrees turned, 1 where counted from a head without "
                    "opening, sharp turns",
         .source = "sums along the tree; limits by local code (Philadelphia P-708, Chicago 2692130)",
         .example = "LINES.CLEANOUTS({\"A\"|\"B\"}; {\"B\"|\"Out\"}; {40|60}; {\"A\"|\"B\"}; {0|45}; {1|0})",
         .call = cleanouts},
        {.name = "LINES.CLEANOUTS.ASKED",
         .says = {"cleanouts that the rules ask beyond the openings there are",
                  "registros que piden las reglas además de las aberturas que hay"},
         .arguments = askedArguments,
         .returns = Returns::NumberBlock,
         .measure = Measure::Feet,
         .columns = "1 where one is asked at the run's upper node, how many along the run, the first of "
                    "those from the "
                    "upper node (ft)",
         .source = "the rules cleanout.* and their sources; each as far down the line as they allow",
         .example = "LINES.CLEANOUTS.ASKED({\"A\"|\"B\"}; {\"B\"|\"Out\"}; {40|80}; {\"4 SDR35\"|\"4 "
                    "SDR35\"}; {\"A\"|\"B\"}; "
                    "{0|45}; {1|0})",
         .call = asked},
        {.name = "LINES.COVERS",
         .says = {"least cover that the rules ask at both ends of each run; blank where none is asked",
                  "cobertura mínima que piden las reglas en ambos extremos de "
                  "cada tramo; vacío donde no se pide"},
         .arguments = {{.name = "surface up",
                        .measure = Measure::Words,
                        .says = {"what lies over the upper end", "lo que hay sobre el extremo de arriba"},
                        .column = true},
                       {.name = "surface down",
                        .measure = Measure::Words,
                        .says = {"what lies over the lower end", "lo que hay sobre el extremo de abajo"},
                        .column = true},
                       columnOf(pipeArgument()),
                       rulesArgument()},
         .returns = Returns::NumberBlock,
         .measure = Measure::Inches,
         .columns = "cover up (in), cover down (in)",
         .source = "the rules cover.* and their sources, as RUN.CHECK judges them",
         .example = "LINES.COVERS({\"lawn\"|\"drive\"}; {\"bed\"|\"daylight\"}; {\"4 SDR35\"|\"6 SCH40\"}; "
                    "{\"cover.lawn\";10})",
         .call = covers},
    };
}

}  // namespace trenchbook::addin
