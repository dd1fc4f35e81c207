// Findings as rows, and how many rows of each sheet have which verdict.
#include <algorithm>

#include "job/view_parts.h"

namespace trenchbook::views {
namespace {

constexpr std::size_t partCount = static_cast<std::size_t>(Part::Pit) + 1;

std::size_t findingRows(const Job&, const SolvedJob& solved) { return solved.findings.size(); }
bool never(const Job&, const SolvedJob&, std::size_t) { return false; }

// The unit that a finding is told in: of what was measured, or of the limit alone.
Unit unitOf(const Job&, const SolvedJob& solved, std::size_t row) {
    const Finding& finding = solved.findings[row];
    return finding.measured ? finding.measured->unit : finding.allowed ? finding.allowed->unit : Unit::Number;
}
std::optional<double> rowOf(const Job&, const SolvedJob& solved, std::size_t row) {
    const std::size_t named = solved.findings[row].row;
    return named == Finding::whole ? std::nullopt : std::optional(static_cast<double>(named + 1));
}
template <auto member>
std::optional<double> amount(const Job&, const SolvedJob& solved, std::size_t row) {
    const std::optional<Amount>& amount = solved.findings[row].*member;
    return amount ? std::optional(amount->si) : std::nullopt;
}

Text severity(const Job&, const SolvedJob& solved, std::size_t row) {
    return severityWord(solved.findings[row].severity);
}
Text sheet(const Job&, const SolvedJob& solved, std::size_t row) {
    return partWord(solved.findings[row].part);
}
Text rule(const Job&, const SolvedJob& solved, std::size_t row) {
    return Text::same(solved.findings[row].rule);
}
Text says(const Job&, const SolvedJob& solved, std::size_t row) { return solved.findings[row].says; }
Text unit(const Job& job, const SolvedJob& solved, std::size_t row) {
    const Finding& finding = solved.findings[row];
    if (!finding.measured && !finding.allowed) return {};
    const Unit of = unitOf(job, solved, row);
    if (of == Unit::YesNo || of == Unit::Share || of == Unit::Slope) return {};
    return info(of).written(job.units);
}
// The name that the row goes by on its sheet.
Text name(const Job& job, const SolvedJob& solved, std::size_t row) {
    const Finding& finding = solved.findings[row];
    if (finding.part == Part::Pit) return Text::same(job.pit.node);
    if (finding.row == Finding::whole) return {};
    const auto segment = [](const auto& run) { return Text::same(run.from + "-" + run.to); };
    switch (finding.part) {
        case Part::Nodes:
            return Text::same(job.nodes[finding.row].name);
        case Part::Water:
            return Text::same(job.inlets[finding.row].name);
        case Part::Runs:
            return segment(job.runs[finding.row]);
        case Part::Ground:
            return segment(job.shots[finding.row]);
        case Part::Crossings:
            return segment(job.crossings[finding.row]);
        case Part::Outlets:
            return Text::same(job.outlets[finding.row].node);
        case Part::Pump:
            return Text::same(job.pumps[finding.row].node);
        default:
            return {};
    }
}

// For lists: the sheet and the name in front of the sentence; what is said of the job stands alone.
Text listed(const Job& job, const SolvedJob& solved, std::size_t row) {
    const Finding& finding = solved.findings[row];
    if (finding.part == Part::Job) return finding.says;
    const Text named = name(job, solved, row);
    return partWord(finding.part) + (named.empty() ? Text() : Text::same(" ") + named) + Text::same(": ") +
           finding.says;
}

std::size_t countRows(const Job&, const SolvedJob&) { return partCount + 1; }

// The rows of a table that something stands in; Job and Pit are one row each.
template <class Rows>
std::size_t filled(const Rows& rows) {
    return static_cast<std::size_t>(
        std::count_if(rows.begin(), rows.end(), [](const auto& row) { return !row.blank; }));
}
std::size_t filledRows(const Job& job, Part part) {
    switch (part) {
        case Part::Job:
            return 1;
        case Part::Nodes:
            return filled(job.nodes);
        case Part::Water:
            return filled(job.inlets);
        case Part::Runs:
            return filled(job.runs);
        case Part::Ground:
            return filled(job.shots);
        case Part::Crossings:
            return filled(job.crossings);
        case Part::Outlets:
            return filled(job.outlets);
        case Part::Pump:
            return filled(job.pumps);
        case Part::Pit:
            return job.pit.node.empty() ? 0 : 1;
    }
    return 0;
}

bool counts(std::size_t row, Part part) { return row == partCount || row == static_cast<std::size_t>(part); }

// Rows by their verdict, each counted once at its worst: NO, NOT JUDGED or CHECK.
struct Verdicts {
    std::size_t with = 0;   // rows that have `wanted`, what is said of a whole table among them
    std::size_t notOk = 0;  // rows with any of them
};
Verdicts verdicts(const SolvedJob& solved, std::size_t row, Severity wanted) {
    Verdicts count;
    // Findings of a row stand together, the worst first.
    for (std::size_t i = 0; i < solved.findings.size(); ++i) {
        const Finding& finding = solved.findings[i];
        const bool first = i == 0 || solved.findings[i - 1].part != finding.part ||
                           solved.findings[i - 1].row != finding.row;
        if (!first || !counts(row, finding.part) || finding.severity > Severity::Check) continue;
        if (finding.severity == wanted) ++count.with;
        const bool alone = finding.part == Part::Job || finding.part == Part::Pit;
        if (alone || finding.row != Finding::whole) ++count.notOk;
    }
    return count;
}
template <Severity wanted>
std::optional<double> rowCount(const Job&, const SolvedJob& solved, std::size_t row) {
    return static_cast<double>(verdicts(solved, row, wanted).with);
}
std::optional<double> okCount(const Job& job, const SolvedJob& solved, std::size_t row) {
    double all = 0;
    for (std::size_t part = 0; part < partCount; ++part)
        if (counts(row, static_cast<Part>(part)))
            all += static_cast<double>(filledRows(job, static_cast<Part>(part)));
    return all - static_cast<double>(verdicts(solved, row, Severity::No).notOk);
}
template <Severity wanted>
std::optional<double> findingCount(const Job&, const SolvedJob& solved, std::size_t row) {
    return static_cast<double>(std::count_if(
        solved.findings.begin(), solved.findings.end(),
        [row](const Finding& finding) { return finding.severity == wanted && counts(row, finding.part); }));
}

}  // namespace

NumberView findingNumbers() {
    return {.columns = {{"Row", Unit::Number, rowOf, false},
                        {"Measured", Unit::Number, amount<&Finding::measured>, false, true},
                        {"Allowed", Unit::Number, amount<&Finding::allowed>, false, true}},
            .rows = findingRows,
            .blank = never,
            .unitOf = unitOf};
}
WordView findingWords() {
    return {.columns = {{"Severity", severity},
                        {"Sheet", sheet},
                        {"Name", name},
                        {"Rule", rule},
                        {"Unit", unit},
                        {"Says", says},
                        {"Listed", listed}},
            .rows = findingRows,
            .blank = never};
}
NumberView countNumbers() {
    return {.columns = {{"NO", Unit::Number, rowCount<Severity::No>},
                        {"NOT JUDGED", Unit::Number, rowCount<Severity::NotJudged>},
                        {"CHECK", Unit::Number, rowCount<Severity::Check>},
                        {"OK", Unit::Number, okCount},
                        {"Cautions", Unit::Number, findingCount<Severity::Caution>},
                        {"Savings", Unit::Number, findingCount<Severity::Saving>}},
            .rows = countRows,
            .blank = never};
}

}  // namespace trenchbook::views
