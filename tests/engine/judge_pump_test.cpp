// A pump basin at the end of a line, worked by hand, and what is told of it at, under and over each limit.
//
// The small job's 54.026 gpm run into a basin 36 in across: floor 91, stop 93, start 95, lid 98, invert 96. Discharge:
// 60 ft of 2 in Schedule 40 (2.067 in) with two elbows and a check valve, up to 101: a lift of 8 ft.
//
//     At 60 gpm: speed 0.4085 x 60 / 2.067^2 = 5.737 ft/s; length with fittings 60 + 2 x 9 + 17 = 95 ft;
//     Hazen-Williams, C = 140: 0.2083 (100/140)^1.85 60^1.85 / 2.067^4.87 = 6.342 ft in 100 ft, 6.025 ft;
//     velocity head 5.737^2 / 64.35 = 0.511 ft; total 14.536 ft.
//
// The pump's curve is drawn straight through that point.
#include <gtest/gtest.h>

#include <functional>

#include "jobs.h"
#include "judged.h"

namespace trenchbook {
namespace {

using enum Severity;

Job pumped() {
    Job job = smallJob();
    job.nodes[2].kinds = nodeKinds("pump basin");
    job.runs[1].surfaceDown = CoverSurface::Lawn;
    job.pumps = {{.node = "Out",
                  .inside = Length::inches(36),
                  .floor = Length::feet(91),
                  .on = Length::feet(95),
                  .off = Length::feet(93),
                  .curve = {{Flow{}, Length::feet(2 * 14.536)}, {Flow::gpm(120), Length{}}},
                  .pipe = stockPipe("2 SCH40"),
                  .length = Length::feet(60),
                  .elbows = 2,
                  .end = Length::feet(101),
                  .checkValve = true,
                  .powerOut = PowerOut::Alarm,
                  .groundwater = Length::feet(90),
                  .blank = false}};
    return job;
}

TEST(JudgePump, IsWorkedOutAsByHand) {
    const Job job = pumped();
    const SolvedPump is = solve(job).pumps[0];
    EXPECT_NEAR(is.inflow->gpm(), 54.026, 1e-3);
    EXPECT_NEAR(is.lift->feet(), 8, 1e-9);
    EXPECT_NEAR(is.gives->gpm(), 60, 0.01);
    EXPECT_NEAR(is.head->feet(), 14.536, 0.003);
    EXPECT_NEAR(is.speed->feetPerSecond(), 5.737, 0.002);
    // Less flow, less head: friction goes with the power 1.85 of it, 6.025 x 0.90043^1.85 = 4.962 ft, the velocity head
    // with its square, 0.415 ft.
    EXPECT_NEAR(is.headAtInflow->feet(), 8 + 4.962 + 0.415, 0.003);
    // pi/4 x 3^2 x 2 = 14.137 cu ft between the floats: 105.75 gal.
    EXPECT_NEAR(is.between->gallons(), 105.75, 0.01);
    // At 30 gpm it fills in 105.75 / 30 and empties in as much: 7.05 min, 8.511 an hour. Alone it runs 105.75 / 60.
    EXPECT_NEAR(*is.starts, 8.511, 0.003);
    EXPECT_NEAR(is.runs->minutes(), 1.7625, 0.001);
    EXPECT_NEAR(is.underInvert->feet(), 1, 1e-9);
    // Without power: 3 ft of 7.0686 sq ft, and 100 ft of pipe of 0.0861785 sq ft, all of it under the lid at 98:
    // 29.824 cu ft at 54.026 / 7.48052 cu ft a minute.
    EXPECT_EQ(is.grateAt, "Out");
    EXPECT_NEAR(is.lowestGrate->feet(), 98, 1e-9);
    EXPECT_NEAR(is.outage->minutes(), 4.1295, 0.001);
    EXPECT_FALSE(is.held);
    EXPECT_TRUE(isOk(job, Part::Pump, 0));
    EXPECT_TRUE(tells(job, Part::Pump, 0, Caution, "", "water stands at Out after 4.1 min"));
    // Over 5 ft/s it digs at its end.
    EXPECT_TRUE(tells(job, Part::Pump, 0, Caution, "velocity.outlet.max", "splash block"));
}

// Where less comes than half of what it gives it starts most often at that.
TEST(JudgePump, StartsAtWhatComes) {
    Job job = pumped();
    job.inlets.pop_back();
    jobs::closeUnfed(job);
    job.inlets[0].roof.area =
        Area::squareFeet(1000.0 * 12 / 37.403);  // 900 sq ft of area x C at 4 in/hr: 37.403 gpm
    const SolvedPump is = solve(job).pumps[0];
    EXPECT_NEAR(is.inflow.value().gpm(), 12, 0.001);
    // 105.75 / 12 + 105.75 / 48 = 11.016 min.
    EXPECT_NEAR(*is.starts, 60 / 11.016, 0.003);
}

TEST(JudgePump, EachInputIsAskedForByItsHeading) {
    const struct {
        const char* heading;
        std::function<void(Pump&)> take;
    } cases[] = {
        {"Basin", [](Pump& pump) { pump.node.clear(); }},
        {"Inside diameter", [](Pump& pump) { pump.inside.reset(); }},
        {"Floor", [](Pump& pump) { pump.floor.reset(); }},
        {"Pump on", [](Pump& pump) { pump.on.reset(); }},
        {"Pump off", [](Pump& pump) { pump.off.reset(); }},
        {"Pump curve", [](Pump& pump) { pump.curve.clear(); }},
        {"Discharge pipe", [](Pump& pump) { pump.pipe.reset(); }},
        {"Discharge length", [](Pump& pump) { pump.length.reset(); }},
        {"Elbows", [](Pump& pump) { pump.elbows.reset(); }},
        {"Discharge level", [](Pump& pump) { pump.end.reset(); }},
        {"Check valve", [](Pump& pump) { pump.checkValve.reset(); }},
        {"Power out", [](Pump& pump) { pump.powerOut = PowerOut::NotSaid; }},
        {"Groundwater", [](Pump& pump) { pump.groundwater.reset(); }},
    };
    for (const auto& [heading, take] : cases) {
        Job job = pumped();
        take(job.pumps[0]);
        EXPECT_TRUE(tells(job, Part::Pump, 0, NotJudged, "", std::string(heading) + " is missing"));
        EXPECT_FALSE(tells(job, Part::Pump, 0, No, anyRule, "")) << heading;
        // What cannot be read is told with its own reason, once.
        job.pumps[0].unusable = {{heading, "some", {"it is \"some\"", "es \"some\""}}};
        EXPECT_TRUE(tells(job, Part::Pump, 0, No, "", "it is \"some\""));
        EXPECT_FALSE(tells(job, Part::Pump, 0, NotJudged, "", std::string(heading) + " is missing"));
    }
}

TEST(JudgePump, ItsNodeIsAPumpBasinThatALineEndsIn) {
    Job job = pumped();
    job.nodes[2].kinds = nodeKinds("ditch");
    EXPECT_TRUE(tells(job, Part::Pump, 0, No, "", "Out is no pump basin on Nodes"));
    job = pumped();
    job.pumps[0].node = "nowhere";
    EXPECT_TRUE(tells(job, Part::Pump, 0, No, "", "nowhere is no pump basin"));
    job = pumped();
    job.nodes[0].kinds = nodeKinds("pump basin");
    job.pumps[0].node = "A";
    EXPECT_TRUE(tells(job, Part::Pump, 0, No, "", "no run ends at A"));
    job = pumped();
    job.pumps.push_back(job.pumps[0]);
    EXPECT_TRUE(isOk(job, Part::Pump, 0));
    EXPECT_TRUE(tells(job, Part::Pump, 1, No, "", "Out stands in an earlier row too"));
}

TEST(JudgePump, LevelsLieOneOverTheOther) {
    Job job = pumped();
    job.pumps[0].off = Length::feet(95);
    EXPECT_TRUE(tells(job, Part::Pump, 0, No, "", "Pump on must lie over Pump off"));
    job = pumped();
    job.pumps[0].floor = Length::feet(92.75);
    EXPECT_TRUE(isOk(job, Part::Pump, 0));
    job.pumps[0].floor = Length::feet(92.76);
    EXPECT_TRUE(tells(job, Part::Pump, 0, Check, "pump.off.min", "by 0.24 ft, at least 0.25 ft"));
    job.pumps[0].floor = Length::feet(93.1);
    EXPECT_TRUE(tells(job, Part::Pump, 0, No, "pump.off.min", "by -0.1 ft"));
    job = pumped();
    job.nodes[2].opening = Length::feet(95.5);
    EXPECT_TRUE(isOk(job, Part::Pump, 0));
    job.nodes[2].opening = Length::feet(95.49);
    EXPECT_TRUE(tells(job, Part::Pump, 0, Check, "freeboard.min", "the lid over Pump on 0.49 ft"));
    job.nodes[2].opening = Length::feet(95);
    EXPECT_TRUE(tells(job, Part::Pump, 0, No, "freeboard.min", "the lid over Pump on 0 ft"));
    EXPECT_TRUE(tells(job, Part::Pump, 0, No, "", "water stands at Out before the pump starts"));
    job.nodes[2].opening.reset();
    job.nodes[2].ground.reset();
    EXPECT_TRUE(tells(job, Part::Pump, 0, NotJudged, "", "the basin's lid has no level"));
    EXPECT_TRUE(tells(job, Part::Pump, 0, NotJudged, "", "how long the basin holds out"));
}

TEST(JudgePump, WhatComesMustGoOut) {
    Job job = pumped();
    const double share = *solve(job).pumps[0].inflow / *solve(job).pumps[0].gives;
    EXPECT_NEAR(share, 0.9004, 2e-4);
    job.rules.set("pump.share.max", share + 1e-6, UnitSystem::US);
    EXPECT_TRUE(isOk(job, Part::Pump, 0));
    job.rules.set("pump.share.max", share - 1e-4, UnitSystem::US);
    EXPECT_TRUE(
        tells(job, Part::Pump, 0, No, "pump.share.max", "the pump gives 60 gpm at 14.54 ft, 54 gpm come"));
    // Of the pump itself: at exactly what it gives the water stands, a little more and the basin fills.
    job = pumped();
    const double more = 1 / share;
    job.facts.rain = RainRate::inchesPerHour(4 * more * 0.9999);
    EXPECT_TRUE(isOk(job, Part::Pump, 0));
    job.facts.rain = RainRate::inchesPerHour(4 * more * 1.0001);
    EXPECT_TRUE(tells(job, Part::Pump, 0, No, "pump.share.max", "a larger pump"));
}

TEST(JudgePump, WaterMustCome) {
    Job job = pumped();
    job.inlets.clear();
    EXPECT_TRUE(tells(job, Part::Pump, 0, NotJudged, "", "no flow at Out"));
    jobs::closeUnfed(job);
    EXPECT_TRUE(tells(job, Part::Pump, 0, No, "", "no water comes to Out"));
    job = pumped();
    job.inlets[0].roof.coefficient.reset();
    EXPECT_TRUE(tells(job, Part::Pump, 0, NotJudged, "", "no flow at Out"));
}

TEST(JudgePump, ACurveThatDoesNotMeetThePipe) {
    Job job = pumped();
    // It does not reach that high: 30 ft of lift, 29.07 ft at no flow.
    job.pumps[0].end = Length::feet(123);
    EXPECT_TRUE(tells(job, Part::Pump, 0, No, "", "pump: static lift is 30 ft"));
    EXPECT_FALSE(solve(job).pumps[0].gives);
    job = pumped();
    job.pumps[0].curve = {{Flow{}, Length::feet(29)}, {Flow::gpm(20), Length::feet(25)}};
    EXPECT_TRUE(tells(job, Part::Pump, 0, NotJudged, "", "beyond the last point"));
    job.pumps[0].curve = {{Flow::gpm(20), Length::feet(20)}, {Flow::gpm(10), Length::feet(15)}};
    EXPECT_TRUE(tells(job, Part::Pump, 0, No, "", "flows must rise"));
    // No length is printed for elbows of this size.
    job = pumped();
    job.pumps[0].pipe = stockPipe("8 SCH40");
    EXPECT_TRUE(tells(job, Part::Pump, 0, NotJudged, "", "a nominal size in inches"));
    job.pumps[0].elbows = 0;
    job.pumps[0].checkValve = false;
    EXPECT_FALSE(tells(job, Part::Pump, 0, NotJudged, "", "a nominal size in inches"));
}

TEST(JudgePump, StartsAnHourAndHowLongItRuns) {
    Job job = pumped();
    const SolvedPump is = solve(job).pumps[0];
    job.rules.set("pump.starts.max", *is.starts, UnitSystem::US);
    EXPECT_TRUE(isOk(job, Part::Pump, 0));
    job.rules.set("pump.starts.max", *is.starts - 0.01, UnitSystem::US);
    EXPECT_TRUE(
        tells(job, Part::Pump, 0, Check, "pump.starts.max", "starts an hour, at the worst inflow: 8.51"));
    job = pumped();
    job.rules.set("pump.run.min", is.runs->minutes(), UnitSystem::US);
    EXPECT_TRUE(isOk(job, Part::Pump, 0));
    job.rules.set("pump.run.min", is.runs->minutes() + 0.01, UnitSystem::US);
    EXPECT_TRUE(tells(job, Part::Pump, 0, Check, "pump.run.min", "between its floats in 1.76 min"));
}

TEST(JudgePump, SpeedInTheDischarge) {
    Job job = pumped();
    const double fps = solve(job).pumps[0].speed->feetPerSecond();
    const auto with = [&](const char* rule, double value) {
        Job tried = pumped();
        tried.rules.set(rule, value, UnitSystem::US);
        return tried;
    };
    EXPECT_TRUE(isOk(with("pump.speed.min", fps), Part::Pump, 0));
    EXPECT_TRUE(
        tells(with("pump.speed.min", fps + 0.1), Part::Pump, 0, Check, "pump.speed.min", "a smaller pipe"));
    EXPECT_TRUE(isOk(with("pump.speed.max", fps), Part::Pump, 0));
    EXPECT_TRUE(
        tells(with("pump.speed.max", fps - 0.1), Part::Pump, 0, Check, "pump.speed.max", "a larger pipe"));
    EXPECT_FALSE(tells(with("velocity.outlet.max", fps), Part::Pump, 0, Caution, "velocity.outlet.max", ""));
    // An end under the stop runs on by itself.
    job.pumps[0].end = Length::feet(92.9);
    EXPECT_TRUE(tells(job, Part::Pump, 0, Check, "", "siphon"));
    job.pumps[0].end = Length::feet(93);
    EXPECT_FALSE(tells(job, Part::Pump, 0, Check, "", "siphon"));
}

TEST(JudgePump, TheDischargeHoldsPressure) {
    Job job = pumped();
    job.pumps[0].pipe = stockPipe("4 SCH40");
    EXPECT_FALSE(tells(job, Part::Pump, 0, Check, "", "pressure"));
    for (const char* drain : {"4 SDR35", "4 CORRUGATED"}) {
        job.pumps[0].pipe = stockPipe(drain);
        EXPECT_TRUE(tells(job, Part::Pump, 0, Check, "", "is drain pipe: glued Schedule 40")) << drain;
    }
    job.pumps[0].pipe = stockPipe("4 D2729 PERF");
    EXPECT_TRUE(tells(job, Part::Pump, 0, No, "", "perforated pipe is no discharge"));
    job.pumps[0].pipe = bareBore(Length::inches(2.067));  // a hose, say
    job.pumps[0].elbows = 0;
    EXPECT_FALSE(tells(job, Part::Pump, 0, Check, "", "pressure"));
}

TEST(JudgePump, WithoutACheckValveTheDischargeRunsBack) {
    // 60 ft of 2.067 in: pi/4 (2.067/12)^2 x 60 = 1.3982 cu ft, 10.459 gal of 105.75.
    Job job = pumped();
    job.pumps[0].checkValve = false;
    EXPECT_NEAR(solve(job).pumps[0].runsBack->gallons(), 10.459, 0.002);
    EXPECT_TRUE(
        tells(job, Part::Pump, 0, Check, "pump.back.max", "10.5 gal run back at each stop, of 105.8 gal"));
    job.rules.set("pump.back.max", 0.0990, UnitSystem::US);  // 10.459 / 105.75 = 0.09890
    EXPECT_TRUE(isOk(job, Part::Pump, 0));
    job.rules.set("pump.back.max", 0.0988, UnitSystem::US);
    EXPECT_TRUE(tells(job, Part::Pump, 0, Check, "pump.back.max", "without a check valve"));
    // As much as lies between the floats: it starts again at once.
    job.pumps[0].off = job.pumps[0].on.value() - Length::feet(2) * 0.0988;
    EXPECT_TRUE(tells(job, Part::Pump, 0, No, "pump.back.max", "without a check valve"));
    job.pumps[0].off = job.pumps[0].on.value() - Length::feet(2) * 0.0990;
    EXPECT_FALSE(tells(job, Part::Pump, 0, No, "pump.back.max", ""));
}

TEST(JudgePump, TheLineRunsEmptyAboveItsStart) {
    Job job = pumped();
    const SolvedJob solved = solve(job);
    EXPECT_NEAR(solved.outlets[0].water->feet(), 95, 1e-12);
    EXPECT_EQ(solved.runs[1].water->state, WaterState::DropsIn);
    job.pumps[0].on = Length::feet(96);
    EXPECT_TRUE(isOk(job, Part::Pump, 0));
    job.pumps[0].on = Length::feet(96.01);
    EXPECT_TRUE(tells(job, Part::Pump, 0, Check, "pump.below.min",
                      "under the line's invert -0.01 ft, at least 0 ft"));
    job.pumps[0].on = Length::feet(96.6);
    EXPECT_NEAR(solve(job).outlets[0].water->feet(), 96.6, 1e-12);
    EXPECT_NEAR(solve(job).runs[1].water->levelDown.feet(), 96.6, 1e-9);
    // A pump that does not keep up holds no level.
    job.facts.rain = RainRate::inchesPerHour(5);
    EXPECT_FALSE(solve(job).outlets[0].water);
    EXPECT_TRUE(
        tells(job, Part::Runs, 1, NotJudged, "", "the water that Out ends in is not known (see Pump)"));
    job = pumped();
    job.runs[1].outletLevel.reset();
    EXPECT_TRUE(tells(job, Part::Pump, 0, NotJudged, "pump.below.min", "its end has no level yet"));
}

TEST(JudgePump, WhatIsThereWhenThePowerIsOut) {
    const std::pair<PowerOut, const char*> kinds[] = {{PowerOut::Alarm, "the alarm calls, it does not pump"},
                                                      {PowerOut::SecondPump, "stops with the same power"},
                                                      {PowerOut::Battery, "try the battery or generator"},
                                                      {PowerOut::Generator, "try the battery or generator"},
                                                      {PowerOut::Overflow, "unless its overflow lies lower"}};
    for (const auto& [kind, words] : kinds) {
        Job job = pumped();
        job.pumps[0].powerOut = kind;
        EXPECT_TRUE(tells(job, Part::Pump, 0, Caution, "", words));
        EXPECT_TRUE(isOk(job, Part::Pump, 0));
    }
    Job job = pumped();
    job.pumps[0].powerOut = PowerOut::Nothing;
    EXPECT_TRUE(
        tells(job, Part::Pump, 0, Check, "", "after 4.1 min of this storm: an alarm, a battery pump"));
    // A grate upstream that lies lower than the lid is reached first.
    job.nodes[1].opening = Length::feet(97.5);
    EXPECT_EQ(solve(job).pumps[0].grateAt, "B");
    EXPECT_LT(solve(job).pumps[0].outage->minutes(), 4.1);
    // Any opening may be the lowest: without its level nothing is said.
    job.nodes[1].opening.reset();
    job.nodes[1].ground.reset();
    EXPECT_TRUE(tells(job, Part::Pump, 0, NotJudged, "", "how long the basin holds out"));
}

TEST(JudgePump, AnEmptyBasinMayFloat) {
    Job job = pumped();
    job.pumps[0].groundwater = Length::feet(91);  // at its floor
    EXPECT_TRUE(isOk(job, Part::Pump, 0));
    job.pumps[0].groundwater = Length::feet(95);
    EXPECT_TRUE(tells(job, Part::Pump, 0, NotJudged, "", "Outside diameter is missing"));
    EXPECT_TRUE(tells(job, Part::Pump, 0, NotJudged, "", "Empty weight is missing"));
    // 4 ft of 40 in: pi/4 (40/12)^2 x 4 = 34.907 cu ft, 62.428 lb each: 2179.2 lb. Concrete under water: 87.572 lb.
    job.pumps[0].outside = Length::inches(40);
    job.pumps[0].weight = Weight::pounds(200);
    EXPECT_NEAR(*solve(job).pumps[0].held, 200 / 2179.2, 1e-4);
    EXPECT_TRUE(tells(job, Part::Pump, 0, No, "pump.float.min", "held down with 0.09 times what lifts it"));
    const auto concrete = [&](double cubicFeet) { job.pumps[0].concrete = Volume::cubicFeet(cubicFeet); };
    concrete(22.5);  // (2179.2 - 200) / 87.572 = 22.60 to stay at all
    EXPECT_TRUE(tells(job, Part::Pump, 0, No, "pump.float.min", "times what lifts it"));
    concrete(22.7);
    EXPECT_TRUE(tells(job, Part::Pump, 0, Check, "pump.float.min", "at least 1.5"));
    concrete(35.0);  // (1.5 x 2179.2 - 200) / 87.572 = 35.04 for the factor
    EXPECT_TRUE(tells(job, Part::Pump, 0, Check, "pump.float.min", "cast concrete to it"));
    concrete(35.1);
    EXPECT_TRUE(isOk(job, Part::Pump, 0));
    // Water over the lid lifts no more than the whole basin.
    job.pumps[0].groundwater = Length::feet(120);
    const double whole = (200 + 35.1 * 87.572) / (2179.2 * 7 / 4);
    EXPECT_NEAR(*solve(job).pumps[0].held, whole, 1e-3);
    job.pumps[0].outside = Length::inches(30);
    EXPECT_TRUE(tells(job, Part::Pump, 0, No, "", "Outside diameter is less than Inside diameter"));
}

TEST(JudgePump, TheEndOfTheLineIsAsGoodAsItsPump) {
    Job job = pumped();
    EXPECT_TRUE(isOk(job, Part::Outlets, 0));
    job.pumps[0].powerOut = PowerOut::Nothing;  // a CHECK is the pump's own
    EXPECT_TRUE(isOk(job, Part::Outlets, 0));
    job.pumps[0].groundwater.reset();
    EXPECT_TRUE(tells(job, Part::Outlets, 0, NotJudged, "", "is not judged yet: see Pump"));
    job.pumps[0].off = Length::feet(95);
    EXPECT_TRUE(tells(job, Part::Outlets, 0, No, "", "will not do: see Pump"));
    EXPECT_FALSE(tells(job, Part::Outlets, 0, NotJudged, "", ""));
    job.pumps[0].node = "A";
    EXPECT_TRUE(tells(job, Part::Outlets, 0, NotJudged, "", "has no row on Pump"));
    job.pumps.clear();
    EXPECT_TRUE(tells(job, Part::Outlets, 0, NotJudged, "", "has no row on Pump"));
}

TEST(JudgePump, TheOwnerIsWarned) {
    EXPECT_TRUE(tells(pumped(), Part::Job, Finding::whole, Caution, "", "An electrician connects the pump"));
    EXPECT_TRUE(tells(pumped(), Part::Job, Finding::whole, Caution, "", "A pump stops with the power"));
    EXPECT_FALSE(tells(smallJob(), Part::Job, Finding::whole, Caution, "", "pump"));
}

}  // namespace
}  // namespace trenchbook
