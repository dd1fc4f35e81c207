// Pipe and turns since the last opening, against sums over explicit ways up the tree.
#include "trenchbook/lines/cleanouts.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "jobs.h"
#include "reference.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

using Names = std::vector<std::string>;
using Lengths = std::vector<std::optional<Length>>;
using jobs::runsOf, jobs::turning;
const Angle sharp = Angle::degrees(67.5);

// One sewer as a book prints it, from its head down: its points, and the runs between them.
struct PrintedSewer {
    std::vector<reference::Row> points;
    Names from, to;
    Lengths lengths;
};
PrintedSewer printedSewer() {
    PrintedSewer sewer;
    for (const auto& row : reference::rows("20d_levelling_and_grade.csv"))
        if (row.item == "Sewer inverts at -1 per cent") sewer.points.push_back(row);
    std::sort(sewer.points.begin(), sewer.points.end(),
              [](const auto& a, const auto& b) { return a.input("distance_ft") < b.input("distance_ft"); });
    for (std::size_t i = 0; i + 1 < sewer.points.size(); ++i) {
        const auto &upper = sewer.points[i], &lower = sewer.points[i + 1];
        sewer.from.push_back(upper.word("distance_ft"));
        sewer.to.push_back(lower.word("distance_ft"));
        sewer.lengths.push_back(Length::feet(lower.input("distance_ft") - upper.input("distance_ft")));
    }
    return sewer;
}

TEST(SinceOpenings, ALineWithoutOpeningsAddsUpFromItsHead) {
    // The stations that a book prints along one sewer are distances from its head.
    const auto& [points, from, to, lengths] = printedSewer();
    ASSERT_GT(points.size(), 5u);
    const auto told = sinceOpenings(Network(from, to), runsOf(lengths), {}, sharp);
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
        reference::check("LINES.CLEANOUTS", ("distance " + to[i] + " ft from the head").c_str(),
                         told[i]->length.feet(), points[i + 1].input("distance_ft"), 1e-9,
                         points[i + 1].source.c_str(), "read");
        EXPECT_TRUE(told[i]->fromHead);
        EXPECT_EQ(told[i]->turned.degrees(), 0);
    }
}

TEST(SinceOpenings, AnOpeningStartsAnew) {
    const Network lines(Names{"A", "B", "C"}, Names{"B", "C", "Out"});
    const Lengths lengths = {Length::feet(30), Length::feet(20), Length::feet(10)};
    const std::vector<Node> nodes = {turning("b", Angle::degrees(45), false),
                                     turning("C", Angle::degrees(67.5), true),
                                     turning("C", Angle::degrees(90), false)};
    const auto told = sinceOpenings(lines, runsOf(lengths), nodes, sharp);
    EXPECT_DOUBLE_EQ(told[1]->length.feet(), 50);
    EXPECT_DOUBLE_EQ(told[1]->turned.degrees(), 45);
    EXPECT_TRUE(told[1]->fromHead);
    EXPECT_DOUBLE_EQ(told[2]->length.feet(), 10);
    EXPECT_DOUBLE_EQ(told[2]->turned.degrees(), 0) << "the cable goes in at the turn";
    EXPECT_FALSE(told[2]->fromHead);
}

TEST(SinceOpenings, SharpTurnsAreCountedOverTheWorstBranch) {
    // A, B and C turn 90, 67.5 and 80 on the way to D; E comes in at D and has turned 90 once.
    const Network lines(Names{"H", "A", "B", "C", "K", "E", "D"}, Names{"A", "B", "C", "D", "E", "D", "Out"});
    const std::vector<Node> nodes = {
        turning("H", Angle::degrees(90), false),   turning("A", Angle::degrees(90), false),
        turning("B", Angle::degrees(67.5), false), turning("C", Angle::degrees(80), false),
        turning("E", Angle::degrees(90), false),   turning("D", Angle::degrees(90), false)};
    const auto told = sinceOpenings(lines, runsOf(Lengths(7, Length::feet(10))), nodes, sharp);
    const std::vector<std::size_t> expected = {0, 1, 1, 2, 0, 1, 3};
    for (std::size_t row = 0; row < expected.size(); ++row)
        EXPECT_EQ(told[row]->sharpTurns, expected[row]) << row;
    EXPECT_EQ(
        sinceOpenings(lines, runsOf(Lengths(7, Length::feet(10))), nodes, Angle::degrees(85))[3]->sharpTurns,
        1u);
    std::vector<Node> opened = nodes;
    opened[3].kinds.add(NodeKind::Cleanout);
    EXPECT_EQ(sinceOpenings(lines, runsOf(Lengths(7, Length::feet(10))), opened, sharp)[6]->sharpTurns, 2u)
        << "C takes the cable: E's branch counts now";
}

TEST(SinceOpenings, WhatIsNotKnownReachesDownToTheNextOpening) {
    const Network lines(Names{"A", "B", "C", "D"}, Names{"B", "C", "D", "Out"});
    const Lengths lengths = {std::nullopt, Length::feet(20), Length::feet(10), Length::feet(5)};
    const auto told =
        sinceOpenings(lines, runsOf(lengths), std::vector<Node>{turning("C", Angle(), true)}, sharp);
    EXPECT_FALSE(told[0]);
    EXPECT_FALSE(told[1]);
    EXPECT_DOUBLE_EQ(told[2]->length.feet(), 10);
    const auto bent = sinceOpenings(lines, runsOf(Lengths(4, Length::feet(1))),
                                    std::vector<Node>{turning("B", std::nullopt, false)}, sharp);
    EXPECT_TRUE(bent[0]);
    EXPECT_FALSE(bent[1]);
    EXPECT_FALSE(bent[3]);
    EXPECT_THROW(sinceOpenings(lines, runsOf(Lengths{}), {}, sharp), Error);
    EXPECT_THROW(sinceOpenings(lines, runsOf(lengths),
                               std::vector<Node>{turning("B", Angle::degrees(-1), false)}, sharp),
                 Error);
}

TEST(SinceOpenings, RandomTreesAgainstEveryWayUp) {
    EXPECT_TRUE(rc::check("longest way, most turning and most sharp turns over all ways up", [] {
        // Node i flows to a node with a smaller number; node 0 is the outlet.
        const std::size_t count = *rc::gen::inRange<std::size_t>(2, 14);
        Names from, to;
        Lengths lengths;
        std::vector<Node> nodes;
        std::vector<std::size_t> down(count);
        for (std::size_t i = 1; i < count; ++i) {
            down[i] = *rc::gen::inRange<std::size_t>(0, i);
            from.push_back(std::to_string(i));
            to.push_back(std::to_string(down[i]));
            lengths.push_back(Length::feet(*rc::gen::inRange(1, 100)));
            nodes.push_back(
                turning(from.back(), Angle::degrees(*rc::gen::inRange(0, 90)), *rc::gen::inRange(0, 3) == 0));
        }
        const auto told = sinceOpenings(Network(from, to), runsOf(lengths), nodes, sharp);
        for (std::size_t row = 0; row + 1 < count; ++row) {
            double longest = 0, most = 0, sharpest = 0;
            bool head = false;
            for (std::size_t start = 1; start < count; ++start) {
                // The way from `start` down to this row, if it leads here without an opening on it.
                double length = 0, turned = 0, sharply = 0;
                std::size_t node = start;
                const auto isHead = [&](std::size_t n) {
                    return std::find(to.begin(), to.end(), std::to_string(n)) == to.end();
                };
                bool open = nodes[start - 1].kinds.takesCable();
                if (!open && !isHead(start)) continue;
                bool here = false, broken = false;
                while (node != 0) {
                    if (node != start) {
                        if (nodes[node - 1].kinds.takesCable()) broken = true;
                        turned += nodes[node - 1].turn->degrees();
                        sharply += *nodes[node - 1].turn > sharp;
                    }
                    if (broken) break;
                    length += lengths[node - 1]->feet();
                    if (node == row + 1) {
                        here = true;
                        break;
                    }
                    node = down[node];
                }
                if (!here) continue;
                longest = std::max(longest, length);
                most = std::max(most, turned);
                sharpest = std::max(sharpest, sharply);
                head = head || !open;
            }
            RC_ASSERT(std::fabs(told[row]->length.feet() - longest) < 1e-9);
            RC_ASSERT(std::fabs(told[row]->turned.degrees() - most) < 1e-9);
            RC_ASSERT(static_cast<double>(told[row]->sharpTurns) == sharpest);
            RC_ASSERT(told[row]->fromHead == head);
        }
    }));
}

// One every 50 ft, 100 ft in large pipe; 135 degrees between; single turns above 45, grouped within 40 ft.
const CleanoutLimits usual = {Length::feet(50), Length::feet(100), Angle::degrees(135), Angle::degrees(45),
                              Length::feet(40)};

TEST(AskedCleanouts, StandAtThePrintedHundredsOfASewer) {
    // A sewer printed every 50 ft, from its head: where 100 ft are allowed, they stand at its full stations.
    const auto& [points, from, to, lengths] = printedSewer();
    ASSERT_EQ(points.size(), 8u);
    const auto asked = askedCleanouts(Network(from, to), runsOf(lengths, "6 SDR35"), {}, usual);
    double hundreds = 100;
    for (std::size_t i = 0; i < asked.size(); ++i) {
        ASSERT_TRUE(asked[i]);
        if (asked[i]->along == 0) continue;
        EXPECT_EQ(asked[i]->along, 1u);
        reference::check("LINES.CLEANOUTS.ASKED",
                         ("every 100 ft, below " + from[i] + " ft from the head").c_str(),
                         points[i].input("distance_ft") + asked[i]->first.feet(), hundreds, 1e-6,
                         points[i].source.c_str(), "read");
        hundreds += 100;
    }
    EXPECT_EQ(hundreds, 400) << "three, at 100, 200 and 300 ft of 320";
}

TEST(AskedCleanouts, ByHand) {
    const auto ask = [](std::vector<double> feet, std::vector<Node> nodes, const char* pipe) {
        Names from, to;
        Lengths lengths;
        for (std::size_t i = 0; i < feet.size(); ++i) {
            from.push_back(std::string(1, static_cast<char>('A' + i)));
            to.push_back(std::string(1, static_cast<char>('B' + i)));
            lengths.push_back(Length::feet(feet[i]));
        }
        return askedCleanouts(Network(from, to), runsOf(lengths, pipe), nodes, usual);
    };
    // Spacing: 120 ft of 4 in pipe want two, of 6 in pipe one; 50 ft none; an opening starts anew.
    EXPECT_EQ(ask({120}, {}, "4 SDR35")[0]->along, 2u);
    EXPECT_DOUBLE_EQ(ask({120}, {}, "4 SDR35")[0]->first.feet(), 50);
    EXPECT_EQ(ask({120}, {}, "6 SDR35")[0]->along, 1u);
    EXPECT_EQ(ask({50}, {}, "4 SDR35")[0]->along, 0u);
    EXPECT_EQ(ask({30, 30}, {}, "4 SDR35")[1]->along, 1u);
    EXPECT_NEAR(ask({30, 30}, {}, "4 SDR35")[1]->first.feet(), 20, 1e-9);
    EXPECT_EQ(ask({30, 30}, {turning("B", Angle(), true)}, "4 SDR35")[1]->along, 0u);
    // A turn of 67.5 wants one 45 ft down the line and starts anew there; 40 ft down it shares the last.
    const std::vector<Node> bent = {turning("B", Angle::degrees(67.5), false)};
    EXPECT_TRUE(ask({45, 30}, bent, "4 SDR35")[1]->atUpperNode);
    EXPECT_EQ(ask({45, 30}, bent, "4 SDR35")[1]->along, 0u);
    EXPECT_FALSE(ask({40, 5}, bent, "4 SDR35")[1]->atUpperNode);
    // Two turns 20 ft apart share the cleanout asked at the first.
    const auto twice = ask({45, 20, 20}, {bent[0], turning("C", Angle::degrees(67.5), false)}, "6 SDR35");
    EXPECT_TRUE(twice[1]->atUpperNode);
    EXPECT_FALSE(twice[2]->atUpperNode);
    // Four turns of 45: the fourth makes 180.
    std::vector<Node> four;
    for (const char* name : {"B", "C", "D", "E"}) four.push_back(turning(name, Angle::degrees(45), false));
    const auto turning = ask({5, 5, 5, 5, 5}, four, "4 SDR35");
    for (std::size_t row = 0; row < 5; ++row) EXPECT_EQ(turning[row]->atUpperNode, row == 4) << row;
    // What is not known.
    EXPECT_FALSE(askedCleanouts(Network(Names{"A"}, Names{"B"}), runsOf(Lengths{std::nullopt}, "4 SDR35"), {},
                                usual)[0]);
    EXPECT_THROW(askedCleanouts(Network(Names{"A"}, Names{"B"}), {}, {}, usual), Error);
}

// With those asked put in as openings, no way is too long and none turns too much; a line in one piece asks
// no more than its length holds.
TEST(AskedCleanouts, KeepTheRulesOnRandomTrees) {
    EXPECT_TRUE(rc::check("openings where asked are enough", [] {
        const std::size_t count = *rc::gen::inRange<std::size_t>(2, 14);
        Names from, to;
        Lengths lengths;
        std::vector<Node> nodes;
        for (std::size_t i = 1; i < count; ++i) {
            from.push_back(std::to_string(i));
            to.push_back(std::to_string(*rc::gen::inRange<std::size_t>(0, i)));
            lengths.push_back(Length::feet(*rc::gen::inRange(1, 180)));
            nodes.push_back(
                turning(from.back(), Angle::degrees(*rc::gen::inRange(0, 90)), *rc::gen::inRange(0, 4) == 0));
        }
        const auto asked = askedCleanouts(Network(from, to), runsOf(lengths, "4 SDR35"), nodes, usual);
        Names finer, below;
        Lengths parts;
        std::vector<Node> opened = nodes;
        for (std::size_t row = 0; row + 1 < count; ++row) {
            RC_ASSERT(asked[row].has_value());
            if (asked[row]->atUpperNode) {
                RC_ASSERT(!nodes[row].kinds.takesCable());
                opened[row].kinds.add(NodeKind::Cleanout);
            }
            double done = 0;
            std::string last = from[row];
            for (std::size_t n = 0; n < static_cast<std::size_t>(asked[row]->along); ++n) {
                const double at = asked[row]->first.feet() + 50 * static_cast<double>(n);
                if (at == 0) {  // on the node itself
                    opened[row].kinds.add(NodeKind::Cleanout);
                    continue;
                }
                finer.push_back(last);
                last = from[row] + "+" + std::to_string(n);
                below.push_back(last);
                parts.push_back(Length::feet(at - done));
                done = at;
                opened.push_back(turning(last, Angle(), true));
            }
            RC_ASSERT(lengths[row]->feet() > done);
            finer.push_back(last);
            below.push_back(to[row]);
            parts.push_back(Length::feet(lengths[row]->feet() - done));
        }
        const Network refined(finer, below);
        for (const auto& since : sinceOpenings(refined, runsOf(parts), opened, sharp)) {
            RC_ASSERT(since.has_value());
            RC_ASSERT(since->length.feet() <= 50.01);
            RC_ASSERT(since->turned.degrees() <= 135.0001);
        }
        const double whole = *rc::gen::inRange(1, 400);
        const auto one = askedCleanouts(Network(Names{"A"}, Names{"B"}),
                                        runsOf(Lengths{Length::feet(whole)}, "4 SDR35"), {}, usual);
        RC_ASSERT(one[0]->along == std::ceil(whole / 50) - 1);
    }));
}

}  // namespace
}  // namespace trenchbook
