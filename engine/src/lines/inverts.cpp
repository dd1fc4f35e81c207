#include "trenchbook/lines/inverts.h"

#include <algorithm>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

// What keeps a row from being computed on its own account; empty when nothing does.
Text missing(const InvertRow& row, bool outlet) {
    if (!row.trouble.empty()) return row.trouble;
    if (!row.length) return {"length is missing", "falta la longitud"};
    if (!row.bore) return {"pipe is missing", "falta el tubo"};
    if (!row.slope) return {"slope is missing", "falta la pendiente"};
    if (outlet && !row.outletInvert && !row.fixedDown)
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

std::vector<InvertAnswer> lineInverts(const Network& lines, std::span<const InvertRow> rows, Join join) {
    if (rows.size() != lines.rows())
        throw Error(Error::Kind::BadArgument, "length", std::to_string(rows.size()) + " rows",
                    {"as many rows as from", "tantas filas como from"});
    std::vector<InvertAnswer> answers(rows.size());
    for (std::size_t row = 0; row < rows.size(); ++row) answers[row].fault = lines.fault(row);

    for (auto at = lines.order().rbegin(); at != lines.order().rend(); ++at) {
        const std::size_t row = *at;
        InvertAnswer& answer = answers[row];
        if (answer.fault) continue;
        const InvertRow& given = rows[row];
        if (Text lacks = missing(given, lines.outlet(row)); !lacks.empty()) {
            answer.fault = {Fault::Kind::BadCell, row, std::move(lacks)};
            continue;
        }
        Length down;
        if (given.fixedDown) {
            down = *given.fixedDown;
        } else if (lines.outlet(row)) {
            down = *given.outletInvert;
        } else {
            const std::size_t below = lines.wayOn(row);
            const InvertAnswer& next = answers[below];
            if (!next.inverts) {
                answer.fault = {Fault::Kind::Waiting,
                                next.fault.kind == Fault::Kind::Waiting ? next.fault.other : below,
                                {}};
                continue;
            }
            down = next.inverts->up;
            if (join == Join::Crown) down += std::max(Length(), *rows[below].bore - *given.bore);
        }
        answer.inverts = {down + *given.slope * *given.length, down};
    }
    return answers;
}

}  // namespace trenchbook
