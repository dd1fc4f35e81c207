// Pieces that the blocks of views.h are made of; a file each makes the columns of its table.
#pragma once

#include "trenchbook/job/views.h"

#pragma GCC visibility push(hidden)
namespace trenchbook::views {

inline std::optional<double> si(std::optional<double> number) { return number; }
template <class Kind>
std::optional<double> si(const std::optional<Kind>& quantity) {
    return quantity ? std::optional(quantity->si()) : std::nullopt;
}

// A number of the row's own entry: number<&SolvedJob::runs, &SolvedRun::slope>.
template <auto rows, auto member>
std::optional<double> number(const Job&, const SolvedJob& solved, std::size_t row) {
    return si((solved.*rows)[row].*member);
}

template <auto rows>
std::size_t rowsOf(const Job& job, const SolvedJob&) {
    return (job.*rows).size();
}
template <auto rows>
bool isBlank(const Job& job, const SolvedJob&, std::size_t row) {
    return (job.*rows)[row].blank;
}

// The first two columns of words of every table.
template <Part part>
Text verdictWord(const Job&, const SolvedJob& solved, std::size_t row) {
    const std::optional<Severity> worst = verdict(solved.of(part, row));
    return worst ? severityWord(*worst) : Text::same("OK");
}
template <Part part>
Text check(const Job&, const SolvedJob& solved, std::size_t row) {
    return checkText(solved.of(part, row));
}

NumberView runNumbers();
WordView runWords();
NumberView nodeNumbers();
WordView nodeWords();
NumberView inletNumbers();
WordView inletWords();
NumberView shotNumbers();
WordView shotWords();
NumberView crossingNumbers();
WordView crossingWords();
NumberView outletNumbers();
WordView outletWords();
NumberView pumpNumbers();
WordView pumpWords();
NumberView pitNumbers();
WordView pitWords();
NumberView findingNumbers();
WordView findingWords();
NumberView countNumbers();

}  // namespace trenchbook::views
#pragma GCC visibility pop
