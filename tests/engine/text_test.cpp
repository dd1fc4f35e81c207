#include "trenchbook/core/text.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <cstdio>

using namespace trenchbook;

namespace {

// As the C library rounds it, without the zeros that say nothing.
std::string byLibrary(double value, int decimals) {
    char buffer[400];
    std::snprintf(buffer, sizeof buffer, "%.*f", decimals, value);
    std::string text(buffer);
    if (text.find('.') != std::string::npos) {
        text.erase(text.find_last_not_of('0') + 1);
        if (text.back() == '.') text.pop_back();
    }
    return text;
}

}  // namespace

TEST(PlainNumber, IsRoundedAsTheCLibraryDoes) {
    rc::check("plain() is %.*f without its zeros, also in the middle between two numbers and beside it", [] {
        const int decimals = *rc::gen::inRange(0, 9);
        const double power = std::pow(10.0, *rc::gen::inRange(-4, 10));
        const double parts = *rc::gen::element(1.0, 2.0, 8.0, 1000.0, 1024.0, 7.0);
        const double near = *rc::gen::inRange(-100000, 100000) / parts * power;
        const double value =
            *rc::gen::element(near, std::nextafter(near, 1e300), std::nextafter(near, -1e300));
        const double size = std::fabs(value);
        RC_PRE(size >= 0.5 * std::pow(10.0, -decimals) && size < 1e12);
        RC_ASSERT(plain(value, decimals) == byLibrary(value, decimals));
    });
    EXPECT_EQ(plain(0.125, 2), "0.12");  // a tie goes to the even digit
    EXPECT_EQ(plain(0.375, 2), "0.38");
    EXPECT_EQ(plain(-0.0), "0");
    EXPECT_EQ(plain(999999.99996), "1000000");
    EXPECT_EQ(plain(-3.2500, 4), "-3.25");
    EXPECT_EQ(plain(0.00004, 4), "4e-05");
    EXPECT_EQ(plain(1e12), "1e+12");
}
