#include "trenchbook/rules/finding.h"

#include <algorithm>

namespace trenchbook {

const Text& severityWord(Severity severity) {
    static const Text words[] = {{"NO", "NO"},
                                 {"NOT JUDGED", "SIN JUZGAR"},
                                 {"CHECK", "REVISE"},
                                 {"caution", "cuidado"},
                                 {"saving", "ahorro"}};
    return words[static_cast<std::size_t>(severity)];
}

// The sheets keep their names in a Spanish job.
const Text& partWord(Part part) {
    static const Text words[] = {Text::same("Job"),     Text::same("Nodes"),  Text::same("Water"),
                                 Text::same("Runs"),    Text::same("Ground"), Text::same("Crossings"),
                                 Text::same("Outlets"), Text::same("Pump"),   Text::same("Pit")};
    return words[static_cast<std::size_t>(part)];
}

std::optional<Severity> verdict(std::span<const Finding> findings) {
    std::optional<Severity> worst;
    for (const Finding& finding : findings)
        if (finding.severity <= Severity::Check && (!worst || finding.severity < *worst))
            worst = finding.severity;
    return worst;
}

void sortFindings(std::vector<Finding>& findings) {
    std::stable_sort(findings.begin(), findings.end(),
                     [](const Finding& a, const Finding& b) { return a.severity < b.severity; });
}

Text checkText(std::span<const Finding> findings) {
    Text said = verdict(findings) ? Text() : Text::same("OK");
    for (const Finding& finding : findings)
        said += (said.empty() ? Text() : Text::same("; ")) + severityWord(finding.severity) +
                Text::same(": ") + finding.says;
    return said;
}

}  // namespace trenchbook
