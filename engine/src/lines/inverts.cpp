#include "trenchbook/lines/inverts.h"

#include <algorithm>

#include "lines/walk.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

// What keeps a row from being computed on its own account; empty when nothing does.
Text missing(const Run& run, bool outlet) {
    if (Text why = run.trouble({"Length", "Pipe", "Slope", "Outlet level", "Fixed level", "Known invert up",
                                "Known invert down"});
        !why.empty())
        return why;
    if (!run.length) return {"length is missing", "falta la longitud"};
    if (!run.pipe) return {"pipe is missing", "falta el tubo"};
    if (run.known()) return {};
    if (run.knownUp) return {"the lower known invert is missing", "falta la cota conocida de abajo"};
    if (run.knownDown) return {"the upper known invert is missing", "falta la cota conocida de arriba"};
    if (!run.slope) return {"slope is missing", "falta la pendiente"};
    if (outlet && !run.outletLevel && !run.fixedDown)
        return {"outlet invert is missing: no row goes on from here",
                "falta la cota de salida: ninguna fila sigue de aquí"};
    return {};
}

}  // namespace

Join joinNamed(std::string_view name) {
    const std::string key = nameKey(name);
    if (key == "crown") return Join::Crown;
    if (key == "invert") return Join::Invert;
    throw Error(Error::Kind::BadArgument, "join", "\"" + std::string(name) + "\"",
                Text::same("\"crown\", \"invert\""));
}

std::vector<Worked<Inverts>> lineInverts(const Network& lines, std::span<const Run> runs, Join join) {
    requireRows(runs.size(), lines, "length");
    const auto lacks = [&](std::size_t row) { return missing(runs[row], lines.outlet(row)); };
    const auto waits = [&](std::size_t row) { return !runs[row].fixedDown && !runs[row].known(); };
    return carryUp<Inverts>(lines, lacks, waits, [&](std::size_t row, const Inverts* below) {
        const Run& run = runs[row];
        if (run.known()) return Worked<Inverts>{Inverts{*run.knownUp, *run.knownDown}, {}};
        Length down = below == nullptr ? run.fixedDown ? *run.fixedDown : *run.outletLevel : below->up;
        if (below != nullptr && join == Join::Crown)
            down += std::max(Length(), runs[lines.wayOn(row)].pipe->bore - run.pipe->bore);
        return Worked<Inverts>{Inverts{down + *run.slope * *run.length, down}, {}};
    });
}

}  // namespace trenchbook
