#include "trenchbook/core/date.h"

#include <chrono>
#include <cmath>
#include <cstdio>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

// Day 0. From March 1900 on, sheets that count a 29 February 1900 agree with this.
constexpr std::chrono::sys_days epoch{std::chrono::year{1899} / 12 / 30};

}  // namespace

Date Date::serial(double number) {
    requireBetween(number, 0, 2958465, "date");
    return {static_cast<int>(std::floor(number))};
}

Date Date::of(int year, int month, int day) {
    const std::chrono::year_month_day given{std::chrono::year{year},
                                            std::chrono::month{static_cast<unsigned>(month)},
                                            std::chrono::day{static_cast<unsigned>(day)}};
    if (year < 1900 || year > 9999 || !given.ok())
        throw Error(Error::Kind::BadArgument, "date",
                    std::to_string(year) + "-" + std::to_string(month) + "-" + std::to_string(day),
                    {"a day of the years 1900 to 9999", "un día de los años 1900 a 9999"});
    return {static_cast<int>((std::chrono::sys_days(given) - epoch).count())};
}

std::string dateText(Date day) {
    const std::chrono::year_month_day at{epoch + std::chrono::days(day.days)};
    char text[48];
    std::snprintf(text, sizeof text, "%04d-%02u-%02u", static_cast<int>(at.year()),
                  static_cast<unsigned>(at.month()), static_cast<unsigned>(at.day()));
    return text;
}

}  // namespace trenchbook
