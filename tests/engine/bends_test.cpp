#include "trenchbook/takeoff/bends.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>

#include "reference.h"
#include "trenchbook/core/error.h"

using namespace trenchbook;
using namespace trenchbook::reference;

namespace {

std::vector<Angle> angles(std::initializer_list<double> degrees) {
    std::vector<Angle> made;
    for (double value : degrees) made.push_back(Angle::degrees(value));
    return made;
}
std::string text(double turn, std::initializer_list<double> pieces = {22.5, 45}, double tolerance = 3) {
    return makeupText(makeup(Angle::degrees(turn), angles(pieces), Angle::degrees(tolerance)));
}

// By brute force over counts of two kinds: the fewest pieces within the tolerance, and how near they come.
struct Fewest {
    int pieces = 0;
    double off = 0;
};
Fewest bruteForce(double turn, double a, double b, double tolerance) {
    for (int count = 1; count < 60; ++count) {
        Fewest best;
        for (int ofA = 0; ofA <= count; ++ofA) {
            const double off = std::fabs(ofA * a + (count - ofA) * b - turn);
            if (off <= tolerance + 1e-9 && (best.pieces == 0 || off < best.off)) best = {count, off};
        }
        if (best.pieces) return best;
    }
    return {};
}

}  // namespace

TEST(Bends, Makeup) {
    constexpr const char* fitters = "sum of the fittings' angles";
    checkWords("BEND.MAKEUP", "90", text(90), "45 + 45", fitters, "common practice");
    checkWords("BEND.MAKEUP", "67", text(67), "45 + 22.5", fitters, "common practice");
    EXPECT_EQ(text(45), "45");
    EXPECT_EQ(text(24), "22.5");
    EXPECT_EQ(text(3), "0");
    EXPECT_EQ(text(2), "0");
    EXPECT_EQ(text(180), "45 + 45 + 45 + 45");
    EXPECT_EQ(text(157), "45 + 45 + 45 + 22.5");
    EXPECT_EQ(text(90, {90, 45, 22.5}), "90");
    EXPECT_EQ(text(11, {11.25, 22.5, 45}), "11.25");
    EXPECT_EQ(text(34, {22.5, 45}, 12), "45");     // 11 off against 11.5
    EXPECT_EQ(text(33.75, {22.5, 45}, 12), "45");  // a tie goes to the larger
    EXPECT_EQ(text(67.5, {45, 22.5, 45, 22.5}), "45 + 22.5");
    EXPECT_EQ(text(67.5, {22.5}, 0), "22.5 + 22.5 + 22.5");
}

TEST(Bends, FewestAndNearest) {
    const bool held = rc::check("against brute force over two kinds", [] {
        const double turn = *rc::gen::inRange(1, 721) / 4.0;
        const double a = *rc::gen::inRange(20, 361) / 4.0, b = *rc::gen::inRange(20, 361) / 4.0;
        const double tolerance = *rc::gen::inRange(0, 40) / 4.0;
        RC_LOG() << "turn " << turn << " of " << a << ", " << b << " within " << tolerance;
        RC_PRE(turn > tolerance);
        const Fewest expected = bruteForce(turn, a, b, tolerance);
        if (expected.pieces == 0) {
            RC_ASSERT_THROWS_AS(makeup(Angle::degrees(turn), angles({a, b}), Angle::degrees(tolerance)),
                                Error);
            return;
        }
        const std::vector<Angle> made =
            makeup(Angle::degrees(turn), angles({a, b}), Angle::degrees(tolerance));
        double sum = 0;
        for (Angle piece : made) sum += piece.degrees();
        RC_ASSERT(static_cast<int>(made.size()) == expected.pieces);
        RC_ASSERT(std::fabs(std::fabs(sum - turn) - expected.off) < 1e-9);
    });
    EXPECT_TRUE(held);
}

TEST(Bends, BadInput) {
    for (double turn : {0.0, -5.0, 181.0, std::nan("")}) EXPECT_THROW(text(turn), Error) << turn;
    EXPECT_THROW(text(10), Error);  // nothing within 3 of 10
    EXPECT_THROW(text(45, {4}), Error);
    EXPECT_THROW(text(45, {91}), Error);
    EXPECT_THROW(text(45, {}), Error);
    EXPECT_THROW(text(45, {10, 11, 12, 13, 14, 15, 16, 17, 18}), Error);
    EXPECT_THROW(text(45, {45}, -1), Error);
    EXPECT_THROW(text(45, {45}, 30), Error);
    try {
        text(10);
    } catch (const Error& error) {
        EXPECT_EQ(error.sentence(Language::English),
                  "turn is 10 deg; allowed: a sum of 45, 22.5 within 3 deg.");
    }
}
