// Peak flows against a printed storm-sewer table worked by hand, row by row and through the tree; and the
// laws.
#include "trenchbook/lines/peak.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <map>
#include <numbers>

#include "reference.h"
#include "trenchbook/core/error.h"
#include "trenchbook/pipe/manning.h"

namespace trenchbook {
namespace {

using reference::check;
using reference::Row;
using Names = std::vector<std::string>;
using Runs = std::vector<Run>;  // a test has a Run of its own

constexpr const char* acres = "the table's Q = C i A in acres and cfs rounds 1.00833 to 1";
constexpr double acreFactor = 43200.0 / 43560.0;

Area acre(double value) { return Area::squareFeet(43560 * value); }

// A rain table of one column that gives these intensities (in/hr) at these minutes.
RainTable rainOf(const std::map<double, double>& intensityAt) {
    std::vector<TableCell> cells = {TableCell{}, 2.0, 100.0};
    for (const auto& [minutes, intensity] : intensityAt) {
        const double depth = intensity * minutes / 60;
        cells.insert(cells.end(), {minutes, depth, depth});
    }
    return RainTable::parse(cells, 3, Length::inches(1));
}

// One sewer of the printed table, gathered from its rows.
struct Sewer {
    double areaTimesC = 0, minutes = 0, intensity = 0, diameter = 0, length = 0;
    std::map<std::string, Row> rows;
};
std::map<std::string, Sewer> printedSewers() {
    std::map<std::string, Sewer> sewers;
    for (const Row& row : reference::rows("02c_mays_goodwin_storm_sewer.csv")) {
        const std::string prefix = "Goodwin Avenue sewer ";
        if (!row.item.starts_with(prefix)) continue;
        Sewer& sewer = sewers[row.item.substr(prefix.size())];
        sewer.rows[row.output] = row;
        if (row.output == "Qp") {
            sewer.areaTimesC = row.input("sumCA");
            sewer.minutes = row.input("td_min");
            sewer.intensity = row.input("i_inh");
        } else if (row.output == "pipe size used") {
            // Printed with two decimals of a foot; sizes step by the inch.
            sewer.diameter = std::round(row.number() * 12) / 12;
        } else if (row.output == "sewer flow time") {
            sewer.length = row.input("L_ft");
        }
    }
    return sewers;
}
RainTable printedRain(const std::map<std::string, Sewer>& sewers) {
    std::map<double, double> at;
    for (const auto& [name, sewer] : sewers) at[sewer.minutes] = sewer.intensity;
    return rainOf(at);
}
Run pipeRun(Length length, Length bore, Slope slope, double roughness) {
    Run run;
    run.length = length;
    run.pipe = bareBore(bore);
    run.slope = slope;
    run.roughness = roughness;
    return run;
}
Run pipeRun(const Sewer& sewer) {
    return pipeRun(Length::feet(sewer.length), Length::feet(sewer.diameter), Slope::percent(1), 0.014);
}

TEST(LinePeaks, PrintedSewersOneByOne) {
    const auto sewers = printedSewers();
    const RainTable rain = printedRain(sewers);
    ASSERT_GE(sewers.size(), 8u);
    for (const auto& [name, sewer] : sewers) {
        // A run behind it that nothing else drains to shows when the water gets there.
        const Network lines(Names{name, "end"}, Names{"end", "Out"});
        const std::vector rows{pipeRun(sewer), pipeRun(sewer)};
        const std::vector<PeakInlet> inlets{{name, acre(sewer.areaTimesC), Duration::minutes(sewer.minutes)}};
        const auto answers = linePeaks(lines, rows, inlets, rain, 2, Travel::Area);
        ASSERT_TRUE(answers[0].value) << name;
        const Peak& peak = *answers[0].value;
        check("LINES.PEAK", sewer.rows.at("Qp"), peak.flow.cfs(), acreFactor, acres);
        check("LINES.PEAK", sewer.rows.at("flow velocity 4Q/(pi D^2)"), peak.velocity.feetPerSecond(),
              acreFactor, acres);
        EXPECT_NEAR(peak.time.minutes(), sewer.minutes, 1e-9);
        EXPECT_NEAR(peak.intensity.inchesPerHour(), sewer.intensity, 1e-9);
    }
}

TEST(LinePeaks, PrintedFlowTimes) {
    // The book divides by its velocity, sometimes as printed with two digits, sometimes unrounded: so does
    // this test, whichever is nearer, by draining just the flow that gives it.
    for (const auto& [name, sewer] : printedSewers()) {
        const Row& row = sewer.rows.at("sewer flow time");
        const double area = std::numbers::pi / 4 * sewer.diameter * sewer.diameter;
        double nearest = 1e9;
        for (double cfs : {sewer.rows.at("Qp").number(), row.input("V_fps") * area}) {
            const RainTable rain = rainOf({{5, 6}, {1000, 0.5}});
            const Network lines(Names{name, "end"}, Names{"end", "Out"});
            const std::vector rows{pipeRun(sewer), pipeRun(sewer)};
            const std::vector<PeakInlet> inlets{
                {name, Area::fromSi(Flow::cfs(cfs).si() / RainRate::inchesPerHour(6).si()),
                 Duration::minutes(5)}};
            const auto answers = linePeaks(lines, rows, inlets, rain, 2, Travel::Area);
            ASSERT_TRUE(answers[1].value);
            const double minutes = (answers[1].value->time - answers[0].value->time).minutes();
            if (std::fabs(minutes - row.number()) < std::fabs(nearest - row.number())) nearest = minutes;
        }
        check("LINES.PEAK", row, nearest, 1, "printed or unrounded velocity, whichever the book used");
    }
}

TEST(LinePeaks, PrintedTreeAroundSewer21) {
    // 1.1 and 1.2 flow into 2.1, whose own inlet takes 13.7 min: longer than 11.0 + 1.4 and 9.2 + 1.3.
    const auto sewers = printedSewers();
    const auto catchment = [](const std::string& name, const std::string& output) {
        for (const Row& row : reference::rows("02c_mays_goodwin_storm_sewer.csv"))
            if (row.item == "Goodwin Avenue catchment " + name && row.output == output) return row.number();
        ADD_FAILURE() << name << ", " << output;
        return 0.0;
    };
    std::vector<PeakInlet> inlets;
    for (const char* name : {"1.1", "1.2", "2.1"})
        inlets.push_back({name, acre(catchment(name, "area") * catchment(name, "runoff coefficient")),
                          Duration::minutes(catchment(name, "inlet time"))});
    const Network lines(Names{"1.1", "1.2", "2.1"}, Names{"2.1", "2.1", "3.1"});
    const std::vector rows{pipeRun(sewers.at("1.1")), pipeRun(sewers.at("1.2")), pipeRun(sewers.at("2.1"))};
    const auto answers = linePeaks(lines, rows, inlets, printedRain(sewers), 2, Travel::Area);
    for (std::size_t i = 0; i < 3; ++i)
        check("LINES.PEAK", sewers.at(inlets[i].node).rows.at("Qp"), answers[i].value->flow.cfs(), acreFactor,
              acres);
    EXPECT_NEAR(answers[2].value->time.minutes(), 13.7, 1e-9);
}

TEST(LinePeaks, PrintedTwoPipeSewer) {
    for (const Row& row : reference::rows("12g_storm_sewer_rational_design.csv")) {
        if (row.output != "discharge") continue;
        const auto answers =
            linePeaks(Network(Names{"P1"}, Names{"Out"}),
                      std::vector{pipeRun(Length::feet(600), Length::feet(2.4), Slope::percent(0.3), 0.015)},
                      std::vector<PeakInlet>{{"P1", acre(row.input("CA_ac")), Duration::minutes(17)}},
                      rainOf({{17, row.input("i_inh")}, {60, 2}}), 2, Travel::Area);
        check("LINES.PEAK", row, answers[0].value->flow.cfs(), acreFactor, acres);
    }
}

const std::map<double, double> curve = {{5, 6}, {10, 4.6}, {30, 2.8}, {60, 1.9}};

TEST(LinePeaks, TravelsAtThePartFullVelocity) {
    const auto pipe = pipeRun(Length::feet(100), Length::inches(6), Slope::percent(1), 0.011);
    const Network lines(Names{"A", "B"}, Names{"B", "Out"});
    const std::vector<PeakInlet> inlets{{"A", Area::squareFeet(2000), Duration::minutes(6)},
                                        {"B", Area::squareFeet(500), Duration::minutes(5)}};
    const auto answers = linePeaks(lines, std::vector{pipe, pipe}, inlets, rainOf(curve), 10, Travel::Flow);
    const Peak& above = *answers[0].value;
    const Velocity velocity = uniformVelocity(pipe.pipe->bore, *pipe.slope, above.flow, 0.011);
    EXPECT_EQ(above.velocity, velocity);
    EXPECT_NEAR(answers[1].value->time.minutes(), 6 + 100 / velocity.feetPerSecond() / 60, 1e-12);
    EXPECT_NEAR(answers[1].value->areaTimesC.squareFeet(), 2500, 1e-9);
    const auto slower = linePeaks(lines, std::vector{pipe, pipe}, inlets, rainOf(curve), 10, Travel::Area);
    EXPECT_GT(slower[1].value->time, answers[1].value->time);
}

TEST(LinePeaks, FaultsAreNamed) {
    const auto pipe = pipeRun(Length::feet(100), Length::inches(6), Slope::percent(1), 0.011);
    auto noSlope = pipe;
    noSlope.slope.reset();
    const Network lines(Names{"A", "B", "C", "D", "E"}, Names{"B", "Out", "B", "Sea", "Far"});
    const std::vector<PeakInlet> inlets{{"A", Area::squareFeet(100), Duration::minutes(6)},
                                        {"D", Area::squareFeet(100), Duration::minutes(90)},
                                        {"E", Area::squareFeet(100), std::nullopt}};
    const auto answers = linePeaks(lines, std::vector{pipe, pipe, noSlope, pipe, pipe}, inlets, rainOf(curve),
                                   10, Travel::Flow);
    const auto said = [&](std::size_t row) { return faultText(lines, answers[row].fault, row).en; };
    EXPECT_TRUE(answers[0].value);
    EXPECT_EQ(said(1), "waiting on row 3 (C-B)");
    EXPECT_EQ(said(2), "slope is missing");
    EXPECT_NE(said(3).find("duration"), std::string::npos) << said(3);
    reference::checkWords("LINES.PEAK.WHY", "an inlet without its minutes keeps its sewer from having a time",
                          said(4), "an inlet's area x C or minutes are missing", "common practice, no source",
                          "common practice");
    EXPECT_THROW(linePeaks(lines, std::vector{pipe}, inlets, rainOf(curve), 10, Travel::Flow), Error);
    EXPECT_THROW(linePeaks(lines, std::vector{pipe, pipe, pipe, pipe, pipe}, inlets, rainOf(curve), 1000,
                           Travel::Flow),
                 Error);
    EXPECT_THROW(travelNamed("fast"), Error);
}

TEST(LinePeaks, LawsHoldOnAnyTree) {
    EXPECT_TRUE(rc::check("areas add up, times never fall downstream, order never matters", [] {
        const int count = *rc::gen::inRange(1, 20);
        Names from, to;
        Runs rows;
        std::vector<PeakInlet> inlets;
        for (int i = 0; i < count; ++i) {
            const int below = *rc::gen::inRange(i + 1, count + 1);
            from.push_back("N" + std::to_string(i));
            to.push_back(below < count ? "N" + std::to_string(below) : "Out");
            rows.push_back(pipeRun(Length::feet(*rc::gen::inRange(1, 100)),
                                   Length::inches(*rc::gen::element(4, 6, 8)),
                                   Slope::percent(*rc::gen::inRange(1, 50) / 10.0), 0.011));
            if (*rc::gen::inRange(0, 3))
                inlets.push_back({from.back(), Area::squareFeet(*rc::gen::inRange(1, 30000) / 10.0),
                                  Duration::minutes(*rc::gen::inRange(0, 10))});
        }
        const RainTable rain = rainOf({{5, 6}, {10, 4.6}, {30, 2.8}, {100000, 0.002}});
        const Network lines(from, to);
        const auto answers = linePeaks(lines, rows, inlets, rain, 10, Travel::Flow);
        double in = 0, out = 0;
        for (const PeakInlet& inlet : inlets) in += inlet.areaTimesC->squareFeet();
        for (std::size_t row = 0; row < rows.size(); ++row) {
            RC_ASSERT(answers[row].value.has_value());
            if (lines.outlet(row)) out += answers[row].value->areaTimesC.squareFeet();
            if (const std::size_t below = lines.downstream(row); below != Network::none)
                RC_ASSERT(answers[below].value->time >= answers[row].value->time);
        }
        RC_ASSERT(std::fabs(in - out) <= 1e-9 * (1 + in));

        const Names mixedFrom(from.rbegin(), from.rend()), mixedTo(to.rbegin(), to.rend());
        const auto mixed = linePeaks(Network(mixedFrom, mixedTo), std::vector(rows.rbegin(), rows.rend()),
                                     std::vector(inlets.rbegin(), inlets.rend()), rain, 10, Travel::Flow);
        for (int i = 0; i < count; ++i) {
            RC_ASSERT(mixed[count - 1 - i].value->flow == answers[i].value->flow);
            RC_ASSERT(mixed[count - 1 - i].value->time == answers[i].value->time);
        }
    }));
}

}  // namespace
}  // namespace trenchbook
