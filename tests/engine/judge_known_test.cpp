// Pipes that lie there, inverts that are known, what a county has let pass, and how a deep trench is held.
#include <gtest/gtest.h>

#include "judged.h"
#include "trenchbook/takeoff/takeoff.h"

namespace trenchbook {
namespace {

using enum Severity;

const std::string who = "county, J. Doe, 2026-11-20";

Takeoff taken(const Job& job) {
    TakeoffTerms terms;
    terms.sticks["PIPE-4SDR35"] = Length::feet(10);
    return takeOff(job, solve(job), terms);
}
std::optional<double> bought(const Takeoff& takeoff, const std::string& code) {
    for (const TakeoffLine& line : takeoff.lines)
        if (line.code == code && line.net) return line.net->in(UnitSystem::US);
    return std::nullopt;
}

// The small job with a cable that reaches 60 ft, so that its lower run has nothing else against it.
Job small() {
    Job job = smallJob();
    job.rules.set("cleanout.spacing.4in", 100, UnitSystem::US);
    return job;
}

// B-Out of the small job falls 1 %, where 4 in asks 1/8 in/ft, 1.0417 %.
TEST(Approval, AFlatGradeThatIsApprovedIsACautionThatQuotesIt) {
    Job job = small();
    EXPECT_TRUE(tells(job, Part::Runs, 1, No, "slope.min.4in", "too flat: 1%"));
    Job metric = small();
    metric.units = UnitSystem::Metric;
    EXPECT_TRUE(tells(metric, Part::Runs, 1, No, "slope.min.4in", "at least 1.04% for 4 SDR35 pipe"));
    job.runs[1].approval = who;
    EXPECT_TRUE(tells(job, Part::Runs, 1, Caution, "slope.min.4in",
                      "at least 1.04% (1/8 in/ft) for 4 in pipe; approved: " + who));
    EXPECT_TRUE(isOk(job, Part::Runs, 1));
    for (const char* nobody : {"yes", "J. Doe", "2026-11-20"}) {
        job.runs[1].approval = nobody;
        EXPECT_TRUE(tells(job, Part::Runs, 1, No, "slope.min.4in", "too flat")) << nobody;
        EXPECT_TRUE(tells(job, Part::Runs, 1, Check, "", "Approval does not say who and when")) << nobody;
    }
}

TEST(Approval, NoFallStaysNo) {
    Job job = small();
    job.runs[1].approval = who;
    job.runs[1].fixedDown = Length::feet(96);
    job.runs[1].slope = Slope::percent(0);
    EXPECT_TRUE(tells(job, Part::Runs, 1, No, "slope.min.4in", "no fall"));
}

// Too slow to keep clean is approved only where the approval says so: at 0.4 % a full 4 in pipe runs some 1.6 ft/s.
TEST(Approval, VelocityIsApprovedByName) {
    Job job = small();
    job.runs[1].slope = Slope::percent(0.4);
    job.runs[1].approval = who;
    EXPECT_TRUE(tells(job, Part::Runs, 1, No, "velocity.min", "slow"));
    job.runs[1].approval = who + ", Velocity too";
    EXPECT_TRUE(tells(job, Part::Runs, 1, Caution, "velocity.min", "approved"));
}

TEST(Approval, AFullPipeButNoOverload) {
    Job job = small();
    const SolvedRun run = solve(job).runs[1];
    const double share = *run.flow / *run.capacity;
    job.rules.set("share.max", share * (1 - 1e-6), UnitSystem::US);
    EXPECT_TRUE(tells(job, Part::Runs, 1, No, "share.max", "too full"));
    job.runs[1].approval = who;
    EXPECT_TRUE(tells(job, Part::Runs, 1, Caution, "share.max", "approved: " + who));
    job.rules.set("share.max", share * (1 + 1e-6), UnitSystem::US);
    EXPECT_FALSE(tells(job, Part::Runs, 1, Caution, "share.max", ""));
    job.facts.rain = RainRate::inchesPerHour(4 / share * 0.999);
    EXPECT_TRUE(tells(job, Part::Runs, 1, Caution, "share.max", "too full"));
    job.facts.rain = RainRate::inchesPerHour(4 / share * 1.001);
    EXPECT_TRUE(tells(job, Part::Runs, 1, No, "share.max", "overloaded"));
}

Job lies() {
    Job job = small();
    auto& run = job.runs[1];
    run.existing = true;
    run.slope.reset();
    run.outletLevel.reset();
    run.surfaceUp.reset(), run.surfaceDown.reset();
    run.knownUp = Length::feet(96.7);
    run.knownDown = Length::feet(96);
    return job;
}

TEST(KnownInverts, NoSlopeIsAsked) {
    const SolvedJob solved = solve(lies());
    EXPECT_NEAR(solved.runs[1].slope->percent(), 0.7 / 60 * 100, 1e-9);
    EXPECT_NEAR(solved.runs[0].invertDown->feet(), 96.7, 1e-9);
    EXPECT_NEAR(solved.runs[0].invertUp->feet(), 97.5, 1e-9);
    EXPECT_TRUE(isOk(lies(), Part::Runs, 1));
    EXPECT_TRUE(
        tells(lies(), Part::Runs, 1, Caution, "", "existing pipe: neither cover nor state is judged"));
}

TEST(KnownInverts, BackFallIsNo) {
    Job job = lies();
    job.runs[1].knownUp = Length::feet(95.9);
    EXPECT_TRUE(
        tells(job, Part::Runs, 1, No, "slope.min.4in", "back fall in a known pipe: runs uphill by 0.167%"));
    job.runs[1].knownUp = Length::feet(96);
    EXPECT_TRUE(tells(job, Part::Runs, 1, No, "slope.min.4in", "no fall"));
}

TEST(KnownInverts, BothOrNone) {
    Job job = lies();
    job.runs[1].knownDown.reset();
    EXPECT_TRUE(tells(job, Part::Runs, 1, NotJudged, "", "Known invert down is missing"));
    EXPECT_FALSE(solve(job).runs[1].invertUp);
    job = lies();
    job.runs[1].knownUp.reset();
    EXPECT_TRUE(tells(job, Part::Runs, 1, NotJudged, "", "Known invert up is missing"));
    job = lies();
    job.runs[1].slope = Slope::percent(2);
    EXPECT_TRUE(tells(job, Part::Runs, 1, Check, "", "Slope is not read: the inverts are known"));
}

TEST(Existing, IsNeitherBoughtNorDug) {
    const Takeoff all = taken(smallJob()), rest = taken(lies());
    EXPECT_NEAR(*bought(all, "PIPE-4SDR35") - *bought(rest, "PIPE-4SDR35"), 60,
                0.2);  // the riser at A is 0.1 ft shorter
    EXPECT_EQ(rest.runs[1].bank->si(), 0);
    EXPECT_EQ(rest.runs[1].bedding->si(), 0);
    EXPECT_EQ(rest.runs[1].lawn->si(), 0);
    for (const PipeLength& length : rest.lengths) EXPECT_NE(length.run, std::optional<std::size_t>(1));
    EXPECT_NEAR(rest.works[static_cast<std::size_t>(Work::LayPipe)].amount->in(UnitSystem::US), 40, 1e-9);
    EXPECT_NEAR(rest.works[static_cast<std::size_t>(Work::DigByMachine)].amount->in(UnitSystem::US),
                rest.runs[0].bank->cubicYards(), 1e-9);
    // Nothing is set where only existing pipe ends.
    EXPECT_TRUE(rest.nodes[2].counted);
    EXPECT_TRUE(rest.nodes[2].pieces.empty());
    EXPECT_FALSE(all.nodes[2].pieces.empty());
    // Deep or not, nobody digs there.
    Job deep = lies();
    deep.nodes[2].ground = Length::feet(110);
    EXPECT_FALSE(tells(deep, Part::Runs, 1, No, "cut.protect", "cut"));
}

// A's trench bottom is 97.4 - 0.26 = 97.14, B's 96.34.
Job deepAt(double cut) {
    Job job = small();
    job.nodes[0].ground = Length::feet(97.14 + cut);
    return job;
}

TEST(TrenchProtection, NoUntilJobSaysHow) {
    EXPECT_FALSE(tells(deepAt(4.999), Part::Runs, 0, No, "cut.protect", "cut"));
    EXPECT_TRUE(tells(deepAt(5), Part::Runs, 0, No, "cut.protect", "say on Job which"));
    Job job = deepAt(5.001);
    job.facts.protection = Protection::TrenchBox;
    EXPECT_TRUE(tells(job, Part::Runs, 0, Caution, "cut.protect", "cut 5 ft: protected by trench box"));
    EXPECT_FALSE(tells(job, Part::Runs, 0, No, "cut.protect", "cut"));
    job.facts.protection = Protection::StableRock;
    EXPECT_TRUE(tells(job, Part::Runs, 0, Caution, "cut.protect", "in stable rock"));
    // An engineer's trench stays one.
    Job deep = deepAt(20);
    deep.facts.protection = Protection::TrenchBox;
    EXPECT_TRUE(tells(deep, Part::Runs, 0, No, "cut.engineer", "an engineer's to design"));
    for (const Protection one :
         {Protection::Sloping, Protection::Shoring, Protection::TrenchBox, Protection::StableRock})
        EXPECT_NE(protectionWord(one).en, protectionWord(one).es);
}

// From 6 ft at A to 99.5 - 96.34 = 3.16 ft at B over 40 ft: 5 ft are reached over 40 x 1 / 2.84 ft of it.
TEST(TrenchProtection, FeetToProtectAreALineToPrice) {
    Job job = deepAt(6);
    EXPECT_NEAR(*bought(taken(job), "SHORING"), 40 / 2.84, 1e-6);
    job.facts.protection = Protection::Sloping;
    EXPECT_NEAR(*bought(taken(job), "TRENCH-SLOPING"), 40 / 2.84, 1e-6);
    job.facts.protection = Protection::TrenchBox;
    EXPECT_NEAR(*bought(taken(job), "TRENCH-BOX"), 40 / 2.84, 1e-6);
    EXPECT_FALSE(bought(taken(job), "SHORING"));
    job.facts.protection = Protection::StableRock;
    for (const char* code : {"SHORING", "TRENCH-BOX", "TRENCH-SLOPING"})
        EXPECT_FALSE(bought(taken(job), code));
    job.facts.protection = Protection::TrenchBox;
    job.rules.set("cut.protect", 6.1, UnitSystem::US);
    EXPECT_FALSE(bought(taken(job), "TRENCH-BOX"));
}

TEST(Saving, TheNextSmallerSizeThatPassesIsNamed) {
    Job job = small();
    for (auto& run : job.runs) run.pipe = stockPipe("6 SDR35"), run.slope = Slope::percent(2);
    EXPECT_TRUE(tells(job, Part::Runs, 0, Saving, "size.least", "4 SDR35 passes every rule of this run too"));
    // What comes from upstream is 6 in.
    EXPECT_FALSE(tells(job, Part::Runs, 1, Saving, "size.least", "4 SDR35"));
    EXPECT_TRUE(isOk(job, Part::Runs, 0));
    // Two decimal places over 4 in.
    job.rules.set("size.least", 4.01, UnitSystem::US);
    EXPECT_FALSE(tells(job, Part::Runs, 0, Saving, "size.least", "4 SDR35"));
    job.rules.set("size.least", 4, UnitSystem::US);
    // 4 in SDR 35 at 2 % carries some 140 gpm full: twice the roof's 37.4 gpm passes, four times does not.
    job.inlets[0].roof.area = Area::squareFeet(2000);
    EXPECT_TRUE(tells(job, Part::Runs, 0, Saving, "size.least", "4 SDR35"));
    job.inlets[0].roof.area = Area::squareFeet(4000);
    EXPECT_FALSE(tells(job, Part::Runs, 0, Saving, "size.least", "4 SDR35"));
}

}  // namespace
}  // namespace trenchbook
