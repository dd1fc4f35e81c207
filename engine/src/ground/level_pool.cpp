#include "trenchbook/ground/level_pool.h"

#include <algorithm>
#include <cmath>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

[[noreturn]] void refuseRow(const char* argument, std::size_t row, const Text& allowed) {
    const std::string where = std::to_string(row + 1);
    throw Error(Error::Kind::BadArgument, argument,
                Text{std::string(argument) + " in row " + where + "; allowed: ",
                     std::string(argument) + " en la fila " + where + "; se admite: "} +
                    allowed + Text::same("."));
}

const Text rising{"each row above the one before", "cada fila mayor que la anterior"};
const Text notFalling{"0 or more, and no row below the one before",
                      "0 o más, y ninguna fila menor que la anterior"};

void requireTable(std::span<const PoolRating> table) {
    if (table.size() < 2)
        throw Error(
            Error::Kind::BadArgument, "depth",
            Text{"a table of ", "una tabla de "} + counted(table.size(), {"row", "fila"}, {"rows", "filas"}),
            {"at least two rows", "al menos dos filas"});
    for (std::size_t i = 0; i < table.size(); ++i) {
        const PoolRating before = i > 0 ? table[i - 1] : PoolRating{};
        if (i > 0 && !(table[i].depth > before.depth)) refuseRow("depth", i, rising);
        if (!(table[i].storage >= before.storage)) refuseRow("storage", i, notFalling);
        if (!(table[i].outflow >= before.outflow)) refuseRow("outflow", i, notFalling);
        if (i > 0 && table[i].storage == before.storage && table[i].outflow == before.outflow)
            refuseRow("storage", i,
                      {"storage or outflow rises from row to row", "el volumen o el caudal aumenta"});
    }
}

[[noreturn]] void leaveTable(Duration at, const Text& what) {
    const std::string minute = plain(at.minutes());
    throw Error(Error::Kind::OutsideValidity, "storage",
                Text{"at minute " + minute + " ", "en el minuto " + minute + " "} + what);
}

}  // namespace

std::vector<PoolStep> routePool(std::span<const PoolInflow> inflow, std::span<const PoolRating> table) {
    requireTable(table);
    for (std::size_t i = 0; i < inflow.size(); ++i) {
        if (i > 0 && !(inflow[i].at > inflow[i - 1].at)) refuseRow("minute", i, rising);
        if (!(inflow[i].flow.si() >= 0)) refuseRow("inflow", i, {"0 or more", "0 o más"});
    }

    std::vector<PoolStep> states;
    states.reserve(inflow.size());
    for (std::size_t i = 0; i < inflow.size(); ++i) {
        if (i == 0) {
            states.push_back(table.front());
            continue;
        }
        const Duration step = inflow[i].at - inflow[i - 1].at;
        const auto indication = [&](const PoolRating& row) {
            return (row.storage / step + row.outflow / 2).si();
        };
        const PoolStep& last = states.back();
        const Flow mean = (inflow[i - 1].flow + inflow[i].flow) / 2;
        const double wanted = (last.storage / step - last.outflow / 2 + mean).si();
        const double hair = 1e-12 * (indication(last) + mean.si());
        if (wanted > indication(table.back()) + hair)
            leaveTable(inflow[i].at,
                       {"the water rises above the table's last row: continue the table.",
                        "el agua sube más allá de la última fila de la tabla: continúe la tabla."});
        if (wanted < indication(table.front()) - hair)
            leaveTable(
                inflow[i].at,
                {"more flows out in the step than is stored: take shorter steps, or begin the table at no "
                 "storage and no outflow.",
                 "en el paso sale más de lo almacenado: use pasos más cortos, o empiece la tabla sin volumen "
                 "ni caudal."});
        const auto above =
            std::lower_bound(table.begin() + 1, table.end() - 1, wanted,
                             [&](const PoolRating& row, double value) { return indication(row) < value; });
        const PoolRating& high = *above;
        const PoolRating& low = *(above - 1);
        const double share =
            std::clamp((wanted - indication(low)) / (indication(high) - indication(low)), 0.0, 1.0);
        states.push_back({low.depth + share * (high.depth - low.depth),
                          low.storage + share * (high.storage - low.storage),
                          low.outflow + share * (high.outflow - low.outflow)});
    }
    return states;
}

}  // namespace trenchbook
