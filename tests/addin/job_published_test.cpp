// Published examples laid out as the tables of a job: what they print comes out of the blocks of the whole job.
#include <algorithm>
#include <cmath>

#include "../engine/books.h"
#include "job_tables.h"
#include "trenchbook/core/units.h"

namespace trenchbook::addin {
namespace {

using namespace harness;
using reference::check;
using reference::Row;

// The books' Q = C i A takes an acre inch an hour for one cubic foot a second; it is 1.00833.
constexpr double acre = 43560, acreFactor = 1 / 1.0083333333333333;
constexpr const char* acreReason = "the source takes an acre inch an hour for 1 cfs";

std::vector<Row> printed(const char* file, const char* item, const char* output = "") {
    std::vector<Row> found;
    for (const Row& row : reference::rows(file))
        if (row.item == item && (*output == '\0' || row.output == output)) found.push_back(row);
    EXPECT_FALSE(found.empty()) << item;
    return found;
}
double cfs(double gpm) { return Flow::gpm(gpm).cfs(); }

// The tables by their place among the arguments; those that are not given stay empty.
struct Job {
    Range facts = table(2, {"Rain", 4.0, "Duration", 5.0});
    Range nodes = table(3, {"Node", "Kind", "Ground"});
    Range water = table(2, {"Inlet", "Node"});
    Range runs = {}, crossings = {}, swale = {}, pit = {}, rules = {}, rain = {}, peak = {};

    std::vector<Value> values(const std::string& units = "US") const {
        std::vector<Value> all = {facts, nodes, water, runs};
        all.resize(13);
        const std::pair<std::size_t, const Range*> more[] = {{4, &crossings}, {5, &swale}, {6, &pit},
                                                             {8, &rules},     {9, &rain},  {10, &peak}};
        for (const auto& [place, range] : more)
            if (!range->cells.empty()) all[place] = *range;
        all.emplace_back(units);
        return all;
    }
    // The same with what the functions of the takeoff ask beside it.
    std::vector<Value> taken(const Range& prices, const Range& terms, const std::string& units = "US") const {
        std::vector<Value> all = values(units);
        all.pop_back();
        const auto given = [](const Range& range) {
            return range.cells.empty() ? Value(Nothing{}) : Value(range);
        };
        for (const Value& more : {given(prices), Value(Nothing{}), given(terms), Value(units)})
            all.push_back(more);
        return all;
    }
};

// A sewer at 1 % with its invert printed every 50 ft, built up from its lower end as the job is.
TEST(JobPublished, SewerInvertsEveryFiftyFeet) {
    std::vector<Row> stations = printed("20d_levelling_and_grade.csv", "Sewer inverts at -1 per cent");
    std::sort(stations.begin(), stations.end(),
              [](const Row& a, const Row& b) { return a.input("distance_ft") < b.input("distance_ft"); });
    ASSERT_GT(stations.size(), 2U);
    Job job;
    std::vector<Cell> runs = {"From", "To", "Length", "Pipe", "Slope", "Outlet level"};
    std::vector<Cell> nodes = {"Node", "Kind", "Ground"};
    for (std::size_t i = 0; i < stations.size(); ++i) {
        nodes.insert(nodes.end(), {stations[i].word("distance_ft"), "", 340.0});
        if (i + 1 == stations.size()) break;
        const bool last = i + 2 == stations.size();
        runs.insert(runs.end(), {stations[i].word("distance_ft"), stations[i + 1].word("distance_ft"),
                                 stations[i + 1].input("distance_ft") - stations[i].input("distance_ft"),
                                 "8 SDR35", "1%", last ? Cell(stations.back().number()) : Cell("")});
    }
    job.runs = table(6, runs);
    job.nodes = table(3, nodes);
    const Numbers answers = numbers("JOB.RUNS", job.values());
    const Numbers points = numbers("JOB.NODES", job.values());
    for (std::size_t i = 0; i + 1 < stations.size(); ++i) {
        check("JOB.RUNS", stations[i], cell(answers, i, at(Viewed::Runs, "Invert up")));
        check("JOB.NODES", stations[i], cell(points, i, at(Viewed::Nodes, "Invert")));
    }
}

// Sewers 1.1 and 1.2 flow into 2.1, whose own inlet takes longest: three runs and their catchments.
TEST(JobPublished, StormSewerWithTravelTime) {
    const char* file = "02c_mays_goodwin_storm_sewer.csv";
    const auto one = [&](const std::string& item, const char* output) {
        return printed(file, item.c_str(), output).front();
    };
    const std::vector<std::string> names = {"1.1", "1.2", "2.1"};
    Job job;
    std::vector<Cell> runs = {"From", "To", "Length", "Pipe", "Slope", "Outlet level"};
    std::vector<Cell> water = {"Inlet", "Node", "Yard area", "Yard C", "Minutes"};
    std::vector<std::pair<double, double>> rain;
    for (const std::string& name : names) {
        const std::string sewer = "Goodwin Avenue sewer " + name, land = "Goodwin Avenue catchment " + name;
        const Row flow = one(sewer, "Qp");
        rain.emplace_back(flow.input("td_min"), flow.input("i_inh"));
        runs.insert(
            runs.end(),
            {"n" + name, name == "2.1" ? "n3.1" : "n2.1", one(sewer, "sewer flow time").input("L_ft"),
             std::round(one(sewer, "pipe size used").number() * 12),
             one(sewer, "computed diameter").input("S_ftft"), name == "2.1" ? Cell(700.0) : Cell("")});
        water.insert(water.end(),
                     {"to " + name, "n" + name, one(land, "area").number() * acre,
                      one(land, "runoff coefficient").number(), one(land, "inlet time").number()});
    }
    std::sort(rain.begin(), rain.end());
    std::vector<Cell> depths = {"", 2.0, 100.0};
    for (const auto& [minutes, intensity] : rain) {
        const double depth = intensity * minutes / 60;
        depths.insert(depths.end(), {plain(minutes) + "-min", depth, depth});
    }
    job.facts = table(2, {"Return period", 2.0, "Duration", 12.0});
    job.runs = table(6, runs);
    job.water = table(5, water);
    job.nodes = table(3, {"Node", "Kind", "Ground", "n1.1", "", 731.08, "n1.2", "", 725.48, "n2.1", "",
                          724.27, "n3.1", "outlet", 722.0});
    job.rain = table(3, depths);
    job.peak = table(2, {"Count travel time", "yes", "Travel at", "area", "Roughness", 0.014});
    const Numbers answers = numbers("JOB.RUNS", job.values());
    for (std::size_t i = 0; i < names.size(); ++i) {
        const std::string sewer = "Goodwin Avenue sewer " + names[i];
        check("JOB.RUNS", one(sewer, "Qp"), cfs(cell(answers, i, at(Viewed::Runs, "Flow"))), acreFactor,
              acreReason);
        check("JOB.RUNS", one(sewer, "flow velocity 4Q/(pi D^2)"),
              cell(answers, i, at(Viewed::Runs, "Travels at")), acreFactor, acreReason);
    }
}

// 5.7 acres drain to one inlet: a third of it on each of the three kinds of ground that Water has.
TEST(JobPublished, PeakFlowAtAnInlet) {
    int checked = 0;
    for (const Row& row : reference::rows("02b_hds2_tc_and_rational_examples.csv")) {
        if (row.output != "Q" || !row.has("A_ac") || row.input("A_ac") > 10) continue;
        const double third = row.input("A_ac") * acre / 3, c = row.input("C");
        Job job;
        job.facts = table(2, {"Rain", row.input("i_inh"), "Duration", 15.0});
        job.runs = table(5, {"From", "To", "Length", "Pipe", "Slope", "A", "Out", 40.0, "12 SDR35", "1%"});
        job.water = table(8, {"Inlet", "Node", "Roof area", "Roof C", "Paved area", "Paved C", "Yard area",
                              "Yard C", "field", "A", third, c, third, c, third, c});
        check("JOB.WATER", row, cfs(cell(numbers("JOB.WATER", job.values()), 0, at(Viewed::Water, "Flow"))),
              acreFactor, acreReason);
        ++checked;
    }
    EXPECT_EQ(checked, 2);
}

// The printed channel as the swale at the end of a line that brings nothing.
TEST(JobPublished, DepthInASwale) {
    const Row row =
        printed("12d_normal_critical_depth_examples.csv", "Sturm Example 4.1, trapezoid", "normal depth")
            .front();
    Job job;
    job.runs = table(6, {"From", "To", "Length", "Pipe", "Slope", "Outlet level", "A", "Out", 40.0, "4 SDR35",
                         "1%", 100.0});
    job.nodes = table(3, {"Node", "Kind", "Ground", "A", "", 104.0, "Out", "outlet", 102.0});
    job.swale = table(7, {"Outlet", "Other flow", "Bottom", "Side slope", "Deep", "Slope", "Roughness", "Out",
                          Flow::cfs(row.input("Q_cfs")).gpm(), row.input("b_ft"), row.input("z"), 12.0,
                          row.input("S0"), reference::bookRoughness(row)});
    check("JOB.OUTLETS", row,
          cell(numbers("JOB.OUTLETS", job.values()), 0, at(Viewed::Outlets, "Water depth")), 1,
          reference::manningReason);
}

// Pits that drain through bottom and sides; and one of standing water alone, 70 by 7 ft, all voids.
TEST(JobPublished, PitsHoldAndDrain) {
    const char* file = "20b_drywell_trench_sizing.csv";
    Job job;
    job.runs = table(
        6, {"From", "To", "Length", "Pipe", "Slope", "Outlet level", "A", "T", 20.0, "4 SDR35", "1%", 30.0});
    job.nodes = table(3, {"Node", "Kind", "Ground", "A", "", 33.0, "T", "tee", 32.0});
    job.facts = table(2, {"Rain", 100.0, "Duration", 5.0});
    int checked = 0;
    for (const Row& row : printed(file, "Time to drain, bottom and sides")) {
        if (row.kind != "computed") continue;
        // The sides of a rectangle with this area and way around.
        const double half = row.input("perim_m") / 4;
        const double spread = std::sqrt(half * half - row.input("A_m2"));
        job.pit = table(2, {"Tee at node", "T", "Length", half + spread, "Width", half - spread, "Rock depth",
                            row.input("d_m"), "Soil over it", 0.3, "Voids", row.input("n"), "Side share", 1.0,
                            "Design soak rate", row.input("f_mmh")});
        const Numbers answers = numbers("JOB.PIT", job.values("metric"));
        check("JOB.PIT", row, cell(answers, 0, at(Viewed::Pit, "Hours to empty")));
        ++checked;
    }
    EXPECT_EQ(checked, 3);
    const Row held = printed(file, "Provided storage").front();
    const Row bottom = printed(file, "Trench provided").front();
    EXPECT_EQ(held.input("A_ft2"), bottom.number());
    job.facts = table(2, {"Rain", 4.0, "Duration", 5.0});
    job.pit = table(2, {"Tee at node", "T", "Length", bottom.input("length_ft"), "Width",
                        bottom.input("width_ft"), "Rock depth", held.input("d_ft"), "Soil over it", 1.0,
                        "Voids", 1.0, "Side share", 0.0, "Design soak rate", 1.0});
    check("JOB.PIT", held, cell(numbers("JOB.PIT", job.values()), 0, at(Viewed::Pit, "Water it holds")));
}

// Three end areas 20 m apart: cuts of a trench one meter wide. The bottom lies the pipe's wall under the invert
// (ASTM D3034, 4 in SDR 35: 0.120 in).
TEST(JobPublished, EarthBetweenEndAreas) {
    const Row row = printed("20e_earthwork.csv", "Volume from three areas, average end area").front();
    ASSERT_EQ(row.word("A_m2"), "40,50,80");
    ASSERT_EQ(row.input("L_m"), 20);
    const double wall = 0.120 * 0.0254;
    Job job;
    job.runs = table(
        7,
        {"From",    "To", "Length", "Pipe", "Slope", "Outlet level", "Trench width", "A",       "B",  20.0,
         "4 SDR35", "1%", "",       1000.0, "B",     "Out",          20.0,           "4 SDR35", "1%", 100.0,
         1000.0});
    job.nodes = table(3, {"Node", "Kind", "Ground", "A", "", 100.4 - wall + 40, "B", "", 100.2 - wall + 50,
                          "Out", "outlet", 100 - wall + 80});
    job.rules = table(2, {"bedding.depth", 0.0});
    const Numbers runs = numbers("JOB.RUNS", job.values("metric"));
    EXPECT_NEAR(cell(runs, 0, at(Viewed::Runs, "Cut up")), 40, 1e-9);
    const Numbers dug = numbers("JOB.DIG", job.taken(Range{}, Range{}, "metric"));
    constexpr std::size_t soil = 1;
    check("JOB.DIG", row, cell(dug, 0, soil) + cell(dug, 1, soil));
}

// Grade stakes every 100 ft, from a hub at each: the printed cut is from the hub down to the invert.
TEST(JobPublished, CutsAtGradeStakes) {
    std::vector<Row> stakes = printed("20d_levelling_and_grade.csv", "Pipeline grade stakes 23.11", "cut");
    std::sort(stakes.begin(), stakes.end(),
              [](const Row& a, const Row& b) { return a.input("station_ft") > b.input("station_ft"); });
    ASSERT_GT(stakes.size(), 2U);
    const double whole = stakes.front().input("L_ft");
    const double grade = (stakes.front().input("inv0") - stakes.front().input("inv_end")) / whole;
    Job job;
    std::vector<Cell> runs = {"From", "To", "Length", "Pipe", "Slope", "Outlet level"};
    std::vector<Cell> nodes = {"Node", "Kind", "Ground"};
    for (std::size_t i = 0; i < stakes.size(); ++i) {
        const Row& stake = stakes[i];
        nodes.insert(nodes.end(),
                     {"at " + stake.word("station_ft"), "", stake.input("HI") - stake.input("rod")});
        if (i > 0)
            runs.insert(runs.end(),
                        {"at " + stake.word("station_ft"), "at " + stakes[i - 1].word("station_ft"),
                         stakes[i - 1].input("station_ft") - stake.input("station_ft"), "8 SDR35", grade,
                         i == 1 ? Cell(stake.input("inv_end")) : Cell("")});
    }
    job.runs = table(6, runs);
    job.nodes = table(3, nodes);
    job.rules = table(2, {"bedding.depth", 0.0});
    const Range terms = table(2, {"Stake every", 100.0, "Benchmark", stakes.front().input("HI")});
    // Row, station, ground, invert, trench bottom, top of pipe, cut; ground less invert is the book's cut.
    const Numbers staked = numbers("JOB.STAKES", job.taken(Range{}, terms));
    const Texts crew = texts("JOB.CREW", job.taken(Range{}, terms));
    const auto atStation = [&](double station) {
        std::size_t row = 0;
        while (row < crew.rows() && std::fabs(std::stod(word(crew, row, 0)) - station) > 0.051) ++row;
        return row;
    };
    int checked = 0;
    for (const Row& stake : stakes)
        for (std::size_t row = 0; row < staked.rows(); ++row) {
            if (std::fabs(cell(staked, row, 1) - (whole - stake.input("station_ft"))) > 1e-6) continue;
            check("JOB.STAKES", stake, cell(staked, row, 2) - cell(staked, row, 3));
            // The rod on the trench bottom reads the depth below the instrument: on the invert, less the wall (ASTM
            // D3034, 8 in SDR 35: 0.240 in), it is the hub's reading and the cut. The page shows two decimals.
            const std::size_t shown = atStation(cell(staked, row, 1));
            ASSERT_LT(shown, crew.rows());
            check("JOB.CREW",
                  ("rod reading on the invert, " + stake.item + ", station " + stake.word("station_ft"))
                      .c_str(),
                  std::stod(word(crew, shown, 3)) - 0.240 / 12, stake.input("rod") + stake.number(), 0.0055,
                  stake.source.c_str(), stake.provenance.c_str());
            ++checked;
            break;
        }
    EXPECT_EQ(checked, static_cast<int>(stakes.size()));
}

// A stakeout of half a station at 2.18 %: with earth dearer the deeper it is dug, the plan lays no more than that fall.
TEST(JobPublished, StakeoutAsThePlan) {
    const Row fall = printed("20d_levelling_and_grade.csv", "Sewer stakeout: fall").front();
    const Row invert = printed("20d_levelling_and_grade.csv", "Sewer stakeout: invert at 8+50").front();
    Job job;
    job.facts = table(2, {"Rain", 0.1, "Duration", 5.0});
    job.runs = table(9, {"From",
                         "To",
                         "Length",
                         "Pipe",
                         "Slope",
                         "Fixed level",
                         "Outlet level",
                         "Surface up",
                         "Surface down",
                         "9+50",
                         "9+00",
                         50.0,
                         "8 SDR35",
                         "2.18%",
                         invert.input("invert_9+00"),
                         "",
                         "lawn",
                         "lawn",
                         "9+00",
                         "8+50",
                         50.0,
                         "8 SDR35",
                         "2.18%",
                         "",
                         115.0,
                         "lawn",
                         "lawn"});
    job.nodes =
        table(3, {"Node", "Kind", "Ground", "9+50", "", 128.5, "9+00", "", 126.94, "8+50", "outlet", 127.33});
    std::vector<Value> values = job.values();
    values.pop_back();
    values.emplace_back(table(6, {"8 SDR35", 5.0, fall.input("grade_pct") / 100, "", "", 0.8}));
    values.emplace_back(table(2, {0.0, 0.0, 20.0, 60.0}));
    values.emplace_back(15.0);
    values.emplace_back(0.0);
    const Numbers plan = numbers("JOB.PLAN", values);
    check("JOB.PLAN", fall, cell(plan, 1, 0) - cell(plan, 1, 1));
    check("JOB.PLAN", invert, cell(plan, 1, 1));
}

// Eleven planks out of 5 ft lengths, as runs of pipe that are cut from 5 ft sticks without loss by the saw.
TEST(JobPublished, PlanksAsPipe) {
    const Row row =
        printed("20h_cutting_stock.csv", "Planks: first-fit decreasing, also the optimum").front();
    ASSERT_EQ(row.word("lengths"), "2.5,0.9,3.1,1.4,1.5,2.0,1.9,1.2,0.3,0.4,3.9");
    const std::vector<double> planks = {2.5, 0.9, 3.1, 1.4, 1.5, 2.0, 1.9, 1.2, 0.3, 0.4, 3.9};
    Job job;
    std::vector<Cell> runs = {"From", "To", "Length", "Pipe", "Slope"}, nodes = {"Node", "Kind", "Ground"};
    for (std::size_t i = 0; i <= planks.size(); ++i) {
        nodes.insert(nodes.end(), {"n" + std::to_string(i), i == planks.size() ? "outlet" : "bend", 100.0});
        if (i < planks.size())
            runs.insert(runs.end(),
                        {"n" + std::to_string(i), "n" + std::to_string(i + 1), planks[i], "4 SDR35", "2%"});
    }
    job.runs = table(5, runs);
    job.nodes = table(3, nodes);
    const Range prices = table(2, {"Code", "Pack", "PIPE-4SDR35", row.input("stock")});
    const Range terms = table(2, {"Saw cut", 0.0});
    const Numbers cuts = numbers("JOB.CUTS", job.taken(prices, terms));
    double sticks = 0;
    for (std::size_t i = 0; i < cuts.rows(); ++i) sticks = std::max(sticks, cell(cuts, i, 0));
    check("JOB.CUTS", row, sticks);
    const Texts codes = texts("JOB.PIECES.TEXT", job.taken(prices, terms));
    const Numbers pieces = numbers("JOB.PIECES", job.taken(prices, terms));
    for (std::size_t i = 0; i < codes.rows(); ++i)
        if (word(codes, i, 0) == "PIPE-4SDR35") {
            check("JOB.PIECES", row, cell(pieces, i, 1));
            EXPECT_NEAR(cell(pieces, i, 0), 19.1, 1e-9);
            return;
        }
    FAIL() << "no pipe was counted";
}

// The rock of a pit takes the room of the printed yards in the bank; hauled off they are loose, and so many loads.
TEST(JobPublished, SpoilThatARockPitDisplaces) {
    const Row loose = printed("20e_earthwork.csv", "Bank to loose").front();
    const Row loads = printed("20e_earthwork.csv", "Truck loads").front();
    Job job;
    job.facts = table(2, {"Soil", "loam", "Rain", 4.0, "Duration", 5.0});
    job.runs = table(4, {"From", "To", "Length", "Pipe", "", "", "", ""});
    job.pit = table(2, {"Tee at node", "T", "Length", 100.0, "Width", 50.0, "Rock depth",
                        loose.input("bcy") * 27 / 5000, "Soil over it", 1.0});
    job.rules = table(2, {"swell.loam", loose.input("swell"), "truck.load", loads.input("truck_lcy")});
    const std::vector<Value> asked = job.taken(Range{}, Range{});
    const auto amount = [&](const char* numbersBy, const char* named) {
        const Texts words = texts(std::string(numbersBy) + ".TEXT", asked);
        const Numbers amounts = numbers(numbersBy, asked);
        for (std::size_t i = 0; i < words.rows(); ++i)
            if (word(words, i, 0) == named) return cell(amounts, i, 0);
        ADD_FAILURE() << numbersBy << " has no " << named;
        return 0.0;
    };
    check("JOB.WORK", loose, amount("JOB.WORK", "Load and haul spoil"));
    check("JOB.PIECES", loads, amount("JOB.PIECES", "HAUL"));
}

// A gas line over a drain, 20 ft down a run that falls 0.60 ft in 60: straight lines between grounds and inverts.
TEST(JobPublished, ClearanceByPlainGeometry) {
    const Numbers answers = numbers("JOB.CROSSINGS", Tables().values());
    // Ground 99.6 to 97.5; its top 6 in below, 1 in thick. Our outside top lies 4.215 - 0.120 in over the invert.
    const double ground = 99.6 - 2.1 / 3, itsBottom = ground - 7.0 / 12;
    const double ourTop = 97.5 - 0.2 + (4.215 - 0.120) / 12;
    check("JOB.CROSSINGS", "clearance between a line over a drain and the drain's outside top, in",
          cell(answers, 0, at(Viewed::Crossings, "Clearance")), (itsBottom - ourTop) * 12, 1e-6,
          "straight lines, worked by hand; outside and wall of 4 in SDR 35: ASTM D3034", "computed");
}

// Three drains at 1 %, at 1/8 in/ft and at 2 %: the code's least slope is 1/8 in/ft, printed as 1.04 %.
TEST(JobPublished, DrainsUnderTheLeastSlope) {
    constexpr const char* code = "City plumbing code, minimum slopes (Chicago)";
    Job job;
    job.facts = table(2, {"Rain", 1.0, "Duration", 5.0});
    std::vector<Cell> runs = {"From",  "To",           "Length",     "Pipe",
                              "Slope", "Outlet level", "Surface up", "Surface down"};
    std::vector<Cell> nodes = {"Node", "Kind", "Ground"};
    for (const char* slope : {"1%", "1/8 in/ft", "2%"}) {
        const std::string name = slope;
        runs.insert(runs.end(), {"A" + name, "O" + name, 40.0, "4 SDR35", slope, 97.0, "lawn", "daylight"});
        nodes.insert(nodes.end(), {"A" + name, "downspout", 100.0, "O" + name, "outlet", 98.5});
    }
    job.runs = table(8, runs);
    job.nodes = table(3, nodes);
    const Texts said = texts("JOB.FINDINGS.TEXT", job.values());
    const Numbers found = numbers("JOB.FINDINGS", job.values());
    int flat = 0;
    for (std::size_t i = 0; i < said.rows(); ++i)
        if (word(said, i, *wordView(Viewed::Findings).place("Rule")) == "slope.min.4in") {
            ++flat;
            check("JOB.FINDINGS", "least slope of 4 in pipe, percent",
                  100 * cell(found, i, at(Viewed::Findings, "Allowed")), 1.04, 0.005, code, "read");
            EXPECT_NEAR(cell(found, i, at(Viewed::Findings, "Measured")), 0.01, 1e-12);
        }
    EXPECT_EQ(flat, 1);
    const Numbers counts = numbers("JOB.COUNTS", job.values());
    constexpr std::size_t runsRow = 3;  // Job, Nodes, Water, Runs
    check("JOB.COUNTS", "drains at 1 %, 1/8 in/ft and 2 % that are flatter than the code allows",
          cell(counts, runsRow, at(Viewed::Counts, "NO")), 1, 0, code, "read");
}

}  // namespace
}  // namespace trenchbook::addin
