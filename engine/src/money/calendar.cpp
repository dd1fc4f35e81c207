#include "trenchbook/money/calendar.h"

#include <algorithm>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

void requireDays(int days) { requireBetween(days, 0, 3650, "days"); }

Date endOf(const Wait& wait, const Calendar& crew) {
    if (wait.done) return *wait.done;
    if (!wait.from)
        throw Error(Error::Kind::NoSolution, "from",
                    Text{wait.what + " is not asked for yet: the start is not known.",
                         wait.what + " aún no se ha pedido: no se sabe el comienzo."});
    requireDays(wait.days);
    return wait.working ? afterDays(*wait.from, wait.days, crew) : *wait.from + wait.days;
}

}  // namespace

bool Calendar::counts(Date day) const {
    // Day 0 of the count is a Saturday.
    const int weekday = day.days % 7;
    if (weekday == 1 || (weekday == 0 && week == Week::MondayToFriday)) return false;
    return std::find(holidays.begin(), holidays.end(), day) == holidays.end();
}

Date afterDays(Date from, int days, const Calendar& calendar) {
    requireDays(days);
    Date day = from;
    while (days > 0) {
        day = day + 1;
        if (calendar.counts(day)) --days;
    }
    return day;
}

int daysBetween(Date from, Date to, const Calendar& calendar) {
    if (to <= from) return 0;
    const int each = calendar.week == Week::MondayToFriday ? 5 : 6, weeks = (to - from) / 7;
    const Calendar without{.week = calendar.week};
    int count = each * weeks;
    for (Date day = from + 7 * weeks + 1; day <= to; day = day + 1) count += without.counts(day) ? 1 : 0;
    for (std::size_t i = 0; i < calendar.holidays.size(); ++i) {
        const Date holiday = calendar.holidays[i];
        const auto before = calendar.holidays.subspan(0, i);
        if (holiday > from && holiday <= to && without.counts(holiday) &&
            std::find(before.begin(), before.end(), holiday) == before.end())
            --count;
    }
    return count;
}

Date onOrAfter(Date day, const Calendar& calendar) { return afterDays(day + -1, 1, calendar); }

Date lastDayToCancel(Date signedOn, int businessDays, std::span<const Date> holidays) {
    return afterDays(signedOn, businessDays, {.holidays = holidays, .week = Week::MondayToSaturday});
}

Start earliestStart(std::span<const Wait> waits, const Calendar& crew) {
    if (waits.empty())
        throw Error(Error::Kind::BadArgument, "waits", Text{"none", "ninguna"},
                    {"one thing at least that is waited for", "al menos una cosa que se espera"});
    Start start;
    for (std::size_t i = 0; i < waits.size(); ++i)
        if (const Date end = endOf(waits[i], crew); i == 0 || end > start.day) start = {end, i};
    start.day = onOrAfter(start.day, crew);
    return start;
}

}  // namespace trenchbook
