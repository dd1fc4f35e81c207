#include "catalog/common.h"
#include "trenchbook/stations.h"

namespace trenchbook::addin {
namespace {

struct Rows {
    Network lines;
    std::vector<std::optional<Length>> lengths;
    std::vector<std::string> names;
};

// from, to, length and the line's name; a length that cannot be read is none.
Rows readRows(const Arguments& a) {
    a.requireSameRows({0, 1, 2, 3});
    const std::vector<std::string> from = a.words(0);
    Rows rows{Network(from, a.words(1)), {}, a.given(3) ? a.words(3) : std::vector<std::string>()};
    for (const Arguments::Entry& entry : a.entries(2, from.size())) {
        const bool good = entry.state == Arguments::Entry::State::Good && entry.si > 0;
        rows.lengths.push_back(good ? std::optional(Length::fromSi(entry.si)) : std::nullopt);
    }
    return rows;
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
             .column = true},
            {.name = "line",
             .measure = Measure::Words,
             .says = {"names of the lines", "nombres de las líneas"},
             .fallback = "one line",
             .optional = true,
             .column = true}};
}

}  // namespace

std::vector<Function> stationFunctions() {
    std::vector<Argument> stakeArguments = rowArguments();
    stakeArguments.push_back({.name = "step",
                              .measure = Measure::Feet,
                              .says = {"distance between stakes", "distancia entre estacas"},
                              .fallback = "10 ft, 3 m",
                              .optional = true});
    return {
        {.name = "LINES.STATIONS",
         .says =
             {"Per run the distance of both ends from the outlet along the pipe, and the run's place on its "
              "line.",
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
             const auto placed = stations(rows.lines, rows.lengths, rows.names);
             for (std::size_t row = 0; row < placed.size(); ++row) {
                 const double none = rows.lines.blank(row) ? blankCell() : errorCell(badArgumentCode);
                 const auto& at = placed[row];
                 block.items.push_back(at ? a.answer(at->up) : none);
                 block.items.push_back(at ? a.answer(at->down) : none);
                 block.items.push_back(at ? static_cast<double>(at->place) : none);
             }
             return block;
         }},
        {.name = "LINES.STAKES",
         .says = {"The points at which the crew checks the trench: both ends of each run and every full step "
                  "between, "
                  "line by line from the lower end uphill.",
                  "Los puntos donde la cuadrilla revisa la zanja: ambos extremos de cada tramo y cada paso "
                  "entero "
                  "entre ellos, línea por línea desde abajo."},
         .arguments = stakeArguments,
         .returns = Returns::NumberBlock,
         .measure = Measure::Feet,
         .columns = "row of the run, station (ft), distance from the run's lower end (ft)",
         .source = "sums of lengths along the tree, from the outlet uphill",
         .example = "LINES.STAKES(\"A\"; \"Out\"; 42)",
         .call = [](const Arguments& a) -> Result {
             const Rows rows = readRows(a);
             const Length usual = a.units() == Units::Metric ? Length::metres(3) : Length::feet(10);
             Numbers block{3, {}};
             for (const Stake& stake :
                  stakes(rows.lines, rows.lengths, rows.names, a.quantity<Length>(4, usual))) {
                 block.items.push_back(static_cast<double>(stake.row + 1));
                 block.items.push_back(a.answer(stake.station));
                 block.items.push_back(a.answer(stake.fromLowerEnd));
             }
             if (block.items.empty()) block.items.assign(3, blankCell());
             return block;
         }},
    };
}

}  // namespace trenchbook::addin
