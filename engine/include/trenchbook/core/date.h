// A day of the calendar, counted as spreadsheets count: 1 is 1899-12-31.
//
//     Date day = Date::serial(46388);
//     dateText(day);                   // "2027-01-01"
#pragma once

#include <compare>
#include <string>

namespace trenchbook {

struct Date {
    int days = 0;

    // The whole days of a spreadsheet's number. Errors: BadArgument "date" outside 0 to 2958465 (9999-12-31).
    static Date serial(double number);
    // Errors: BadArgument "date" for a day that is not in the calendar, or outside the years 1900 to 9999.
    static Date of(int year, int month, int day);
    auto operator<=>(const Date&) const = default;
    friend int operator-(Date later, Date earlier) { return later.days - earlier.days; }
    friend Date operator+(Date day, int more) { return {day.days + more}; }
};

// Year-month-day (ISO 8601).
std::string dateText(Date day);

}  // namespace trenchbook
