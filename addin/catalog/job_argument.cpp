#include "catalog/job_argument.h"

#include "catalog/line_rows.h"
#include "catalog/recent.h"
#include "catalog/rules_argument.h"
#include "trenchbook/job/read.h"

namespace trenchbook::addin {
namespace {

// By place among the arguments.
enum Table : std::size_t {
    Facts,
    Nodes,
    Water,
    RunRows,
    Crossings,
    Outlets,
    PitForm,
    PitFactsForm,
    Rules,
    Rain,
    PeakForm,
    GroundRows,
    PumpRows,
    Last
};

Argument table(const char* name, Text says, bool optional = false) {
    return {.name = name, .measure = Measure::Table, .says = std::move(says), .optional = optional};
}

Grid gridOf(const Arguments& arguments, std::size_t index) {
    if (const Range* cells = arguments.range(index)) return *cells;
    // A lone blank cell, as Calc delivers it.
    const double* number = std::get_if<double>(&arguments.raw(index));
    if (!arguments.given(index) || (number != nullptr && *number == 0)) return {};
    arguments.refuse(index, {"a range with headings or labels", "un rango con encabezados o rótulos"});
}

SolvedTables solveTables(const Arguments& arguments, std::size_t firstRow) {
    const JobTables tables{.facts = gridOf(arguments, Facts),
                           .nodes = gridOf(arguments, Nodes),
                           .water = gridOf(arguments, Water),
                           .runs = gridOf(arguments, RunRows),
                           .ground = gridOf(arguments, GroundRows),
                           .crossings = gridOf(arguments, Crossings),
                           .outlets = gridOf(arguments, Outlets),
                           .pump = gridOf(arguments, PumpRows),
                           .pit = gridOf(arguments, PitForm),
                           .pitFacts = gridOf(arguments, PitFactsForm),
                           .rules = gridOf(arguments, Rules),
                           .rain = gridOf(arguments, Rain),
                           .peak = gridOf(arguments, PeakForm),
                           .layout = arguments.laterTable(1),
                           .tapes = arguments.laterTable(2),
                           .runsHeadingRow = firstRow};
    Job job = readJob(tables, arguments.units());
    SolvedJob solved = solve(job);
    return {std::move(job), std::move(solved)};
}

}  // namespace

std::vector<Argument> jobArguments() {
    const char* const headed =
        "input columns with their row of headings, in any order; a row of units "
        "may follow";
    const char* const encabezada =
        "columnas de entrada con su fila de encabezados, en cualquier orden; puede seguir una fila de "
        "unidades";
    const auto rows = [&](const char* name, const char* what, const char* que, bool optional) {
        return table(name, {std::string(what) + ": " + headed, std::string(que) + ": " + encabezada},
                     optional);
    };
    return {
        table("facts", {"label and value: Rain, Duration, Locate ticket and what else Job asks",
                        "rótulo y valor: Rain, Duration, Locate ticket y lo demás que pide Job"}),
        rows("nodes", "points of the lines", "puntos de las líneas", false),
        rows("water", "inlets and what drains to them", "entradas y lo que escurre a ellas", false),
        rows("runs", "pipe from node to node", "tubo de nodo a nodo", false),
        rows("crossings", "other buried lines", "otras líneas enterradas", true),
        rows("outlets", "how the lines end", "cómo terminan las líneas", true),
        table("pit",
              {"label and value: Tee at node, Length, Width, Rock depth…",
               "rótulo y valor: Tee at node, Length, Width, Rock depth…"},
              true),
        table("pit facts",
              {"label and value, as PIT.CHECK reads them",
               "rótulo y valor, como los lee "
               "PIT.CHECK"},
              true),
        [] {
            Argument rules = rulesArgument();
            rules.optional = true;
            return rules;
        }(),
        table("rain",
              {"rain frequency table as pasted; read where Rain is blank, and for travel time",
               "tabla de frecuencia de lluvia como se pegó; se lee si Rain está vacío, y para el "
               "tiempo de viaje"},
              true),
        table("peak",
              {"label and value: Count travel time, Travel at, Roughness",
               "rótulo y valor: Count travel time, Travel at, Roughness"},
              true),
        rows("ground", "ground between the nodes", "terreno entre los nodos", true),
        rows("pump", "pump basins", "cárcamos de bombeo", true),
    };
}

std::vector<Argument> jobLater() {
    Argument row = firstRowArgument();
    row.says = {"sheet row of the runs' headings, so that texts name rows as the sheet counts them",
                "fila de la hoja de los encabezados de los tramos, para que los textos nombren las filas "
                "como la hoja"};
    const auto drawn = [](const char* name, Text says) {
        return Argument{.name = name, .measure = Measure::Table, .says = std::move(says), .optional = true};
    };
    return {
        row,
        drawn(
            "layout",
            {"points of the lot, as LAYOUT.POINTS reads them: distances that nobody typed come from there",
             "puntos del lote, como los lee LAYOUT.POINTS: de ahí salen las distancias que nadie escribió"}),
        drawn("tapes", {"tapes between them", "cintas entre ellos"})};
}

std::string jobExample() {
    return "({\"Rain\";6}; "
           "{\"Node\";\"Kind\";\"Ground\"|\"A\";\"downspout\";100|\"B\";\"cleanout\";99.4|\"Out\";\"outlet\";98.2}; "
           "{\"Node\";\"Roof area\";\"Roof C\"|\"A\";800;0.95}; "
           "{\"From\";\"To\";\"Length\";\"Pipe\";\"Slope\";\"Outlet level\";\"Surface up\";\"Surface down\"|"
           "\"A\";\"B\";40;\"4 SDR35\";\"1/8 in/ft\";\"\";\"lawn\";\"lawn\"|\"B\";\"Out\";60;\"4 "
           "SDR35\";\"1/8 in/ft\";97;\"lawn\";\"daylight\"}; "
           "{\"What\";\"From\";\"To\";\"At\";\"Its depth\";\"Its "
           "diameter\";\"Passes\"|\"gas\";\"B\";\"Out\";20;48;1;\"below\"})";
}

std::shared_ptr<const SolvedTables> solvedTables(const Arguments& arguments) {
    if (!arguments.given(RunRows))
        arguments.refuse(RunRows, {"a range with headings", "un rango con encabezados"});
    const std::size_t first = firstRow(arguments);
    static Recent<SolvedTables> recent(4);
    std::string question = questionOf(arguments, 0, Last);
    addToQuestion(question, static_cast<double>(first));
    addToQuestion(question, arguments.laterTable(1));
    addToQuestion(question, arguments.laterTable(2));
    return recent.get(question, [&] {
        SolvedTables made = solveTables(arguments, first);
        made.question = question;
        return made;
    });
}

}  // namespace trenchbook::addin
