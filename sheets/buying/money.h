// The sheets from the price list to the paid bill, and what they share.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "templates/job.h"

namespace trenchbook::sheets {

Sheet orderSheet(const JobSize&);
Sheet proposalSheet(const JobSize&);
Sheet accountSheet(const JobSize&);
Sheet invoiceSheet(const JobSize&);
Sheet careSheet(const JobSize&);
Sheet billsSheet(const JobSize&);
Sheet billWorkingsSheet(const JobSize&);
Sheet closeOutSheet(const JobSize&);

// The price list's columns, for the job and for the price book. `today` is the date that a price's age is counted to,
// `oldest` the days that a price is trusted.
std::vector<Column> priceColumns(const std::string& today, const std::string& oldest);

// Groups of prices that no supplier delivers: they have lines of their own on Quote and stand on no order.
inline const std::vector<std::string> notOrdered = {"equipment", "disposal", "permit", "subcontract"};

// How much bigger the job's soil lies loose than in the ground; loam unless Job says clay or sand.
inline constexpr const char* swellOfSoil =
    "IF(ISNUMBER(SEARCH(\"clay\";soil));{swell.clay};IF(AND(ISNUMBER(SEARCH(\"sand\";soil));"
    "NOT(ISNUMBER(SEARCH(\"loam\";soil))));{swell.sand};{swell.loam}))";

// Nested IFs: the first condition that holds gives its answer.
inline std::string firstOf(const std::vector<std::pair<std::string, std::string>>& cases,
                           const std::string& otherwise) {
    std::string formula, closing;
    for (const auto& [condition, answer] : cases) {
        formula += "IF(" + condition + ";" + answer + ";";
        closing += ")";
    }
    return formula + otherwise + closing;
}

// Cases for a Check: an input cell that holds an error of its own.
inline std::vector<std::pair<std::string, std::string>> ownErrors(const std::vector<std::string>& headings) {
    std::vector<std::pair<std::string, std::string>> cases;
    for (const std::string& heading : headings)
        cases.emplace_back("ISERROR([" + heading + "])", "\"NO: " + heading + " holds an error\"");
    return cases;
}
inline std::vector<std::pair<std::string, std::string>> operator+(
    std::vector<std::pair<std::string, std::string>> first,
    const std::vector<std::pair<std::string, std::string>>& more) {
    first.insert(first.end(), more.begin(), more.end());
    return first;
}

// The value of `column` in the row of table Prices that has this code; "" when there is none.
inline std::string priceOf(const std::string& code, const std::string& column) {
    return "IFERROR(INDEX([Prices." + column + "];MATCH(" + code + ";[Prices.Code];0))&\"\";\"\")";
}

// How many rows of a Check column start with this word.
inline std::string countOf(const std::string& column, const std::string& word) {
    return "SUMPRODUCT(IFERROR(LEFT([" + column + "];" + std::to_string(word.size()) + ")=\"" + word +
           "\";1))";
}

}  // namespace trenchbook::sheets
