// How deep and how fast the line's water runs in the swale or ditch that it empties into.
#include <algorithm>

#include "job/solve_parts.h"
#include "trenchbook/core/error.h"
#include "trenchbook/water/swale.h"

namespace trenchbook {
namespace {

// All runs that end at the node; none while one of them has no flow, or none ends there.
std::optional<Flow> flowInto(const Job& job, const SolvedJob& solved, const std::string& node) {
    const std::size_t at = solved.lines.node(node);
    if (at == Network::none) return std::nullopt;
    std::vector<double> flows;
    for (std::size_t row = 0; row < job.runs.size(); ++row) {
        if (job.runs[row].blank || solved.lines.toNode(row) != at) continue;
        if (!solved.runs[row].flow) return std::nullopt;
        flows.push_back(solved.runs[row].flow->si());
    }
    if (flows.empty()) return std::nullopt;
    return Flow::fromSi(orderlessSum(flows));
}

void runsFull(const Receiver& receiver, SolvedReceiver& answer) {
    if (!receiver.bottom || !receiver.sideSlope) return;
    const Swale swale{.bottom = *receiver.bottom, .sideSlope = *receiver.sideSlope};
    try {
        answer.critical = swaleCriticalDepth(swale, *answer.flow);
        if (!receiver.slope || !receiver.roughness) return;
        answer.depth = swaleDepth(swale, *answer.flow, *receiver.slope, *receiver.roughness);
        answer.velocity = swaleVelocity(swale, *answer.flow, *receiver.slope, *receiver.roughness);
    } catch (const Error&) {
        return;  // judgeReceivers() asks again and tells why
    }
    if (receiver.deep && *receiver.deep > Length{}) answer.spare = *receiver.deep - *answer.depth;
}

}  // namespace

const Node* nodeNamed(const Job& job, std::string_view name) {
    const std::string key = nameKey(name);
    const auto found = std::find_if(job.nodes.begin(), job.nodes.end(), [&](const Node& node) {
        return !node.blank && nameKey(node.name) == key;
    });
    return key.empty() || found == job.nodes.end() ? nullptr : &*found;
}

std::optional<Length> releaseLevel(const Job& job, const SolvedJob& solved, const Receiver& receiver) {
    const Node* node = nodeNamed(job, receiver.node);
    if (node != nullptr && node->kinds.has(NodeKind::Tee)) return node->rim();
    const std::size_t at = solved.lines.node(receiver.node);
    std::optional<Length> lowest;
    if (at == Network::none) return lowest;
    for (std::size_t row = 0; row < job.runs.size(); ++row) {
        if (job.runs[row].blank || solved.lines.toNode(row) != at) continue;
        const std::optional<Length> invert = solved.runs[row].invertDown;
        if (!invert) return std::nullopt;
        if (!lowest || *invert < *lowest) lowest = invert;
    }
    return lowest;
}

void solveReceivers(const Job& job, SolvedJob& solved) {
    solved.receivers.assign(job.receivers.size(), {});
    for (std::size_t row = 0; row < job.receivers.size(); ++row) {
        const Receiver& receiver = job.receivers[row];
        if (receiver.blank) continue;
        SolvedReceiver& answer = solved.receivers[row];
        answer.lineFlow = flowInto(job, solved, receiver.node);
        const bool otherUnread =
            std::any_of(receiver.unusable.begin(), receiver.unusable.end(),
                        [](const Unusable& cell) { return cell.heading == "Other flow"; });
        if (answer.lineFlow && !otherUnread)
            answer.flow = *answer.lineFlow + receiver.otherFlow.value_or(Flow{});
        if (answer.flow && *answer.flow > Flow{}) runsFull(receiver, answer);
        if (const std::optional<Length> level = releaseLevel(job, solved, receiver);
            level && receiver.flowLine)
            answer.overFlowLine = *level - *receiver.flowLine;
    }
}

}  // namespace trenchbook
