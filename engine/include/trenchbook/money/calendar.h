// Days that count: the crew's working days, the business days of a right to cancel, and the first day that work may start.
//
//     #include "trenchbook/money/calendar.h"
//     using namespace trenchbook;
//     const Date holidays[] = {Date::of(2026, 12, 25)};
//     const Calendar crew{.holidays = holidays};
//     dateText(afterDays(Date::of(2026, 12, 24), 1, crew));                  // "2026-12-28": Friday is Christmas
//     dateText(lastDayToCancel(Date::of(2026, 12, 24), 3, holidays));        // "2026-12-29": Saturday counts, Sunday does not
//
// The day that is counted from does not count itself. Holidays are whoever's days they are: typed, none is known here.
// Business days of the federal cooling-off rule are all but Sundays and federal holidays, and the right ends at midnight of the
// third one after the sale: 16 CFR 429.0(f) and 429.1(a), text of the e-CFR of February 2021. States may give more days.
// Errors: BadArgument "days" (below 0 or above 3650), "waits" (none), "from", "done" (see earliestStart).
#pragma once

#include <optional>
#include <span>
#include <string>

#include "trenchbook/core/date.h"

namespace trenchbook {

enum class Week { MondayToFriday, MondayToSaturday };

struct Calendar {
    std::span<const Date> holidays = {};
    Week week = Week::MondayToFriday;

    bool counts(Date day) const;
};

Date afterDays(Date from, int days, const Calendar& calendar);
// Days that count after `from`, up to and with `to`; 0 where `to` is no later.
int daysBetween(Date from, Date to, const Calendar& calendar);
// The day itself where it counts, else the next one that does.
Date onOrAfter(Date day, const Calendar& calendar);

// The right ends with this day.
Date lastDayToCancel(Date signedOn, int businessDays, std::span<const Date> holidays);

// What must be over before the first shovel: a ticket, a permit, an association's answer, a delivery, the days to cancel.
struct Wait {
    std::string what = {};
    std::optional<Date> from = {};  // asked for, called, ordered, signed on this day
    int days = 0;                   // that it takes
    bool working = true;            // of the crew's working days; else of all days
    std::optional<Date> done = {};  // it is there since; then nothing of the above counts
};

struct Start {
    Date day = {};
    std::size_t held = 0;  // the wait that is over last, the first of them; on its day the work may start
};

// The first working day on which all waits are over. Errors: NoSolution "from" where a wait is neither done nor asked for: its
// end is not known, and neither is the start; the sentence names it.
Start earliestStart(std::span<const Wait> waits, const Calendar& crew);

}  // namespace trenchbook
