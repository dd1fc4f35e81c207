// The kinds of work that Labor counts and the ledger learns: one list for both.
#pragma once

#include <string>
#include <vector>

#include "trenchbook/takeoff/production.h"

namespace trenchbook::sheets {

// A line of Labor: counted by the takeoff, or typed above.
struct LaborLine {
    const char* name;
    std::string key;  // of the work on Workings; none where the quantity is typed above
    WorkUnit per;
    double hours;       // for one, in US units
    bool soil, access;  // which factors slow it down
    const char* where;
};

std::vector<LaborLine> laborLines();

// An amount that the takeoff gives, by the key of its work (a formula's part): found by name, so that a file outlives an engine
// that counts more kinds of work.
std::string amountOf(const std::string& key);
// Hours each are kept per US unit; a metric job counts meters, square meters and cubic meters.
std::string perUnit(WorkUnit per, double hours);
std::string unitWord(WorkUnit per);

}  // namespace trenchbook::sheets
