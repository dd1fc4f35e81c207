#include "trenchbook/core/date.h"

#include <gtest/gtest.h>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

// Day numbers of OpenDocument's default null date, 1899-12-30 (OASIS OpenDocument 1.2, part 2, 4.3.2): 2 is
// 1900-01-01. 1970-01-01 is 25569, known from Unix time: 25569 x 86400 s lie between.
TEST(Date, CountsAsSheetsDo) {
    EXPECT_EQ(dateText({1}), "1899-12-31");
    EXPECT_EQ(Date::of(1900, 1, 1).days, 2);
    EXPECT_EQ(Date::of(1970, 1, 1).days, 25569);
    EXPECT_EQ(dateText(Date::serial(46388)), "2027-01-01");
    EXPECT_EQ(Date::serial(46388.99), Date::of(2027, 1, 1));
}

TEST(Date, KnowsLeapYears) {
    EXPECT_EQ(dateText(Date::of(2024, 2, 28) + 1), "2024-02-29");
    EXPECT_EQ(dateText(Date::of(2100, 2, 28) + 1), "2100-03-01");
    EXPECT_EQ(Date::of(2025, 3, 1) - Date::of(2024, 3, 1), 365);
    EXPECT_EQ(Date::of(2024, 3, 1) - Date::of(2023, 3, 1), 366);
    EXPECT_LT(Date::of(2024, 2, 29), Date::of(2024, 3, 1));
}

TEST(Date, RefusesWhatIsNoDay) {
    EXPECT_THROW(Date::of(2023, 2, 29), Error);
    EXPECT_THROW(Date::of(2023, 13, 1), Error);
    EXPECT_THROW(Date::of(1899, 12, 31), Error);
    EXPECT_THROW(Date::serial(-1), Error);
    EXPECT_THROW(Date::serial(2958466), Error);
    EXPECT_EQ(dateText(Date::serial(2958465)), "9999-12-31");
}

}  // namespace
}  // namespace trenchbook
