#include "trenchbook/pipe/manning.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <cstdlib>

#include "books.h"
#include "trenchbook/core/error.h"
#include "trenchbook/core/tape.h"
#include "trenchbook/pipe/circular.h"
#include "trenchbook/pipe/sizing.h"

using namespace trenchbook;
using namespace trenchbook::reference;

namespace {

const Length bore = Length::inches(3.975);
const Slope onePercent = Slope::percent(1);

}  // namespace

TEST(Manning, FullFlowComputed) {
    for (const Row& row : rows("01c_fullflow_capacity_computed.csv")) {
        const Length pipe = Length::inches(row.input("D_in"));
        // 0.01, or "1/96 (1/8 in/ft)".
        const std::string typed = row.word("S_ftft");
        const std::size_t bracket = typed.find('(');
        const Slope slope = readSlope(bracket == std::string::npos ? typed : typed.substr(bracket + 1, 9));
        const Flow flow = capacity(pipe, slope, bookRoughness(row));
        if (row.output == "Qfull" && row.unit == "cfs")
            check("PIPE.CAPACITY", row, flow.cfs(), 1, manningReason);
        if (row.output == "Qfull" && row.unit == "gpm")
            check("PIPE.CAPACITY", row, flow.gpm(), 1, manningReason);
        if (row.unit == "fps")
            check("PIPE.VELOCITY", row, (flow / fullArea(pipe)).feetPerSecond(), 1, manningReason);
    }
}

TEST(Manning, Extremes) {
    for (const char* file : {"01a_circular_elements_computed.csv", "01b_circular_elements_memory.csv"})
        for (const Row& row : rows(file)) {
            const auto speed = [](double fill) {
                return capacity(bore, onePercent, 0.011, fill) / segmentAt(bore, bore * fill).area /
                       fullVelocity(bore, onePercent, 0.011);
            };
            const auto share = [](double fill) {
                return capacity(bore, onePercent, 0.011, fill) / capacity(bore, onePercent, 0.011);
            };
            // The fastest fill: where the velocity stops rising.
            const double fastest =
                whereRises(0.6, 0.95, 0, [&](double fill) { return speed(fill) - speed(fill + 1e-7); });
            if (row.output == "d/D at maximum Q") check("PIPE.FILL", row, peakFill);
            if (row.output == "Qmax/Qf") check("PIPE.FILL", row, share(peakFill));
            if (row.output == "d/D at maximum V") check("PIPE.VELOCITY", row, fastest);
            if (row.output == "Vmax/Vf") check("PIPE.VELOCITY", row, speed(fastest));
            if (row.output == "d/D where Q=Qf on the way up")
                check("PIPE.FILL", row,
                      normalFill(bore, onePercent, capacity(bore, onePercent, 0.011), 0.011));
            if (row.output.starts_with("Q/Qf at d/D="))
                check("PIPE.CAPACITY", row, share(std::atof(row.output.c_str() + 12)));
            if (row.output.starts_with("V/Vf at d/D="))
                check("PIPE.VELOCITY", row, speed(std::atof(row.output.c_str() + 12)));
        }
}

TEST(Manning, EngineeringFluidMechanicsExamples) {
    for (const Row& row : rows("01e_efm_pipe_examples.csv")) {
        if (row.item == "Example 15.7 sewer sizing") {
            const Flow flow = Flow::cfs(row.has("Q_cfs") ? row.input("Q_cfs") : 0);
            const Slope slope = Slope::fraction(row.has("S_ftft") ? row.input("S_ftft") : 0);
            if (row.output == "next catalogue size") {
                // 30 and 36 in, then 6 in steps; the flow of the same example, running full.
                std::vector<Pipe> sizes;
                for (double size : {30, 36, 42, 48, 54}) sizes.push_back(bareBore(Length::inches(size)));
                SizingLimits limits;
                limits.largestShare = 1;
                limits.roughness = 0.013;
                const Pipe pipe = firstThatCarries(Flow::cfs(110), Slope::fraction(0.006), sizes, limits);
                checkWords("PIPE.SIZE", row, plain(pipe.bore.inches()));
                continue;
            }
            const double needed = whereRises(0.1, 10, flow.cfs(), [&](double feet) {
                return capacity(Length::feet(feet), slope, bookRoughness(row)).cfs();
            });
            if (row.output == "A*R^(2/3)") {
                const Segment full = segmentAt(Length::feet(needed), Length::feet(needed));
                check("PIPE.CAPACITY", row,
                      full.area.squareFeet() * std::pow(full.hydraulicRadius.feet(), 2.0 / 3), 1,
                      manningReason);
            }
            if (row.output == "required diameter")
                check("PIPE.CAPACITY", row, row.unit == "in" ? needed * 12 : needed, 1, manningReason);
        } else if (row.item.starts_with("Example 15.7 full-pipe velocity")) {
            const Flow flow = Flow::cfs(row.input("Q_cfs"));
            const Length pipe = Length::inches(row.input("D_in"));
            // 0.6 % carries it just full, so the flow runs at the full velocity.
            const Slope slope = slopeNeeded(pipe, flow, 0.013);
            checkMisprint("PIPE.VELOCITY", row, fullVelocity(pipe, slope, 0.013).feetPerSecond(),
                          110 / 12.566, "the book prints A = 50.3 sq ft, which is pi D2; pi D2/4 is 12.566");
        } else if (row.item == "Lecture-note full pipe") {
            const Length pipe = Length::feet(row.input("D_ft"));
            const Slope slope = Slope::fraction(row.input("S_ftft"));
            if (row.output == "Q")
                check("PIPE.CAPACITY", row, capacity(pipe, slope, bookRoughness(row)).cfs(), 1,
                      manningReason);
            if (row.output == "V")
                check("PIPE.VELOCITY", row, fullVelocity(pipe, slope, bookRoughness(row)).feetPerSecond(), 1,
                      manningReason);
        }
    }
}

TEST(Manning, PrintedNormalDepths) {
    int checked = 0;
    for (const Row& row : rows("12d_normal_critical_depth_examples.csv")) {
        if (row.has("D_ft") && row.has("S0") && row.has("Q_cfs")) {
            const Length pipe = Length::feet(row.input("D_ft"));
            const Slope slope = Slope::fraction(row.input("S0"));
            const double n = bookRoughness(row);
            const Flow flow = Flow::cfs(row.input("Q_cfs"));
            const Segment wet = segmentAt(pipe, normalDepth(pipe, slope, flow, n));
            ++checked;
            if (row.output == "normal depth" && row.toleranceBasis.starts_with("DISCREPANT"))
                checkMisprint("PIPE.FILL", row, wet.depth.feet(), 0.9271335,
                              "the depth printed does not give the section factor 1.210 printed above it");
            else if (row.output == "normal depth")
                check("PIPE.FILL", row, wet.depth.feet(), 1, manningReason);
            else if (row.output == "central angle at normal depth")
                check("PIPE.FILL", row, 2 * wet.wettedPerimeter / pipe, 1, manningReason);
            else if (row.output == "section factor A R^(2/3)")
                check("PIPE.FILL", row, wet.area.squareFeet() * std::pow(wet.hydraulicRadius.feet(), 2.0 / 3),
                      1, manningReason);
            else if (row.output == "hydraulic radius")
                check("PIPE.SHEAR", row, wet.hydraulicRadius.feet(), 1, manningReason);
            else if (row.output == "velocity")
                check("PIPE.VELOCITY", row, uniformVelocity(pipe, slope, flow, n).feetPerSecond(), 1,
                      manningReason);
            else
                --checked;
        } else if (row.has("y/D")) {
            const Slope slope = Slope::fraction(row.input("S0"));
            const double fill = row.input("y/D"), n = bookRoughness(row);
            ++checked;
            if (row.output == "discharge")
                check("PIPE.CAPACITY", row, capacity(Length::feet(row.input("D_ft")), slope, n, fill).cfs(),
                      1, manningReason);
            else if (row.output == "diameter")
                check("PIPE.CAPACITY", row,
                      whereRises(1, 100, row.input("Q_cfs"),
                                 [&](double inches) {
                                     return capacity(Length::inches(inches), slope, n, fill).cfs();
                                 }),
                      1, manningReason);
            else
                --checked;
        } else if (row.has("D_m")) {
            const Length pipe = Length::metres(row.input("D_m"));
            const Slope slope = Slope::fraction(row.input("S0"));
            const double n = row.input("n");
            const Flow flow = capacity(pipe, slope, n);
            ++checked;
            if (row.output == "velocity")
                check("PIPE.VELOCITY", row, fullVelocity(pipe, slope, n).metresPerSecond());
            else if (row.output == "discharge")
                check("PIPE.CAPACITY", row, flow.cubicMetresPerSecond());
            else
                --checked;  // the head loss is with the friction tests
        }
    }
    EXPECT_EQ(checked, 14);
}

TEST(Manning, ComputedNormalDepths) {
    for (const Row& row : rows("12j_gvf_circular_computed.csv")) {
        if (row.output != "normal depth") continue;
        const bool metric = row.has("D_m");
        // Bores of whole inches are listed in feet to six places.
        const Length pipe = metric ? Length::metres(row.input("D_m"))
                                   : Length::inches(std::round(row.input("D_ft") * 12e3) / 1e3);
        const Flow flow = metric ? Flow::cubicMetresPerSecond(row.input("Q")) : Flow::cfs(row.input("Q"));
        const Length depth = normalDepth(pipe, Slope::fraction(row.input("S0")), flow, bookRoughness(row));
        check("PIPE.FILL", row, metric ? depth.metres() : depth.feet(), 1, manningReason);
    }
}

// What roughness a plumbing code's table stands for: the one at which our full pipe carries what it prints.
TEST(Manning, RoughnessImpliedByCapacityTables) {
    int checked = 0;
    for (const Row& row : rows("04d_horizontal_storm_drains.csv")) {
        const std::size_t noted = row.note.find("Implied full-bore n is ");
        if (noted == std::string::npos) continue;
        const double n = std::atof(row.note.c_str() + noted + 23);
        const Flow atUnit = capacity(Length::inches(row.input("D_in")),
                                     Slope::inchesPerFoot(row.input("slope_in_per_ft")), 1);
        // The note's own arithmetic uses 1.486.
        const double ours = atUnit / Flow::gpm(row.number()) * (1.486 / exactManning);
        check("PIPE.CAPACITY", (row.item + ", n implied at " + row.inputs).c_str(), ours, n, 5e-6,
              row.source.c_str(), row.provenance.c_str());
        ++checked;
    }
    EXPECT_EQ(checked, 36);
}

TEST(Manning, RoughnessPrinted) {
    for (const Row& row : rows("01f_manning_n_tables.csv")) {
        if (row.output != "n") continue;
        const auto within = [&](const char* lowEnd, const char* highEnd, double ours) {
            if (row.item == lowEnd) {
                EXPECT_GE(ours, row.number()) << row.id;
            }
            if (row.item == highEnd) {
                EXPECT_LE(ours, row.number()) << row.id;
            }
        };
        within("Corrugated PE, corrugated interior, low", "Corrugated PE, corrugated interior, high",
               stockPipe("4 CORRUGATED").roughness);
        within("Corrugated PE, smooth interior, low", "Corrugated PE, smooth interior, high",
               stockPipe("6 DUALWALL").roughness);
        if (row.item == "PVC, smooth interior, high")
            check("PIPE.ROUGHNESS", row, stockPipe("4 SDR35").roughness);
        if (row.item == "HDPE (closed conduit)") check("PIPE.ROUGHNESS", row, bareBore(bore).roughness);
    }
}

TEST(Manning, NormalFillComesBackToTheLastPlaces) {
    for (double fill : {1e-12, 1e-9, 1e-6, 1e-4, 0.001, 0.01, 0.05, 0.1, 0.2, 0.3,  0.4,
                        0.5,   0.51, 0.52, 0.53, 0.54,  0.55, 0.6,  0.7, 0.8, 0.85, 0.9}) {
        const Flow flow = capacity(bore, onePercent, 0.011, fill);
        EXPECT_NEAR(normalFill(bore, onePercent, flow, 0.011) / fill, 1, 1e-12) << "fill " << fill;
    }
    // Towards the peak the depth hangs on the flow like a square root, so the flow is what comes back.
    for (double fill : {0.92, 0.93, 0.935, 0.938, 0.9381, 0.93818, 0.9381812, peakFill}) {
        const Flow flow = capacity(bore, onePercent, 0.011, fill);
        const double found = normalFill(bore, onePercent, flow, 0.011);
        EXPECT_NEAR(capacity(bore, onePercent, 0.011, found) / flow, 1, 1e-12) << "fill " << fill;
        EXPECT_NEAR(found, fill, 1e-7) << "fill " << fill;
    }
    EXPECT_EQ(normalFill(bore, onePercent, Flow(), 0.011), 0);
    EXPECT_EQ(normalFill(bore, onePercent, capacity(bore, onePercent, 0.011) * peakShare, 0.011), peakFill);
}

TEST(Manning, NormalFillEverywhere) {
    const bool held = rc::check("flow -> fill -> flow", [] {
        // Shares of full capacity over 24 powers of ten.
        const double share = std::pow(10.0, *rc::gen::inRange(-24000, 31) / 1000.0);
        const Length pipe = Length::inches(*rc::gen::inRange(10, 400) / 10.0);
        const Slope slope = Slope::fraction(*rc::gen::inRange(1, 3000) / 10000.0);
        const double n = *rc::gen::inRange(8, 30) / 1000.0;
        const Flow flow = capacity(pipe, slope, n) * share;
        const double fill = normalFill(pipe, slope, flow, n);
        RC_LOG() << "share " << share << ", fill " << fill;
        RC_ASSERT(fill > 0);
        RC_ASSERT(fill <= peakFill);
        RC_ASSERT(std::fabs(capacity(pipe, slope, n, fill) / flow - 1) < 1e-12);
    });
    EXPECT_TRUE(held);
}

TEST(Manning, MoreFlowStandsDeeper) {
    double before = 0;
    for (int i = 1; i <= 20000; ++i) {
        const double fill =
            normalFill(bore, onePercent, capacity(bore, onePercent, 0.011) * (peakShare * i / 20000), 0.011);
        ASSERT_GT(fill, before) << "share " << peakShare * i / 20000;
        before = fill;
    }
}

TEST(Manning, InversesAgree) {
    const bool held = rc::check("slope, capacity, self-cleaning slope", [] {
        const Length pipe = Length::inches(*rc::gen::inRange(10, 200) / 10.0);
        const double n = *rc::gen::inRange(8, 30) / 1000.0;
        const double fill = *rc::gen::inRange(1, 1001) / 1000.0;
        const Flow flow = Flow::gpm(*rc::gen::inRange(1, 100) / 10.0);
        const Slope slope = slopeNeeded(pipe, flow, n, fill);
        RC_PRE(slope.fraction() > 0 && slope.fraction() < 1);
        RC_ASSERT(std::fabs(capacity(pipe, slope, n, fill) / flow - 1) < 1e-12);
        RC_ASSERT(std::fabs(frictionSlope(pipe, pipe * fill, flow, n) / slope - 1) < 1e-12);
        const Velocity velocity = Velocity::feetPerSecond(2);
        const Slope cleaning = selfCleaningSlope(pipe, velocity, n);
        RC_PRE(cleaning.fraction() < 1);
        RC_ASSERT(std::fabs(fullVelocity(pipe, cleaning, n) / velocity - 1) < 1e-12);
    });
    EXPECT_TRUE(held);
}

TEST(Manning, VelocityAndShear) {
    const Flow half = capacity(bore, onePercent, 0.011, 0.5);
    EXPECT_NEAR(uniformVelocity(bore, onePercent, half, 0.011) / fullVelocity(bore, onePercent, 0.011), 1,
                1e-12);
    // Half full and full have the same hydraulic radius, D/4: 62.43 lb/cu ft x 3.975/48 ft x 0.01.
    EXPECT_NEAR(wallShear(bore, onePercent, half, 0.011).poundsPerSquareFoot(), 62.428 * 3.975 / 48 * 0.01,
                1e-5);
    // Under pressure: flow over the full area, and the slope that the flow needs.
    const Flow much = capacity(bore, onePercent, 0.011) * 2;
    EXPECT_NEAR(uniformVelocity(bore, onePercent, much, 0.011) / fullVelocity(bore, onePercent, 0.011), 2,
                1e-12);
    EXPECT_NEAR(wallShear(bore, onePercent, much, 0.011).poundsPerSquareFoot(),
                4 * 62.428 * 3.975 / 48 * 0.01, 1e-4);
    EXPECT_EQ(uniformVelocity(bore, onePercent, Flow(), 0.011).si(), 0);
    EXPECT_EQ(wallShear(bore, onePercent, Flow(), 0.011).si(), 0);
}

TEST(Manning, FlowAboveThePeakHasNoDepth) {
    const Flow peak = capacity(bore, onePercent, 0.011) * peakShare;
    try {
        normalFill(bore, onePercent, peak * 1.001, 0.011);
        FAIL() << "no error";
    } catch (const Error& error) {
        EXPECT_EQ(error.kind(), Error::Kind::NoSolution);
        EXPECT_EQ(error.argument(), "flow");
        EXPECT_NE(error.sentence(Language::English).find("at most 106.8 gpm (6.74 L/s)"), std::string::npos)
            << error.what();
        EXPECT_NE(error.sentence(Language::Spanish).find("como máximo 106.8 gpm"), std::string::npos);
    }
    EXPECT_FALSE(findNormalDepth(bore, onePercent, peak * 1.001, 0.011));
    EXPECT_FALSE(findNormalDepth(bore, Slope(), peak, 0.011));
    EXPECT_FALSE(findNormalDepth(bore, Slope::percent(-1), peak, 0.011));
    EXPECT_TRUE(findNormalDepth(bore, onePercent, peak, 0.011));
}

TEST(Manning, BadInput) {
    const auto argument = [](auto&& call) {
        try {
            call();
        } catch (const Error& error) {
            return error.argument();
        }
        return std::string("no error");
    };
    const double bad = std::nan("");
    EXPECT_EQ(argument([] { capacity(Length(), onePercent, 0.011); }), "pipe");
    EXPECT_EQ(argument([] { capacity(bore, Slope(), 0.011); }), "slope");
    EXPECT_EQ(argument([] { capacity(bore, Slope::fraction(2), 0.011); }), "slope");
    EXPECT_EQ(argument([&] { capacity(bore, Slope::fraction(bad), 0.011); }), "slope");
    EXPECT_EQ(argument([] { capacity(bore, onePercent, 0); }), "roughness");
    EXPECT_EQ(argument([] { capacity(bore, onePercent, 0.011, 0); }), "fill");
    EXPECT_EQ(argument([] { capacity(bore, onePercent, 0.011, 1.01); }), "fill");
    EXPECT_EQ(argument([&] { capacity(bore, onePercent, 0.011, bad); }), "fill");
    EXPECT_EQ(argument([] { normalFill(bore, onePercent, Flow::gpm(-1), 0.011); }), "flow");
    EXPECT_EQ(argument([&] { normalFill(bore, onePercent, Flow::gpm(bad), 0.011); }), "flow");
    EXPECT_EQ(argument([] { slopeNeeded(bore, Flow::gpm(-1), 0.011); }), "flow");
    EXPECT_EQ(argument([] { selfCleaningSlope(bore, Velocity(), 0.011); }), "velocity");
}

TEST(Sizing, FirstThatCarries) {
    const std::vector<Pipe> sizes = {stockPipe("4 SDR35"), stockPipe("6 SDR35"), stockPipe("8 SDR35")};
    EXPECT_EQ(firstThatCarries(Flow::gpm(79), onePercent, sizes, {}).name, "4 SDR35");  // 0.8 of 99.3 is 79.4
    EXPECT_EQ(firstThatCarries(Flow::gpm(80), onePercent, sizes, {}).name, "6 SDR35");
    SizingLimits full;
    full.largestShare = 1;
    EXPECT_EQ(firstThatCarries(Flow::gpm(99), onePercent, sizes, full).name, "4 SDR35");
    SizingLimits rough = full;
    rough.roughness = 0.013;
    EXPECT_EQ(firstThatCarries(Flow::gpm(99), onePercent, sizes, rough).name, "6 SDR35");
    SizingLimits fast;
    fast.leastVelocity = Velocity::feetPerSecond(9);
    EXPECT_THROW(firstThatCarries(Flow::gpm(20), onePercent, sizes, fast), Error);
    EXPECT_THROW(firstThatCarries(Flow::gpm(2000), onePercent, sizes, {}), Error);
    EXPECT_THROW(firstThatCarries(Flow(), onePercent, sizes, {}), Error);
    EXPECT_THROW(firstThatCarries(Flow::gpm(20), onePercent, {}, {}), Error);
}

TEST(Sizing, Volumes) {
    const Pipe pipe = stockPipe("4 SDR35");
    // pi/4 3.975^2 = 12.4097 sq in; pi/4 4.215^2 = 13.9535 sq in; 231 cu in to the gallon.
    EXPECT_NEAR(insideVolume(pipe, Length::feet(100)).gallons(), 12.4097 * 1200 / 231, 0.001);
    EXPECT_NEAR(outsideVolume(pipe, Length::feet(100)).cubicFeet(), 13.9535 / 144 * 100, 0.001);
    EXPECT_THROW(outsideVolume(bareBore(bore), Length::feet(1)), Error);
    EXPECT_THROW(insideVolume(pipe, Length::feet(-1)), Error);
}
