#include <gtest/gtest.h>

#include <cmath>

#include "reference.h"
#include "trenchbook/core/error.h"
#include "trenchbook/grade/grade.h"

namespace trenchbook {
namespace {

double confidence(double length, double up, double down, double slope, double rod) {
    return gradeConfidence(Length::feet(length), Length::feet(up), Length::feet(down), Slope::fraction(slope),
                           Length::feet(rod));
}

TEST(GradeConfidence, NormalDistributionTable) {
    // Abramowitz and Stegun, Handbook of Mathematical Functions (1964), table 26.1, P(x).
    const struct {
        double x, p;
    } table[] = {{0, 0.5},
                 {0.5, 0.691462461274013},
                 {1, 0.841344746068543},
                 {2, 0.977249868051821},
                 {3, 0.998650101968370}};
    for (const auto& [x, p] : table) {
        const double fall = x * std::sqrt(2.0) * 0.01;
        reference::check("GRADE.CONFIDENCE", ("P(x) at x = " + std::to_string(x)).c_str(),
                         confidence(100, fall, 0, 0, 0.01), p, 5e-16,
                         "Abramowitz and Stegun 1964, table 26.1", "memory");
    }
}

TEST(GradeConfidence, AgainstMpmath) {
    const struct {
        double length, up, down, slope, rod, printed;
    } cases[] = {{40, 98, 97.58, 0.01, 0.01, 0.92135039647485743},
                 {40, 98, 97.61, 0.01, 0.01, 0.23975006109347673},
                 {100, 12.5, 11.4, 0.0104, 0.02, 0.98305257323765536},
                 {60, 50, 49.4, 0.01, 0.005, 0.5},
                 {25, 10, 9.70, 0.01, 0.01, 0.99979652399127752}};
    for (const auto& c : cases) {
        const std::string item = "length " + std::to_string(c.length) + ", levels " + std::to_string(c.up) +
                                 " and " + std::to_string(c.down) + ", slope " + std::to_string(c.slope) +
                                 ", rod " + std::to_string(c.rod);
        reference::check(
            "GRADE.CONFIDENCE", item.c_str(), confidence(c.length, c.up, c.down, c.slope, c.rod), c.printed,
            1e-12, "mpmath 1.3.0, ncdf((up - down - slope length) / (rod sqrt 2)), 30 digits", "library");
    }
}

TEST(GradeConfidence, EvenAtTheSlopeItselfAndRisesWithTheFall) {
    EXPECT_NEAR(confidence(50, 100, 99.5, 0.01, 0.02), 0.5, 1e-12);
    double before = 0;
    for (double down = 100; down > 98; down -= 0.01) {
        const double now = confidence(50, 100, down, 0.01, 0.02);
        EXPECT_GE(now, before) << down;
        // What is missing with this chance is there with the rest of it.
        EXPECT_NEAR(now + confidence(50, 100, 99 - (down - 100), 0.01, 0.02), 1, 1e-12) << down;
        before = now;
    }
    EXPECT_GT(before, 0.999999);
}

TEST(GradeConfidence, RefusesWhatCannotBe) {
    EXPECT_THROW(confidence(0, 1, 0, 0.01, 0.01), Error);
    EXPECT_THROW(confidence(10, 1, 0, 0.01, 0), Error);
    EXPECT_THROW(confidence(10, 1, 0, 0.01, -0.01), Error);
}

}  // namespace
}  // namespace trenchbook
