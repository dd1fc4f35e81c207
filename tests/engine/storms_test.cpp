// Storms against a job: by hand, and against published storage of rational rectangles.
#include "trenchbook/job/storms.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "books.h"
#include "jobs.h"
#include "judged.h"
#include "trenchbook/core/error.h"
#include "trenchbook/water/inlets.h"

namespace trenchbook {
namespace {

using reference::check;
using reference::Row;
using reference::rows;

const RainTable table = RainTable::parse(
    "duration,2,10\n5-min,0.4,0.6\n10-min,0.7,1\n60-min,1.2,1.8\n24-hr,2.6,4", Length::inches(1));

// The small job ends at a tee in a pit of 5 x 4 x 3 ft that holds 24 cu ft and soaks 0.6 in/hr x 20 sq ft = 1 cu ft/h.
Job withPit() {
    Job job = smallJob();
    job.nodes[2].kinds = nodeKinds("tee");
    job.outlets[0].openShare = 1;
    job.pit.node = "Out";
    job.pit.length = Length::feet(5);
    job.pit.width = Length::feet(4);
    job.pit.rockDepth = Length::feet(3);
    job.pit.rate = SoilRate::inchesPerHour(0.6);
    return job;
}

std::vector<StormTried> tried(const Job& job, const RainTable& rain = table) {
    return storms(job, solve(job), rain);
}
const StormTried& of(const std::vector<StormTried>& all, Duration duration) {
    for (const StormTried& storm : all)
        if (!storm.centered && std::fabs(storm.duration / duration - 1) < 1e-9) return storm;
    throw std::runtime_error("no such storm");
}

TEST(Storms, TriesTheTablesDurationsAndNoOthers) {
    const std::vector<StormTried> all = tried(smallJob());
    ASSERT_EQ(all.size(), 9u);
    const std::vector<bool> inTable = {true, true, false, false, true, false, false, true, true};
    for (std::size_t i = 0; i < all.size(); ++i) EXPECT_EQ(all[i].inTable, inTable[i]) << i;
    EXPECT_EQ(stormSays(smallJob(), all[2]).en, "15 min is not in the rain table; not tried");
    EXPECT_EQ(stormSays(smallJob(), all[5]).es, "2 h no está en la tabla de lluvia; no se probó");
    EXPECT_NEAR(all[1].depth.inches(), 1, 1e-12);
    EXPECT_NEAR(all[1].intensity.inchesPerHour(), 6, 1e-12);
    // The centered day in steps of 5 minutes has the table's depth, and its 5-minute depth in the middle.
    EXPECT_TRUE(all[8].centered);
    EXPECT_NEAR(all[8].depth.inches(), 4, 1e-9);
    EXPECT_NEAR(all[8].intensity.inchesPerHour(), 7.2, 1e-9);
    EXPECT_EQ(stormName(all[8]).en, "24 h, centered (alternating blocks)");

    const RainTable one = RainTable::parse("duration,10\n60-min,1.8", Length::inches(1));
    EXPECT_FALSE(tried(smallJob(), one).back().inTable);
    for (const StormTried& storm : storms(smallJob(), solve(smallJob()), std::nullopt))
        EXPECT_FALSE(storm.inTable);
    EXPECT_EQ(stormName(storms(smallJob(), solve(smallJob()), std::nullopt).back()).en,
              "centered (alternating blocks)");
    Job hundred = smallJob();
    hundred.facts.returnYears = 100;
    EXPECT_THROW(tried(hundred), Error);
}

// 1,300 sq ft of area x C: 10 minutes of 1 in bring 1300 x 6 / 96.25 = 81.04 gpm.
TEST(Storms, LinesAndRims) {
    const Job job = smallJob();
    const StormTried storm = of(tried(job), Duration::minutes(10));
    const double capacity = solve(job).runs[1].capacity->gpm();
    EXPECT_EQ(storm.shareRun, 1u);
    EXPECT_NEAR(*storm.share * capacity, 1300 * 6 / 96.25, 0.01);
    // Twice the rain, twice the share: area and C stay.
    const StormTried faster = of(tried(job), Duration::minutes(5));
    EXPECT_NEAR(*faster.share / *storm.share, 7.2 / 6, 1e-9);
    Job rained = job;
    rained.facts.rain = RainRate::inchesPerHour(6);
    const SolvedJob wet = solve(rained);
    EXPECT_LT(*wet.nodes[0].freeboard, *wet.nodes[1].freeboard);
    EXPECT_EQ(storm.freeboardNode, 0u);
    EXPECT_NEAR(storm.freeboard->feet(), wet.nodes[0].freeboard->feet(), 1e-12);
    EXPECT_FALSE(storm.pitFilled || storm.pitFullAfter);
    EXPECT_EQ(storm.wellsUp.si(), 0);

    // A basin whose grate lies at 96.8, 0.2 ft over its invert, is flooded from the start.
    Job low = job;
    low.nodes[1].opening = Length::feet(96.8);
    const StormTried flooded = of(tried(low), Duration::minutes(5));
    EXPECT_LT(flooded.freeboard->feet(), 0);
    EXPECT_EQ(flooded.first, FailsFirst::Node);
    EXPECT_EQ(flooded.firstAfter.si(), 0);
    EXPECT_EQ(failsFirstText(low, flooded).en, "water over the opening at B at once");
}

TEST(Storms, PitByHand) {
    const Job job = withPit();
    const StormTried storm = of(tried(job), Duration::minutes(10));
    const double comes = 1300 / 12.0 / 10, soaks = 1 / 60.0;  // cu ft a minute
    const double full = 24 / (comes - soaks);
    ASSERT_TRUE(storm.pitFullAfter);
    EXPECT_NEAR(storm.pitFullAfter->minutes(), full, 1e-9);
    EXPECT_NEAR(storm.wellsUpFor.minutes(), 10 - full, 1e-9);
    EXPECT_NEAR(storm.wellsUp.cubicFeet(), (comes - soaks) * (10 - full), 1e-9);
    EXPECT_EQ(*storm.pitFilled, 1);
    EXPECT_EQ(storm.first, FailsFirst::Pit);
    EXPECT_EQ(stormSays(job, storm).en.substr(0, 118),
              "In a 10-minute cloudburst of 1 in, the pit is full after 2 minutes; then water wells up at "
              "Out, 84 cu ft for 8 minutes");
    EXPECT_EQ(stormSays(job, storm).es.substr(0, 47), "En aguacero de 10 minutos y 1 in, el pozo se ll");
    EXPECT_EQ(failsFirstText(job, storm).en, "pit full after 2 minutes");

    // The centered day: what comes is what soaks, wells up or stays.
    const StormTried day = tried(job).back();
    ASSERT_TRUE(day.pitFullAfter);
    EXPECT_LT(*day.pitFullAfter, Duration::hours(13));
    EXPECT_LT(day.wellsUp.cubicFeet(), 1300 * 4 / 12.0 - 24);
    EXPECT_GT(day.wellsUpFor, Duration{});
}

// While the pit takes the water its tee does not well up, and the lines run free.
TEST(Storms, PitThatTakesAllLeavesTheLinesFree) {
    Job job = withPit();
    job.pit.length = Length::feet(50);  // 240 cu ft
    const StormTried storm = of(tried(job), Duration::minutes(10));
    EXPECT_FALSE(storm.pitFullAfter);
    EXPECT_NEAR(*storm.pitFilled, (1300 / 12.0 - 10 * 10 / 60.0) / 240, 1e-9);
    EXPECT_EQ(storm.wellsUp.si(), 0);
    const StormTried free = of(tried(smallJob()), Duration::minutes(10));
    EXPECT_NEAR(storm.freeboard->feet(), free.freeboard->feet(), 1e-9);
    const StormTried wells = of(tried(withPit()), Duration::minutes(10));
    EXPECT_LT(*wells.freeboard, *storm.freeboard);
    EXPECT_NE(stormSays(job, storm).en.find("the pit takes it all and is 44 % full at most"),
              std::string::npos)
        << stormSays(job, storm).en;
}

TEST(Storms, TeeWithoutAPitWellsUpAllAlong) {
    Job job = smallJob();
    job.nodes[2].kinds = nodeKinds("tee");
    const StormTried storm = of(tried(job), Duration::minutes(10));
    EXPECT_NEAR(storm.wellsUp.cubicFeet(), 1300 / 12.0, 1e-6);
    EXPECT_NEAR(storm.wellsUpFor.minutes(), 10, 1e-9);
}

// A 12 x 12 in grate, half open, 0.1 ft of water over it: clean and with half of it blocked.
TEST(Storms, GratesCleanAndHalfBlocked) {
    Job job = smallJob();
    JobInlet& patio = job.inlets[1];
    patio.entersBy = EntersBy::Grate;
    patio.size = "12x12";
    patio.openShare = 0.5;
    patio.ponding = Length::feet(0.1);
    const auto takes = [&](double blocked) {
        return grateCapacity(rectangularGrate(Length::inches(12), Length::inches(12), 0.5, blocked),
                             *patio.ponding);
    };
    // As much area as brings, at 6 in/hr, what lies between the two.
    const Flow between = (takes(0) + takes(0.5)) / 2;
    patio.paved = {Area::fromSi(between.si() / RainRate::inchesPerHour(6).si()), 1.0};
    const std::vector<StormTried> all = tried(job);
    const StormTried& tenMinutes = of(all, Duration::minutes(10));
    EXPECT_EQ(tenMinutes.overClean, 0u);
    EXPECT_EQ(tenMinutes.overHalfBlocked, 1u);
    EXPECT_EQ(tenMinutes.worstInlet, 1u);
    EXPECT_EQ(tenMinutes.notKnown, 1u);  // how the roof's water enters is not said
    EXPECT_NE(stormSays(job, tenMinutes).en.find("with half of the grate blocked more comes to Patio"),
              std::string::npos);
    EXPECT_EQ(of(all, Duration::minutes(60)).overHalfBlocked, 0u);

    patio.paved.area = Area::fromSi(takes(0).si() / RainRate::inchesPerHour(6).si() * 1.01);
    const StormTried over = of(tried(job), Duration::minutes(10));
    EXPECT_EQ(over.overClean, 1u);
    EXPECT_EQ(over.first, FailsFirst::Inlet);
    EXPECT_EQ(failsFirstText(job, over).en, "inlet Patio too small at once");
}

// Nothing fails, but an inlet was not looked at: no OK.
TEST(Storms, WhatIsNotKnownIsNoNothing) {
    const Job job = smallJob();
    const StormTried storm = of(tried(job), Duration::minutes(60));
    EXPECT_EQ(storm.notKnown, 2u);
    EXPECT_EQ(failsFirstText(job, storm).en, "not known");
    Job empty;
    empty.facts.returnYears = 10;
    EXPECT_EQ(stormSays(empty, of(tried(empty), Duration::minutes(10))).en,
              "In a 10-minute cloudburst of 1 in, nothing is known that could be tried.");
}

// Storage under a constant release, (C A i - Qo) t, for the intensities of a printed table: a pit that soaks Qo through
// its bottom and is deep enough to hold the rest. The source takes 1 cfs for an acre-inch an hour.
TEST(Storms, PublishedStorage) {
    constexpr const char* file = "30i_short_storms.csv";
    std::string text = "duration,10\n";
    for (const Row& row : rows(file))
        if (row.item == "Intensity table (US)")
            text += plain(row.input("duration_min")) + "-min," +
                    plain(row.number() * row.input("duration_min") / 60, 9) + "\n";
    const RainTable printed = RainTable::parse(text, Length::inches(1));
    int checked = 0;
    for (const Row& row : rows(file)) {
        if (!row.item.starts_with("Storage with constant release")) continue;
        const Duration duration = Duration::minutes(row.input("duration_min"));
        Job job = withPit();
        job.inlets.resize(1);
        jobs::closeUnfed(job);
        const Area area = Area::fromSi(Flow::cfs(row.input("CA_ac")).si() / RainRate::inchesPerHour(1).si());
        job.inlets[0].roof = {area, 1.0};
        job.pit.rate = SoilRate::inchesPerHour(36);
        job.pit.width = Length::feet(10);
        job.pit.length = Length::feet(row.input("release_cfs") * 1200 / 10);  // 3 ft/h through the bottom
        job.pit.rockDepth = Length::feet(100);
        const std::vector<StormTried> all = tried(job, printed);
        const auto storm = std::find_if(all.begin(), all.end(), [&](const StormTried& one) {
            return !one.centered && one.inTable && std::fabs(one.duration / duration - 1) < 1e-9;
        });
        if (storm == all.end()) continue;  // 20, 40 and 50 minutes are not tried, 30 are not in the table
        check("JOB.STORMS", row, *storm->pitFilled * solve(job).pit.storage->cubicFeet());
        ++checked;
    }
    EXPECT_EQ(checked, 15);
}

// The pump of judge_pump_test.cpp: 60 gpm from a start at 95, with 29.824 cu ft up to its lid. The small job brings 13.5066
// gpm for each in/hr.
Job pumped() {
    Job job = smallJob();
    job.nodes[2].kinds = nodeKinds("pump basin");
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

TEST(Storms, APumpThatGetsMoreThanItLiftsFillsItsBasin) {
    const Job job = pumped();
    // 10 minutes of 7.2 in/hr: 97.25 gpm, 37.25 too many, 4.979 cu ft a minute: full after 5.99 minutes.
    const RainTable bursts =
        RainTable::parse("duration,10\n5-min,0.6\n10-min,1.2\n60-min,1.8", Length::inches(1));
    const std::vector<StormTried> all = tried(job, bursts);
    const StormTried& long_ = of(all, Duration::minutes(10));
    ASSERT_TRUE(long_.pumpAfter);
    EXPECT_NEAR(long_.pumpAfter->minutes(), 5.99, 0.01);
    EXPECT_EQ(long_.first, FailsFirst::Pump);
    EXPECT_EQ(failsFirstText(job, long_).en, "pump Out too small after 6 minutes");
    EXPECT_NE(stormSays(job, long_).en.find("its basin runs over after 6 minutes"), std::string::npos);
    EXPECT_NE(stormSays(job, long_).es.find("se desborda a los 6 minutos"), std::string::npos);
    // The same rain for 5 minutes is held.
    const StormTried& burst = of(all, Duration::minutes(5));
    EXPECT_EQ(burst.pump, 0u);
    EXPECT_FALSE(burst.pumpAfter);
    EXPECT_NE(failsFirstText(job, burst).en.find("not known"), std::string::npos)
        << "the level in the lines is not";
    EXPECT_NE(stormSays(job, burst).en.find("its basin holds the rest"), std::string::npos);
    // 1.8 in/hr are 24.3 gpm.
    const StormTried& hour = of(all, Duration::minutes(60));
    EXPECT_EQ(hour.pump, Network::none);
    EXPECT_EQ(hour.notKnown, 2u) << "its inlets do not say what they are";
    EXPECT_EQ(hour.first, FailsFirst::Nothing);
    // Centered, the two steps of 0.6 in lie side by side amid an hour of less, and begin with a step of 5 minutes.
    ASSERT_TRUE(all[8].pumpAfter);
    EXPECT_GT(all[8].pumpAfter->minutes(), 20);
    EXPECT_NEAR(std::fmod(all[8].pumpAfter->minutes(), 5), 0.99, 0.01);
}

TEST(Storms, APumpThatIsNotKnownIsTold) {
    Job job = pumped();
    job.runs[1].outletWater = Length::feet(95);
    EXPECT_EQ(of(tried(job), Duration::minutes(60)).notKnown, 2u);
    job.pumps[0].curve.clear();
    EXPECT_EQ(of(tried(job), Duration::minutes(60)).notKnown, 3u);
    job.pumps.clear();
    EXPECT_EQ(of(tried(job), Duration::minutes(60)).notKnown, 3u);
}

}  // namespace
}  // namespace trenchbook
