// What is told of the whole job: open questions, rain, the locate ticket, cautions.
#include <gtest/gtest.h>

#include <functional>

#include "judged.h"
#include "trenchbook/job/read.h"

namespace trenchbook {
namespace {

using enum Severity;
constexpr std::size_t whole = Finding::whole;

TEST(JudgeJob, NothingIsOpenWhenAllIsAnswered) { EXPECT_TRUE(isOk(smallJob(), Part::Job, whole)); }

TEST(JudgeJob, EveryQuestionByItself) {
    struct Case {
        std::function<void(Job&)> open;
        const char* says;
    };
    const Case cases[] = {
        {[](Job& job) { job.facts.name = ""; }, "Job: name"},
        {[](Job& job) { job.facts.owner = ""; }, "Job: owner"},
        {[](Job& job) { job.facts.site = ""; }, "Job: site"},
        {[](Job& job) { job.facts.quoteDate.reset(); }, "Job: date of the quote"},
        {[](Job& job) { job.facts.rain.reset(); }, "Job: rain"},
        {[](Job& job) { job.facts.rulesAsked = Answer::NotSaid; }, "fit this county?"},
        {[](Job& job) { job.facts.rulesAsked = Answer::No; }, "fit this county?"},
        {[](Job& job) { job.facts.rulesAsked = Answer::Ask; }, "fit this county?"},
        {[](Job& job) { job.facts.soil = ""; }, "Job: soil"},
        {[](Job& job) { job.facts.outlet = ""; }, "Job: where the water goes"},
        {[](Job& job) { job.facts.permission = ""; }, "Job: permission for the outlet"},
        {[](Job& job) { job.facts.permission = "requested"; }, "Job: permission for the outlet"},
        {[](Job& job) { job.facts.septic = Answer::NotSaid; }, "Job: ask about septic and well"},
        {[](Job& job) { job.facts.well = Answer::Ask; }, "Job: ask about septic and well"},
        {[](Job& job) { job.facts.irrigation = Answer::Ask; }, "Job: ask about irrigation"},
        {[](Job& job) { job.facts.association = Answer::NotSaid; }, "Job: ask about an owners' association"},
        {[](Job& job) { job.facts.ticket = {}; }, "Job: locate ticket (call 811)"},
        {[](Job& job) { job.facts.levels = 0; }, "Levels: rod readings"},
        {[](Job& job) { job.inlets.clear(); }, "Water: roofs and paving"},
        {[](Job& job) { job.runs.clear(); }, "Runs: the lines"},
    };
    for (const Case& one : cases) {
        Job job = smallJob();
        one.open(job);
        EXPECT_TRUE(tells(job, Part::Job, whole, NotJudged, anyRule, one.says));
        std::size_t open = 0;
        for (const Finding& finding : told(job, Part::Job, whole)) open += finding.severity == NotJudged;
        EXPECT_EQ(open, 1u) << one.says;
    }
}

TEST(JudgeJob, AnEmptyJobIsAskedForEverything) {
    std::size_t open = 0;
    for (const Finding& finding : told(Job(), Part::Job, whole)) open += finding.severity == NotJudged;
    EXPECT_EQ(open, 16u);
}

TEST(JudgeJob, AnOfferThatNobodyTookLapses) {
    Job job = smallJob();
    job.facts.ticket = {};
    job.facts.quoteDate = Date::of(2026, 11, 20);
    const auto lapsed = [&] {
        return tells(job, Part::Job, whole, Check, "quote.days", "the offer held until 2026-12-20");
    };
    job.facts.today = Date::of(2026, 12, 20);
    EXPECT_FALSE(lapsed()) << "30 days on Rules: the last of them";
    job.facts.today = Date::of(2026, 12, 21);
    EXPECT_TRUE(lapsed());
    job.facts.agreed = Date::of(2026, 11, 24);
    EXPECT_FALSE(lapsed()) << "it is sold";
    job.facts.agreed.reset();
    job.facts.today.reset();
    EXPECT_FALSE(lapsed()) << "nobody knows the day";
}

TEST(JudgeJob, RainThatIsUsual) {
    const auto rainOf = [](double inches) {
        Job job = smallJob();
        job.facts.rain = RainRate::inchesPerHour(inches);
        return job;
    };
    EXPECT_TRUE(isOk(rainOf(0.5), Part::Job, whole));
    EXPECT_TRUE(isOk(rainOf(15), Part::Job, whole));
    EXPECT_TRUE(tells(rainOf(0.499), Part::Job, whole, Check, "", "Rain is 0.5 in/hr; usual are 0.5 to 15"));
    EXPECT_TRUE(tells(rainOf(15.01), Part::Job, whole, Check, "", "in the job's unit?"));
    EXPECT_TRUE(tells(rainOf(0), Part::Job, whole, No, "", "Rain must be above 0"));
    EXPECT_TRUE(tells(rainOf(-1), Part::Job, whole, No, "", "Rain must be above 0"));
    Job job = rainOf(0.2);
    job.facts.rainFromTable = true;
    EXPECT_TRUE(isOk(job, Part::Job, whole));
}

// 2026-11-25 is a Wednesday.
TEST(JudgeJob, TicketOfTheDay) {
    Job job = smallJob();
    Ticket& ticket = job.facts.ticket;
    ticket.until = Date::of(2026, 11, 29);
    EXPECT_TRUE(isOk(job, Part::Job, whole));
    ticket.until = Date::of(2026, 11, 28);
    EXPECT_TRUE(tells(job, Part::Job, whole, Check, "ticket.warn", "ticket 0001 runs out on 2026-11-28"));
    ticket.until = Date::of(2026, 11, 24);
    EXPECT_TRUE(tells(job, Part::Job, whole, No, "", "ticket 0001 ran out on 2026-11-24"));
    ticket.from = Date::of(2026, 11, 26);
    ticket.until = Date::of(2026, 12, 10);
    EXPECT_TRUE(tells(job, Part::Job, whole, Check, "", "ticket 0001 is good from 2026-11-26"));
    ticket.from = Date::of(2026, 11, 25);
    EXPECT_TRUE(isOk(job, Part::Job, whole));
    ticket.from.reset();
    EXPECT_TRUE(tells(job, Part::Job, whole, NotJudged, "", "its first and last day are not both known"));
    job.facts.today.reset();
    EXPECT_TRUE(tells(job, Part::Job, whole, NotJudged, "", "today's date is not known"));
}

TEST(JudgeJob, TheTicketWasWaitedFor) {
    // Two working days (al811.com/life-of-ticket): called on Monday, good from Wednesday; called on Friday, from Tuesday.
    Job job = smallJob();
    Ticket& ticket = job.facts.ticket;
    const auto wait = [&](Date called, Date from) {
        ticket.called = called;
        ticket.from = from;
        ticket.until = Date::of(2026, 12, 10);
        for (const Finding& finding : told(job, Part::Job, whole))
            if (finding.rule == "ticket.wait") return finding.severity == Check;
        return false;
    };
    EXPECT_TRUE(wait(Date::of(2026, 11, 16), Date::of(2026, 11, 17)));
    EXPECT_FALSE(wait(Date::of(2026, 11, 16), Date::of(2026, 11, 18)));
    EXPECT_FALSE(wait(Date::of(2026, 11, 16), Date::of(2026, 11, 19)));
    EXPECT_TRUE(wait(Date::of(2026, 11, 20), Date::of(2026, 11, 22)));
    EXPECT_TRUE(wait(Date::of(2026, 11, 20), Date::of(2026, 11, 23)));
    EXPECT_FALSE(wait(Date::of(2026, 11, 20), Date::of(2026, 11, 24)));
    EXPECT_TRUE(wait(Date::of(2026, 11, 20), Date::of(2026, 11, 20)));
    // Without the day of the call nothing is assumed about it.
    ticket.called.reset();
    EXPECT_TRUE(isOk(job, Part::Job, whole));
}

TEST(JudgeJob, TheDayOfTheCallIsReadFromJob) {
    JobTables tables;
    tables.facts = Grid{2, 2, {"Locate ticket", "0001", "Ticket called", "2026-11-16"}};
    EXPECT_EQ(readJob(tables, UnitSystem::US).facts.ticket.called, Date::of(2026, 11, 16));
}

TEST(JudgeJob, RainOfTheTableIsNotQuestioned) {
    JobTables tables;
    tables.facts = Grid{2, 2, {"Duration", 60.0, "Return period", 10.0}};
    tables.rain = Grid{3, 2, {"", "10", "5-min", 0.02, "60-min", 0.2}};
    const Job job = readJob(tables, UnitSystem::US);
    ASSERT_TRUE(job.facts.rain.has_value());
    EXPECT_TRUE(job.facts.rainFromTable);
    EXPECT_FALSE(tells(job, Part::Job, whole, Check, "", "usual are"));
}

TEST(JudgeJob, ATicketStillToBeCalledWaitsFromToday) {
    Job job = smallJob();
    job.facts.ticket = {};
    EXPECT_TRUE(tells(job, Part::Job, whole, NotJudged, "ticket.wait", "digging may begin on 2026-11-27"));
    job.facts.today = Date::of(2026, 11, 27);  // Friday
    EXPECT_TRUE(tells(job, Part::Job, whole, NotJudged, "ticket.wait", "digging may begin on 2026-12-01"));
    job.facts.ticket.from = Date::of(2026, 11, 30);
    job.facts.ticket.until = Date::of(2026, 12, 10);
    EXPECT_TRUE(
        tells(job, Part::Job, whole, Check, "ticket.wait", "working days from today to the first day 1"));
    job.facts.ticket.from = Date::of(2026, 12, 1);
    EXPECT_FALSE(tells(job, Part::Job, whole, Check, "ticket.wait", "working days"));
}

TEST(JudgeJob, TheTicketIsNotWrittenForLongerThanItLasts) {
    // Twenty working days (al811.com/life-of-ticket) are four weeks.
    Job job = smallJob();
    job.facts.ticket.from = Date::of(2026, 11, 19);
    job.facts.ticket.until = Date::of(2026, 12, 17);
    EXPECT_TRUE(isOk(job, Part::Job, whole));
    job.facts.ticket.until = Date::of(2026, 12, 18);
    EXPECT_TRUE(tells(job, Part::Job, whole, Check, "ticket.life",
                      "working days from the first to the last 21 days, at most 20 days"));
    job.facts.ticket.until = Date::of(2026, 12, 16);
    EXPECT_TRUE(isOk(job, Part::Job, whole));
}

TEST(JudgeJob, CellsThatCannotBeUsed) {
    Job job = smallJob();
    job.facts.unusable = {{"Rain", "6 in", {"Rain is \"6 in\"", "Rain es \"6 in\""}}};
    EXPECT_TRUE(tells(job, Part::Job, whole, No, "", "Rain is \"6 in\""));
}

TEST(JudgeCautions, OfEveryJob) {
    EXPECT_TRUE(tells(smallJob(), Part::Job, whole, Caution, "handdig.tolerance", "Call 811 before digging"));
    EXPECT_TRUE(tells(smallJob(), Part::Job, whole, Caution, "spoil.edge", "Spoil stays 2 ft back"));
    EXPECT_TRUE(tells(smallJob(), Part::Job, whole, Caution, "", "Not for sanitary waste"));
    EXPECT_FALSE(tells(smallJob(), Part::Job, whole, Caution, "", "Irrigation"));
    EXPECT_FALSE(tells(smallJob(), Part::Job, whole, Caution, "", "permission"));
    EXPECT_FALSE(tells(smallJob(), Part::Job, whole, Caution, "", "soak test"));
    Job job = smallJob();
    job.rules.set("spoil.edge", 3, UnitSystem::US);
    job.rules.set("handdig.tolerance", 18, UnitSystem::US);
    EXPECT_TRUE(tells(job, Part::Job, whole, Caution, "spoil.edge", "Spoil stays 3 ft back"));
    EXPECT_TRUE(tells(job, Part::Job, whole, Caution, "handdig.tolerance", "Within 18 in of a mark"));
    job.units = UnitSystem::Metric;
    EXPECT_TRUE(tells(job, Part::Job, whole, Caution, "spoil.edge", "Spoil stays 0.91 m back"));
}

TEST(JudgeCautions, DeepTrench) {
    // The deepest cut of the small job is at B: 99.5 - 96.6 + 0.12 / 12 + 3 / 12 = 3.16 ft. With B's ground raised by
    // 0.84 ft it is 4 ft, 29 CFR 1926.651(c)(2); by 1.84 ft 5 ft, 29 CFR 1926.652(a)(1).
    const auto raised = [](double feet) {
        Job job = smallJob();
        job.nodes[1].ground = Length::feet(99.5 + feet);
        return job;
    };
    EXPECT_FALSE(tells(raised(0.839), Part::Job, whole, Caution, "cut.exit", ""));
    EXPECT_TRUE(tells(raised(0.84), Part::Job, whole, Caution, "cut.exit", "Trench 4 ft or deeper"));
    EXPECT_TRUE(tells(raised(0.841), Part::Job, whole, Caution, "cut.exit", "Trench 4 ft or deeper"));
    EXPECT_FALSE(tells(raised(1.839), Part::Job, whole, Caution, "cut.protect", ""));
    EXPECT_TRUE(tells(raised(1.84), Part::Job, whole, Caution, "cut.protect", "Trench 5 ft or deeper"));
    Job job = raised(1);
    job.rules.set("cut.exit", 4.5, UnitSystem::US);
    EXPECT_FALSE(tells(job, Part::Job, whole, Caution, "cut.exit", ""));
}

TEST(JudgeCautions, ByWhatIsThere) {
    Job job = smallJob();
    job.facts.irrigation = Answer::Yes;
    EXPECT_TRUE(tells(job, Part::Job, whole, Caution, "", "Irrigation and pool lines are private"));
    job.facts.irrigation = Answer::NotSaid;
    EXPECT_TRUE(tells(job, Part::Job, whole, Caution, "", "Irrigation and pool lines are private"));
    job.facts.permission = "needs none";
    EXPECT_TRUE(tells(job, Part::Job, whole, Caution, "", "needs permission"));
    job.pit.node = "Out";
    EXPECT_TRUE(tells(job, Part::Job, whole, Caution, "", "A soak test is no guarantee"));
    EXPECT_TRUE(tells(job, Part::Job, whole, Caution, "", "drainage well"));
    EXPECT_FALSE(tells(job, Part::Job, whole, Caution, "pit.setback.septic.min", "Keep the pit away"));
    job.facts.septic = Answer::Ask;
    EXPECT_TRUE(tells(job, Part::Job, whole, Caution, "pit.setback.septic.min", "Keep the pit away"));
}

}  // namespace
}  // namespace trenchbook
