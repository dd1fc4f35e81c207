// The walks over the lines: from the heads down, where water and lengths add up, and from the outlets uphill, where
// levels and distances are carried. Each row is visited once, after those that it depends on.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "trenchbook/core/error.h"
#include "trenchbook/lines/network.h"

#pragma GCC visibility push(hidden)
namespace trenchbook {

// Refuses a table of another height than the network's.
inline void requireRows(std::size_t given, const Network& lines, const char* argument) {
    if (given == lines.rows()) return;
    const Text row{"row", "fila"}, rows{"rows", "filas"};
    throw Error(Error::Kind::BadArgument, argument, Text{"", "de "} + counted(given, row, rows),
                counted(lines.rows(), row, rows) + Text{", as many as from", ", tantas como from"});
}

// Rows that have their place in a tree, each after all rows that flow into it.
template <class Visit>
void walkDown(const Network& lines, Visit visit) {
    for (const std::size_t row : lines.order())
        if (lines.placed(row)) visit(row);
}

// The same rows, each after the row downstream of it.
template <class Visit>
void walkUp(const Network& lines, Visit visit) {
    const std::span<const std::size_t> order = lines.order();
    for (auto row = order.rbegin(); row != order.rend(); ++row)
        if (lines.placed(*row)) visit(*row);
}

template <class Value>
Worked<Value> cannot(std::size_t row, Text why) {
    return {std::nullopt, {Fault::Kind::BadCell, row, std::move(why)}};
}

// Values carried uphill. `lacks(row)` says what keeps a row from being worked out on its own account, empty where
// nothing does; `work(row, below)` works it out, `below` being the value of the row that its level is carried from;
// null at an outlet and where `waits(row)` says that it needs none. A row without a value spoils those that wait.
template <class Value, class Lacks, class Waits, class Work>
std::vector<Worked<Value>> carryUp(const Network& lines, Lacks lacks, Waits waits, Work work) {
    std::vector<Worked<Value>> rows(lines.rows());
    for (std::size_t row = 0; row < rows.size(); ++row) rows[row].fault = lines.fault(row);
    walkUp(lines, [&](std::size_t row) {
        if (Text why = lacks(row); !why.empty()) {
            rows[row] = cannot<Value>(row, std::move(why));
            return;
        }
        const Value* below = nullptr;
        if (const std::size_t next = lines.wayOn(row); next != Network::none && waits(row)) {
            if (!rows[next].value) {
                const Fault& cause = rows[next].fault;
                rows[row].fault = {
                    Fault::Kind::Waiting, cause.kind == Fault::Kind::Waiting ? cause.other : next, {}};
                return;
            }
            below = &*rows[next].value;
        }
        rows[row] = work(row, below);
    });
    return rows;
}

// Values carried down. `work(row, rows)` finds in `rows` the values of all rows upstream. A row without a value
// spoils all rows downstream of it; the nearest culprit is named.
template <class Value, class Lacks, class Work>
std::vector<Worked<Value>> carryDown(const Network& lines, Lacks lacks, Work work) {
    std::vector<Worked<Value>> rows(lines.rows());
    std::vector<Text> reasons(rows.size());
    std::vector<bool> bad(rows.size(), false);
    for (std::size_t row = 0; row < rows.size(); ++row) {
        if (lines.blank(row)) continue;
        reasons[row] = lacks(row);
        bad[row] = !reasons[row].empty();
    }
    std::vector<std::size_t> culprit = lines.spoiledByUpstream(bad);
    for (const std::size_t row : lines.order()) {
        // A row that failed only now is not among those marked before.
        for (const std::size_t above : lines.upstream(row))
            if (culprit[row] == Network::none) culprit[row] = culprit[above];
        if (culprit[row] != Network::none) continue;
        rows[row] = work(row, std::as_const(rows));
        if (rows[row].value) continue;
        reasons[row] = std::move(rows[row].fault.words);
        culprit[row] = row;
    }
    for (std::size_t row = 0; row < rows.size(); ++row) {
        if (lines.fault(row)) {
            rows[row].fault = lines.fault(row);
        } else if (culprit[row] == row) {
            rows[row].fault = {Fault::Kind::BadCell, row, std::move(reasons[row])};
        } else if (culprit[row] != Network::none) {
            rows[row].fault = {Fault::Kind::Waiting, culprit[row], {}};
        }
    }
    return rows;
}

// What enters at each row's upper node and all that flows in from upstream, added up. `entering` has a node and a
// quantity each; one that is not known spoils its row and what lies downstream.
template <class Kind>
struct Entering {
    std::string_view node;
    std::optional<Kind> quantity;
};
template <class Kind>
std::vector<std::optional<Kind>> sumDown(const Network& lines, std::span<const Entering<Kind>> entering) {
    std::vector<std::vector<double>> terms(lines.rows());
    std::vector<bool> known(lines.rows(), true);
    for (const Entering<Kind>& inlet : entering) {
        const std::size_t row = lines.entersAt(inlet.node);
        if (row == Network::none) continue;
        if (!inlet.quantity) {
            known[row] = false;
        } else {
            terms[row].push_back(inlet.quantity->si());
        }
    }
    const Text unknown = {"an inlet is not known", "una entrada no se conoce"};
    const auto sums = carryDown<Kind>(
        lines, [&](std::size_t row) { return known[row] ? Text() : unknown; },
        [&](std::size_t row, const std::vector<Worked<Kind>>& rows) {
            for (const std::size_t above : lines.upstream(row)) terms[row].push_back(rows[above].value->si());
            return Worked<Kind>{Kind::fromSi(orderlessSum(terms[row])), {}};
        });
    std::vector<std::optional<Kind>> out;
    out.reserve(sums.size());
    for (const Worked<Kind>& sum : sums) out.push_back(sum.value);
    return out;
}

}  // namespace trenchbook
#pragma GCC visibility pop
