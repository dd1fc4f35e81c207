#include "trenchbook/ground/level_pool.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <map>

#include "reference.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

using namespace reference;

PoolRating rating(double feet, double cubicFeet, double cfs) {
    return {Length::feet(feet), Volume::cubicFeet(cubicFeet), Flow::cfs(cfs)};
}

// Rows of a printed routing: states of ours by hour, then each printed quantity against them.
void checkRouting(const std::vector<Row>& printed, const std::vector<PoolRating>& table, double stepHours) {
    std::map<double, double> inflow;
    for (const Row& row : printed) inflow[row.input("t_h")] = row.input("inflow_cfs");
    std::vector<PoolInflow> points;
    for (const auto& [hour, cfs] : inflow) points.push_back({Duration::hours(hour), Flow::cfs(cfs)});
    const std::vector<PoolStep> states = routePool(points, table);
    std::map<double, PoolStep> at;
    for (std::size_t i = 0; i < points.size(); ++i)
        at[std::round(points[i].at.hours() * 1e6) / 1e6] = states[i];
    for (const Row& row : printed) {
        const PoolStep& ours = at.at(row.input("t_h"));
        if (row.output == "outflow") check("PIT.ROUTE", row, ours.outflow.cfs());
        if (row.output == "storage") check("PIT.ROUTE", row, ours.storage.cubicFeet());
        if (row.output == "S/dt+O/2")
            check("PIT.ROUTE", row, ours.storage.cubicFeet() / (stepHours * 3600) + ours.outflow.cfs() / 2);
    }
}

TEST(LevelPool, FollowsTheDetentionExampleRowByRow) {
    // The example interpolates its own printed rating.
    std::map<double, PoolRating> table;
    std::vector<Row> routing;
    for (const Row& row : rows("09a_hds2_detention_routing.csv")) {
        if (row.item == "Riser weir rating, L=1.6 ft")
            table[row.input("h_ft")].outflow = Flow::cfs(row.number());
        if (row.item == "Storage function 34000 h^1.027, L=1.6")
            table[row.input("h_ft")].storage = Volume::cubicFeet(row.number());
        if (row.item == "Storage-indication routing, L=1.6 ft") routing.push_back(row);
    }
    std::vector<PoolRating> rowsOf;
    for (auto& [feet, row] : table) rowsOf.push_back({Length::feet(feet), row.storage, row.outflow});
    ASSERT_EQ(rowsOf.size(), 15u);
    ASSERT_EQ(routing.size(), 66u);
    checkRouting(routing, rowsOf, 0.1);
}

TEST(LevelPool, FollowsTheCulvertExamplesRowByRow) {
    for (const std::string size : {"24", "36"}) {
        std::map<double, PoolRating> table;
        std::vector<Row> routing;
        for (const Row& row : rows("09b_hds2_culvert_routing.csv")) {
            if (row.item == "Example 7.2 rating" && row.output == "storage")
                table[row.input("depth_ft")].storage = Volume::cubicFeet(row.number());
            if (row.item == "Example 7.2 rating" && row.output == size + "-in discharge")
                table[row.input("depth_ft")].outflow = Flow::cfs(row.number());
            if (row.item == "Culvert storage routing, " + size + " in") routing.push_back(row);
        }
        std::vector<PoolRating> rowsOf;
        for (auto& [feet, row] : table) rowsOf.push_back({Length::feet(feet), row.storage, row.outflow});
        ASSERT_EQ(rowsOf.size(), 10u);
        ASSERT_EQ(routing.size(), 39u);
        checkRouting(routing, rowsOf, 0.5);
    }
}

TEST(LevelPool, FollowsReservoirsWithKnownStorageLaws) {
    std::vector<PoolInflow> inflow;
    for (const Row& row : rows("20c_levelpool_routing.csv"))
        if (row.output == "inflow")
            inflow.push_back({Duration::hours(row.input("t_h")), Flow::cubicMetresPerSecond(row.number())});
    // The sheet's flood goes on at its last value.
    for (double hour = inflow.back().at.hours() + 1; hour <= 20; ++hour)
        inflow.push_back({Duration::hours(hour), inflow.back().flow});
    const auto route = [&](auto storageInHours) {
        std::vector<PoolRating> table;
        for (double out = 100; out <= 1000; out += 0.05)
            table.push_back({Length::metres(out), Volume::cubicMetres(3600 * storageInHours(out)),
                             Flow::cubicMetresPerSecond(out)});
        return routePool(inflow, table);
    };
    const std::vector<PoolStep> linear = route([](double out) { return 2 * out; });
    const std::vector<PoolStep> square = route([](double out) { return 0.02 * out * out; });
    int checked = 0;
    for (const Row& row : rows("20c_levelpool_routing.csv")) {
        if (row.output != "outflow") continue;
        const auto hour = static_cast<std::size_t>(row.input("t_h"));
        check("PIT.ROUTE", row, (row.has("K_h") ? linear : square).at(hour).outflow.cubicMetresPerSecond());
        ++checked;
    }
    EXPECT_EQ(checked, 42);
}

RC_GTEST_PROP(LevelPool, BalancesOverEveryStep, ()) {
    std::vector<PoolRating> table = {{Length{}, Volume{}, Flow{}}};
    for (int i = 1; i < 12; ++i)
        table.push_back({table.back().depth + Length::metres(*rc::gen::inRange(1, 50) / 100.0),
                         table.back().storage + Volume::cubicMetres(*rc::gen::inRange(200, 500)),
                         table.back().outflow + Flow::litresPerSecond(*rc::gen::inRange(0, 300))});
    std::vector<PoolInflow> inflow;
    double minute = 0;
    for (int i = 0; i < 30; ++i) {
        inflow.push_back({Duration::minutes(minute), Flow::litresPerSecond(*rc::gen::inRange(0, 500))});
        minute += *rc::gen::inRange(1, 6);
    }
    const std::vector<PoolStep> states = routePool(inflow, table);
    for (std::size_t i = 1; i < states.size(); ++i) {
        const Duration step = inflow[i].at - inflow[i - 1].at;
        const Volume in = (inflow[i].flow + inflow[i - 1].flow) / 2 * step;
        const Volume out = (states[i].outflow + states[i - 1].outflow) / 2 * step;
        RC_ASSERT(std::fabs((states[i].storage - states[i - 1].storage - in + out).si()) < 1e-9);
        RC_ASSERT(states[i].depth >= table.front().depth && states[i].depth <= table.back().depth);
    }
}

std::string refusal(const std::vector<PoolInflow>& inflow, const std::vector<PoolRating>& table) {
    try {
        routePool(inflow, table);
        return "accepted";
    } catch (const Error& error) {
        return error.argument() + ": " + error.sentence(Language::English);
    }
}

TEST(LevelPool, SaysWhatIsAllowed) {
    const std::vector<PoolRating> table = {rating(0, 0, 0), rating(1, 100, 1), rating(2, 300, 2)};
    const auto inflow = [](std::vector<double> cfs) {
        std::vector<PoolInflow> points;
        for (std::size_t i = 0; i < cfs.size(); ++i)
            points.push_back({Duration::minutes(static_cast<double>(i)), Flow::cfs(cfs[i])});
        return points;
    };
    EXPECT_EQ(refusal(inflow({0, 1, 1}), table), "accepted");
    EXPECT_EQ(refusal(inflow({0, 10, 10}), table),
              "storage: at minute 2 the water rises above the table's last row: continue the table.");
    EXPECT_EQ(refusal(inflow({0, 1, -1}), table), "inflow: inflow in row 3; allowed: 0 or more.");
    EXPECT_EQ(refusal({{Duration::minutes(5), Flow{}}, {Duration::minutes(5), Flow{}}}, table),
              "minute: minute in row 2; allowed: each row above the one before.");
    EXPECT_EQ(refusal(inflow({0, 1}), {rating(0, 0, 0)}),
              "depth: depth is a table of 1 row; allowed: at least two rows.");
    EXPECT_EQ(refusal(inflow({0, 1}), {rating(0, 0, 0), rating(0, 100, 1)}),
              "depth: depth in row 2; allowed: each row above the one before.");
    EXPECT_EQ(refusal(inflow({0, 1}), {rating(0, 10, 0), rating(1, 5, 1)}),
              "storage: storage in row 2; allowed: 0 or more, and no row below the one before.");
    EXPECT_EQ(refusal(inflow({0, 1}), {rating(0, 0, 2), rating(1, 5, 1)}),
              "outflow: outflow in row 2; allowed: 0 or more, and no row below the one before.");
    // A table that begins with a flow drains below its first row.
    EXPECT_TRUE(refusal(inflow({0, 0}), {rating(0, 10, 1), rating(1, 500, 2)})
                    .starts_with("storage: at minute 1 more"));
}

}  // namespace
}  // namespace trenchbook
