// solve() of whole jobs with water and findings, and their pieces, 100 to 10,000 runs: growth should be a
// straight line.
#include <benchmark/benchmark.h>

#include <random>

#include "trenchbook/job/solve.h"
#include "trenchbook/takeoff/takeoff.h"

namespace {

using namespace trenchbook;

// Lines of 20 runs with an inlet at each node; every other line drowned by its outlet.
Job jobOf(std::size_t runs) {
    Job job;
    job.facts.rain = RainRate::inchesPerHour(6);
    std::mt19937 random(42);
    std::uniform_real_distribution<double> percent(1, 3), feet(10, 45), area(20, 90);
    for (std::size_t i = 0; i < runs; ++i) {
        const std::string line = std::to_string(i / 20) + "-";
        const std::size_t place = i % 20;
        const std::string from = line + std::to_string(place), to = line + std::to_string(place + 1);
        job.nodes.push_back({.name = from,
                             .kinds = nodeKinds(place % 3 == 0 ? "basin" : "downspout"),
                             .ground = Length::feet(130 - static_cast<double>(place)),
                             .kindGiven = true,
                             .blank = false});
        Run& run = job.runs.emplace_back();
        run.line = line;
        run.from = from;
        run.to = to;
        run.length = Length::feet(feet(random));
        run.pipe = stockPipe(place < 8 ? "4 SDR35" : "6 SDR35");
        run.slope = Slope::percent(percent(random));
        run.surfaceUp = run.surfaceDown = CoverSurface::Lawn;
        run.blank = false;
        if (place == 19 || i + 1 == runs) {
            run.outletLevel = Length::feet(100);
            if (i / 20 % 2 == 0) run.outletWater = Length::feet(103);
            job.nodes.push_back({.name = to,
                                 .kinds = nodeKinds("bank"),
                                 .ground = Length::feet(104),
                                 .kindGiven = true,
                                 .blank = false});
        }
        JobInlet inlet{.name = "inlet " + from, .node = from, .blank = false};
        inlet.roof = {Area::squareFeet(area(random)), 0.95};
        job.inlets.push_back(std::move(inlet));
    }
    return job;
}

void solveJob(benchmark::State& state) {
    const Job job = jobOf(static_cast<std::size_t>(state.range(0)));
    for (auto _ : state) benchmark::DoNotOptimize(solve(job));
    state.SetComplexityN(state.range(0));
}

BENCHMARK(solveJob)->RangeMultiplier(10)->Range(100, 10000)->Unit(benchmark::kMillisecond)->Complexity();

void solveAndTakeOff(benchmark::State& state) {
    const Job job = jobOf(static_cast<std::size_t>(state.range(0)));
    for (auto _ : state) {
        const SolvedJob solved = solve(job);
        benchmark::DoNotOptimize(takeOff(job, solved));
    }
    state.SetComplexityN(state.range(0));
}
BENCHMARK(solveAndTakeOff)
    ->RangeMultiplier(10)
    ->Range(100, 10000)
    ->Unit(benchmark::kMillisecond)
    ->Complexity();

}  // namespace
