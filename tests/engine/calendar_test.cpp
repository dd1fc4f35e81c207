// Days that count, against a spreadsheet maker's published examples and by walking the calendar; the earliest start.
#include "trenchbook/money/calendar.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <vector>

#include "reference.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

TEST(Calendar, WorkdaysAreThoseOfThePublishedExamples) {
    // Examples in the help of a spreadsheet's WORKDAY and NETWORKDAYS (Microsoft), from memory.
    const Date start = Date::of(2008, 10, 1);
    const Date holidays[] = {Date::of(2008, 11, 26), Date::of(2008, 12, 4), Date::of(2009, 1, 21)};
    reference::check("DAYS.AFTER", "151 working days after 2008-10-01", afterDays(start, 151, {}).days,
                     Date::of(2009, 4, 30).days, 0, "help of the spreadsheet function WORKDAY", "memory");
    reference::check("DAYS.AFTER", "the same with three holidays",
                     afterDays(start, 151, {.holidays = holidays}).days, Date::of(2009, 5, 5).days, 0,
                     "help of the spreadsheet function WORKDAY", "memory");
    // NETWORKDAYS counts its first day, a Monday.
    const Date thanksgiving[] = {Date::of(2012, 11, 22)};
    EXPECT_EQ(daysBetween(Date::of(2012, 9, 30), Date::of(2013, 3, 1), {}), 110);
    EXPECT_EQ(daysBetween(Date::of(2012, 9, 30), Date::of(2013, 3, 1), {.holidays = thanksgiving}), 109);
}

TEST(Calendar, TheRightToCancelSkipsSundaysAndHolidaysAlone) {
    for (const reference::Row& row : reference::rows("30j_contract_money_law.csv"))
        if (row.item == "Right to cancel, federal cooling-off rule 16 CFR 429" ||
            row.item == "Right to cancel, California home solicitation, days" ||
            row.item.starts_with("Right to cancel, federal Truth in Lending")) {
            // Signed on a Monday of a week without holidays, the last day is that many days later.
            const Date monday = Date::of(2026, 12, 7);
            reference::check("DAYS.CANCEL", row, lastDayToCancel(monday, 3, {}) - monday);
        }
    const Date christmas[] = {Date::of(2026, 12, 25)};
    EXPECT_EQ(dateText(lastDayToCancel(Date::of(2026, 12, 24), 3, christmas)), "2026-12-29");
    EXPECT_EQ(dateText(lastDayToCancel(Date::of(2026, 12, 24), 3, {})), "2026-12-28");
    EXPECT_EQ(dateText(lastDayToCancel(Date::of(2026, 12, 3), 3, {})), "2026-12-07")
        << "Friday, Saturday, Monday";
}

TEST(Calendar, CountsAsOneWalksIt) {
    const bool walks = rc::check("afterDays and daysBetween against walking day by day", [] {
        const int first = *rc::gen::inRange(40000, 60000), span = *rc::gen::inRange(0, 400);
        const Week week = *rc::gen::element(Week::MondayToFriday, Week::MondayToSaturday);
        std::vector<Date> holidays;
        for (int n = *rc::gen::inRange(0, 6); n > 0; --n)
            holidays.push_back({first + *rc::gen::inRange(-10, 420)});
        const Calendar calendar{.holidays = holidays, .week = week};
        int walked = 0;
        for (int day = first + 1; day <= first + span; ++day) {
            const int weekday = day % 7;  // 0 is a Saturday: 1899-12-30
            const bool off = weekday == 1 || (weekday == 0 && week == Week::MondayToFriday);
            bool holiday = false;
            for (const Date& off2 : holidays) holiday = holiday || off2.days == day;
            walked += off || holiday ? 0 : 1;
        }
        RC_ASSERT(daysBetween({first}, {first + span}, calendar) == walked);
        const Date end = afterDays({first}, walked, calendar);
        RC_ASSERT(daysBetween({first}, end, calendar) == walked);
        RC_ASSERT(end.days <= first + span);
        RC_ASSERT(calendar.counts(onOrAfter({first}, calendar)));
    });
    EXPECT_TRUE(walks);
}

TEST(Start, IsHeldByWhatIsOverLast) {
    const Date wednesday = Date::of(2026, 12, 2);
    std::vector<Wait> waits = {
        {.what = "ticket", .from = wednesday, .days = 3},
        {.what = "permit", .from = Date::of(2026, 11, 16), .days = 21, .working = false},
        {.what = "pipe", .from = wednesday, .days = 1, .done = wednesday}};
    Start start = earliestStart(waits, {});
    EXPECT_EQ(dateText(start.day), "2026-12-07");
    EXPECT_EQ(waits[start.held].what, "ticket")
        << "and the permit is there the same Monday: the first is named";
    const Date holidays[] = {Date::of(2026, 12, 4)};
    start = earliestStart(waits, {.holidays = holidays});
    EXPECT_EQ(dateText(start.day), "2026-12-08");
    waits[0].done = wednesday;
    waits[1].days = 26;  // a Saturday
    start = earliestStart(waits, {});
    EXPECT_EQ(dateText(start.day), "2026-12-14");
    EXPECT_EQ(start.held, 1u);
}

TEST(Start, IsNotKnownWhileAWaitIsNotAskedFor) {
    const std::vector<Wait> waits = {{.what = "permit", .days = 10}};
    try {
        earliestStart(waits, {});
        FAIL() << "a start although nobody asked for the permit";
    } catch (const Error& error) {
        EXPECT_EQ(error.kind(), Error::Kind::NoSolution);
        EXPECT_EQ(error.sentence(Language::English), "permit is not asked for yet: the start is not known.");
    }
    EXPECT_THROW(earliestStart({}, {}), Error);
    EXPECT_THROW(afterDays({46380}, -1, {}), Error);
}

}  // namespace
}  // namespace trenchbook
