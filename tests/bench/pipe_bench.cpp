// Round pipe, one call each over a spread of flows, slopes and names. The bar: normal depth within 150 ns.
#include <benchmark/benchmark.h>

#include <array>
#include <vector>

#include "catalog/function.h"
#include "trenchbook/core/tape.h"
#include "trenchbook/pipe/circular.h"
#include "trenchbook/pipe/manning.h"
#include "trenchbook/pipe/stock.h"

namespace trenchbook {
namespace {

const Length bore = Length::inches(3.975);
const Slope slope = Slope::percent(1);

// Flows from a trickle to the peak, evenly spread over the shares of capacity.
std::vector<Flow> flows() {
    std::vector<Flow> spread;
    const Flow most = capacity(bore, slope, 0.011) * peakShare;
    for (int i = 1; i <= 1000; ++i) spread.push_back(most * (i / 1000.0));
    return spread;
}

template <class Call>
void eachFlow(benchmark::State& state, Call&& call) {
    const std::vector<Flow> spread = flows();
    std::size_t at = 0;
    for (auto _ : state) {
        benchmark::DoNotOptimize(call(spread[at]));
        at = at + 1 == spread.size() ? 0 : at + 1;
    }
}

void normalDepthCall(benchmark::State& state) {
    eachFlow(state, [](Flow flow) { return normalFill(bore, slope, flow, 0.011); });
}
BENCHMARK(normalDepthCall)->Name("normal depth");

void criticalDepthCall(benchmark::State& state) {
    eachFlow(state, [](Flow flow) { return criticalDepth(bore, flow).si(); });
}
BENCHMARK(criticalDepthCall)->Name("critical depth");

void capacityCall(benchmark::State& state, double fill) {
    double steep = 0.001;
    for (auto _ : state) {
        benchmark::DoNotOptimize(capacity(bore, Slope::fraction(steep), 0.011, fill).si());
        steep = steep < 0.05 ? steep + 1e-5 : 0.001;
    }
}
BENCHMARK_CAPTURE(capacityCall, full, 1.0)->Name("capacity, full");
BENCHMARK_CAPTURE(capacityCall, partFull, 0.7)->Name("capacity, part full");

void stockName(benchmark::State& state) {
    constexpr std::array names = {"4 SDR35", "6 SCH40", "4in SDR 35", "4\" Sch. 40", "6 corrugated"};
    std::size_t at = 0;
    for (auto _ : state) {
        benchmark::DoNotOptimize(stockPipe(names[at]).roughness);
        at = at + 1 == names.size() ? 0 : at + 1;
    }
}
BENCHMARK(stockName)->Name("stock pipe by name");

void slopeText(benchmark::State& state) {
    constexpr std::array texts = {"1/8 in/ft", "1%", "1:96", "0.0104"};
    std::size_t at = 0;
    for (auto _ : state) {
        benchmark::DoNotOptimize(readSlope(texts[at]).si());
        at = at + 1 == texts.size() ? 0 : at + 1;
    }
}
BENCHMARK(slopeText)->Name("slope as text");

// As a cell calls it: arguments decoded, units applied.
void cellCall(benchmark::State& state, const char* name, std::vector<addin::Value> values) {
    const addin::Function* function = addin::findFunction(name);
    for (auto _ : state) benchmark::DoNotOptimize(addin::call(*function, values));
}
BENCHMARK_CAPTURE(cellCall, capacity, "PIPE.CAPACITY", {"4 SDR35", 0.0104})
    ->Name("PIPE.CAPACITY from a cell");
BENCHMARK_CAPTURE(cellCall, fill, "PIPE.FILL", {"4 SDR35", 0.0104, 60.0})->Name("PIPE.FILL from a cell");

}  // namespace
}  // namespace trenchbook
