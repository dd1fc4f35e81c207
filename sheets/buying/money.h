// The sheets from the price list to the paid bill, and what they share.
#pragma once

#include <string>
#include <vector>

#include "kit/judged.h"
#include "kit/said_count.h"
#include "templates/job.h"

namespace trenchbook::sheets {

Sheet orderSheet(const JobSize&);
Sheet proposalSheet(const JobSize&);
Sheet cancellationSheet(const JobSize&);
Sheet accountSheet(const JobSize&);
Sheet datesSheet(const JobSize&);
Sheet invoiceSheet(const JobSize&);
Sheet careSheet(const JobSize&);
Sheet billsSheet(const JobSize&);
Sheet closeOutSheet(const JobSize&);

// The price list's columns, for the job and for the price book, and what their Check says. `today` is the date that a
// price's age is counted to, `oldest` the days that a price is trusted.
std::vector<Column> priceColumns();
// A row without a price is no fault before it is `needed`, a condition.
void judgePrices(Table& table, const std::string& today, const std::string& oldest,
                 const std::string& needed);
// Goods that small drains are mostly made of, as rows of those columns: prices, suppliers and dates are the user's.
std::vector<std::vector<std::string>> usualRows(const std::vector<Column>& columns);

// Groups of prices that no supplier delivers: they have lines of their own on Quote and stand on no order.
inline const std::vector<std::string> notOrdered = {"equipment", "disposal", "permit", "subcontract"};

// True for what is sold by weight or volume and ordered in parts of a unit: a condition on the unit's cell.
inline std::string soldLoose(const std::string& unit) {
    return "ISNUMBER(MATCH(LOWER(TRIM(" + unit +
           "));{\"ton\";\"tons\";\"t\";\"tonne\";\"cu yd\";\"cy\";\"yd\";\"m3\";\"cu ft\"};0))";
}

// How much bigger the job's soil lies loose than in the ground; loam unless Job says clay or sand.
inline constexpr const char* swellOfSoil =
    "IF(ISNUMBER(SEARCH(\"clay\";soil));{swell.clay};IF(AND(ISNUMBER(SEARCH(\"sand\";soil));"
    "NOT(ISNUMBER(SEARCH(\"loam\";soil))));{swell.sand};{swell.loam}))";

// Nested IFs: the first condition that holds gives its answer.
inline std::string firstOf(const Cases& cases, const std::string& otherwise) {
    std::string formula, closing;
    for (const auto& [condition, answer] : cases) {
        formula += "IF(" + condition + ";" + answer + ";";
        closing += ")";
    }
    return formula + otherwise + closing;
}

// Cases for a Check: an input cell that holds an error of its own.
inline Cases ownErrors(const std::vector<std::string>& headings) {
    Cases cases;
    for (const std::string& heading : headings)
        cases.emplace_back("ISERROR([" + heading + "])", "\"NO: " + heading + " holds an error\"");
    return cases;
}

// The value of `column` in the row of table Prices that has this code; "" when there is none.
inline std::string priceOf(const std::string& code, const std::string& column) {
    return "IFERROR(INDEX([Prices." + column + "];MATCH(" + code + ";[Prices.Code];0))&\"\";\"\")";
}

// Words for a cell that should hold a number and holds text: what to type instead, where the text shows it.
inline std::string numberToType(const std::string& cell) {
    return "IFERROR(\": type \"&VALUE(TRIM(SUBSTITUTE(" + cell + ";\"$\";\"\")));\"\")";
}
// A case for a field that may stay blank: text or an error in it would count as 0.
inline Case notANumber(const std::string& words, const std::string& cell) {
    return {"NOT(OR(ISBLANK(" + cell + ");ISNUMBER(" + cell + ")))",
            "\"NO: " + words + " is not a number\"&" + numberToType(cell)};
}

// What Job and Quote say of fields that hold what cannot be used, by sheet and label, and of unusual numbers.
inline constexpr const char
    *fieldsUnread =
        "\"NO: cannot be used, a number, a date or a word of the list belongs there: \"&"
        "LEFT(fields_unread;150)",
    *fieldsUnusual = "\"CHECK: not what is usual there: \"&LEFT(fields_unread;150)";

// A case for a field of yes or no, which may stay blank: any other word would count as no.
inline Case yesOrNo(const std::string& words, const std::string& cell) {
    return {"NOT(OR(ISBLANK(" + cell + ");" + cell + "=\"yes\";" + cell + "=\"no\"))",
            "\"NO: " + words + " is yes or no\""};
}

// A hidden field that only other formulas read.
inline Field hidden(const std::string& label, const std::string& name, const std::string& formula) {
    return {.label = label,
            .name = name,
            .kind = Kind::Computed,
            .format = show::general,
            .value = "=" + formula,
            .helper = true};
}

// An amount that is worked out.
inline Field moneyField(const char* label, const char* name, const std::string& formula,
                        const char* note = "") {
    return {.label = label,
            .name = name,
            .kind = Kind::Computed,
            .format = show::money,
            .measure = Measure::Dollars,
            .value = "=" + formula,
            .note = note};
}

// Rows for typed holidays on Dates.
inline constexpr int holidayRows = 14;

// Whether a check starts with this word, which is longer in one language than in the other.
inline std::string startsWith(const std::string& cells, const std::string& word) {
    const std::string quoted = "\"" + word + "\"";
    return "LEFT(" + cells + ";LEN(" + quoted + "))=" + quoted;
}
// What a check says behind the word in front of it.
inline std::string behindColon(const std::string& cell) {
    return "MID(" + cell + ";FIND(\":\";" + cell + ")+2;200)";
}

// How many rows of a Check column start with this word.
inline std::string countOf(const std::string& column, const std::string& word) {
    return "SUMPRODUCT(IFERROR(" + startsWith("[" + column + "]", word) + ";1))";
}

}  // namespace trenchbook::sheets
