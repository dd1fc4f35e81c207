// What is told of the ground beside the house: it falls away from the walls.
#include <gtest/gtest.h>

#include "judged.h"
#include "trenchbook/job/read.h"

namespace trenchbook {
namespace {

using enum Severity;

constexpr const char* rule = "ground.away.min";

// A stands 2 ft from the wall, B farther off; the ground falls 0.5 ft between them.
Job beside(double fromHouseOfB) {
    Job job = smallJob();
    job.nodes[0].fromHouse = Length::feet(2);
    job.nodes[1].fromHouse = Length::feet(fromHouseOfB);
    return job;
}
bool found(const Job& job) {
    for (const Finding& finding : told(job, Part::Nodes, 0))
        if (finding.rule == rule) return true;
    return false;
}

TEST(JudgeGround, FallAtItsLimit) {
    // IRC 2006 R401.3, 2 % within 10 ft: 0.5 ft in 25 ft is just that.
    EXPECT_FALSE(found(beside(27)));
    EXPECT_FALSE(found(beside(26.99)));
    EXPECT_TRUE(tells(beside(27.1), Part::Nodes, 0, Check, rule,
                      "ground from A to B away from the house falls 1.99 %, at least 2 %"));
}

TEST(JudgeGround, OnlyBesideTheHouse) {
    Job job = beside(60);
    job.nodes[0].fromHouse = Length::feet(10);
    EXPECT_TRUE(found(job));
    job.nodes[0].fromHouse = Length::feet(10.01);
    EXPECT_FALSE(found(job));
}

TEST(JudgeGround, OnlyWhereTheNextNodeIsMeasuredAndFarther) {
    EXPECT_FALSE(found(beside(2)));
    EXPECT_FALSE(found(beside(1)));
    Job job = beside(60);
    job.nodes[1].fromHouse.reset();
    EXPECT_FALSE(found(job));
    job = beside(60);
    job.nodes[1].ground.reset();
    EXPECT_FALSE(found(job));
}

TEST(JudgeGround, TheDistanceIsReadFromNodes) {
    JobTables tables;
    tables.nodes = Grid{2, 3, {"Node", "Ground", "From house", "A", 100.0, "2' 6\""}};
    EXPECT_NEAR(readJob(tables, UnitSystem::US).nodes[0].fromHouse->feet(), 2.5, 1e-12);
}

TEST(JudgeGround, GroundThatFallsToTheHouse) {
    Job job = beside(12);
    job.nodes[0].ground = Length::feet(99.4);
    EXPECT_TRUE(tells(job, Part::Nodes, 0, Check, rule, "falls -1 %"));
}

}  // namespace
}  // namespace trenchbook
