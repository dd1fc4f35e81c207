// Inverts from the outlet uphill: a printed run of sewer inverts, joins by crown and by invert, levels set by
// hand, and the laws: order never matters, a row depends on what lies downstream alone.
#include "trenchbook/lines/inverts.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>

#include "reference.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

using Names = std::vector<std::string>;
using Runs = std::vector<Run>;  // a test has a Run of its own

Run row(double feet, double bore, double percent, std::optional<double> outlet = {}) {
    Run run;
    run.length = Length::feet(feet);
    run.pipe = bareBore(Length::inches(bore));
    run.slope = Slope::percent(percent);
    if (outlet) run.outletLevel = Length::feet(*outlet);
    return run;
}

TEST(LineInverts, PrintedSewerInvertsEveryFiftyFeet) {
    // The book starts at the upper end and goes down at 1 %; here the same line is built up from its lower
    // end.
    std::vector<reference::Row> stations;
    for (const auto& printed : reference::rows("20d_levelling_and_grade.csv"))
        if (printed.item == "Sewer inverts at -1 per cent") stations.push_back(printed);
    ASSERT_GT(stations.size(), 2u);
    std::sort(stations.begin(), stations.end(),
              [](const auto& a, const auto& b) { return a.input("distance_ft") < b.input("distance_ft"); });
    Names from, to;
    Runs rows;
    for (std::size_t i = 0; i + 1 < stations.size(); ++i) {
        from.push_back(stations[i].word("distance_ft"));
        to.push_back(stations[i + 1].word("distance_ft"));
        rows.push_back(row(stations[i + 1].input("distance_ft") - stations[i].input("distance_ft"), 8, 1));
    }
    rows.back().outletLevel = Length::feet(stations.back().number());
    const auto answers = lineInverts(Network(from, to), rows, Join::Crown);
    for (std::size_t i = 0; i + 1 < stations.size(); ++i)
        reference::check("LINES.INVERTS", stations[i], answers[i].value->up.feet());
}

TEST(LineInverts, StakeoutBetweenTwoStations) {
    for (const auto& printed : reference::rows("20d_levelling_and_grade.csv")) {
        if (printed.item != "Sewer stakeout: invert at 8+50") continue;
        // Built upward from 8+50: half a station at 2.18 % comes out at the printed invert of 9+00.
        const auto answers = lineInverts(Network(Names{"9+00"}, Names{"8+50"}),
                                         std::vector{row(50, 8, 2.18, printed.number())}, Join::Crown);
        reference::check("LINES.INVERTS", "Sewer stakeout: invert at 9+00 from 8+50",
                         answers[0].value->up.feet(), printed.input("invert_9+00"), 0.005,
                         printed.source.c_str(), "read");
    }
}

TEST(LineInverts, JoinsByCrownOrByInvert) {
    const Network lines(Names{"A", "B"}, Names{"B", "Out"});
    const std::vector rows{row(40, 4, 1), row(60, 6, 1, 96.5)};
    const auto crown = lineInverts(lines, rows, Join::Crown);
    EXPECT_NEAR(crown[1].value->up.feet(), 97.1, 1e-12);
    EXPECT_NEAR(crown[0].value->down.feet(), 97.1 + 2.0 / 12, 1e-12);
    const auto invert = lineInverts(lines, rows, Join::Invert);
    EXPECT_NEAR(invert[0].value->down.feet(), 97.1, 1e-12);
    EXPECT_NEAR(invert[0].value->up.feet(), 97.5, 1e-12);
    // A larger pipe that flows into a smaller one keeps its invert up.
    const std::vector shrinking{row(40, 6, 1), row(60, 4, 1, 96.5)};
    EXPECT_NEAR(lineInverts(lines, shrinking, Join::Crown)[0].value->down.feet(), 97.1, 1e-12);
}

TEST(LineInverts, ALevelSetByHandHoldsAndCutsTheWaiting) {
    const Network lines(Names{"A", "B", "C"}, Names{"B", "C", "Out"});
    std::vector rows{row(40, 4, 1), row(60, 4, 1), row(10, 4, 1)};  // no outlet level
    rows[1].fixedDown = Length::feet(98);
    const auto answers = lineInverts(lines, rows, Join::Crown);
    EXPECT_FALSE(answers[2].value);
    reference::checkWords(
        "LINES.INVERTS.WHY", "levels are worked from the outlet uphill: without one there are none",
        faultText(lines, answers[2].fault, 2).en, "outlet invert is missing: no row goes on from here",
        "common practice, no source", "common practice");
    EXPECT_NEAR(answers[1].value->up.feet(), 98.6, 1e-12);
    EXPECT_NEAR(answers[0].value->up.feet(), 99.0, 1e-12);
}

TEST(LineInverts, ABadRowSpoilsItselfAndWhatIsCarriedFromIt) {
    const Network lines(Names{"A", "B", "C", "X"}, Names{"B", "Out", "B", "Y"});
    std::vector rows{row(40, 4, 1), row(60, 4, 1, 96), row(20, 4, 1), row(30, 4, 1, 90)};
    const auto before = lineInverts(lines, rows, Join::Crown);
    rows[1].slope.reset();
    const auto after = lineInverts(lines, rows, Join::Crown);
    EXPECT_EQ(faultText(lines, after[1].fault, 1).en, "slope is missing");
    EXPECT_EQ(faultText(lines, after[0].fault, 0).en, "waiting on row 2 (B-Out)");
    EXPECT_EQ(faultText(lines, after[2].fault, 2).es, "en espera de la fila 2 (B-Out)");
    EXPECT_EQ(after[3].value->up, before[3].value->up);
    EXPECT_THROW(lineInverts(lines, Runs(2), Join::Crown), Error);
    EXPECT_THROW(joinNamed("soffit"), Error);
}

TEST(LineInverts, LawsHoldOnAnyLine) {
    EXPECT_TRUE(rc::check("order never matters; a drop to the outlet is the sum of its falls and steps", [] {
        const int count = *rc::gen::inRange(1, 30);
        Names from, to;
        Runs rows;
        for (int i = 0; i < count; ++i) {
            const int below = *rc::gen::inRange(i + 1, count + 1);
            from.push_back("N" + std::to_string(i));
            to.push_back(below < count ? "N" + std::to_string(below) : "Out");
            rows.push_back(row(*rc::gen::inRange(1, 200), *rc::gen::element(3, 4, 6),
                               *rc::gen::inRange(1, 900) / 100.0, 95));
        }
        const Network lines(from, to);
        const auto straight = lineInverts(lines, rows, Join::Crown);

        for (std::size_t i = 0; i < rows.size(); ++i) {
            double level = 95;
            for (std::size_t at = i; at != Network::none; at = lines.downstream(at)) {
                level += rows[at].slope->fraction() * rows[at].length->feet();
                if (const std::size_t next = lines.downstream(at); next != Network::none)
                    level += std::max(0.0, (rows[next].pipe->bore - rows[at].pipe->bore).feet());
            }
            RC_ASSERT(std::abs(straight[i].value->up.feet() - level) < 1e-9);
        }

        std::vector<std::size_t> order(rows.size());
        for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
        for (std::size_t i = order.size(); i > 1; --i)
            std::swap(order[i - 1], order[*rc::gen::inRange<std::size_t>(0, i)]);
        Names mixedFrom, mixedTo;
        Runs mixedRows;
        for (std::size_t index : order) {
            mixedFrom.push_back(from[index]);
            mixedTo.push_back(to[index]);
            mixedRows.push_back(rows[index]);
        }
        const auto mixed = lineInverts(Network(mixedFrom, mixedTo), mixedRows, Join::Crown);
        for (std::size_t i = 0; i < order.size(); ++i) {
            RC_ASSERT(mixed[i].value->up == straight[order[i]].value->up);
            RC_ASSERT(mixed[i].value->down == straight[order[i]].value->down);
        }
    }));
}

}  // namespace
}  // namespace trenchbook
