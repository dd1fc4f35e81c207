// Which sizes go by which row of Rules: every row at, just below and just above its size.
#include "trenchbook/pipe/size_class.h"

#include <gtest/gtest.h>

#include <string>

#include "reference.h"
#include "trenchbook/rules/rules.h"

namespace {

using namespace trenchbook;

constexpr double hair = 1e-9;

struct Bound {
    double size;
    const char* below;
    const char* from;
};

void expectBounds(const char* (*key)(double), std::initializer_list<Bound> bounds) {
    for (const Bound& bound : bounds) {
        EXPECT_STREQ(key(bound.size - hair), bound.below) << "just below " << bound.size;
        EXPECT_STREQ(key(bound.size), bound.from) << "at " << bound.size;
        EXPECT_STREQ(key(bound.size + hair), bound.from) << "just above " << bound.size;
    }
}

TEST(SizeClass, LeastSlope) {
    expectBounds(leastSlopeKey, {{3, "slope.min.2in", "slope.min.3in"},
                                 {4, "slope.min.3in", "slope.min.4in"},
                                 {6, "slope.min.4in", "slope.min.6in"},
                                 {8, "slope.min.6in", "slope.min.8in"}});
    EXPECT_STREQ(leastSlopeKey(1.25), "slope.min.2in");
    EXPECT_STREQ(leastSlopeKey(24), "slope.min.8in");
}

TEST(SizeClass, TrenchWidth) {
    expectBounds(trenchWidthKey,
                 {{6, "trench.width.4in", "trench.width.6in"}, {8, "trench.width.6in", "trench.width.8in"}});
    EXPECT_STREQ(trenchWidthKey(2), "trench.width.4in");
}

TEST(SizeClass, GlueJoints) {
    expectBounds(glueJointsKey, {{4, "glue.joints.3in", "glue.joints.4in"},
                                 {6, "glue.joints.4in", "glue.joints.6in"},
                                 {8, "glue.joints.6in", "glue.joints.8in"}});
    EXPECT_STREQ(glueJointsKey(1.5), "glue.joints.3in");
}

TEST(SizeClass, EveryKeyIsARule) {
    for (const double size : {1.5, 3.0, 4.0, 6.0, 8.0})
        for (const char* key : {leastSlopeKey(size), trenchWidthKey(size), glueJointsKey(size)})
            EXPECT_NE(findRule(key), nullptr) << key;
}

TEST(SizeClass, KindOfPipe) {
    EXPECT_EQ(pipeKindKey(stockPipe("4 SDR35")), "sdr35");
    EXPECT_EQ(pipeKindKey(stockPipe("1-1/2 SCH40")), "sch40");
    EXPECT_EQ(pipeKindKey(bareBore(Length::inches(4))), "");
}

}  // namespace
