// Whole jobs worked out: the demo lot row by row, losses and water by hand, what spoils what.
#include "trenchbook/job/solve.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>

#include "demo_lot.h"
#include "jobs.h"
#include "reference.h"
#include "trenchbook/job/read.h"
#include "trenchbook/pipe/circular.h"
#include "trenchbook/pipe/size_class.h"

namespace trenchbook {
namespace {

// Instrument 105.12 ft over the slab's 100.00 + 5.12; past the turning point (rod 5.74) 99.38 + 4.96 = 104.34. A ground
// level is the instrument less the rod of levels.csv.
const std::map<std::string, double> rods = {
    {"S1", 5.32}, {"S2", 5.42}, {"S3", 5.57}, {"S4", 5.82}, {"S5", 6.02}, {"S6", 6.22},
    {"S7", 6.82}, {"S8", 7.90}, {"P1", 6.17}, {"P2", 6.07}, {"G1", 4.94}, {"G2", 5.24},
    {"G3", 5.54}, {"G4", 5.84}, {"G5", 6.14}, {"G6", 6.44}, {"G7", 7.39}};

Job demoLot() {
    JobTables tables;
    tables.facts = demoTable("job");
    tables.nodes = demoTable("nodes");
    tables.water = demoTable("water");
    tables.runs = demoTable("runs");
    tables.crossings = demoTable("crossings");
    tables.outlets = demoTable("outlets");
    tables.pit = demoTable("pit");
    Job job = readJob(tables, UnitSystem::US);
    for (Node& node : job.nodes)
        if (!node.blank)
            node.ground = Length::feet((node.name[0] == 'G' ? 104.34 : 105.12) - rods.at(node.name));
    return job;
}

struct DemoRow {
    const char* from;
    double up, down, coverUp, coverDown, gpm, waterUp, waterDown;
};
// As the workbook's own formulas worked the lot out, before the engine knew the job: feet, inches of cover, gpm. The
// tee's rim stood 0.1 ft under water then, at 97.7; now the garden line's water is as much lower as the tee's is.
const std::vector<DemoRow> demoRows = {
    {"S1", 97.9706388888889, 97.6789722222222, 15.8573333333335, 18.1573333333334, 23.5636363636364,
     98.0652625912726, 97.8261306729618},
    {"S2", 97.6789722222222, 97.3560555555556, 18.1573333333334, 20.2323333333333, 56.7272727272727,
     97.8261306729618, 97.5032140062951},
    {"S3", 97.3560555555556, 97.1060555555556, 20.2323333333333, 20.2323333333334, 92.8519480519481,
     97.5469419732764, 97.2969419732764},
    {"S4", 97.1060555555556, 96.8768888888889, 20.2323333333334, 20.5823333333333, 121.651948051948,
     97.3277171194045, 97.0985504527379},
    {"S5", 96.8643888888889, 96.6768888888889, 20.4823333333334, 20.3323333333335, 121.651948051948,
     97.083293928904, 96.895793928904},
    {"S6", 96.6768888888889, 96.388, 20.5823333333335, 16.8490000000001, 121.651948051948, 96.8945518564274,
     96.6056629675385},
    {"S7", 96.388, 96.1, 16.8490000000001, 7.34499999999998, 121.651948051948, 96.6010181007063,
     96.3130181007063},
    {"P1", 97.6427222222222, 97.4760555555555, 11.5923333333334, 14.7923333333334, 28.8, 97.7635756047149,
     97.5969089380483},
    {"P2", 97.4760555555555, 97.2677222222222, 14.7923333333334, 20.2923333333335, 28.8, 97.5969089380483,
     97.3885756047149},
    {"G1", 96.0895833333333, 95.8708333333333, 35.6300000000001, 34.655, 23.6883116883117, 98.0294836892029,
     98.0087829818325},
    {"G2", 95.8708333333333, 95.69375, 34.655, 33.1800000000001, 45.0077922077922, 98.0087829818325,
     97.9738376503517},
    {"G3", 95.69375, 95.4958333333333, 33.1800000000001, 31.9549999999999, 45.0077922077922, 97.9738376503517,
     97.9170275958583},
    {"G4", 95.4958333333333, 95.2875, 31.9549999999999, 30.8550000000001, 60.4051948051948, 97.9170275958583,
     97.84297446959},
    {"G5", 95.2875, 95.1625, 30.8550000000001, 28.7550000000001, 76.3948051948052, 97.84297446959,
     97.7719065298997},
    {"G6", 95.1625, 95.1, 28.7550000000001, 18.105, 76.3948051948052, 97.7719065298997, 97.7},
};

// The garden line runs full from its tee up. Its downspouts G5, G4 and G2 have a riser wye each, which takeoff buys:
// 0.60 velocity heads of the pipe that goes on (the run of a tee), for all that lies upstream.
Length riserWyesBelow(const std::string& from, bool itself) {
    const double gpm[] = {0, 0, 45.0077922077922, 0, 60.4051948051948, 76.3948051948052};
    const Area area = fullArea(stockPipe("4 SDR35").bore);
    Length sum;
    for (const int place : {2, 4, 5}) {
        const int at = from[1] - '0';
        if (from[0] != 'G' || place < at || (place == at && !itself)) continue;
        const double velocity = (Flow::gpm(gpm[place]) / area).si();
        sum += Length::metres(0.60 * velocity * velocity / (2 * 9.80665));
    }
    return sum;
}

// How much lower the garden line's water stands since its tee does.
Length lowered(const SolvedJob& solved, const std::string& from) {
    return from[0] == 'G' ? Length::feet(97.7) - *solved.pit.bubbleLevel : Length();
}

// 380 sq ft run off at once in half an inch of five minutes, 6 in/hr: 190 cu ft in an hour, 7.48052 gal each.
TEST(Solve, TravelCountsEveryInletFromTheFirstRowOn) {
    Job job = jobs::sound();
    job.facts.returnYears = 10;
    job.peak = PeakAsked{.rain = RainTable::parse(",10\n5-min,0.5\n60-min,2", Length::inches(1))};
    const double gpm = 190 * 7.48052 / 60;
    EXPECT_NEAR(solve(job).runs[0].flow->gpm(), gpm, 1e-4 * gpm);
    job.inlets.push_back(jobs::roof("A", 400));
    EXPECT_NEAR(solve(job).runs[0].flow->gpm(), 2 * gpm, 2e-4 * gpm);
    // A row of its own minutes: in ten the rain of the table is gentler.
    job.inlets[1].time = Duration::minutes(10);
    EXPECT_LT(solve(job).runs[0].flow->gpm(), 2 * gpm * 0.999);
}

TEST(Solve, TheDemoLotRowByRow) {
    const Job job = demoLot();
    const SolvedJob solved = solve(job);
    std::size_t row = 0;
    for (const DemoRow& was : demoRows) {
        while (job.runs[row].blank) ++row;
        const SolvedRun& is = solved.runs[row];
        ASSERT_EQ(job.runs[row].from, was.from);
        ASSERT_TRUE(is.invertUp && is.coverDown && is.flow && is.water) << was.from;
        EXPECT_NEAR(is.invertUp->feet(), was.up, 1e-9) << was.from;
        EXPECT_NEAR(is.invertDown->feet(), was.down, 1e-9) << was.from;
        EXPECT_NEAR(is.coverUp->inches(), was.coverUp, 1e-9) << was.from;
        EXPECT_NEAR(is.coverDown->inches(), was.coverDown, 1e-9) << was.from;
        // The old sum took gpm = C x in/hr x sq ft / 96.25, exact.
        EXPECT_NEAR(is.flow->gpm(), was.gpm, 1e-9 * was.gpm) << was.from;
        EXPECT_NEAR(is.water->levelUp.feet(),
                    was.waterUp + (riserWyesBelow(was.from, true) - lowered(solved, was.from)).feet(), 1e-6)
            << was.from;
        EXPECT_NEAR(is.water->levelDown.feet(),
                    was.waterDown + (riserWyesBelow(was.from, false) - lowered(solved, was.from)).feet(),
                    1e-6)
            << was.from;
        ++row;
    }
    EXPECT_EQ(demoRows.size(), 15u);
    // Roofs of the garden line: (400 + 360 + 260 + 270) sq ft x 0.95.
    EXPECT_NEAR(solved.pit.areaTimesC->squareFeet(), 1225.5, 1e-9);
    // Rim 97.00. 76.395 gpm = 0.17021 cfs through a 9 in grate, 0.4 open, half of it blocked: orifice of 0.44179 x 0.2 =
    // 0.088358 sq ft, (0.17021 / (0.6 x 0.088358))^2 / 64.35 = 0.16019 ft (the weir, 3.33 x 1.1781 ft: 0.1235); the turn
    // upwards, 1.80 x (0.17021 / 0.0861785)^2 / 64.35 = 0.10912 ft.
    EXPECT_NEAR(solved.pit.bubbleLevel->feet(), 97 + 0.16019 + 0.10912, 2e-4);
}

TEST(Solve, WaterAndFreeboardAtTheNodesOfTheDemoLot) {
    const Job job = demoLot();
    const SolvedJob solved = solve(job);
    // As before, and of the garden line higher by its riser wyes.
    const std::map<std::string, double> water = {{"S1", 98.1631477855331}, {"S4", 97.3885756047149},
                                                 {"S8", 96.3130181007063}, {"P1", 97.8822256552144},
                                                 {"G1", 98.0294836892029}, {"G6", 97.7719065298997}};
    std::size_t compared = 0;
    for (std::size_t row = 0; row < job.nodes.size(); ++row) {
        const auto was = water.find(job.nodes[row].name);
        if (was == water.end()) continue;
        ++compared;
        const double level =
            was->second + (riserWyesBelow(was->first, true) - lowered(solved, was->first)).feet();
        ASSERT_TRUE(solved.nodes[row].water) << was->first;
        EXPECT_NEAR(solved.nodes[row].water->feet(), level, 1e-6) << was->first;
        EXPECT_EQ(solved.nodes[row].freeboard.has_value(), was->first != "S8");
        if (const auto freeboard = solved.nodes[row].freeboard) {
            EXPECT_NEAR(freeboard->feet(), job.nodes[row].rim()->feet() - level, 1e-6);
        }
    }
    EXPECT_EQ(compared, water.size());
}

TEST(Solve, FindsNothingAboutASoundJob) {
    const SolvedJob solved = solve(jobs::sound());
    for (std::size_t row = 0; row < 2; ++row) EXPECT_EQ(jobs::check(solved, Part::Runs, row), "OK");
    for (std::size_t row = 0; row < 3; ++row) EXPECT_EQ(jobs::check(solved, Part::Nodes, row), "OK");
    // By hand: 96 + 40 x 1.5 %, and again.
    EXPECT_NEAR(solved.runs[1].invertUp->feet(), 96.6, 1e-12);
    EXPECT_NEAR(solved.runs[0].invertUp->feet(), 97.2, 1e-12);
    // 0.95 x 6 in/hr x 400 sq ft / 96.25.
    EXPECT_NEAR(solved.runs[0].flow->gpm(), 23.6883116883117, 1e-9);
    EXPECT_NEAR(solved.runs[0].station->up.feet(), 80, 1e-9);
    EXPECT_NEAR(solved.runs[1].since->length.feet(), 40, 1e-9);
    EXPECT_NEAR(solved.runs[0].spareFall->feet(), 40 * (0.015 - 0.125 / 12), 1e-9);
}

// The demo lot's runs lie at 1/8 in/ft, just what the rule asks of 4 in pipe: not a hair over, not a hair under.
TEST(Solve, FallThatIsJustAskedLeavesNone) {
    const SolvedJob solved = solve(demoLot());
    std::size_t exact = 0;
    for (const SolvedRun& run : solved.runs) {
        ASSERT_TRUE(run.spareFall);
        const double spare = run.spareFall->feet();
        EXPECT_TRUE(spare == 0 || std::fabs(spare) >= 1e-9) << spare;
        if (spare == 0) ++exact;
    }
    EXPECT_GE(exact, 8u);
}

// Loss coefficients of the sources in fittings.h: entrance 0.5, bend of 45 degrees 0.5625, run of a tee 0.60.
TEST(Solve, EveryPieceAtANodeCostsTheWater) {
    const auto lossAt = [](const char* kinds, double turn, bool joined) {
        Job job = jobs::sound();
        job.nodes[1] = jobs::node("B", kinds, 98.4);
        if (turn > 0) job.nodes[1].turn = Angle::degrees(turn);
        if (joined) {
            job.nodes.push_back(jobs::node("C", "basin", 99));
            job.runs.push_back(jobs::run("C", "B", 20, "4 SDR35", Slope::percent(1.5)));
        }
        return solve(job).runs[1].lossK;
    };
    EXPECT_DOUBLE_EQ(solve(jobs::sound()).runs[0].lossK, 1.5) << "at the head";
    EXPECT_DOUBLE_EQ(lossAt("basin", 45, true), 1.5);
    EXPECT_DOUBLE_EQ(lossAt("channel", 0, false), 1.5);
    EXPECT_DOUBLE_EQ(lossAt("bend", 45, false), 0.5625);
    EXPECT_DOUBLE_EQ(lossAt("bend", 67.5, false), 0.84375);
    EXPECT_DOUBLE_EQ(lossAt("crossing", 0, false), 0);
    EXPECT_DOUBLE_EQ(lossAt("downspout", 0, false), 0.60) << "its riser comes in through a wye";
    EXPECT_DOUBLE_EQ(lossAt("cleanout", 0, false), 0.60);
    EXPECT_DOUBLE_EQ(lossAt("cleanout + downspout", 0, false), 1.20);
    EXPECT_DOUBLE_EQ(lossAt("wye", 0, true), 0.60);
    EXPECT_DOUBLE_EQ(lossAt("bend", 45, true), 0.5625 + 0.60) << "what joins comes in through a wye";
    EXPECT_DOUBLE_EQ(lossAt("wye + downspout", 0, true), 1.20);
}

TEST(Solve, TheTeeStandsByItsRimOrAsTyped) {
    Job job = jobs::sound();
    job.nodes[2] = jobs::node("Out", "tee", 97);
    job.outlets[0].openShare = 1;
    // 23.688 gpm = 0.052779 cfs over the rim of a 3.975 in riser, a weir of 3.33 x pi x 0.33125 ft: 0.06146 ft; the
    // turn, 1.80 x (0.052779 / 0.0861785)^2 / 64.35 = 0.01049 ft.
    const double over = 0.06146 + 0.01049;
    EXPECT_NEAR(solve(job).runs[1].water->levelDown.feet(), 97 + over, 2e-4);
    job.nodes[2].opening = Length::feet(96.8);
    EXPECT_NEAR(solve(job).runs[1].water->levelDown.feet(), 96.8 + over, 2e-4);
    job.runs[1].outletWater = Length::feet(97.3);
    EXPECT_NEAR(solve(job).runs[1].water->levelDown.feet(), 97.3, 1e-9);
}

// What drains to a pit is a sum of areas: neither the rain nor the time of travel changes it.
TEST(Solve, AreaIntoThePitIsTheSumOfItsInlets) {
    Job job = jobs::sound();
    job.nodes[2] = jobs::node("Out", "tee", 97);
    job.pit.node = "Out";
    job.inlets.push_back(jobs::roof("B", 600));
    job.inlets[0].time = Duration::minutes(30);
    const std::vector<TableCell> rain = {TableCell{}, 10.0, "5-min", 0.5, "60-min", 2.0};
    const SolvedJob atOnce = solve(job);
    job.peak = PeakAsked{.rain = RainTable::parse(rain, 2, Length::inches(1))};
    const SolvedJob travelled = solve(job);
    EXPECT_NEAR(atOnce.pit.areaTimesC->squareFeet(), 950, 1e-9);
    EXPECT_NEAR(travelled.pit.areaTimesC->squareFeet(), 950, 1e-9);
    EXPECT_LT(travelled.runs[1].flow->gpm(), 0.8 * atOnce.runs[1].flow->gpm());
    EXPECT_EQ(travelled.runs[1].flow, travelled.runs[1].peak->flow);
}

TEST(Solve, ARowSpoilsWhatHangsOnItAndNothingElse) {
    Job job = jobs::sound();
    job.nodes.push_back(jobs::node("C", "cleanout", 99));
    job.nodes.push_back(jobs::node("Sea", "bank", 97));
    job.outlets.push_back(jobs::outletAt("Sea"));
    job.runs.push_back(jobs::run("C", "Sea", 20, "4 SDR35", Slope::percent(2)));
    job.runs[2].outletLevel = Length::feet(96.6);
    job.runs[1].slope.reset();
    const SolvedJob solved = solve(job);
    EXPECT_FALSE(solved.runs[1].invertUp);
    EXPECT_FALSE(solved.runs[0].invertUp);
    EXPECT_EQ(solved.runs[0].invertFault.kind, Fault::Kind::Waiting);
    EXPECT_TRUE(solved.runs[0].flow && solved.runs[1].flow) << "water needs no slope to add up";
    EXPECT_TRUE(solved.runs[2].water);
    EXPECT_EQ(jobs::check(solved, Part::Runs, 1), "NOT JUDGED: Slope is missing");
    EXPECT_EQ(jobs::check(solved, Part::Runs, 0), "NOT JUDGED: no invert: waiting on row 2 (B-Out)");
    job.firstRunRow = 7;
    EXPECT_EQ(jobs::check(solve(job), Part::Runs, 0), "NOT JUDGED: no invert: waiting on row 8 (B-Out)");
}

TEST(Solve, FindingsStandByPartAndRowTheWorstFirst) {
    Job job = jobs::sound();
    job.runs[0].surfaceUp.reset();
    job.runs[0].slope = Slope::percent(0.4);
    job.nodes[0].kinds = {};
    job.nodes[0].kindGiven = false;
    const SolvedJob solved = solve(job);
    for (std::size_t i = 1; i < solved.findings.size(); ++i) {
        const Finding &a = solved.findings[i - 1], &b = solved.findings[i];
        EXPECT_LE(std::tuple(a.part, a.row, a.severity), std::tuple(b.part, b.row, b.severity));
    }
    const auto of = solved.of(Part::Runs, 0);
    ASSERT_GE(of.size(), 2u);
    EXPECT_EQ(of[0].severity, Severity::No);
    EXPECT_EQ(of.back().severity, Severity::NotJudged);
    EXPECT_TRUE(solved.of(Part::Runs, 1).empty());
    EXPECT_EQ(solved.of(Part::Nodes, 0).size(), 1u);
}

TEST(Solve, ReadsASizeWithAFraction) {
    EXPECT_EQ(stockPipe("1-1/2 SCH40").nominal, 1.5);
    EXPECT_STREQ(leastSlopeKey(stockPipe("1-1/2 SCH40").nominal), "slope.min.2in");
}

}  // namespace
}  // namespace trenchbook
