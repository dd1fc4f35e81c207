#include "trenchbook/lines/cleanouts.h"

#include <algorithm>
#include <cmath>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

void requireRows(std::size_t given, const Network& lines, const char* argument) {
    if (given != lines.rows())
        throw Error(Error::Kind::BadArgument, argument, std::to_string(given) + " rows",
                    {std::to_string(lines.rows()) + " rows", std::to_string(lines.rows()) + " filas"});
}

// By the network's number of a node; null where it is not listed.
std::vector<const LineNode*> placed(const Network& lines, std::span<const LineNode> nodes) {
    std::vector<const LineNode*> at(lines.nodes(), nullptr);
    for (const LineNode& node : nodes) {
        if (node.turn) requireNotNegative(*node.turn, "turn");
        const std::size_t index = lines.node(node.name);
        if (index != Network::none && at[index] == nullptr) at[index] = &node;
    }
    return at;
}

}  // namespace

std::vector<std::optional<SinceOpening>> sinceOpenings(const Network& lines,
                                                       std::span<const std::optional<Length>> lengths,
                                                       std::span<const LineNode> nodes, Angle sharp) {
    requireRows(lengths.size(), lines, "length");
    const std::vector<const LineNode*> at = placed(lines, nodes);

    std::vector<std::optional<SinceOpening>> told(lines.rows());
    for (const std::size_t row : lines.order()) {
        if (!lines.placed(row) || !lengths[row]) continue;
        const LineNode* head = at[lines.fromNode(row)];
        SinceOpening since{};
        if (head == nullptr || !head->opening) {
            if (head != nullptr && !head->turn) continue;
            bool known = true;
            since.fromHead = lines.upstream(row).empty();
            for (const std::size_t above : lines.upstream(row)) {
                if (!told[above]) {
                    known = false;
                    break;
                }
                since.length = std::max(since.length, told[above]->length);
                since.turned = std::max(since.turned, told[above]->turned);
                since.sharpTurns = std::max(since.sharpTurns, told[above]->sharpTurns);
                since.fromHead = since.fromHead || told[above]->fromHead;
            }
            if (!known) continue;
            if (head != nullptr && !lines.upstream(row).empty()) {
                since.turned = since.turned + *head->turn;
                since.sharpTurns += *head->turn > sharp ? 1 : 0;
            }
        }
        since.length = since.length + *lengths[row];
        told[row] = since;
    }
    return told;
}

std::vector<std::optional<AskedCleanouts>> askedCleanouts(const Network& lines,
                                                          std::span<const std::optional<Length>> lengths,
                                                          std::span<const std::optional<Pipe>> pipes,
                                                          std::span<const LineNode> nodes,
                                                          const CleanoutLimits& limits) {
    requireRows(lengths.size(), lines, "length");
    requireRows(pipes.size(), lines, "pipe");
    requirePositive(limits.spacingSmall, "rules");
    requirePositive(limits.spacingLarge, "rules");
    const std::vector<const LineNode*> at = placed(lines, nodes);
    const Length hair = Length::millimetres(1);  // sums of lengths that end on the limit

    struct Since {
        Length length;
        Angle turned;
    };
    std::vector<std::optional<AskedCleanouts>> asked(lines.rows());
    std::vector<Since> since(lines.rows());  // at the lower end, counted from the last, real or asked
    for (const std::size_t row : lines.order()) {
        if (!lines.placed(row) || !lengths[row] || !pipes[row]) continue;
        const LineNode* head = at[lines.fromNode(row)];
        Since here;
        AskedCleanouts answer;
        if (head == nullptr || !head->opening) {
            const auto& above = lines.upstream(row);
            if (head != nullptr && !head->turn) continue;
            if (!std::all_of(above.begin(), above.end(), [&](std::size_t r) { return asked[r].has_value(); }))
                continue;
            for (const std::size_t r : above) {
                here.length = std::max(here.length, since[r].length);
                here.turned = std::max(here.turned, since[r].turned);
            }
            const Angle turn = head != nullptr && !above.empty() ? *head->turn : Angle();
            answer.atUpperNode = (turn > limits.bend && here.length > limits.group + hair) ||
                                 (turn > Angle() && here.turned + turn > limits.turned);
            here = answer.atUpperNode ? Since{} : Since{here.length, here.turned + turn};
        }
        const Length spacing =
            pipes[row]->bore > Length::inches(4.5) ? limits.spacingLarge : limits.spacingSmall;
        const Length first = std::max(spacing - here.length, Length());
        if (*lengths[row] > first + hair) {
            answer.first = first;
            answer.along = std::ceil((*lengths[row] - first - hair) / spacing);
            const Length last = first + spacing * (answer.along - 1);
            here = {*lengths[row] - last, Angle()};
        } else {
            here.length = here.length + *lengths[row];
        }
        since[row] = here;
        asked[row] = answer;
    }
    return asked;
}

}  // namespace trenchbook
