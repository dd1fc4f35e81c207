// Stations along printed sewers, stakes at full stations, and the laws: order never matters, a station is the
// sum of the lengths below.
#include "trenchbook/lines/stations.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <numeric>
#include <random>

#include "jobs.h"
#include "reference.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

using Names = std::vector<std::string>;
using Runs = std::vector<Run>;  // a test has a Run of its own
using jobs::runsOf;
using Lengths = std::vector<std::optional<Length>>;

// The stations that a table prints for one line, rising.
std::vector<reference::Row> printed(const char* item, const char* key) {
    std::vector<reference::Row> found;
    for (const auto& row : reference::rows("20d_levelling_and_grade.csv"))
        if (row.item == item && row.has(key)) found.push_back(row);
    std::sort(found.begin(), found.end(),
              [&](const auto& a, const auto& b) { return a.input(key) < b.input(key); });
    return found;
}

TEST(Stations, PrintedSewerEveryFiftyFeet) {
    const auto rows = printed("Sewer inverts at -1 per cent", "distance_ft");
    ASSERT_GT(rows.size(), 5u);
    // The book counts from the upper end; its last point is our outlet.
    const double all = rows.back().input("distance_ft");
    Names from, to;
    Lengths lengths;
    for (std::size_t i = 0; i + 1 < rows.size(); ++i) {
        from.push_back(rows[i].word("distance_ft"));
        to.push_back(rows[i + 1].word("distance_ft"));
        lengths.push_back(Length::feet(rows[i + 1].input("distance_ft") - rows[i].input("distance_ft")));
    }
    const auto placed = stations(Network(from, to), runsOf(lengths));
    for (std::size_t i = 0; i + 1 < rows.size(); ++i) {
        const double station = rows[i].input("distance_ft");
        reference::check("LINES.STATIONS", ("station " + rows[i].word("distance_ft") + " of 320 ft").c_str(),
                         all - placed[i]->up.feet(), station, 1e-9, rows[i].source.c_str(), "read");
        EXPECT_EQ(placed[i]->place, rows.size() - 1 - i);
    }
}

TEST(Stations, StakesStandAtThePrintedStations) {
    const auto rows = printed("Pipeline grade stakes 23.11", "station_ft");
    ASSERT_EQ(rows.size(), 7u);
    const Lengths length = {Length::feet(rows[0].input("L_ft"))};
    const auto set = stakes(Network(Names{"end"}, Names{"start"}), runsOf(length), Length::feet(100));
    ASSERT_EQ(set.size(), rows.size());
    for (std::size_t i = 0; i < rows.size(); ++i)
        reference::check("LINES.STAKES", ("stake at " + rows[i].word("station_ft") + " ft of 564").c_str(),
                         set[i].station.feet(), rows[i].input("station_ft"), 1e-9, rows[i].source.c_str(),
                         "read");
}

TEST(Stations, BranchesCountFromTheirOwnLine) {
    // Main A-B-Out, branch C-B: same stations at B, places by line name.
    const Network lines(Names{"A", "B", "C"}, Names{"B", "Out", "B"});
    const Lengths lengths = {Length::feet(30), Length::feet(20), Length::feet(15)};
    Runs runs = runsOf(lengths);
    runs[0].line = "main", runs[1].line = " MAIN ", runs[2].line = "branch";
    const auto placed = stations(lines, runs);
    EXPECT_DOUBLE_EQ(placed[0]->up.feet(), 50);
    EXPECT_DOUBLE_EQ(placed[2]->up.feet(), 35);
    EXPECT_DOUBLE_EQ(placed[2]->down.feet(), 20);
    EXPECT_EQ(placed[0]->place, 2u);
    EXPECT_EQ(placed[1]->place, 1u);
    EXPECT_EQ(placed[2]->place, 1u);
}

TEST(Stations, AMissingLengthSpoilsWhatLiesUpstream) {
    const Network lines(Names{"A", "B", "X"}, Names{"B", "Out", "Ditch"});
    const Lengths lengths = {Length::feet(30), std::nullopt, Length::feet(7)};
    const auto placed = stations(lines, runsOf(lengths));
    EXPECT_FALSE(placed[0]);
    EXPECT_FALSE(placed[1]);
    EXPECT_DOUBLE_EQ(placed[2]->up.feet(), 7);
}

TEST(Stations, AStationIsTheSumOfTheLengthsBelow) {
    EXPECT_TRUE(rc::check("sum of the lengths below, in any order of rows", [] {
        const auto feet = *rc::gen::nonEmpty(rc::gen::container<std::vector<int>>(rc::gen::inRange(1, 300)));
        std::vector<std::size_t> order(feet.size());
        std::iota(order.begin(), order.end(), 0u);
        std::shuffle(
            order.begin(), order.end(),
            std::mt19937(static_cast<unsigned>(feet.size() * 7 + static_cast<std::size_t>(feet[0]))));
        Names from, to;
        Lengths lengths;
        for (const std::size_t i : order) {
            from.push_back(std::to_string(i));
            to.push_back(std::to_string(i + 1));
            lengths.push_back(Length::feet(feet[i]));
        }
        const auto placed = stations(Network(from, to), runsOf(lengths));
        for (std::size_t row = 0; row < order.size(); ++row) {
            const double below =
                std::accumulate(feet.begin() + static_cast<std::ptrdiff_t>(order[row]), feet.end(), 0.0);
            RC_ASSERT(std::fabs(placed[row]->up.feet() - below) < 1e-9 * (1 + below));
            RC_ASSERT(placed[row]->place == feet.size() - order[row]);
        }
    }));
}

TEST(Stations, RefusesStepsThatMakeNoSense) {
    const Network line(Names{"A"}, Names{"Out"});
    const Lengths length = {Length::feet(100)};
    EXPECT_THROW(stakes(line, runsOf(length), Length()), Error);
    EXPECT_THROW(stakes(line, runsOf(length), Length::feet(-1)), Error);
    EXPECT_THROW(stakes(line, runsOf(length), Length::feet(0.001)), Error);
    EXPECT_THROW(stations(line, runsOf({})), Error);
}

}  // namespace
}  // namespace trenchbook
