// Between a job and the ledger: a closed job goes in, rates that the closed jobs teach come back. Values with a date and the
// number of jobs, never a link.
#pragma once

#include <string>

#include "commands/steps.h"

namespace trenchbook::sheets {

struct Learned {
    Steps steps{};
    std::string list{};    // what was learned, in lines to print, in the job's language
    std::size_t rows = 0;  // that got a rate
};

// The learned rates of a computed ledger into the job's Labor. Throws Refused where one of the two is no such workbook, or
// where the add-in did not compute the ledger.
Learned learnFrom(const Book& ledger, const Book& job, double today);

// The job's sums into a free row of the ledger's Jobs, what Close-out has bought by code into Items, and its hours that name a
// work of Labor into Hours: the amounts are those of Labor now. Throws Refused where the job has no name, stands in the ledger
// already, or has rows on Close-out whose cost is not in.
Learned closeInto(const Book& ledger, const Book& job, double finished);

}  // namespace trenchbook::sheets
