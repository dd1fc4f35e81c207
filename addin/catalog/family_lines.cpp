#include "catalog/families.h"
#include "catalog/line_rows.h"
#include "catalog/rain_table.h"
#include "catalog/recent.h"
#include "trenchbook/lines/inverts.h"
#include "trenchbook/lines/network.h"
#include "trenchbook/lines/peak.h"
#include "trenchbook/lines/water_levels.h"

namespace trenchbook::addin {
namespace {

Argument outletInvertColumn() {
    return {.name = "outlet invert",
            .measure = Measure::Feet,
            .says = {"lower invert, filled on outlet rows", "cota inferior, llena en las filas de salida"},
            .column = true,
            .limits = anyLevel};
}
Argument fixedDownColumn() {
    return {
        .name = "fixed down",
        .measure = Measure::Feet,
        .says = {"lower invert set by hand, on any row", "cota inferior puesta a mano, en cualquier fila"},
        .optional = true,
        .column = true,
        .limits = anyLevel};
}
Argument joinArgument() {
    return {.name = "join",
            .measure = Measure::Words,
            .says = {"how pipes of two sizes join: \"crown\" or \"invert\"",
                     "cómo se unen tubos de dos medidas: \"crown\" (claves) o \"invert\" (fondos)"},
            .fallback = "\"crown\"",
            .optional = true};
}

// A row's numbers, blanks for a blank row, error codes for one that cannot be computed.
void addRow(Numbers& block, bool blank, std::optional<std::vector<double>> numbers) {
    for (std::size_t column = 0; column < block.columns; ++column)
        block.items.push_back(blank      ? blankCell()
                              : !numbers ? errorCell(badArgumentCode)
                                         : (*numbers)[column]);
}

Result linesFaults(const Arguments& a) {
    const std::size_t first = firstRow(a);
    a.requireSameRows({0, 1, 2, 3});
    const std::shared_ptr<const Network> shared = readNetwork(a, 0, 1);
    const Network& lines = *shared;
    LineRows rows(a, lines.rows());
    rows.lengths(2);
    rows.pipes(3);
    const std::vector<Fault> faults = lineFaults(lines, rows.runs());
    Texts block;
    for (std::size_t row = 0; row < lines.rows(); ++row)
        block.items.push_back(faultText(lines, faults[row], row, first).in(a.language()));
    return block;
}

Result linesFlow(const Arguments& a) {
    const std::shared_ptr<const Network> shared = readNetwork(a, 0, 1);
    const Network& lines = *shared;
    a.requireSameRows({2, 3});
    const std::vector<std::string> nodes = a.words(2);
    const std::vector<Arguments::Entry> flows = a.entries(3, nodes.size());
    std::vector<Inlet> inlets;
    for (std::size_t i = 0; i < nodes.size(); ++i) {
        using State = Arguments::Entry::State;
        // An inlet whose flow is not known yet must not count as none.
        const bool known = flows[i].state == State::Good;
        inlets.push_back({nodes[i], known ? std::optional(Flow::fromSi(flows[i].si)) : std::nullopt});
    }
    const std::vector<std::optional<Flow>> carried = lineFlows(lines, inlets);
    Numbers block;
    for (std::size_t row = 0; row < lines.rows(); ++row)
        addRow(block, lines.blank(row),
               carried[row] ? std::optional(std::vector{a.answer(*carried[row])}) : std::nullopt);
    return block;
}

// What the numbers and the words of one question share: solved once, while it is among the last few.
template <class Value>
struct SolvedLines {
    std::shared_ptr<const Network> lines;
    std::vector<Worked<Value>> rows;
};
template <class Value>
std::shared_ptr<const SolvedLines<Value>> solvedOnce(const Arguments& a,
                                                     std::vector<Worked<Value>> (*solve)(const Arguments&,
                                                                                         const Network&)) {
    static Recent<SolvedLines<Value>> recent(4);
    return recent.get(questionOf(a, 0, a.function().arguments.size()), [&] {
        std::shared_ptr<const Network> lines = readNetwork(a, 0, 1);
        std::vector<Worked<Value>> rows = solve(a, *lines);
        return SolvedLines<Value>{std::move(lines), std::move(rows)};
    });
}
template <class Value, class Columns>
Numbers numbersOf(const SolvedLines<Value>& solved, std::size_t columns, const Columns& columnsOf) {
    Numbers block{.columns = columns, .items = {}};
    for (std::size_t row = 0; row < solved.rows.size(); ++row) {
        const std::optional<Value>& value = solved.rows[row].value;
        addRow(block, solved.lines->blank(row),
               value ? std::optional<std::vector<double>>(columnsOf(*value)) : std::nullopt);
    }
    return block;
}
template <class Value>
Texts whyNone(const Arguments& a, const SolvedLines<Value>& solved) {
    const std::size_t first = firstRow(a);
    Texts block;
    for (std::size_t row = 0; row < solved.rows.size(); ++row)
        block.items.push_back(faultText(*solved.lines, solved.rows[row].fault, row, first).in(a.language()));
    return block;
}

std::vector<Worked<Inverts>> readInverts(const Arguments& a, const Network& lines) {
    a.requireSameRows({0, 1, 2, 3, 4, 5, 6});
    LineRows rows(a, lines.rows());
    rows.lengths(2);
    rows.pipes(3);
    rows.read(4, &Run::slope, "Slope");
    rows.read(5, &Run::outletLevel, "Outlet level");
    rows.read(6, &Run::fixedDown, "Fixed level");
    return lineInverts(lines, rows.runs(), joinNamed(a.text(7, "crown")));
}

Result linesInverts(const Arguments& a) {
    return numbersOf(*solvedOnce(a, readInverts), 2, [&](const Inverts& inverts) {
        return std::vector{a.answer(inverts.up), a.answer(inverts.down)};
    });
}

Result linesInvertsWhy(const Arguments& a) { return whyNone(a, *solvedOnce(a, readInverts)); }

// An optional column, or one value for all rows.
void requireSameRowsIfColumn(const Arguments& a, std::size_t index) {
    if (isColumn(a, index)) a.requireSameRows({0, index});
}

std::vector<Worked<ReachWater>> readWater(const Arguments& a, const Network& lines) {
    a.requireSameRows({0, 1, 2, 3, 4, 5, 6, 7});
    requireSameRowsIfColumn(a, 8);
    requireSameRowsIfColumn(a, 9);
    LineRows rows(a, lines.rows());
    rows.lengths(2);
    rows.pipes(3);
    const auto flows = rows.quantities<Flow>(4, "Flow");
    const auto up = rows.quantities<Length>(5, "Invert up");
    const auto down = rows.quantities<Length>(6, "Invert down");
    const auto outlets = rows.quantities<Length>(7, "Outlet water");
    const std::vector<double> losses = rows.numbersOr(8, 0, "K");
    rows.roughness(9);
    std::vector<Carried> carried(lines.rows());
    for (std::size_t row = 0; row < lines.rows(); ++row)
        carried[row] = {flows[row], up[row], down[row], outlets[row], losses[row]};
    return lineWater(lines, rows.runs(), carried);
}

Result linesLevels(const Arguments& a) {
    return numbersOf(*solvedOnce(a, readWater), 3, [&](const ReachWater& water) {
        return std::vector{a.answer(water.levelUp), a.answer(water.levelDown), water.fullShare};
    });
}

Result linesState(const Arguments& a) {
    const auto solved = solvedOnce(a, readWater);
    Texts block = whyNone(a, *solved);
    for (std::size_t row = 0; row < solved->rows.size(); ++row)
        if (const auto& water = solved->rows[row].value)
            block.items[row] = stateText(water->state).in(a.language());
    return block;
}

std::vector<Worked<Peak>> readPeaks(const Arguments& a, const Network& lines) {
    a.requireSameRows({0, 1, 2, 3, 4});
    a.requireSameRows({5, 6, 7});
    requireSameRowsIfColumn(a, 10);
    LineRows rows(a, lines.rows());
    rows.lengths(2);
    rows.pipes(3);
    rows.read(4, &Run::slope, "Slope");
    rows.roughness(10);

    const std::vector<std::string> nodes = a.words(5);
    LineRows inletRows(a, nodes.size());
    const auto areas = inletRows.quantities<Area>(6, "Area x C");
    const auto times = inletRows.quantities<Duration>(7, "Minutes");
    const std::vector<Text> trouble = inletRows.trouble();
    std::vector<PeakInlet> inlets;
    for (std::size_t i = 0; i < nodes.size(); ++i)
        inlets.push_back({nodes[i], areas[i], times[i], trouble[i]});
    return linePeaks(lines, rows.runs(), inlets, rainTable(a, 8), a.number(9),
                     travelNamed(a.text(11, "flow")));
}

Result linesPeak(const Arguments& a) {
    return numbersOf(*solvedOnce(a, readPeaks), 5, [&](const Peak& peak) {
        return std::vector{a.in(Measure::SquareFeet, peak.areaTimesC), a.in(Measure::Minutes, peak.time),
                           a.in(Measure::InchesPerHour, peak.intensity), a.in(Measure::Gpm, peak.flow),
                           a.in(Measure::FeetPerSecond, peak.velocity)};
    });
}

Result linesPeakWhy(const Arguments& a) { return whyNone(a, *solvedOnce(a, readPeaks)); }

}  // namespace

std::vector<Function> lineFunctions() {
    const std::vector<Argument> invertArguments = {fromArgument(),
                                                   toArgument(),
                                                   lengthColumn(),
                                                   columnOf(pipeArgument()),
                                                   columnOf(slopeArgument()),
                                                   outletInvertColumn(),
                                                   fixedDownColumn(),
                                                   joinArgument()};
    const auto levelColumn = [](const char* name, const char* en, const char* es) {
        return Argument{
            .name = name, .measure = Measure::Feet, .says = {en, es}, .column = true, .limits = anyLevel};
    };
    const std::vector<Argument> waterArguments = {
        fromArgument(),
        toArgument(),
        lengthColumn(),
        columnOf(pipeArgument()),
        columnOf(flowArgument()),
        levelColumn("invert up", "invert at the upper end", "cota de fondo en el extremo de arriba"),
        levelColumn("invert down", "invert at the lower end", "cota de fondo en el extremo de abajo"),
        levelColumn("outlet level", "water level at the outlet, on outlet rows; blank: free outfall",
                    "nivel del agua en la salida, en las filas de salida; vacío: caída libre"),
        {.name = "K",
         .measure = Measure::Plain,
         .says =
             {"loss coefficient at the upper end when it runs full: a column, or one value for all",
              "coeficiente de pérdida en el extremo de arriba a tubo lleno: columna, o un valor para todos"},
         .fallback = "0",
         .optional = true,
         .column = true,
         .limits = zeroOrMore},
        columnOf(roughnessArgument())};
    constexpr const char* waterSource =
        "gradually varied flow and jumps (Chow, Open-Channel Hydraulics, 1959, from memory), Manning, K V²/2g";
    constexpr const char* waterExample =
        "({\"A\"|\"B\"}; {\"B\"|\"Out\"}; {40|60}; {\"4 SDR35\"|\"4 SDR35\"}; {30|60}; {97.5|97.1}; "
        "{97.1|96.5}; {\"\"|97.2})";
    const std::vector<Argument> peakArguments = {
        fromArgument(),
        toArgument(),
        lengthColumn(),
        columnOf(pipeArgument()),
        columnOf(slopeArgument()),
        {.name = "inlet node",
         .measure = Measure::Words,
         .says = {"node that each inlet joins", "nodo al que llega cada entrada"},
         .column = true},
        {.name = "inlet area x C",
         .measure = Measure::SquareFeet,
         .says = {"area times runoff coefficient of each inlet",
                  "área por coeficiente de escurrimiento de cada entrada"},
         .column = true,
         .limits = zeroOrMore},
        {.name = "inlet minutes",
         .measure = Measure::Minutes,
         .says = {"time of concentration at each inlet", "tiempo de concentración en cada entrada"},
         .column = true,
         .limits = zeroOrMore},
        rainTableArgument("rain table"),
        returnArgument(),
        columnOf(roughnessArgument()),
        {.name = "travel",
         .measure = Measure::Words,
         .says = {"velocity of travel: \"flow\" at the part-full depth, \"area\" flow over full area",
                  "velocidad de viaje: \"flow\" al tirante real, \"area\" caudal entre área llena"},
         .fallback = "\"flow\"",
         .optional = true}};
    constexpr const char* peakExample =
        "({\"A\"|\"B\"}; {\"B\"|\"Out\"}; {40|60}; {\"4 SDR35\"|\"6 SDR35\"}; {\"1%\"|\"1%\"}; "
        "{\"A\"|\"B\"}; {900|1500}; {5|6}; {\"\";2;10|\"5-min\";0.4;0.6|\"60-min\";1.2;1.8}; 10)";
    return {
        {.name = "LINES.FAULTS",
         .says = {"what keeps a run from being computed: blank, or loop, nowhere to go, two ways out, joins "
                  "itself, pipe gets smaller downstream, a cell that cannot be used, waiting on another row",
                  "qué impide calcular un tramo: vacío, o circuito, sin salida, dos salidas, se une a sí "
                  "mismo, el tubo "
                  "se hace más chico aguas abajo, una celda que no sirve, en espera de otra fila"},
         .arguments = {fromArgument(), toArgument(), lengthColumn(), columnOf(pipeArgument())},
         .later = {firstRowArgument()},
         .returns = Returns::WordBlock,
         .columns = "fault",
         .source = "one way out of each node: the runs form trees; sizes by nominal size (common practice, "
                   "no source)",
         .example = "LINES.FAULTS({\"A\"|\"B\"}; {\"B\"|\"Out\"}; {40|60}; {\"4 SDR35\"|\"4 SDR35\"})",
         .call = linesFaults},
        {.name = "LINES.FLOW",
         .says = {"flow that each run carries: its inlets and all that joins upstream",
                  "caudal que lleva cada tramo: sus entradas y todo lo que llega de arriba"},
         .arguments = {fromArgument(),
                       toArgument(),
                       {.name = "inlet node",
                        .measure = Measure::Words,
                        .says = {"node that each inlet joins", "nodo al que llega cada entrada"},
                        .column = true},
                       {.name = "inlet flow",
                        .measure = Measure::Gpm,
                        .says = {"flow of each inlet", "caudal de cada entrada"},
                        .column = true,
                        .limits = zeroOrMore}},
         .returns = Returns::NumberBlock,
         .measure = Measure::Gpm,
         .columns = "flow (gpm)",
         .source = "continuity: sums along the tree",
         .example = "LINES.FLOW({\"A\"|\"B\"}; {\"B\"|\"Out\"}; {\"A\"|\"B\"}; {20|15})",
         .call = linesFlow},
        {.name = "LINES.INVERTS",
         .says = {"inverts from each outlet uphill at the slopes given",
                  "cotas de fondo desde cada salida hacia arriba con las pendientes dadas"},
         .arguments = invertArguments,
         .returns = Returns::NumberBlock,
         .measure = Measure::Feet,
         .columns = "invert up (ft), invert down (ft)",
         .source = "invert up = invert down + slope x length; joins by crown (common practice, no source)",
         .example = "LINES.INVERTS({\"A\"|\"B\"}; {\"B\"|\"Out\"}; {40|60}; {\"4 SDR35\"|\"6 SDR35\"}; "
                    "{\"1%\"|\"1%\"}; {\"\"|96.50})",
         .call = linesInverts},
        {.name = "LINES.INVERTS.WHY",
         .says = {"why a run has no inverts: blank, or what is missing in its row, or the row it waits on",
                  "por qué un tramo no tiene cotas: vacío, o qué falta en su fila, o la fila que espera"},
         .arguments = invertArguments,
         .later = {firstRowArgument()},
         .returns = Returns::WordBlock,
         .columns = "reason",
         .source = "as LINES.INVERTS",
         .example = "LINES.INVERTS.WHY({\"A\"|\"B\"}; {\"B\"|\"Out\"}; {40|60}; {\"4 SDR35\"|\"6 SDR35\"}; "
                    "{\"1%\"|\"1%\"}; {\"\"|\"\"})",
         .call = linesInvertsWhy},
        {.name = "LINES.PEAK",
         .says =
             {"peak flow of each run by the rational method, with travel time through the lines",
              "caudal máximo de cada tramo por el método racional, con el tiempo de viaje por las líneas"},
         .arguments = peakArguments,
         .returns = Returns::NumberBlock,
         .measure = Measure::Gpm,
         .columns = "area x C (sq ft), minutes, intensity (in/hr), flow (gpm), velocity (ft/s)",
         .source = "rational method, longest path (FHWA HDS-2; Mays, "
                   "Stormwater Collection Systems Design Handbook)",
         .example = std::string("LINES.PEAK") + peakExample,
         .call = linesPeak},
        {.name = "LINES.PEAK.WHY",
         .says = {"why a run has no peak flow: blank, or what is missing in its row or at its inlets, or the "
                  "row it waits on",
                  "por qué un tramo no tiene caudal máximo: vacío, o qué falta en su fila o en sus entradas, "
                  "o la fila que espera"},
         .arguments = peakArguments,
         .later = {firstRowArgument()},
         .returns = Returns::WordBlock,
         .columns = "reason",
         .source = "as LINES.PEAK",
         .example = std::string("LINES.PEAK.WHY") + peakExample,
         .call = linesPeakWhy},
        {.name = "LINES.LEVELS",
         .says = {"where the water stands in each run, walked upstream from the outlet",
                  "dónde queda el agua en cada tramo, desde la salida hacia arriba"},
         .arguments = waterArguments,
         .returns = Returns::NumberBlock,
         .measure = Measure::Feet,
         .columns = "water level up (ft), water level down (ft), share of the length that runs full",
         .source = waterSource,
         .example = std::string("LINES.LEVELS") + waterExample,
         .call = linesLevels},
        {.name = "LINES.STATE",
         .says =
             {"how the water runs in each run: free, part drowned, full, free drop; or why it has no level",
              "cómo corre el agua en cada tramo: libre, ahogado en parte, lleno, cae libre; o por qué no "
              "tiene nivel"},
         .arguments = waterArguments,
         .later = {firstRowArgument()},
         .returns = Returns::WordBlock,
         .columns = "state",
         .source = waterSource,
         .example = std::string("LINES.STATE") + waterExample,
         .call = linesState},
    };
}

}  // namespace trenchbook::addin
