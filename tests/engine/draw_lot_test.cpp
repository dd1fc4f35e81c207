// A lot from its notes, read as the sheets hand them over.
#include "trenchbook/job/draw_lot.h"

#include <gtest/gtest.h>

#include <cmath>

#include "judged.h"
#include "trenchbook/job/read.h"

namespace trenchbook {
namespace {

using enum Severity;

Grid grid(std::size_t columns, std::vector<Cell> cells) {
    const std::size_t rows = cells.size() / columns;
    return {rows, columns, std::move(cells)};
}
PlanPoint at(double east, double north) { return {Length::feet(east), Length::feet(north)}; }
double far(double x, double y) { return std::round(std::hypot(x, y) * 100) / 100; }
std::string tie(const char* corner, double x, double y) {
    return std::string(corner) + " " + plain(far(x, y), 2);
}

// A house 40 ft along X and 30 ft deep; a line from a downspout at its south wall to daylight, 8 ft off that
// wall: A (5, -2), B (50, -10), Out (100, -30).
struct Notes {
    JobTables tables;
    std::vector<Cell> points = {
        "Point", "What",     "Object", "X",  "Y",  "Tie 1", "Tie 2", "Tie 3", "Side", "Line turns",
        "SW",    "building", "house",  0.0,  0.0,  "",      "",      "",      "",     "",
        "SE",    "",         "house",  40.0, 0.0,  "",      "",      "",      "",     "",
        "NE",    "",         "house",  40.0, 30.0, "",      "",      "",      "",     "",
        "NW",    "",         "house",  0.0,  30.0, "",      "",      "",      "",     ""};
    std::vector<Cell> nodes = {"Node", "Kind",      "Ground", "Turn", "Tie 1",           "Tie 2",
                               "A",    "downspout", 100.0,    "",     tie("SW", 5, 2),   tie("SE", 35, 2),
                               "B",    "cleanout",  99.0,     "",     tie("SE", 10, 10), tie("NE", 10, 40),
                               "Out",  "bank",      97.0,     "",     tie("SE", 60, 30), tie("NE", 60, 60)};
    std::vector<Cell> tapes = {"From", "To", "Wall to", "Length"};

    void point(const char* name, const char* what, const char* object, Cell x, Cell y,
               const char* side = "") {
        for (Cell cell :
             {Cell(name), Cell(what), Cell(object), x, y, Cell(""), Cell(""), Cell(""), Cell(side), Cell("")})
            points.push_back(std::move(cell));
    }
    Job job(UnitSystem units = UnitSystem::US) {
        tables.layout = grid(10, points);
        tables.nodes = grid(6, nodes);
        if (tapes.size() > 4) tables.tapes = grid(4, tapes);
        tables.runs = grid(7, {"From",         "To",           "Length",  "Pipe", "Slope",
                               "Outlet level", "Surface down", "A",       "B",    far(45, 8),
                               "4 SDR35",      "1%",           "",        "lawn", "B",
                               "Out",          far(50, 20),    "4 SDR35", "1%",   96.0,
                               "daylight"});
        return readJob(tables, units);
    }
};

TEST(DrawLot, PlacesNodesByTheirTies) {
    const Job job = Notes().job();
    ASSERT_EQ(job.drawn.nodes.size(), 3u);
    const PlanPoint truth[] = {at(5, -2), at(50, -10), at(100, -30)};
    for (std::size_t row = 0; row < 3; ++row) {
        const PlacedPoint& is = job.drawn.nodes[row].place;
        EXPECT_EQ(is.by, PlacedBy::Tapes) << row;
        EXPECT_LT(distance(*is.at, truth[row]).feet(), 0.2) << row;
        EXPECT_NE(job.drawn.nodes[row].says.en.find("tapes, ± 0."), std::string::npos)
            << job.drawn.nodes[row].says.en;
    }
    EXPECT_EQ(job.drawn.points[0].says.en, "typed");
    EXPECT_LT(std::fabs(job.drawn.nodeTies[1][0].residual->feet()), 0.05);
    EXPECT_LT(std::fabs(job.drawn.runs[0].residual->feet()), 0.05);
    EXPECT_TRUE(job.drawn.slips.empty());
    ASSERT_EQ(job.drawn.shapes.size(), 1u);
    EXPECT_EQ(job.drawn.shapes[0].shape.corners.size(), 4u);
    EXPECT_TRUE(job.drawn.shapes[0].complete);
    // Azimuths of 100 and 112 degrees: a turn of some 12 to the right, as drawn.
    ASSERT_TRUE(job.drawn.turns[1]);
    EXPECT_NEAR(job.drawn.turns[1]->degrees(),
                (std::atan2(20, 50) - std::atan2(8, 45)) * 180 / std::numbers::pi, 0.5);
}

TEST(DrawLot, WithoutPointsNothingIsDrawn) {
    Notes notes;
    notes.points.resize(10);
    const Job job = notes.job();
    EXPECT_FALSE(job.drawn.any());
    EXPECT_TRUE(job.drawn.nodes.empty());
    EXPECT_FALSE(job.nodes[0].fromHouse);
}

TEST(DrawLot, ATieThatIsOffIsNamedOnItsNode) {
    Notes notes;
    notes.nodes[6 * 2 + 5] = tie("NE", 10, 40) == "NE 41.23" ? Cell("NE 43.33") : Cell("");
    notes.tapes.insert(notes.tapes.end(), {"SW", "B", "", far(50, 10), "NW", "B", "", far(50, 40)});
    const Job job = notes.job();
    EXPECT_TRUE(tells(job, Part::Nodes, 1, Check, "layout.tape",
                      "tie of B to NE is 2.1 ft off: 41.2 ft by all the others"));
    EXPECT_TRUE(job.drawn.nodeTies[1][1].slip);
    EXPECT_FALSE(job.drawn.nodeTies[1][0].slip);
    EXPECT_NEAR(job.drawn.nodeTies[1][1].residual->feet(), 2.1, 0.1);
    // The same notes without the slip.
    notes.nodes[6 * 2 + 5] = "NE 41.23";
    EXPECT_FALSE(tells(notes.job(), Part::Nodes, 1, Check, "layout.tape", ""));
    // One that knows worse tapes lets it pass.
    notes.nodes[6 * 2 + 5] = "NE 43.33";
    notes.tables.rules = grid(2, {"Key", "Value", "tape.error", 1.0});
    EXPECT_FALSE(tells(notes.job(), Part::Nodes, 1, Check, "layout.tape", ""));
}

TEST(DrawLot, ALengthThatIsOffIsNamedOnItsRun) {
    Notes notes;
    notes.tapes.insert(notes.tapes.end(),
                       {"SW", "B", "", far(50, 10), "SW", "A", "", far(5, 2), "NW", "A", "", far(5, 32)});
    Job job = notes.job();
    notes.tables.runs.cells[7 + 2] = far(45, 8) + 3;
    job = readJob(notes.tables, UnitSystem::US);
    EXPECT_TRUE(tells(job, Part::Runs, 0, Check, "layout.tape",
                      "length from A to B is 3 ft off: 45.7 ft by all the others"));
}

TEST(DrawLot, SaysWhatToTapeNext) {
    Notes notes;
    notes.nodes[6 + 4] = notes.nodes[6 + 5] = "";  // A: the run alone, nothing known of its way
    notes.nodes[6 * 3 + 5] = "";                   // Out: a tie and a run
    notes.points.resize(10 * 3);                   // the south wall alone
    notes.nodes[6 * 2 + 5] = tie("SW", 50, 10);    // B: two ties of it, no house in the way
    Job job = notes.job();
    EXPECT_NE(job.drawn.nodes[1].says.en.find("two places"), std::string::npos) << job.drawn.nodes[1].says.en;
    EXPECT_NE(job.drawn.nodes[1].says.en.find("say its Side on Layout"), std::string::npos);
    EXPECT_NE(job.drawn.nodes[0].says.en.find("waits"), std::string::npos) << job.drawn.nodes[0].says.en;
    EXPECT_NE(job.drawn.nodes[2].says.en.find("waits"), std::string::npos) << job.drawn.nodes[2].says.en;
    // Nothing but a name.
    Notes alone;
    alone.nodes[6 + 4] = alone.nodes[6 + 5] = "";
    Job nothing = alone.job();
    alone.tables.runs = grid(4, {"From", "To", "Length", "Pipe", "B", "Out", 50.0, "4 SDR35"});
    nothing = readJob(alone.tables, UnitSystem::US);
    EXPECT_EQ(nothing.drawn.nodes[0].says.en, "no place: tape it to two corners");
    // Its side told in a row of its own.
    notes.point("B", "", "", "", "", "left");
    job = notes.job();
    EXPECT_EQ(job.drawn.nodes[1].place.by, PlacedBy::Tapes);
    EXPECT_LT(distance(*job.drawn.nodes[1].place.at, at(50, -10)).feet(), 0.5);
    // One point with coordinates is none to draw from.
    notes.points.resize(10 * 2);
    job = notes.job();
    EXPECT_NE(job.drawn.nodes[0].says.en.find("type X and Y of two points"), std::string::npos)
        << job.drawn.nodes[0].says.en;
}

TEST(DrawLot, WhatCannotBeReadIsSaid) {
    Notes notes;
    notes.nodes[6 + 4] = "garage 12";
    notes.nodes[6 + 5] = "SE four paces";
    notes.tapes.insert(notes.tapes.end(), {"SW", "nobody", "", 5.0, "SW", "B", "", "", "B", "B", "", 3.0});
    const Job job = notes.job();
    EXPECT_NE(job.drawn.nodeTies[0][0].trouble.en.find("no point of Layout or Nodes begins"),
              std::string::npos);
    EXPECT_NE(job.drawn.nodeTies[0][1].trouble.en.find("a point and a distance"), std::string::npos);
    EXPECT_NE(job.drawn.tapes[0].trouble.en.find("nobody is no point"), std::string::npos);
    EXPECT_NE(job.drawn.tapes[1].trouble.en.find("Length is blank"), std::string::npos);
    EXPECT_NE(job.drawn.tapes[2].trouble.en.find("itself"), std::string::npos);
    notes.points[10 + 3] = "zero";
    EXPECT_TRUE(tells(notes.job(), Part::Job, Finding::whole, No, "input.unusable", "Layout, SW: X is"));
}

TEST(DrawLot, DistancesThatNobodyTypes) {
    Notes notes;
    notes.point("old oak", "tree", "", 50.0, -4.0);
    notes.point("dug well", "well", "", 100.0, -39.0);
    notes.point("L1", "lot line", "", -20.0, -33.0);
    notes.point("L2", "lot line", "", 130.0, -33.0);
    notes.point("W1", "walk", "", 108.0, -40.0);
    notes.point("W2", "walk", "", 108.0, 40.0);
    notes.tables.outlets = grid(2, {"Outlet", "Flow line", "Out", 95.5});
    notes.tables.facts = grid(2, {"Rain", 4.0, "Well", "yes", "Outlet", "own swale"});
    const Job job = notes.job();
    EXPECT_NEAR(job.nodes[1].fromHouse->feet(), std::hypot(10, 10), 0.2);
    EXPECT_TRUE(job.nodes[1].drawn.fromHouse);
    EXPECT_NEAR(job.nodes[1].toTree->feet(), 6, 0.2);
    EXPECT_NEAR(job.nodes[2].toWell->feet(), 9, 0.2);
    EXPECT_FALSE(job.nodes[2].toSeptic);
    // From the wall: 14.14 ft, half a foot of footing, half of a 12 in trench.
    EXPECT_NEAR(job.nodes[1].toFooting->feet(), std::hypot(10, 10) - 1, 0.2);
    EXPECT_TRUE(tells(job, Part::Nodes, 2, Check, "line.well.min", "to the well by the drawing 9"));
    EXPECT_TRUE(
        tells(job, Part::Outlets, 0, No, "outlet.line.min", "outlet to the lot line by the drawing 3"));
    EXPECT_TRUE(
        tells(job, Part::Outlets, 0, No, "outlet.walk.min", "outlet to the public walk by the drawing 8"));
    EXPECT_FALSE(tells(job, Part::Outlets, 0, No, "outlet.foundation.min", ""));
    EXPECT_FALSE(tells(job, Part::Outlets, 0, NotJudged, "outlet.foundation.min", ""));
    // What is typed goes before.
    notes.tables.outlets = grid(3, {"Outlet", "Flow line", "To lot line", "Out", 95.5, 40.0});
    const Job typed = notes.job();
    EXPECT_NEAR(typed.outlets[0].lotLine->feet(), 40, 1e-9);
    EXPECT_FALSE(typed.outlets[0].drawn.lotLine);
}

TEST(DrawLot, APartWithoutAPlaceIsNoDistance) {
    Notes notes;
    notes.point("L1", "lot line", "lot", -20.0, -60.0);
    notes.point("L2", "lot line", "lot", 130.0, -60.0);
    EXPECT_NEAR(notes.job().drawn.nodesNear[2].lotLine->feet(), 30, 0.2);
    notes.point("L3", "lot line", "lot", "", "");
    EXPECT_FALSE(notes.job().drawn.nodesNear[2].lotLine);
    EXPECT_TRUE(notes.job().drawn.nodesNear[2].building);
}

TEST(DrawLot, BetweenItsNodesARunComesNearer) {
    Notes notes;
    notes.point("maple", "tree", "", 75.0, -18.0);
    const Job job = notes.job();
    const double off = std::fabs((75 - 50) * -20.0 - (-18 + 10) * 50.0) / std::hypot(50, 20);
    EXPECT_NEAR(job.drawn.runs[1].near.tree->feet(), off, 0.2);
    // Glued pipe may lie there; gasketed may not.
    EXPECT_FALSE(tells(job, Part::Runs, 1, Check, "tree.roots", ""));
    notes.tables.runs.cells[2 * 7 + 3] = "6 DUALWALL";
    const Job gasket = readJob(notes.tables, UnitSystem::US);
    EXPECT_TRUE(tells(gasket, Part::Runs, 1, Check, "tree.roots", "passes a tree at"));
}

TEST(DrawLot, ADeepTrenchAsksForTheFooting) {
    Notes notes;
    // A's trench is some 2.5 ft deep and 2 ft from the wall.
    const Job job = notes.job();
    EXPECT_TRUE(tells(job, Part::Nodes, 0, NotJudged, "footing.clear.min", "Footing depth is blank"));
    // B's is shallower than it is far.
    EXPECT_FALSE(tells(job, Part::Nodes, 1, NotJudged, "footing.clear.min", ""));
}

TEST(DrawLot, ThePitKeepsItsDistances) {
    Notes notes;
    notes.point("L1", "lot line", "lot", -20.0, -60.0);
    notes.point("L2", "lot line", "lot", 130.0, -60.0);
    notes.tables.pit = grid(2, {"Tee at node", "Out", "Length", 10.0, "Width", 4.0, "Rock depth", 3.0});
    const Job job = notes.job();
    ASSERT_TRUE(job.drawn.pit);
    // Along its run it falls 20 in 53.9: the lowest corner lies 5 sin + 2 cos below its middle.
    const double run = std::hypot(50, 20), down = 5 * 20 / run + 2 * 50 / run;
    EXPECT_NEAR(job.drawn.pitNear.lotLine->feet(), 30 - down, 0.2);
    EXPECT_TRUE(job.pit.drawn);
    EXPECT_NEAR(*job.pit.facts[PitFact::LotLine], Length::feet(30 - down).si(), 0.1);
    EXPECT_FALSE(job.pit.facts[PitFact::Well]);
    // Its own corners go before.
    notes.point("P1", "pit", "", 95.0, -40.0);
    notes.point("P2", "pit", "", 105.0, -40.0);
    notes.point("P3", "pit", "", 105.0, -30.0);
    EXPECT_NEAR(notes.job().drawn.pitNear.lotLine->feet(), 20, 0.01);
}

TEST(DrawLot, ATurnThatIsNotTyped) {
    Notes notes;
    // C south of B: the line turns by a right angle and more there.
    notes.nodes[6 * 3 + 4] = tie("SE", 5, 60);
    notes.nodes[6 * 3 + 5] = tie("NE", 5, 90);
    notes.tapes.insert(notes.tapes.end(), {"SW", "Out", "", far(45, 60)});
    Job job = notes.job();
    notes.tables.runs.cells[2 * 7 + 2] = far(5, 50);
    job = readJob(notes.tables, UnitSystem::US);
    EXPECT_TRUE(tells(job, Part::Nodes, 1, Check, "layout.turn", "Turn is blank: is a bend missing?"));
    notes.tables.nodes.cells[6 * 2 + 3] = 86.0;
    job = readJob(notes.tables, UnitSystem::US);
    EXPECT_FALSE(tells(job, Part::Nodes, 1, Check, "layout.turn", ""));
    notes.tables.nodes.cells[6 * 2 + 3] = 45.0;
    job = readJob(notes.tables, UnitSystem::US);
    EXPECT_TRUE(tells(job, Part::Nodes, 1, Check, "layout.turn", "Turn says 45"));
}

TEST(DrawLot, AMetricLotIsTheSameLot) {
    Notes us, metric;
    const auto scaled = [](std::vector<Cell>& cells, std::size_t columns,
                           std::initializer_list<std::size_t> which) {
        for (std::size_t row = 1; row < cells.size() / columns; ++row)
            for (const std::size_t column : which)
                if (double* number = std::get_if<double>(&cells[row * columns + column])) *number *= 0.3048;
    };
    scaled(metric.points, 10, {3, 4});
    scaled(metric.nodes, 6, {2});
    for (std::size_t row = 1; row < 4; ++row)
        for (const std::size_t column : {4, 5}) {
            std::string& typed = std::get<std::string>(metric.nodes[row * 6 + column]);
            const std::size_t gap = typed.find(' ');
            typed = typed.substr(0, gap + 1) + plain(std::stod(typed.substr(gap)) * 0.3048, 6);
        }
    const Job first = us.job();
    metric.job();
    metric.tables.runs.cells[7 + 2] = far(45, 8) * 0.3048;
    metric.tables.runs.cells[14 + 2] = far(50, 20) * 0.3048;
    const Job second = readJob(metric.tables, UnitSystem::Metric);
    for (std::size_t row = 0; row < 3; ++row)
        EXPECT_LT(distance(*first.drawn.nodes[row].place.at, *second.drawn.nodes[row].place.at).metres(),
                  1e-4);
}

// The trench is a foot wide: its edge lies half a foot nearer than the pipe.
TEST(JudgeDrawing, AWalkThatIsNearerThanTheTrenchIsDeepIsHeld) {
    Job job = smallJob();
    job.runs[0].trenchWidth = Length::feet(1);
    const SolvedRun dug = solve(job).runs[0];
    const Length cut = std::max(*dug.cutUp, *dug.cutDown);
    job.drawn.runs.resize(job.runs.size());
    const auto told = [&](Length far, const std::string& words) {
        job.drawn.runs[0].near.walk = far;
        return tells(job, Part::Runs, 0, Severity::Caution, "dig.under", words);
    };
    const Length half = Length::feet(0.5), hair = Length::feet(0.01);
    EXPECT_TRUE(told(cut + half - hair, "from the trench, which is"));
    EXPECT_FALSE(told(cut + half + hair, "walk"));
    EXPECT_TRUE(told(half, "the trench goes under a walk"));
    EXPECT_TRUE(told(half + hair, "a walk is 0.01 ft from the trench"));
    job.runs[0].existing = true;  // nothing is dug
    EXPECT_FALSE(told(half, "walk"));
}

}  // namespace
}  // namespace trenchbook
