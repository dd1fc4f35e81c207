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

const Text& partWord(Part part) {
    static const Text words[] = {{"Job", "Obra"},        {"Nodes", "Nodos"},    {"Water", "Agua"},
                                 {"Runs", "Tramos"},     {"Ground", "Terreno"}, {"Crossings", "Cruces"},
                                 {"Outlets", "Salidas"}, {"Pump", "Bomba"},     {"Pit", "Pozo de roca"}};
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
