// Ordinary lots, judged by hand before they were worked out: what keeps a row from OK is told, and nothing else is.
#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>
#include <set>

#include "lots.h"
#include "trenchbook/job/views.h"

namespace trenchbook {
namespace {

using lots::Case;
using lots::Line;
using lots::Lot;

struct Told {
    std::string severity, sheet, name, rule, says;
    bool expected = false;
};
std::ostream& operator<<(std::ostream& out, const Told& told) {
    return out << told.severity << " " << told.sheet << " " << told.name << " [" << told.rule << "] "
               << told.says;
}

std::vector<Told> allTold(const Job& job, const SolvedJob& solved) {
    const WordView& view = wordView(Viewed::Findings);
    const auto word = [&](std::size_t row, const char* heading) {
        return view.columns.at(*view.place(heading)).of(job, solved, row).en;
    };
    std::vector<Told> all;
    for (std::size_t row = 0; row < view.rows(job, solved); ++row)
        all.push_back({word(row, "Severity"), word(row, "Sheet"), word(row, "Name"), word(row, "Rule"),
                       word(row, "Says")});
    return all;
}

std::size_t rank(const std::string& severity) {
    for (std::size_t i = 0; i < 5; ++i)
        if (severityWord(static_cast<Severity>(i)).en == severity) return i;
    return 5;  // OK
}

// The rows of a sheet by name, and the block that answers for them.
std::pair<Viewed, std::map<std::string, std::size_t>> rowsOf(const Job& job, const std::string& sheet) {
    std::map<std::string, std::size_t> named;
    const auto all = [&named](const auto& rows, const auto& name) {
        for (std::size_t row = 0; row < rows.size(); ++row) named[name(rows[row])] = row;
    };
    const auto segment = [](const auto& row) { return row.from + "-" + row.to; };
    if (sheet == "Runs") return all(job.runs, segment), std::pair{Viewed::Runs, named};
    if (sheet == "Crossings") return all(job.crossings, segment), std::pair{Viewed::Crossings, named};
    if (sheet == "Nodes")
        return all(job.nodes, [](const Node& node) { return node.name; }), std::pair{Viewed::Nodes, named};
    if (sheet == "Water")
        return all(job.inlets, [](const JobInlet& inlet) { return inlet.name; }),
               std::pair{Viewed::Water, named};
    if (sheet == "Outlets")
        return all(job.outlets, [](const Outlet& outlet) { return outlet.node; }),
               std::pair{Viewed::Outlets, named};
    if (sheet == "Pump")
        return all(job.pumps, [](const Pump& pump) { return pump.node; }), std::pair{Viewed::Pump, named};
    return {Viewed::Pit, {{job.pit.node, 0}}};
}

// Open on every lot here until work begins: grounds are typed, not shot, and nobody has called yet.
bool openOnEveryLot(const Told& told) {
    return told.severity == "NOT JUDGED" && told.sheet == "Job" &&
           (told.says == "Levels: rod readings" || told.says == "Job: locate ticket (call 811)");
}

class Lots : public testing::TestWithParam<Case> {};

TEST_P(Lots, AreJudgedAsAnOldHandDoes) {
    const Case& lot = GetParam();
    const Job job = lots::jobOf(lot);
    const SolvedJob solved = solve(job);
    std::vector<Told> all = allTold(job, solved);
    EXPECT_EQ(std::erase_if(all, openOnEveryLot), 2u);

    for (const Line& line : lot.verdicts()) {
        if (line.at("Sheet") == "all") continue;
        bool found = false;
        for (Told& told : all)
            if (told.severity == line.at("Verdict") && told.sheet == line.at("Sheet") &&
                told.name == line.at("Row") && told.rule == line.at("Rule") &&
                told.says.find(line.at("Words")) != told.says.npos)
                found = told.expected = true;
        EXPECT_TRUE(found) << "not told: " << line.at("Verdict") << " " << line.at("Sheet") << " "
                           << line.at("Row") << " [" << line.at("Rule") << "] … " << line.at("Words") << " …";
    }
    std::size_t worst = 5;
    for (const Told& told : all) {
        const bool keepsFromOk = rank(told.severity) <= rank("CHECK");
        if (keepsFromOk) worst = std::min(worst, rank(told.severity));
        EXPECT_TRUE(told.expected || !keepsFromOk) << "told and not expected: " << told;
    }
    EXPECT_EQ(worst, rank(lot.overall()));
    if (HasFailure())
        for (const Told& told : all) std::cout << "  " << told << "\n";
}

TEST_P(Lots, HaveTheFiguresWorkedByHand) {
    const Case& lot = GetParam();
    const Job job = lots::jobOf(lot);
    const SolvedJob solved = solve(job);
    for (const Line& line : lot.figures()) {
        const auto [viewed, named] = rowsOf(job, line.at("Sheet"));
        const NumberView& view = numberView(viewed);
        const auto place = view.place(line.at("Heading"));
        const auto row = named.find(line.at("Row"));
        const std::string what = line.at("Sheet") + " " + line.at("Row") + " " + line.at("Heading");
        ASSERT_TRUE(place && row != named.end()) << what;
        const NumberColumn& column = view.columns[*place];
        const std::optional<double> si = column.of(job, solved, row->second);
        ASSERT_TRUE(si) << what;
        EXPECT_NEAR(*si / info(column.unit).si(UnitSystem::US), std::stod(line.at("Value")),
                    std::stod(line.at("Within")))
            << what << ": " << line.at("By hand");
    }
}

INSTANTIATE_TEST_SUITE_P(Of, Lots, testing::ValuesIn(lots::allCases()),
                         [](const testing::TestParamInfo<Case>& which) {
                             std::string name = which.param.lot.name + "_" + which.param.name;
                             std::erase_if(name, [](char c) { return c == '-' || c == ' '; });
                             return name;
                         });

// A name misspelled in one of the lists would leave its line unread.
TEST(LotsList, EachLineBelongsToACaseAndAFile) {
    for (const Lot& lot : lots::allLots()) {
        std::set<std::string> known;
        for (const Case& one : lots::cases(lot)) EXPECT_TRUE(known.insert(one.name).second) << lot.name;
        for (const std::vector<Line>* lines : {&lot.verdicts, &lot.figures, &lot.changes})
            for (const Line& line : *lines) EXPECT_TRUE(known.contains(line.at("Lot"))) << lot.name;
        for (const Line& change : lot.changes)
            EXPECT_TRUE(std::filesystem::exists(std::string(TRENCHBOOK_LOTS) + "/" + lot.name + "/notes/" +
                                                change.at("File") + ".csv"))
                << lot.name << " " << change.at("File");
    }
}

TEST(LotsList, EachNoHasATwinWithOneMeasuredCellChangedThatPasses) {
    const std::vector<Lot> all = lots::allLots();
    EXPECT_EQ(all.size(), 16u);
    std::size_t refused = 0;
    for (const Lot& lot : all) {
        const std::vector<Case> cases = lots::cases(lot);
        ASSERT_EQ(cases.at(0).name, "measured") << lot.name;
        if (cases[0].overall() != "NO") continue;
        ++refused;
        const Case twin{lot, "twin"};
        EXPECT_EQ(twin.overall(), "OK") << lot.name;
        std::set<std::string> values;
        std::set<std::pair<std::string, std::string>> columns;
        for (const Line& change : twin.changes()) {
            values.insert(change.at("Value"));
            columns.insert({change.at("File"), change.at("Column")});
        }
        EXPECT_EQ(values.size(), 1u) << lot.name;
        EXPECT_EQ(columns.size(), 1u) << lot.name;
        // Readings of one soak test have to agree: they are one measurement.
        const bool soakTest = columns.begin()->first == "soak";
        EXPECT_TRUE(soakTest || twin.changes().size() == 1) << lot.name;
    }
    EXPECT_EQ(refused, 15u);
}

}  // namespace
}  // namespace trenchbook
