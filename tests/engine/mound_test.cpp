#include "trenchbook/ground/mound.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <cmath>

#include "reference.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

using namespace reference;

TEST(Mound, AgreesWithHantushIntegrals) {
    for (const Row& row : rows("08e_horton_hantush_computed.csv")) {
        if (row.output == "S*")
            check("PIT.MOUND", row, hantushIntegral(row.input("alpha"), row.input("beta")));
        if (row.output == "maximum rise hm-hi") {
            // Any consistent units: metres and days.
            const Mound mound{.length = 2 * Length::metres(row.input("half_length")),
                              .width = 2 * Length::metres(row.input("half_width")),
                              .rate = SoilRate::metresPerDay(row.input("w")),
                              .time = Duration::days(row.input("t")),
                              .conductivity = Velocity::metresPerDay(row.input("K")),
                              .specificYield = row.input("Sy"),
                              .saturatedThickness = Length::metres(row.input("hi"))};
            check("PIT.MOUND", row, moundRise(mound).metres());
        }
    }
}

TEST(Mound, IntegralHasItsLimits) {
    // S* goes to 1 for a wide basin; for a small one to 4 alpha beta / pi * (... + ln), always below 1.
    EXPECT_NEAR(hantushIntegral(50, 50), 1, 1e-12);
    // With one side endless it is 4 times the second repeated integral of erfc, taken from 1.
    for (const double alpha : {0.05, 0.3, 1.0, 2.0}) {
        const double pi = std::acos(-1.0);
        const double closed = (1 + 2 * alpha * alpha) * std::erf(alpha) +
                              2 * alpha * std::exp(-alpha * alpha) / std::sqrt(pi) - 2 * alpha * alpha;
        EXPECT_NEAR(hantushIntegral(alpha, 1e6), closed, 1e-10) << alpha;
    }
}

// The closed form against the integral itself, by quadrature: with t = u^2 it is smooth down to u = 0.
TEST(Mound, ClosedFormIsTheIntegral) {
    using boost::math::quadrature::gauss_kronrod;
    for (double alpha = 1e-5; alpha < 60; alpha *= 2.9)
        for (double beta = 1e-5; beta < 1e5; beta *= 4.1) {
            const auto integrand = [&](double u) {
                return u == 0 ? 0 : 2 * u * std::erf(alpha / u) * std::erf(beta / u);
            };
            const double taken = gauss_kronrod<double, 61>::integrate(integrand, 0.0, 1.0, 15, 1e-14);
            EXPECT_NEAR(hantushIntegral(alpha, beta) / taken, 1, 1e-13) << alpha << " " << beta;
        }
    for (const double small : {1e-300, 1e-150, 1e-12})
        for (const double large : {1e-12, 1.0, 39.0, 1e150, 1e308}) {
            EXPECT_GT(hantushIntegral(small, large), 0) << small << " " << large;
            EXPECT_LT(hantushIntegral(small, large), 1e-11) << small << " " << large;
        }
    EXPECT_DOUBLE_EQ(hantushIntegral(1e308, 1e300), 1);
}

Mound anyMound() {
    return {.length = Length::feet(*rc::gen::inRange(2, 100)),
            .width = Length::feet(*rc::gen::inRange(2, 40)),
            .rate = SoilRate::inchesPerHour(*rc::gen::inRange(1, 500) / 100.0),
            .time = Duration::hours(*rc::gen::inRange(1, 240)),
            .conductivity = Velocity::feetPerDay(*rc::gen::inRange(1, 200)),
            .specificYield = *rc::gen::inRange(5, 35) / 100.0,
            .saturatedThickness = Length::feet(*rc::gen::inRange(3, 60))};
}

RC_GTEST_PROP(Mound, GrowsWithTheWaterAndShrinksWithTheAquifer, ()) {
    const Mound mound = anyMound();
    const Length rise = moundRise(mound);
    RC_ASSERT(rise.si() > 0);
    RC_ASSERT(rise.si() <= mound.rate.si() * mound.time.si() / mound.specificYield);
    Mound more = mound;
    more.rate = 1.5 * mound.rate;
    RC_ASSERT(moundRise(more) > rise);
    more = mound;
    more.time = 1.5 * mound.time;
    RC_ASSERT(moundRise(more) > rise);
    more = mound;
    more.width = 1.5 * mound.width;
    RC_ASSERT(moundRise(more) > rise);
    more = mound;
    more.conductivity = 1.5 * mound.conductivity;
    RC_ASSERT(moundRise(more) < rise);
    Mound turned = mound;
    std::swap(turned.length, turned.width);
    RC_ASSERT(std::fabs(moundRise(turned) / rise - 1) < 1e-9);
    // Scaling every length, and rates with it, scales the rise.
    Mound twice = mound;
    twice.length = 2 * mound.length;
    twice.width = 2 * mound.width;
    twice.rate = 2 * mound.rate;
    twice.conductivity = 2 * mound.conductivity;
    twice.saturatedThickness = 2 * mound.saturatedThickness;
    RC_ASSERT(std::fabs(moundRise(twice) / rise - 2) < 1e-8);
}

TEST(Mound, SaysWhatIsAllowed) {
    const auto refusal = [](auto change) -> std::string {
        Mound mound{Length::feet(20),    Length::feet(6),          SoilRate::inchesPerHour(0.5),
                    Duration::hours(48), Velocity::feetPerDay(10), 0.2,
                    Length::feet(10)};
        change(mound);
        try {
            moundRise(mound);
            return "accepted";
        } catch (const Error& error) {
            return error.sentence(Language::English);
        }
    };
    EXPECT_EQ(refusal([](Mound&) {}), "accepted");
    EXPECT_EQ(refusal([](Mound& m) { m.specificYield = 20; }),
              "specific yield is 20; allowed: from 0 to 1. If 20 percent is meant, write 0.2.");
    EXPECT_EQ(refusal([](Mound& m) { m.specificYield = 0; }), "specific yield is 0; allowed: above 0.");
    EXPECT_EQ(refusal([](Mound& m) { m.saturatedThickness = Length{}; }),
              "saturated thickness is 0; allowed: above 0.");
    EXPECT_EQ(refusal([](Mound& m) { m.conductivity = Velocity{}; }), "conductivity is 0; allowed: above 0.");
    EXPECT_EQ(refusal([](Mound& m) { m.time = Duration{}; }), "hours is 0; allowed: above 0.");
    EXPECT_EQ(refusal([](Mound& m) { m.rate = SoilRate{}; }), "rate is 0; allowed: above 0.");
    EXPECT_EQ(refusal([](Mound& m) { m.width = Length{}; }), "width is 0; allowed: above 0.");
    EXPECT_EQ(refusal([](Mound& m) { m.length = Length{}; }), "length is 0; allowed: above 0.");
}

}  // namespace
}  // namespace trenchbook
