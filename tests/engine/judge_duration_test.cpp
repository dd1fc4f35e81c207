// The design rain against the water's way.
#include "judged.h"

namespace trenchbook {
namespace {

// 40 ft at 2 % and 60 ft at 1 % take well under a minute: five minutes of rain are the shortest that counts.
TEST(JudgeDuration, LongerThanTheWayIsTold) {
    Job job = smallJob();
    for (const double minutes : {1.0, 5.0}) {
        job.facts.duration = Duration::minutes(minutes);
        EXPECT_FALSE(tells(job, Part::Job, Finding::whole, Severity::Check, "duration.least", ""));
    }
    job.facts.duration = Duration::minutes(5.1);
    EXPECT_TRUE(tells(job, Part::Job, Finding::whole, Severity::Check, "duration.least",
                      "Duration 5.1 min is longer than the water is on its way, 5 min; a shorter rain"));
    job.facts.duration = Duration::minutes(60);
    EXPECT_TRUE(tells(job, Part::Job, Finding::whole, Severity::Check, "duration.least", "Duration 60 min"));
    job.rules.set("duration.least", 60, UnitSystem::US);
    EXPECT_FALSE(tells(job, Part::Job, Finding::whole, Severity::Check, "duration.least", ""));
    job.facts.duration.reset();
    EXPECT_FALSE(tells(job, Part::Job, Finding::whole, Severity::Check, "duration.least", ""));
}

// A yard from which the water takes 20 minutes to the basin, and the pipe below it; the roof above has no part in that.
TEST(JudgeDuration, TheWayOverTheGroundCounts) {
    Job job = smallJob();
    job.inlets[1].time = Duration::minutes(20);
    const SolvedJob solved = solve(job);
    const double pipe = 60 / solved.runs[1].velocity->feetPerSecond() / 60;
    job.facts.duration = Duration::minutes(20 + pipe * 0.99);
    EXPECT_FALSE(tells(job, Part::Job, Finding::whole, Severity::Check, "duration.least", ""));
    job.facts.duration = Duration::minutes(20 + pipe * 1.01);
    EXPECT_TRUE(tells(job, Part::Job, Finding::whole, Severity::Check, "duration.least", "longer than"));
}

}  // namespace
}  // namespace trenchbook
