// The price range of a job, drawn anew at each recalculation.
#include <benchmark/benchmark.h>

#include <vector>

#include "trenchbook/money/price_range.h"

namespace trenchbook {
namespace {

// Half of the parts are costs with a range, half what may go wrong; invented.
void priceRange(benchmark::State& state) {
    std::vector<CostPart> parts;
    for (int i = 0; i < state.range(0); ++i)
        parts.push_back({.likely = 1000.0 + 100 * i,
                         .low = 900.0 + 80 * i,
                         .high = 1500.0 + 170 * i,
                         .chance = i % 2 == 0 ? 1 : 0.2});
    for (auto _ : state) benchmark::DoNotOptimize(PriceRange(parts).lossAt(20000));
}
BENCHMARK(priceRange)->Arg(6)->Arg(12)->Arg(20)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace trenchbook
