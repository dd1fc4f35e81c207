// Days that are no business days when a right to cancel is counted: 16 CFR 429.0(f) takes out Sundays and federal holidays.
// The holidays are those of 5 U.S.C. 6103(a); one that falls on a Sunday or Saturday counts on that day and on the Monday or
// Friday that is kept for it, so that the buyer's last day is never told too early. Holidays typed on Dates count, too.
#include "buying/money.h"
#include "papers/owner_words.h"

namespace trenchbook::sheets {

Form federalHolidays() {
    Form form;
    form.name = "Federal holidays";
    // Of the year of the agreement; New Year's Day of the year that the days to cancel reach into.
    const std::string year = "YEAR(agreed_date)";
    const auto add = [&](const std::string& label, const std::string& day) {
        form.fields.push_back(hidden(label, "", "IF(ISNUMBER(agreed_date);" + day + ";\"\")"));
    };
    // The nth of a weekday in a month; Sunday is 1.
    const auto nth = [&](const char* label, int month, int weekday, int count) {
        const std::string in = "DATE(" + year + ";" + std::to_string(month) + ";";
        add(label,
            in + std::to_string(7 * count + 1) + ")-WEEKDAY(" + in + std::to_string(8 - weekday) + "))");
    };
    const auto fixed = [&](const std::string& label, const std::string& day) {
        add(label, day);
        add(label + ", kept", day + "+IF(WEEKDAY(" + day + ")=1;1;IF(WEEKDAY(" + day + ")=7;-1;0))");
    };
    const auto of = [&](int month, int day) {
        return "DATE(" + year + ";" + std::to_string(month) + ";" + std::to_string(day) + ")";
    };
    constexpr int monday = 2, thursday = 5;
    fixed("New Year's Day", "DATE(YEAR(agreed_date+20);1;1)");
    nth("Birthday of Martin Luther King, Jr.", 1, monday, 3);
    nth("Washington's Birthday", 2, monday, 3);
    add("Memorial Day", of(5, 31) + "-WEEKDAY(" + of(5, 30) + ")+1");  // the last Monday of May
    fixed("Juneteenth", of(6, 19));
    fixed("Independence Day", of(7, 4));
    nth("Labor Day", 9, monday, 1);
    nth("Columbus Day", 10, monday, 2);
    fixed("Veterans Day", of(11, 11));
    nth("Thanksgiving Day", 11, thursday, 4);
    fixed("Christmas Day", of(12, 25));
    // And what is typed on Dates: its rows behind the thin one, with room for inserted ones.
    for (int row = 2; row <= holidayRows + 11; ++row) {
        const std::string typed = "INDEX([Holidays.Day];" + std::to_string(row) + ")";
        add("Typed " + std::to_string(row - 1), "IF(ISNUMBER(" + typed + ");" + typed + ";\"\")");
    }
    return form;
}

}  // namespace trenchbook::sheets
