#include "job/view_parts.h"
#include "trenchbook/core/error.h"
#include "trenchbook/takeoff/bends.h"

namespace trenchbook::views {
namespace {

template <auto member>
std::optional<double> given(const Job& job, const SolvedJob&, std::size_t row) {
    return si(job.nodes[row].*member);
}
template <auto member>
std::optional<double> solvedNode(const Job& job, const SolvedJob& solved, std::size_t row) {
    return number<&SolvedJob::nodes, member>(job, solved, row);
}
template <auto member>
std::optional<double> count(const Job&, const SolvedJob& solved, std::size_t row) {
    return static_cast<double>(solved.nodes[row].*member);
}
std::optional<double> rim(const Job& job, const SolvedJob&, std::size_t row) {
    return si(job.nodes[row].rim());
}
std::optional<double> takesCable(const Job& job, const SolvedJob&, std::size_t row) {
    return job.nodes[row].kinds.takesCable() ? 1 : 0;
}
// Of the run that leaves the node.
std::optional<double> invert(const Job& job, const SolvedJob& solved, std::size_t row) {
    const std::size_t node = solved.lines.node(job.nodes[row].name);
    if (node == Network::none) return std::nullopt;
    const std::size_t run = solved.lines.leaving(node);
    return run == Network::none ? std::nullopt : si(solved.runs[run].invertUp);
}

Text kinds(const Job& job, const SolvedJob&, std::size_t row) { return job.nodes[row].kinds.text(); }
// Of the elbows that a cable can follow.
Text bendMadeOf(const Job& job, const SolvedJob&, std::size_t row) {
    const std::optional<Angle>& turn = job.nodes[row].turn;
    if (!turn || turn->degrees() <= 0) return {};
    const Angle elbows[] = {Angle::degrees(22.5), Angle::degrees(45)};
    try {
        return Text::same(makeupText(makeup(*turn, elbows, Angle::degrees(3))));
    } catch (const Error&) {
        return {};
    }
}

}  // namespace

NumberView nodeNumbers() {
    using U = Unit;
    return {.columns = {{"Ground level", U::Feet, given<&Node::ground>},
                        {"Rim", U::Feet, rim},
                        {"Turn", U::Degrees, given<&Node::turn>, false},
                        {"Water level", U::Feet, solvedNode<&SolvedNode::water>, false},
                        {"Freeboard", U::Feet, solvedNode<&SolvedNode::freeboard>, false},
                        {"Runs in", U::Number, count<&SolvedNode::entering>},
                        {"Runs out", U::Number, count<&SolvedNode::leaving>},
                        {"Takes a cable", U::Number, takesCable},
                        {"Invert", U::Feet, invert, false}},
            .rows = rowsOf<&Job::nodes>,
            .blank = isBlank<&Job::nodes>};
}

WordView nodeWords() {
    return {.columns = {{"Verdict", verdictWord<Part::Nodes>},
                        {"Check", check<Part::Nodes>},
                        {"Kind", kinds},
                        {"Bend made of", bendMadeOf}},
            .rows = rowsOf<&Job::nodes>,
            .blank = isBlank<&Job::nodes>};
}

}  // namespace trenchbook::views
