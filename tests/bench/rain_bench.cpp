// Rain tables, storms and trench drains: what one cell of the Water sheet costs.
#include <benchmark/benchmark.h>

#include <string>

#include "trenchbook/core/text.h"
#include "trenchbook/water/channel.h"
#include "trenchbook/water/inlets.h"
#include "trenchbook/water/runoff.h"
#include "trenchbook/water/storm.h"

namespace trenchbook {
namespace {

// Nineteen durations and ten return periods, as national tables have them; invented depths.
std::string pasted() {
    std::string text = "by duration for ARI (years):, 1,2,5,10,25,50,100,200,500,1000\n";
    const char* names[] = {"5-min",  "10-min", "15-min", "30-min", "60-min", "2-hr",  "3-hr",
                           "6-hr",   "12-hr",  "24-hr",  "2-day",  "3-day",  "4-day", "7-day",
                           "10-day", "20-day", "30-day", "45-day", "60-day"};
    double depth = 0.3;
    for (const char* name : names) {
        text += std::string(name) + ":";
        for (int column = 0; column < 10; ++column) text += ", " + plain(depth * (1 + 0.2 * column), 3);
        text += "\n";
        depth *= 1.2;
    }
    return text;
}

void readRainTable(benchmark::State& state) {
    const std::string text = pasted();
    for (auto _ : state) benchmark::DoNotOptimize(RainTable::parse(text, Length::inches(1)));
}
BENCHMARK(readRainTable);

void intensity(benchmark::State& state) {
    const RainTable table = RainTable::parse(pasted(), Length::inches(1));
    double minutes = 5;
    for (auto _ : state) {
        benchmark::DoNotOptimize(table.intensity(Duration::minutes(minutes), 30));
        minutes = minutes < 1000 ? minutes + 0.37 : 5;
    }
}
BENCHMARK(intensity);

void dayInMinutes(benchmark::State& state) {
    const RainTable table = RainTable::parse(pasted(), Length::inches(1));
    for (auto _ : state)
        benchmark::DoNotOptimize(alternatingBlocks(table, Duration::hours(24), 10, Duration::minutes(1)));
}
BENCHMARK(dayInMinutes);

void peakFlow(benchmark::State& state) {
    double area = 1000;
    for (auto _ : state) {
        benchmark::DoNotOptimize(rationalFlow(Area::squareFeet(area), 0.9, RainRate::inchesPerHour(5)));
        area += 1;
    }
}
BENCHMARK(peakFlow);

void basinOutlet(benchmark::State& state) {
    for (auto _ : state) benchmark::DoNotOptimize(basinOutletFlow(Length::inches(3.975), Length::inches(3)));
}
BENCHMARK(basinOutlet);

// Per cent of slope: level, falling calmly, and steep enough to shoot.
void trenchDrainDepth(benchmark::State& state) {
    const TrenchDrain drain{.width = Length::inches(4),
                            .length = Length::feet(30),
                            .slope = Slope::percent(static_cast<double>(state.range(0)) / 10)};
    for (auto _ : state) benchmark::DoNotOptimize(deepestInDrain(drain, Flow::gpm(50)));
}
BENCHMARK(trenchDrainDepth)->Arg(0)->Arg(5)->Arg(30);

void trenchDrainCapacity(benchmark::State& state) {
    const TrenchDrain drain{.width = Length::inches(4),
                            .length = Length::feet(30),
                            .slope = Slope::percent(static_cast<double>(state.range(0)) / 10)};
    for (auto _ : state) benchmark::DoNotOptimize(trenchCapacity(drain, Length::inches(4)));
}
BENCHMARK(trenchDrainCapacity)->Arg(0)->Arg(5)->Arg(30);

}  // namespace
}  // namespace trenchbook
