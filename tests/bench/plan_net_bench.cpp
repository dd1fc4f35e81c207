// Points of a lot from tapes: 200 points, each taped three times to points before it.
#include <benchmark/benchmark.h>

#include <cmath>
#include <random>

#include "trenchbook/layout/plan_net.h"

namespace {

using namespace trenchbook;

// Rows of points 12 ft apart, the first row typed; each other point is taped to its neighbor in the row, to the
// one above and to one beside that. Tapes are read with their usual error, and some slip by 1.5 ft.
PlanNet netOf(std::size_t points, std::size_t slips) {
    constexpr std::size_t wide = 14;
    std::mt19937 random(600);
    std::normal_distribution<double> error(0, 0.1);
    const auto east = [](std::size_t i) { return static_cast<double>(12 * (i % wide) + i % 5); };
    const auto north = [](std::size_t i) {
        return 12.0 * static_cast<double>(i / wide) + 3.0 * (i % 3 == 0);
    };
    PlanNet net;
    for (std::size_t i = 0; i < points + wide; ++i) {
        net.points.push_back({});
        if (i < wide) {
            net.points.back() = {.at = PlanPoint{Length::feet(east(i)), Length::feet(north(i))},
                                 .fixed = true};
            continue;
        }
        const std::size_t column = i % wide;
        for (const std::size_t to :
             {column > 0 ? i - 1 : i - wide + 2, i - wide, column + 1 < wide ? i - wide + 1 : i - wide - 1})
            net.tapes.push_back({.from = to,
                                 .to = i,
                                 .length = Length::feet(std::hypot(east(i) - east(to), north(i) - north(to)) +
                                                        error(random))});
    }
    for (std::size_t slip = 0; slip < slips; ++slip) {
        PlanTape& tape = net.tapes[50 + 97 * slip];
        tape.length = tape.length + Length::feet(1.5);
    }
    return net;
}

void placeLot(benchmark::State& state) {
    const PlanNet net = netOf(200, static_cast<std::size_t>(state.range(0)));
    std::size_t placed = 0;
    for (auto _ : state) {
        const PlacedPlan plan = placePoints(net);
        placed = 0;
        for (const PlacedPoint& point : plan.points) placed += point.placed();
        benchmark::DoNotOptimize(plan);
    }
    state.counters["tapes"] = static_cast<double>(net.tapes.size());
    state.counters["placed"] = static_cast<double>(placed);
}
BENCHMARK(placeLot)->ArgName("slips")->Arg(0)->Arg(3)->Unit(benchmark::kMillisecond);

}  // namespace
