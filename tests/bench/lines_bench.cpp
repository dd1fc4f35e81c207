// Flows, inverts, water levels and peaks of whole jobs, 100 to 10,000 segments: growth should be a straight
// line.
#include <benchmark/benchmark.h>

#include <random>

#include "trenchbook/lines/inverts.h"
#include "trenchbook/lines/peak.h"
#include "trenchbook/lines/water_levels.h"

namespace {

using namespace trenchbook;

// Lines of 20 segments with laterals, each with an inlet at its head; every other line drowned by its outlet.
struct Job {
    std::vector<std::string> from, to;
    std::vector<Inlet> inlets;
    std::vector<PeakInlet> areas;
    std::vector<Run> runs;

    explicit Job(std::size_t segments) {
        std::mt19937 random(42);
        std::uniform_real_distribution<double> percent(0.3, 3), feet(10, 80), gpm(2, 12);
        for (std::size_t i = 0; i < segments; ++i) {
            const std::size_t place = i % 20;
            const std::string line = std::to_string(i / 20) + "-";
            from.push_back("node " + line + std::to_string(place));
            // Every third segment is a lateral that joins two places further down.
            const std::size_t below = place % 3 == 2 ? place + 2 : place + 1;
            to.push_back("Node " + line + std::to_string(below < 20 ? below : 20));
            Run& run = runs.emplace_back();
            run.length = Length::feet(feet(random));
            run.pipe = bareBore(Length::inches(place < 8 ? 3.975 : 5.915));
            run.slope = Slope::percent(percent(random));
            run.outletLevel = Length::feet(i / 20 % 2 ? 96 : 94);
            inlets.push_back({from.back(), Flow::gpm(gpm(random))});
            areas.push_back({from.back(), Area::squareFeet(400), Duration::minutes(5)});
        }
    }
};

void flows(benchmark::State& state) {
    const Job job(state.range(0));
    for (auto _ : state) benchmark::DoNotOptimize(lineFlows(Network(job.from, job.to), job.inlets));
    state.SetComplexityN(state.range(0));
}
void inverts(benchmark::State& state) {
    const Job job(state.range(0));
    for (auto _ : state)
        benchmark::DoNotOptimize(lineInverts(Network(job.from, job.to), job.runs, Join::Crown));
    state.SetComplexityN(state.range(0));
}
void levels(benchmark::State& state) {
    const Job job(state.range(0));
    const Network lines(job.from, job.to);
    const auto carried = lineFlows(lines, job.inlets);
    const auto levels = lineInverts(lines, job.runs, Join::Crown);
    std::vector<Carried> rows;
    for (std::size_t row = 0; row < lines.rows(); ++row)
        rows.push_back(
            {carried[row], levels[row].value->up, levels[row].value->down, Length::feet(96.3), 0.5});
    for (auto _ : state) benchmark::DoNotOptimize(lineWater(Network(job.from, job.to), job.runs, rows));
    state.SetComplexityN(state.range(0));
}
void peaks(benchmark::State& state) {
    const Job job(state.range(0));
    const std::vector<TableCell> cells = {TableCell{}, 2.0, 10.0, "5-min", 0.4, 0.6,
                                          "60-min",    1.2, 1.8,  "24-hr", 2.6, 4.0};
    const RainTable rain = RainTable::parse(cells, 3, Length::inches(1));
    for (auto _ : state)
        benchmark::DoNotOptimize(
            linePeaks(Network(job.from, job.to), job.runs, job.areas, rain, 10, Travel::Flow));
    state.SetComplexityN(state.range(0));
}

BENCHMARK(flows)->RangeMultiplier(10)->Range(100, 10000)->Unit(benchmark::kMillisecond)->Complexity();
BENCHMARK(inverts)->RangeMultiplier(10)->Range(100, 10000)->Unit(benchmark::kMillisecond)->Complexity();
BENCHMARK(levels)->RangeMultiplier(10)->Range(100, 10000)->Unit(benchmark::kMillisecond)->Complexity();
BENCHMARK(peaks)->RangeMultiplier(10)->Range(100, 10000)->Unit(benchmark::kMillisecond)->Complexity();

}  // namespace
