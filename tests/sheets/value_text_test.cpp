// What each kind of column takes, and the words of each refusal.
#include "jobbook/value_text.h"

#include <gtest/gtest.h>

#include <cmath>

namespace {

using namespace trenchbook::sheets;

Value read(const std::string& text, const Format& format, const Validity& validity = {},
           Measure measure = Measure::Plain, bool metric = false) {
    return readValue(text, {format, validity, measure}, metric);
}
std::string refusal(const std::string& text, const Format& format, const Validity& validity = {},
                    Measure measure = Measure::Plain, bool metric = false) {
    try {
        read(text, format, validity, measure, metric);
        return "";
    } catch (const std::invalid_argument& wrong) {
        return wrong.what();
    }
}
Validity between(double least, double greatest, bool strict = true) {
    Validity made;
    made.least = least;
    made.greatest = greatest;
    made.strict = strict;
    return made;
}

TEST(ValueText, TextIsNeverTurnedIntoANumber) {
    for (const char* text : {"1/8 in/ft", "1:48", "1%", "007", "2026-05-31", "5' 6-1/2\""})
        EXPECT_EQ(read(text, show::text), Value(std::string(text)));
    EXPECT_EQ(read("", show::text), Value());
}

TEST(ValueText, Numbers) {
    EXPECT_EQ(read("12.50", show::number(2)), Value(12.5));
    EXPECT_EQ(read("-0.31", show::number(2)), Value(-0.31));
    EXPECT_EQ(read("+4", show::number(0)), Value(4.0));
    EXPECT_EQ(read("$19.90", show::money), Value(19.9));
    for (const char* text : {"abc", "1.2.3", "12 ft", "--1", "nan", "inf", "0x10", "1e999"})
        EXPECT_EQ(refusal(text, show::number(2)), "is not a number") << text;
    EXPECT_EQ(refusal("12,5", show::number(2)),
              "is not a number here: write it with a point and without commas");
    EXPECT_EQ(refusal("1,234.50", show::money),
              "is not a number here: write it with a point and without commas");
}

TEST(ValueText, ATapeReadingInANumberOrTextColumn) {
    EXPECT_EQ(read("12.5", show::general), Value(12.5));
    EXPECT_EQ(read("12' 6\"", show::general), Value(std::string("12' 6\"")));
}

TEST(ValueText, PercentsAreNeverGuessed) {
    EXPECT_EQ(read("10%", show::percent(0)), Value(0.1));
    EXPECT_EQ(read("7.25 %", show::percent(2)), Value(0.0725));
    EXPECT_EQ(read("0.1", show::percent(0)), Value(0.1));
    EXPECT_EQ(read("150%", show::percent(0)), Value(1.5));
    EXPECT_EQ(refusal("10", show::percent(0)), "is above the whole: write 10% or 0.1");
    EXPECT_EQ(refusal("%", show::percent(0)), "is not a percentage");
}

TEST(ValueText, Dates) {
    // Day 25569 is 1970-01-01 in every spreadsheet that counts from 1899-12-30 (OpenDocument 1.3 part
    // 4, 4.11.7).
    EXPECT_EQ(read("1970-01-01", show::date), Value(25569.0));
    EXPECT_EQ(read("2024-02-29", show::date), Value(45351.0));
    for (const char* text : {"2023-02-29", "05/31/2026", "2026-13-01", "2026-5-31", "2026-05-00", "soon"})
        EXPECT_EQ(refusal(text, show::date), "is not a date; write year-month-day: 2026-05-31") << text;
}

TEST(ValueText, WordListsGiveTheirOwnSpelling) {
    Validity list;
    list.words = {"US", "metric"};
    EXPECT_EQ(read("us", show::text, list), Value(std::string("US")));
    EXPECT_EQ(refusal("imperial", show::text, list), "is not one of: US, metric");
    list.strict = false;
    EXPECT_EQ(read("imperial", show::text, list), Value(std::string("imperial")));
}

TEST(ValueText, LimitsFollowTheUnitsOfTheJob) {
    EXPECT_EQ(refusal("26", show::number(2), between(0, 25), Measure::Feet), "is outside 0 to 25 ft");
    EXPECT_EQ(read("25", show::number(2), between(0, 25), Measure::Feet), Value(25.0));
    // 25 ft is 7.62 m exactly (international foot).
    EXPECT_EQ(read("7.62", show::number(2), between(0, 25), Measure::Feet, true), Value(7.62));
    EXPECT_EQ(refusal("7.63", show::number(2), between(0, 25), Measure::Feet, true),
              "is outside 0 to 7.62 m");
    EXPECT_EQ(refusal("-1", show::number(0), between(0, 180), Measure::Degrees, true), "is outside 0 to 180");
    EXPECT_EQ(read("26", show::number(2), between(0, 25, false), Measure::Feet), Value(26.0));
}

TEST(ValueText, MoneyAndDatesForReading) {
    EXPECT_EQ(moneyText(0), "0.00");
    EXPECT_EQ(moneyText(999.994), "999.99");
    EXPECT_EQ(moneyText(1234.5), "1,234.50");
    EXPECT_EQ(moneyText(-1234567.891), "-1,234,567.89");
    EXPECT_EQ(moneyText(-0.001), "0.00");
    for (const char* day : {"1899-12-31", "1900-02-28", "1900-03-01", "2024-02-29", "2026-05-31"})
        EXPECT_EQ(dateText(std::get<double>(read(day, show::date))), day);
    EXPECT_EQ(dateText(46173.9), "2026-05-31");  // LibreOffice shows day 46173 so; hours do not count
    EXPECT_GT(today(), 46000);
    EXPECT_EQ(today(), std::floor(today()));
}

}  // namespace
