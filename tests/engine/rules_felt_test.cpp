// No rule is read by nothing. Each is moved up and down on jobs in which everything is wrong that can be, and a finding,
// a number or an amount to buy must move with it. Rules that only formulas of the sheets read are listed with their
// sheet, and the sources of the sheets must name them.
#include <gtest/gtest.h>

#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "trenchbook/job/draw_lot.h"
#include "trenchbook/job/solve.h"
#include "trenchbook/takeoff/takeoff.h"

namespace trenchbook {
namespace {

// A rule and the sheet that reads it.
const std::map<std::string, std::string>& ofSheets() {
    static const std::map<std::string, std::string> keys = {
        {"levels.close", "Levels"},      {"levels.close.max", "Levels"}, {"soil.safety", "Pit"},
        {"soil.presoak.min", "Pit"},     {"soil.agree.share", "Pit"},    {"soil.agree.drop", "Pit"},
        {"waste.pipe", "Takeoff"},       {"waste.rock", "Takeoff"},      {"waste.sand", "Takeoff"},
        {"waste.fabric", "Takeoff"},     {"waste.concrete", "Takeoff"},  {"waste.sod", "Takeoff"},
        {"waste.soil", "Takeoff"},       {"waste.glue", "Takeoff"},      {"spare.fittings", "Takeoff"},
        {"price.age.max", "Prices"},     {"labor.burden", "Labor"},      {"labor.day", "Labor"},
        {"labor.soil.clay", "Labor"},    {"labor.soil.roots", "Labor"},  {"labor.soil.wet", "Labor"},
        {"contingency", "Quote"},        {"overhead", "Quote"},          {"profit", "Quote"},
        {"tax.material", "Quote"},       {"tax.contract", "Quote"},      {"deposit.max.share", "Quote"},
        {"deposit.max.amount", "Quote"}, {"quote.days", "Quote"},        {"cancel.days", "Proposal"},
        {"retain.callback", "Proposal"}, {"bill.price.share", "Bills"},  {"bill.price.amount", "Bills"},
        {"bill.quantity.bulk", "Bills"}, {"bill.tax.amount", "Bills"},
    };
    return keys;
}

// Builds a job of many short lines, each with one fault.
class Wrong {
  public:
    Wrong() {
        job.facts.outlet = "own swale";
        job.facts.today = Date::of(2026, 11, 25);
        job.facts.rain = RainRate::inchesPerHour(6);
        job.facts.duration = Duration::minutes(90);  // longer than any way here
        // Called a working day before it begins, written for eight weeks, out in two days.
        job.facts.ticket = {.number = "0001",
                            .called = Date::of(2026, 9, 30),
                            .from = Date::of(2026, 10, 1),
                            .until = Date::of(2026, 11, 27)};
    }

    std::string node(const std::string& kinds, double ground, double turn = 0) {
        Node made{.name = "N" + std::to_string(job.nodes.size()),
                  .kinds = nodeKinds(kinds),
                  .ground = Length::feet(ground),
                  .kindGiven = true,
                  .blank = false};
        if (turn > 0) made.turn = Angle::degrees(turn);
        job.nodes.push_back(made);
        return made.name;
    }
    Run& run(const std::string& from, const std::string& to, const char* pipe, double feet, double percent,
             CoverSurface surface = CoverSurface::Lawn) {
        Run made{.line = "line", .from = from, .to = to, .length = Length::feet(feet)};
        made.pipe = stockPipe(pipe);
        made.slope = Slope::percent(percent);
        made.surfaceUp = made.surfaceDown = surface;
        made.blank = false;
        job.runs.push_back(made);
        return job.runs.back();
    }
    // One run of its own, its outlet at level 100 and the ground so far over its inverts.
    std::string line(const char* pipe, double feet, double percent, double over,
                     CoverSurface surface = CoverSurface::Lawn, double roof = 0) {
        const std::string up = node("basin", 100 + feet * percent / 100 + over),
                          down = node("bank", 100 + over);
        run(up, down, pipe, feet, percent, surface).outletLevel = Length::feet(100);
        if (roof > 0)
            job.inlets.push_back({.name = "I" + up,
                                  .node = up,
                                  .roof = {Area::squareFeet(roof), 1},
                                  .entersBy = EntersBy::Grate,
                                  .size = "12x12",
                                  .openShare = 0.4,
                                  .ponding = Length::inches(1),
                                  .blank = false});
        return down;
    }

    Job job;
};

Job lines() {
    Wrong wrong;
    // Too flat, and too slow to keep clean.
    for (const char* pipe : {"2 SCH40", "3 SCH40", "4 SDR35", "6 SDR35", "8 SDR35"})
        wrong.line(pipe, 30, 0.1, 2);
    wrong.line("4 SDR35", 30, 1.03, 2);                          // within a tolerance, if there were one
    wrong.line("4 SDR35", 20, 1.05, 2);                          // hardly any fall in hand
    wrong.line("4 SDR35", 30, 40, 2, CoverSurface::Lawn, 1500);  // too fast
    wrong.line("4 SDR35", 400, 2, 2);                            // too long
    wrong.line("4 SDR35", 30, 2, 2);                             // its grate stands out of the ground
    wrong.job.inlets.push_back(
        {.name = "I", .node = "none", .roof = {Area::squareFeet(10), 0.7}, .blank = false});
    Node& basin = wrong.job.nodes[wrong.job.nodes.size() - 2];
    basin.opening = *basin.ground + Length::feet(0.15);
    // Too full, not overloaded: 4 SDR35 at 2 % carries some 147 gpm at n = 0.011.
    wrong.line("4 SDR35", 30, 2, 2, CoverSurface::Lawn, 0.9 * 147 / 6 * 96.25);
    // Too shallow everywhere, the last one on pipe that takes no wheels.
    for (const CoverSurface surface : {CoverSurface::Lawn, CoverSurface::LawnEnd, CoverSurface::Bed,
                                       CoverSurface::Walk, CoverSurface::Drive, CoverSurface::Street})
        wrong.line("4 SDR35", 30, 2, 0.5, surface);
    wrong.line("4 SCH40", 30, 2, 0.5, CoverSurface::Drive);
    wrong.line("4 CORRUGATED", 30, 2, 0.5, CoverSurface::Drive);
    wrong.line("4 D2729", 30, 2, 0.5, CoverSurface::Drive);
    // Cuts of 4, 5 and 20 ft.
    for (const double over : {4.2, 5.5, 25.0}) wrong.line("4 SDR35", 30, 2, over);
    wrong.line("6 SDR35", 150, 2, 2);  // too long without a cleanout
    for (const char* pipe : {"3 SCH40", "6 SCH40", "8 SCH40"}) wrong.line(pipe, 30, 2, 2);
    return wrong.job;
}

// Sharp turns between cleanouts, one that no fittings make, one that eats its fall.
Job turns() {
    Wrong wrong;
    const std::string names[] = {wrong.node("cleanout", 104), wrong.node("bend", 104, 90),
                                 wrong.node("bend", 104, 90), wrong.node("bend", 104, 90),
                                 wrong.node("bend", 104, 50), wrong.node("bank", 104)};
    for (std::size_t i = 0; i + 1 < std::size(names); ++i)
        wrong.run(names[i], names[i + 1], "4 SDR35", 30, 1.05);
    wrong.job.runs.back().outletLevel = Length::feet(100);
    return wrong.job;
}

// Crossings that are too near, an outlet where it must not be, ground that does not fall away.
Job places() {
    Wrong wrong;
    const std::string end = wrong.line("4 SDR35", 40, 2, 3, CoverSurface::Lawn, 600);
    Job& job = wrong.job;
    for (const char* what : {"water", "irrigation"})
        job.crossings.push_back({.what = what,
                                 .from = job.runs[0].from,
                                 .to = job.runs[0].to,
                                 .at = Length::feet(20),
                                 .depth = Length::inches(28),
                                 .diameter = Length::inches(2),
                                 .passesAbove = true,
                                 .marked = Marked::Yes,
                                 .ticket = "0001",
                                 .blank = false});
    job.nodes[0].fromHouse = Length::feet(8);
    job.nodes[1].fromHouse = Length::feet(80);
    wrong.line("4 SDR35", 40, 2, 3);  // a little farther from the house than the rule looks
    job.nodes[2].fromHouse = Length::feet(12);
    job.nodes[3].fromHouse = Length::feet(90);
    job.outlets.push_back({.node = end,
                           .bottom = Length::feet(0.5),
                           .deep = Length::feet(0.5),
                           .sideSlope = 1,
                           .slope = Slope::percent(1.5),
                           .roughness = 0.02,
                           .flowLine = Length::feet(99.95),
                           .lotLine = Length::feet(4),
                           .walk = Length::feet(4),
                           .foundation = Length::feet(4),
                           .blank = false});
    job.nodes[1].kinds = nodeKinds("ditch");
    // A second one, steep: too fast for grass.
    job.outlets.push_back(job.outlets[0]);
    job.outlets[1].slope = Slope::percent(20);
    job.outlets[1].roughness = 0.012;
    job.outlets[1].otherFlow = Flow::gpm(200);
    // A grate that the water in the line reaches.
    job.nodes[0].opening = Length::feet(101);
    return job;
}

// Ends that stand too low, too high, under water, hang in the air, and do not empty.
Job ends() {
    Wrong wrong;
    for (const double rim : {-0.05, 0.15, 0.3}) {
        const std::string end = wrong.line("4 SDR35", 40, 2, 3, CoverSurface::Lawn, 600);
        wrong.job.nodes.back().kinds = nodeKinds(rim > 0.2 ? "pop-up" : "riser");
        wrong.job.nodes.back().opening = Length::feet(103 + rim);
        wrong.job.outlets.push_back({.node = end,
                                     .openShare = 0.5,
                                     .weepHole = Length::inches(0.02),
                                     .groundFalls = Slope::percent(1),
                                     .blank = false});
    }
    const std::string under = wrong.line("4 SDR35", 40, 2, 3, CoverSurface::Lawn, 600);
    wrong.job.nodes.back().kinds = nodeKinds("existing pipe");
    wrong.job.runs.back().outletWater = Length::feet(100.4);
    wrong.job.outlets.push_back({.node = under, .flowLine = Length::feet(99), .blank = false});
    const std::string hanging = wrong.line("4 SDR35", 40, 2, 3, CoverSurface::Lawn, 600);
    wrong.job.outlets.push_back({.node = hanging, .flowLine = Length::feet(98), .blank = false});
    return wrong.job;
}

// A pump that hardly keeps up, stops near its floor and starts over the line's end, in wet ground; a strong one that runs
// all too short; one that hardly moves the water.
Job pumps() {
    Wrong wrong;
    const auto pump = [&](double inside, const char* pipe, double head) -> Pump& {
        const std::string end = wrong.line("4 SDR35", 40, 2, 3, CoverSurface::Lawn, 600);
        wrong.job.nodes.back().kinds = nodeKinds("pump basin");
        return wrong.job.pumps.emplace_back(
            Pump{.node = end,
                 .inside = Length::inches(inside),
                 .outside = Length::inches(inside + 2),
                 .floor = Length::feet(96),
                 .on = Length::feet(99),
                 .off = Length::feet(97),
                 .curve = {{Flow{}, Length::feet(head)}, {Flow::gpm(90), Length{}}},
                 .pipe = stockPipe(pipe),
                 .length = Length::feet(60),
                 .elbows = 2,
                 .end = Length::feet(104),
                 .checkValve = false,
                 .powerOut = PowerOut::Nothing,
                 .groundwater = Length::feet(99),
                 .weight = Weight::pounds(1500),
                 .blank = false});
    };
    Pump& weak = pump(36, "2 SCH40", 24);
    weak.floor = Length::feet(96.9);
    weak.on = Length::feet(100.2);
    pump(18, "1-1/2 SCH40", 90);
    pump(60, "4 SCH40", 11);
    return wrong.job;
}

Job pit(const char* soil, double rate, double length, double rock) {
    Wrong wrong;
    const std::string end = wrong.line("4 SDR35", 40, 2, 3, CoverSurface::Lawn, 600);
    Job& job = wrong.job;
    job.facts.soil = soil;
    job.nodes.back().kinds = nodeKinds("tee");
    job.outlets.push_back({.node = end, .openShare = 0.5, .groundFalls = Slope::percent(1), .blank = false});
    job.pit = {.node = end,
               .length = Length::feet(length),
               .width = Length::feet(3),
               .rockDepth = Length::feet(rock),
               .soilOver = Length::feet(1),
               .rate = SoilRate::inchesPerHour(rate)};
    const std::pair<const char*, double> facts[] = {
        {"high water", 5}, {"foundation", 4},     {"lot line", 4}, {"well", 40},       {"septic", 10},
        {"pool", 4},       {"ground slope", 0.5}, {"perc", 120},   {"roof area", 3000}};
    for (const auto& [key, value] : facts) job.pit.facts.set(key, value, UnitSystem::US);
    job.pit.facts.set("soil group", "D", UnitSystem::US);
    return job;
}

// Daylight under too little soil, perforated pipe, a footing, a tree, septic and well; pipe that is larger than it need
// be; a deep trench by a sewer.
Job ground() {
    Wrong wrong;
    Job& job = wrong.job;
    wrong.line("4 SDR35", 30, 2, 0.5);
    job.runs.back().surfaceDown = CoverSurface::Daylight;
    wrong.line("4 D2729 PERF", 30, 0.1, 2, CoverSurface::Lawn, 100);
    job.nodes.back().fromHouse = Length::feet(9);
    wrong.line("4 CORRUGATED PERF", 30, 1, 2, CoverSurface::Drive, 100);
    job.nodes.back().fromHouse = Length::feet(30);
    wrong.line("6 SDR35", 30, 2, 2, CoverSurface::Lawn, 100);
    wrong.line("4 SCH40", 30, 2, 2, CoverSurface::Lawn, 100);
    wrong.line("4 DUALWALL", 30, 2, 4.5);
    Node& node = job.nodes.back();
    node.toFooting = Length::feet(2);
    node.footingDepth = Length::feet(1);
    node.toTree = node.toSeptic = node.toWell = Length::feet(9);
    wrong.line("4 DUALWALL", 30, 2, 2);
    Node& farther = job.nodes.back();
    farther.toTree = farther.toSeptic = farther.toWell = Length::feet(12);
    wrong.line("4 SDR35", 30, 2, 2);  // a channel drain at its head
    Node& drain = job.nodes[job.nodes.size() - 2];
    drain.kinds = nodeKinds("channel");
    job.inlets.push_back({.name = "drain",
                          .node = drain.name,
                          .entersBy = EntersBy::TrenchDrain,
                          .length = Length::feet(10),
                          .blank = false});
    job.facts.septic = Answer::Yes;
    return job;
}

// A deep trench two and a half feet from a drawn wall, and four tapes: one off by feet, one by inches.
Job drawn() {
    Wrong wrong;
    Job& job = wrong.job;
    wrong.line("4 SDR35", 30, 1, 3);
    Node& node = job.nodes.front();
    node.footingDepth = Length::feet(0.5);
    const auto corner = [&](const char* name, double x, double y) {
        job.lotPoints.push_back({.name = name,
                                 .what = LotThing::Building,
                                 .east = Length::feet(x),
                                 .north = Length::feet(y),
                                 .blank = false});
    };
    corner("SW", 0, 0), corner("SE", 40, 0), corner("NE", 40, 30), corner("NW", 0, 30);
    node.tie1 = "SW 20.2", node.tie2 = "SE 20.2";
    job.lotTapes.push_back({.from = "NE", .to = node.name, .length = Length::feet(41), .blank = false});
    job.lotTapes.push_back({.from = "NW", .to = node.name, .length = Length::feet(38.6), .blank = false});
    return job;
}

std::vector<Job> jobs() {
    return {lines(),
            drawn(),
            ground(),
            turns(),
            places(),
            ends(),
            pumps(),
            pit("clay", 0.05, 3.5, 8),
            pit("sand", 20, 30, 1),
            pit("loam", 0.05, 3.5, 8)};
}

// Everything that is told, worked out and bought, as one text.
class Answers {
  public:
    explicit Answers(Job job) {
        drawLot(job);
        const SolvedJob solved = solve(job);
        TakeoffTerms terms;
        for (const StockPipe& row : stock()) terms.sticks[pipeCode(row.pipe)] = Length::feet(10);
        const Takeoff takeoff = takeOff(job, solved, terms);
        tell(solved.findings);
        tell(takeoff.findings);
        for (const SolvedInlet& inlet : solved.inlets) add(inlet.inletTakes);
        for (const SolvedCrossing& crossing : solved.crossings) {
            add(crossing.handDig);
            add(crossing.keptLevel);
        }
        for (const auto& asked : takeoff.asked) all += asked.where.en + std::to_string(asked.count);
        add(solved.pit.storage);
        add(solved.pit.drains);
        add(solved.pit.bubbleLevel);
        for (const TakeoffLine& line : takeoff.lines)
            all += line.code + number(line.net ? line.net->in(UnitSystem::US) : -1);
        const Bulk& bulk = takeoff.bulk;
        add(bulk.bank);
        add(bulk.pitEarth);
        add(bulk.cementPints);
        add(bulk.primerPints);
        add(bulk.beddingWeight);
        add(bulk.rockWeight);
        add(bulk.fabric);
        add(bulk.haulLoose);
        add(bulk.haulLoads);
        for (const RunTakeoff& run : takeoff.runs) {
            add(run.bank);
            add(run.cementPints);
        }
    }

    std::string all;

  private:
    static std::string number(double value) {
        char written[40];
        std::snprintf(written, sizeof written, " %.12g\n", value);
        return written;
    }
    void add(std::optional<double> value) { all += value ? number(*value) : "-\n"; }
    template <class Kind>
    void add(const std::optional<Kind>& value) {
        all += value ? number(value->si()) : "-\n";
    }
    void tell(const std::vector<Finding>& findings) {
        for (const Finding& finding : findings) {
            all += finding.rule + ": " + finding.says.en + "\n";
            add(finding.allowed ? std::optional(finding.allowed->si) : std::nullopt);
        }
    }
};

std::string answers(const std::vector<Job>& jobs) {
    std::string all;
    for (const Job& job : jobs) all += Answers(job).all;
    return all;
}

TEST(RulesFelt, EachRuleMovesSomething) {
    std::vector<Job> wrong = jobs();
    const std::string before = answers(wrong);
    const auto moves = [&](const char* key, double value) {
        for (Job& job : wrong) job.rules.set(key, value, UnitSystem::US);
        return answers(wrong) != before;
    };
    for (const Rule& rule : rules()) {
        if (ofSheets().contains(rule.key)) continue;
        // A little and all the way: a limit that nothing comes near is felt only when it is moved far.
        const double step = rule.unit == Unit::YesNo ? 1 : 0.1;
        if (rule.value < rule.greatest) {
            EXPECT_TRUE(moves(rule.key, rule.value + step * (rule.greatest - rule.value)) ||
                        moves(rule.key, rule.greatest))
                << rule.key << " can be raised and nothing changes";
        }
        if (rule.value > rule.least) {
            EXPECT_TRUE(moves(rule.key, rule.value - step * (rule.value - rule.least)) ||
                        moves(rule.key, rule.least))
                << rule.key << " can be lowered and nothing changes";
        }
        for (Job& job : wrong) job.rules.set(rule.key, rule.value, UnitSystem::US);
    }
    EXPECT_EQ(answers(wrong), before);
}

TEST(RulesFelt, FormulasOfTheSheetsNameTheOthers) {
    const std::filesystem::path sheets = std::filesystem::path(TRENCHBOOK_REFERENCE_DIR) / "../../sheets";
    std::string sources;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(sheets)) {
        if (entry.path().extension() != ".cpp" && entry.path().extension() != ".h") continue;
        std::ifstream file(entry.path());
        sources.append(std::istreambuf_iterator<char>(file), {});
    }
    ASSERT_FALSE(sources.empty());
    for (const auto& [key, sheet] : ofSheets()) {
        EXPECT_NE(findRule(key), nullptr) << key;
        // In a formula; or handed to what makes one; waste is looked up by the group of the goods: "waste." & group.
        const auto named = [&](const std::string& words) { return sources.find(words) != std::string::npos; };
        EXPECT_TRUE(named("{" + key + "}") || named('"' + key + '"') ||
                    (key.starts_with("waste.") && named("waste.\\\"&")))
            << key << " is named by no formula; it should be on " << sheet;
    }
}

}  // namespace
}  // namespace trenchbook
