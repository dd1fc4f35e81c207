#include "trenchbook/layout/plan_net.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <chrono>
#include <cmath>
#include <random>

#include "reference.h"
#include "trenchbook/core/error.h"
#include "trenchbook/layout/ties.h"
#include "trenchbook/layout/traverse.h"

using namespace trenchbook;
using namespace trenchbook::reference;

namespace {

PlanPoint at(double east, double north) { return {Length::feet(east), Length::feet(north)}; }
PlanStation typed(double east, double north) { return {.at = at(east, north), .fixed = true}; }
PlanTape tape(std::size_t from, std::size_t to, double feet) {
    return {.from = from, .to = to, .length = Length::feet(feet)};
}
double feetApart(const PlanPoint& a, const PlanPoint& b) { return distance(a, b).feet(); }

// A house of 40 by 30 ft with its corners typed, points 0 to 3.
PlanNet house() {
    PlanNet net;
    net.points = {typed(0, 0), typed(40, 0), typed(40, 30), typed(0, 30)};
    net.buildings = {{0, 1, 2, 3}};
    return net;
}

}  // namespace

TEST(PlanNet, ThreeTiesByLeastSquares) {
    PlanNet net;
    net.points = {typed(0, 0), typed(50, 0), typed(25, 40), {}};
    // The reference gives north first.
    net.points = {typed(0, 0), typed(50, 0), typed(25, 40), {}};
    net.tapes = {tape(0, 3, 36.10), tape(1, 3, 36.00), tape(2, 3, 14.10)};
    const PlacedPlan plan = placePoints(net);
    ASSERT_TRUE(plan.points[3].placed());
    int checked = 0;
    for (const Row& row : rows("30e_plan_geometry.csv")) {
        if (row.item != "Three ties, equal weights, least squares") continue;
        ++checked;
        // Given as (north, east) there; here the first of each pair lies along east.
        if (row.output == "north") check("LAYOUT.POINTS", row, plan.points[3].at->north.feet());
        if (row.output == "east") check("LAYOUT.POINTS", row, plan.points[3].at->east.feet());
        if (row.output.starts_with("standard error")) check("LAYOUT.POINTS", row, *plan.scatter * 0.1);
    }
    EXPECT_EQ(checked, 3);
}

TEST(PlanNet, MirrorSettledByTheBuilding) {
    PlanNet net = house();
    net.points.push_back({});
    // A drop at the south wall: taped from both of its corners, the other place lies in the house.
    net.tapes = {tape(0, 4, 25), tape(1, 4, 25)};
    PlacedPlan open = placePoints(net);
    EXPECT_EQ(open.points[4].by, PlacedBy::TwoPlaces);
    EXPECT_TRUE(open.points[4].asked);
    ASSERT_TRUE(open.points[4].other);
    EXPECT_NEAR(feetApart(*open.points[4].at, *open.points[4].other), 30, 1e-6);
    for (PlanTape& one : net.tapes) one.sight = true;
    const PlacedPlan settled = placePoints(net);
    EXPECT_EQ(settled.points[4].by, PlacedBy::Tapes);
    EXPECT_NEAR(feetApart(*settled.points[4].at, at(20, -15)), 0, 1e-6);
    EXPECT_FALSE(settled.scatter);
}

TEST(PlanNet, MirrorSettledBySideByTapeAndByTurn) {
    PlanNet net;
    net.points = {typed(0, 0), typed(40, 0), {}, {}};
    net.tapes = {tape(0, 2, 25), tape(1, 2, 25)};
    net.points[2].side = PlanSide{0, 1, true};
    EXPECT_NEAR(feetApart(*placePoints(net).points[2].at, at(20, 15)), 0, 1e-6);
    net.points[2].side = PlanSide{0, 1, false};
    EXPECT_NEAR(feetApart(*placePoints(net).points[2].at, at(20, -15)), 0, 1e-6);
    net.points[2].side.reset();

    // A run from a point that stands.
    net.points[3] = typed(20, -40);
    net.tapes.push_back(tape(3, 2, 25.1));
    const PlacedPlan taped = placePoints(net);
    EXPECT_EQ(taped.points[2].by, PlacedBy::Tapes);
    EXPECT_NEAR(feetApart(*taped.points[2].at, at(20, -15)), 0, 0.15);
    net.tapes.pop_back();

    // A line that turns 45 degrees at it: 90 where it lay north.
    net.points = {typed(0, 0), typed(40, 0), {}, typed(5, -30), typed(35, -30)};
    EXPECT_EQ(placePoints(net).points[2].by, PlacedBy::TwoPlaces);
    net.turns = {{.before = 3, .at = 2, .after = 4, .turn = Angle::degrees(90)}};
    EXPECT_NEAR(feetApart(*placePoints(net).points[2].at, at(20, -15)), 0, 1e-6);
}

TEST(PlanNet, TwoPlacesCarryWhatHangsOnThem) {
    PlanNet net;
    net.points = {typed(0, 0), typed(40, 0), {}, {}, {}};
    // Point 3 hangs on 2 and on 1; a third tape to each would settle both.
    net.tapes = {tape(0, 2, 25), tape(1, 2, 25), tape(2, 3, 20), tape(1, 3, 25), tape(3, 4, 10)};
    PlacedPlan plan = placePoints(net);
    EXPECT_EQ(plan.points[2].by, PlacedBy::TwoPlaces);
    EXPECT_TRUE(plan.points[2].asked);
    EXPECT_EQ(plan.points[3].by, PlacedBy::TwoPlaces);
    EXPECT_FALSE(plan.points[3].asked);
    EXPECT_EQ(plan.points[4].by, PlacedBy::Nothing);
    EXPECT_EQ(plan.points[4].known, 1u);
    EXPECT_FALSE(plan.residuals[2]);
    // One point's tape to a fixed one settles both when the combinations differ.
    net.points.push_back(typed(60, 30));
    net.tapes.push_back(tape(5, 3, feetApart(*plan.points[3].at, at(60, 30))));
    plan = placePoints(net);
    EXPECT_EQ(plan.points[3].by, PlacedBy::Tapes);
    EXPECT_EQ(plan.points[2].by, PlacedBy::Tapes);
}

TEST(PlanNet, AWallAndATape) {
    PlanNet net = house();
    net.points.push_back({});
    net.tapes = {{.from = 0, .to = 4, .wallEnd = 1, .length = Length::feet(8), .sight = true},
                 {.from = 1, .to = 4, .length = Length::feet(17), .sight = true},
                 {.from = 0, .to = 4, .length = Length::feet(std::hypot(25, 8)), .sight = true}};
    const PlacedPlan plan = placePoints(net);
    EXPECT_EQ(plan.points[4].by, PlacedBy::Tapes);
    EXPECT_NEAR(feetApart(*plan.points[4].at, at(25, -8)), 0, 1e-6);
    // The other wall's offset in place of the tape.
    net.tapes = {{.from = 0, .to = 4, .wallEnd = 1, .length = Length::feet(8)},
                 {.from = 3, .to = 4, .wallEnd = 0, .length = Length::feet(6)}};
    net.points[4].side = PlanSide{0, 3, true};
    const PlacedPlan corner = placePoints(net);
    ASSERT_TRUE(corner.points[4].at);
    EXPECT_NEAR(corner.points[4].at->east.feet(), -6, 1e-6);
}

TEST(PlanNet, ALineByLengthsAndTurns) {
    // The deflection traverse of the reference, its first run typed.
    PlanNet net;
    net.points = {typed(0, 0), typed(42, 0), {}, {}, {}, {}};
    const double lengths[] = {18.5, 26, 31, 12}, turns[] = {45, 22.5, 90, 11.25};
    const bool left[] = {false, true, true, false};
    for (std::size_t i = 0; i < 4; ++i) {
        net.tapes.push_back(tape(i + 1, i + 2, lengths[i]));
        net.turns.push_back(
            {.before = i, .at = i + 1, .after = i + 2, .turn = Angle::degrees(turns[i]), .left = left[i]});
    }
    const PlacedPlan plan = placePoints(net);
    int checked = 0;
    for (const Row& row : rows("30e_plan_geometry.csv")) {
        if (!row.item.starts_with("Deflection traverse") || row.item.ends_with(" 1")) continue;
        const PlacedPoint& at = plan.points[static_cast<std::size_t>(row.item.back() - '0')];
        EXPECT_EQ(at.by, PlacedBy::Turn);
        check("LAYOUT.NODES", row, (row.output == "north" ? at.at->north : at.at->east).feet());
        ++checked;
    }
    EXPECT_EQ(checked, 8);
    // Without the sides told, a turn leaves two places.
    net.turns[0].left.reset();
    EXPECT_EQ(placePoints(net).points[2].by, PlacedBy::TwoPlaces);
    // Straight on there is but one.
    net.turns[0].turn = Angle{};
    EXPECT_EQ(placePoints(net).points[2].by, PlacedBy::Turn);
    EXPECT_NEAR(feetApart(*placePoints(net).points[2].at, at(60.5, 0)), 0, 1e-6);
}

TEST(PlanNet, AGrossSlipIsNamed) {
    PlanNet net = house();
    net.points.push_back({});
    const PlanPoint true_ = at(60, -20);
    for (std::size_t corner = 0; corner < 4; ++corner)
        net.tapes.push_back(tape(corner, 4, feetApart(*net.points[corner].at, true_)));
    EXPECT_TRUE(placePoints(net).slips.empty());
    net.tapes[2].length += Length::feet(2.1);
    const PlacedPlan plan = placePoints(net);
    ASSERT_EQ(plan.slips.size(), 1u);
    EXPECT_EQ(plan.slips[0].tape, 2u);
    EXPECT_TRUE(plan.slips[0].among.empty());
    EXPECT_NEAR(plan.slips[0].off.feet(), 2.1, 1e-6);
    EXPECT_NEAR(feetApart(*plan.points[4].at, true_), 0, 1e-6);
    // Three tapes tell that one is wrong, not which.
    net.tapes.erase(net.tapes.begin());
    const PlacedPlan open = placePoints(net);
    ASSERT_EQ(open.slips.size(), 1u);
    EXPECT_EQ(open.slips[0].among.size(), 3u);
    // A tenth of a foot is no slip.
    net = house();
    net.points.push_back({});
    for (std::size_t corner = 0; corner < 4; ++corner)
        net.tapes.push_back(tape(corner, 4, feetApart(*net.points[corner].at, true_)));
    net.tapes[2].length += Length::feet(0.1);
    EXPECT_TRUE(placePoints(net).slips.empty());
}

TEST(PlanNet, Refusals) {
    PlanNet net = house();
    net.tapes = {tape(0, 9, 5)};
    EXPECT_THROW(placePoints(net), Error);
    net.tapes = {tape(0, 0, 5)};
    EXPECT_THROW(placePoints(net), Error);
    net.tapes = {tape(0, 1, 0)};
    EXPECT_THROW(placePoints(net), Error);
    net.tapes = {{.from = 0, .to = 2, .wallEnd = 0, .length = Length::feet(1)}};
    EXPECT_THROW(placePoints(net), Error);
    EXPECT_TRUE(placePoints({}).points.empty());
}

namespace {

// A yard of `count` points around typed corners, each taped to `tapes` others, of which it knows the true
// distances.
struct Yard {
    PlanNet net;
    std::vector<PlanPoint> truth;
};
Yard yard(unsigned seed, std::size_t corners, std::size_t count, std::size_t tapes, double error) {
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> across(0, 200);
    std::normal_distribution<double> misread(0, error);
    Yard made;
    for (std::size_t i = 0; i < corners + count; ++i) {
        made.truth.push_back(at(across(random), across(random)));
        made.net.points.push_back(i < corners ? PlanStation{.at = made.truth[i], .fixed = true}
                                              : PlanStation{});
        if (i < corners) continue;
        for (std::size_t k = 0; k < tapes; ++k) {
            const std::size_t other = std::uniform_int_distribution<std::size_t>(0, i - 1)(random);
            const double far = feetApart(made.truth[i], made.truth[other]);
            if (far > 1) made.net.tapes.push_back(tape(other, i, far + misread(random)));
        }
    }
    return made;
}

}  // namespace

TEST(PlanNet, TrueDistancesGiveTheTruePlaces) {
    rc::check([] {
        const Yard made = yard(*rc::gen::arbitrary<unsigned>(), 5, 12, 4, 0);
        const PlacedPlan plan = placePoints(made.net);
        for (std::size_t i = 5; i < made.truth.size(); ++i) {
            if (plan.points[i].by != PlacedBy::Tapes) continue;  // tapes to one corner twice
            RC_ASSERT(feetApart(*plan.points[i].at, made.truth[i]) < 1e-4);
        }
        RC_ASSERT(plan.slips.empty());
    });
}

// The sum of squares is least: no point moved by hand makes it smaller, and a search by hand ends at the same
// places.
TEST(PlanNet, NoOtherPlacesFitBetter) {
    rc::check([] {
        const Yard made = yard(*rc::gen::arbitrary<unsigned>(), 4, 3, 5, 0.1);
        const PlacedPlan plan = placePoints(made.net);
        RC_PRE(plan.slips.empty());
        std::vector<PlanPoint> at;
        for (const PlacedPoint& one : plan.points) {
            RC_PRE(one.placed());
            at.push_back(*one.at);
        }
        const auto squares = [&] {
            double sum = 0;
            for (const PlanTape& one : made.net.tapes) {
                const double miss = (one.length - distance(at[one.from], at[one.to])).feet();
                sum += miss * miss;
            }
            return sum;
        };
        const double least = squares();
        // Pattern search from the truth, a coordinate at a time.
        const std::vector<PlanPoint> found = at;
        at = made.truth;
        for (double step = 0.2; step > 1e-7; step /= 2)
            for (bool better = true; better;) {
                better = false;
                for (std::size_t i = 4; i < at.size(); ++i)
                    for (Length PlanPoint::*way : {&PlanPoint::east, &PlanPoint::north})
                        for (const double move : {step, -step}) {
                            const double before = squares();
                            at[i].*way += Length::feet(move);
                            if (squares() < before - 1e-15)
                                better = true;
                            else
                                at[i].*way += Length::feet(-move);
                        }
            }
        RC_ASSERT(least <= squares() + 1e-9);
        for (std::size_t i = 4; i < at.size(); ++i) RC_ASSERT(feetApart(at[i], found[i]) < 1e-2);
    });
}

// Slips of feet among honest tapes: found, named, and the places as good as without them.
TEST(PlanNet, SlipsAmongManyTapes) {
    int named = 0, wrongly = 0, placed = 0;
    for (unsigned seed = 1; seed <= 40; ++seed) {
        Yard made = yard(seed, 6, 20, 5, 0.05);
        const std::size_t slipped = 7 * seed % made.net.tapes.size();
        made.net.tapes[slipped].length += Length::feet(seed % 2 == 0 ? 3 : -3);
        const PlacedPlan plan = placePoints(made.net);
        for (const PlanSlip& slip : plan.slips) {
            if (slip.tape == slipped)
                ++named;
            else if (slip.among.empty())
                ++wrongly;
        }
        for (std::size_t i = 6; i < made.truth.size(); ++i)
            if (plan.points[i].placed() && feetApart(*plan.points[i].at, made.truth[i]) < 1) ++placed;
    }
    EXPECT_GE(named, 36) << "of 40";
    EXPECT_LE(wrongly, 2);
    EXPECT_GE(placed, 780) << "of 800";
}

// The standard errors told are those that happen: over many yards, misses over their error have a spread of
// about 1.
TEST(PlanNet, ErrorsAreAsTold) {
    double squares = 0;
    std::size_t count = 0;
    for (unsigned seed = 100; seed < 140; ++seed) {
        const Yard made = yard(seed, 6, 10, 5, 0.1);
        const PlacedPlan plan = placePoints(made.net);
        for (std::size_t i = 6; i < made.truth.size(); ++i) {
            if (!plan.points[i].placed()) continue;
            const double share =
                feetApart(*plan.points[i].at, made.truth[i]) / plan.points[i].uncertain.feet();
            squares += share * share;
            ++count;
        }
    }
    // Of a circle twice the square of its error, of a flat ellipse once.
    EXPECT_GT(count, 380u);
    EXPECT_GT(squares / static_cast<double>(count), 0.9);
    EXPECT_LT(squares / static_cast<double>(count), 2.1);
}
