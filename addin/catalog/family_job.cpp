// A whole job from its tables: each function shows one block of the same solved job.
#include "catalog/families.h"
#include "catalog/job_argument.h"
#include "trenchbook/job/views.h"

namespace trenchbook::addin {
namespace {

// A block of the solved job in the shape of a view: add(job, solved, row, blank, column) puts in each cell.
template <class Filled, class View, class Add>
Filled blockOf(const Arguments& a, const View& view, const Add& add) {
    const std::shared_ptr<const SolvedTables> tables = solvedTables(a);
    const Job& job = tables->job;
    const SolvedJob& solved = tables->solved;
    const std::size_t rows = view.rows(job, solved);
    Filled block{.columns = view.columns.size(), .items = {}};
    block.items.reserve(rows * block.columns);
    for (std::size_t row = 0; row < rows; ++row) {
        const bool blank = view.blank(job, solved, row);
        for (const auto& column : view.columns) block.items.push_back(add(job, solved, row, blank, column));
    }
    return block;
}

template <Viewed viewed>
Result numbersOf(const Arguments& a) {
    const NumberView& view = numberView(viewed);
    return blockOf<Numbers>(
        a, view,
        [&](const Job& job, const SolvedJob& solved, std::size_t row, bool blank,
            const NumberColumn& column) {
            const std::optional<double> si = blank ? std::nullopt : column.of(job, solved, row);
            const auto& unit = info(column.ownUnit ? view.unitOf(job, solved, row) : column.unit);
            return si                          ? *si / unit.si(a.units())
                   : blank || !column.expected ? blankCell()
                                               : errorCell(badArgumentCode);
        });
}

template <Viewed viewed>
Result wordsOf(const Arguments& a) {
    return blockOf<Texts>(
        a, wordView(viewed),
        [&](const Job& job, const SolvedJob& solved, std::size_t row, bool blank, const WordColumn& column) {
            return blank ? std::string() : column.of(job, solved, row).in(a.language());
        });
}

// "Ground up (ft), Slope %, ..."
std::string columnsText(const NumberView& view) {
    std::string text;
    for (const NumberColumn& column : view.columns) {
        const std::string& unit = info(column.unit).us.en;
        const bool measured = !unit.empty() && info(column.unit).metric.en != unit;
        text +=
            (text.empty() ? "" : ", ") + std::string(column.heading) + (measured ? " (" + unit + ")" : "");
    }
    return text;
}
std::string columnsText(const WordView& view) {
    std::string text;
    for (const WordColumn& column : view.columns)
        text += (text.empty() ? "" : ", ") + std::string(column.heading);
    return text;
}

struct Shown {
    const char* name;
    Text says;
    Viewed viewed;
    Result (*numbers)(const Arguments&);
    Result (*words)(const Arguments&);  // null: numbers alone
};

template <Viewed viewed>
Shown shown(const char* name, Text says) {
    return {name, std::move(says), viewed, numbersOf<viewed>,
            viewed == Viewed::Counts ? nullptr : wordsOf<viewed>};
}

std::vector<Shown> allShown() {
    return {
        shown<Viewed::Runs>("JOB.RUNS", {"of each run: levels, cover, cut, flow, water, stations; a row a "
                                         "row of runs",
                                         "de cada tramo: cotas, tapado, excavación, caudal, agua, "
                                         "estaciones; una fila "
                                         "por fila de tramos"}),
        shown<Viewed::Nodes>("JOB.NODES", {"of each node: ground, rim, water, freeboard, runs; a row a "
                                           "row of nodes",
                                           "de cada nodo: terreno, borde, agua, bordo libre, tramos; una "
                                           "fila por fila "
                                           "de nodos"}),
        shown<Viewed::Water>("JOB.WATER", {"of each inlet: flow and what it can take; a row a row of water",
                                           "de cada entrada: caudal y lo que admite; una fila por fila de "
                                           "agua"}),
        shown<Viewed::Ground>("JOB.GROUND",
                              {"of each shot between the nodes: invert, cover, cut; a row a row of "
                               "ground",
                               "de cada lectura entre los nodos: cota, tapado, excavación; una "
                               "fila por fila de terreno"}),
        shown<Viewed::Crossings>("JOB.CROSSINGS", {"of each crossing: levels, clearance, hand digging; a "
                                                   "row a row of "
                                                   "crossings",
                                                   "de cada cruce: cotas, separación, excavación a mano; "
                                                   "una fila por "
                                                   "fila de cruces"}),
        shown<Viewed::Outlets>(
            "JOB.OUTLETS",
            {"of each end of a line: flow, the water it ends in, head over its rim, the swale; a row a row of outlets",
             "de cada final de línea: caudal, el agua en que termina, carga sobre el borde, la zanja; una fila por fila de salidas"}),
        shown<Viewed::Pump>(
            "JOB.PUMP",
            {"of each pump basin: inflow, where the pump works, its starts, how long it holds out without power; a row a row of pump",
             "de cada cárcamo: lo que llega, dónde trabaja la bomba, sus arranques, cuánto aguanta sin luz; una fila por fila de bomba"}),
        shown<Viewed::Pit>("JOB.PIT", {"of the pit, in one row: what comes, what it holds, how long it "
                                       "takes to empty",
                                       "del pozo, en una fila: lo que llega, lo que guarda, cuánto tarda "
                                       "en vaciarse"}),
        shown<Viewed::Findings>("JOB.FINDINGS", {"everything that is found about the job, a row each: by "
                                                 "table, by row, "
                                                 "the worst first",
                                                 "todo lo que se halla en la obra, una fila cada cosa: "
                                                 "por tabla, por "
                                                 "fila, lo peor primero"}),
        shown<Viewed::Counts>("JOB.COUNTS",
                              {"rows by verdict: Job, Nodes, Water, Runs, Ground, Crossings, Outlets, "
                               "Pump, Pit, and all "
                               "of them",
                               "filas por veredicto: Job, Nodes, Water, Runs, Ground, Crossings, "
                               "Outlets, Pump, Pit, y "
                               "todas"}),
    };
}

}  // namespace

std::vector<Function> jobFunctions() {
    constexpr const char* source =
        "one job solved from its tables: Manning, the rational method, gradually varied flow, and the "
        "rules given; "
        "docs/methods";
    std::vector<Function> functions;
    for (const Shown& one : allShown()) {
        Function numbers{.name = one.name,
                         .says = one.says,
                         .arguments = jobArguments(),
                         .later = jobLater(),
                         .returns = Returns::NumberBlock,
                         .measure = Measure::Feet,
                         .columns = columnsText(numberView(one.viewed)),
                         .source = source,
                         .example = std::string(one.name) + jobExample(),
                         .call = one.numbers};
        functions.push_back(numbers);
        if (one.words == nullptr) continue;
        Function words = std::move(numbers);
        words.name = std::string(one.name) + ".TEXT";
        words.says = Text{"the words beside " + std::string(one.name) + ", row by row",
                          "las palabras junto a " + std::string(one.name) + ", fila por fila"};
        words.returns = Returns::WordBlock;
        words.columns = columnsText(wordView(one.viewed));
        words.example = words.name + jobExample();
        words.call = one.words;
        functions.push_back(std::move(words));
    }
    return functions;
}

}  // namespace trenchbook::addin
