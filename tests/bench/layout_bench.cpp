// A lot's points from its tapes: placed, adjusted, tested for slips.
#include <benchmark/benchmark.h>

#include <random>

#include "trenchbook/layout/plan_net.h"

namespace {

using namespace trenchbook;

// Eight typed corners, then points along lines: each taped to the point before it, and to corners; one in ten
// of these to any other point.
PlanNet yard(std::size_t points, std::size_t tapes, std::size_t slips) {
    std::mt19937 random(1);
    std::uniform_real_distribution<double> across(0, 60);
    std::normal_distribution<double> misread(0, 0.02);
    PlanNet net;
    std::vector<PlanPoint> truth;
    for (std::size_t i = 0; i < 8 + points; ++i) {
        truth.push_back({Length::metres(across(random)), Length::metres(across(random))});
        net.points.push_back({.at = truth.back(), .fixed = i < 8});
    }
    for (std::size_t i = 0; net.tapes.size() < tapes; ++i) {
        const std::size_t to = 8 + i % points;
        const bool any = i >= 2 * points && i % 10 == 0;
        const std::size_t from =
            i < points ? to - 1 : std::uniform_int_distribution<std::size_t>(0, any ? to - 1 : 7)(random);
        const Length far = distance(truth[from], truth[to]);
        if (far > Length::metres(0.5))
            net.tapes.push_back({.from = from, .to = to, .length = far + Length::metres(misread(random))});
    }
    for (std::size_t i = 0; i < slips; ++i) net.tapes[(i * 97 + 41) % tapes].length += Length::feet(3);
    return net;
}

void layout(benchmark::State& state) {
    const PlanNet net =
        yard(static_cast<std::size_t>(state.range(0)), 3 * static_cast<std::size_t>(state.range(0)),
             static_cast<std::size_t>(state.range(1)));
    std::size_t placed = 0, slips = 0;
    for (auto _ : state) {
        const PlacedPlan plan = placePoints(net);
        placed = slips = 0;
        for (const PlacedPoint& one : plan.points) placed += one.placed();
        slips = plan.slips.size();
    }
    state.counters["placed"] = static_cast<double>(placed);
    state.counters["slips"] = static_cast<double>(slips);
}
BENCHMARK(layout)
    ->ArgNames({"points", "slips"})
    ->Args({20, 0})
    ->Args({200, 0})
    ->Args({200, 5})
    ->Args({1000, 0})
    ->Unit(benchmark::kMillisecond);

}  // namespace
