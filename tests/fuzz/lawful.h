// What holds of the findings of any job, however its bytes came about: they name rows that exist and rules that are listed,
// in both languages. Whatever does not hold ends the harness.
#pragma once

#include <cstdlib>
#include <span>

#include "trenchbook/job/solve.h"
#include "trenchbook/rules/standing.h"

namespace trenchbook::fuzz {

inline void require(bool law) {
    if (!law) std::abort();
}

inline std::size_t rowsOf(const Job& job, Part part) {
    switch (part) {
        case Part::Nodes:
            return job.nodes.size();
        case Part::Water:
            return job.inlets.size();
        case Part::Runs:
            return job.runs.size();
        case Part::Ground:
            return job.shots.size();
        case Part::Crossings:
            return job.crossings.size();
        case Part::Outlets:
            return job.outlets.size();
        case Part::Pump:
            return job.pumps.size();
        default:
            return 1;
    }
}

inline void lawful(const Job& job, std::span<const Finding> findings) {
    for (const Finding& finding : findings) {
        require(finding.row == Finding::whole || finding.row < rowsOf(job, finding.part));
        require(!finding.says.en.empty() && !finding.says.es.empty());
        require(findRule(finding.rule) != nullptr || findStandingRule(finding.rule) != nullptr);
    }
}

}  // namespace trenchbook::fuzz
