#include "trenchbook/lines/cleanouts.h"

#include <algorithm>
#include <cmath>

#include "lines/walk.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

// What a cable finds at the upper node of a row.
struct Head {
    bool opening = false;
    std::optional<Angle> turn = Angle();  // none: not known
};

// By the network's number of a node; a node that is not listed goes straight on.
std::vector<Head> heads(const Network& lines, std::span<const Node> nodes) {
    std::vector<Head> at(lines.nodes());
    std::vector<bool> listed(lines.nodes(), false);
    for (const Node& node : nodes) {
        const std::optional<Angle> turn = node.turns();
        if (turn) requireNotNegative(*turn, "turn");
        const std::size_t index = lines.node(node.name);
        if (index == Network::none || listed[index]) continue;
        at[index] = {node.kinds.takesCable(), turn};
        listed[index] = true;
    }
    return at;
}

bool large(const Pipe& pipe) { return pipe.bore > Length::inches(4.5); }

}  // namespace

CleanoutLimits cleanoutLimits(const Ruleset& rules) {
    return {rules.length("cleanout.spacing.4in"), rules.length("cleanout.spacing.6in"),
            Angle::degrees(rules.number("cleanout.turn")), Angle::degrees(rules.number("cleanout.bend")),
            rules.length("cleanout.group")};
}

const char* cleanoutSpacingKey(const Pipe& pipe) {
    return large(pipe) ? "cleanout.spacing.6in" : "cleanout.spacing.4in";
}

std::vector<std::optional<SinceOpening>> sinceOpenings(const Network& lines, std::span<const Run> runs,
                                                       std::span<const Node> nodes, Angle sharp) {
    requireRows(runs.size(), lines, "length");
    const std::vector<Head> at = heads(lines, nodes);

    std::vector<std::optional<SinceOpening>> told(lines.rows());
    walkDown(lines, [&](std::size_t row) {
        if (!runs[row].length) return;
        const Head& head = at[lines.fromNode(row)];
        const std::span<const std::size_t> above = lines.upstream(row);
        SinceOpening since{};
        if (!head.opening) {
            if (!head.turn) return;
            since.fromHead = above.empty();
            for (const std::size_t each : above) {
                if (!told[each]) return;
                since.length = std::max(since.length, told[each]->length);
                since.turned = std::max(since.turned, told[each]->turned);
                since.sharpTurns = std::max(since.sharpTurns, told[each]->sharpTurns);
                since.fromHead = since.fromHead || told[each]->fromHead;
            }
            if (!above.empty()) {
                since.turned = since.turned + *head.turn;
                since.sharpTurns += *head.turn > sharp ? 1 : 0;
            }
        }
        since.length = since.length + *runs[row].length;
        told[row] = since;
    });
    return told;
}

std::vector<std::optional<AskedCleanouts>> askedCleanouts(const Network& lines, std::span<const Run> runs,
                                                          std::span<const Node> nodes,
                                                          const CleanoutLimits& limits) {
    requireRows(runs.size(), lines, "length");
    requirePositive(limits.spacingSmall, "rules");
    requirePositive(limits.spacingLarge, "rules");
    const std::vector<Head> at = heads(lines, nodes);
    const Length hair = Length::millimetres(1);  // sums of lengths that end on the limit

    struct Since {
        Length length;
        Angle turned;
    };
    std::vector<std::optional<AskedCleanouts>> asked(lines.rows());
    std::vector<Since> since(lines.rows());  // at the lower end, counted from the last, real or asked
    walkDown(lines, [&](std::size_t row) {
        if (!runs[row].length || !runs[row].pipe) return;
        const Length length = *runs[row].length;
        const Head& head = at[lines.fromNode(row)];
        Since here;
        AskedCleanouts answer;
        if (!head.opening) {
            const std::span<const std::size_t> above = lines.upstream(row);
            if (!head.turn) return;
            if (!std::all_of(above.begin(), above.end(), [&](std::size_t r) { return asked[r].has_value(); }))
                return;
            for (const std::size_t r : above) {
                here.length = std::max(here.length, since[r].length);
                here.turned = std::max(here.turned, since[r].turned);
            }
            const Angle turn = above.empty() ? Angle() : *head.turn;
            answer.atUpperNode = (turn > limits.bend && here.length > limits.group + hair) ||
                                 (turn > Angle() && here.turned + turn > limits.turned);
            here = answer.atUpperNode ? Since{} : Since{here.length, here.turned + turn};
        }
        const Length spacing = large(*runs[row].pipe) ? limits.spacingLarge : limits.spacingSmall;
        const Length first = std::max(spacing - here.length, Length());
        if (length > first + hair) {
            answer.first = first;
            answer.along = std::ceil((length - first - hair) / spacing);
            const Length last = first + spacing * (answer.along - 1);
            here = {length - last, Angle()};
        } else {
            here.length = here.length + length;
        }
        since[row] = here;
        asked[row] = answer;
    });
    return asked;
}

}  // namespace trenchbook
