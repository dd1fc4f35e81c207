// Every finding has a rule, and every rule a source: the table of the rules without a number, and the keys of all that
// is told of the lots, as measured and with cells taken away or spoiled.
#include "trenchbook/rules/standing.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <regex>
#include <set>
#include <string>

#include "judged.h"
#include "lots.h"
#include "trenchbook/takeoff/takeoff.h"

namespace trenchbook {
namespace {

TEST(StandingRules, AreSaidInBothLanguagesWithASource) {
    const std::regex key("[a-z]+(\\.[a-z]+)*");
    for (const StandingRule& rule : standingRules()) {
        EXPECT_TRUE(std::regex_match(rule.key, key)) << rule.key;
        EXPECT_FALSE(rule.says.en.empty()) << rule.key;
        EXPECT_FALSE(rule.says.es.empty()) << rule.key;
        EXPECT_NE(rule.says.en, rule.says.es) << rule.key;
        EXPECT_FALSE(std::string(rule.source).empty()) << rule.key;
    }
}

TEST(StandingRules, StandInTheOrderOfTheirNames) {
    ASSERT_EQ(standingRules().size(), static_cast<std::size_t>(Standing::TakeoffLeavesOut) + 1);
    for (std::size_t row = 0; row < standingRules().size(); ++row) {
        EXPECT_EQ(static_cast<std::size_t>(standingRules()[row].rule), row) << standingRules()[row].key;
        EXPECT_EQ(&standingRule(static_cast<Standing>(row)), &standingRules()[row]);
    }
}

TEST(StandingRules, AreFoundByTheirKeys) {
    for (const StandingRule& rule : standingRules()) EXPECT_EQ(findStandingRule(rule.key), &rule);
    EXPECT_EQ(findStandingRule(" Run.Bore.Shrinks "), &standingRule(Standing::RunBoreShrinks));
    EXPECT_EQ(findStandingRule("run.bore"), nullptr);
    EXPECT_EQ(findStandingRule(""), nullptr);
}

TEST(StandingRules, ShareNoKeyWithTheRulesThatHaveANumber) {
    for (const StandingRule& rule : standingRules()) EXPECT_EQ(findRule(rule.key), nullptr) << rule.key;
    for (const Rule& rule : rules()) EXPECT_EQ(findStandingRule(rule.key), nullptr) << rule.key;
}

std::string textOf(const std::filesystem::path& path) {
    std::ifstream file(path);
    return {std::istreambuf_iterator<char>(file), {}};
}

// No rule stands in the table that nothing tells.
TEST(StandingRules, AreEachToldSomewhere) {
    const std::filesystem::path engine = TRENCHBOOK_REFERENCE_DIR "/../../engine";
    std::set<std::string> told;
    const std::regex named("Standing::([A-Za-z]+)");
    for (const char* folder : {"src/job", "src/takeoff"})
        for (const auto& entry : std::filesystem::directory_iterator(engine / folder)) {
            const std::string text = textOf(entry.path());
            for (std::sregex_iterator match(text.begin(), text.end(), named), end; match != end; ++match)
                told.insert((*match)[1]);
        }
    const std::string header = textOf(engine / "include/trenchbook/rules/standing.h");
    const std::size_t begin = header.find("enum class Standing {");
    const std::string names = header.substr(begin, header.find("};", begin) - begin);
    const std::regex name("\n    ([A-Za-z]+),");
    std::set<std::string> known;
    for (std::sregex_iterator match(names.begin(), names.end(), name), end; match != end; ++match)
        known.insert((*match)[1]);
    EXPECT_EQ(known.size(), standingRules().size());
    EXPECT_EQ(told, known);
}

// Takes cells away and spoils others, here and there.
class Spoiler {
  public:
    explicit Spoiler(unsigned seed) : random_(seed) {}

    void spoil(Job& job) {
        static const char* kinds[] = {"bend", "basin", "bank", "riser", "tee", "pump basin", "curb", "ditch"};
        for (Node& node : job.nodes) {
            if (rarely()) node.ground.reset();
            if (rarely()) node.kinds = nodeKinds(kinds[random_() % std::size(kinds)]);
            if (rarely()) node.kinds = {};
            if (rarely()) node.turn = Angle::degrees(static_cast<double>(random_() % 120));
            if (rarely()) node.name = job.nodes[random_() % job.nodes.size()].name;
        }
        for (Run& run : job.runs) {
            lose(run.length, run.slope, run.pipe, run.surfaceUp, run.surfaceDown, run.outletLevel,
                 run.outletWater);
            if (rarely()) run.pipe = stockPipe("6 SDR35");
            if (rarely()) run.pipe = stockPipe("4 CORRUGATED");
            if (rarely()) run.pipe = Pipe{.bore = Length::inches(4), .roughness = 0.012};
            if (rarely()) run.to = job.runs[random_() % job.runs.size()].from;
            if (rarely()) run.to = "nowhere";
            if (rarely()) run.existing = true;
            if (rarely()) run.approval = "fine";
        }
        for (JobInlet& inlet : job.inlets) {
            lose(inlet.roof.area, inlet.roof.coefficient, inlet.paved.area, inlet.yard.area);
            if (rarely()) inlet.node = job.nodes[random_() % job.nodes.size()].name;
            if (rarely()) inlet.name = job.inlets[random_() % job.inlets.size()].name;
            if (rarely()) inlet.size = "wide";
        }
        for (Crossing& crossing : job.crossings) {
            lose(crossing.at, crossing.depth, crossing.diameter, crossing.passesAbove);
            if (rarely()) crossing.at = Length::feet(-1);
            if (rarely()) crossing.marked = Marked::Private;
        }
        for (Outlet& outlet : job.outlets) {
            lose(outlet.flowLine, outlet.lotLine, outlet.walk, outlet.foundation, outlet.weepHole,
                 outlet.openShare, outlet.deep);
            if (rarely()) outlet.node = job.nodes[random_() % job.nodes.size()].name;
        }
        for (Pump& pump : job.pumps) {
            lose(pump.inside, pump.floor, pump.on, pump.off, pump.pipe, pump.length, pump.end, pump.elbows,
                 pump.checkValve, pump.groundwater);
            if (rarely()) pump.on = pump.off;
        }
        lose(job.pit.length, job.pit.width, job.pit.rate, job.pit.soilOver, job.facts.rain, job.facts.today,
             job.facts.duration);
        if (rarely()) job.facts.septic = Answer::NotSaid;
        if (rarely()) job.facts.irrigation = Answer::Yes;
    }

  private:
    bool rarely() { return random_() % 8 == 0; }
    template <class... Value>
    void lose(std::optional<Value>&... values) {
        ((rarely() ? values.reset() : void()), ...);
    }

    std::mt19937 random_;
};

// Every finding of the job and of its takeoff has a rule of one table; keys of the rules without a number are kept.
void look(const Job& job, std::set<std::string>& keys) {
    const SolvedJob solved = solve(job);
    const Takeoff takeoff = takeOff(job, solved, {});
    for (const std::vector<Finding>* findings : {&solved.findings, &takeoff.findings})
        for (const Finding& finding : *findings) {
            const bool limit = findRule(finding.rule) != nullptr;
            EXPECT_NE(limit, findStandingRule(finding.rule) != nullptr)
                << "[" << finding.rule << "] " << finding.says.en;
            EXPECT_TRUE(limit || (!finding.measured && !finding.allowed)) << finding.says.en;
            if (!limit) keys.insert(finding.rule);
        }
}

TEST(StandingRules, EveryFindingHasARule) {
    std::set<std::string> keys;
    std::vector<Job> jobs{Job{}, smallJob()};
    for (const lots::Case& lot : lots::allCases()) jobs.push_back(lots::jobOf(lot));
    for (const Job& job : jobs) {
        look(job, keys);
        for (unsigned seed = 0; seed < 40; ++seed) {
            Job spoiled = job;
            Spoiler(seed).spoil(spoiled);
            look(spoiled, keys);
        }
    }
    // These jobs are varied enough to hear most of the table from.
    EXPECT_GE(keys.size(), standingRules().size() * 3 / 4);
}

}  // namespace
}  // namespace trenchbook
