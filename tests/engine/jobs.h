// Small jobs for the tests: runs and nodes by their numbers in feet, inches, gallons a minute.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "trenchbook/lines/node.h"
#include "trenchbook/lines/run.h"

namespace trenchbook::jobs {

// Runs that know nothing but their lengths, and the pipe where one is given.
inline std::vector<Run> runsOf(const std::vector<std::optional<Length>>& lengths,
                               const char* pipe = nullptr) {
    std::vector<Run> runs;
    for (const std::optional<Length>& length : lengths) {
        Run& run = runs.emplace_back();
        run.length = length;
        if (pipe != nullptr) run.pipe = stockPipe(pipe);
    }
    return runs;
}

inline Unusable unusable(const char* heading, const char* typed) {
    const std::string said(typed);
    return {heading,
            said,
            {std::string(heading) + " is \"" + said + "\"", std::string(heading) + " es \"" + said + "\""}};
}

// A node that turns, and takes a cable or not.
inline Node turning(std::string name, std::optional<Angle> turn, bool opening) {
    Node node{.name = std::move(name), .turn = turn, .kindGiven = true, .blank = false};
    if (!turn) node.unusable.push_back(unusable("Turn", "abc"));
    node.kinds.add(opening ? NodeKind::Cleanout : NodeKind::Bend);
    return node;
}

}  // namespace trenchbook::jobs
