#include "trenchbook/lines/stations.h"

#include <algorithm>
#include <cmath>
#include <unordered_map>

#include "lines/walk.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

// Per line name the rows that have a station, lower ends first.
std::vector<std::vector<std::size_t>> byLine(const std::vector<std::optional<RunStation>>& placed,
                                             std::span<const Run> runs) {
    std::vector<std::vector<std::size_t>> groups;
    std::unordered_map<std::string, std::size_t> known;
    for (std::size_t row = 0; row < placed.size(); ++row) {
        if (!placed[row]) continue;
        const auto [at, fresh] = known.emplace(nameKey(runs[row].line), groups.size());
        if (fresh) groups.emplace_back();
        groups[at->second].push_back(row);
    }
    for (std::vector<std::size_t>& rows : groups)
        std::stable_sort(rows.begin(), rows.end(),
                         [&](std::size_t a, std::size_t b) { return placed[a]->down < placed[b]->down; });
    return groups;
}

}  // namespace

std::vector<std::optional<RunStation>> stations(const Network& lines, std::span<const Run> runs) {
    requireRows(runs.size(), lines, "length");
    std::vector<std::optional<RunStation>> placed(lines.rows());
    walkUp(lines, [&](std::size_t row) {
        if (!runs[row].length) return;
        const std::size_t below = lines.downstream(row);
        if (below == Network::none && !lines.outlet(row)) return;
        if (below != Network::none && !placed[below]) return;
        const Length down = below == Network::none ? Length() : placed[below]->up;
        placed[row] = RunStation{down + *runs[row].length, down, 0};
    });
    for (const std::vector<std::size_t>& rows : byLine(placed, runs))
        for (std::size_t i = 0; i < rows.size(); ++i) placed[rows[i]]->place = i + 1;
    return placed;
}

std::vector<Stake> stakes(const Network& lines, std::span<const Run> runs, Length step) {
    requirePositive(step, "step");
    constexpr double mostPerRun = 10000;
    const std::vector<std::optional<RunStation>> placed = stations(lines, runs);
    std::vector<Stake> out;
    for (const std::vector<std::size_t>& rows : byLine(placed, runs)) {
        for (const std::size_t row : rows) {
            if (runs[row].existing) continue;  // nobody digs there
            const RunStation& run = *placed[row];
            if ((run.up - run.down) / step > mostPerRun)
                throw Error(Error::Kind::BadArgument, "step", plain(step.feet()) + " ft",
                            {"a step that divides each run into at most 10,000",
                             "un paso que divida cada tramo en 10 000 como máximo"});
            out.push_back({row, run.down, Length()});
            // A full step that falls on a node, but for rounding, is the node itself.
            const double tolerance = 1e-6;
            for (double full = std::floor(run.down / step + tolerance) + 1;
                 full * step.si() < run.up.si() - tolerance * step.si(); ++full)
                out.push_back({row, step * full, step * full - run.down});
            out.push_back({row, run.up, run.up - run.down});
        }
    }
    return out;
}

}  // namespace trenchbook
