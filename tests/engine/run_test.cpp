// One run: drops, slopes and cuts against stakeout examples in print; the check in words, reason by reason.
#include "trenchbook/job/judge_run.h"
#include "trenchbook/lines/cover.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "reference.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

using reference::check;

// A run with nothing wrong: 4 in at 2 % under lawn.
RunFacts good() {
    return {.length = Length::feet(40),
            .slope = Slope::percent(2),
            .pipe = stockPipe("4 SDR35"),
            .flow = Flow::gpm(60),
            .coverUp = Length::inches(12),
            .coverDown = Length::inches(20),
            .surfaceUp = CoverSurface::Lawn,
            .surfaceDown = CoverSurface::Lawn,
            .roughness = 0.011};
}
std::string said(const RunFacts& facts, const Ruleset& rules = {}, UnitSystem units = UnitSystem::US) {
    return checkRun(facts, rules, units).en;
}

TEST(Run, DropsAndSlopesOfPrintedStakeouts) {
    for (const auto& row : reference::rows("20d_levelling_and_grade.csv")) {
        if (row.item == "Sewer stakeout: fall")
            check("RUN.DROP", row,
                  runDrop(Length::feet(100 * row.input("stations")), Slope::percent(row.input("grade_pct")))
                      .feet());
        if (row.item == "Pipeline grade stakes 23.11" && row.output == "grade")
            check("RUN.SLOPE", row,
                  runSlope(Length::feet(row.input("L_ft")), Length::feet(row.input("inv0")),
                           Length::feet(row.input("inv_end")))
                      .percent(),
                  -1, "the book counts a falling grade as negative");
        if (row.item == "Sewer inverts at -1 per cent" && row.input("distance_ft") > 0)
            check("RUN.DROP", row,
                  row.input("invert_10+00") -
                      runDrop(Length::feet(row.input("distance_ft")), Slope::percent(-row.input("grade_pct")))
                          .feet());
    }
}

TEST(Run, CutsOfPrintedStakeouts) {
    const Pipe pipe = stockPipe("8 SDR35");
    const double wall = wallOf(pipe).feet();
    const char* because = "the book's cut goes to the invert: less the wall";
    for (const auto& row : reference::rows("20d_levelling_and_grade.csv")) {
        if (row.item.starts_with("Sewer stakeout: cut"))
            check("RUN.CUT", row,
                  trenchCut(Length::feet(row.input("hub")), Length::feet(row.input("invert")), pipe).feet() -
                      wall,
                  1, because);
        if (row.item == "Pipeline grade stakes 23.11" && row.output == "cut") {
            const Length station = Length::feet(row.input("station_ft"));
            const Length start = Length::feet(row.input("inv0"));
            const Slope slope =
                runSlope(Length::feet(row.input("L_ft")), start, Length::feet(row.input("inv_end")));
            const Length ground = Length::feet(row.input("HI") - row.input("rod"));
            const Length invert = station.si() > 0 ? start - runDrop(station, slope) : start;
            check("RUN.CUT", row, trenchCut(ground, invert, pipe).feet() - wall, 1, because);
        }
    }
}

TEST(Run, CoverCountsFromTheOutsideTop) {
    // The pipe's outside and wall as the dimension table prints them.
    const auto printed = [](const std::string& what) {
        for (const auto& row : reference::rows("11a_pipe_dimensions.csv"))
            if (row.item == "Sch 40 PVC, nominal 4 in" && row.output == what) return row.number();
        ADD_FAILURE() << "no " << what;
        return 0.0;
    };
    check("RUN.COVER", "ground 100 ft, invert 98 ft, 4 in Schedule 40: 24 in - outside + wall",
          coverOver(Length::feet(100), Length::feet(98), stockPipe("4 SCH40")).inches(),
          24 - printed("outside diameter") + printed("minimum wall"), 0.001,
          "ASTM D1785 Schedule 40 dimensions (11a_pipe_dimensions)", "read");
    EXPECT_LT(coverOver(Length::feet(98.1), Length::feet(98), stockPipe("4 SCH40")).si(), 0);
    EXPECT_THROW(coverOver(Length::feet(100), Length::feet(98), bareBore(Length::inches(4))), Error);
    EXPECT_THROW(trenchCut(Length::feet(100), Length::feet(98), stockPipe("4 SCH40"), Length::inches(-1)),
                 Error);
    EXPECT_EQ(runDrop(Length::feet(0), Slope::percent(1)), Length());
    EXPECT_EQ(runDrop(Length::feet(0), Slope::percent(1), Length::feet(0.02)), Length::feet(0.02));
    EXPECT_THROW(runDrop(Length::feet(-1), Slope::percent(1)), Error);
    EXPECT_THROW(runDrop(Length::feet(1), Slope::percent(0)), Error);
    EXPECT_THROW(runSlope(Length::feet(0), Length(), Length()), Error);
}

TEST(Run, DropAndSlopeAreInverse) {
    EXPECT_TRUE(rc::check("slope of the drop", [] {
        const Length length = Length::feet(*rc::gen::inRange(1, 30000) / 100.0);
        const Slope slope = Slope::fraction(*rc::gen::inRange(1, 20000) / 100000.0);
        const Length down = Length::feet(*rc::gen::inRange(-10000, 10000) / 100.0);
        const Slope back = runSlope(length, down + runDrop(length, slope), down);
        RC_ASSERT(std::abs(back.fraction() - slope.fraction()) <= 1e-12 + 1e-13 * std::abs(down / length));
    }));
}

TEST(RunCheck, NothingWrong) { EXPECT_EQ(said(good()), "OK"); }

TEST(RunCheck, OnePercentFailsAStrictEighthOfAnInch) {
    RunFacts facts = good();
    facts.slope = Slope::percent(1);
    EXPECT_EQ(said(facts), "too flat: 1%, at least 1.04% (1/8 in/ft) for 4 in pipe");
    facts.slope = Slope::inchesPerFoot(0.125);
    EXPECT_EQ(said(facts), "OK");
    facts.slope = Slope::percent(1);
    Ruleset forgiving;
    forgiving.set("slope.tolerance", 0.0005, UnitSystem::US);
    EXPECT_EQ(said(facts, forgiving), "OK");
    Ruleset floor;
    floor.set("slope.min.4in", "1%", UnitSystem::US);
    EXPECT_EQ(said(facts, floor), "OK");
}

TEST(RunCheck, EachReasonOnItsOwn) {
    const auto with = [](auto change) {
        RunFacts facts = good();
        change(facts);
        return said(facts);
    };
    EXPECT_EQ(with([](RunFacts& f) { f.slope = Slope::percent(-0.5); }), "runs uphill by 0.5%");
    EXPECT_EQ(with([](RunFacts& f) { f.slope = {}; }), "no fall");
    // 4 in SDR 35 at 2 %, n 0.011: 140.4 gpm (Manning, worked by hand from A = 12.410 sq in, R = 0.99375 in).
    EXPECT_EQ(with([](RunFacts& f) { f.flow = Flow::gpm(126.4); }),
              "too full: 90% of the full pipe's flow, at most 80%");
    EXPECT_EQ(with([](RunFacts& f) { f.flow = Flow::gpm(200); }),
              "overloaded: 200 gpm in a pipe that carries 140.4 gpm full");
    EXPECT_EQ(with([](RunFacts& f) { f.coverUp = Length::inches(9.5); }),
              "shallow at the upper end: 9.5 in under lawn, at least 12 in");
    EXPECT_EQ(with([](RunFacts& f) { f.coverDown = Length::inches(11.98); }),
              "shallow at the lower end: 11.98 in under lawn, at least 12 in");
    EXPECT_EQ(with([](RunFacts& f) { f.surfaceDown = CoverSurface::Drive; }),
              "shallow at the lower end: 20 in under drive, at least 24 in");
    EXPECT_EQ(with([](RunFacts& f) { f.surfaceDown = CoverSurface::Drive, f.pipe = stockPipe("4 SCH40"); }),
              "OK");
    EXPECT_EQ(with([](RunFacts& f) {
                  f.surfaceUp = f.surfaceDown = CoverSurface::Drive, f.pipe = stockPipe("4 D2729");
                  f.coverUp = f.coverDown = Length::inches(24);
              }),
              "4 D2729 is not for under wheels");
    EXPECT_EQ(with([](RunFacts& f) { f.coverUp = {}, f.coverDown = {}; }), "OK");
    EXPECT_EQ(with([](RunFacts& f) { f.coverUp = {}, f.surfaceUp = CoverSurface::Daylight; }), "OK");
    // Cut = cover + 4.215 in outside + 3 in bedding.
    EXPECT_EQ(with([](RunFacts& f) { f.coverDown = Length::inches(48 - 7.215); }),
              "cut 4 ft: a safe way out within 25 ft (7.6 m)");
    EXPECT_EQ(with([](RunFacts& f) { f.coverDown = Length::inches(60 - 7.215); }),
              "cut 5 ft: protective system, unless in stable rock");
    EXPECT_EQ(with([](RunFacts& f) { f.coverDown = Length::feet(20); }),
              "cut 20.6 ft: the protection is an engineer's to design");
    EXPECT_EQ(with([](RunFacts& f) { f.length = Length::feet(320); }), "long: 320 ft, at most 300 ft");
    EXPECT_EQ(with([](RunFacts& f) { f.slope = Slope::percent(50); }).substr(0, 5), "fast:");
}

TEST(RunCheck, ThreeInchPipeOnRoughGroundIsSlow) {
    RunFacts facts = good();
    facts.pipe = stockPipe("3 SCH40");
    facts.slope = Slope::inchesPerFoot(0.125);
    facts.roughness = 0.016;
    facts.flow = {};
    // V = 0.00104166^.5... in US: 1.486/0.016 (0.2557/4)^(2/3) 0.0104167^0.5 = 1.51 ft/s.
    EXPECT_EQ(said(facts), "slow: 1.5 flowing full, at least 2 ft/s to keep clean");
}

TEST(RunCheck, EveryReasonAtOnceAndInBothLanguages) {
    RunFacts facts = good();
    facts.slope = Slope::percent(0.5);
    facts.flow = Flow::gpm(80);
    facts.coverUp = Length::inches(6);
    facts.length = Length::feet(400);
    const std::vector<Text> reasons = runReasons(facts, Ruleset(), UnitSystem::US);
    ASSERT_EQ(reasons.size(), 5u);
    EXPECT_EQ(checkRun(facts, Ruleset(), UnitSystem::US).en, reasons[0].en + "; " + reasons[1].en + "; " +
                                                                 reasons[2].en + "; " + reasons[3].en + "; " +
                                                                 reasons[4].en);
    EXPECT_EQ(reasons[3].es, "poca cobertura en el extremo de arriba: 6 in bajo césped, al menos 12 in");
    EXPECT_EQ(runReasons(facts, Ruleset(), UnitSystem::Metric)[3].en,
              "shallow at the upper end: 152.4 mm under lawn, at least 304.8 mm");
}

TEST(RunCheck, LimitsOfTheExcavationRules) {
    for (const auto& row : reference::rows("11c_osha_subpart_p.csv")) {
        if (row.item == "Trench depth requiring egress")
            check("RUN.CHECK", row, Ruleset().length("cut.exit").feet());
        if (row.item.starts_with("Protective system not required below"))
            check("RUN.CHECK", row, Ruleset().length("cut.protect").feet());
        if (row.item == "Spoil and equipment setback")
            check("RUN.CHECK", row, Ruleset().length("spoil.edge").feet());
        if (row.item == "Depth limit of Table B-1")
            check("RUN.CHECK", row, Ruleset().length("cut.engineer").feet());
    }
}

TEST(Surfaces, WordsAreForgiven) {
    const auto is = [](const char* words) { return coverSurface(words, "surface up"); };
    EXPECT_EQ(is("Lawn"), CoverSurface::Lawn);
    EXPECT_EQ(is(" front lawn "), CoverSurface::Lawn);
    EXPECT_EQ(is("Césped"), CoverSurface::Lawn);
    EXPECT_EQ(is("CÉSPED"), CoverSurface::Lawn);
    EXPECT_EQ(is("lawn end"), CoverSurface::LawnEnd);
    EXPECT_EQ(is("gravel drive"), CoverSurface::Drive);
    EXPECT_EQ(is("lawn beside the driveway"), CoverSurface::Drive);
    EXPECT_EQ(is("planting bed"), CoverSurface::Bed);
    EXPECT_EQ(is("patio"), CoverSurface::Walk);
    EXPECT_EQ(is("outlet"), CoverSurface::Daylight);
    EXPECT_THROW(is("outlet ditch"), Error);
    EXPECT_THROW(is(""), Error);
    for (std::size_t i = 0; i < coverSurfaces().size(); ++i) {
        EXPECT_EQ(static_cast<std::size_t>(coverSurfaces()[i].surface), i);
        EXPECT_EQ(is(coverSurfaces()[i].name.en.c_str()), coverSurfaces()[i].surface);
        EXPECT_EQ(is(coverSurfaces()[i].name.es.c_str()), coverSurfaces()[i].surface);
    }
    try {
        is("moon");
    } catch (const Error& error) {
        EXPECT_EQ(error.sentence(Language::English),
                  "surface up is \"moon\"; allowed: lawn, end of lawn, bed, walk, drive, street, daylight.");
    }
}

}  // namespace
}  // namespace trenchbook
