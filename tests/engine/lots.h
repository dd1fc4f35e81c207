// The lots of tests/lots: site notes, and what is written about them there.
//
// A case is a lot as measured, or with some of its cells changed: its twin and others. See tests/lots/README.md.
#pragma once

#include <map>
#include <ostream>
#include <string>
#include <vector>

#include "trenchbook/job/job.h"

namespace trenchbook::lots {

// One row of verdict.csv, figures.csv or changes.csv: the field under each heading.
using Line = std::map<std::string, std::string>;

struct Lot {
    std::string name;  // of its folder
    std::vector<Line> verdicts, figures, changes;
};
std::vector<Lot> allLots();

struct Case {
    Lot lot;
    std::string name;  // "measured", "twin"…
    std::vector<Line> verdicts() const;
    std::vector<Line> figures() const;
    std::vector<Line> changes() const;
    std::string overall() const;  // "NO", "OK"…
};
inline void PrintTo(const Case& which, std::ostream* out) { *out << which.lot.name << ", " << which.name; }
std::vector<Case> cases(const Lot& lot);
std::vector<Case> allCases();

// As the engine's reader reads its site notes, with what the workbook works out of the soak test beside them.
Job jobOf(const Case& which);

}  // namespace trenchbook::lots
