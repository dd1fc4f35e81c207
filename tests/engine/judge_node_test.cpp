// Nodes judged: each finding at its limit, just below and just above.
#include <gtest/gtest.h>

#include <functional>

#include "jobs.h"
#include "trenchbook/job/judge.h"

namespace trenchbook {
namespace {

using Change = std::function<void(Job&)>;

SolvedJob with(const Change& change) {
    Job job = jobs::sound();
    change(job);
    return solve(job);
}
std::string check(const Change& change, std::size_t row) {
    return jobs::check(with(change), Part::Nodes, row);
}
bool speaks(const SolvedJob& solved, std::size_t row, const char* rule, Severity severity) {
    const Finding* finding = jobs::ruled(solved, Part::Nodes, row, rule);
    if (finding == nullptr) return false;
    EXPECT_EQ(finding->severity, severity) << finding->says.en;
    EXPECT_TRUE(finding->measured || finding->allowed) << rule;
    EXPECT_NE(finding->says.en, finding->says.es) << rule;
    return true;
}

TEST(JudgeNode, NamesAndKinds) {
    EXPECT_EQ(check([](Job& job) { job.nodes.push_back(jobs::node("", "basin", 99)); }, 3),
              "NOT JUDGED: the node has no name");
    const Change twice = [](Job& job) { job.nodes.push_back(jobs::node(" a ", "basin", 99)); };
    EXPECT_NE(check(twice, 0).find("NO: this name is used more than once"), std::string::npos);
    EXPECT_NE(check(twice, 3).find("NO: this name is used more than once"), std::string::npos);
    const auto kind = [](bool given) {
        return [=](Job& job) {
            job.nodes[0].kinds = {};
            job.nodes[0].kindGiven = given;
        };
    };
    EXPECT_EQ(check(kind(false), 0), "NOT JUDGED: kind is missing");
    EXPECT_EQ(check(kind(true), 0), "NO: kind cannot be read");
    EXPECT_EQ(check(
                  [](Job& job) {
                      job.nodes[0].kinds = {};
                      job.nodes[0].unusable = {jobs::unusable("Kind", "well")};
                  },
                  0),
              "NO: Kind is \"well\"");
}

// A downspout on Nodes that Water forgot: an OK below it would be one for half of the water.
TEST(JudgeNode, WaterThatEntersStandsOnWater) {
    const std::string forgotten = "NOT JUDGED: water enters here, and no row of Water names this node";
    for (const char* kind : {"downspout", "channel", "basin", "cleanout + downspout"}) {
        const Change added = [=](Job& job) {
            job.nodes.push_back(jobs::node("D", kind, 99));
            job.runs.push_back(jobs::run("D", "B", 5, "4 SDR35", Slope::percent(2)));
        };
        EXPECT_NE(check(added, 3).find(forgotten), std::string::npos) << kind;
        const SolvedJob solved = with(added);
        EXPECT_FALSE(solved.runs[1].flow || solved.runs[2].flow) << "below it no flow is known";
        EXPECT_TRUE(solved.runs[0].flow) << "above it nothing changes";
        const Change answered = [=](Job& job) {
            added(job);
            job.inlets.push_back(jobs::roof("D", 200));
        };
        EXPECT_EQ(check(answered, 3).find(forgotten), std::string::npos) << kind;
        EXPECT_NEAR(with(answered).runs[1].flow->gpm(), 1.5 * with([](Job&) {}).runs[1].flow->gpm(), 1e-9);
    }
    const Change closed = [](Job& job) {
        job.nodes.push_back(jobs::node("D", "cleanout", 99));
        job.runs.push_back(jobs::run("D", "B", 5, "4 SDR35", Slope::percent(2)));
    };
    EXPECT_EQ(check(closed, 3).find(forgotten), std::string::npos);
}

// A second run that comes to the bend, of no known length: neither its cleanout nor its turns are known.
TEST(JudgeNode, ATurnBehindAnUnknownRunIsNotJudged) {
    const auto bend = [](double turn, bool known, const char* kinds = "bend") {
        return check(
            [=](Job& job) {
                job.nodes[1] = jobs::node("B", kinds, 98.4);
                job.nodes[1].turn = Angle::degrees(turn);
                job.nodes.push_back(jobs::node("D", "cleanout", 99));
                job.runs.push_back(jobs::run("D", "B", 20, "4 SDR35", Slope::percent(1.5)));
                if (!known) job.runs.back().length.reset();
            },
            1);
    };
    const std::string words = "NOT JUDGED: how far the last cleanout is from this turn is not known";
    EXPECT_EQ(bend(67.5, true).find(words), std::string::npos);
    EXPECT_NE(bend(67.5, false).find(words), std::string::npos) << bend(67.5, false);
    EXPECT_EQ(bend(45, false).find(words), std::string::npos) << "no turn that a cleanout must be near";
    EXPECT_EQ(bend(67.5, false, "cleanout").find(words), std::string::npos);
}

TEST(JudgeNode, GroundAndRuns) {
    EXPECT_EQ(check([](Job& job) { job.nodes[2].ground.reset(); }, 2),
              "NOT JUDGED: no level: shoot Out on Levels, or type Ground");
    EXPECT_EQ(check(
                  [](Job& job) {
                      job.nodes[2].ground.reset();
                      job.nodes[2].shot = "ditch bank";
                  },
                  2),
              "NOT JUDGED: no level: shoot ditch bank on Levels, or type Ground");
    EXPECT_EQ(check([](Job& job) { job.nodes.push_back(jobs::node("X", "bend", 99)); }, 3),
              "CHECK: no run starts or ends here");
    EXPECT_NE(check([](Job& job) { job.runs[0].length.reset(); }, 0)
                  .find("NOT JUDGED: how high the water stands here is not known"),
              std::string::npos);
}

TEST(JudgeNode, FreeboardWhereWaterCanComeOut) {
    const double water = solve(jobs::sound()).nodes[0].water->feet();
    const auto opening = [=](const char* kinds, double over) {
        return with([=](Job& job) {
            job.nodes[0].kinds = nodeKinds(kinds);
            job.nodes[0].opening = Length::feet(water + over);
        });
    };
    for (const char* kind : {"basin", "channel"}) {
        EXPECT_FALSE(speaks(opening(kind, 0.5), 0, "freeboard.min", Severity::Check)) << kind;
        EXPECT_TRUE(speaks(opening(kind, 0.4999), 0, "freeboard.min", Severity::Check)) << kind;
        EXPECT_TRUE(speaks(opening(kind, 0.0001), 0, "freeboard.min", Severity::Check)) << kind;
        EXPECT_TRUE(speaks(opening(kind, -0.0001), 0, "freeboard.min", Severity::No)) << kind;
    }
    // The head of a line, whatever stands there, has the same water; bends and wyes are closed.
    for (const char* kind : {"downspout", "cleanout", "cap", "bend + cleanout"})
        EXPECT_TRUE(speaks(opening(kind, -0.5), 0, "freeboard.min", Severity::No)) << kind;
    for (const char* kind : {"bend", "wye", "crossing"})
        EXPECT_FALSE(speaks(opening(kind, -0.5), 0, "freeboard.min", Severity::No)) << kind;
    EXPECT_EQ(jobs::check(opening("basin", 0.36), Part::Nodes, 0),
              "CHECK: water stands only 0.36 ft under the opening, rule asks 0.5 ft");
    EXPECT_EQ(jobs::check(opening("basin", -0.25), Part::Nodes, 0),
              "NO: water comes out here: it stands 0.25 ft over the opening");
}

// A bend at B behind a first run of some length.
SolvedJob bent(
    double degrees, double feet, const Change& change = [](Job&) {}) {
    return with([&](Job& job) {
        job.nodes[1] = jobs::node("B", "bend", 98.4);
        job.nodes[1].turn = Angle::degrees(degrees);
        job.runs[0].length = Length::feet(feet);
        change(job);
    });
}

TEST(JudgeNode, ATurnFarFromTheLastCleanout) {
    // A turn above 45 degrees, more than 40 ft down.
    EXPECT_FALSE(speaks(bent(67.5, 40), 1, "cleanout.bend", Severity::Check));
    EXPECT_TRUE(speaks(bent(67.5, 40.1), 1, "cleanout.bend", Severity::Check));
    EXPECT_FALSE(speaks(bent(45, 48), 1, "cleanout.bend", Severity::Check));
    const auto cleanout = [](Job& job) { job.nodes[1].kinds = nodeKinds("bend + cleanout"); };
    EXPECT_FALSE(speaks(bent(67.5, 48, cleanout), 1, "cleanout.bend", Severity::Check));
    EXPECT_EQ(jobs::check(bent(67.5, 46), Part::Nodes, 1),
              "CHECK: turns more than 45 degrees, 46 ft from the last cleanout");
}

TEST(JudgeNode, SharpTurnsOneAfterTheOther) {
    // B, C and D turn; A is a basin.
    const auto third = [](double first, double second, double last, double most = 2) {
        Job job = jobs::sound();
        job.rules.set("bend.sharp.most", most, UnitSystem::US);
        job.nodes = {jobs::node("A", "basin", 99), jobs::node("B", "bend", 99), jobs::node("C", "bend", 99),
                     jobs::node("D", "bend", 99), jobs::node("Out", "bank", 97)};
        job.nodes[1].turn = Angle::degrees(first);
        job.nodes[2].turn = Angle::degrees(second);
        job.nodes[3].turn = Angle::degrees(last);
        job.runs.clear();
        for (const auto& [from, to] : {std::pair{"A", "B"}, {"B", "C"}, {"C", "D"}, {"D", "Out"}})
            job.runs.push_back(jobs::run(from, to, 5, "4 SDR35", Slope::percent(2)));
        job.runs[3].outletLevel = Length::feet(96);
        return solve(job);
    };
    EXPECT_TRUE(speaks(third(90, 90, 90), 3, "bend.sharp.most", Severity::Check));
    EXPECT_FALSE(speaks(third(90, 90, 67.5), 3, "bend.sharp.most", Severity::Check));
    EXPECT_FALSE(speaks(third(90, 67.5, 90), 3, "bend.sharp.most", Severity::Check));
    EXPECT_TRUE(speaks(third(90, 67.5, 90, 1), 3, "bend.sharp.most", Severity::Check));
    EXPECT_FALSE(speaks(third(90, 90, 90), 2, "bend.sharp.most", Severity::Check));
    EXPECT_NE(
        jobs::check(third(90, 90, 90), Part::Nodes, 3)
            .find(
                "turns sharply, and 2 turns since the last cleanout did: make it 45 + 45 with pipe between, "
                "or 45 + 22.5 where the line can turn 67.5"),
        std::string::npos)
        << jobs::check(third(90, 90, 90), Part::Nodes, 3);
}

TEST(JudgeNode, ATurnThatNoBendsMake) {
    // Sums of 22.5 and 45 degrees, 3 degrees off at most.
    EXPECT_FALSE(speaks(bent(25.5, 10), 1, "bend.tolerance", Severity::No));
    EXPECT_TRUE(speaks(bent(25.6, 10), 1, "bend.tolerance", Severity::No));
    EXPECT_FALSE(speaks(bent(3, 10), 1, "bend.tolerance", Severity::No)) << "as good as straight";
    EXPECT_TRUE(speaks(bent(8, 10), 1, "bend.tolerance", Severity::No));
    const auto loose = [](Job& job) { job.rules.set("bend.tolerance", 10, UnitSystem::US); };
    EXPECT_FALSE(speaks(bent(8, 10, loose), 1, "bend.tolerance", Severity::No));
    const auto box = [](Job& job) { job.nodes[1].kinds = nodeKinds("basin"); };
    EXPECT_FALSE(speaks(bent(8, 10, box), 1, "bend.tolerance", Severity::No)) << "pipes leave a box anywhere";
}

TEST(JudgeNode, CellsThatCannotBeUsed) {
    const std::string said = check(
        [](Job& job) {
            job.nodes[1].unusable = {jobs::unusable("Turn", "abc"), jobs::unusable("Rim or grate", "high")};
        },
        1);
    EXPECT_EQ(said, "NO: Turn is \"abc\"; NO: Rim or grate is \"high\"");
}

TEST(JudgeNode, BlankRowsAreNotJudged) {
    EXPECT_EQ(with([](Job& job) { job.nodes.push_back({}); }).of(Part::Nodes, 3).size(), 0u);
}

// Ground 99 at basin A.
TEST(JudgeNode, WaterGoesRoundAGrateThatStandsOut) {
    const auto grate = [](double level) {
        return with([=](Job& job) { job.nodes[0].opening = Length::feet(level); });
    };
    EXPECT_FALSE(speaks(grate(98.9), 0, "grate.over.max", Severity::Check));
    EXPECT_FALSE(speaks(grate(99.1), 0, "grate.over.max", Severity::Check));
    EXPECT_TRUE(speaks(grate(99.101), 0, "grate.over.max", Severity::Check));
    EXPECT_EQ(check([](Job& job) { job.nodes[0].opening = Length::feet(99.5); }, 0),
              "CHECK: the grate stands 0.5 ft over the ground: water goes round it");
    // A cleanout's cap may.
    EXPECT_FALSE(speaks(with([](Job& job) { job.nodes[1].opening = Length::feet(99); }), 1, "grate.over.max",
                        Severity::Check));
}

}  // namespace
}  // namespace trenchbook
