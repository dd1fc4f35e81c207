// Nothing that costs money is silent: on random jobs each thing is taken away, and its own quantity and the direct cost
// must go down, or a finding says why not. Layout, outlets and levels are held; costs are those of net quantities,
// before packs, price breaks, minimums and shared loads. Prices here are invented, in proportion to each other as goods
// are: a box costs more than a wye, a wye more than a bend.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <functional>

#include "takeoff_lots.h"
#include "trenchbook/takeoff/production.h"

namespace trenchbook {
namespace {

// A lot whose solved job has the aprons of its outlets too.
struct Built {
    lots::Lot lot;

    Takeoff takeoff() const {
        SolvedJob solved = lot.solved();
        for (std::size_t row = 0; row < lot.job.crossings.size(); ++row) {
            const Crossing& crossing = lot.job.crossings[row];
            solved.crossings[row].handDig = Length::feet(4);
            for (std::size_t run = 0; run < lot.job.runs.size(); ++run)
                if (lot.job.runs[run].from == crossing.from && lot.job.runs[run].to == crossing.to)
                    solved.crossings[row].run = run;
        }
        solved.outlets.resize(lot.job.outlets.size());
        for (std::size_t row = 0; row < lot.job.outlets.size(); ++row)
            if (lot.job.outlets[row].apronStone)
                solved.outlets[row].apron = stoneApron(Length::inches(6), Flow::gpm(150));
        return takeOff(lot.job, solved, lot.terms);
    }
};

double priceOf(const std::string& code) {
    const std::pair<const char*, double> prices[] = {
        {"PIPE-", 3},      {"WYE-", 12},     {"BEND", 6},          {"REDUCER-", 8},      {"COUPLING-", 4},
        {"ADAPTER-", 9},   {"HUB-", 8},      {"TEE-", 11},         {"CLEANOUT-", 15},    {"BASIN-", 40},
        {"CHANNEL", 20},   {"PUMP", 300},    {"CHECK-VALVE-", 30}, {"CEMENT", 12},       {"PRIMER", 12},
        {"BEDDING", 30},   {"ROCK", 43},     {"FABRIC", 0.3},      {"SOD", 0.8},         {"HAUL", 265},
        {"APRON", 57},     {"CONCRETE", 7},  {"TAPE-WARN", 0.05},  {"RESTORE-", 2},      {"SHORING", 2},
        {"DOWNSPOUT-", 8}, {"TEEGRATE-", 9}, {"POPUP-", 15},       {"WIRE-LOCATE", 0.2}, {"SOCK-", 1}};
    for (const auto& [start, price] : prices)
        if (code.starts_with(start)) return price;
    return 10;
}

double hoursOf(const Takeoff& takeoff, Work work) {
    for (const WorkAmount& one : takeoff.works)
        if (one.work == work) return one.amount.value().in(UnitSystem::US)*workRate(work).manHours;
    return 0;
}

double directCost(const Takeoff& takeoff) {
    double cost = 0;
    for (const auto& [code, amount] : lots::amounts(takeoff)) cost += amount * priceOf(code);
    for (const WorkAmount& one : takeoff.works)
        if (one.work != Work::HandDigLength) cost += 35 * hoursOf(takeoff, one.work);
    return cost;
}

// All codes that start so.
double amountOf(const Takeoff& takeoff, const std::string& start) {
    double sum = 0;
    for (const auto& [code, amount] : lots::amounts(takeoff)) sum += code.starts_with(start) ? amount : 0;
    return sum;
}

// Something that is there, how it is taken away, and what it is bought or worked by.
struct Thing {
    std::string what;
    std::function<void(Built&)> without;
    std::vector<std::string> bought;  // codes by their start
    std::vector<Work> worked;
    std::string word = {};  // of the finding that says why nothing is counted
};

template <class Choice>
Choice oneOf(const std::vector<Choice>& choices) {
    return choices[*rc::gen::inRange<std::size_t>(0, choices.size())];
}
bool maybe(int percent = 50) { return *rc::gen::inRange(0, 100) < percent; }

Pump pumpAt(const std::string& node) {
    Pump pump{
        .node = node,
        .inside = Length::inches(24),
        .floor = Length::feet(94),
        .pipe = stockPipe("2 SCH40"),
        .length = Length::feet(*rc::gen::inRange(10, 80)),
        .elbows = *rc::gen::inRange(0, 4),
        .checkValve = maybe(),
        .powerOut = oneOf<PowerOut>({PowerOut::Nothing, PowerOut::Alarm, PowerOut::SecondPump,
                                     PowerOut::Battery, PowerOut::Generator}),
        .concrete = maybe() ? std::optional(Volume::cubicFeet(*rc::gen::inRange(1, 20))) : std::nullopt};
    pump.blank = false;
    return pump;
}

JobInlet entering(const std::string& name, const std::string& node, EntersBy by, const std::string& size) {
    JobInlet inlet{.name = name, .node = node, .entersBy = by, .size = size};
    if (by == EntersBy::TrenchDrain) inlet.length = Length::feet(*rc::gen::inRange(4, 40));
    inlet.blank = false;
    return inlet;
}

// A line of three to seven nodes, a branch into it, whatever may stand there, and an end of any kind.
struct Made {
    Built job;
    std::vector<Thing> things;
};
class Maker {
  public:
    Made made() {
        lot().job.rules.set("wire.locate", 1, UnitSystem::US);
        const int nodes = *rc::gen::inRange(3, 8);
        for (int i = 0; i + 1 < nodes; ++i) run("N" + std::to_string(i), "N" + std::to_string(i + 1));
        if (maybe()) run("B0", "N" + std::to_string(*rc::gen::inRange(1, nodes - 1)));
        for (int i = 0; i + 1 < nodes; ++i) node("N" + std::to_string(i), i > 0);
        if (lot().job.runs.back().from == "B0") node("B0", false);
        end("N" + std::to_string(nodes - 1));
        return std::move(made_);
    }

  private:
    lots::Lot& lot() { return made_.job.lot; }
    template <class Row>
    static void drop(std::vector<Row>& rows, std::size_t row) {
        rows[row] = Row();  // a blank row: the others keep their places
    }

    void run(const std::string& from, const std::string& to) {
        const std::size_t row = lot().job.runs.size();
        const auto surface = oneOf<CoverSurface>({CoverSurface::Lawn, CoverSurface::Bed, CoverSurface::Walk,
                                                  CoverSurface::Drive, CoverSurface::Street});
        lot().run(from, to, *rc::gen::inRange(8, 60), line_, surface);
        if (surface == CoverSurface::Lawn)
            thing(from + " to " + to + ": lawn",
                  [row](Built& job) {
                      Run& at = job.lot.job.runs[row];
                      at.surfaceUp = at.surfaceDown = CoverSurface::Bed;
                  },
                  {"SOD"}, {Work::CutSod, Work::LaySod});
        else if (surface != CoverSurface::Bed)
            thing(from + " to " + to + ": paving",
                  [row](Built& job) {
                      Run& at = job.lot.job.runs[row];
                      at.surfaceUp = at.surfaceDown = CoverSurface::Bed;
                  },
                  {"RESTORE-"}, {Work::RestorePaving});
        // Perforated pipe lies in rock and a sock, other pipe in bedding.
        const bool perforated = maybe(15);
        lot().job.runs[row].pipe->perforated = perforated;
        const std::vector<std::string> around =
            perforated ? std::vector<std::string>{"SOCK-", "ROCK"} : std::vector<std::string>{"BEDDING"};
        std::vector<std::string> bought = {"PIPE-", "TAPE-WARN", "WIRE-LOCATE", "HAUL"};
        bought.insert(bought.end(), around.begin(), around.end());
        thing(from + " to " + to + ": half its length",
              [row](Built& job) {
                  Run& at = job.lot.job.runs[row];
                  *at.length = *at.length * 0.5;
              },
              std::move(bought), {Work::Backfill});
        if (maybe(30)) {
            for (int i = 0, count = *rc::gen::inRange(1, 3); i < count; ++i) crossing(row);
        }
    }
    void crossing(std::size_t run) {
        const Run& at = lot().job.runs[run];
        Crossing crossing{.what = "gas",
                          .from = at.from,
                          .to = at.to,
                          .at = *at.length * (*rc::gen::inRange(0, 101) / 100.0)};
        crossing.blank = false;
        const std::size_t row = lot().job.crossings.size();
        lot().job.crossings.push_back(crossing);
        thing(
            "crossing of " + at.from + " to " + at.to,
            [row](Built& job) { drop(job.lot.job.crossings, row); }, {}, {Work::DigByHand}, "counted once");
    }

    void node(const std::string& name, bool turns) {
        std::vector<std::string> kinds;
        const bool box = maybe(25);
        if (box) kinds.push_back(maybe() ? "basin" : "channel");
        if (maybe(40)) kinds.push_back("downspout");
        if (!box && maybe(40)) kinds.push_back("cleanout");
        std::string all = "bend";
        for (const std::string& kind : kinds) all += " + " + kind;
        const double turn = turns && !box && maybe(30) ? oneOf<double>({22.5, 45, 67.5, 90}) : 0;
        const std::size_t row = lot().job.nodes.size();
        const bool device = maybe(15);
        lot().node(name, all, turn, device ? "BOX-6" : "");
        if (device)
            thing(name + ": its device", [row](Built& job) { job.lot.job.nodes[row].device.clear(); },
                  {"BOX-6"}, {});
        if (turn > 0)
            thing(name + ": its turn", [row](Built& job) { job.lot.job.nodes[row].turn.reset(); }, {"BEND"},
                  {});
        for (const std::string& kind : kinds) kindOf(name, row, kind);
    }
    void kindOf(const std::string& name, std::size_t row, const std::string& kind) {
        const auto without = [row, kind](Built& job) {
            Node& node = job.lot.job.nodes[row];
            NodeKinds left;
            for (const NodeKindInfo& one : nodeKindTable())
                if (node.kinds.has(one.kind) && one.name.en != kind) left.add(one.kind);
            node.kinds = left;
            // Without what it comes in by the water comes no more.
            const EntersBy by = kind == "downspout" ? EntersBy::Downspout
                                : kind == "basin"   ? EntersBy::Grate
                                : kind == "channel" ? EntersBy::TrenchDrain
                                                    : EntersBy::NotSaid;
            for (JobInlet& inlet : job.lot.job.inlets)
                if (inlet.node == node.name && inlet.entersBy == by) inlet = JobInlet();
        };
        if (kind == "downspout") {
            thing(name + ": downspout", without, {"DOWNSPOUT-"}, {Work::Downspouts});
            for (int i = 0, count = *rc::gen::inRange(0, 3); i < count; ++i)
                inlet(name, EntersBy::Downspout, oneOf<std::string>({"2x3", "3x4", ""}), i > 0,
                      {"DOWNSPOUT-"}, {Work::Downspouts});
        } else if (kind == "cleanout") {
            thing(name + ": cleanout", without, {"CLEANOUT-"}, {Work::CleanoutsAndWyes});
        } else if (kind == "basin") {
            thing(name + ": basin", without, {"BASIN-", "HUB-"}, {Work::BasinsChannelsOutlets});
            thing(name + ": rings of the basin",
                  [row](Built& job) { job.lot.job.nodes[row].opening = Length::feet(lots::invertFeet + 1); },
                  {"BASIN-"}, {Work::SetFittings});
            inlet(name, EntersBy::Grate, "9", false, {}, {});
        } else {
            thing(name + ": channel", without, {"CHANNEL", "CHANNEL-LENGTH", "CONCRETE"},
                  {Work::BasinsChannelsOutlets, Work::SetChannel});
            for (int i = 0, count = *rc::gen::inRange(1, 3); i < count; ++i)
                inlet(name, EntersBy::TrenchDrain, "4x4", i > 0, {"CHANNEL-LENGTH", "CONCRETE"},
                      {Work::SetChannel});
        }
    }
    // The first of them leaves its node with what is usual there: those on top of it are what is taken away.
    void inlet(const std::string& node, EntersBy by, const std::string& size, bool onTop,
               std::vector<std::string> bought, std::vector<Work> worked) {
        const std::size_t row = lot().job.inlets.size();
        lot().job.inlets.push_back(entering("I" + std::to_string(row), node, by, size));
        if (onTop)
            thing(
                "inlet " + std::to_string(row) + " at " + node,
                [row](Built& job) { drop(job.lot.job.inlets, row); }, std::move(bought), std::move(worked));
    }

    void end(const std::string& name) {
        const auto kind = oneOf<std::string>(
            {"bank", "ditch", "curb", "existing pipe", "riser", "pop-up", "tee", "pump basin", "cap"});
        const std::size_t row = lot().job.nodes.size();
        lot().node(name, kind);
        // Nothing but the end of a pipe is left.
        const char* code =
            info(nodeKinds(kind).has(NodeKind::PumpBasin) ? NodeKind::PumpBasin : oneKind(kind)).device;
        const std::vector<Work> worked = {kind == "cap" ? Work::SetFittings : Work::BasinsChannelsOutlets};
        thing(
            name + ": " + kind,
            [row](Built& job) {
                job.lot.job.nodes[row].kinds = nodeKinds("crossing");
                job.lot.job.pumps.clear();
                job.lot.job.outlets.clear();
                job.lot.job.pit = Pit();
            },
            {code}, worked);
        if (kind == "pump basin") return pump(name);
        if (kind == "tee") pit(name);
        if (kind != "cap") outlet(name, kind == "bank" || kind == "ditch");
    }
    static NodeKind oneKind(const std::string& word) {
        for (const NodeKindInfo& one : nodeKindTable())
            if (nodeKinds(word).has(one.kind)) return one.kind;
        throw std::logic_error(word);
    }
    void outlet(const std::string& name, bool open) {
        Outlet outlet{.node = name, .checkValve = maybe()};
        if (open && maybe()) outlet.apronStone = Length::inches(6);
        outlet.blank = false;
        lot().job.outlets = {outlet};
        if (*outlet.checkValve)
            thing(name + ": check valve", [](Built& job) { job.lot.job.outlets[0].checkValve = false; },
                  {"CHECK-VALVE-"}, {Work::SetFittings});
        if (outlet.apronStone)
            thing(name + ": apron", [](Built& job) { job.lot.job.outlets[0].apronStone.reset(); },
                  {"APRON", "FABRIC", "HAUL"}, {Work::LayApron, Work::DigPit, Work::HaulSpoil});
    }
    void pit(const std::string& name) {
        Pit pit{.node = name,
                .length = Length::feet(*rc::gen::inRange(4, 20)),
                .width = Length::feet(3),
                .rockDepth = Length::feet(3),
                .soilOver = Length::feet(1)};
        lot().job.pit = pit;
        thing("pit", [](Built& job) { job.lot.job.pit = Pit(); }, {"ROCK", "FABRIC", "HAUL", "SOD"},
              {Work::DigPit, Work::RockAndFabric, Work::Backfill, Work::LaySod});
    }
    void pump(const std::string& name) {
        lot().job.pumps = {pumpAt(name)};
        const Pump& pump = lot().job.pumps[0];
        const auto set = [](auto member, auto value) {
            return [member, value](Built& job) { job.lot.job.pumps[0].*member = value; };
        };
        thing("pump: its hole",
              [](Built& job) { job.lot.job.pumps[0].floor = Length::feet(lots::groundFeet - 0.5); }, {"HAUL"},
              {Work::DigPit, Work::Backfill});
        thing("pump: half the discharge", set(&Pump::length, std::optional(*pump.length * 0.5)),
              {"PIPE-2SCH40", "TAPE-WARN", "WIRE-LOCATE"}, {Work::LayPipe});
        if (*pump.checkValve)
            thing("pump: check valve", set(&Pump::checkValve, std::optional(false)), {"CHECK-VALVE-"},
                  {Work::SetFittings});
        if (*pump.elbows > 0)
            thing("pump: elbows", set(&Pump::elbows, std::optional(0.0)), {"BEND90-"}, {Work::SetFittings});
        if (pump.powerOut != PowerOut::Nothing)
            thing("pump: what runs without power", set(&Pump::powerOut, PowerOut::Nothing), {"PUMP"},
                  {Work::SetFittings});
        if (pump.concrete)
            thing("pump: concrete", set(&Pump::concrete, std::optional<Volume>()), {"CONCRETE"}, {});
    }

    void thing(std::string what, std::function<void(Built&)> without, std::vector<std::string> bought,
               std::vector<Work> worked, std::string word = {}) {
        made_.things.push_back(
            {std::move(what), std::move(without), std::move(bought), std::move(worked), std::move(word)});
    }

    const char* line_ = oneOf<const char*>({"4 SDR35", "6 SDR35", "4 SCH40"});
    Made made_;
};

TEST(NothingSilent, WhatIsTakenAwayCostsLess) {
    const bool held = rc::check("own quantity and direct cost go down, or a finding says why not", [] {
        const Made made = Maker().made();
        const Takeoff with = made.job.takeoff();
        const double cost = directCost(with);
        for (const Thing& thing : made.things) {
            Built less = made.job;
            thing.without(less);
            const Takeoff without = less.takeoff();
            const auto tell = [&](const std::string& measure, double before, double after) {
                // A word in place of a number: it stands where the thing does.
                if (after >= before - 1e-9 && !thing.word.empty() &&
                    lots::english(with.findings).find(thing.word) != std::string::npos)
                    return;
                RC_LOG() << thing.what << ": " << measure << " " << before << ", without it " << after
                         << "\n";
                RC_ASSERT(after < before - 1e-9);
            };
            for (const std::string& code : thing.bought)
                tell(code, amountOf(with, code), amountOf(without, code));
            for (const Work work : thing.worked)
                tell("hours of work " + std::to_string(static_cast<int>(work)), hoursOf(with, work),
                     hoursOf(without, work));
            tell("direct cost", cost, directCost(without));
        }
    });
    EXPECT_TRUE(held);
}

// Two crossings a foot apart: the trench between them is dug once, and both together never more than the run.
TEST(NothingSilent, HandDiggingIsNeverMoreThanTheTrench) {
    const bool held = rc::check("hand and machine dig the trench once", [] {
        Built built;
        built.lot.node("A", "basin").node("B", "bank").run("A", "B", *rc::gen::inRange(3, 40), "4 SDR35");
        const double length = built.lot.job.runs[0].length->feet();
        double least = 0;
        for (int i = 0, count = *rc::gen::inRange(1, 6); i < count; ++i) {
            Crossing crossing{.what = "gas", .from = "A", .to = "B"};
            crossing.at = Length::feet(length * *rc::gen::inRange(0, 101) / 100);
            crossing.blank = false;
            built.lot.job.crossings.push_back(crossing);
            least = std::min(4.0, length);
        }
        built.lot.terms.handDigMore = Length::feet(*rc::gen::inRange(0, 60));
        const Takeoff takeoff = built.takeoff();
        double hand = 0, all = 0, feet = 0;
        for (const WorkAmount& work : takeoff.works) {
            const double amount = work.amount.value().in(UnitSystem::US);
            if (work.work == Work::DigByHand || work.work == Work::DigByHandDeep) hand += amount;
            if (work.work == Work::DigByMachine || work.work == Work::DigByMachineDeep) all += amount;
            if (work.work == Work::HandDigLength) feet = amount;
        }
        const double bank = takeoff.bulk.bank.value().cubicYards();
        RC_ASSERT(std::abs(all + hand - bank) < 1e-9);
        RC_ASSERT(feet <= length + 1e-9);
        RC_ASSERT(feet >= least - 1e-9);
        RC_ASSERT(std::abs(hand - bank * feet / length) < 1e-9);
    });
    EXPECT_TRUE(held);
}

// By hand: windows of 4 ft at 10 and 12 ft of a run of 40 cover 8 to 14.
TEST(NothingSilent, AFootThatTwoCrossingsShareIsDugOnce) {
    Built built;
    built.lot.node("A", "basin").node("B", "bank").run("A", "B", 40, "4 SDR35");
    for (const double at : {10.0, 12.0}) {
        Crossing crossing{.what = "gas", .from = "A", .to = "B", .at = Length::feet(at)};
        crossing.blank = false;
        built.lot.job.crossings.push_back(crossing);
    }
    const Takeoff takeoff = built.takeoff();
    EXPECT_NEAR(takeoff.works[static_cast<std::size_t>(Work::HandDigLength)].amount->in(UnitSystem::US), 6,
                1e-9);
    EXPECT_EQ(lots::english(takeoff.of(Part::Crossings, 1)),
              "2 ft of it is dug by hand for another crossing, or lies beyond the run: counted once");
}

}  // namespace
}  // namespace trenchbook
