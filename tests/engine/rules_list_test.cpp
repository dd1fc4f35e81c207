// Every rule as it stands: key, default, unit, range, in the checked-in list beside this file. A default that moves
// moves results: the list changes with it, and so does docs/changes.md. With TRENCHBOOK_WRITE_RULES=1 the list is
// written anew.
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <sstream>
#include <string>

#include "trenchbook/rules/rules.h"

namespace {

using namespace trenchbook;

const std::string path = TRENCHBOOK_REFERENCE_DIR "/../engine/rules.txt";

std::string unitWord(Unit unit) {
    switch (unit) {
        case Unit::Number:
            return "number";
        case Unit::Share:
            return "share";
        case Unit::Slope:
            return "slope";
        default:
            return info(unit).us.en + " | " + info(unit).metric.en;
    }
}

std::string listed() {
    std::ostringstream list;
    list.precision(10);
    for (const Rule& rule : rules())
        list << rule.key << ": " << rule.value << " " << unitWord(rule.unit) << ", " << rule.least << " to "
             << rule.greatest << '\n';
    return list.str();
}

TEST(RulesList, DefaultsUnitsAndRangesStand) {
    if (std::getenv("TRENCHBOOK_WRITE_RULES") != nullptr) std::ofstream(path) << listed();
    std::ifstream file(path);
    std::stringstream kept;
    kept << file.rdbuf();
    EXPECT_EQ(listed(), kept.str());
}

}  // namespace
