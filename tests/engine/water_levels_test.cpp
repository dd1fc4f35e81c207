// Water levels: the profile solver against printed and independently computed profiles in rectangular
// channels and round pipes; jumps; drowned lines against Bernoulli's sum; a fine-step integration of its own;
// and the laws.
#include "trenchbook/lines/water_levels.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <functional>
#include <numbers>
#include <string>

#include "reference.h"
#include "trenchbook/core/error.h"
#include "trenchbook/pipe/circular.h"
#include "trenchbook/pipe/gradual_flow.h"
#include "trenchbook/pipe/manning.h"

namespace trenchbook {
namespace {

using reference::check;
using reference::Row;
using Names = std::vector<std::string>;

// The reaches of a line, as lineWater takes them.
struct Wet {
    std::vector<Run> runs;
    std::vector<Carried> carried;

    void add(const PipeReach& reach, std::optional<Length> below) {
        Run& run = runs.emplace_back();
        run.length = reach.length;
        run.pipe = bareBore(reach.bore);
        run.roughness = reach.roughness;
        carried.push_back({reach.flow, reach.invertUp, reach.invertDown, below, reach.lossK});
    }
};
using AnySection = std::function<Segment(Length)>;

AnySection rectangle(Length width) {
    return [width](Length depth) {
        Segment wetted;
        wetted.depth = depth;
        wetted.area = width * depth;
        wetted.wettedPerimeter = width + 2 * depth;
        wetted.surfaceWidth = width;
        wetted.hydraulicRadius = wetted.area / wetted.wettedPerimeter;
        wetted.pressureMoment = wetted.area * (depth / 2);
        return wetted;
    };
}
AnySection circle(Length bore) {
    return [bore](Length depth) { return segmentAt(bore, depth); };
}

// The same channel under our gravity and Manning constant: the Froude number and the friction slope at every
// depth stay those of the source, so that depths and distances are its own.
struct Alike {
    Flow flow;
    double roughness;
};
Alike alike(Flow flow, double n, double gravitySi, double manning = 1) {
    const double scale = std::sqrt(gravity / gravitySi);
    return {flow * scale, n / (scale * manning)};
}

Row bySide(const std::string& file, const std::string& item, const std::string& output) {
    for (const Row& row : reference::rows(file))
        if (row.item == item && row.output == output) return row;
    ADD_FAILURE() << "no row " << item << ", " << output;
    return {};
}

TEST(GradualFlow, PrintedRectangularProfileDepthByDepth) {
    const AnySection section = rectangle(Length::metres(6.1));
    const Alike same = alike(Flow::cubicMetresPerSecond(17), 0.014, 9.81);
    const GradualFlow flow(section, same.flow, same.roughness, Slope::fraction(0.001));
    const auto energy = [&](double y) {
        return specificEnergy(section(Length::metres(y)), same.flow).metres();
    };
    const auto friction = [&](double y) { return flow.frictionSlope(Length::metres(y)).fraction(); };
    int checked = 0;
    for (const Row& row : reference::rows("12a_gvf_rectangular_profiles.csv")) {
        if (!row.item.starts_with("Sturm 5.5, M2")) continue;
        ++checked;
        if (row.output == "specific energy") {
            check("LINES.LEVELS", row, energy(row.input("y_m")));
        } else if (row.output == "friction slope") {
            check("LINES.LEVELS", row, friction(row.input("y_m")));
        } else if (row.output.starts_with("momentum function")) {
            check("LINES.LEVELS", row,
                  momentum(section(Length::metres(row.input("y_m"))), same.flow).cubicMetres());
        } else if (row.output.starts_with("step length")) {
            // The book's direct step with our energies and friction slopes.
            const double from = row.input("y_from_m"), to = row.input("y_to_m");
            check("LINES.LEVELS", row,
                  (energy(to) - energy(from)) / (0.001 - (friction(from) + friction(to)) / 2));
        }
    }
    EXPECT_GT(checked, 50);
}

TEST(GradualFlow, ConvergedRectangularProfiles) {
    int checked = 0;
    for (const Row& row : reference::rows("12a_gvf_rectangular_profiles.csv")) {
        if (row.provenance != "computed" || row.output != "x") continue;
        const double start = row.has("y0_m")                              ? row.input("y0_m")
                             : row.item.find("0.47") != std::string::npos ? 0.47
                                                                          : 0.93;
        const double x0 = row.has("x0_m") ? row.input("x0_m") : 0;
        const Alike same =
            alike(Flow::cubicMetresPerSecond(row.input("Q_m3s")), row.input("n"), row.input("g"));
        const GradualFlow flow(rectangle(Length::metres(row.input("b_m"))), same.flow, same.roughness,
                               Slope::fraction(row.input("S0")));
        check("LINES.LEVELS", row,
              x0 + flow.distance(Length::metres(start), Length::metres(row.input("y_m"))).metres());
        ++checked;
    }
    EXPECT_GE(checked, 10);
}

TEST(GradualFlow, ProfilesInRoundPipes) {
    int checked = 0;
    for (const Row& row : reference::rows("12j_gvf_circular_computed.csv")) {
        const bool feet = row.has("D_ft");
        const auto length = [&](double value) { return feet ? Length::feet(value) : Length::metres(value); };
        const auto value = [&](Length found) { return feet ? found.feet() : found.metres(); };
        // "Q=0.25 ft3/s"
        const double q = row.input("Q");
        const Alike same = alike(feet ? Flow::cfs(q) : Flow::cubicMetresPerSecond(q), row.input("n"),
                                 row.input("g") * (feet ? metresPerFoot : 1),
                                 feet ? row.input("k") * std::cbrt(metresPerFoot) : row.input("k"));
        // The table writes an 8 in bore as 0.666667 ft.
        const double bore = feet && std::fabs(row.input("D_ft") - 2.0 / 3) < 1e-5 ? 2.0 / 3
                            : feet                                                ? row.input("D_ft")
                                                                                  : row.input("D_m");
        const Slope slope = Slope::fraction(row.input("S0"));
        if (row.output == "critical depth") {
            check("PIPE.CRITICAL", row, value(criticalDepth(length(bore), same.flow)));
        } else if (row.output == "normal depth") {
            check("LINES.LEVELS", row, value(normalDepth(length(bore), slope, same.flow, same.roughness)));
        } else {
            const Length critical = criticalDepth(length(bore), same.flow);
            // Profiles that start at the critical depth start at ours, not at its six printed digits.
            const Length printed = length(row.input("y0"));
            const Length start = std::fabs(printed / critical - 1) < 1e-5 ? critical : printed;
            const GradualFlow flow(circle(length(bore)), same.flow, same.roughness, slope);
            check("LINES.LEVELS", row, value(flow.distance(start, length(row.input("y")))));
        }
        ++checked;
    }
    EXPECT_EQ(checked, 46);
}

TEST(GradualFlow, WalksToTheDepthThatTheDistanceBelongsTo) {
    EXPECT_TRUE(rc::check("upstream is the inverse of distance", [] {
        const Length bore = Length::inches(*rc::gen::element(4, 6, 8));
        const Slope slope = Slope::fraction(*rc::gen::inRange(10, 40) / 10000.0);
        const double share = *rc::gen::inRange(5, 95) / 100.0;
        const Flow flow = capacity(bore, slope, 0.013) * share;
        const Length normal = normalDepth(bore, slope, flow, 0.013), critical = criticalDepth(bore, flow);
        RC_PRE(critical < normal);
        const GradualFlow profile(circle(bore), flow, 0.013, slope);
        const Length start = *rc::gen::inRange(0, 2) ? critical : bore * 0.999;
        const Length length = Length::feet(*rc::gen::inRange(1, 3000) / 10.0);
        const auto walk = profile.upstream(start, normal, normal, length);
        RC_ASSERT(walk.length == length);
        RC_PRE(std::fabs(walk.depth / normal - 1) > 1e-6);
        RC_ASSERT(std::fabs(profile.distance(walk.depth, start) / length - 1) < 1e-6);
    }));
}

// An integration of its own: 200 000 Runge-Kutta steps over the length, geometry from the angle.
double fineDepth(double bore, double n, double q, double slope, double start, double length) {
    const auto rate = [&](double y) {
        if (y >= bore) {
            const double area = std::numbers::pi * bore * bore / 4;
            return std::pow(n * q / area, 2) / std::pow(bore / 4, 4.0 / 3) - slope;
        }
        const double theta = 2 * std::acos(1 - 2 * y / bore);
        const double area = bore * bore / 8 * (theta - std::sin(theta));
        const double radius = bore / 4 * (1 - std::sin(theta) / theta);
        const double top = bore * std::sin(theta / 2);
        const double friction = std::pow(n * q / area, 2) / std::pow(radius, 4.0 / 3);
        return -(slope - friction) / (1 - q * q * top / (9.80665 * std::pow(area, 3)));
    };
    const int steps = 200000;
    const double h = length / steps;
    double y = start;
    for (int i = 0; i < steps; ++i) {
        const double k1 = rate(y), k2 = rate(y + h / 2 * k1), k3 = rate(y + h / 2 * k2),
                     k4 = rate(y + h * k3);
        y += h / 6 * (k1 + 2 * k2 + 2 * k3 + k4);
    }
    return y;
}

TEST(ReachWater, AgreesWithAFineStepIntegration) {
    struct Case {
        const char* what;
        double bore, n, q, slope, start, length;
    };
    for (const Case& c :
         {Case{"M1 from near the crown", 0.15, 0.011, 0.006, 0.002, 0.145, 20},
          Case{"M1 from above the crown: full, then open", 0.15, 0.011, 0.006, 0.002, 0.16, 40},
          Case{"M2 from below the normal depth", 0.15, 0.011, 0.006, 0.002, 0.080, 15},
          Case{"level bed, up to the crown and full", 0.15, 0.011, 0.006, 0, 0.10, 80},
          Case{"adverse bed", 0.15, 0.011, 0.004, -0.001, 0.10, 30},
          Case{"overloaded: rises to the crown", 0.10, 0.011, 0.007, 0.005, 0.090, 12},
          Case{"S1 in a steep pipe", 0.10, 0.011, 0.004, 0.02, 0.095, 0.4}}) {
        SCOPED_TRACE(c.what);
        const PipeReach reach{.length = Length::metres(c.length),
                              .bore = Length::metres(c.bore),
                              .roughness = c.n,
                              .flow = Flow::cubicMetresPerSecond(c.q),
                              .invertUp = Length::metres(10 + c.slope * c.length),
                              .invertDown = Length::metres(10)};
        const ReachWater water = reachWater(reach, Length::metres(10 + c.start));
        const double fine = fineDepth(c.bore, c.n, c.q, c.slope, c.start, c.length);
        check(
            "LINES.LEVELS", c.what, (water.levelUp - reach.invertUp).metres(), fine, 2e-6,
            "Runge-Kutta integration of dy/dx = (S0 - Sf)/(1 - F2) in 200 000 steps, geometry from the angle",
            "computed");
        EXPECT_NEAR(water.levelDown.metres(), 10 + c.start, 1e-12);
    }
}

TEST(ReachWater, SequentDepthsAreWhereTheJumpStands) {
    int checked = 0;
    for (const Row& row : reference::rows("12b_hydraulic_jump_momentum.csv")) {
        const bool open = row.item == "Circular, sequent depth (free surface)";
        const bool full = row.item.starts_with("Circular, sequent depth (full");
        if (!open && !full) continue;
        // A steep pipe whose normal depth is y1, and the water below just under, then just over the sequent
        // depth: below it the shooting water sweeps out, above it the jump moves up the pipe.
        const Length bore = Length::metres(0.2);
        const Flow flow = Flow::cubicMetresPerSecond(row.input("Q/(g^0.5 D^2.5)") * std::sqrt(gravity) *
                                                     std::pow(bore.metres(), 2.5));
        const Length normal = bore * row.input("y1/D");
        if (normal >= criticalDepth(bore, flow)) continue;
        const Slope slope = frictionSlope(bore, normal, flow, 0.011);
        const PipeReach reach{.length = Length::metres(1),
                              .bore = bore,
                              .roughness = 0.011,
                              .flow = flow,
                              .invertUp = Length::metres(slope.fraction()),
                              .invertDown = Length()};
        double low = 0, high = 20 * bore.metres();
        for (int step = 0; step < 60; ++step) {
            const double middle = (low + high) / 2;
            const bool swept = reachWater(reach, Length::metres(middle)).state == WaterState::Free;
            (swept ? low : high) = middle;
        }
        check("LINES.LEVELS", row, low / bore.metres());
        // Well above the printed sequent depth the jump is inside, well below it the surface stays open.
        const auto state = [&](double depths) {
            const WaterState found = reachWater(reach, bore * depths).state;
            return found == WaterState::Free ? "open" : "drowned";
        };
        reference::check("LINES.STATE", "tailwater at which a jump enters, in bores", low / bore.metres(),
                         row.number(), row.allowed(), row.source.c_str(), "computed");
        EXPECT_STREQ(state(row.number() * 0.99), "open") << row.id;
        EXPECT_STREQ(state(row.number() * 1.01), "drowned") << row.id;
        ++checked;
    }
    EXPECT_GT(checked, 20);
}

TEST(GradualFlow, JumpsInPrintedChannels) {
    // Momentum is kept and energy lost across the printed jump: rectangle 20 ft, 2,500 cfs, 3.5 ft.
    const AnySection section = rectangle(Length::feet(20));
    const Alike same = alike(Flow::cfs(2500), 0.014, 32.2 * metresPerFoot);
    const auto force = [&](double y) { return momentum(section(Length::feet(y)), same.flow).cubicFeet(); };
    double low = 10, high = 20;
    for (int step = 0; step < 80; ++step) {
        const double middle = (low + high) / 2;
        (force(middle) < force(3.5) ? low : high) = middle;
    }
    const char* file = "12b_hydraulic_jump_momentum.csv";
    const char* item = "Rectangular 20 ft, y1 3.5 ft";
    const auto energy = [&](double y) { return specificEnergy(section(Length::feet(y)), same.flow).feet(); };
    check("LINES.LEVELS", bySide(file, item, "sequent depth"), low);
    check("LINES.LEVELS", bySide(file, item, "upstream specific energy"), energy(3.5));
    check("LINES.LEVELS", bySide(file, item, "downstream specific energy"), energy(low));
    check("LINES.LEVELS", bySide(file, item, "energy loss"), energy(3.5) - energy(low));
}

TEST(LineWater, GradeLinesThroughBoxes) {
    // Pipes full, each box stills the water: K of a run is 1 (the exit of the pipe that enters the box) +
    // entry loss.
    struct Line {
        const char* item;
        std::vector<const char*> pipes;
        double tailwater;
    };
    for (const Line& line : {Line{"Three-pipe storm drain, all full", {"pipe 1", "pipe 2", "pipe 3"}, 100},
                             Line{"Small yard drain, all full", {"pipe 1", "pipe 2"}, 10}}) {
        const auto find = [&](const char* pipe, const std::string& output) {
            for (const Row& row : reference::rows("12k_hgl_storm_drain_computed.csv"))
                if (row.item == line.item && row.inputs.starts_with(pipe) && row.output.starts_with(output))
                    return row;
            ADD_FAILURE() << line.item << ", " << pipe << ", " << output;
            return Row{};
        };
        Names from, to;
        Wet rows;
        const double ratio = std::sqrt(gravity / (32.2 * metresPerFoot));
        for (std::size_t i = 0; i < line.pipes.size(); ++i) {
            const Row row = find(line.pipes[i], "velocity");
            const Row level = find(line.pipes[i], "water level in structure");
            const double entry = std::stod(level.output.substr(level.output.find("K=") + 2));
            // Bores of a third of a foot are printed with six digits; the manner of the source is kept
            // otherwise.
            const double bore = std::fabs(row.input("D_ft") - 1.0 / 3) < 1e-5 ? 1.0 / 3 : row.input("D_ft");
            const Alike same = alike(Flow::cfs(row.input("Q_cfs")), row.input("n"), 32.2 * metresPerFoot,
                                     1.486 * std::cbrt(metresPerFoot));
            from.push_back("node" + std::to_string(i + 1));
            to.push_back("node" + std::to_string(i));
            rows.add({.length = Length::feet(row.input("L_ft")),
                      .bore = Length::feet(bore),
                      .roughness = same.roughness,
                      .flow = same.flow,
                      .invertUp = Length::feet(line.tailwater - 8),
                      .invertDown = Length::feet(line.tailwater - 8),
                      .lossK = 1 + entry},
                     i == 0 ? std::optional(Length::feet(line.tailwater)) : std::nullopt);
            EXPECT_NEAR(same.flow.cfs() / ratio, row.input("Q_cfs"), 1e-9);
        }
        const auto answers = lineWater(Network(from, to), rows.runs, rows.carried);
        for (std::size_t i = 0; i < line.pipes.size(); ++i) {
            const ReachWater& water = *answers[i].value;
            EXPECT_EQ(water.state, WaterState::Full);
            EXPECT_EQ(water.fullShare, 1);
            check("LINES.LEVELS", find(line.pipes[i], "HGL at downstream end"), water.levelDown.feet());
            check("LINES.LEVELS", find(line.pipes[i], "water level in structure"), water.levelUp.feet());
        }
    }
}

TEST(ReachWater, ManholeLossOfThePrintedExample) {
    // K 0.84 of the outfall's velocity head, 475.08 ft at its upper end: 475.50 ft in the box and the line
    // above.
    const Row row = bySide("06a_efm_mays_headloss_examples.csv", "Example 15.2.4 manhole pressure lines",
                           "in-line pressure change");
    const Flow flow = Flow::cfs(71);
    PipeReach reach{.length = Length::feet(10),
                    .bore = Length::inches(48),
                    .roughness = 0.013,
                    .flow = flow,
                    .invertUp = Length::feet(465),
                    .invertDown = Length::feet(465)};
    const Length without = reachWater(reach, Length::feet(475)).levelUp;
    reach.lossK = row.input("K");
    const Length with = reachWater(reach, Length::feet(475)).levelUp;
    check("LINES.LEVELS", row, (with - without).feet());
}

TEST(ReachWater, BernoulliHoldsAlongADrownedLine) {
    EXPECT_TRUE(rc::check("level up = level down + friction + K V2/2g, for any full line", [] {
        const int count = *rc::gen::inRange(1, 8);
        Names from, to;
        Wet rows;
        double expected = 50;
        for (int i = 0; i < count; ++i) {
            const double feet = *rc::gen::inRange(1, 200), inches = *rc::gen::element(3, 4, 6);
            const double gpm = *rc::gen::inRange(1, 200), k = *rc::gen::inRange(0, 30) / 10.0;
            from.push_back("N" + std::to_string(i + 1));
            to.push_back("N" + std::to_string(i));
            rows.add({.length = Length::feet(feet),
                      .bore = Length::inches(inches),
                      .roughness = 0.011,
                      .flow = Flow::gpm(gpm),
                      .invertUp = Length::feet(10 + i + 0.5),
                      .invertDown = Length::feet(10 + i),
                      .lossK = k},
                     Length::feet(50));
            // US units, written out: Q in cfs, 1.485918 = 0.3048^(-1/3).
            const double q = gpm * 231 / 1728 / 60, area = std::numbers::pi / 4 * inches * inches / 144;
            const double friction =
                std::pow(q * 0.011 / (std::cbrt(1 / 0.3048) * area * std::pow(inches / 48, 2.0 / 3)), 2);
            expected += friction * feet + k * std::pow(q / area, 2) / (2 * 9.80665 / 0.3048);
        }
        const auto answers = lineWater(Network(from, to), rows.runs, rows.carried);
        RC_ASSERT(std::fabs(answers.back().value->levelUp.feet() - expected) < 1e-9 * expected);
        RC_ASSERT(answers.back().value->fullShare == 1);
    }));
}

TEST(ReachWater, SteepReachHoldsNormalDepthUntilDrowned) {
    // Smooth 4 in pipe at 1 % with 50 gpm: shooting. n 0.011: normal depth below critical.
    const PipeReach reach{.length = Length::feet(60),
                          .bore = Length::inches(3.975),
                          .roughness = 0.011,
                          .flow = Flow::gpm(50),
                          .invertUp = Length::feet(98.6),
                          .invertDown = Length::feet(98)};
    const Length normal = normalDepth(reach.bore, Slope::percent(1), reach.flow, 0.011);
    const Length critical = criticalDepth(reach.bore, reach.flow);
    ASSERT_LT(normal, critical);
    const ReachWater free = reachWater(reach, std::nullopt);
    EXPECT_EQ(free.levelUp, reach.invertUp + normal);
    EXPECT_EQ(free.levelDown, reach.invertDown + normal);
    EXPECT_EQ(free.state, WaterState::Free);
    // Water at the critical depth has no momentum to hold it back; a foot over the invert drowns the lower
    // part.
    EXPECT_EQ(reachWater(reach, reach.invertDown + critical).levelUp, free.levelUp);
    const ReachWater part = reachWater(reach, Length::feet(98.6));
    EXPECT_EQ(part.levelUp, free.levelUp);
    EXPECT_EQ(part.levelDown, Length::feet(98.6));
    EXPECT_EQ(part.state, WaterState::PartDrowned);
    EXPECT_GT(part.fullShare, 0.2);
    EXPECT_LT(part.fullShare, 0.8);
    const ReachWater drowned = reachWater(reach, Length::feet(99.5));
    EXPECT_EQ(drowned.state, WaterState::Full);
    EXPECT_NEAR(drowned.levelUp.feet(),
                99.5 + 60 * frictionSlope(reach.bore, reach.bore, reach.flow, 0.011).fraction(), 1e-9);
    EXPECT_EQ(reachWater(reach, Length::feet(97)).state, WaterState::DropsIn);
}

TEST(ReachWater, FreeOutfallIsTheLesserOfNormalAndCriticalDepth) {
    EXPECT_TRUE(rc::check("for any pipe that is not overloaded", [] {
        const Length bore = Length::inches(*rc::gen::element(3, 4, 6, 8));
        const Slope slope = Slope::fraction(*rc::gen::inRange(5, 1000) / 10000.0);
        const Flow flow = capacity(bore, slope, 0.013) * (*rc::gen::inRange(1, 100) / 100.0);
        const Length length = Length::feet(*rc::gen::inRange(1, 200));
        const PipeReach reach{length, bore, 0.013, flow, slope * length, Length(), 0};
        const Length least = std::min(normalDepth(bore, slope, flow, 0.013), criticalDepth(bore, flow));
        RC_ASSERT(std::fabs((reachWater(reach, std::nullopt).levelDown - least).metres()) < 1e-12);
    }));
}

TEST(ReachWater, WithoutFlowTheWaterStandsLevel) {
    PipeReach reach{.length = Length::feet(50),
                    .bore = Length::feet(0.5),
                    .roughness = 0.011,
                    .flow = Flow(),
                    .invertUp = Length::feet(11),
                    .invertDown = Length::feet(10)};
    const ReachWater half = reachWater(reach, Length::feet(11));
    EXPECT_NEAR(half.levelUp.feet(), 11, 1e-12);
    EXPECT_NEAR(half.fullShare, 0.5, 1e-12);
    EXPECT_EQ(half.state, WaterState::PartDrowned);
    EXPECT_EQ(reachWater(reach, Length::feet(12)).state, WaterState::Full);
    EXPECT_EQ(reachWater(reach, std::nullopt).levelUp, Length::feet(11));
    EXPECT_EQ(reachWater(reach, Length::feet(9)).state, WaterState::DropsIn);
}

TEST(ReachWater, BadValuesAreNamed) {
    const PipeReach good{Length::feet(50), Length::inches(4), 0.011, Flow::gpm(20),
                         Length::feet(11), Length::feet(10),  0};
    const auto argument = [&](auto change) {
        PipeReach bad = good;
        change(bad);
        try {
            reachWater(bad, std::nullopt);
        } catch (const Error& error) {
            return error.argument();
        }
        return std::string("accepted");
    };
    EXPECT_EQ(argument([](PipeReach& r) { r.length = {}; }), "length");
    EXPECT_EQ(argument([](PipeReach& r) { r.bore = {}; }), "pipe");
    EXPECT_EQ(argument([](PipeReach& r) { r.roughness = 0; }), "roughness");
    EXPECT_EQ(argument([](PipeReach& r) { r.flow = Flow::gpm(-1); }), "flow");
    EXPECT_EQ(argument([](PipeReach& r) { r.lossK = -1; }), "K");
}

PipeReach anyReach() {
    const Length length = Length::feet(*rc::gen::inRange(1, 2000) / 10.0);
    const Slope slope = Slope::fraction(*rc::gen::inRange(-20, 600) / 10000.0);
    return {.length = length,
            .bore = Length::inches(*rc::gen::element(3, 4, 6, 8)),
            .roughness = *rc::gen::element(0.009, 0.011, 0.013, 0.02),
            .flow = Flow::gpm(*rc::gen::inRange(0, 4000) / 10.0),
            .invertUp = Length::feet(100) + slope * length,
            .invertDown = Length::feet(100),
            .lossK = *rc::gen::inRange(0, 20) / 10.0};
}

TEST(ReachWater, HigherWaterBelowNeverLowersWaterAbove) {
    EXPECT_TRUE(rc::check("monotone in the outlet level", [] {
        const PipeReach reach = anyReach();
        const double first = *rc::gen::inRange(-500, 3000) / 1000.0,
                     more = *rc::gen::inRange(0, 2000) / 1000.0;
        const ReachWater low = reachWater(reach, Length::feet(100 + first));
        const ReachWater high = reachWater(reach, Length::feet(100 + first + more));
        RC_LOG() << "length " << reach.length.feet() << " ft, bore " << reach.bore.inches() << " in, n "
                 << reach.roughness << ", flow " << reach.flow.gpm() << " gpm, fall "
                 << (reach.invertUp - reach.invertDown).feet() << " ft, K " << reach.lossK << ", below "
                 << first << " then +" << more << " ft: " << low.levelUp.feet() << " then "
                 << high.levelUp.feet() << " ft";
        RC_ASSERT(high.levelUp.metres() >= low.levelUp.metres() - 1e-9);
        RC_ASSERT(high.fullShare >= low.fullShare - 1e-9);
        RC_ASSERT(low.fullShare >= 0);
        RC_ASSERT(high.fullShare <= 1);
        RC_ASSERT(low.levelUp >= reach.invertUp);
    }));
}

TEST(ReachWater, LevelsMoveWithTheDatumAndScaleAfterFroude) {
    EXPECT_TRUE(rc::check("all levels raised alike", [] {
        const PipeReach reach = anyReach();
        const Length below = Length::feet(100 + *rc::gen::inRange(-500, 3000) / 1000.0),
                     rise = Length::feet(37);
        PipeReach raised = reach;
        raised.invertUp += rise;
        raised.invertDown += rise;
        const ReachWater low = reachWater(reach, below), high = reachWater(raised, below + rise);
        RC_ASSERT(std::fabs((high.levelUp - low.levelUp - rise).metres()) < 1e-7);
    }));
    EXPECT_TRUE(rc::check("twice the size, 2^2.5 the flow, 2^(1/6) the roughness: twice the depths", [] {
        const PipeReach reach = anyReach();
        const double depth = *rc::gen::inRange(-500, 3000) / 1000.0;
        PipeReach big = reach;
        big.length = reach.length * 2, big.bore = reach.bore * 2, big.flow = reach.flow * std::pow(2, 2.5);
        big.roughness = reach.roughness * std::pow(2, 1.0 / 6);
        big.invertUp = reach.invertUp * 2, big.invertDown = reach.invertDown * 2;
        const ReachWater small = reachWater(reach, Length::feet(100 + depth));
        const ReachWater large = reachWater(big, Length::feet(200 + 2 * depth));
        RC_ASSERT(std::fabs((large.levelUp - 2 * small.levelUp).metres()) < 1e-6);
    }));
}

TEST(LineWater, OrderNeverMattersAndOneBadRowSpoilsOnlyWhatHangsOnIt) {
    EXPECT_TRUE(rc::check("on any tree", [] {
        const int count = *rc::gen::inRange(1, 20);
        Names from, to;
        Wet rows;
        for (int i = 0; i < count; ++i) {
            const int below = *rc::gen::inRange(i + 1, count + 2);
            from.push_back("N" + std::to_string(i));
            to.push_back(below < count ? "N" + std::to_string(below) : "Out" + std::to_string(i));
            PipeReach reach = anyReach();
            reach.invertUp += Length::feet(count - i), reach.invertDown += Length::feet(count - i);
            rows.add(reach, std::nullopt);
        }
        const auto straight = lineWater(Network(from, to), rows.runs, rows.carried);
        Names mixedFrom(from.rbegin(), from.rend()), mixedTo(to.rbegin(), to.rend());
        const auto mixed =
            lineWater(Network(mixedFrom, mixedTo), std::vector(rows.runs.rbegin(), rows.runs.rend()),
                      std::vector(rows.carried.rbegin(), rows.carried.rend()));
        for (int i = 0; i < count; ++i) {
            RC_ASSERT(straight[i].value.has_value());
            RC_ASSERT(mixed[count - 1 - i].value->levelUp == straight[i].value->levelUp);
        }
        const int spoilt = *rc::gen::inRange(0, count);
        rows.carried[spoilt].flow.reset();
        const Network lines(from, to);
        const auto after = lineWater(lines, rows.runs, rows.carried);
        for (int i = 0; i < count; ++i) {
            bool hangs = false;
            for (std::size_t at = i; at != Network::none; at = lines.downstream(at))
                hangs |= at == std::size_t(spoilt);
            RC_ASSERT(after[i].value.has_value() == !hangs);
            if (!hangs) RC_ASSERT(after[i].value->levelUp == straight[i].value->levelUp);
            if (hangs && i != spoilt) RC_ASSERT(after[i].fault.other == std::size_t(spoilt));
        }
    }));
}

}  // namespace
}  // namespace trenchbook
