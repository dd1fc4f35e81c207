#include "trenchbook/layout/level_net.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <random>

#include "reference.h"
#include "trenchbook/core/error.h"

using namespace trenchbook;
using namespace trenchbook::reference;

namespace {

std::optional<Length> feet(double value) {
    return std::isnan(value) ? std::nullopt : std::optional(Length::feet(value));
}
constexpr double no = std::numeric_limits<double>::quiet_NaN();
LevelRow row(const char* point, double known, double backsight, double rod) {
    return {.point = point, .known = feet(known), .backsight = feet(backsight), .rod = feet(rod)};
}
// Five set-ups from Hydrant to Rock, of a published circuit.
std::vector<LevelRow> circuit() {
    return {row("Hydrant", 5869.31, 2.68, no), row("TP1", no, 10.83, 5.59), row("BM1", no, 10.61, 6.46),
            row("BM2", no, 7.57, 8.91),        row("TP2", no, 9.01, 5.14),  row("Rock", 5880.03, no, 3.83)};
}

}  // namespace

TEST(LevelNet, PublishedCircuitSpreadsEvenly) {
    const AdjustedLevels levels = adjustLevels(circuit());
    int checked = 0;
    for (const Row& one : rows("20d_levelling_and_grade.csv")) {
        if (!one.item.starts_with("Level circuit Hydrant to Rock, adjusted")) continue;
        // The source rounds each level as read before it spreads 0.05 ft: half a unit in its last digit
        // stays.
        check("LEVELS.ADJUST", one, levels.rows[static_cast<std::size_t>(one.input("setup"))].level->feet());
        ++checked;
    }
    EXPECT_EQ(checked, 5);
    EXPECT_EQ(levels.redundant, 1u);
    for (std::size_t i = 0; i + 1 < levels.rows.size(); ++i)
        EXPECT_NEAR(std::fabs(levels.rows[i].backsightOff->feet()), 0.005, 1e-9);
}

TEST(LevelNet, AsReadWhereNothingIsOver) {
    const std::vector<LevelRow> book = {row("BM", 100, 5, no), row("A", no, no, 6.25), row("", no, no, 3),
                                        row("B", no, 4, 7), row("C", no, no, 1)};
    const AdjustedLevels levels = adjustLevels(book);
    EXPECT_NEAR(levels.rows[1].level->feet(), 98.75, 1e-9);
    EXPECT_FALSE(levels.rows[2].level);
    EXPECT_NEAR(levels.rows[3].level->feet(), 98, 1e-9);
    EXPECT_NEAR(levels.rows[4].level->feet(), 101, 1e-9);
    EXPECT_NEAR(levels.rows[4].rodOff->feet(), 0, 1e-9);
    EXPECT_NEAR(levels.rows[4].uncertain->feet(), 0.02, 1e-9);  // four readings
    EXPECT_EQ(levels.redundant, 0u);
    EXPECT_FALSE(levels.scatter);
}

TEST(LevelNet, NothingIsKnownWithoutABenchmark) {
    const AdjustedLevels levels =
        adjustLevels(std::vector<LevelRow>{row("A", no, 5, no), row("B", no, no, 6)});
    EXPECT_FALSE(levels.rows[0].level);
    EXPECT_FALSE(levels.rows[1].level);
    EXPECT_FALSE(levels.rows[1].rodOff);
    // A rod read before any set-up says nothing.
    EXPECT_FALSE(adjustLevels(std::vector<LevelRow>{row("B", no, no, 6)}).rows[0].level);
}

TEST(LevelNet, ABenchmarkReadLastReachesBack) {
    const AdjustedLevels levels =
        adjustLevels(std::vector<LevelRow>{row("A", no, 5, no), row("B", no, no, 6), row("BM", 50, no, 2)});
    EXPECT_NEAR(levels.rows[0].level->feet(), 47, 1e-9);
    EXPECT_NEAR(levels.rows[1].level->feet(), 46, 1e-9);
}

TEST(LevelNet, ASlipIsNamed) {
    // Four points read from three set-ups each; B misread by a foot in the second.
    std::vector<LevelRow> book = {row("BM", 100, 4, no)};
    const double level[] = {101, 99, 98.5, 97};
    const char* const names[] = {"A", "B", "C", "D"};
    for (const double sight : {104.0, 103.2, 105.1}) {
        if (sight != 104) book.push_back(row("BM", no, sight - 100, no));
        for (int i = 0; i < 4; ++i) book.push_back(row(names[i], no, no, sight - level[i]));
    }
    EXPECT_FALSE(adjustLevels(book).rows[7].slip);
    book[7].rod = *book[7].rod + Length::feet(1);
    const AdjustedLevels levels = adjustLevels(book);
    for (std::size_t i = 0; i < book.size(); ++i) EXPECT_EQ(levels.rows[i].slip, i == 7) << i;
    // In one circuit it may be any reading.
    std::vector<LevelRow> round = circuit();
    round[2].rod = *round[2].rod + Length::feet(1);
    for (const AdjustedLevelRow& one : adjustLevels(round).rows) EXPECT_TRUE(one.slip);
}

TEST(LevelNet, Refusals) {
    EXPECT_THROW(adjustLevels(circuit(), Length{}), Error);
    EXPECT_THROW(adjustLevels(std::vector<LevelRow>{row("A", 1, 5, no), row("a ", 2, no, 6)}), Error);
}

// Against a search by hand: no other levels and sights fit the readings better.
TEST(LevelNet, LeastSquares) {
    rc::check([] {
        std::mt19937 random(*rc::gen::arbitrary<unsigned>());
        std::normal_distribution<double> error(0, 0.01);
        std::uniform_real_distribution<double> level(95, 99);
        std::vector<double> truth;
        for (int i = 0; i < 4; ++i) truth.push_back(level(random));
        std::vector<LevelRow> book;
        const char* const names[] = {"BM", "A", "B", "C"};
        for (const double sight : {101.0, 102.5, 100.4}) {
            book.push_back(row("BM", truth[0], sight - truth[0] + error(random), no));
            for (int i = 1; i < 4; ++i)
                book.push_back(row(names[i], no, no, sight - truth[i] + error(random)));
        }
        const AdjustedLevels levels = adjustLevels(book);
        // By set-up: sight lines from the readings of each alone, levels as means, until nothing moves.
        std::vector<double> is = truth, sights(3);
        for (int round = 0; round < 200; ++round) {
            for (int s = 0; s < 3; ++s) {
                sights[s] = (truth[0] + book[4 * s].backsight->feet()) / 4;
                for (int i = 1; i < 4; ++i) sights[s] += (is[i] + book[4 * s + i].rod->feet()) / 4;
            }
            for (int i = 1; i < 4; ++i) {
                is[i] = 0;
                for (int s = 0; s < 3; ++s) is[i] += (sights[s] - book[4 * s + i].rod->feet()) / 3;
            }
        }
        for (int i = 1; i < 4; ++i) RC_ASSERT(std::fabs(levels.rows[i].level->feet() - is[i]) < 1e-9);
    });
}
