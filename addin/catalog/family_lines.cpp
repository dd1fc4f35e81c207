#include "catalog/families.h"
#include "catalog/line_rows.h"
#include "trenchbook/inverts.h"
#include "trenchbook/network.h"

namespace trenchbook::addin {
namespace {

using Allowed = LineRows::Allowed;

Argument outletInvertColumn() {
    return {.name = "outlet invert",
            .measure = Measure::Feet,
            .says = {"lower invert, filled on outlet rows", "cota inferior, llena en las filas de salida"},
            .column = true};
}
Argument fixedDownColumn() {
    return {
        .name = "fixed down",
        .measure = Measure::Feet,
        .says = {"lower invert set by hand, on any row", "cota inferior puesta a mano, en cualquier fila"},
        .optional = true,
        .column = true};
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
    a.requireSameRows({0, 1, 2, 3});
    const Network lines = readNetwork(a, 0, 1);
    LineRows rows(a, lines.rows());
    const auto lengths = rows.quantities<Length>(2, Allowed::Positive);
    const auto pipes = rows.pipes(3);
    std::vector<SegmentSize> sizes(lines.rows());
    for (std::size_t row = 0; row < lines.rows(); ++row)
        sizes[row] = {lengths[row], pipes[row] ? std::optional(pipes[row]->nominal) : std::nullopt,
                      rows.trouble()[row]};
    const std::vector<Fault> faults = lineFaults(lines, sizes);
    Texts block;
    for (std::size_t row = 0; row < lines.rows(); ++row)
        block.items.push_back(faultText(lines, faults[row], row).in(a.language()));
    return block;
}

Result linesFlow(const Arguments& a) {
    const Network lines = readNetwork(a, 0, 1);
    a.requireSameRows({2, 3});
    const std::vector<std::string> nodes = a.words(2);
    const std::vector<Arguments::Entry> flows = a.entries(3, nodes.size());
    std::vector<Inlet> inlets;
    for (std::size_t i = 0; i < nodes.size(); ++i) {
        using State = Arguments::Entry::State;
        // An inlet whose flow is not known yet must not count as none.
        const bool known = flows[i].state == State::Good && flows[i].si >= 0;
        inlets.push_back({nodes[i], known ? std::optional(Flow::fromSi(flows[i].si)) : std::nullopt});
    }
    const std::vector<std::optional<Flow>> carried = lineFlows(lines, inlets);
    Numbers block;
    for (std::size_t row = 0; row < lines.rows(); ++row)
        addRow(block, lines.blank(row),
               carried[row] ? std::optional(std::vector{a.answer(*carried[row])}) : std::nullopt);
    return block;
}

std::vector<InvertAnswer> readInverts(const Arguments& a, const Network& lines) {
    a.requireSameRows({0, 1, 2, 3, 4, 5, 6});
    LineRows rows(a, lines.rows());
    const auto lengths = rows.quantities<Length>(2, Allowed::Positive);
    const auto pipes = rows.pipes(3);
    const auto slopes = rows.quantities<Slope>(4, Allowed::Positive);
    const auto outlets = rows.quantities<Length>(5, Allowed::Any);
    const auto fixed = rows.quantities<Length>(6, Allowed::Any);
    std::vector<InvertRow> given(lines.rows());
    for (std::size_t row = 0; row < lines.rows(); ++row)
        given[row] = {lengths[row], pipes[row] ? std::optional(pipes[row]->bore) : std::nullopt,
                      slopes[row],  outlets[row],
                      fixed[row],   rows.trouble()[row]};
    return lineInverts(lines, given, joinNamed(a.text(7, "crown")));
}

Result linesInverts(const Arguments& a) {
    const Network lines = readNetwork(a, 0, 1);
    const std::vector<InvertAnswer> answers = readInverts(a, lines);
    Numbers block{.columns = 2, .items = {}};
    for (std::size_t row = 0; row < lines.rows(); ++row) {
        std::optional<std::vector<double>> pair;
        if (const auto& inverts = answers[row].inverts)
            pair = {a.answer(inverts->up), a.answer(inverts->down)};
        addRow(block, lines.blank(row), pair);
    }
    return block;
}

Result linesInvertsWhy(const Arguments& a) {
    const Network lines = readNetwork(a, 0, 1);
    const std::vector<InvertAnswer> answers = readInverts(a, lines);
    Texts block;
    for (std::size_t row = 0; row < lines.rows(); ++row)
        block.items.push_back(faultText(lines, answers[row].fault, row).in(a.language()));
    return block;
}

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
    return {
        {.name = "LINES.FAULTS",
         .says = {"what keeps a run from being computed: blank, or loop, nowhere to go, two ways out, joins "
                  "itself, "
                  "pipe gets smaller downstream, a cell that cannot be used, waiting on another row",
                  "qué impide calcular un tramo: vacío, o circuito, sin salida, dos salidas, se une a sí "
                  "mismo, el tubo "
                  "se hace más chico aguas abajo, una celda que no sirve, en espera de otra fila"},
         .arguments = {fromArgument(), toArgument(), lengthColumn(), columnOf(pipeArgument())},
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
                        .column = true}},
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
         .returns = Returns::WordBlock,
         .columns = "reason",
         .source = "as LINES.INVERTS",
         .example = "LINES.INVERTS.WHY({\"A\"|\"B\"}; {\"B\"|\"Out\"}; {40|60}; {\"4 SDR35\"|\"6 SDR35\"}; "
                    "{\"1%\"|\"1%\"}; {\"\"|\"\"})",
         .call = linesInvertsWhy},
    };
}

}  // namespace trenchbook::addin
