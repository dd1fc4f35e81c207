#include "trenchbook/cleanouts.h"

#include <algorithm>

#include "trenchbook/error.h"

namespace trenchbook {

std::vector<std::optional<SinceOpening>> sinceOpenings(const Network& lines,
                                                       std::span<const std::optional<Length>> lengths,
                                                       std::span<const LineNode> nodes, Angle sharp) {
    if (lengths.size() != lines.rows())
        throw Error(Error::Kind::BadArgument, "length", std::to_string(lengths.size()) + " rows",
                    {std::to_string(lines.rows()) + " rows", std::to_string(lines.rows()) + " filas"});
    std::vector<const LineNode*> at(lines.nodes(), nullptr);
    for (const LineNode& node : nodes) {
        if (node.turn) requireNotNegative(*node.turn, "turn");
        const std::size_t index = lines.node(node.name);
        if (index != Network::none && at[index] == nullptr) at[index] = &node;
    }

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

}  // namespace trenchbook
