// The kinds of work that Labor counts and the ledger learns: one list for both.
#pragma once

#include <string>
#include <vector>

#include "trenchbook/takeoff/production.h"

namespace trenchbook::sheets {

// A line of Labor: counted by the takeoff, or typed above.
struct LaborLine {
    const char* name;
    std::string quantity;
    WorkUnit per;
    double hours;       // for one, in US units
    bool soil, access;  // which factors slow it down
    const char* where;
};

std::vector<LaborLine> laborLines();

// An amount that the takeoff gives, by its kind of work: a formula of the job's workbook.
std::string amountOf(Work work);
// Hours each are kept per US unit; a metric job counts meters, square meters and cubic meters.
std::string perUnit(WorkUnit per, double hours);
std::string unitWord(WorkUnit per);

}  // namespace trenchbook::sheets
