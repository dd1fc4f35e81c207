// Closing a job out: the estimate as it was sold goes to Close-out as values that stay, and what bills and hours cost goes
// beside it. What nobody can read from the job, the hours that it took and the hire that it cost, is typed there.
#pragma once

#include "commands/steps.h"

namespace trenchbook::sheets {

bool closeOutStands(const Book& job);

// Every line of the direct cost on Quote: goods, charges and hire by code from Takeoff and Additions, tax on goods and on
// hire, work by work from Labor, and the lump sums of Quote. Their sum is the direct cost to the cent: labor is rounded once on Quote, so the cents
// of its rows' own rounding stand with the largest of them. Throws Refused where Quote has no price, where rows stand on
// Close-out already and `replace` is not set (replaceWord is what whoever asks calls it), and without an agreed price: a job
// that is not sold has nothing to be held against.
Steps takeEstimate(const Book& job, bool replace, const char* replaceWord = "--replace");
std::string estimateTaken(const Book& job);

struct Actual {
    Steps steps{};
    std::string list{};    // what was filled in, what is still open, in lines to print
    std::size_t rows = 0;  // that got an amount
};

// Into blank cells alone: for each code what was kept and what is paid for it, held amounts left out; tax as it is paid; for
// labor whose hours are typed, hours x the rate on Labor. What was ordered and not estimated gets a row of its own with an
// estimate of 0. Throws Refused where nothing stands on Close-out or the bills cannot be read.
Actual takeActual(const Book& job);
// What to print when it is in, from the workbook computed anew.
std::string actualTaken(const Book& job, const Actual& taken);

}  // namespace trenchbook::sheets
