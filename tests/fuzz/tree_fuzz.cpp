// Whole jobs without their cells: trees of runs with any kinds, levels, pipes and water through solve() and
// takeOff(). Laws: water is conserved at every node and never quietly left out, numbers are numbers, findings
// name rows that exist and rules that are listed. Only the engine's own error may come out.
#include <fuzzer/FuzzedDataProvider.h>

#include <cmath>

#include "lawful.h"
#include "trenchbook/core/error.h"
#include "trenchbook/job/solve.h"
#include "trenchbook/takeoff/takeoff.h"

namespace {

using namespace trenchbook;
using fuzz::lawful, fuzz::require;

class Maker {
  public:
    explicit Maker(FuzzedDataProvider& bytes) : bytes_(bytes) {}

    Job job() {
        Job job;
        job.units = bytes_.ConsumeBool() ? UnitSystem::Metric : UnitSystem::US;
        if (mostly()) job.facts.rain = RainRate::inchesPerHour(number(0.1, 12));
        const std::size_t count = bytes_.ConsumeIntegralInRange<std::size_t>(1, 14);
        for (std::size_t i = 0; i < count; ++i) addNode(job, i);
        // Each node but the first goes on to one before it: a tree whose outlet comes first. Now and then a
        // row leads anywhere, round in a circle or to a node that is not listed.
        for (std::size_t i = 1; i < count; ++i)
            addRun(job, nameOf(i), nameOf(mostly() ? below(i) : below(count + 1)));
        for (std::size_t i = below(count + 2); i > 0; --i) addInlet(job, nameOf(below(count + 1)));
        if (rarely()) addOutlet(job, nameOf(below(count)));
        if (rarely()) addPump(job, nameOf(below(count)));
        for (std::size_t i = below(3); i > 0; --i) addCrossing(job, count);
        for (std::size_t i = below(3); i > 0; --i) addShot(job, count);
        return job;
    }

  private:
    bool mostly() { return bytes_.ConsumeIntegralInRange(0, 15) != 0; }
    bool rarely() { return bytes_.ConsumeIntegralInRange(0, 3) == 0; }
    std::size_t below(std::size_t end) { return bytes_.ConsumeIntegralInRange<std::size_t>(0, end - 1); }
    double number(double least, double most) {
        return bytes_.ConsumeFloatingPointInRange<double>(least, most);
    }
    std::optional<Length> feet(double least, double most) {
        if (!mostly()) return std::nullopt;
        return Length::feet(number(least, most));
    }
    static std::string nameOf(std::size_t i) { return "N" + std::to_string(i); }

    NodeKinds kinds() {
        NodeKinds made;
        for (std::size_t i = below(3); i > 0; --i) made.add(static_cast<NodeKind>(below(nodeKindCount)));
        return made;
    }

    void addNode(Job& job, std::size_t i) {
        Node& node = job.nodes.emplace_back();
        node.name = nameOf(i);
        node.blank = false;
        node.kinds = kinds();
        node.kindGiven = !node.kinds.empty();
        node.ground = feet(95, 115);
        if (rarely()) node.opening = feet(95, 116);
    }

    void addRun(Job& job, std::string from, std::string to) {
        static const char* const pipes[] = {"4 SDR35", "6 SDR35", "3 SCH40", "4 D2729", "8 SDR35"};
        Run& run = job.runs.emplace_back();
        run.blank = rarely() && rarely() && rarely();
        run.line = bytes_.PickValueInArray({"", "street", "garden"});
        run.from = std::move(from);
        run.to = std::move(to);
        run.length = feet(0.1, 200);
        if (mostly()) run.pipe = stockPipe(bytes_.PickValueInArray(pipes));
        if (mostly()) run.slope = Slope::percent(number(0, 20));
        if (rarely()) run.outletLevel = feet(90, 110);
        if (rarely()) run.outletWater = feet(90, 112);
        if (rarely()) run.fixedDown = feet(90, 110);
        if (mostly()) run.surfaceUp = run.surfaceDown = CoverSurface::Lawn;
        run.existing = rarely() && rarely();
    }

    Drained drained() {
        Drained made;
        if (mostly()) made.area = Area::squareFeet(number(0, 3000));
        if (mostly()) made.coefficient = number(0, 1);
        return made;
    }
    void addInlet(Job& job, std::string node) {
        JobInlet& inlet = job.inlets.emplace_back();
        inlet.name = "inlet";
        inlet.node = std::move(node);
        inlet.blank = false;
        inlet.roof = drained();
        if (rarely()) inlet.yard = drained();
        inlet.entersBy = static_cast<EntersBy>(below(4));
        if (rarely()) inlet.size = bytes_.PickValueInArray({"3x4", "12x12", "4x4", "9", "?"});
        if (rarely()) inlet.length = feet(1, 60);
        if (rarely()) inlet.openShare = number(0, 1);
    }
    void addOutlet(Job& job, std::string node) {
        Outlet& outlet = job.outlets.emplace_back();
        outlet.node = std::move(node);
        outlet.blank = false;
        outlet.bottom = feet(0, 6);
        outlet.deep = feet(0.1, 5);
        outlet.sideSlope = number(0, 8);
        outlet.slope = Slope::percent(number(0.01, 20));
        outlet.roughness = number(0.01, 0.4);
        if (rarely()) outlet.flowLine = feet(90, 105);
        if (rarely()) outlet.across = Length::inches(number(1, 40));
        if (rarely()) outlet.weepHole = Length::inches(number(0, 4));
        if (rarely()) outlet.apronStone = Length::inches(number(0.5, 20));
    }
    void addPump(Job& job, std::string node) {
        Pump& pump = job.pumps.emplace_back();
        pump.node = std::move(node);
        pump.blank = false;
        pump.inside = Length::inches(number(1, 100));
        pump.floor = feet(80, 100);
        pump.on = feet(80, 105);
        pump.off = feet(80, 105);
        pump.pipe = stockPipe("3 SCH40");
        pump.length = feet(1, 300);
        pump.end = feet(90, 130);
        for (std::size_t i = below(4); i > 0; --i)
            pump.curve.push_back({Flow::gpm(number(0, 200)), Length::feet(number(0, 80))});
    }
    void addCrossing(Job& job, std::size_t nodes) {
        Crossing& crossing = job.crossings.emplace_back();
        crossing.blank = false;
        crossing.what = bytes_.PickValueInArray({"gas", "water", "?"});
        crossing.from = nameOf(below(nodes + 1));
        crossing.to = nameOf(below(nodes + 1));
        crossing.at = feet(-5, 250);
        crossing.depth = Length::inches(number(0, 100));
        crossing.diameter = Length::inches(number(0.1, 30));
        if (mostly()) crossing.passesAbove = bytes_.ConsumeBool();
    }
    void addShot(Job& job, std::size_t nodes) {
        GroundShot& shot = job.shots.emplace_back();
        shot.blank = false;
        shot.from = nameOf(below(nodes + 1));
        shot.to = nameOf(below(nodes + 1));
        shot.at = feet(-5, 250);
        shot.ground = feet(90, 120);
    }

    FuzzedDataProvider& bytes_;
};

// What goes down a run is what comes into its upper node, whatever stands there.
void conserved(const Job& job, const SolvedJob& solved) {
    for (const SolvedRun& run : solved.runs) {
        if (!run.flow || run.upper == Network::none) continue;
        require(std::isfinite(run.flow->si()) && run.flow->si() >= 0);
        if (solved.nodes[run.upper].leaving != 1) continue;
        double comes = 0;
        for (std::size_t i = 0; i < job.inlets.size(); ++i) {
            if (job.inlets[i].blank || job.inlets[i].node != job.nodes[run.upper].name) continue;
            require(solved.inlets[i].flow.has_value());
            comes += solved.inlets[i].flow->si();
        }
        for (std::size_t i = 0; i < solved.runs.size(); ++i) {
            if (solved.runs[i].lower != run.upper || job.runs[i].blank) continue;
            require(solved.runs[i].flow.has_value());
            comes += solved.runs[i].flow->si();
        }
        require(std::fabs(run.flow->si() - comes) <= 1e-9 * (comes + 1e-9));
    }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    FuzzedDataProvider bytes(data, size);
    const Job job = Maker(bytes).job();
    try {
        const SolvedJob solved = solve(job);
        require(solved.runs.size() == job.runs.size() && solved.nodes.size() == job.nodes.size());
        lawful(job, solved.findings);
        conserved(job, solved);
        const Takeoff takeoff = takeOff(job, solved);
        lawful(job, takeoff.findings);
        for (const TakeoffLine& line : takeoff.lines) {
            require(!line.code.empty());
            if (line.net) require(std::isfinite(line.net->in(job.units)) && line.net->in(job.units) >= 0);
        }
    } catch (const Error& error) {
        require(!error.argument().empty());
    }
    return 0;
}
