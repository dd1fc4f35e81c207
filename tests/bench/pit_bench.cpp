// A day's storm in one-minute steps through a pit, the pit sized for it, and cutting plans.
#include <benchmark/benchmark.h>

#include <cmath>
#include <random>

#include "trenchbook/ground/mound.h"
#include "trenchbook/ground/pit_storm.h"
#include "trenchbook/takeoff/sticks.h"

namespace {

using namespace trenchbook;

// 24 hours, 1,440 steps, 4 in of rain that is heaviest in the middle.
std::vector<StormStep> day() {
    std::vector<StormStep> storm;
    double total = 0;
    const auto weight = [](int minute) { return 1 / (1 + std::fabs(minute - 720) / 20.0); };
    for (int minute = 1; minute <= 1440; ++minute) total += weight(minute);
    for (int minute = 1; minute <= 1440; ++minute)
        storm.push_back({Duration::minutes(minute), Length::inches(4 * weight(minute) / total)});
    return storm;
}

RockPit pit(double sideShare) {
    return {.length = Length::feet(12),
            .width = Length::feet(4),
            .rockDepth = Length::feet(3),
            .voids = 0.4,
            .sideShare = sideShare};
}

void pitStorm(benchmark::State& state) {
    const std::vector<StormStep> storm = day();
    const RockPit bed = pit(static_cast<double>(state.range(0)) / 100);
    for (auto _ : state)
        benchmark::DoNotOptimize(runStorm(storm, Area::squareFeet(1300), bed, SoilRate::inchesPerHour(1)));
}
BENCHMARK(pitStorm)->ArgName("side%")->Arg(0)->Arg(50)->Unit(benchmark::kMicrosecond);

void pitSize(benchmark::State& state) {
    const std::vector<StormStep> storm = day();
    for (auto _ : state)
        benchmark::DoNotOptimize(
            shortestPit(storm, Area::squareFeet(1300), pit(0.5), SoilRate::inchesPerHour(1)));
}
BENCHMARK(pitSize)->Unit(benchmark::kMicrosecond);

void mound(benchmark::State& state) {
    const Mound under{Length::feet(20),    Length::feet(6),          SoilRate::inchesPerHour(0.5),
                      Duration::hours(48), Velocity::feetPerDay(10), 0.2,
                      Length::feet(10)};
    for (auto _ : state) benchmark::DoNotOptimize(moundRise(under));
}
BENCHMARK(mound)->Unit(benchmark::kMicrosecond);

void sticks(benchmark::State& state) {
    std::mt19937 random(1);
    std::vector<Length> pieces;
    for (int i = 0; i < state.range(0); ++i)
        pieces.push_back(Length::inches(std::uniform_int_distribution<int>(12, 230)(random)));
    for (auto _ : state) benchmark::DoNotOptimize(cutSticks(pieces, Length::feet(20)));
}
BENCHMARK(sticks)->ArgName("pieces")->Arg(10)->Arg(40)->Arg(200)->Unit(benchmark::kMicrosecond);

}  // namespace
